"""The wedge that fills the corner of a bench."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from patternmaker.facts import HAIR, angle, at_most, both, length
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.rounding import rounded
from patternmaker.geometry.segments import turned
from patternmaker.outlines.registry import Outline, Taken, corner_radius, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.framing import Ring

NARROWEST = 50.0  # mm from the inner arc to the outer


def _roomiest(outer_radius: float, inner_radius: float, angle: float) -> float:
    """Return the largest radius of its corners: two must fit on a side, and on each arc."""
    half = math.sin(math.radians(angle) / 2)
    on_side = (outer_radius - inner_radius) / 2
    on_outer = outer_radius * half / (1 + half)
    on_inner = inner_radius * half / (1 - half) if half < 1 else math.inf
    return min(on_side, on_outer, on_inner) - HAIR


@shape("wedge")
class Wedge(Outline):
    """A sector of a ring: two arcs about one middle, joined by straight sides.

    With sharp corners, length v (R + r) + 2 (R - r), area v (R^2 - r^2) / 2, v in radians.
    """

    outer_radius: float = length(
        "from the middle of the curve to the back edge", default=both(in_=36, mm=900), least=100
    )
    inner_radius: float = length(
        "from the middle of the curve to the front edge", default=both(in_=20, mm=500), least=50
    )
    angle: float = angle("between the two straight sides", default=90, least=10, most=180)
    corner: float = corner_radius("the four corners", default=both(in_=1, mm=25))
    limits = (
        at_most("inner_radius", lambda outer_radius: outer_radius - NARROWEST,
                "the outer radius less 50 mm", "make it smaller, or the outer one larger"),
        at_most("corner", _roomiest, "what its sides and arcs have room for",
                "make the corner smaller"),
    )  # fmt: skip

    @property
    def _right(self) -> complex:
        """The direction of its right side from the middle of the curve."""
        return 1j * turned(-math.radians(self.angle) / 2)

    def struck(self) -> Ring:
        """Return the outline about the middle of its curve, the outer arc behind."""
        right, sweep = self._right, math.radians(self.angle)
        left = -right.conjugate()
        compass = Compass(self.outer_radius * right).joint("back right").arc(0, sweep)
        compass.joint("back left").line(self.inner_radius * left).joint("front left")
        compass.arc(0, -sweep).joint("front right").line(self.outer_radius * right)
        ring = compass.ring()
        return rounded(ring, dict.fromkeys(ring.joints, self.corner))

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken."""
        yield Taken("outer_radius", 0j, 1j * self.outer_radius)
        yield Taken(
            "inner_radius", 0j, self.inner_radius * 1j * turned(math.radians(self.angle) / 6)
        )
        yield Taken.in_corner("corner", self.struck(), "back left", self.corner)
