"""The round seat."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

from patternmaker.facts import both, length
from patternmaker.geometry.compass import Compass
from patternmaker.outlines.registry import Outline, shape

if TYPE_CHECKING:
    from patternmaker.geometry.contour import Contour


@shape("circle")
class Circle(Outline):
    """A round seat: four quarter turns about the middle.

    Length pi d, area pi d^2 / 4.
    """

    diameter: float = length("straight across the middle", default=both(in_=13, mm=330), least=50)

    def contour(self) -> Contour:
        """Return the circle."""
        compass = Compass(0.5j * self.diameter)
        for joint in ("back", "left", "front", "right"):
            compass.joint(joint).arc(0, pi / 2)
        return compass.closed()
