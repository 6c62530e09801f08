"""What each kind of line looks like: told apart by its dashes even without colour."""

from __future__ import annotations

from dataclasses import dataclass

from patternmaker.drawing.surface import BLACK, Colour
from patternmaker.pattern.piece import LineKind

INDIGO: Colour = (0.13, 0.2, 0.5)
UMBER: Colour = (0.45, 0.26, 0.08)
MADDER: Colour = (0.66, 0.11, 0.16)
FIR: Colour = (0.1, 0.36, 0.26)
PLUM: Colour = (0.42, 0.14, 0.42)
SLATE: Colour = (0.35, 0.38, 0.42)
MIST: Colour = (0.72, 0.74, 0.77)
PAPER: Colour = (1.0, 1.0, 1.0)


@dataclass(frozen=True)
class Pen:
    """How a line is drawn: its width and dashes in mm, its colour."""

    width: float
    dashes: tuple[float, ...] = ()
    colour: Colour = BLACK


PENS: dict[LineKind, Pen] = {
    LineKind.CUT: Pen(0.6),
    LineKind.SEW: Pen(0.35, (4, 1.5), INDIGO),
    LineKind.TOPSTITCH: Pen(0.3, (1.2, 1.2), UMBER),
    LineKind.FOLD: Pen(0.3, (8, 1.5, 1.5, 1.5), FIR),
    LineKind.JOIN: Pen(0.35, (4, 1.5, 1, 1.5), INDIGO),
    LineKind.REFERENCE: Pen(0.4, (10, 2, 2, 2, 2, 2), MADDER),
    LineKind.CENTRE: Pen(0.3),
    LineKind.NOTCH: Pen(0.5),
    LineKind.CLIP: Pen(0.25, (1, 0.7), SLATE),
    LineKind.PLEAT: Pen(0.35, (3, 1), INDIGO),
    LineKind.RELIEF: Pen(0.5, (2, 1), MADDER),
    LineKind.STAPLE: Pen(0.5, (), MADDER),
    LineKind.SEWING: Pen(0.6, (), INDIGO),
    LineKind.MATCH: Pen(0.4, (6, 1.2, 0.8, 1.2, 0.8, 1.2, 0.8, 1.2), PLUM),
}

HAIRLINE = Pen(0.15, (), SLATE)
FINE = Pen(0.25, (), SLATE)
RULE = Pen(0.3)
DIMENSION = Pen(0.2, (), SLATE)
