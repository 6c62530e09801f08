"""The round seat with a straight opening."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from patternmaker.facts import HAIR, at_most, both, length
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.rounding import rounded
from patternmaker.outlines.registry import Outline, Taken, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.framing import Ring

ENDS = ("front left", "front right")


def _depth(diameter: float, opening: float) -> float:
    """Return the depth from the straight front to the round back."""
    return diameter / 2 + math.sqrt(max(0.0, diameter**2 - opening**2)) / 2


@shape("horseshoe")
class Horseshoe(Outline):
    """A horseshoe or tub seat: a circle cut off straight in front.

    With v = 2 asin(O / d) the angle of the part cut off, length d (pi - v / 2) + O, area
    d^2 (2 pi - v + sin v) / 8.
    """

    diameter: float = length("left to right, at the widest", default=both(in_=18, mm=460), least=60)
    opening: float = length(
        "along the straight front, from end to end", default=both(in_=14, mm=360), least=20
    )
    corner: float = length(
        "radius at both ends of the straight front; 0 for sharp",
        default=both(in_=1, mm=25), required=False,
    )  # fmt: skip
    limits = (
        at_most(
            "opening",
            lambda diameter: diameter,
            "the diameter",
            "make it smaller, or take a half round",
        ),
        at_most(
            "corner",
            lambda diameter, opening: _depth(diameter, opening) / 2 - HAIR,
            "half the depth",
            "make the corner smaller or the seat larger",
        ),
    )

    def struck(self) -> Ring:
        """Return the outline about the middle of its circle, the straight edge in front."""
        radius = self.diameter / 2
        half = math.asin(min(1.0, self.opening / self.diameter))
        front = -1j * (_depth(self.diameter, self.opening) - radius)
        compass = Compass(front - self.opening / 2).joint(ENDS[0])
        compass.line(front + self.opening / 2).joint(ENDS[1]).arc(0, 2 * (math.pi - half))
        return rounded(compass.ring(), dict.fromkeys(ENDS, self.corner))

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken."""
        yield Taken("diameter", complex(-self.diameter / 2), complex(self.diameter / 2))
        front = -1j * (_depth(self.diameter, self.opening) - self.diameter / 2)
        yield Taken("opening", front - self.opening / 2, front + self.opening / 2)
        yield Taken.in_corner("corner", self.struck(), ENDS[1], self.corner)
