"""How seams are sewn: the stitch, its length, and the thread that it takes.

A lockstitch holds two threads, which cross in the middle of what is sewn: with S stitches an inch
through T inches of material it takes 2 + 2 T S inches of thread for an inch of seam (textile
engineers' notes on sewing thread; it leaves out the bends, so some is added to spare).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.facts import Measured, both, measured, rate, stitch
from patternmaker.units import MM_PER_INCH

if TYPE_CHECKING:
    from collections.abc import Iterable

BY_HAND = "closing seam"  # what closes an opening, slip-stitched once the cover is turned
LOCKSTITCH = "301 lockstitch"  # ISO 4915:1991
# ISO 4916:1991 in the letters of FED-STD-751a. SSk is in its class deck; SSa and LSq are from
# memory.
PLAIN = "SSa plain seam"
PIPED = "SSk seam with piping"
TOPSTITCHED = "LSq topstitched seam"
# A thread of Tex 135, sold as size 138, and one of Tex 70, sold as size 69, with their needles as
# leatherworkers say.
USUAL = (
    "Usual in leather and vinyl: thread 138 (Tex 135), needle Nm 140 to 160; in cloth thread 69 "
    "(Tex 70), needle Nm 110."
)


@measured
class StitchRules(Measured):
    """How long the stitches are; common practice, no source, but for the thread to spare."""

    seams: float = stitch(
        "length of the stitch in seams", default=both(in_=1 / 8, mm=3), least=1, most=10
    )
    topstitch: float = stitch(
        "length of the stitch that shows", default=both(in_=1 / 6, mm=4.5), least=1, most=15
    )
    spare: float = rate(  # crafts pages say 10 to 15 per cent
        "thread to spare beyond what the stitches hold", default=0.15, most=1.0
    )


def thread_on(length: float, thickness: float, stitch: float) -> float:
    """Return the thread that a lockstitch takes on a length, without any to spare.

    >>> thread_on(1000, thickness=2.4, stitch=4)
    3200.0
    """
    return length * (2 + 2 * thickness / stitch)


@dataclass(frozen=True)
class Stitching:
    """One row of stitches of a seat, all that are called the same.

    Args:
        seam: the name of the seam.
        seam_type: what it is in the standard, or what is done.
        stitch: the length of one stitch, mm.
        run: how long the row is, mm.
        thickness: of all the layers that it goes through, mm.
        spare: share of thread to spare.
        pieces: the names of the pieces that it goes through.
        kind: of stitch.
    """

    seam: str
    seam_type: str
    stitch: float
    run: float
    thickness: float
    spare: float = 0.0
    pieces: tuple[str, ...] = ()
    kind: str = LOCKSTITCH

    @property
    def thread(self) -> float:
        """The thread that it takes, with what is to spare."""
        return thread_on(self.run, self.thickness, self.stitch) * (1 + self.spare)

    @property
    def per_inch(self) -> float:
        """How many stitches go on an inch."""
        return MM_PER_INCH / self.stitch

    @property
    def shows(self) -> bool:
        """Whether it is a topstitch."""
        return self.seam_type == TOPSTITCHED


def thread_of(rows: Iterable[Stitching]) -> float:
    """Return the thread that some rows take together."""
    return math.fsum(row.thread for row in rows)


def settings(rows: Iterable[Stitching], *, shown: bool) -> tuple[float, ...]:
    """Return the lengths of stitch that are set for the rows that show, or for the others."""
    return tuple(dict.fromkeys(row.stitch for row in rows if row.shows is shown))
