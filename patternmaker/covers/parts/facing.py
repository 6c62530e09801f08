"""The run of a seam that faces the back or the front: where a zip, an opening or a tie goes."""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.geometry.segments import Arc

if TYPE_CHECKING:
    from collections.abc import Iterable

    from patternmaker.geometry.contour import Contour
    from patternmaker.geometry.segments import Segment

WAYS = {"back": 1j, "front": -1j}
ASLANT = math.pi / 4  # an edge that slants more faces the side
SLACK = 1e-9  # radians


@dataclass(frozen=True)
class Run:
    """A run of a closed seam, from one length along it to another; its begin may be negative."""

    begin: float
    end: float

    @property
    def length(self) -> float:
        """How long it is."""
        return self.end - self.begin

    @property
    def middle(self) -> float:
        """Its middle."""
        return (self.begin + self.end) / 2

    def longer(self, by: float) -> Run:
        """Return it with ``by`` mm more at either end (negative: less)."""
        return Run(self.begin - by, self.end + by)


def facing(contour: Contour, joint: str) -> Run:
    """Return the run through the joint ``back`` or ``front`` that faces that way.

    It goes on to either side for as long as the edge slants no more than 45 degrees: to a sharp
    corner, to the middle of a square corner's arc, or through a quarter of a circle. It has no
    length where the seat comes to a point there.

    >>> from patternmaker.outlines.rounded_rectangle import RoundedRectangle
    >>> facing(RoundedRectangle(width=400, depth=300, corner=0).contour(), "back")
    Run(begin=-200.0, end=200.0)
    """
    index, at = contour.joints[joint], contour.station(joint)
    ahead = (*contour.segments[index:], *contour.segments[:index])
    behind = (each.reversed() for each in reversed(ahead))
    way = WAYS[joint]
    return Run(at - _reach(behind, 1j / way), at + _reach(ahead, -1j / way))


def _reach(segments: Iterable[Segment], turned: complex) -> float:
    """Return how far one may walk while the outward way stays within the slant.

    Args:
        segments: the edges in the order of walking.
        turned: takes the direction of walking to the outward way, seen from the way to be faced.
    """
    reach = 0.0
    for each in segments:
        share = _share(each, cmath.phase(each.tangent() * turned))
        reach += share * each.length
        if share < 1:
            break
    return reach


def _share(segment: Segment, slant: float) -> float:
    """Return the share of an edge that one may walk; it begins with ``slant``."""
    if abs(slant) > ASLANT + SLACK:
        return 0.0
    if not isinstance(segment, Arc):
        return 1.0
    left = math.copysign(ASLANT, segment.sweep) - slant
    return min(1.0, max(0.0, left / segment.sweep))
