"""Pieces as they are printed: a drawing, and the part of the paper that it needs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.drawing.ends import StripEnds
from patternmaker.drawing.pieces import piece_drawing
from patternmaker.drawing.surface import rectangle
from patternmaker.geometry.contour import Contour

if TYPE_CHECKING:
    from patternmaker.drawing.labels import Context
    from patternmaker.drawing.surface import Drawing
    from patternmaker.pattern.piece import Piece


@dataclass(frozen=True)
class Print:
    """A drawing to be put on paper.

    Args:
        piece: the name of the piece.
        seat: the name of its seat.
        drawing: what is drawn.
        shape: the area that must all be on paper.
        is_whole: whether the piece is drawn whole, or as its ends.
    """

    piece: str
    seat: str
    drawing: Drawing
    shape: Contour
    is_whole: bool = True

    @property
    def title(self) -> str:
        """What it is called on the sheets that show it."""
        return f"{self.seat}: {self.piece}"

    @property
    def width(self) -> float:
        """Its extent from left to right."""
        return self.shape.width

    @property
    def height(self) -> float:
        """Its extent from bottom to top."""
        return self.shape.height

    def placed(self, left: float, bottom: float, *, turned: bool) -> Print:
        """Return it with its lower left corner at a place, a quarter turn to the left if asked."""
        factor = 1j if turned else 1 + 0j
        shape = self.shape.mapped(factor)
        shift = complex(left - shape.bounds[0], bottom - shape.bounds[1])
        return Print(
            self.piece,
            self.seat,
            self.drawing.mapped(factor, shift),
            shape.mapped(1, shift),
            self.is_whole,
        )


def print_of(piece: Piece, context: Context, *, whole: bool) -> Print:
    """Return a piece as it is printed: whole, or a straight strip as its ends where that saves."""
    if piece.is_strip and not whole:
        ends = StripEnds(piece, context)
        if ends.saves_paper:
            shape = Contour(rectangle(ends.box).segments)
            return Print(piece.name, context.seat, ends.drawing(), shape, is_whole=False)
    return Print(piece.name, context.seat, piece_drawing(piece, context), piece.cut)
