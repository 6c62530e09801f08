"""The pieces of a seat drawn small in rows, each with its name, how many, and its cut size."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import tally_of
from patternmaker.drawing.labels import by
from patternmaker.drawing.looks import SLATE
from patternmaker.drawing.small import small_drawing
from patternmaker.drawing.surface import BLACK, Drawing, Letters, Mark
from patternmaker.drawing.typeface import LINE, wrapped
from patternmaker.sheets.flow import Block

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.cutlist.rows import Tally
    from patternmaker.pattern.piece import Piece
    from patternmaker.units import Unit

LONG = 2.5  # times its height; a piece that is wider stands below the others
LOWER = 0.4  # of the height of a flat piece's room, for a long one's
LOWEST = 11.0  # mm; lower long pieces are not drawn side by side
MOST_ABREAST = 4  # flat pieces in a row
GAP = 4.0  # mm between two pieces, and below a row
GROWS = 0.8  # of the spare room that the drawings take
LARGER = 1.5  # times the scale of the largest piece, that a small one is drawn at


@dataclass(frozen=True)
class Figure:
    """A piece in its row.

    Args:
        piece: the piece.
        factor: how large it is drawn.
        middle: of its room, from the left of the row.
        says: what stands below it, in lines, each bold or not.
    """

    piece: Piece
    factor: float
    middle: float
    says: tuple[tuple[str, bool], ...]

    @property
    def high(self) -> float:
        """How high it is drawn."""
        return self.piece.cut.height * self.factor


@dataclass(frozen=True)
class Figures:
    """The rows of a seat's pieces.

    Args:
        pieces: the seat's.
        seats: how many are made.
        unit: the job's.
        width: of the column.
        room: the height in which a flat piece is drawn, mm.
        type: the size of what stands below it.
    """

    pieces: Sequence[Piece]
    seats: Tally
    unit: Unit
    width: float
    room: float
    type: float

    @cached_property
    def rows(self) -> tuple[tuple[Figure, ...], ...]:
        """Flat pieces side by side, nearly to one scale; then the long ones, exactly to one."""
        long = [piece for piece in self.pieces if piece.cut.width > LONG * piece.cut.height]
        flat = [piece for piece in self.pieces if piece not in long]
        rows = -(-len(flat) // MOST_ABREAST)
        return (*(self._flat(row) for row in _evenly(flat, rows)), *self._long(long))

    @property
    def height(self) -> float:
        """How much of the column they take."""
        return sum(self._height(row) for row in self.rows)

    def grown(self, spare: float) -> Figures:
        """Return them larger, by no more of the column than is to spare."""
        larger = replace(self, room=self.room + spare * GROWS / max(1, len(self.rows)))
        return larger if larger.height <= self.height + spare else self

    def blocks(self) -> Iterator[Block]:
        """Yield each row, drawn."""
        for row in self.rows:
            high = max(figure.high for figure in row)
            marks: list[Mark] = []
            for each in row:
                at = complex(each.middle, -high / 2)
                marks += small_drawing(each.piece, each.factor, at).marks
                marks += self._caption(each, -high)
            yield Block(self._height(row), Drawing(tuple(marks)))

    def _flat(self, row: Sequence[Piece]) -> tuple[Figure, ...]:
        """Return a row of equal rooms."""
        room = self.width / len(row)
        fits = [min((room - GAP) / p.cut.width, self.room / p.cut.height) for p in row]
        return tuple(
            Figure(piece, min(fit, LARGER * min(fits)), (i + 0.5) * room, self._says(piece, room))
            for i, (piece, fit) in enumerate(zip(row, fits, strict=True))
        )

    def _long(self, long: Sequence[Piece]) -> Iterator[tuple[Figure, ...]]:
        """Yield rows of rooms that share the width as their pieces do, as few rows as can be."""
        lowest = min((piece.cut.height for piece in long), default=0.0)
        for count in range(1, len(long) + 1):
            rows = list(_evenly(long, count))
            factor = min(self._scale(row) for row in rows)
            if factor * lowest >= LOWEST or count == len(long):
                yield from (self._strip(row, factor) for row in rows)
                return

    def _scale(self, row: Sequence[Piece]) -> float:
        room = self.width - GAP * len(row)
        highest = max(piece.cut.height for piece in row)
        return min(room / sum(p.cut.width for p in row), LOWER * self.room / highest)

    def _strip(self, row: Sequence[Piece], factor: float) -> tuple[Figure, ...]:
        """Return a row of long pieces to one scale."""
        spare = self.width - factor * sum(piece.cut.width for piece in row)
        x, figures = 0.0, []
        for piece in row:
            room = piece.cut.width * factor + spare / len(row)
            figures.append(Figure(piece, factor, x + room / 2, self._says(piece, room)))
            x += room
        return tuple(figures)

    def _height(self, row: Sequence[Figure]) -> float:
        lines = max(len(figure.says) for figure in row)
        return max(figure.high for figure in row) + lines * self.type * LINE + GAP

    def _says(self, piece: Piece, room: float) -> tuple[tuple[str, bool], ...]:
        """Return what stands below a piece: its name, how many, and its cut size."""
        name = f"{piece.name.capitalize()}: cut {tally_of(piece, self.seats)}"
        size = by(piece.cut.width, piece.cut.height, self.unit)
        return tuple(
            (line, bold)
            for text, bold in ((name, True), (size, False))
            for line in wrapped(text, self.type, room - GAP / 2, bold=bold)
        )

    def _caption(self, figure: Figure, top: float) -> Iterator[Letters]:
        for i, (text, bold) in enumerate(figure.says, 1):
            at = complex(figure.middle, top - self.type * LINE * i)
            yield Letters(at, text, self.type, bold, "middle", colour=BLACK if bold else SLATE)


def _evenly(pieces: Sequence[Piece], rows: int) -> Iterator[list[Piece]]:
    """Yield the pieces in so many rows, as even as can be."""
    abreast = math.ceil(len(pieces) / max(1, rows))
    for i in range(0, len(pieces), abreast or 1):
        yield list(pieces[i : i + abreast])
