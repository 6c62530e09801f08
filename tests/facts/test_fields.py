"""Fields check themselves, and each other, by their own facts."""

import math
from collections.abc import Iterator, Mapping
from typing import Any

import pytest

from patternmaker.covers import COVERS
from patternmaker.errors import Refusal, Refusals
from patternmaker.facts import (
    Default,
    Found,
    Measured,
    angle,
    at_least,
    at_most,
    both,
    choice,
    count,
    facts_of,
    file,
    length,
    measured,
    mistakes,
    rate,
    rows,
    switch,
    text,
    unknown,
)
from patternmaker.facts.fields import nearest
from patternmaker.facts.words import ALSO_CALLED
from patternmaker.job.model import SeatFacts
from patternmaker.materials import KINDS
from patternmaker.outlines import SHAPES
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


@measured
class Saddle(Measured):
    width: float = length("left to right", default=both(mm=300), least=50)
    lobe: float = length("radius behind", default=both(mm=50))
    waist: float = length("where it is narrow", default=both(mm=200))
    limits = (
        at_most("lobe", lambda width: width / 4, "a quarter of the width", "make it smaller"),
        at_most("waist", lambda lobe: math.sqrt(75 - lobe), "what the lobes leave", "look again"),
        at_least("width", lambda waist: waist, "the waist", "make it wider"),
    )

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        if values["lobe"] == values["waist"]:
            yield Refusal("waist", "is as wide as a lobe")


def test_field_past_its_limit_sets_no_limit_to_another():
    """The bound of the waist could not even be reckoned from such lobes."""
    wrong = {"width": 300.0, "lobe": 100.0, "waist": 1000.0}
    assert [each.field for each in mistakes(Saddle, wrong)] == ["lobe", "width"]


def test_fields_within_all_limits_may_still_not_go_together():
    with pytest.raises(Refusals, match=r"^waist: is as wide as a lobe$"):
        Saddle(width=300, lobe=3, waist=3)


def test_what_does_not_go_together_is_asked_of_good_fields_only():
    assert [each.says for each in mistakes(Saddle, {"lobe": 3.0, "waist": 3.0})] == []
    wrong = {"width": 1.0, "lobe": 3.0, "waist": 3.0}
    assert [each.field for each in mistakes(Saddle, wrong)] == ["width"]


@measured
class Marked(Measured):
    lean: float = angle("from upright", default=10, least=5, most=60)
    places: tuple[tuple[float, ...], ...] = rows(
        "each place", ("from the left", "from behind", "depth"), needed=2, least=2, most=3
    )
    file: Found | None = file("a drawing of it", required=False)


PLACES = ((0.0, 0.0), (10.0, 20.0, 5.0))


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ({"lean": 4.5}, "lean: 4.5° is less than 5°; make it 5° or more"),
        ({"lean": 60.5}, "lean: 60.5° is more than 60°; make it 60° or less"),
        ({"lean": math.nan}, "lean: nan is not a measurement; measure again"),
        ({"places": PLACES[:1]}, "places, number of rows: 1 is less than 2; make it 2 or more"),
        ({"places": PLACES * 2}, "places, number of rows: 4 is more than 3; make it 3 or less"),
        ({"places": (*PLACES, (-1.0, 0.0))},
         "places, row 3, from the left: -1 mm is less than 0 mm; make it 0 mm or more"),
        ({"places": (*PLACES, (0.0, 0.0, 5001.0))},
         ("places, row 3, depth: 5001 mm is more than 5000 mm; make it 5000 mm or less; "
         "check the unit")),
        ({"places": ((0.0, math.inf), (0.0, 0.0))},
         "places, row 1, from behind: inf is not a measurement; measure again"),
    ],
)  # fmt: skip
def test_angle_or_row_out_of_bounds_is_refused_by_its_place(wrong, told):
    with pytest.raises(Refusals) as refused:
        Marked(**{"places": PLACES, **wrong})
    assert str(refused.value) == told


def test_file_is_taken_as_it_was_found():
    found = Found("seat.svg", b"<svg/>")
    assert Marked(places=PLACES, file=found).file is found
    assert repr(found) == "Found('seat.svg')"


def test_rows_without_a_default_may_be_left_away_and_those_with_one_must_be_given():
    given = rows("each", ("at",), default=Default(((1.0,),), ((25.4,),))).metadata["fact"]
    free = rows("each", ("at",)).metadata["fact"]
    assert (given.required, given.default.in_(Unit.IN)) == (True, ((25.4,),))
    assert (free.required, free.default.in_(Unit.IN)) == (False, ())


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
     ("vinly", "vinyl"), ("spare", "boxing_spare"), ("silk", None), ("", None), ("l" * 5000, None)],
)  # fmt: skip
def test_nearest_name_is_like_the_word_or_holds_one_that_is(word, near):
    known = ["upholstery leather", "vinyl", "woven cloth", "boxing_spare"]
    assert nearest(word, known) == near


@pytest.mark.parametrize(
    ("word", "name"),
    [("round", "circle"), ("Square", "rounded rectangle"), ("slip_seat", "pull-over"),
     ("box", "boxed"), ("piping", "welt"), ("fabric", "woven cloth")],
)  # fmt: skip
def test_other_word_of_the_trade_is_understood(word, name):
    """Though it is more like another: common practice, no source."""
    known = ["half round", "circle", "oval", "rounded rectangle", "box cushion", "boxed", "padding",
             "pull-over", "welt", "cambric", "woven cloth"]  # fmt: skip
    assert nearest(word, known) == name


def test_every_word_of_the_trade_stands_for_something_that_a_job_knows():
    known = {*SHAPES.all, *COVERS.all, *KINDS, *facts_of(SeatFacts), "welt"}
    assert set(ALSO_CALLED) <= known


def test_nothing_is_near_where_nothing_is_known():
    assert nearest("leather", []) is None


def test_refusal_of_an_unknown_word_is_short_however_long_the_word():
    assert len(str(unknown("shape", "o" * 5000, ["circle"]))) < 120
