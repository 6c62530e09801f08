"""The overview: proof of scale, map of sheets and joins, cut list, fit report, cautions."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import CutRow, Drafted, cut_rows, needs, seats_of
from patternmaker.cutlist.sewing import HEADS, sew_rows, thread_says
from patternmaker.cutlist.sharing import in_runs
from patternmaker.cutlist.strike import by_hand
from patternmaker.cutlist.sundries import sundry_rows
from patternmaker.drawing.labels import by, show
from patternmaker.drawing.looks import MADDER, PENS, SLATE, Pen
from patternmaker.drawing.prints import title_of
from patternmaker.drawing.surface import Drawing, Letters, Mark, Stroke
from patternmaker.drawing.typeface import LINE, wrapped
from patternmaker.geometry.contour import Path
from patternmaker.pattern.piece import LineKind
from patternmaker.pattern.stitching import USUAL
from patternmaker.sheets.cautions import CAUTIONS
from patternmaker.sheets.choosing import told
from patternmaker.sheets.flow import (
    TEXT,
    Block,
    column_width,
    flowed,
    heading,
    paragraph,
    row,
    space,
)
from patternmaker.sheets.furniture import bar_says, proof_triangle
from patternmaker.sheets.index import sheets_of
from patternmaker.sheets.map import NumberedPlate, map_blocks
from patternmaker.units import Unit, show_area, with_set_fractions

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from patternmaker.sheets.papers import Stock

TITLE = 9.0  # mm; type of the job's name
LEAD = 3.8  # mm; type of the line below it
TRIANGLE = Pen(0.3)
SHARES = (0.17, 0.13, 0.17, 0.06, 0.15, 0.15, 0.09, 0.08)
SEWING_SHARES = (0.17, 0.17, 0.13, 0.19, 0.12, 0.11, 0.11)
SWATCH = 20.0  # mm of each line in the key
TICK = 1.6  # mm; half of a short mark there
TICKS = {LineKind.NOTCH, LineKind.CLIP, LineKind.STAPLE, LineKind.SEWING}
KEPT_ROWS = 2  # rows that stay with the head of a list
COLUMNS = ("Seat", "Piece", "Material", "Cut", "Finished", "Cut size", "Area of one", "Sheets")


@dataclass(frozen=True)
class Overview:
    """What the overview tells of a job."""

    drafted: Drafted
    plates: Sequence[NumberedPlate]
    stock: Stock
    fewest: int
    only: tuple[str, ...] = ()

    @property
    def unit(self) -> Unit:
        """The job's unit."""
        return self.drafted.job.unit

    @property
    def sheet_count(self) -> int:
        """How many sheets there are, the overview not counted."""
        return sum(len(each.plate.sheets) for each in self.plates)

    def pages(self) -> list[Drawing]:
        """Return the overview's pages, each drawn from the window's lower left corner."""
        width, height = self.stock.window(landscape=False)
        return flowed(self._blocks(column_width(width)), width, height)

    def _blocks(self, width: float) -> Iterator[Block]:
        yield from self._title(width)
        yield self._proof(width)
        yield from self._map(width)
        yield from self._cut_list(width)
        yield from self._sewing(width)
        yield from self._fit(width)
        yield from self._strike(width)
        yield from _key(self.drafted, width)
        yield heading("Cautions", width)
        for caution in CAUTIONS:
            yield paragraph(" ".join(caution.split()), width)

    def _title(self, width: float) -> Iterator[Block]:
        job = self.drafted.job
        yield paragraph(job.name, width, bold=True, size=TITLE, keeps=True)
        seats = ", ".join(f"{seats_of(seat)} × {seat.name}" for seat in job.seats)
        yield paragraph(seats + (f" · {job.date}" if job.date else ""), width, size=LEAD)
        yield space(2.5)

    def _proof(self, width: float) -> Block:
        """Return the proof triangle, and beside it what to do with it."""
        up, along = proof_triangle(self.unit)
        corner = complex(4, -up - 6)
        marks: list[Mark] = [Stroke(_triangle(corner, up, along), TRIANGLE)]
        marks += _side_names(corner, up, along, self.unit)
        text = _proof_says(self.unit, self.stock)
        beside = width - along - 16
        if beside < 40:  # a narrow page has them below
            at, room, below = complex(0, -up - 16), width, 0.0
        else:
            at, room, below = complex(along + 16, -1), beside, up + 14
        drawn, height = _lines(text, room)
        marks += Drawing(tuple(drawn)).mapped(1, at).marks
        return Block(max(below, height - at.imag + 4), Drawing(tuple(marks)))

    def _map(self, width: float) -> Iterator[Block]:
        yield heading("Sheets and joins", width)
        count = self.sheet_count
        yield paragraph(
            f"{count} sheets of {self.stock.paper.name} (the pieces alone would fill "
            f"{self.fewest}). Join them in the order of their numbers. {self.stock.joining.says} "
            f"{told(self.only)}Left and right are as one stands in front of the seat."
            if count > 1
            else f"One sheet of {self.stock.paper.name}. {told(self.only)}",
            width,
            keeps=True,
        )
        yield from map_blocks(self.plates, width)

    def _cut_list(self, width: float) -> Iterator[Block]:
        yield heading("Cut list", width)
        yield row(COLUMNS, SHARES, width, bold=True, keeps=True)
        rows = cut_rows(self.drafted)
        for i, each in enumerate(rows):
            cells = (*_cells(each, self.unit), self._sheets_of(each))
            yield row(cells, SHARES, width, keeps=i < KEPT_ROWS)
        yield space(1.5)
        for need in needs(rows):
            if need.kind == "card":
                continue
            says = f"{need.title}: {show_area(need.area, self.unit)} in all, without waste"
            if need.sold_by_area:
                least, most = (show_area(each, self.unit) for each in need.hides)
                says += f"; at the usual yield of 50 to 70 %, {least} to {most} of hide"
            if need.repeats:
                more = show_area(need.matching, self.unit)
                why = with_set_fractions(need.why.told(self.unit))
                says += f"; to match it {more} more, since {why}"
            yield paragraph(says, width)
        for sundry in sundry_rows(self.drafted):
            yield paragraph(with_set_fractions(sundry.note.told(self.unit)), width)

    def _sewing(self, width: float) -> Iterator[Block]:
        rows = sew_rows(self.drafted)
        if not rows:
            return
        yield heading("Sewing, for one seat", width)
        yield row(HEADS, SEWING_SHARES, width, bold=True, keeps=True)
        for i, each in enumerate(rows):
            cells = tuple(with_set_fractions(cell) for cell in each.cells(self.unit))
            yield row(cells, SEWING_SHARES, width, keeps=i < KEPT_ROWS)
        yield space(1.5)
        yield paragraph(f"{thread_says(self.drafted)}. {USUAL}", width)

    def _sheets_of(self, each: CutRow) -> str:
        """Return the numbers of the sheets that show a piece, runs of them in short."""
        numbers = self._shown.get(title_of(each.seat, each.piece.name), ())
        return in_runs(numbers) or "–"

    @cached_property
    def _shown(self) -> Mapping[str, tuple[int, ...]]:
        return sheets_of(self.plates)

    def _fit(self, width: float) -> Iterator[Block]:
        yield heading("Fit report", width)
        for seat, pattern in self.drafted.seats:
            yield paragraph(seat.name, width, bold=True, keeps=True)
            for note in pattern.fit.warnings:
                says = f"Look: {with_set_fractions(note.told(self.unit))}"
                yield paragraph(says, width, bold=True, indent=4, colour=MADDER)
            for note in pattern.fit.says:
                yield paragraph(with_set_fractions(note.told(self.unit)), width, indent=4)

    def _strike(self, width: float) -> Iterator[Block]:
        found = [
            (f"{seat.name}: {piece.name}", notes)
            for seat, pattern in self.drafted.seats
            for piece in pattern.pieces
            if (notes := by_hand(piece))
        ]
        if not found:
            return
        yield heading("Strike by hand, with rule and trammel", width)
        for title, notes in found:
            told = "; ".join(with_set_fractions(note.told(self.unit)) for note in notes)
            yield paragraph(title, width, bold=True, keeps=True)
            yield paragraph(f"{told}.", width, indent=4)


def _cells(each: CutRow, unit: Unit) -> tuple[str, ...]:
    piece = each.piece
    finished = by(*piece.finished, unit) if piece.finished else "–"
    return (
        each.seat,
        piece.name,
        piece.material.title,
        str(each.tally),
        finished,
        by(*each.cut_size, unit),
        show_area(each.area, unit),
    )


def _triangle(corner: complex, up: float, along: float) -> Path:
    """Return the triangle in one stroke: up from the right angle, down the long side, and back."""
    return Path.through(corner, corner + 1j * up, corner + along, corner)


def _side_names(corner: complex, up: float, along: float, unit: Unit) -> Iterator[Mark]:
    slope = complex(along, -up) / abs(complex(along, up))
    middle = corner + complex(along / 2, up / 2)
    long_side = abs(complex(along, up))
    for at, text, way in (
        (corner + along / 2 - 1j * 4.6, show(along, unit), 1 + 0j),
        (corner + 1j * up / 2 - 1.4, show(up, unit), 1j),
        (middle + 1j * slope * 1.6, show(long_side, unit), slope),
    ):
        yield Letters(at, text, LEAD, bold=True, anchor="middle", way=way)


def _proof_says(unit: Unit, stock: Stock) -> list[tuple[str, bool]]:
    up, along = proof_triangle(unit)
    sides = ", ".join(show(side, unit) for side in (up, along, abs(complex(up, along))))
    return [
        ("Prove the scale first", True),
        (f"Print at actual size (100 %) on {stock.paper.name}. Measure this triangle: {sides}.",
         False),
        (("The two short sides prove each direction of the printer, the long one that it prints "
         "square. Cut nothing until all three are right."), False),
        (f"Each sheet has a bar of {bar_says(unit)} along both edges, for the same proof.", False),
        *_drawn_for(stock),
    ]  # fmt: skip


def _drawn_for(stock: Stock) -> Iterator[tuple[str, bool]]:
    if printer := stock.printer:
        says = f"Drawn to come out true on {printer.name}: {printer.set_mended} the paper."
        yield f"{says} On any other printer it comes out wrong.", False


def _lines(text: list[tuple[str, bool]], room: float) -> tuple[list[Mark], float]:
    marks: list[Mark] = []
    y = 0.0
    for part, bold in text:
        size = LEAD if bold else TEXT + 0.2
        for line in wrapped(part, size, room, bold=bold):
            y -= size * LINE
            marks.append(Letters(1j * y, line, size, bold))
        y -= size * 0.6
    return marks, -y


def _key(drafted: Drafted, width: float) -> Iterator[Block]:
    """Yield the key to the lines that this job's pieces carry."""
    found = {LineKind.CUT, LineKind.NOTCH}
    found |= {g.kind for pattern in drafted.patterns for p in pattern.pieces for g in p.guides}
    kinds = [kind for kind in LineKind if kind in found]
    yield heading("Lines", width)
    columns = max(1, int(width / 62))
    for i in range(0, len(kinds), columns):
        marks: list[Mark] = []
        for j, kind in enumerate(kinds[i : i + columns]):
            x, y = j * width / columns, -TEXT
            line = _swatch(kind, complex(x, y + 1))
            marks += [
                Stroke(line, PENS[kind]),
                Letters(complex(x + SWATCH + 3, y), kind.value, TEXT, colour=SLATE),
            ]
        yield Block(TEXT * 1.6, Drawing(tuple(marks)))


def _swatch(kind: LineKind, at: complex) -> Path:
    """Return a length of a line; of a short mark, the tick or the cross that stands on a piece."""
    up, middle = 1j * TICK, at + SWATCH - 2 * TICK
    if kind is LineKind.CENTRE:
        return Path.through(middle - TICK, middle + TICK, middle, middle + up, middle - up)
    if kind in TICKS:
        return Path.through(middle - up, middle + up)
    return Path.through(at, at + SWATCH)
