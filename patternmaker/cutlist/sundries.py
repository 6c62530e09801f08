"""What a job takes beside its covering: zips, cord, foam, board, summed over its seats."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import seats_of
from patternmaker.pattern.notes import Note

if TYPE_CHECKING:
    from patternmaker.cutlist.rows import Drafted


@dataclass(frozen=True)
class SundryRow:
    """One thing to buy: how many of it, or how much where it is sold by the length, mm."""

    what: Note
    count: int = 0
    length: float = 0.0

    @property
    def note(self) -> Note:
        """What to buy, in a sentence."""
        if self.length:
            return Note(f"{self.what.says}: {{}} in all", (*self.what.values, self.length))
        return Note(f"{self.what.says}: {{}}", (*self.what.values, str(self.count)))


def sundry_rows(drafted: Drafted) -> tuple[SundryRow, ...]:
    """Return what a job takes, things that are alike together, in the order of its seats."""
    found: dict[Note, SundryRow] = {}
    for seat, pattern in drafted.seats:
        seats = seats_of(seat).all
        for each in pattern.sundries:
            row = found.get(each.what, SundryRow(each.what))
            found[each.what] = SundryRow(
                each.what, row.count + each.count * seats, row.length + each.length * seats
            )
    return tuple(found.values())
