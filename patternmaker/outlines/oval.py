"""The oval seat."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from patternmaker.facts import both, length
from patternmaker.geometry.biarcs import CLOSE, fitted
from patternmaker.geometry.framing import Ring
from patternmaker.outlines.registry import Outline, Taken, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

QUARTER = math.pi / 2


@shape("oval")
class Oval(Outline):
    """An ellipse, followed by tangent arcs.

    Length 4 a E(1 - b^2 / a^2) with half axes a > b, area pi a b.
    """

    width: float = length("left to right, at the widest", default=both(in_=16, mm=400), least=50)
    depth: float = length("front to back, at the deepest", default=both(in_=13, mm=330), least=50)

    def struck(self) -> Ring:
        """Return the ellipse, quarter by quarter from the back."""
        shorter, longer = sorted((self.width, self.depth))
        close = CLOSE * shorter / longer  # so that the area of a slender one is as right
        quarters = (fitted(self._at, i * QUARTER, (i + 1) * QUARTER, close) for i in range(1, 5))
        return Ring(tuple(arc for quarter in quarters for arc in quarter), {})

    def _at(self, angle: float) -> tuple[complex, complex]:
        a, b = self.width / 2, self.depth / 2
        way = complex(-a * math.sin(angle), b * math.cos(angle))
        return complex(a * math.cos(angle), b * math.sin(angle)), way / abs(way)

    def taken(self) -> Iterator[Taken]:
        """Yield where both axes are taken."""
        yield Taken("width", complex(-self.width / 2), complex(self.width / 2))
        yield Taken("depth", -0.5j * self.depth, 0.5j * self.depth)
