"""The summary of a draft as plain data: the contract of ``draft --json``.

Lengths in mm, areas in mm2, at full precision.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import patternmaker
from patternmaker.cutlist.rows import cut_rows, needs
from patternmaker.cutlist.sewing import thread_in_all
from patternmaker.cutlist.sundries import sundry_rows
from patternmaker.pattern.stitching import thread_of

if TYPE_CHECKING:
    from patternmaker.cutlist.rows import Need
    from patternmaker.cutlist.sundries import SundryRow
    from patternmaker.drafting.draft import Draft
    from patternmaker.job.model import Seat
    from patternmaker.pattern.piece import Fit, Pattern, Piece, Seam
    from patternmaker.pattern.stitching import Stitching
    from patternmaker.sheets.printer import Printer
    from patternmaker.units import Unit


def summary(draft: Draft) -> dict[str, Any]:
    """Return everything that a program may want to know of a draft."""
    job, sheets = draft.drafted.job, draft.sheets
    return {
        "job": job.name,
        "units": job.unit.value,
        "version": patternmaker.__version__,
        "seats": [_seat(seat, pattern, job.unit) for seat, pattern in draft.drafted.seats],
        "sundries": [_sundry(row, job.unit) for row in sundry_rows(draft.drafted)],
        "materials": [_need(need) for need in needs(cut_rows(draft.drafted))],
        "thread_mm": thread_in_all(draft.drafted),
        "sheets": {
            "paper": sheets.stock.paper.name,
            "only": list(sheets.only),
            "join": sheets.stock.joining.name,
            "count": sheets.count,
            "fewest_possible": sheets.fewest,
            "printer": _printer(sheets.stock.printer),
        },
        "files": [str(path) for path in draft.files],
        "warnings": list(draft.warnings),
    }


def _printer(printer: Printer | None) -> dict[str, Any] | None:
    if printer is None:
        return None
    across, up = printer.errors
    return {"name": printer.name, "across": across, "up": up, "lean": printer.lean}


def _sundry(row: SundryRow, unit: Unit) -> dict[str, Any]:
    count = None if row.length else row.count
    return {"what": row.what.told(unit), "count": count, "length_mm": row.length or None}


def _seat(seat: Seat, pattern: Pattern, unit: Unit) -> dict[str, Any]:
    outline = seat.brief.taped
    return {
        "name": seat.name,
        "make": seat.make,
        "reversed": seat.reversed,
        "outline": {
            "shape": seat.outline.called,
            "width_mm": outline.width,
            "depth_mm": outline.height,
            "perimeter_mm": outline.length,
            "area_mm2": outline.area,
        },
        "pieces": [_piece(piece) for piece in pattern.pieces],
        "seams": [_seam(seam) for seam in pattern.seams],
        "stitches": [_stitches(row) for row in pattern.stitches],
        "thread_mm": thread_of(pattern.stitches),
        "fit": _fit(pattern.fit, unit),
    }


def _piece(piece: Piece) -> dict[str, Any]:
    return {
        "name": piece.name,
        "role": piece.role,
        "cut": piece.count,
        "reversed": piece.reversed,
        "material": piece.material.title,
        "turn_deg": piece.turn,
        "width_mm": piece.cut.width,
        "height_mm": piece.cut.height,
        "area_mm2": piece.cut.area,
        "cut_length_mm": piece.cut.length,
        "sew_length_mm": piece.sew_length,
        "notches": len(piece.notches),
    }


def _seam(seam: Seam) -> dict[str, Any]:
    return {
        "a": str(seam.a),
        "b": str(seam.b),
        "a_mm": seam.a.length,
        "b_mm": seam.b.length,
        "name": seam.name,
        "ease_mm": seam.ease,
        "eased_mm": seam.eased,
        "spans": [
            {"from": start, "to": end, "a_mm": a, "b_mm": b} for start, end, a, b in seam.spans
        ],
    }


def _need(need: Need) -> dict[str, Any]:
    return {
        "name": need.title,
        "kind": need.kind,
        "area_mm2": need.area,
        "matching_mm2": need.matching,
    }


def _stitches(row: Stitching) -> dict[str, Any]:
    return {
        "seam": row.seam,
        "stitch": row.kind,
        "seam_type": row.seam_type,
        "per_inch": row.per_inch,
        "stitch_mm": row.stitch,
        "run_mm": row.run,
        "thickness_mm": row.thickness,
        "thread_mm": row.thread,
    }


def _fit(fit: Fit, unit: Unit) -> dict[str, Any]:
    return {
        "stretch_round": fit.stretch_round,
        "report": [note.told(unit) for note in fit.says],
        "warnings": [note.told(unit) for note in fit.warnings],
    }
