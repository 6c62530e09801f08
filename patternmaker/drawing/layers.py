"""Which marks of a piece are shown or hidden together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.drawing.looks import PENS
from patternmaker.drawing.surface import Stroke
from patternmaker.pattern.piece import LineKind

if TYPE_CHECKING:
    from patternmaker.drawing.surface import Mark

CUT, SEW, MARKS, NOTES = "Cut lines", "Sew and fold lines", "Marks", "Notes"
LAYERS = {
    LineKind.CUT: CUT, LineKind.RELIEF: CUT, LineKind.SEW: SEW, LineKind.TOPSTITCH: SEW,
    LineKind.FOLD: SEW, LineKind.JOIN: SEW, LineKind.PLEAT: SEW,
}  # fmt: skip
OF_PENS = {pen: LAYERS.get(kind, MARKS) for kind, pen in PENS.items()}


def layer_of(mark: Mark) -> str:
    """Return the layer of a mark: what it is drawn with tells it."""
    return OF_PENS.get(mark.pen, NOTES) if isinstance(mark, Stroke) else NOTES
