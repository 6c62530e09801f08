"""What a job asks to be done to the covers of its seats, whatever covers they are."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from patternmaker.job.lists import listing
from patternmaker.pattern.finishing import Finishing, Padding, WeltWish
from patternmaker.pattern.stitching import StitchRules

if TYPE_CHECKING:
    from collections.abc import Mapping

    from patternmaker.facts import Reading


class Finishings:
    """Reads the welts, stitches and padding of seats; the job's stitches stand beneath theirs."""

    def __init__(self, reading: Reading, tables: Mapping[str, object]) -> None:
        self.reading = reading
        self.table = reading.table(tables.get("stitching", {}), "stitching")
        self.of_job = reading.read(StitchRules, self.table, "stitching")
        self.told = reading.told("stitching")

    def of_seat(self, table: Mapping[str, object], place: str) -> Finishing | None:
        """Return what is asked for a seat, or None once a mistake is noted."""
        stitches = self._stitches(table, place)
        welts = listing(self.reading, _listed(table), "welt", place,
                        partial(self.reading.read, WeltWish))  # fmt: skip
        padding = self._padding(table, place)
        if stitches is None or welts is None or ("padding" in table and padding is None):
            return None
        return Finishing(tuple(welts), stitches, padding)

    def _stitches(self, table: Mapping[str, object], place: str) -> StitchRules | None:
        if "stitching" not in table:
            return self.of_job
        here = f"{place}stitching"
        own = self.reading.table(table["stitching"], here)
        told = self.told - own.keys()
        return self.reading.read(StitchRules, {**self.table, **own}, here, told=told)

    def _padding(self, table: Mapping[str, object], place: str) -> Padding | None:
        if "padding" not in table:
            return None
        here = f"{place}padding"
        return self.reading.read(Padding, self.reading.table(table["padding"], here), here)


def _listed(table: Mapping[str, object]) -> Mapping[str, object]:
    """Return a seat's table with a lone welt in a list."""
    lone = table.get("welt")
    return {**table, "welt": [lone]} if isinstance(lone, dict) else table
