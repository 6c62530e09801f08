"""Pieces as they are printed: a drawing, and the part of the paper that it needs."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from patternmaker.drawing.ends import StripEnds
from patternmaker.drawing.labels import (
    COLUMN_GAP,
    Context,
    Row,
    block,
    column_count,
    columns,
    fits,
    rows,
    smaller,
)
from patternmaker.drawing.pieces import label_room, piece_drawing
from patternmaker.drawing.surface import Drawing, rectangle
from patternmaker.geometry.contour import Contour

if TYPE_CHECKING:
    from collections.abc import Iterable

    from patternmaker.geometry.segments import Box
    from patternmaker.pattern.piece import Piece

SMALL, COLUMN = 0.6, 54.0  # size of type, and mm of width, of a label that is set in columns
QUARTERS = (1 + 0j, 1j, -1 + 0j, -1j)  # a turn to the left by so many quarters
OFF_THE_CUT = 7.0  # mm between a label and the edge of its sheet


def title_of(seat: str, piece: str) -> str:
    """Return what a piece of a seat is called on the sheets that show it."""
    return f"{seat}: {piece}"


@dataclass(frozen=True)
class Print:
    """A drawing to be put on paper.

    Args:
        piece: the name of the piece.
        seat: the name of its seat, or the names of those that share it.
        drawing: what is drawn.
        shape: the area that must all be on paper.
        label: what is still to be written on it, once it is known where the sheets are cut.
        room: the box in which that may stand.
        seats: the name of each seat that shares it, where there are several.
    """

    piece: str
    seat: str
    drawing: Drawing
    shape: Contour
    label: tuple[Row, ...] = ()
    room: Box = (0.0, 0.0, 0.0, 0.0)
    seats: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        """What it is called on the sheets that show it."""
        return title_of(self.seat, self.piece)

    @property
    def titles(self) -> tuple[str, ...]:
        """What it is called for each of its seats alone."""
        return tuple(title_of(seat, self.piece) for seat in self.seats or (self.seat,))

    @property
    def width(self) -> float:
        """Its extent from left to right."""
        return self.shape.width

    @property
    def height(self) -> float:
        """Its extent from bottom to top."""
        return self.shape.height

    def moved(self, shift: complex) -> Print:
        """Return it moved, once it is placed."""
        return replace(
            self, drawing=self.drawing.mapped(1, shift), shape=self.shape.mapped(1, shift)
        )

    def placed(
        self, left: float, bottom: float, *, turned: int, cells: Iterable[Box] = ()
    ) -> Print:
        """Return it with its lower left corner at a place, turned so many quarters to the left.

        Its label is written into the largest part of its room that one of the ``cells`` holds, so
        that no words run from one sheet to the next.
        """
        factor = QUARTERS[turned % 4]
        shape = self.shape.mapped(factor)
        shift = complex(left - shape.bounds[0], bottom - shape.bounds[1])
        rooms = [_shared(self.room, _mapped_back(cell, factor, shift)) for cell in cells]
        room = max(rooms, key=_area, default=self.room)
        return replace(
            self,
            drawing=(self.drawing + _label(self.label, room)).mapped(factor, shift),
            shape=shape.mapped(1, shift),
            label=(),
        )


def _label(rows: tuple[Row, ...], room: Box) -> Drawing:
    left, bottom, right, top = room
    if right - left > 2 * COLUMN and not fits(rows, right - left, top - bottom):
        small = smaller(rows, SMALL)
        count = column_count(small, COLUMN, top - bottom)
        if count * (COLUMN + COLUMN_GAP) - COLUMN_GAP <= right - left:
            return columns(small, left, top, COLUMN, top - bottom)
    middle = complex((left + right) / 2, (bottom + top) / 2)
    return block(rows, middle, max(0.0, right - left), max(0.0, top - bottom))


def _mapped_back(box: Box, factor: complex, shift: complex) -> Box:
    """Return a box in the coordinates that a quarter turn and a shift have left."""
    one, two = ((complex(*corner) - shift) / factor for corner in (box[:2], box[2:]))
    xs, ys = sorted((one.real, two.real)), sorted((one.imag, two.imag))
    return xs[0] + OFF_THE_CUT, ys[0] + OFF_THE_CUT, xs[1] - OFF_THE_CUT, ys[1] - OFF_THE_CUT


def _shared(one: Box, two: Box) -> Box:
    return max(one[0], two[0]), max(one[1], two[1]), min(one[2], two[2]), min(one[3], two[3])


def _area(box: Box) -> float:
    return max(0.0, box[2] - box[0]) * max(0.0, box[3] - box[1])


def print_of(piece: Piece, context: Context, *, whole: bool) -> Print:
    """Return a piece as it is printed: whole, or a straight strip as its ends where that saves."""
    if piece.is_strip and not whole:
        ends = StripEnds(piece, context)
        if ends.saves_paper:
            shape = Contour(rectangle(ends.box).segments)
            return Print(piece.name, context.seat, ends.drawing(), shape)
    return Print(
        piece.name,
        context.seat,
        piece_drawing(piece),
        piece.cut,
        label=tuple(rows(piece, context)),
        room=label_room(piece),
    )
