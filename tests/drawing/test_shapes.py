"""The picture of a shape, and the sheet of all of them."""

from typing import Any

import pytest

from patternmaker.drawing.contact import contact_sheet
from patternmaker.drawing.looks import MADDER
from patternmaker.drawing.measures import letters_of, usual
from patternmaker.drawing.shapes import (
    Picture,
    figure,
    purpose,
    shape_picture,
    sizes,
    without_seat,
)
from patternmaker.facts import facts_of, file, measured
from patternmaker.geometry.contour import Contour, joined_bounds
from patternmaker.outlines import SHAPES
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.units import Unit
from tests.drawing.recorder import Recorder


class Drawn(Circle):
    """A seat drawn before."""

    file: Any = file("a drawing of the outline")


DRAWN = measured(Drawn)
DRAWN.called = "drawn before"


def recorded(picture: Picture) -> Recorder:
    recorder = Recorder()
    picture.drawing.onto(recorder)
    return recorder


def circle(unit: Unit = Unit.IN) -> Recorder:
    return recorded(shape_picture(Circle, usual(Circle, unit), unit))


def test_picture_says_name_purpose_measurements_and_sizes():
    said = circle().text
    for part in ("Circle", "A round seat", "diameter", "straight across the middle", "13 in",
                 "This seat: 13 × 13 in, 40¹³⁄₁₆ in round, 0.92 sq ft", "FRONT"):  # fmt: skip
        assert part in said


def test_letter_stands_on_the_picture_and_in_the_list():
    assert [each.text for each in circle().letters].count("A") == 2


def test_seat_is_filled_and_drawn_once():
    recorder = circle()
    fills = [path for path, _ in recorder.fills if isinstance(path, Contour)]
    strokes = [path for path, _ in recorder.strokes if isinstance(path, Contour)]
    assert fills == strokes
    assert len(fills) == 1
    assert fills[0].width == pytest.approx(fills[0].height)


@pytest.mark.parametrize("unit", list(Unit))
@pytest.mark.parametrize("kind", list(SHAPES.all.values()))
def test_everything_lies_on_the_page(kind, unit):
    picture = shape_picture(kind, usual(kind, unit), unit)
    recorder = recorded(picture)
    for box in ([path.bounds for path, _ in recorder.strokes]
                + [path.bounds for path, _ in recorder.fills]
                + [(p.at.real, p.at.imag) * 2 for p in recorder.letters]):  # fmt: skip
        left, bottom, right, top = joined_bounds([box, (1, 1, 1, 1)])
        assert left >= 0
        assert bottom >= 0
        assert right <= picture.size[0]
        assert top <= picture.size[1]


@pytest.mark.parametrize("kind", list(SHAPES.all.values()))
def test_each_letter_of_the_list_stands_on_the_seat_too(kind):
    seat = usual(kind, Unit.MM)
    said = [
        each.text for each in recorded(shape_picture(kind, seat, Unit.MM)).letters
        if each.colour == MADDER
    ]  # fmt: skip
    for letter in letters_of(kind, seat).values():
        assert said.count(letter) >= 2


def test_measure_of_nothing_has_its_letter_and_no_line():
    sharp = RoundedRectangle(width=400, depth=380, corner=0)
    recorder = recorded(shape_picture(RoundedRectangle, sharp, Unit.MM))
    assert [each.text for each in recorder.letters].count("C") == 2
    assert all(path.length > 0 for path, _ in recorder.strokes)


def test_shape_without_a_usual_seat_says_where_it_comes_from():
    said = recorded(shape_picture(DRAWN, None, Unit.MM)).text
    assert "drawn from a file" in said
    assert "a drawing of the outline" in said
    assert "FRONT" not in said
    assert without_seat(Circle) == "drawn from your measurements"


def test_purpose_is_the_first_line_of_the_docstring():
    assert purpose(DRAWN) == "A seat drawn before."


def test_list_tells_how_many_rows_rather_than_each():
    fact = facts_of(SHAPES.all["polygon"])["corners"]
    assert figure(fact, fact.default.metric, Unit.MM) == "6 rows"
    assert figure(fact, (), Unit.MM) == ""


def test_list_tells_words_without_quotes_and_leaves_out_what_is_not_given():
    fact = facts_of(SHAPES.all["half round"])["round"]
    assert figure(fact, "front", Unit.MM) == "front"
    assert figure(fact, None, Unit.MM) == ""


def test_sizes_are_told_in_the_unit_asked_for():
    assert sizes(Circle(diameter=400).contour(), Unit.CM) == (
        "40.0 × 40.0 cm, 125.7 cm round, 0.126 m²"
    )


@pytest.mark.parametrize("unit", [Unit.MM, Unit.IN])
def test_sheet_of_all_shapes_names_each(unit):
    picture = contact_sheet(unit)
    said = {each.text for each in recorded(picture).letters}
    assert set(SHAPES.all) <= said
    assert any(("12 mm" if unit is Unit.MM else "1/2 in") + " apart" in text for text in said)


def test_each_shape_on_the_sheet_has_a_line_to_cut_round_its_line_to_sew():
    paths = [path for path, _ in recorded(contact_sheet(Unit.MM)).strokes]
    usual_ones = [kind for kind in SHAPES.all.values() if usual(kind, Unit.MM)]
    assert len(paths) == 2 * len(usual_ones)
    for cut, sew in zip(paths[::2], paths[1::2], strict=True):
        grow = [c - s for c, s in zip(cut.bounds, sew.bounds, strict=True)]
        assert grow[0] < 0 < grow[2]
        assert grow[0] == pytest.approx(grow[1]) == pytest.approx(-grow[2], abs=1e-6)


def test_sheet_says_of_a_shape_from_a_file_that_it_is(monkeypatch):
    monkeypatch.setitem(SHAPES.all, "drawn before", DRAWN)
    assert "drawn from a file" in recorded(contact_sheet(Unit.MM)).text
