"""What facts say to a person."""

import pytest

from patternmaker.facts import (
    Measured,
    angle,
    at_least,
    at_most,
    both,
    choice,
    count,
    length,
    measured,
    rows,
)
from patternmaker.facts.fields import facts_of
from patternmaker.facts.telling import bounds_of, words_of
from patternmaker.units import Unit


@measured
class Cushion(Measured):
    width: float = length("left to right", default=both(mm=400), least=50, most=1000)
    nose: float = length("tip", default=both(mm=20), least=None, above=5)
    hand: str = choice("which side", ("left", "right"), default="left")
    lean: float = angle("from upright", default=10, least=5, most=60)
    tufts: int = count("how many", default=2, least=2, most=4000)
    places: tuple[tuple[float, ...], ...] = rows(
        "each place", ("from the left", "from behind", "depth"), needed=2, least=2, most=9
    )
    limits = (
        at_most("nose", lambda width: width / 3, "a third of the width", "shorten it"),
        at_least("nose", lambda tufts: tufts, "the tufts", "lengthen it"),
    )


def told(field: str, unit: Unit = Unit.MM, **values: float) -> str:
    return bounds_of(Cushion, field, unit, values)


def test_choices_are_named_after_the_words():
    assert words_of(facts_of(Cushion)["hand"]) == "which side: left or right"


def test_figures_of_a_row_are_named_after_the_words():
    says = "each place: from the left, from behind, and depth where you like"
    assert words_of(facts_of(Cushion)["places"]) == says


def test_plain_words_stay_as_they_are():
    assert words_of(facts_of(Cushion)["width"]) == "left to right"


@pytest.mark.parametrize(
    ("field", "says"),
    [("width", "at least 50 mm; at most 1000 mm"), ("lean", "at least 5°; at most 60°"),
     ("tufts", "at least 2; at most 4,000"), ("places", "at least 2 rows; at most 9 rows"),
     ("hand", "")],
)  # fmt: skip
def test_bounds_of_a_field_are_told_in_its_own_way(field, says):
    assert told(field) == says


def test_longest_of_all_and_nought_go_without_saying():
    assert told("nose").startswith("more than 5 mm; at most a third")


def test_bounds_set_by_other_fields_are_told_in_figures_once_those_are_known():
    assert told("nose", width=100.0).endswith("at most a third of the width (33 mm); at least "
                                              "the tufts")  # fmt: skip
    assert told("nose", tufts=2).endswith("a third of the width; at least the tufts (2 mm)")


def test_bound_is_told_as_the_nearest_mark_of_a_tape_that_is_within_it():
    """50 mm is 1.97 in and 1000 mm 39.37 in: 2 in is allowed, 39 3/8 in is not."""
    assert told("width", Unit.IN) == "at least 2 in; at most 39 5/16 in"
