"""The seat with straight sides and a bowed front."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from patternmaker.facts import HAIR, at_most, both, length
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.rounding import rounded
from patternmaker.geometry.segments import radius_over
from patternmaker.outlines.registry import Outline, Taken, corner_radius, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.framing import Ring

FRONT, BACK = ("front left", "front right"), ("back right", "back left")
STRAIGHT = 1e-3  # mm; a bow that rises less is none


def _most_in_front(width: float, depth: float, bow: float, back_corner: float) -> float:
    """Return the largest front corner that ends on the side before the back corner begins."""
    if bow < STRAIGHT:
        return min(width / 2, depth - bow - back_corner)
    radius = radius_over(width / 2, bow)
    short = radius - depth + back_corner
    if short <= 0 or radius - width / 2 < 1e-9:
        return width / 2
    most = radius + width / 2 - short**2 / (radius - width / 2)
    return max(0.0, min(width, most) / 2 - HAIR)


@shape("bowed front")
class BowedFront(Outline):
    """A straight back, straight sides, and a front edge that is one shallow arc.

    The arc over chord W with rise b has the radius R = (W^2 / 4 + b^2) / 2 b. A front corner of
    radius r touches the side and, from inside, the arc: its centre lies R - r from the arc's.
    """

    width: float = length("left to right", default=both(in_=17, mm=430), least=50)
    depth: float = length("front to back, in the middle", default=both(in_=16, mm=400), least=50)
    bow: float = length("how far the front stands out in the middle", default=both(in_=1, mm=30))
    back_corner: float = corner_radius("the back corners", default=both(in_=1, mm=25))
    front_corner: float = corner_radius("the front corners", default=both(in_=2, mm=50))
    limits = (
        at_most("bow", lambda width, depth: min(width / 2, depth - 10),
                "half the width, or the depth less 10 mm", "measure the bow again"),
        at_most("back_corner", lambda width, depth, bow: min(width / 2, depth - bow),
                "half the back, or the length of a side", "make the corner smaller"),
        at_most("front_corner", _most_in_front, "what the bow and the sides have room for",
                "make the corner smaller"),
    )  # fmt: skip

    def struck(self) -> Ring:
        """Return the outline, the middle of its back edge at the origin."""
        x, side = self.width / 2, self.depth - self.bow
        compass = Compass(complex(x)).joint(BACK[0]).line(complex(-x)).joint(BACK[1])
        compass.line(complex(-x, -side)).joint(FRONT[0])
        self._bowed(compass, complex(x, -side))
        compass.joint(FRONT[1]).line(complex(x))
        radii = {**dict.fromkeys(BACK, self.back_corner), **dict.fromkeys(FRONT, self.front_corner)}
        return rounded(compass.ring(), radii)

    def _bowed(self, compass: Compass, end: complex) -> None:
        if self.bow < STRAIGHT:
            compass.line(end)
            return
        radius = radius_over(self.width / 2, self.bow)
        half = math.atan2(self.width / 2, radius - self.bow)
        compass.arc(1j * (radius - self.depth), 2 * half)

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken."""
        x, side = self.width / 2, self.depth - self.bow
        yield Taken("width", complex(-x, -side / 2), complex(x, -side / 2))
        yield Taken("depth", 0j, -1j * self.depth)
        yield Taken("bow", complex(x / 3, -side), complex(x / 3, -self.depth))
        ring = self.struck()
        for field, name in (("back_corner", BACK[1]), ("front_corner", FRONT[0])):
            yield Taken.in_corner(field, ring, name, vars(self)[field])
