"""The T-shaped cushion, its ears in front of the chair's arms."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.facts import at_most, both, length
from patternmaker.geometry.framing import sharp
from patternmaker.geometry.rounding import rounded
from patternmaker.outlines.registry import Outline, Taken, corner_radius, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.framing import Ring

INNER = ("inner left", "inner right")


@shape("T shape")
class TShape(Outline):
    """A cushion that is wider in front, where its ears stand out before the chair's arms.

    Length 2 (W + D) - (2 - pi / 2) (6 r + 2 i), area W e + b (D - e) - (1 - pi / 4)
    (6 r^2 - 2 i^2), with e the depth of the ears, b the width behind, r and i the radii.
    """

    width: float = length("left to right, over the ears", default=both(in_=26, mm=660), least=100)
    depth: float = length("front to back", default=both(in_=22, mm=560), least=100)
    back_width: float = length("left to right, between the arms", default=both(in_=20, mm=500),
                               least=40)  # fmt: skip
    ear_depth: float = length("front to back, along an ear", default=both(in_=5, mm=130), least=40)
    corner: float = corner_radius("the outer corners", default=both(in_=1.5, mm=40))
    inner_corner: float = corner_radius("both inner corners", default=both(in_=1 / 2, mm=12))
    limits = (
        at_most("back_width", lambda width: width - 40, "the width less 20 mm for each ear",
                "make it smaller, or take a rectangle"),
        at_most("ear_depth", lambda depth: depth - 30, "the depth less 30 mm",
                "make it smaller, or take a rectangle"),
        at_most("corner", lambda width, depth, back_width, ear_depth: min(
                    ear_depth / 2, back_width / 2, depth - ear_depth, (width - back_width) / 2),
                "what the ears and the back have room for", "make the corner smaller"),
        at_most("inner_corner", lambda width, depth, back_width, ear_depth, corner: min(
                    depth - ear_depth, (width - back_width) / 2) - corner,
                "what the outer corners leave of its sides", "make the corner smaller"),
    )  # fmt: skip

    def struck(self) -> Ring:
        """Return the outline, the middle of its front edge at the origin."""
        x, back, d, ear = self.width / 2, self.back_width / 2, self.depth, self.ear_depth
        ring = sharp(
            {
                "back left": complex(-back, d),
                INNER[0]: complex(-back, ear),
                "ear left": complex(-x, ear),
                "front left": complex(-x),
                "front right": complex(x),
                "ear right": complex(x, ear),
                INNER[1]: complex(back, ear),
                "back right": complex(back, d),
            }
        )
        radii = dict.fromkeys(ring.joints, self.corner)
        return rounded(ring, {**radii, **dict.fromkeys(INNER, self.inner_corner)})

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken."""
        x, back, d, ear = self.width / 2, self.back_width / 2, self.depth, self.ear_depth
        yield Taken("width", complex(-x, ear / 2), complex(x, ear / 2))
        yield Taken("depth", 0j, 1j * d)
        y = (d + ear) / 2
        yield Taken("back_width", complex(-back, y), complex(back, y))
        out = (x + back) / 2
        yield Taken("ear_depth", complex(-out), complex(-out, ear))
        ring = self.struck()
        yield Taken.in_corner("corner", ring, "back right", self.corner)
        yield Taken.in_corner("inner_corner", ring, INNER[1], self.inner_corner)
