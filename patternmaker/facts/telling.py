"""What a field's facts say to a person: what to measure, and within which bounds."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from patternmaker.facts.fields import LONGEST, facts_of
from patternmaker.facts.quantities import LENGTH, TEXT, Rows
from patternmaker.units import MM_PER_INCH, Unit, show_length

MARK = {Unit.IN: MM_PER_INCH / 16, Unit.MM: 0.5, Unit.CM: 1.0}  # mm; the finest mark of a tape
CLOSE = 1e-6  # marks; a bound that is a mark is that mark

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternmaker.facts.fields import Fact, Limit, Measured


def words_of(fact: Fact) -> str:
    """Return what is measured, with the words that it may be, or what each figure of a row is."""
    if fact.choices:
        return f"{fact.words}: {' or '.join(fact.choices)}"
    if isinstance(fact.quantity, Rows):
        columns, needed = fact.quantity.columns, fact.quantity.needed
        extra = [f"and {column} where you like" for column in columns[needed:]]
        return f"{fact.words}: {', '.join([*columns[:needed], *extra])}"
    return fact.words


def bounds_of(kind: type[Measured], field: str, unit: Unit, values: Mapping[str, Any]) -> str:
    """Return the bounds of a field in words, or nothing where it has none worth telling.

    Args:
        kind: the class that the field is of.
        field: its name.
        unit: in which lengths are told.
        values: of other fields, as far as they are known: those bounds are told in figures too.
    """
    fact = facts_of(kind)[field]
    own = () if fact.quantity is TEXT else _own(fact, unit)
    limits = (limit for limit in kind.limits if limit.field == field)
    return "; ".join([*own, *(_bound(limit, fact, unit, values) for limit in limits)])


def _own(fact: Fact, unit: Unit) -> Iterator[str]:
    rows = isinstance(fact.quantity, Rows)
    for words, bound in (("more than", fact.above), ("at least", fact.least),
                         ("at most", fact.most)):  # fmt: skip
        if bound and bound != LONGEST:  # a bound of nought goes without saying
            shown = f"{int(bound)} rows" if rows else _shown(fact, bound, unit, words == "at most")
            yield f"{words} {shown}"


def _bound(limit: Limit, fact: Fact, unit: Unit, values: Mapping[str, Any]) -> str:
    words = f"at {'most' if limit.upper else 'least'} {limit.words}"
    known = all(values.get(need) is not None for need in limit.needs)
    value = limit.value(values) if known else None
    return words if value is None else f"{words} ({_shown(fact, value, unit, limit.upper)})"


def _shown(fact: Fact, bound: float, unit: Unit, upper: bool) -> str:  # noqa: FBT001
    """Return a bound to be read: a length goes to the nearest mark of a tape that is within it."""
    if fact.quantity is not LENGTH:
        return fact.quantity.show(bound, unit)
    marks = bound / MARK[unit]
    inside = math.floor(marks + CLOSE) if upper else math.ceil(marks - CLOSE)
    return show_length(inside * MARK[unit], unit)
