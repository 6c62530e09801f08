"""The PDF of a job: the overview, then every sheet in the order of joining."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.drawing.labels import Context
from patternmaker.drawing.prints import Print, print_of
from patternmaker.drawing.surface import Drawing
from patternmaker.sheets.arranging import arranged, fewest_possible
from patternmaker.sheets.furniture import frame, heading, join_marks
from patternmaker.sheets.map import NumberedPlate, numbered
from patternmaker.sheets.overview import Overview
from patternmaker.writers.pdf import PdfBook

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from patternmaker.cutlist.rows import Drafted
    from patternmaker.sheets.papers import Stock
    from patternmaker.sheets.tiling import Grid, Place


@dataclass(frozen=True)
class Sheets:
    """The sheets of a job before they are written."""

    drafted: Drafted
    stock: Stock
    plates: tuple[NumberedPlate, ...]
    fewest: int

    @property
    def count(self) -> int:
        """How many there are, the overview not counted."""
        return sum(len(each.plate.sheets) for each in self.plates)


def laid_out(drafted: Drafted, stock: Stock, *, whole: bool, most_sheets: int) -> Sheets:
    """Return the sheets of a job.

    Args:
        drafted: the job and its patterns.
        stock: what is printed on.
        whole: whether straight strips are printed whole instead of as their ends.
        most_sheets: more are refused.

    Raises:
        Refusals: if it takes more than ``most_sheets``.
    """
    prints = list(_prints(drafted, whole=whole))
    plates = numbered(arranged(prints, stock, most_sheets))
    return Sheets(drafted, stock, plates, fewest_possible(prints, stock))


def _prints(drafted: Drafted, *, whole: bool) -> Iterator[Print]:
    job = drafted.job
    for seat, pattern in drafted.seats:
        context = Context(job.name, seat.name, seat.make, job.unit)
        for piece in pattern.pieces:
            yield print_of(piece, context, whole=whole)


def written(sheets: Sheets, progress: Callable[[int, int], None]) -> bytes:
    """Return the PDF file; ``progress`` is told how many sheets of how many are done."""
    job = sheets.drafted.job
    book = PdfBook(job.name, "Full-scale sewing pattern: print at actual size")
    _write_overview(book, sheets)
    frames: dict[Grid, str] = {}
    for each in sheets.plates:
        _write_plate(book, each, sheets, frames, progress)
    return book.finished()


def _write_overview(book: PdfBook, sheets: Sheets) -> None:
    overview = Overview(sheets.drafted, sheets.plates, sheets.stock, sheets.fewest)
    margins = sheets.stock.margins
    for number, drawing in enumerate(overview.pages()):
        page = book.page(*sheets.stock.page(landscape=False))
        if number == 0:
            book.bookmark("Overview")
        drawing.mapped(1, complex(margins.left, margins.bottom)).onto(page)
        book.end_page()


def _write_plate(
    book: PdfBook,
    each: NumberedPlate,
    sheets: Sheets,
    frames: dict[Grid, str],
    progress: Callable[[int, int], None],
) -> None:
    plate, grid = each.plate, each.plate.grid
    drawing = Drawing(tuple(mark for one in plate.prints for mark in one.drawing.marks))
    form = book.form(drawing, *grid.size)
    alike = frames.get(grid) or book.form(frame(grid, sheets.drafted.job.unit), *grid.window_size)
    frames[grid] = alike
    for i, place in enumerate(plate.sheets):
        _write_sheet(book, each, place, sheets, (form, alike), first=i == 0)
        progress(each.first_sheet + i, sheets.count)


def _write_sheet(
    book: PdfBook,
    each: NumberedPlate,
    place: Place,
    sheets: Sheets,
    forms: tuple[str, str],
    *,
    first: bool,
) -> None:
    grid, margins = each.plate.grid, sheets.stock.margins
    page = book.page(*sheets.stock.page(landscape=grid.landscape))
    if first:
        book.bookmark(each.plate.title)
    (across, up), (left, bottom, *_) = grid.window_size, grid.window(place)
    corner = complex(margins.left, margins.bottom)
    clip = (corner.real, corner.imag, corner.real + across, corner.imag + up)
    page.place(forms[0], clip, corner - complex(left, bottom))
    page.place(forms[1], None, corner)
    number = each.number(place)
    job = sheets.drafted.job.name
    words = heading(
        " · ".join((job, *each.plate.shown_on(place))), f"sheet {number} of {sheets.count}", grid
    )
    joins = (mark for join in each.joins_at(place) for mark in join_marks(join, place, grid))
    Drawing((*words, *joins)).mapped(1, corner).onto(page)
    book.end_page()
