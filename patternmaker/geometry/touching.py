"""Whether a contour has any part in a box; exact for lines and arcs."""

from __future__ import annotations

import cmath
import itertools
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Line

if TYPE_CHECKING:
    from patternmaker.geometry.contour import Contour, Path
    from patternmaker.geometry.segments import Box, Segment

COARSE = 0.5  # mm; chords this close tell on which side of an edge a far point lies


def touches(contour: Contour, box: Box) -> bool:
    """Return whether the area inside ``contour`` and the inside of ``box`` have a part in common.

    They do if an edge of one enters the other, or if one lies inside the other.
    """
    if not overlap(contour.bounds, box):
        return False
    if enters(contour, box):
        return True
    left, bottom, right, top = box
    return encloses(contour, complex((left + right) / 2, (bottom + top) / 2))


def enters(path: Path, box: Box) -> bool:
    """Return whether a path has a part inside ``box``."""
    return any(_enters(segment, box) for segment in path.segments)


def overlap(one: Box, two: Box) -> bool:
    """Return whether two boxes have a part in common."""
    return one[0] < two[2] and two[0] < one[2] and one[1] < two[3] and two[1] < one[3]


def _enters(segment: Segment, box: Box) -> bool:
    """Return whether a segment has a part inside a box."""
    if not overlap(_opened(segment.bounds), box):
        return False
    left, bottom, right, top = box
    if any(_inside(point, box) for point in (segment.start, segment.end)):
        return True
    corners = (complex(left, bottom), complex(right, bottom), complex(right, top),
               complex(left, top))  # fmt: skip
    sides = (Line(a, b) for a, b in zip(corners, (*corners[1:], corners[0]), strict=True))
    met = sorted(
        {round(segment.along(point), 9) for side in sides for point in crossings(segment, side)}
    )
    return any(_inside(segment.point((a + b) / 2), box) for a, b in itertools.pairwise(met))


def _opened(bounds: Box) -> Box:
    """Return the box of a level or upright line with some body to it."""
    left, bottom, right, top = bounds
    return left - 1e-9, bottom - 1e-9, right + 1e-9, top + 1e-9


def _inside(point: complex, box: Box) -> bool:
    return box[0] < point.real < box[2] and box[1] < point.imag < box[3]


def encloses(contour: Contour, point: complex) -> bool:
    """Return whether ``point`` lies inside a contour: how often the contour turns about it."""
    turns = sum(_turn(segment, point) for segment in contour.segments)
    return abs(turns) > 3.0  # a full turn is 6.28, none is 0


def _turn(segment: Segment, point: complex) -> float:
    """Return the angle through which a point on the segment moves, seen from ``point``."""
    ways = [spot - point for spot in (*segment.chords(COARSE), segment.end)]
    return sum(cmath.phase(b / a) for a, b in pairwise(ways) if a and b)
