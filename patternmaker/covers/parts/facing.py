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
    return Run(at - straight(behind, 1j / way, ASLANT), at + straight(ahead, -1j / way, ASLANT))


def straight(segments: Iterable[Segment], turned: complex, slant: float) -> float:
    """Return how far one may walk along a ring before its direction slants by more than ``slant``.

    Args:
        segments: the edges of the ring in the order of walking.
        turned: what turns the direction that has no slant to the x axis.
        slant: the most, either way, in radians.
    """
    reach, share, edges = 0.0, 1.0, iter(segments)
    while share == 1.0:  # a ring turns away sooner or later
        edge = next(edges)
        share = _share(edge, cmath.phase(edge.tangent() * turned), slant)
        reach += share * edge.length
    return reach


def _share(segment: Segment, begins: float, slant: float) -> float:
    """Return the share of an edge that one may walk; it begins with a slant."""
    if abs(begins) > slant + SLACK:
        return 0.0
    if not isinstance(segment, Arc):
        return 1.0
    left = math.copysign(slant, segment.sweep) - begins
    return min(1.0, max(0.0, left / segment.sweep))
