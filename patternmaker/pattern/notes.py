"""Sentences with lengths in them, told in the unit of whoever reads them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from patternmaker.facts import Default
from patternmaker.units import (
    MM_PER_INCH,
    Unit,
    show_finely,
    show_gauge,
    show_length,
    show_rate,
    show_stitch,
    show_thread,
)


class Figure(Protocol):
    """A value that is told otherwise than a length on a tape."""

    def told(self, unit: Unit) -> str:
        """Return it in words."""


@dataclass(frozen=True)
class Share:
    """A share of one that a note tells in per cent."""

    of_one: float

    def told(self, unit: Unit) -> str:
        """Return it in per cent, to a hundredth."""
        return show_rate(round(self.of_one, 4), unit)


@dataclass(frozen=True)
class Fine:
    """A length too small for a tape, which a note tells to the hundredth of a millimetre."""

    mm: float

    def told(self, unit: Unit) -> str:
        """Return it, finely."""
        return show_finely(self.mm, unit)


@dataclass(frozen=True)
class Gauge:
    """A diameter or a thickness, which a note tells as it is sold by."""

    mm: float

    def told(self, unit: Unit) -> str:
        """Return it, to 1/32 in or 0.1 mm."""
        return show_gauge(self.mm, unit)


@dataclass(frozen=True)
class Stitch:
    """The length of a stitch, which a note tells as machines are set."""

    mm: float

    def told(self, unit: Unit) -> str:
        """Return it, or how many go on an inch."""
        return show_stitch(self.mm, unit)


@dataclass(frozen=True)
class Thread:
    """A length of thread, which a note tells as it is bought."""

    mm: float

    def told(self, unit: Unit) -> str:
        """Return it in metres or yards."""
        return show_thread(self.mm, unit)


UNTOLD = MM_PER_INCH / 32  # a length that a tape in inches shows as none, or as the least it has

PREPARING, TOPSTITCH, GAUGES = "preparing", "topstitch", "gauges"
"""Matters that notes are about: what comes ahead of all sewing, a topstitch, lines not traced."""


@dataclass(frozen=True)
class Note:
    """A sentence with gaps for lengths (mm), shares and words.

    A length that is round in either system, as rules of thumb are, is one made by `both`. What a
    note is about, the pieces and matters that it would go with, is told apart from its words.

    >>> Note("cut {} wide", (120.65,)).told(Unit.IN)
    'cut 4 3/4 in wide'
    """

    says: str
    values: tuple[float | Figure | Default | str, ...] = ()
    about: tuple[str, ...] = ()

    def told(self, unit: Unit) -> str:
        """Return the sentence with its lengths in ``unit``."""
        return self.says.format(*(_shown(value, unit) for value in self.values))


def _shown(value: float | Figure | Default | str, unit: Unit) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, Default):
        return show_length(value.in_(unit), unit)
    return show_length(value, unit) if isinstance(value, float | int) else value.told(unit)
