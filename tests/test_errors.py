"""Refusals carry their facts and tell them in the unit of the job."""

from datetime import date, datetime, time

import pytest

from patternmaker.errors import OutputFault, PatternmakerError, Refusal, Refusals, brief
from patternmaker.facts import LENGTH
from patternmaker.units import Unit


def refusal() -> Refusal:
    return Refusal(
        "corner", "{value} is more than half ({limit})", value=304.8, limit=279.4,
        mend="make it smaller", show=LENGTH.show,
    )  # fmt: skip


def test_refusal_tells_lengths_in_the_unit_asked_for():
    assert refusal().told(Unit.IN) == "corner: 12 in is more than half (11 in); make it smaller"


def test_refusal_alone_tells_millimetres():
    assert str(refusal()) == "corner: 304.8 mm is more than half (279.4 mm); make it smaller"


@pytest.mark.parametrize(
    ("place", "field"),
    [("outline", "outline.corner"), ("outline.", "outline.corner"), ('seat 2 "Bench", ',
                                                                     'seat 2 "Bench", corner')],
)  # fmt: skip
def test_place_stands_before_the_field(place, field):
    seen = refusal().at(place)
    assert (seen.field, seen.value, seen.limit) == (field, 304.8, 279.4)


def test_place_of_a_refusal_without_field_is_its_field():
    assert str(Refusal("", "is empty").at("seat 1")) == "seat 1: is empty"


def test_refusal_told_of_another_field_is_otherwise_the_same():
    other = refusal().about("corners, row 2, radius")
    assert str(other) == (
        "corners, row 2, radius: 304.8 mm is more than half (279.4 mm); make it smaller"
    )
    assert (other.value, other.limit, other.mend) == (304.8, 279.4, "make it smaller")
    assert other.told(Unit.IN).startswith("corners, row 2, radius: 12 in")


def test_value_alone_is_shown_without_a_limit():
    """What shows a place or a length is never asked to show nothing."""
    alone = Refusal("edge", "crosses itself {value}", value=3 + 4j,
                    show=lambda place, unit: f"{place.real:g} from the left")  # fmt: skip
    assert str(alone) == "edge: crosses itself 3 from the left"


def test_refusals_tell_every_mistake_on_a_line_of_its_own():
    both = Refusals([refusal(), Refusal("name", "is empty")], Unit.IN)
    assert str(both).splitlines() == [
        "corner: 12 in is more than half (11 in); make it smaller", "name: is empty",
    ]  # fmt: skip
    assert [each.field for each in both] == ["corner", "name"]


@pytest.mark.parametrize("kind", [Refusal, Refusals, OutputFault])
def test_one_root_catches_all(kind):
    assert issubclass(kind, PatternmakerError)


@pytest.mark.parametrize(
    ("value", "told"),
    [
        (True, "true"),
        (date(2031, 8, 1), "2031-08-01"),
        (datetime(2031, 8, 1, 9, 30), "2031-08-01T09:30:00"),
        (time(9, 30), "09:30:00"),
        ({"a": 1}, "{'a': 1}"),
        ("o" * 58, f"'{'o' * 58}'"),
        ("o" * 59, f"'{'o' * 56}…"),
    ],
)
def test_value_is_told_as_a_job_file_writes_it_and_on_one_line(value, told):
    assert brief(value) == told


def test_number_of_thousands_of_digits_is_not_told_at_length():
    assert brief(10**5000) == "a number of thousands of digits"
