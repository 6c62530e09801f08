"""The bench with one end round, or both."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from patternmaker.facts import at_least, at_most, both, choice, length
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.framing import Ring, mirrored
from patternmaker.geometry.rounding import rounded
from patternmaker.outlines.registry import Outline, Taken, corner_radius, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

SQUARE = ("front right", "back right")
_PARTNER = {"left": "right", "right": "left", "both": "both"}


@shape("round-ended bench")
class RoundEndedBench(Outline):
    """A bench whose ends, one or both, are half circles across its whole depth.

    With both, length 2 (W - D) + pi D, area (W - D) D + pi D^2 / 4.
    """

    width: float = length("left to right, from end to end", default=both(in_=36, mm=900), least=50)
    depth: float = length("front to back", default=both(in_=13, mm=330), least=50)
    round_ends: str = choice("which end is round", ("both", "left", "right"), default="both")
    corner: float = corner_radius("the corners of a square end", default=both(in_=1.5, mm=40))
    limits = (
        at_least("width", lambda depth: depth, "the depth", "exchange the two: a bench is wide"),
        at_most(
            "corner",
            lambda depth: depth / 2,
            "half the depth",
            "make the corner smaller or the bench deeper",
        ),
    )

    def struck(self) -> Ring:
        """Return the outline with its round end at the left, or as it is asked for."""
        x, y = self.width / 2, self.depth / 2
        compass = Compass(complex(x - y, y)).line(complex(y - x, y)).arc(complex(y - x), math.pi)
        if self.round_ends == "both":
            return compass.line(complex(x - y, -y)).arc(complex(x - y), math.pi).ring()
        compass.line(complex(x, -y)).joint(SQUARE[0]).line(complex(x, y)).joint(SQUARE[1])
        ring = rounded(compass.line(complex(x - y, y)).ring(), dict.fromkeys(SQUARE, self.corner))
        return ring if self.round_ends == "left" else mirrored(ring)

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken; both ends round, there is no corner to measure."""
        x, y = self.width / 2, self.depth / 2
        yield Taken("width", complex(-x), complex(x))
        yield Taken("depth", -1j * y, 1j * y)
        if self.round_ends != "both":
            square = "front right" if self.round_ends == "left" else "front left"
            yield Taken.in_corner("corner", self.struck(), square, self.corner)

    def partner(self) -> Outline:
        """Return the bench with its other end round."""
        return replace(self, round_ends=_PARTNER[self.round_ends])
