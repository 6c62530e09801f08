"""The cut list as a CSV file for a spreadsheet."""

from __future__ import annotations

import csv
from io import StringIO
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import Drafted, cut_rows
from patternmaker.units import area_in, show_length

if TYPE_CHECKING:
    from patternmaker.cutlist.rows import CutRow
    from patternmaker.units import Unit

FORMULA = ("=", "+", "-", "@", "\t", "\r", "＝", "＋", "－", "＠")  # begin what a spreadsheet runs
HEADER = ("seat", "piece", "material", "kind", "how many", "of them reversed", "finished width",
          "finished height", "cut width", "cut height", "unit", "area of one",
          "unit of area")  # fmt: skip


def csv_of(drafted: Drafted) -> bytes:
    """Return the cut list in CSV (RFC 4180), lengths in the job's unit as a tape shows them."""
    text = StringIO()
    writer = csv.writer(text)
    writer.writerow(HEADER)
    for each in cut_rows(drafted):
        writer.writerow(_cells(each, drafted.job.unit))
    return text.getvalue().encode()


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
