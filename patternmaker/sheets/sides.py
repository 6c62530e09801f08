"""Which proof triangle a person measured, and what is wrong where it can be none."""

from __future__ import annotations

import itertools
import math
import re
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal, Refusals
from patternmaker.facts import LENGTH
from patternmaker.sheets.furniture import proof_triangle
from patternmaker.sheets.printer import MOST, Sides, beyond
from patternmaker.units import MM_PER_INCH, Unit, read_length

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternmaker.sheets.papers import Stock

ROOM = complex(6, 8)  # mm beside and below the triangle, for the lengths of its sides
NAMES = ("across", "up", "long-side")
PART = {Unit.IN: MM_PER_INCH, Unit.CM: 30.0, Unit.MM: 30.0}  # mm; of which a side has 3, 4 or 5


def proved(unit: Unit, stock: Stock) -> Sides:
    """Return the triangle of a proof page, as large as there is room for.

    For a long side is read no less finely than a short one. It stands: 3 across the paper and 4 up
    it; the smallest lies as on the overview, 4 to 3.
    """
    part = PART[unit]
    width, height = stock.window(landscape=False)
    times = int(min((width - ROOM.real) / 3, (height - ROOM.imag) / 4) / part)
    if times < 2:
        return _of_overview(unit)
    return Sides(3 * times * part, 4 * times * part, 5 * times * part)


def _of_overview(unit: Unit) -> Sides:
    up, along = proof_triangle(unit)
    return Sides(along, up, math.hypot(up, along))


def read_sides(typed: Mapping[str, str], unit: Unit, stock: Stock) -> tuple[Sides, Sides]:
    """Return the sides that were drawn, and those that were measured.

    Args:
        typed: what a person read, by `NAMES`; the long side may be left out.
        unit: of bare numbers.
        stock: what the page was printed on.

    Raises:
        Refusals: if they are of no triangle that is printed on that stock.
    """
    measured = _read(typed, unit)
    drawn = list(_drawn(unit, stock))
    fitting = [each for each in drawn if not any(beyond(each, measured))]
    if fitting:
        return min(fitting, key=lambda each: _off(each, measured)), measured
    wrong = list(_swapped(drawn, measured, typed)) or list(_wrong(drawn, measured, typed))
    raise Refusals(wrong, unit)


def _read(typed: Mapping[str, str], unit: Unit) -> Sides:
    read: dict[str, float] = {}
    wrong: list[Refusal] = []
    for name, raw in typed.items():
        try:
            read[name] = read_length(raw, unit)
        except Refusal as mistake:
            wrong.append(mistake.at(name))
    if wrong:
        raise Refusals(wrong, unit)
    return Sides(read["across"], read["up"], read.get("long-side"))


def _drawn(unit: Unit, stock: Stock) -> Iterator[Sides]:
    """Yield the triangles that are printed: of the proof page and the overview, in either unit."""
    other = Unit.MM if unit is Unit.IN else Unit.IN
    for one in (unit, other):
        yield proved(one, stock)
        yield _of_overview(one)


def _off(drawn: Sides, measured: Sides) -> float:
    return max(abs(side / drawn.named[name] - 1) for name, side in measured.named.items())


def _swapped(drawn: list[Sides], measured: Sides, typed: Mapping[str, str]) -> Iterator[Refusal]:
    names = list(measured.named)
    for order in itertools.permutations(names):
        sides = Sides(*(measured.named[name] for name in order), *[None] * (3 - len(order)))
        if any(not any(beyond(each, sides)) for each in drawn):
            said = " ".join(
                f"--{name} {quoted(typed[other])}" for name, other in zip(names, order, strict=True)
            )
            moved = " and ".join(
                name for name, other in zip(names, order, strict=True) if name != other
            )
            yield Refusal(moved, "these sides look swapped", mend=f"if they are, say {said}")
            return


def _wrong(drawn: list[Sides], measured: Sides, typed: Mapping[str, str]) -> Iterator[Refusal]:
    """Yield what is wrong with each side, by the triangle that explains the most of them."""
    told = {id(each): list(_misfits(each, measured, typed)) for each in drawn}
    fewest = min(drawn, key=lambda each: (len(told[id(each)]), _unexplained(told[id(each)])))
    yield from told[id(fewest)]


def _unexplained(mistakes: list[Refusal]) -> int:
    return sum("if you read" not in mistake.mend for mistake in mistakes)


def _misfits(drawn: Sides, measured: Sides, typed: Mapping[str, str]) -> Iterator[Refusal]:
    for mistake in beyond(drawn, measured):
        side = drawn.named[mistake.field]
        meant = _in_another_unit(typed[mistake.field], side)
        if meant is None:
            yield mistake
        else:
            yield Refusal(
                mistake.field, "{value} is far from {limit}", value=mistake.value, limit=side,
                mend=f"if you read {meant}, say --{mistake.field} {quoted(meant)}",
                show=LENGTH.show,
            )  # fmt: skip


def _in_another_unit(typed: str, side: float) -> str | None:
    """Return what was typed with the unit in which it would be about as long as a side."""
    number = re.sub(r"[^\d/]+$", "", typed.strip())
    for unit in Unit:
        try:
            value = read_length(number, unit)
        except Refusal:
            return None
        if abs(value / side - 1) <= MOST:
            return f"{number} {unit}"
    return None


def quoted(text: str) -> str:
    """Return a word as every shell takes it, in quotes if it needs them.

    >>> quoted("180.5"), quoted("7 1/8 in")
    ('180.5', '"7 1/8 in"')
    """
    return text if re.fullmatch(r"[\w.,/-]+", text) else f'"{text}"'
