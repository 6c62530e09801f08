"""The L-shaped cushion."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.facts import at_most, both, choice, length
from patternmaker.geometry.framing import sharp
from patternmaker.geometry.rounding import rounded
from patternmaker.outlines.registry import Handed, Taken, corner_radius, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.framing import Ring

INNER = "inner corner"


@shape("L shape")
class LShape(Handed):
    """A cushion across the back with a leg to the front, at the left or at the right.

    Length 2 (W + D) - (2 - pi / 2) (5 r + i), area W b + l (D - b) - (1 - pi / 4) (5 r^2 - i^2),
    with b and l the depth across the back and the width of the leg, r and i the radii.
    """

    width: float = length("left to right, across the back", default=both(in_=24, mm=600), least=100)
    depth: float = length("front to back, along the leg", default=both(in_=22, mm=560), least=100)
    back_depth: float = length(
        "front to back, beside the leg", default=both(in_=11, mm=280), least=40
    )
    leg_width: float = length("left to right, across the leg", default=both(in_=12, mm=300),
                              least=40)  # fmt: skip
    hand: str = choice("where the leg is, as one stands in front", ("left", "right"),
                       default="left")  # fmt: skip
    corner: float = corner_radius("the outer corners", default=both(in_=1.5, mm=40))
    inner_corner: float = length(
        "radius of the inner corner; 0 for a sharp one",
        default=both(in_=1, mm=25), required=False,
    )  # fmt: skip
    limits = (
        at_most("back_depth", lambda depth: depth - 30, "the depth less 30 mm",
                "make it smaller, or take a rectangle"),
        at_most("leg_width", lambda width: width - 30, "the width less 30 mm",
                "make it smaller, or take a rectangle"),
        at_most("corner", lambda width, depth, back_depth, leg_width: min(
                    back_depth / 2, leg_width / 2, depth - back_depth, width - leg_width),
                "what the leg and the back have room for", "make the corner smaller"),
        at_most("inner_corner", lambda width, depth, back_depth, leg_width, corner: min(
                    depth - back_depth, width - leg_width) - corner,
                "what the outer corners leave of its sides", "make the corner smaller"),
    )  # fmt: skip

    def struck_left(self) -> Ring:
        """Return the outline with its leg at the left, its front left corner at the origin."""
        inner = complex(self.leg_width, self.depth - self.back_depth)
        ring = sharp(
            {
                "back left": 1j * self.depth,
                "front left": 0j,
                "leg corner": complex(self.leg_width),
                INNER: inner,
                "arm corner": complex(self.width, inner.imag),
                "back right": complex(self.width, self.depth),
            }
        )
        radii = dict.fromkeys(ring.joints, self.corner)
        return rounded(ring, {**radii, INNER: self.inner_corner})

    def taken_left(self) -> Iterator[Taken]:
        """Yield where each length is taken."""
        w, d, b, leg = self.width, self.depth, self.back_depth, self.leg_width
        yield Taken("width", complex(0, d - b / 3), complex(w, d - b / 3))
        yield Taken("depth", complex(leg / 3, 0), complex(leg / 3, d))
        x = (leg + w) / 2
        yield Taken("back_depth", complex(x, d - b), complex(x, d))
        y = (d - b) / 2
        yield Taken("leg_width", complex(0, y), complex(leg, y))
        ring = self.struck_left()
        yield Taken.in_corner("corner", ring, "back right", self.corner)
        yield Taken.in_corner("inner_corner", ring, INNER, self.inner_corner)
