"""Measurements as lettered lines on a seat."""

from typing import Any

import pytest

from patternmaker.drawing.measures import (
    Measure,
    box_round,
    letters_of,
    measures,
    numbered,
    set_off,
    usual,
    witnesses,
)
from patternmaker.facts import facts_of, file, measured
from patternmaker.outlines import SHAPES, Outline
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.units import Unit

SQUARE = RoundedRectangle(width=400, depth=400, corner=50)
SHARP = RoundedRectangle(width=400, depth=400, corner=0)


class Drawn(Circle):
    file: Any = file("a drawing of the outline")


DRAWN = measured(Drawn)


def line(begin: complex, end: complex, *, is_radius: bool = False) -> Measure:
    return Measure("A", "width", begin, end, is_radius)


@pytest.mark.parametrize("kind", list(SHAPES.all.values()))
def test_usual_seat_has_the_defaults_or_there_is_none(kind):
    seat = usual(kind, Unit.IN)
    facts = facts_of(kind)
    lacks = any(fact.required and fact.default.inch is None for fact in facts.values())
    assert (seat is None) == lacks
    if seat is not None:
        assert all(getattr(seat, f) == fact.default.inch for f, fact in facts.items())


def test_shape_that_needs_a_file_has_no_usual_seat():
    assert usual(DRAWN, Unit.MM) is None
    assert letters_of(DRAWN, None) == {}


def test_letters_follow_the_order_of_the_fields():
    assert letters_of(RoundedRectangle, SQUARE) == {"width": "A", "depth": "B", "corner": "C"}


def test_field_that_is_taken_nowhere_takes_no_letter():
    own = RoundedRectangle(width=400, depth=400, corner=0, front_left=30)
    assert letters_of(RoundedRectangle, own)["front_left"] == "D"
    assert "back_left" not in letters_of(RoundedRectangle, own)


def test_radius_is_told_from_what_runs_across():
    found = {each.letter: each.is_radius for each in measures(SQUARE, SQUARE.contour())}
    assert found == {"A": False, "B": False, "C": True}


def test_line_of_no_length_reads_to_the_right():
    assert line(3, 3).way == 1
    assert line(0, 4j).way == 1j
    assert line(0, 4j).point(0.25) == 1j


def test_measure_is_moved_and_scaled():
    moved = line(0, 4).mapped(2j, 1)
    assert (moved.begin, moved.end, moved.length) == (1, 1 + 8j, 8)


def test_box_holds_lines_beyond_the_seat():
    box = box_round(SQUARE.contour(), [line(0, 300j), line(-500, 0)])
    assert box == pytest.approx((-500, -200, 200, 300))
    assert box_round(SQUARE.contour(), []) == SQUARE.contour().bounds


def test_line_along_the_edge_is_set_off_outward():
    along, across = set_off([line(-150 - 200j, 150 - 200j), line(-200, 200)], SQUARE.contour(), 9)
    assert (along.begin, along.end) == pytest.approx((-150 - 209j, 150 - 209j))
    assert (across.begin, across.end) == (-200, 200)


def test_line_of_no_length_on_the_edge_stays_there():
    (stays,) = set_off([line(200, 200)], SQUARE.contour(), 9)
    assert stays.begin == 200


def test_fine_line_leads_from_an_end_off_the_edge_square_across_to_it():
    ((begin, end),) = witnesses(SHARP.contour(), [line(100 + 100j, 100 + 200j)])
    assert begin == 100 + 100j
    assert end == pytest.approx(200 + 100j)


def test_no_line_leads_from_the_middle_of_an_arc_nor_where_nothing_lies_across():
    contour = SHARP.contour()
    assert not [*witnesses(contour, [line(0, 200, is_radius=True)])]
    assert not [*witnesses(contour, [line(-300 - 300j, -250 - 300j)])]
    assert not [*witnesses(contour, [line(-300j, -300j)])]


def test_corners_that_are_counted_in_rows_have_their_numbers():
    kind: type[Outline] = SHAPES.all["polygon"]
    seat = usual(kind, Unit.MM)
    assert seat is not None
    found = [*numbered(seat, seat.contour())]
    assert sorted(number for number, _, _ in found) == ["1", "2", "3", "4", "5", "6"]
    for _, place, inward in found:
        assert abs(place + 30 * inward) < abs(place)


def test_other_corners_have_none():
    assert not [*numbered(SQUARE, SQUARE.contour())]
