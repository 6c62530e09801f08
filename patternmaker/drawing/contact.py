"""All shapes on one sheet: small, by name, with the line to cut and the line to sew."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.drawing.labels import by
from patternmaker.drawing.looks import INDIGO, SLATE, Pen
from patternmaker.drawing.measures import usual
from patternmaker.drawing.shapes import MARGIN, PALE, Picture, without_seat
from patternmaker.drawing.surface import Drawing, Fill, Letters, Mark, Stroke
from patternmaker.facts import facts_of
from patternmaker.outlines import SHAPES
from patternmaker.pattern.allowances import Allowances

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.outlines import Outline
    from patternmaker.units import Unit

ACROSS = 4  # shapes in a row
CELL = 62 + 62j  # mm
SEAT = 50 + 44j  # mm; the most that one may take, within its cut line
TITLE, NAME, SMALL = 8.0, 4.0, 3.2  # mm; sizes of type
HEAD = 26.0  # mm; room for the heading
CUT, SEW = Pen(0.35), Pen(0.3, (2, 0.8), INDIGO)


def contact_sheet(unit: Unit) -> Picture:
    """Return a picture of every shape at its usual size, each to a scale of its own."""
    kinds = list(SHAPES.all.values())
    down = -(-len(kinds) // ACROSS)
    width, height = ACROSS * CELL.real + 2 * MARGIN, down * CELL.imag + HEAD + 2 * MARGIN
    marks = [*_heading(height, unit)]
    for number, kind in enumerate(kinds):
        row, column = divmod(number, ACROSS)
        corner = complex(MARGIN + column * CELL.real, height - MARGIN - HEAD - row * CELL.imag)
        marks += _cell(kind, corner + CELL.real / 2, unit)
    return Picture("Seat shapes", (width, height), Drawing(tuple(marks)))


def _allowance(unit: Unit) -> float:
    return float(facts_of(Allowances)["seam"].default.in_(unit))


def _heading(height: float, unit: Unit) -> Iterator[Mark]:
    y = height - MARGIN - TITLE * 0.75
    yield Letters(complex(MARGIN, y), "Seat shapes", TITLE, bold=True, colour=INDIGO)
    seam = facts_of(Allowances)["seam"].quantity.show(_allowance(unit), unit)
    says = f"From above, front below; full line to cut, dashed line to sew, {seam} apart"
    yield Letters(complex(MARGIN, y - 7), says, NAME, colour=SLATE)


def _cell(kind: type[Outline], top: complex, unit: Unit) -> Iterator[Mark]:
    """Yield the seat, name and size of a shape, below the middle of the top of its cell."""
    outline = usual(kind, unit)
    low = top - 1j * (SEAT.imag + 7)
    yield Letters(low, kind.called, NAME, bold=True, anchor="middle")
    if outline is None:
        middle = top - 0.5j * SEAT.imag
        yield Letters(middle, without_seat(kind), SMALL, anchor="middle", colour=SLATE)
        return
    sew = outline.contour()
    size = by(sew.width, sew.height, unit)
    yield Letters(low - 5j, size, SMALL, anchor="middle", colour=SLATE)
    yield from _lines(outline, top - 0.5j * SEAT.imag, unit)


def _lines(outline: Outline, middle: complex, unit: Unit) -> Iterator[Mark]:
    sew = outline.contour()
    cut = sew.grown(_allowance(unit))
    factor = min(SEAT.real / cut.width, SEAT.imag / cut.height)
    for path, pen in ((cut, CUT), (sew, SEW)):
        placed = path.mapped(factor, middle)
        yield from (Fill(placed, PALE),) if path is cut else ()
        yield Stroke(placed, pen)
