"""Pages as a printer's eye sees them: rendered, and strokes measured by where their ink lies."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import pypdfium2
from numpy.typing import NDArray

if TYPE_CHECKING:
    from tests.paper.reader import Page

HALF = 0.8  # mm to each side of a stroke within which all of its ink lies
Ink = NDArray[np.float32]


@dataclass(frozen=True)
class Raster:
    """A page's ink, 0 to 1, row by row from the top.

    The renderer rounds a page up to whole pixels, so a pixel's size is taken from the page's.
    """

    ink: Ink
    size: tuple[float, float]

    @property
    def pixel(self) -> tuple[float, float]:
        """Width and height of a pixel, mm."""
        rows, columns = self.ink.shape
        return self.size[0] / columns, self.size[1] / rows

    def column(self, x: float) -> float:
        return x / self.pixel[0]

    def row(self, y: float) -> float:
        return (self.size[1] - y) / self.pixel[1]

    def x_of_ink(self, x: float, y: float, half: float = HALF) -> float:
        """Return where the ink near ``x`` is centred, on the row of pixels at a height."""
        row = int(self.row(y))
        first, last = round(self.column(x - half)), round(self.column(x + half))
        return _centre(self.ink[row, first:last], first) * self.pixel[0]

    def y_of_ink(self, x: float, y: float, half: float = HALF) -> float:
        """Return where the ink near ``y`` is centred, on the column of pixels at ``x``."""
        column = int(self.column(x))
        first, last = round(self.row(y + half)), round(self.row(y - half))
        return self.size[1] - _centre(self.ink[first:last, column], first) * self.pixel[1]

    def middle_of_row(self, y: float) -> float:
        """Return the height of the middle of the row of pixels that a height falls in."""
        return self.size[1] - (int(self.row(y)) + 0.5) * self.pixel[1]

    def middle_of_column(self, x: float) -> float:
        """Return the middle of the column of pixels that ``x`` falls in."""
        return (int(self.column(x)) + 0.5) * self.pixel[0]


def _centre(ink: Ink, first: int) -> float:
    weight = float(ink.sum())
    assert weight > 0.5, "no ink where a stroke should be"
    return float((ink * (np.arange(len(ink)) + 0.5)).sum()) / weight + first


def rendered(content: bytes, page: Page, dpi: float) -> Raster:
    """Return a page's ink."""
    with pypdfium2.PdfDocument(content) as document:
        bitmap = document[page.number].render(scale=dpi / 72, grayscale=True)
        grey = np.array(bitmap.to_numpy(), dtype=np.float32)
    return Raster(np.float32(1) - grey.reshape(grey.shape[:2]) / np.float32(255), page.size)
