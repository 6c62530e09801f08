"""The round seat."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

from patternmaker.facts import both, length
from patternmaker.geometry.compass import Compass
from patternmaker.outlines.registry import Outline, Taken, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.framing import Ring


@shape("circle")
class Circle(Outline):
    """A round seat: four quarter turns about the middle.

    Length pi d, area pi d^2 / 4.
    """

    diameter: float = length("straight across the middle", default=both(in_=13, mm=330), least=50)

    def struck(self) -> Ring:
        """Return the circle."""
        compass = Compass(0.5j * self.diameter)
        for _ in range(4):
            compass.arc(0, pi / 2)
        return compass.ring()

    def taken(self) -> Iterator[Taken]:
        """Yield where the diameter is taken."""
        yield Taken("diameter", complex(-self.diameter / 2), complex(self.diameter / 2))
