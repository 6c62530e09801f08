"""What is typed is read as a job file reads it."""

import tomllib
from typing import Any

import pytest

from patternmaker.cli.answers import cells, offered, read, read_rows
from patternmaker.errors import Refusal
from patternmaker.facts import (
    Found,
    Measured,
    angle,
    at_most,
    both,
    choice,
    count,
    facts_of,
    file,
    length,
    measured,
    rate,
    rows,
    switch,
)
from patternmaker.units import Unit


@measured
class Cushion(Measured):
    width: float = length("left to right", default=both(in_=16, mm=400), least=50)
    corner: float = length("radius", default=both(in_=3, mm=80), least=10)
    hand: str = choice("which side", ("left", "right"), default="left")
    lean: float = angle("from upright", default=10, least=0, most=60)
    tufts: int = count("how many", default=4)
    share: float | None = rate("of the hide")
    open_: bool = switch("yes or no")
    trace: Any = file("a drawing", required=False)
    table: tuple[tuple[float, ...], ...] = rows("each", ("x", "y"), needed=1)
    limits = (at_most("corner", lambda width: width / 4, "a quarter", "make it smaller"),)


FACTS = facts_of(Cushion)


@pytest.mark.parametrize(
    ("name", "typed", "value"),
    [("width", "14 1/2", 368.3), ("width", '14-1/2"', 368.3), ("width", "36,8 cm", 368.0),
     ("width", "12", 304.8), ("hand", "right", "right"), ("lean", "22.5", 22.5),
     ("lean", "30°", 30.0), ("tufts", "6", 6), ("share", "1/4 per 10", 0.025),
     ("open_", "yes", True), ("open_", "N", False), ("open_", "true", True)],
)  # fmt: skip
def test_typed_value_is_read_and_its_toml_reads_the_same(name, typed, value, tmp_path):
    fact = FACTS[name]
    answer = read(fact, typed, Unit.IN, tmp_path)
    assert answer.value == pytest.approx(value)
    raw = tomllib.loads(f"x = {answer.source}")["x"]
    assert fact.quantity.read(raw, Unit.IN) == pytest.approx(value)


@pytest.mark.parametrize(
    ("name", "typed", "says"),
    [("width", "wide", "is not a length"), ("tufts", "6.5", "is not a whole number"),
     ("tufts", "-1", "is not a whole number"), ("tufts", "9" * 5000, "is not a whole number"),
     ("open_", "perhaps", "is not true or false"), ("lean", "steep", "is not an angle"),
     ("share", "half", "is not a rate"), ("trace", "missing.svg", "is not there")],
)  # fmt: skip
def test_what_can_not_be_read_is_refused_as_in_a_job_file(name, typed, says, tmp_path):
    with pytest.raises(Refusal, match=says):
        read(FACTS[name], typed, Unit.IN, tmp_path)


def test_file_is_found_in_the_folder_of_the_job(tmp_path):
    (tmp_path / "seat.svg").write_bytes(b"<svg/>")
    answer = read(FACTS["trace"], "seat.svg", Unit.MM, tmp_path)
    assert isinstance(answer.value, Found)
    assert (answer.value.name, answer.value.content) == ("seat.svg", b"<svg/>")
    assert answer.source == '"seat.svg"'


def test_rows_keep_what_was_typed():
    answer = read_rows(FACTS["table"], ["1/2, 20", "36,8; 3"], Unit.CM)
    assert answer.value == ((5.0, 200.0), (368.0, 30.0))
    raw = tomllib.loads(f"x = {answer.source}")["x"]
    assert raw == [["1/2", 20], ["36,8", 3]]


def test_row_with_too_many_figures_is_refused_by_its_number():
    with pytest.raises(Refusal, match="row 2: holds 3 figures"):
        read_rows(FACTS["table"], ["1, 2", "1, 2, 3"], Unit.MM)


def test_figures_are_parted_by_commas_or_semicolons():
    assert cells("1, 2 ,3") == ["1", "2", "3"]
    assert cells("1,5; 2") == ["1,5", "2"]


def test_default_is_offered_as_it_is_where_it_fits():
    answer = offered(Cushion, "corner", FACTS["corner"], {"width": 400.0}, Unit.MM)
    assert answer == (80.0, "80")


def test_default_is_made_smaller_where_other_measurements_need_it():
    answer = offered(Cushion, "corner", FACTS["corner"], {"width": 200.0}, Unit.MM)
    assert answer is not None
    assert 10 <= answer.value <= 50
    assert answer.source == f"{answer.value:g}"


def test_no_default_is_offered_where_none_fits_or_there_is_none():
    narrow = {"width": 30.0}
    assert offered(Cushion, "corner", FACTS["corner"], narrow, Unit.IN) is None
    assert offered(Cushion, "share", FACTS["share"], {}, Unit.IN) is None
    assert offered(Cushion, "table", FACTS["table"], {}, Unit.IN) is None
