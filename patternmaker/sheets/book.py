"""The PDF of a job: the overview, a bench card a seat, every sheet in the order of joining."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import cut_rows
from patternmaker.cutlist.sharing import shared
from patternmaker.drawing.labels import Context
from patternmaker.drawing.layers import layer_of
from patternmaker.drawing.prints import Print, print_of, title_of
from patternmaker.drawing.surface import Drawing
from patternmaker.sheets.arranging import arranged
from patternmaker.sheets.card import Card
from patternmaker.sheets.choosing import chosen
from patternmaker.sheets.furniture import (
    blanks,
    frame,
    heading,
    join_lines,
)
from patternmaker.sheets.index import CARD, OVERVIEW, enter_pieces, sheets_of
from patternmaker.sheets.map import NumberedPlate, numbered
from patternmaker.sheets.numbers import beside, number_shares, words_in
from patternmaker.sheets.overview import Overview
from patternmaker.writers.pdf import PdfBook

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from patternmaker.cutlist.rows import Drafted
    from patternmaker.sheets.papers import Stock
    from patternmaker.sheets.tiling import Grid, Join, Side
    from patternmaker.sheets.tiling import Place as Cell
    from patternmaker.writers.pdf import PdfPage, Place

    Sides = tuple[tuple[Side, bool], ...]
    """The sides on which a sheet is joined, and whether it is the new one there."""


ENCLOSED = "patternmaker.json"  # the name of the file that a print carries


@dataclass(frozen=True)
class Sheets:
    """The sheets of a job before they are written."""

    drafted: Drafted
    stock: Stock
    plates: tuple[NumberedPlate, ...]
    fewest: int
    only: tuple[str, ...] = ()

    @property
    def count(self) -> int:
        """How many there are, overview and bench cards not counted."""
        return sum(len(each.plate.sheets) for each in self.plates)


def _silent(share: float, count: int) -> None:
    del share, count


def laid_out(
    drafted: Drafted,
    stock: Stock,
    *,
    whole: bool,
    most_sheets: int,
    only: Sequence[str] = (),
    effort: int = 0,
    told: Callable[[float, int], None] = _silent,
) -> Sheets:
    """Return the sheets of a job.

    Args:
        drafted: the job and its patterns.
        stock: what is printed on.
        whole: whether straight strips are printed whole instead of as their ends.
        most_sheets: more are refused.
        only: the names of the pieces to print, by name or by what they do; all, if there are none.
        effort: how long to search for fewer sheets than the first arrangement takes.
        told: hears the share of the search that is done, and the fewest sheets so far.

    Raises:
        Refusals: if it takes more than ``most_sheets``, or no piece has such a name.
    """
    titles = chosen(drafted, only)
    every = prints_of(drafted, whole=whole)
    prints = [each for each in every if not titles.isdisjoint(each.titles)]
    found = arranged(prints, stock, most_sheets, effort, told)
    return Sheets(drafted, stock, numbered(found.plates), found.fewest, tuple(only))


def prints_of(drafted: Drafted, *, whole: bool) -> Iterator[Print]:
    """Yield the pieces of a job as they are printed, straight strips whole or as their ends."""
    job = drafted.job
    for each in shared(drafted):
        context = Context(job.name, each.called, each.tally, job.unit)
        yield replace(print_of(each.piece, context, whole=whole), seats=each.names)


def written(sheets: Sheets, progress: Callable[[int, int], None], enclosed: bytes = b"") -> bytes:
    """Return the PDF file; ``progress`` is told how many sheets of how many are done.

    What is ``enclosed`` goes with it as a file of its own.
    """
    job = sheets.drafted.job
    book = PdfBook(job.name, "Full-scale sewing pattern: print at actual size")
    _write_overview(book, sheets)
    _write_cards(book, sheets)
    writer = _SheetWriter(book, sheets)
    for each in sheets.plates:
        writer.write(each, progress)
    titles = (title_of(row.seat, row.piece.name) for row in cut_rows(sheets.drafted))
    enter_pieces(book, titles, sheets_of(sheets.plates), writer.pages)
    if enclosed:
        book.enclose(ENCLOSED, "What this job was drafted from, to check the print by", enclosed)
    return book.finished()


def _write_overview(book: PdfBook, sheets: Sheets) -> None:
    overview = Overview(sheets.drafted, sheets.plates, sheets.stock, sheets.fewest, sheets.only)
    book.label(OVERVIEW)
    _write_pages(book, sheets.stock, "Overview", overview.pages())


def _write_cards(book: PdfBook, sheets: Sheets) -> None:
    book.label(CARD)
    for seat, pattern in sheets.drafted.seats:
        card = Card(sheets.drafted.job, seat, pattern, sheets.stock)
        _write_pages(book, sheets.stock, card.title, card.pages())


def _write_pages(book: PdfBook, stock: Stock, title: str, drawings: Sequence[Drawing]) -> None:
    """Write upright pages, the first of them under a title in the file's outline."""
    for number, drawing in enumerate(drawings):
        page = book.page(*stock.page(landscape=False), stock.fitted(landscape=False))
        if number == 0:
            book.bookmark(title, book.place())
        drawing.mapped(1, stock.margins.corner).onto(page)
        book.end_page()


class _SheetWriter:
    """Writes the sheets of each plate.

    A plate is drawn once, as a form that each of its pages shows through a window; what sheets
    have alike, their bars and the joins on the same sides, is drawn once too.
    """

    def __init__(self, book: PdfBook, sheets: Sheets) -> None:
        self.book, self.sheets = book, sheets
        self._alike: dict[tuple[Grid, Sides], str] = {}
        self.pages: list[Place] = []
        book.label()

    def write(self, each: NumberedPlate, progress: Callable[[int, int], None]) -> None:
        """Write the sheets of one plate."""
        plate = each.plate
        drawing = Drawing(tuple(mark for one in plate.prints for mark in one.drawing.marks))
        form = self.book.form(drawing, *plate.grid.size, layer_of)
        shares = number_shares(each.joins, plate.grid, tuple(words_in(drawing.marks)))
        for number, place in enumerate(plate.sheets, each.first_sheet):
            page = self._page(landscape=plate.grid.landscape)
            self.pages.append(self.book.place())
            self._write_sheet(page, form, each, place, number, shares)
            self.book.end_page()
            progress(number, self.sheets.count)

    def _page(self, *, landscape: bool) -> PdfPage:
        stock = self.sheets.stock
        return self.book.page(*stock.page(landscape=landscape), stock.fitted(landscape=landscape))

    def _write_sheet(
        self,
        page: PdfPage,
        form: str,
        each: NumberedPlate,
        place: Cell,
        number: int,
        shares: Mapping[Join, float],
    ) -> None:
        grid, corner = each.plate.grid, self.sheets.stock.margins.corner
        (across, up), (left, bottom, *_) = grid.window_size, grid.window(place)
        clip = (corner.real, corner.imag, corner.real + across, corner.imag + up)
        page.place(form, clip, corner - complex(left, bottom))
        joins = each.joins_at[place]
        sides = tuple(sorted((join.side_of(place), join.second == place) for join in joins))
        page.place(self._form_alike(grid, sides), None, corner)
        title = " · ".join((self.sheets.drafted.job.name, *each.plate.shows[place]))
        words = [
            *heading(title, f"sheet {number} of {self.sheets.count}", grid),
            *(word for join in joins for word in beside(join, grid, place, shares[join])),
        ]
        for word in words:
            word.mapped(1, corner).onto(page)

    def _form_alike(self, grid: Grid, sides: Sides) -> str:
        if (grid, sides) not in self._alike:
            joined, new = [side for side, _ in sides], [side for side, is_new in sides if is_new]
            unit = self.sheets.drafted.job.unit
            drawing = blanks(grid, joined) + frame(grid, unit) + join_lines(grid, joined, new)
            self._alike[grid, sides] = self.book.form(drawing, *grid.window_size)
        return self._alike[grid, sides]
