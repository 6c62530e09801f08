"""The one reader gathers every mistake of a table, each with its place."""

from pathlib import Path

from patternmaker.facts import (
    Found,
    Measured,
    Reading,
    angle,
    at_most,
    both,
    choice,
    count,
    file,
    length,
    measured,
    rows,
)
from patternmaker.units import EXAMPLES, Unit


@measured
class Panel(Measured):
    width: float = length("left to right", default=both(in_=10, mm=250), least=50)
    slit: float = length("length of the slit", default=both(in_=1, mm=25), required=False)
    make: int = count("how many")
    limits = (at_most("slit", lambda width: width / 2, "half the width", "make it shorter"),)


@measured
class Narrow(Panel):
    slit: float = length("length of the slit", default=both(in_=2, mm=40), required=False)


@measured
class Lying(Measured):
    lie: str = choice("how it lies", ("flat", "on edge"), default="")


def read(
    table: dict[str, object],
    unit: Unit | None = Unit.IN,
    beside: tuple[str, ...] = (),
    told: tuple[str, ...] = (),
) -> tuple[Panel | None, list[str]]:
    reading = Reading(unit)
    return reading.read(Panel, table, "seat 1", beside=beside, told=told), [
        m.told(unit) for m in reading.mistakes
    ]


def test_reads_a_table_in_the_unit_of_the_job():
    panel, mistakes = read({"width": "12 1/2"})
    assert (panel, mistakes) == (Panel(width=317.5, slit=25.4, make=1), [])


def test_metric_job_has_the_metric_default():
    assert read({"width": 300}, Unit.MM)[0] == Panel(width=300.0, slit=25.0, make=1)


def test_every_mistake_is_told_at_once_with_its_place():
    panel, mistakes = read({"slit": "x", "make": 0, "widht": 3})
    assert panel is None
    assert mistakes == [
        "seat 1.widht: is not a field here; did you mean 'width'?",
        "seat 1.width: is missing; give left to right",
        f"seat 1.slit: 'x' is not a length; write it like {EXAMPLES}",
        "seat 1.make: 0 is less than 1; make it 1 or more",
    ]


def test_limit_between_good_fields_is_told_beside_a_bad_one():
    _, mistakes = read({"width": 4, "slit": 3, "make": "two"})
    assert mistakes == [
        "seat 1.make: 'two' is not a whole number; write it like 6",
        "seat 1.slit: 3 in is more than half the width (2 in); make it shorter",
    ]


def test_keys_that_somebody_else_reads_are_no_mistake():
    assert read({"width": 12, "shape": "x"}, beside=("shape",))[1] == []


def test_key_like_no_other_gets_the_list_of_those_known():
    assert read({"width": 12, "zzz": 1})[1] == [
        "seat 1.zzz: is not a field here; known: width, slit, make"
    ]


def test_without_a_unit_nothing_is_made():
    assert read({"width": "300 mm", "slit": "10 mm"}, None) == (None, [])


def test_without_a_unit_bare_numbers_are_read_but_not_measured():
    assert read({"width": 4, "slit": 3}, None)[1] == []
    assert read({"width": "four"}, None)[1] == [
        f"seat 1.width: 'four' is not a length; write it like {EXAMPLES}"
    ]


def test_without_a_unit_what_stands_in_any_is_checked():
    _, mistakes = read({"width": "40 mm", "slit": -1, "make": 0}, None)
    assert mistakes == [
        "seat 1.width: 40 mm is less than 50 mm; make it 50 mm or more",
        "seat 1.make: 0 is less than 1; make it 1 or more",
    ]


def test_default_that_differs_by_unit_breaks_no_limit_without_one():
    metric, unknown = Reading(Unit.MM), Reading(None)
    for reading in (metric, unknown):
        reading.read(Narrow, {"width": "50 mm"}, "")
    assert [m.field for m in metric.mistakes] == ["slit"]
    assert unknown.mistakes == []


def test_mistake_told_of_another_table_is_not_told_again_but_still_refused():
    assert read({"width": 12, "make": 0}, told=("make",)) == (None, [])
    assert read({"width": 0, "make": 0}, told=("make",))[1] == [
        "seat 1.width: 0 in is less than 1.969 in; make it 1.969 in or more"
    ]


def test_fields_told_of_are_those_within_a_place():
    reading = Reading(Unit.MM)
    reading.read(Panel, {"width": 1, "x": 1}, "seat 1")
    reading.read(Panel, {"width": 300, "make": 0}, "seat 11")
    assert reading.told("seat 1") == {"width", "x"}


def test_missing_field_of_a_few_words_lists_them():
    reading = Reading(Unit.MM)
    reading.read(Lying, {}, "")
    assert str(reading.mistakes[0]) == "lie: is missing; give how it lies: flat, on edge"


def test_table_is_given_back_and_anything_else_noted():
    reading = Reading(Unit.MM)
    assert reading.table({"a": 1}, "seat") == {"a": 1}
    assert reading.table([1], "seat") == {}
    assert [str(m) for m in reading.mistakes] == [
        "seat: [1] is not a table; write it as { name = value, ... }"
    ]


def test_mistake_of_the_whole_job_needs_no_place():
    reading = Reading(Unit.MM)
    reading.table(5, "")
    assert str(reading.mistakes[0]).startswith("5 is not a table")


@measured
class Drawn(Measured):
    file: Found = file("the drawing")
    lean: float = angle("from upright", default=10, least=5, most=60)
    places: tuple[tuple[float, ...], ...] = rows("each place", ("across", "along"), default=None)


def drawn(table: dict[str, object], folder: Path) -> tuple[Drawn | None, list[str]]:
    reading = Reading(Unit.MM, folder)
    return reading.read(Drawn, table, "seat 1"), [str(m) for m in reading.mistakes]


def test_file_angle_and_rows_are_read(tmp_path):
    (tmp_path / "seat.svg").write_bytes(b"<svg/>")
    found, _ = drawn({"file": "seat.svg", "lean": "20°", "places": [[1, 2]]}, tmp_path)
    assert found == Drawn(file=Found("seat.svg", b"<svg/>"), lean=20.0, places=((1.0, 2.0),))


def test_file_angle_and_rows_are_refused_with_their_places(tmp_path):
    table: dict[str, object] = {"file": "seat.svg", "lean": "far", "places": [[1, 2], [1, "x"]]}
    assert drawn(table, tmp_path)[1] == [
        "seat 1.file: is not there; check the name and the folder",
        "seat 1.lean: 'far' is not an angle; write it like 90",
        f"seat 1.places, row 2, along: 'x' is not a length; write it like {EXAMPLES}",
    ]
    assert "seat 1.file: is missing; give the drawing" in drawn({}, tmp_path)[1]
