"""What the entries of a material say against each other."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH, RATE
from patternmaker.materials.kinds import KINDS, NO_NAP, ONE_WAY

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

MOST_TAKE_UP = 0.15  # more is a mistyped rate, not a stretchy hide
USUAL_USE = 0.5  # of the give that a stretch test finds; common practice, no source
RAILROADED = "railroaded"

RIVALS = {
    "take_up": "stretch_test",
    "give": "stretch_test",
    "take_up_across": "stretch_test_across",
    "take_up_along": "stretch_test_along",
}
"""Fields that set what the stretch test beside them sets too."""


def quarrels(values: Mapping[str, Any]) -> Iterator[Refusal]:
    """Yield whatever is said twice, two rules that turn a piece two ways, and a vain repeat."""
    yield from _said_twice(values)
    yield from _misused(values)
    yield from _turned_both_ways(values)
    yield from _matched_in_vain(values)


def _said_twice(values: Mapping[str, Any]) -> Iterator[Refusal]:
    for field, test in RIVALS.items():
        if values[field] is not None and values[test] is not None:
            yield Refusal(field, f"{{value}} is given beside {test}, which sets it",
                          value=values[field], show=RATE.show,
                          mend="leave one of them away")  # fmt: skip


def _misused(values: Mapping[str, Any]) -> Iterator[Refusal]:
    """Yield a share of the give that there is no test for, or that takes up too much."""
    tests = [test for test in set(RIVALS.values()) if values[test] is not None]
    if values["use"] is not None and not tests:
        yield Refusal("use", "{value} is a share of the give in a stretch test, and there is none",
                      value=RATE.show(values["use"], None),
                      mend="give stretch_test, or leave it away")  # fmt: skip
    use = USUAL_USE if values["use"] is None else values["use"]
    most = max((values[test].give for test in tests), default=0.0)
    if use * most > MOST_TAKE_UP:
        yield Refusal("use", "{value} would be taken up, more than {limit}", value=use * most,
                      limit=MOST_TAKE_UP, show=RATE.show, mend="use less of the give")  # fmt: skip


def _turned_both_ways(values: Mapping[str, Any]) -> Iterator[Refusal]:
    """Yield that railroading turns what must not be turned."""
    kind = KINDS[values["kind"]]
    if values["lay"] != RAILROADED:
        return
    if kind.sold_by_area:
        yield Refusal("lay", "{value}, but {limit} has no roll", value=RAILROADED, limit=kind.name,
                      mend="leave it away")  # fmt: skip
    elif (values["nap"] or kind.nap) == ONE_WAY:
        yield Refusal("lay", "{value} turns the nap from left to right, and the nap ({limit}) must "
                      "run from back to front", value=RAILROADED, limit=ONE_WAY,
                      mend=f'lay it up the roll, or say nap = "{NO_NAP}"')  # fmt: skip


def _matched_in_vain(values: Mapping[str, Any]) -> Iterator[Refusal]:
    """Yield a repeat on a material that has none, or that no piece follows."""
    if KINDS[values["kind"]].patterned:
        return
    for field in ("repeat", "repeat_across"):
        if values[field] is not None:
            yield Refusal(field, f"{{value}} is a repeat, and {values['kind']} has none to match",
                          value=values[field], show=LENGTH.show,
                          mend="leave it away, or give another kind")  # fmt: skip
