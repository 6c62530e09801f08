"""The seat that is wider in front than behind, or the other way."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from patternmaker.facts import at_most, both, length
from patternmaker.geometry.framing import sharp
from patternmaker.geometry.rounding import rounded
from patternmaker.outlines.registry import Outline, Taken, corner_radius, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.framing import Ring


def _leg(front_width: float, back_width: float, depth: float) -> tuple[float, float]:
    """Return the length of a side, and the angle between it and the front edge."""
    lean = (front_width - back_width) / 2
    return math.hypot(lean, depth), math.atan2(depth, lean)


def _most_in_front(front_width: float, back_width: float, depth: float) -> float:
    side, angle = _leg(front_width, back_width, depth)
    return min(front_width / 2, side) * math.tan(angle / 2)


def _most_behind(front_width: float, back_width: float, depth: float, front_corner: float) -> float:
    side, angle = _leg(front_width, back_width, depth)
    left_over = side - front_corner / math.tan(angle / 2)
    return max(0.0, min(back_width / 2, left_over)) / math.tan(angle / 2)


@shape("rounded trapezoid")
class RoundedTrapezoid(Outline):
    """A seat with straight sides that run apart from back to front, its corners rounded.

    The arc of a corner of radius r between sides that meet at an angle v begins r / tan(v / 2)
    from it, and takes 2 r / tan(v / 2) - r (pi - v) off the length.
    """

    front_width: float = length("left to right in front", default=both(in_=18, mm=450), least=50)
    back_width: float = length("left to right behind", default=both(in_=15, mm=380), least=50)
    depth: float = length("front to back, square across", default=both(in_=16, mm=400), least=50)
    front_corner: float = corner_radius("the front corners", default=both(in_=2.5, mm=60))
    back_corner: float = corner_radius("the back corners", default=both(in_=1.5, mm=40))
    limits = (
        at_most("front_corner", _most_in_front, "what the front and the sides have room for",
                "make the corner smaller or the seat larger"),
        at_most("back_corner", _most_behind, "what the back and the sides have room for",
                "make the corner smaller or the seat larger"),
    )  # fmt: skip

    def struck(self) -> Ring:
        """Return the outline."""
        front, back, y = self.front_width / 2, self.back_width / 2, self.depth / 2
        ring = sharp(
            {
                "back left": complex(-back, y),
                "front left": complex(-front, -y),
                "front right": complex(front, -y),
                "back right": complex(back, y),
            }
        )
        radii = (self.back_corner, self.front_corner, self.front_corner, self.back_corner)
        return rounded(ring, dict(zip(ring.joints, radii, strict=True)))

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken: the widths from corner to corner, were they sharp."""
        front, back, y = self.front_width / 2, self.back_width / 2, self.depth / 2
        yield Taken("front_width", complex(-front, -y), complex(front, -y))
        yield Taken("back_width", complex(-back, y), complex(back, y))
        yield Taken("depth", -1j * y, 1j * y)
        ring = self.struck()
        yield Taken.in_corner("front_corner", ring, "front right", self.front_corner)
        yield Taken.in_corner("back_corner", ring, "back right", self.back_corner)
