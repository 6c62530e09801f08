"""The seat with equal sides: hexagon, octagon and so on."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from patternmaker.facts import at_most, both, count, length
from patternmaker.geometry.framing import sharp
from patternmaker.geometry.rounding import rounded
from patternmaker.geometry.segments import turned
from patternmaker.outlines.registry import Outline, Taken, corner_radius, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.framing import Ring


@shape("regular polygon")
class RegularPolygon(Outline):
    """A seat with equal sides and rounded corners, one side straight in front.

    Length n s - 2 r (n tan(pi / n) - pi), area n s^2 / (4 tan(pi / n)) - r^2 (n tan(pi / n) - pi).
    """

    sides: int = count("how many sides", default=6, least=3, most=24)
    side: float = length("along one side, from corner to corner", default=both(in_=8, mm=200),
                         least=20, most=2000)  # fmt: skip
    corner: float = corner_radius("the corners", default=both(in_=1, mm=25))
    limits = (
        at_most(
            "corner",
            lambda sides, side: side / (2 * math.tan(math.pi / sides)),
            "that of the circle inside",
            "make the corner smaller or the sides longer",
        ),
    )

    def struck(self) -> Ring:
        """Return the outline about its middle, its corners numbered from the back."""
        reach, step = self._reach, 2 * math.pi / self.sides
        first = -math.pi / 2 + step * (0.5 + math.ceil(self.sides / 2 - 0.5 - 1e-9))
        ring = sharp(
            {f"corner {i + 1}": reach * turned(first + i * step) for i in range(self.sides)}
        )
        return rounded(ring, dict.fromkeys(ring.joints, self.corner))

    @property
    def _reach(self) -> float:
        """From the middle to a corner."""
        return self.side / (2 * math.sin(math.pi / self.sides))

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken: the side is the one in front."""
        y = -self._reach * math.cos(math.pi / self.sides)
        yield Taken("side", complex(-self.side / 2, y), complex(self.side / 2, y))
        way = turned(math.pi / self.sides - math.pi / 2)
        centre = (self._reach - self.corner / math.cos(math.pi / self.sides)) * way
        yield Taken("corner", centre, centre + self.corner * way)
