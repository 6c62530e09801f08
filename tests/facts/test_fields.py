"""Fields check themselves, and each other, by their own facts."""

import math
from typing import Any

import pytest

from patternmaker.errors import Refusals
from patternmaker.facts import (
    Measured,
    at_least,
    at_most,
    both,
    choice,
    count,
    facts_of,
    length,
    measured,
    mistakes,
    rate,
    switch,
    text,
    unknown,
)
from patternmaker.facts.fields import nearest
from patternmaker.units import Unit


@measured
class Board(Measured):
    name: str = text("what it is called", most=10)
    width: float = length("left to right", default=both(in_=12, mm=300), least=50)
    corner: float = length("corner radius", default=both(mm=0), required=False)
    spare: float | None = length("spare", required=False, above=0.0, least=None)
    pull: float = rate("take-up", default=0.02, most=0.1)
    make: int = count("how many")
    lie: str = choice("how it lies", ("flat", "on edge"), default="flat")
    tufted: bool = switch("tufted")
    limits = (
        at_most("corner", lambda width: width / 2, "half the width", "make it smaller"),
        at_least("spare", lambda corner: corner if corner > 10 else None, "the corner", "add"),
    )


GOOD: dict[str, Any] = {"name": "oak", "width": 100.0, "corner": 20.0}
TOO_MANY = "10,000; make it 10,000 or less"


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ({"width": 49.0}, "width: 49 mm is less than 50 mm; make it 50 mm or more"),
        ({"width": 9000.0},
         "width: 9000 mm is more than 5000 mm; make it 5000 mm or less; check the unit"),
        ({"width": math.nan}, "width: nan is not a measurement; measure again"),
        ({"width": math.inf}, "width: inf is not a measurement; measure again"),
        ({"corner": 50.1}, "corner: 50.1 mm is more than half the width (50 mm); make it smaller"),
        ({"corner": -1.0}, "corner: -1 mm is less than 0 mm; make it 0 mm or more"),
        ({"spare": 0.0}, "spare: 0 mm is not more than 0 mm; measure again"),
        ({"spare": 19.0}, "spare: 19 mm is less than the corner (20 mm); add"),
        ({"pull": 2.5},
         'pull: 250 % is more than 10 %; make it 10 % or less; write per cent as in "2.5%"'),
        ({"make": 0}, "make: 0 is less than 1; make it 1 or more"),
        ({"make": 10**400}, f"make: a number of more than 15 digits is more than {TOO_MANY}"),
        ({"lie": "flatt"}, "lie: 'flatt' is not known; did you mean 'flat'?"),
        ({"lie": "?"}, "lie: '?' is not known; it can be flat, on edge"),
        ({"name": ""}, "name: is empty; give it a name"),
        ({"name": "x" * 11}, "name: has 11 letters, more than 10; shorten it"),
    ],
)  # fmt: skip
def test_wrong_board_cannot_be_made(wrong, told):
    with pytest.raises(Refusals) as refused:
        Board(**{**GOOD, **wrong})
    assert str(refused.value) == told


def test_every_wrong_field_is_named_at_once():
    with pytest.raises(Refusals) as refused:
        Board(**{**GOOD, "name": "", "width": 10, "corner": -1, "make": 0})
    assert [each.field for each in refused.value] == ["name", "width", "corner", "make"]


def test_limit_waits_until_the_fields_that_set_it_are_good():
    assert [each.field for each in mistakes(Board, {"width": 10.0, "corner": 30.0})] == ["width"]


def test_limit_is_kept_exactly_and_forgives_the_last_digit():
    assert Board(**{**GOOD, "corner": 50.0 + 1e-12}).corner > 50.0


@pytest.mark.parametrize(("spare", "corner"), [(None, 20.0), (1.0, 5.0)])
def test_field_left_out_and_bound_left_open_break_no_limit(spare, corner):
    assert Board(**{**GOOD, "spare": spare, "corner": corner}).spare == spare


def test_measurements_are_frozen():
    with pytest.raises(AttributeError):
        Board(**GOOD).width = 60  # type: ignore[misc]


def test_default_follows_the_system_of_the_job():
    fact = facts_of(Board)["width"]
    assert [fact.default.in_(unit) for unit in (Unit.IN, Unit.MM, Unit.CM)] == [
        pytest.approx(304.8), 300.0, 300.0,
    ]  # fmt: skip


def test_length_without_inch_default_is_the_same_in_both():
    assert both(mm=5).in_(Unit.IN) == 5.0


def test_facts_stand_in_the_order_in_which_they_are_asked_for():
    assert list(facts_of(Board))[:3] == ["name", "width", "corner"]


@pytest.mark.parametrize(
    ("word", "near"),
    [("lether", "upholstery leather"), ("vynil", "vinyl"), ("WOVEN CLOTH", "woven cloth"),
     ("vinly", "vinyl"), ("spare", "boxing_spare"), ("hide", None), ("", None), ("l" * 5000, None)],
)  # fmt: skip
def test_nearest_name_is_like_the_word_or_holds_one_that_is(word, near):
    known = ["upholstery leather", "vinyl", "woven cloth", "boxing_spare"]
    assert nearest(word, known) == near


def test_nothing_is_near_where_nothing_is_known():
    assert nearest("leather", []) is None


def test_refusal_of_an_unknown_word_is_short_however_long_the_word():
    assert len(str(unknown("shape", "o" * 5000, ["circle"]))) < 120
