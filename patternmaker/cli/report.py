"""What a draft says on the terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.cli.tables import plain, table
from patternmaker.cutlist.rows import CutRow, Need, cut_rows, needs
from patternmaker.cutlist.sewing import HEADS, sew_rows, thread_says
from patternmaker.cutlist.sundries import sundry_rows
from patternmaker.units import show_area, show_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.drafting import Draft
    from patternmaker.units import Unit


def told(draft: Draft) -> str:
    """Return the report of a draft: cut list, fit, warnings, sheets, files."""
    return plain("\n".join(_lines(draft)))


def _lines(draft: Draft) -> Iterator[str]:
    job = draft.drafted.job
    yield job.name
    yield from ("", "Cut list")
    rows = cut_rows(draft.drafted)
    yield table(
        ("seat", "piece", "material", "cut", "finished", "cut size", "area of one"),
        [_cells(row, job.unit) for row in rows],
    )
    yield from ("", "Material, without waste")
    for need in needs(rows):
        if need.kind == "card":
            continue
        yield f"  {need.title}: {show_area(need.area, job.unit)}{_matching(need, job.unit)}"
    if sundries := sundry_rows(draft.drafted):
        yield from ("", "Sundries", *(f"  {each.note.told(job.unit)}" for each in sundries))
    yield from _sewing(draft)
    yield from _fit(draft)
    yield from ("", _sheets(draft), "", "Files")
    yield from (f"  {path}" for path in draft.files)
    yield from ("", "Print at actual size (100 %), and measure the triangle before you cut.")


def _sewing(draft: Draft) -> Iterator[str]:
    rows = sew_rows(draft.drafted)
    if not rows:
        return
    yield from ("", "Sewing, for one seat")
    yield table([head.lower() for head in HEADS],
                [row.cells(draft.drafted.job.unit) for row in rows])  # fmt: skip
    yield f"  {thread_says(draft.drafted)}"


def _matching(need: Need, unit: Unit) -> str:
    """Return what matching a repeat takes more, and why."""
    if not need.repeats:
        return ""
    return f", and {show_area(need.matching, unit)} more to match: {need.why.told(unit)}"


def _cells(row: CutRow, unit: Unit) -> tuple[str, ...]:
    finished = _size(row.piece.finished, unit) if row.piece.finished else "-"
    piece = row.piece
    return (row.seat, piece.name, piece.material.title, str(row.tally), finished,
            _size(row.cut_size, unit), show_area(row.area, unit))  # fmt: skip


def _size(size: tuple[float, float], unit: Unit) -> str:
    return f"{show_length(size[0], unit, bare=True)} x {show_length(size[1], unit)}"


def _fit(draft: Draft) -> Iterator[str]:
    unit = draft.drafted.job.unit
    yield from ("", "Fit")
    for seat, pattern in draft.drafted.seats:
        yield f"  {seat.name}"
        yield from (f"    {note.told(unit)}" for note in pattern.fit.says)
    warnings = [
        f"{seat.name}: {note.told(unit)}"
        for seat, pattern in draft.drafted.seats
        for note in pattern.fit.warnings
    ]
    if warnings := [*warnings, *draft.warnings]:
        yield from ("", "Look at this first")
        yield from (f"  {warning}" for warning in warnings)


def _sheets(draft: Draft) -> str:
    sheets = draft.sheets
    many = "1 sheet" if sheets.count == 1 else f"{sheets.count} sheets"
    printer, paper = sheets.stock.printer, sheets.stock.paper.name
    only = f", only {', '.join(sheets.only)}" if sheets.only else ""
    drawn = f", drawn for {printer.name}: {printer.mended} the paper" if printer else ""
    return f"{many} of {paper}{only} (the pieces alone would fill {sheets.fewest}){drawn}"
