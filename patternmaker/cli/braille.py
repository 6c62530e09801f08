"""Line pictures on a terminal: of braille dots, two by four to a letter, or of plain signs."""

from __future__ import annotations

import codecs
import math
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

ACROSS, DOWN = 2, 4  # dots of a cell; a cell is about twice as high as it is wide
BLANK = 0x2800  # the Unicode block Braille Patterns begins with the one without a dot
BITS = ((0x01, 0x08), (0x02, 0x10), (0x04, 0x20), (0x40, 0x80))  # of the dots, row by row
EDGE, LINE = "*", "."  # the plain signs of a seat and of a measurement


def takes_braille(encoding: str | None) -> bool:
    """Return whether text in an encoding can hold the signs of braille.

    >>> takes_braille("utf-8"), takes_braille("cp1252"), takes_braille(None)
    (True, False, False)
    """
    try:
        codecs.encode(chr(BLANK + 0xFF), encoding or "ascii")
    except (UnicodeError, LookupError):
        return False
    return True


class Raster:
    """A field of dots, y upward, with letters in some of its cells."""

    def __init__(self, columns: int, rows: int) -> None:
        self.columns, self.rows = columns, rows
        self._dots: dict[tuple[int, int], int] = {}
        self._signs: dict[tuple[int, int], str] = {}
        self._letters: dict[tuple[int, int], str] = {}

    def line(self, points: Sequence[complex], *, every: int = 1) -> None:
        """Set dots along a chain of points given in dots; of a lighter line only some.

        Args:
            points: the chain.
            every: which dots of it are set: all of them, every other one, and so on.
        """
        for number, spot in enumerate(_spots(points)):
            if number % every == 0:
                self._set(*spot, EDGE if every == 1 else LINE)

    def _set(self, x: int, y: int, sign: str) -> None:
        cell = self._cell(x, y)
        row, column = DOWN - 1 - y % DOWN, x % ACROSS
        self._dots[cell] = self._dots.get(cell, 0) | BITS[row][column]
        if self._signs.get(cell) != EDGE:
            self._signs[cell] = sign

    def letter(self, at: complex, text: str) -> None:
        """Write a letter or a few, the first in the cell that holds a point given in dots."""
        column, row = self._cell(*_dot(at))
        for number, sign in enumerate(text):
            self._letters[column + number, row] = sign

    def _cell(self, x: int, y: int) -> tuple[int, int]:
        return x // ACROSS, self.rows - 1 - y // DOWN

    def shown(self, *, braille: bool) -> list[str]:
        """Return its rows from the top, without blanks at their ends."""
        return ["".join(self._row(row, braille=braille)).rstrip() for row in range(self.rows)]

    def _row(self, row: int, *, braille: bool) -> Iterator[str]:
        for cell in ((column, row) for column in range(self.columns)):
            if cell in self._letters:
                yield self._letters[cell]
            elif braille:
                yield chr(BLANK + self._dots[cell]) if cell in self._dots else " "
            else:
                yield self._signs.get(cell, " ")


def _spots(points: Sequence[complex]) -> Iterator[tuple[int, int]]:
    """Yield the dots along a chain, each once in a run, no gap between them."""
    last = None
    for begin, end in pairwise(points):
        step = end - begin
        count = max(1, math.ceil(max(abs(step.real), abs(step.imag))))
        for i in range(count + 1):
            spot = _dot(begin + step * i / count)
            if spot != last:
                yield spot
            last = spot


def _dot(point: complex) -> tuple[int, int]:
    """Return the dot nearest to a point; halves always go up, so that no dot of a row is missed."""
    return math.floor(point.real + 0.5), math.floor(point.imag + 0.5)
