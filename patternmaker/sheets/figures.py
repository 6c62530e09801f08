"""The pieces of a seat drawn small in rows, each with its name, how many, and its cut size."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import tally_of
from patternmaker.drawing.labels import by
from patternmaker.drawing.looks import SLATE
from patternmaker.drawing.small import small_drawing
from patternmaker.drawing.surface import BLACK, Drawing, Letters, Mark
from patternmaker.drawing.typeface import LINE, width, wrapped
from patternmaker.sheets.flow import Block

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.cutlist.rows import Tally
    from patternmaker.pattern.piece import Piece
    from patternmaker.units import Unit

LONG = 4.0  # times its height; a wider piece is drawn below the others, if need be smaller
GAP = 4.0  # mm between two pieces, and below a row
MOST_ABREAST = 4  # pieces in a row, where what they say is long
GROWS = 0.8  # of the spare room that the drawings take
SMALLER, TIMES = 0.94, 45  # by which the scale is lessened until all rows fit, and how often


@dataclass(frozen=True)
class Caption:
    """What stands below a piece: its name and how many, its cut size; and how wide it runs."""

    name: str
    size: str
    type: float

    @cached_property
    def width(self) -> float:
        """How wide it runs if it is not wrapped."""
        return max(width(self.name, self.type, bold=True), width(self.size, self.type))

    def lines(self, room: float) -> list[tuple[str, bool]]:
        """Return it in lines no wider than a room, each of them bold or not."""
        return [
            (line, bold)
            for text, bold in ((self.name, True), (self.size, False))
            for line in (
                [text] if self.width <= room else wrapped(text, self.type, room, bold=bold)
            )
        ]


@dataclass(frozen=True)
class Figure:
    """A piece in its row: how large it is drawn, and the room that it takes there, mm."""

    piece: Piece
    caption: Caption
    factor: float
    room: float

    @property
    def high(self) -> float:
        """How high it is drawn."""
        return self.piece.cut.height * self.factor

    @property
    def lines(self) -> list[tuple[str, bool]]:
        """What stands below it."""
        return self.caption.lines(self.room - GAP / 2)

    def marks(self, left: float, high: float) -> Iterator[Mark]:
        """Yield it, drawn in a row so high whose top is at y = 0."""
        middle = left + self.room / 2
        yield from small_drawing(self.piece, self.factor, complex(middle, -high / 2)).marks
        size = self.caption.type
        for i, (text, bold) in enumerate(self.lines, 1):
            colour = BLACK if bold else SLATE
            yield Letters(complex(middle, -high - size * LINE * i), text, size, bold, "middle",
                          colour=colour)  # fmt: skip


@dataclass(frozen=True)
class Figures:
    """The rows of a seat's pieces, in as much of a column as they are given.

    Args:
        pieces: the seat's.
        seats: how many are made.
        unit: the job's.
        width: of the column.
        room: the height of all rows, mm.
        type: the size of what stands below each piece.
    """

    pieces: Sequence[Piece]
    seats: Tally
    unit: Unit
    width: float
    room: float
    type: float

    @cached_property
    def rows(self) -> list[list[Figure]]:
        """The rows, all pieces to the largest scale that there is room for."""
        scale = self._largest
        for _ in range(TIMES):
            rows = list(self._rows(scale))
            if sum(self._height(row) for row in rows) <= self.room:
                break
            scale *= SMALLER
        return rows

    @property
    def _largest(self) -> float:
        """The largest scale that any row could be drawn to."""
        flat = [piece for piece in self.pieces if not _is_long(piece)] or self.pieces
        widest = max(piece.cut.width for piece in flat)
        return min((self.width - GAP) / widest, self.room / max(p.cut.height for p in flat))

    @property
    def height(self) -> float:
        """How much of the column they take."""
        return sum(self._height(row) for row in self.rows)

    def grown(self, spare: float) -> Figures:
        """Return them larger, by no more of the column than is to spare."""
        larger = replace(self, room=max(self.room, self.height + spare * GROWS))
        return larger if larger.height <= self.height + spare else self

    def blocks(self) -> Iterator[Block]:
        """Yield each row, drawn, its pieces spread over the column."""
        for row in self.rows:
            high = max(figure.high for figure in row)
            spare = (self.width - sum(figure.room for figure in row)) / len(row)
            marks: list[Mark] = []
            left = spare / 2
            for figure in row:
                marks += figure.marks(left, high)
                left += figure.room + spare
            yield Block(self._height(row), Drawing(tuple(marks)))

    @cached_property
    def _ordered(self) -> list[Piece]:
        """The pieces, long ones last."""
        return sorted(self.pieces, key=_is_long)

    @cached_property
    def _captions(self) -> list[Caption]:
        return [
            Caption(
                f"{piece.name.capitalize()}: cut {tally_of(piece, self.seats)}",
                by(piece.cut.width, piece.cut.height, self.unit),
                self.type,
            )
            for piece in self._ordered
        ]

    def _rows(self, scale: float) -> Iterator[list[Figure]]:
        """Yield rows as full as they can be."""
        row: list[Figure] = []
        used = 0.0
        for figure in self._figures(scale):
            if row and used + figure.room > self.width:
                yield row
                row, used = [], 0.0
            row.append(figure)
            used += figure.room
        if row:
            yield row

    def _figures(self, scale: float) -> Iterator[Figure]:
        long = [piece.cut.width for piece in self.pieces if _is_long(piece)]
        lesser = min([scale, *((self.width - GAP) / each for each in long)])
        for piece, caption in zip(self._ordered, self._captions, strict=True):
            factor = lesser if _is_long(piece) else scale
            says = min(caption.width, self.width / MOST_ABREAST - GAP)
            yield Figure(piece, caption, factor, max(piece.cut.width * factor, says) + GAP)

    def _height(self, row: Sequence[Figure]) -> float:
        lines = max(len(figure.lines) for figure in row)
        return max(figure.high for figure in row) + lines * self.type * LINE + GAP


def _is_long(piece: Piece) -> bool:
    return piece.is_strip or piece.cut.width > LONG * piece.cut.height
