"""The bench card: one page a seat for the wall above the machine.

Its pieces drawn small, their sizes, the order of work, and what to mind.
"""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import seats_of, tally_of
from patternmaker.drawing.labels import by, show
from patternmaker.drawing.looks import INDIGO, MADDER, RULE, SLATE
from patternmaker.drawing.surface import Drawing, Letters, Mark, Stroke
from patternmaker.drawing.typeface import LINE, width, wrapped
from patternmaker.facts import HAIR
from patternmaker.geometry.contour import Path
from patternmaker.pattern.piece import LineKind
from patternmaker.pattern.stitching import settings, thread_of
from patternmaker.sheets.cautions import AT_THE_BENCH
from patternmaker.sheets.figures import Figures
from patternmaker.sheets.flow import Block, column_width, flowed, paragraph, row, space
from patternmaker.units import show_stitch, show_thread, with_set_fractions

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.job.model import Job, Seat
    from patternmaker.pattern.notes import Note
    from patternmaker.pattern.piece import Pattern
    from patternmaker.sheets.papers import Stock

NAMES = (9.0, 7.5, 6.0)  # mm; types of the seat's name, the first that fits on a line
PAGE = 186.0, 256.0  # mm; the least window of A4 and Letter, for which the sizes below are meant
LARGEST = 2.0  # times those sizes, on a larger paper
SMALLEST = 0.8  # times those sizes, on a smaller one
LEAD = 3.6  # mm; type of the lines below the name
BESIDE = "   "
SETTINGS = ((4.6, 120.0), (4.4, 112.0), (4.2, 104.0), (4.0, 96.0), (3.8, 90.0), (3.6, 84.0),
            (3.4, 78.0), (3.2, 72.0), (3.0, 66.0), (3.0, 58.0), (3.0, 50.0))  # fmt: skip
"""Types of the text and heights of the drawings, mm; smaller ones can't be read at arm's length."""
LOOSEST = 6.0  # times the type, that the steps are spread by in all
SMALL = 0.85  # of the type, for tables and captions
COLUMNS = ("Piece", "Material", "Cut", "Finished", "Cut size")
SHARES = (0.2, 0.24, 0.16, 0.2, 0.2)


@dataclass(frozen=True)
class _Content:
    """What stands on a card below its head, in type of one size."""

    size: float
    figures: Figures
    table: tuple[Block, ...]
    steps: tuple[Block, ...]
    rest: tuple[Block, ...]

    @property
    def height(self) -> float:
        """How much of a column it takes."""
        text = (*self.table, *self.steps, *self.rest)
        return self.figures.height + sum(block.height for block in text)

    def filling(self, height: float) -> _Content:
        """Return it with larger drawings and looser steps, as far as a column has room for them."""
        if self.height > height or not self.steps:
            return self
        larger = replace(self, figures=self.figures.grown(height - self.height))
        each = min(LOOSEST * self.size, height - larger.height) / len(self.steps)
        loose = tuple(replace(step, height=step.height + each) for step in self.steps)
        return replace(larger, steps=loose)

    def blocks(self) -> Iterator[Block]:
        """Yield all of it."""
        yield from (*self.figures.blocks(), *self.table, *self.steps, *self.rest)


@dataclass(frozen=True)
class Card:
    """The bench card of a seat."""

    job: Job
    seat: Seat
    pattern: Pattern
    stock: Stock

    @property
    def title(self) -> str:
        """What it is called in the file's outline."""
        return f"Bench card: {self.seat.name}"

    def pages(self) -> list[Drawing]:
        """Return its pages, drawn from the window's lower left corner: one wherever it can be."""
        across, up = self.stock.window(landscape=False)
        scale = max(SMALLEST, min(LARGEST, across / PAGE[0], up / PAGE[1]))
        across, up = across / scale, up / scale
        head = self._head(across)
        pages = self._fitted(across, up - head.height)
        return [(page + head.drawing.mapped(1, 1j * up)).mapped(scale) for page in pages]

    def _fitted(self, across: float, up: float) -> list[Drawing]:
        """Return what stands below the head, in the largest type that a page holds."""
        column = column_width(across)
        tried: dict[tuple[float, float], _Content] = {}

        def spare(setting: tuple[float, float]) -> float:
            tried[setting] = self._content(column, *setting)
            return up - tried[setting].height - HAIR

        first = bisect_left(SETTINGS, True, key=lambda setting: spare(setting) >= 0)  # noqa: FBT003
        setting = SETTINGS[min(first, len(SETTINGS) - 1)]
        content = tried.get(setting) or self._content(column, *setting)
        return flowed(content.filling(up - HAIR).blocks(), across, up)

    def _content(self, column: float, size: float, room: float) -> _Content:
        figures = Figures(self.pattern.pieces, seats_of(self.seat), self.job.unit, column, room,
                          size * SMALL)  # fmt: skip
        return _Content(
            size,
            figures,
            tuple(self._table(column, size * SMALL)),
            tuple(self._steps(column, size)),
            tuple(self._rest(column, size)),
        )

    def _head(self, across: float) -> Block:
        """Return the seat's name, how many, and the figures that are asked for all day."""
        name = f"{seats_of(self.seat)} × {self.seat.name}"
        size = next((s for s in NAMES if width(name, s, bold=True) <= across), NAMES[-1])
        title = paragraph(name, across, bold=True, size=size)
        marks, y = list(title.drawing.marks), -title.height - 2.8
        for line in _in_lines(list(self._measures), across):
            marks.append(Letters(1j * y, line, LEAD, bold=True, colour=INDIGO))
            y -= LEAD * LINE
        for line in wrapped(self._where, LEAD, across):
            marks.append(Letters(1j * y, line, LEAD, colour=SLATE))
            y -= LEAD * LINE
        rule = Path.through(1j * (y + 1.5), across + 1j * (y + 1.5))
        marks.append(Stroke(rule, RULE))
        return Block(2.5 - y, Drawing(tuple(marks)))

    @property
    def _measures(self) -> Iterator[str]:
        """The figures that are asked for all day, as far as the cover has a use for them."""
        outline, allowances = self.pattern.outline, self.seat.brief.allowances
        unit = self.job.unit
        kinds = {guide.kind for piece in self.pattern.pieces for guide in piece.guides}
        yield f"Seat {by(outline.width, outline.height, unit)}"
        yield f"Seam allowance {show(allowances.seam, unit)}"
        if LineKind.TOPSTITCH in kinds:
            yield f"Topstitch at {show(allowances.topstitch_at, unit)}"
        if LineKind.REFERENCE in kinds:
            yield f"Wrap-under {show(allowances.wrap, unit)}"
        yield from self._sewn

    @property
    def _sewn(self) -> Iterator[str]:
        """The stitches to set and the thread of a seat."""
        rows, unit = self.pattern.stitches, self.job.unit
        for word, shown in (("Stitch", False), ("Topstitch", True)):
            for length in settings(rows, shown=shown):
                yield f"{word} {show_stitch(length, unit)}"
        if rows:
            yield f"Thread {show_thread(thread_of(rows), unit)} a seat"

    @property
    def _where(self) -> str:
        job, seat = self.job, self.seat
        says = ["Bench card", job.name, job.date, seat.outline.called, seat.cover.called]
        return " · ".join(each for each in says if each)

    def _table(self, column: float, size: float) -> Iterator[Block]:
        unit, seats = self.job.unit, seats_of(self.seat)
        yield row(COLUMNS, SHARES, column, bold=True, size=size, keeps=True)
        for piece in self.pattern.pieces:
            finished = by(*piece.finished, unit) if piece.finished else "–"
            cells = (piece.name.capitalize(), piece.material.title, str(tally_of(piece, seats)),
                     finished, by(piece.cut.width, piece.cut.height, unit))  # fmt: skip
            yield row(cells, SHARES, column, size=size)
        if seats.reversed:
            yield space(size * 0.4)
            yield paragraph("For the reversed seats turn the papers over.", column, size=size)
        yield space(size * 0.6)

    def _steps(self, column: float, size: float) -> Iterator[Block]:
        """Yield the order of work."""
        for number, step in enumerate(self._told_steps, 1):
            yield self._step(str(number), step, column, size)

    def _rest(self, column: float, size: float) -> Iterator[Block]:
        """Yield what to mind: of this seat, then of any."""
        yield space(size * 0.4)
        for note in self.pattern.fit.warnings:
            yield paragraph(f"Look: {self._told(note)}", column, bold=True, size=size * SMALL,
                            colour=MADDER)  # fmt: skip
        yield space(size * 0.4)
        for caution in AT_THE_BENCH:
            says = " ".join(caution.split())
            yield paragraph(says, column, size=size * SMALL, colour=SLATE)

    @cached_property
    def _told_steps(self) -> tuple[str, ...]:
        return tuple(self._told(note) for note in self.pattern.steps)

    def _step(self, number: str, step: str, column: float, size: float) -> Block:
        """Return a step, its number standing before it."""
        says = paragraph(step, column, size=size, indent=2.2 * size)
        first: list[Mark] = [Letters(-1j * size, number, size, bold=True, colour=INDIGO)]
        return replace(says, drawing=Drawing((*first, *says.drawing.marks)))

    def _told(self, note: Note) -> str:
        return with_set_fractions(note.told(self.job.unit))


def _in_lines(says: list[str], room: float) -> Iterator[str]:
    """Yield figures set side by side, in lines that part none of them."""
    line, *others = says
    for each in others:
        if width(longer := BESIDE.join((line, each)), LEAD, bold=True) > room:
            yield line
            line = each
        else:
            line = longer
    yield line
