"""A job file to begin from reads back as what it was written of."""

import re
import tomllib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternmaker.covers.boxed import Boxed
from patternmaker.errors import Refusals
from patternmaker.facts import (
    Measured,
    angle,
    both,
    count,
    facts_of,
    file,
    length,
    measured,
    names,
    rate,
    rows,
    stitch,
    switch,
    text,
)
from patternmaker.job import Job, read_job
from patternmaker.job.writing import Beginning, literal, source, tape, usual_cover, written
from patternmaker.outlines import SHAPES, Outline
from patternmaker.outlines.circle import Circle
from patternmaker.units import Unit, read_length

UNITS = pytest.mark.parametrize("unit", list(Unit))


@measured
class Anything(Measured):
    long: float = length("a length")
    share: float | None = rate("a share")
    lean: float = angle("an angle", default=0, least=-90, most=90)
    many: int = count("a count")
    called: str = text("a name")  # type: ignore[misc]
    open_: bool = switch("yes or no")
    stitches: float = stitch("a stitch", default=both(mm=3), least=1, most=9)
    parts: tuple[str, ...] = names("some names")
    table: tuple[tuple[float, ...], ...] = rows("a table", ("x", "y"), needed=1)


def read(text: str) -> Job:
    return read_job(tomllib.loads(text))


def beginning(kind: type[Outline], unit: Unit, **more: Any) -> Beginning:
    return Beginning(kind, usual_cover(), unit, "Practice stool", **more)


@given(st.floats(0, 5000), st.sampled_from(Unit))
def test_length_as_a_tape_says_it_reads_back(value, unit):
    assert read_length(tape(value, unit), unit) == pytest.approx(value, abs=2e-4)


@given(st.text(st.characters(codec="utf-8", exclude_characters="\x7f"), max_size=20))
def test_whatever_was_typed_is_text_or_a_number_in_toml(typed):
    found = tomllib.loads(f"x = {literal(typed)}")["x"]
    assert found == typed or float(typed) == found


@pytest.mark.parametrize(
    ("field", "value"),
    [("long", 368.3), ("share", 0.025), ("lean", 22.5), ("lean", -7.0), ("many", 6),
     ("called", 'Bench "A"'), ("open_", True), ("table", ((10.0, 20.0), (30.0,))),
     ("stitches", 3.175), ("parts", ("top", "base"))],
)  # fmt: skip
@UNITS
def test_value_of_any_kind_reads_back(field, value, unit):
    fact = facts_of(Anything)[field]
    raw = tomllib.loads(f"x = {source(fact, value, unit)}")["x"]
    if field == "table":
        one, two = fact.quantity.read(raw, unit)
        assert [*one, *two] == pytest.approx([10.0, 20.0, 30.0], abs=2e-4)
    elif field == "parts":
        assert fact.quantity.read(raw, unit) == value
    else:
        assert fact.quantity.read(raw, unit) == pytest.approx(value)


@UNITS
def test_job_of_defaults_is_read_with_nothing_changed(unit):
    job = read(written(beginning(Circle, unit)))
    seat = job.seats[0]
    assert (job.name, job.unit, seat.name, seat.make) == (
        "Practice stool", unit, "Practice stool", 1,
    )  # fmt: skip
    assert seat.outline == Circle(diameter=facts_of(Circle)["diameter"].default.in_(unit))


@UNITS
def test_every_line_behind_a_hash_is_one_that_can_be_set(unit):
    text = written(beginning(Circle, unit))
    opened = re.sub(r"^# (?=\w+ = (?!\.\.\.))", "", text, flags=re.MULTILINE)
    assert text.count("\n# seam = ") == 1
    assert "\nseam = " in opened
    job, plain = read(opened), read(text)
    assert job.seats[0].outline == plain.seats[0].outline
    assert job.seats[0].brief.allowances == plain.seats[0].brief.allowances
    rules, usual = (each.seats[0].brief.finishing.stitches for each in (job, plain))
    assert vars(rules) == pytest.approx(vars(usual))


@UNITS
def test_welt_and_padding_behind_a_hash_can_be_set(unit):
    text = written(beginning(Circle, unit))
    opened = re.sub(r"^# (?=(welt|padding) = )", "", text, flags=re.MULTILINE)
    names = {piece.name for piece in read(opened).seats[0].pattern().pieces}
    assert names - {piece.name for piece in read(text).seats[0].pattern().pieces} == {
        "top seam welt", "foam template",
    }  # fmt: skip


def test_fields_that_are_known_stand_for_the_defaults():
    text = written(beginning(Circle, Unit.IN, given={"diameter": '"12 1/2"'},
                             covering={"drop": "2"}))  # fmt: skip
    seat = read(text).seats[0]
    assert seat.outline == Circle(diameter=12.5 * 25.4)
    assert seat.cover == Boxed(drop=2 * 25.4)


def test_letters_and_the_picture_stand_beside_the_fields():
    text = written(beginning(Circle, Unit.MM, letters={"diameter": "A"}, picture=("* *", "")))
    assert "\n# * *\n#\n# A: straight across the middle; at least 50 mm\ndiameter = 330\n" in text


def test_field_without_a_default_is_shown_behind_a_hash():
    kind = SHAPES.all["rounded rectangle"]
    assert "\n# back_left = ...\n" in written(beginning(kind, Unit.MM))


def test_shape_from_a_file_names_one_and_is_refused_only_for_lacking_it(monkeypatch):
    class Drawn(Circle):
        file: Any = file("a drawing of the outline")

    made = measured(Drawn)
    made.called = "drawn"
    monkeypatch.setitem(SHAPES.all, "drawn", made)
    with pytest.raises(Refusals) as refused:
        read(written(beginning(made, Unit.MM)))
    assert [mistake.told() for mistake in refused.value] == [
        'seat 1 "Practice stool", outline.file: is not there; check the name and the folder'
    ]
