"""The seat with one straight edge and one round one."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from patternmaker.facts import HAIR, at_most, both, choice, length
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.framing import Ring
from patternmaker.geometry.rounding import rounded
from patternmaker.geometry.segments import radius_over
from patternmaker.outlines.registry import Outline, Taken, shape

if TYPE_CHECKING:
    from collections.abc import Iterator


@shape("half round")
class HalfRound(Outline):
    """A straight back and a round front, or the reverse.

    Shallower than half its width, the round edge is one arc: with chord W and rise D its radius is
    (W^2 / 4 + D^2) / 2 D. Deeper, it is a half circle that straight sides run into.
    """

    width: float = length("left to right, at the widest", default=both(in_=18, mm=450), least=50)
    depth: float = length("front to back, at the deepest", default=both(in_=14, mm=360), least=50)
    round: str = choice("which edge is round", ("front", "back"), default="front")
    corner: float = length(
        "radius where the round edge meets the straight one; 0 for sharp",
        default=both(in_=1, mm=25), required=False,
    )  # fmt: skip
    limits = (
        at_most(
            "corner",
            lambda width, depth: min(width, depth) / 2 - HAIR,
            "half the shorter of width and depth",
            "make the corner smaller or the seat larger",
        ),
    )

    def struck(self) -> Ring:
        """Return the outline with the straight edge behind, or turned half round."""
        x, radius = self.width / 2, self._radius
        straight = max(0.0, self.depth - radius)
        half = math.pi / 2 if straight else math.asin(min(1.0, x / radius))
        centre = -1j * straight if straight else 1j * (radius - self.depth)
        compass = Compass(complex(x)).joint(self._right).line(complex(-x)).joint(self._left)
        compass.line(complex(-x, -straight)).arc(centre, 2 * half).line(complex(x))
        ring = rounded(compass.ring(), dict.fromkeys((self._right, self._left), self.corner))
        turn = 1 if self.round == "front" else -1
        return Ring(tuple(each.mapped(turn, 0) for each in ring.segments), ring.joints)

    @property
    def _radius(self) -> float:
        """The radius of the round edge."""
        x = self.width / 2
        return x if self.depth >= x else radius_over(x, self.depth)

    @property
    def _left(self) -> str:
        """The corner at the left of the straight edge while that is behind."""
        return "back left" if self.round == "front" else "front right"

    @property
    def _right(self) -> str:
        return "back right" if self.round == "front" else "front left"

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken."""
        turn = 1 if self.round == "front" else -1
        yield Taken("width", complex(-self.width / 2), complex(self.width / 2))
        yield Taken("depth", 0j, -1j * turn * self.depth)
        yield Taken.in_corner("corner", self.struck(), self._right, self.corner)
