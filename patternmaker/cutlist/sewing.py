"""The sewing list: every row of stitches of a job, and the thread to buy for it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import seats_of
from patternmaker.pattern.stitching import thread_of
from patternmaker.units import show_length, show_stitch, show_thread

if TYPE_CHECKING:
    from patternmaker.cutlist.rows import Drafted
    from patternmaker.pattern.stitching import Stitching
    from patternmaker.units import Unit

HEADS = ("Seat", "Seam", "Stitch", "Seam type", "Set to", "Length", "Thread")


@dataclass(frozen=True)
class SewRow:
    """One row of stitches of a seat; its figures are those of one seat."""

    seat: str
    stitching: Stitching

    def cells(self, unit: Unit) -> tuple[str, ...]:
        """Return what the list shows of it, under `HEADS`."""
        row = self.stitching
        return (
            self.seat,
            row.seam,
            row.kind,
            row.seam_type,
            show_stitch(row.stitch, unit),
            show_length(row.run, unit),
            show_thread(row.thread, unit),
        )


def sew_rows(drafted: Drafted) -> tuple[SewRow, ...]:
    """Return the sewing list, seat by seat, in the order of sewing."""
    return tuple(
        SewRow(seat.name, row) for seat, pattern in drafted.seats for row in pattern.stitches
    )


def thread_in_all(drafted: Drafted) -> float:
    """Return the thread that all the seats of a job take, with what is to spare, mm."""
    threads = (seats_of(seat).all * thread_of(found.stitches) for seat, found in drafted.seats)
    return math.fsum(threads)


def thread_says(drafted: Drafted) -> str:
    """Return how much thread a job takes, in a sentence."""
    unit = drafted.job.unit
    each = [(seat, thread_of(pattern.stitches)) for seat, pattern in drafted.seats]
    parts = ", ".join(
        f"{seats_of(seat).all} × {seat.name} at {show_thread(thread, unit)}"
        for seat, thread in each
        if thread
    )
    whole = show_thread(thread_in_all(drafted), unit)
    return f"Thread in all: {whole} ({parts}), half on the needle, half on the bobbin"
