"""From what a person types to the value of a field, checked as a job file is."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any, NamedTuple

from patternmaker.facts import COUNT, LENGTH, SWITCH, TEXT, File, mistakes
from patternmaker.job.writing import literal, rows_source, source, tape
from patternmaker.units import read_length

if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from patternmaker.errors import Refusal
    from patternmaker.facts import Fact, Measured, Quantity
    from patternmaker.units import Unit

SMALLER = (1.0, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0.0)  # of a default, until it fits
SWITCHES = {"yes": True, "y": True, "true": True, "no": False, "n": False, "false": False}


class Answer(NamedTuple):
    """The value of a field, and how a job file says it."""

    value: Any
    source: str


def read(fact: Fact, typed: str, unit: Unit, folder: Path) -> Answer:
    """Return what was typed for a field as its value.

    Raises:
        Refusal: if it can't be read as one.
    """
    quantity = fact.quantity
    if quantity is SWITCH:
        return _switch(quantity, typed, unit)
    if quantity is COUNT:
        value = quantity.read(int(typed) if re.fullmatch(r"\d{1,9}", typed) else typed, unit)
        return Answer(value, str(value))
    value = quantity.read(typed, unit)
    if isinstance(quantity, File):
        return Answer(quantity.opened(value, folder), source(fact, value, unit))
    return Answer(value, source(fact, value, unit) if quantity is TEXT else literal(typed))


def _switch(quantity: Quantity, typed: str, unit: Unit) -> Answer:
    value = quantity.read(SWITCHES.get(typed.casefold(), typed), unit)
    return Answer(value, str(value).lower())


def read_rows(fact: Fact, typed: list[str], unit: Unit) -> Answer:
    """Return typed rows as the value of a field of rows; see `cells`."""
    rows = [cells(line) for line in typed]
    return Answer(fact.quantity.read(rows, unit), rows_source(rows))


def cells(line: str) -> list[str]:
    """Return the figures of a row: parted by semicolons, or by commas where there are none.

    >>> cells("12 1/2, 3, 1"), cells("36,8; 20")
    (['12 1/2', '3', '1'], ['36,8', '20'])
    """
    return [cell.strip() for cell in line.split(";" if ";" in line else ",")]


def wrong(kind: type[Measured], field: str, value: Any, known: Mapping[str, Any]) -> list[Refusal]:
    """Return what is wrong with a value beside those that are known, as far as it can be told."""
    return list(mistakes(kind, {**known, field: value}))


def offered(
    kind: type[Measured], field: str, fact: Fact, known: Mapping[str, Any], unit: Unit
) -> Answer | None:
    """Return the default of a field, or as much of it as the values that are known leave room for.

    None where it has no default, or none that fits.
    """
    default = fact.default.in_(unit)
    if default is None or default == ():
        return None
    shares = SMALLER if fact.quantity is LENGTH else (1.0,)
    for share in shares:
        value = default if share == 1.0 else read_length(_coarse(default * share, unit), unit)
        if not wrong(kind, field, value, known):
            return Answer(value, source(fact, value, unit))
    return None


def _coarse(value: float, unit: Unit) -> str:
    """Return a length to the nearest quarter inch, or five millimetres."""
    step = 25.4 / 4 if unit.value == "in" else 5.0
    return tape(round(value / step) * step, unit)
