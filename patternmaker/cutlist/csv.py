"""The cut list and the sewing list as CSV files for a spreadsheet."""

from __future__ import annotations

import csv
from io import StringIO
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import Drafted, cut_rows, seats_of
from patternmaker.cutlist.sewing import sew_rows
from patternmaker.units import area_in, show_length, thread_in

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from patternmaker.cutlist.rows import CutRow
    from patternmaker.cutlist.sewing import SewRow
    from patternmaker.units import Unit

FORMULA = ("=", "+", "-", "@", "\t", "\r", "＝", "＋", "－", "＠")  # begin what a spreadsheet runs
HEADER = ("seat", "piece", "material", "kind", "how many", "of them reversed", "finished width",
          "finished height", "cut width", "cut height", "unit", "area of one",
          "unit of area")  # fmt: skip

SEWING_HEADER = ("seat", "seam", "stitch", "seam type", "stitches per inch", "stitch in mm",
                 "length", "unit", "thread of one seat", "seats", "thread in all",
                 "unit of thread")  # fmt: skip


def csv_of(drafted: Drafted) -> bytes:
    """Return the cut list in CSV (RFC 4180), lengths in the job's unit as a tape shows them."""
    return _table(HEADER, (_cells(each, drafted.job.unit) for each in cut_rows(drafted)))


def sewing_csv_of(drafted: Drafted) -> bytes:
    """Return the sewing list in CSV, a row for each row of stitches of each seat."""
    counts = {seat.name: seats_of(seat).all for seat in drafted.job.seats}
    rows = (_sewn(each, counts[each.seat], drafted.job.unit) for each in sew_rows(drafted))
    return _table(SEWING_HEADER, rows)


def _table(header: Sequence[str], rows: Iterable[Sequence[str]]) -> bytes:
    text = StringIO()
    writer = csv.writer(text)
    writer.writerow(header)
    writer.writerows(rows)
    return text.getvalue().encode()


def _sewn(each: SewRow, seats: int, unit: Unit) -> list[str]:
    row = each.stitching
    thread, thread_unit = thread_in(row.thread, unit)
    return [
        _safe(each.seat),
        _safe(row.seam),
        row.kind,
        row.seam_type,
        f"{row.per_inch:.3g}",
        f"{row.stitch:.3f}",
        show_length(row.run, unit, bare=True),
        unit.value,
        f"{thread:.2f}",
        str(seats),
        f"{thread * seats:.2f}",
        thread_unit,
    ]


def _cells(each: CutRow, unit: Unit) -> list[str]:
    finished = each.piece.finished
    area, area_unit = area_in(each.area, unit)
    sizes = [show_length(side, unit, bare=True) for side in each.cut_size]
    return [
        _safe(each.seat),
        each.piece.name,
        _safe(each.piece.material.title),
        each.piece.material.kind,
        str(each.count),
        str(each.tally.reversed),
        *([show_length(side, unit, bare=True) for side in finished] if finished else ["", ""]),
        *sizes,
        unit.value,
        f"{area:.4f}",
        area_unit,
    ]


def _safe(cell: str) -> str:
    """Return a cell that no spreadsheet takes for a formula."""
    return f"'{cell}" if cell.startswith(FORMULA) else cell
