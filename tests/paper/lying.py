"""A printer that prints long or short, or leans: what a page comes out as on its paper.

Lengths each way are those of the paper, so that they change places on a page that lies.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from tests.paper.curves import Curve, Piece
from tests.paper.raster import rendered

if TYPE_CHECKING:
    from tests.paper.raster import Raster
    from tests.paper.reader import Page


@dataclass(frozen=True)
class Lying:
    """A printer that prints so much long across the paper and up it: 0.006 is 0.6 %."""

    across: float
    up: float

    def factors(self, page: Page) -> tuple[float, float]:
        ways = 1 + self.across, 1 + self.up
        return ways if page.size[0] <= page.size[1] else ways[::-1]

    def printed(self, page: Page) -> Page:
        """Return the lines of a page as they lie on the paper."""
        x, y = self.factors(page)
        lines = [replace(line, curve=_stretched(line.curve, x, y)) for line in page.lines]
        return replace(page, size=(page.size[0] * x, page.size[1] * y), lines=lines)

    def rastered(self, content: bytes, page: Page, dpi: float) -> Raster:
        """Return the ink of a page as it lies on the paper."""
        return replace(rendered(content, page, dpi), size=self.printed(page).size)


def _stretched(curve: Curve, x: float, y: float) -> Curve:
    return Curve(tuple(
        Piece(tuple(complex(p.real * x, p.imag * y) for p in piece.controls))
        for piece in curve.pieces
    ))  # fmt: skip
