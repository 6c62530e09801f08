"""Drafting a whole job: every pattern, every file, put in place together."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import Drafted
from patternmaker.drafting.names import stem_of
from patternmaker.drafting.staging import put_in_place
from patternmaker.drawing.typeface import lacking
from patternmaker.job.enclosure import Enclosure, Printed
from patternmaker.sheets.book import Sheets, laid_out, written

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from patternmaker.job.model import Job
    from patternmaker.sheets.papers import Stock

MOST_SHEETS = 500
CUT_LIST, SEWING_LIST = "cutlist.csv", "sewinglist.csv"


def _silent(done: float, whole: int) -> None:
    del done, whole


@dataclass(frozen=True)
class Options:
    """What files are asked for.

    Args:
        stock: what is printed on.
        most_sheets: more are refused.
        whole_strips: whether straight strips are printed whole.
        svg: whether to write an SVG for a cutter.
        cut_list: whether to write the cut list and the sewing list as CSV.
        progress: is told how many sheets of how many are done.
        only: the names of the pieces to print; all, if there are none.
        effort: how long to search for fewer sheets; not at all if zero.
        searching: is told the share of that search that is done, and the fewest sheets so far.
    """

    stock: Stock
    most_sheets: int = MOST_SHEETS
    whole_strips: bool = False
    svg: bool = False
    cut_list: bool = False
    progress: Callable[[int, int], None] = _silent
    only: tuple[str, ...] = ()
    effort: int = 0
    searching: Callable[[float, int], None] = _silent


@dataclass(frozen=True)
class Draft:
    """A drafted job and the files that it left."""

    drafted: Drafted
    sheets: Sheets
    files: tuple[Path, ...]

    @property
    def warnings(self) -> tuple[str, ...]:
        """What the whole job must be warned of; each seat's own are in its fit."""
        stock = self.sheets.stock
        doubts = stock.printer.doubts(stock) if stock.printer else ()
        named = stock.printer.name if stock.printer else ""
        return (*_unprintable(self.drafted.job, named), *doubts, *_left_over(self.files))


def draft(job: Job, out: Path | None, options: Options) -> Draft:
    """Draft a job and leave its files in ``out``, or in a folder named after it.

    Raises:
        Refusals: if it takes more sheets than allowed, or no piece is called as asked for.
        OutputFault: if the files can't be written; the earlier ones are then as they were.
    """
    from pathlib import Path

    drafted = Drafted(job, tuple(seat.pattern() for seat in job.seats))
    sheets = laid_out(
        drafted,
        options.stock,
        whole=options.whole_strips,
        most_sheets=options.most_sheets,
        only=options.only,
        effort=options.effort,
        told=options.searching,
    )
    stem = stem_of(job.name)
    folder = Path(stem) if out is None else out
    files = dict(_contents(stem, sheets, options))
    return Draft(drafted, sheets, put_in_place(folder, files))


def _contents(stem: str, sheets: Sheets, options: Options) -> Iterator[tuple[str, bytes]]:
    enclosed = Enclosure.of(sheets.drafted.job, _print(options)).written
    yield f"{stem}.pdf", written(sheets, options.progress, enclosed)
    if options.svg:
        from patternmaker.cutter.svg import svg_of

        yield f"{stem}.svg", svg_of(sheets.drafted)
    if options.cut_list:
        from patternmaker.cutlist.csv import csv_of, sewing_csv_of

        yield CUT_LIST, csv_of(sheets.drafted)
        yield SEWING_LIST, sewing_csv_of(sheets.drafted)


def _print(options: Options) -> Printed:
    stock = options.stock
    paper, whole = stock.paper, options.whole_strips
    drawn = stock.printer.scale(landscape=False) if stock.printer else None
    return Printed(
        paper.name, paper.width, paper.height, whole_strips=whole, drawn=drawn, only=options.only
    )


def _left_over(files: tuple[Path, ...]) -> Iterator[str]:
    """Yield that a file of an earlier draft still lies beside the ones of this draft."""
    pdf = files[0]
    lists = (pdf.with_name(name) for name in (CUT_LIST, SEWING_LIST))
    for path in (pdf.with_suffix(".svg"), *lists):
        if path not in files and path.exists():
            yield f"{path} is from an earlier draft: it may not be of these measurements"


def _unprintable(job: Job, printer: str) -> Iterator[str]:
    names = [job.name, job.date or "", printer]
    for seat in job.seats:
        names += [seat.name, *(material.name or "" for material in seat.brief.materials.values())]
    for name in dict.fromkeys(names):
        if lost := lacking(name):
            signs = ", ".join(f"{sign!r} (U+{ord(sign):04X})" for sign in lost)
            yield f"{name!r}: the lettering has no {signs}; the paper shows an empty box instead"
