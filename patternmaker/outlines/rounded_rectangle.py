"""The square or rectangular seat, its corners rounded or sharp, alike or not."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH, at_most, both, length
from patternmaker.geometry.framing import sharp
from patternmaker.geometry.rounding import rounded
from patternmaker.outlines.registry import Outline, Taken, corner_radius, shape

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternmaker.facts import Limit
    from patternmaker.geometry.framing import Ring

CORNERS = {
    "back left": -1 + 1j,
    "front left": -1 - 1j,
    "front right": 1 - 1j,
    "back right": 1 + 1j,
}
"""Where each corner lies from the middle."""


def _own(corner: str) -> float | None:
    radius: float | None = length(
        f"radius of the {corner} corner, where it differs", default=None, required=False
    )
    return radius


def _beside(field: str) -> Limit:
    return at_most(
        field,
        lambda width, depth, corner: min(width, depth) - corner,
        "the shorter side less the radius of the other corners",
        "make it smaller, or the other corners, or the seat larger",
    )


@shape("rounded rectangle")
class RoundedRectangle(Outline):
    """A rectangle with corners of one radius, or of four; a square where width and depth agree.

    With one radius: length 2 (W + D) - (8 - 2 pi) r, area W D - (4 - pi) r^2.
    """

    width: float = length("left to right, at the widest", default=both(in_=16, mm=400), least=50)
    depth: float = length("front to back, at the deepest", default=both(in_=15, mm=380), least=50)
    corner: float = corner_radius("the corners", default=both(in_=2, mm=50))
    back_left: float | None = _own("back left")
    back_right: float | None = _own("back right")
    front_left: float | None = _own("front left")
    front_right: float | None = _own("front right")
    limits = (
        at_most(
            "corner",
            lambda width, depth: min(width, depth) / 2,
            "half the shorter side",
            "make the corner smaller or the seat larger",
        ),
        *map(_beside, ("back_left", "back_right", "front_left", "front_right")),
    )

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        """Yield each corner that leaves the next one no room on the side between them."""
        radii = _radii(values)
        names = [*CORNERS, "back left"]
        for i, (one, two) in enumerate(pairwise(names)):
            side = values["depth"] if i % 2 == 0 else values["width"]
            larger, other = sorted((one, two), key=lambda name: -radii[name])
            if radii[one] + radii[two] > side + 1e-9:
                yield Refusal(
                    _field(larger),
                    f"{{value}} is more than the {other} corner leaves of that side ({{limit}})",
                    value=radii[larger], limit=side - radii[other], show=LENGTH.show,
                    mend="make one of them smaller",
                )  # fmt: skip

    def struck(self) -> Ring:
        """Return the outline, each corner a quarter turn."""
        corners = {
            name: complex(at.real * self.width, at.imag * self.depth) / 2
            for name, at in CORNERS.items()
        }
        return rounded(sharp(corners), _radii(vars(self)))

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken: a radius in the corner that it is for."""
        yield Taken("width", complex(-self.width / 2), complex(self.width / 2))
        yield Taken("depth", -0.5j * self.depth, 0.5j * self.depth)
        ring, radii = self.struck(), _radii(vars(self))
        common = [name for name in reversed(CORNERS) if vars(self)[_field(name)] is None]
        for field, name in [("corner", name) for name in common[:1]] + [
            (_field(name), name) for name in CORNERS if name not in common
        ]:
            yield Taken.in_corner(field, ring, name, radii[name])

    def partner(self) -> Outline:
        """Return it with its left and right corners exchanged."""
        return replace(
            self,
            back_left=self.back_right,
            back_right=self.back_left,
            front_left=self.front_right,
            front_right=self.front_left,
        )


def _field(corner: str) -> str:
    return corner.replace(" ", "_")


def _radii(values: Mapping[str, Any]) -> dict[str, float]:
    """Return the radius of each corner: its own, or that of them all."""
    own = {name: values[_field(name)] for name in CORNERS}
    return {name: values["corner"] if radius is None else radius for name, radius in own.items()}
