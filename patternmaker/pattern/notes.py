"""Sentences with lengths in them, told in the unit of whoever reads them."""

from __future__ import annotations

from dataclasses import dataclass

from patternmaker.facts import Default
from patternmaker.units import Unit, show_finely, show_gauge, show_length, show_rate, show_stitch


@dataclass(frozen=True)
class Share:
    """A share of one that a note tells in per cent."""

    of_one: float


@dataclass(frozen=True)
class Fine:
    """A length too small for a tape, which a note tells to the hundredth of a millimetre."""

    mm: float


@dataclass(frozen=True)
class Gauge:
    """A diameter or a thickness, which a note tells as it is sold by."""

    mm: float


@dataclass(frozen=True)
class Stitch:
    """The length of a stitch, which a note tells as machines are set."""

    mm: float


@dataclass(frozen=True)
class Note:
    """A sentence with gaps for lengths (mm), shares and words.

    A length that is round in either system, as rules of thumb are, is one made by `both`.

    >>> Note("cut {} wide", (120.65,)).told(Unit.IN)
    'cut 4 3/4 in wide'
    """

    says: str
    values: tuple[float | Share | Fine | Gauge | Stitch | Default | str, ...] = ()

    def told(self, unit: Unit) -> str:
        """Return the sentence with its lengths in ``unit``."""
        return self.says.format(*(_shown(value, unit) for value in self.values))


def _shown(value: float | Share | Fine | Gauge | Stitch | Default | str, unit: Unit) -> str:
    if isinstance(value, Fine):
        return show_finely(value.mm, unit)
    if isinstance(value, Gauge):
        return show_gauge(value.mm, unit)
    if isinstance(value, Stitch):
        return show_stitch(value.mm, unit)
    if isinstance(value, str):
        return value
    if isinstance(value, Share):
        return show_rate(round(value.of_one, 4))
    return show_length(value.in_(unit) if isinstance(value, Default) else value, unit)
