"""The square or rectangular seat, its corners rounded or sharp."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

from patternmaker.facts import HAIR, at_most, both, length
from patternmaker.geometry.compass import Compass
from patternmaker.outlines.registry import Outline, shape

if TYPE_CHECKING:
    from patternmaker.geometry.contour import Contour


@shape("rounded rectangle")
class RoundedRectangle(Outline):
    """A rectangle with corners of one radius; a square where width and depth agree.

    Length 2 (W + D) - (8 - 2 pi) r, area W D - (4 - pi) r^2.
    """

    width: float = length("left to right, at the widest", default=both(in_=16, mm=400), least=50)
    depth: float = length("front to back, at the deepest", default=both(in_=15, mm=380), least=50)
    corner: float = length(
        "radius of the corners; 0 for sharp ones", default=both(in_=2, mm=50), required=False
    )
    limits = (
        at_most(
            "corner",
            lambda width, depth: min(width, depth) / 2,
            "half the shorter side",
            "make the corner smaller or the seat larger",
        ),
    )

    def contour(self) -> Contour:
        """Return the outline, each corner a quarter turn."""
        x, y = self.width / 2, self.depth / 2
        r = self.corner if self.corner >= HAIR else 0.0
        compass = Compass(1j * y).joint("back").line(complex(r - x, y))
        _corner(compass, "back left", complex(r - x, y - r), r)
        compass.line(complex(-x, 0)).joint("left").line(complex(-x, r - y))
        _corner(compass, "front left", complex(r - x, r - y), r)
        compass.line(complex(0, -y)).joint("front").line(complex(x - r, -y))
        _corner(compass, "front right", complex(x - r, r - y), r)
        compass.line(complex(x, 0)).joint("right").line(complex(x, y - r))
        _corner(compass, "back right", complex(x - r, y - r), r)
        return compass.line(1j * y).closed()


def _corner(compass: Compass, name: str, centre: complex, radius: float) -> None:
    if not radius:
        compass.joint(name)
        return
    compass.joint(f"{name} begins").arc(centre, pi / 4)
    compass.joint(name).arc(centre, pi / 4).joint(f"{name} ends")
