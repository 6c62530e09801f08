"""The seat that is measured by its widths."""

import math
from typing import Any

import pytest
from scipy.special import ellipe

from patternmaker.outlines.table_of_widths import TableOfWidths
from tests.outlines.asking import SIDES, corners, place, refused, touches, turns

WIDTHS = ((0.0, 300.0), (90.0, 380.0), (200.0, 390.0), (300.0, 350.0), (370.0, 250.0))
SHARP: dict[str, Any] = {"back_corner": 0.0, "front_corner": 0.0}


@pytest.mark.parametrize(("behind", "width"), WIDTHS[1:-1])
def test_seat_is_as_wide_as_was_measured(behind, width):
    seat = TableOfWidths(widths=WIDTHS, **SHARP)
    assert touches(seat, complex(-width / 2, 185 - behind))
    assert touches(seat, complex(width / 2, 185 - behind))


def test_seat_is_nowhere_wider_than_the_widest_row():
    assert TableOfWidths(widths=WIDTHS).contour().width == pytest.approx(390, abs=0.001)


def test_back_and_front_are_straight_between_sharp_corners():
    seat = TableOfWidths(widths=WIDTHS, **SHARP)
    assert corners(seat) == ["back left", "front left", "front right", "back right"]
    assert place(seat, "back left") == pytest.approx(-150 + 185j)
    assert place(seat, "front right") == pytest.approx(125 - 185j)
    assert len(turns(seat)) == 4


def test_rounded_corners_are_three_joints_each_and_bend_nowhere():
    seat = TableOfWidths(widths=WIDTHS)
    assert len(corners(seat)) == 12
    assert turns(seat) == []


def test_end_of_no_width_closes_round():
    seat = TableOfWidths(widths=((0.0, 0.0), (100.0, 300.0), (200.0, 260.0), (330.0, 0.0)))
    assert corners(seat) == []
    assert turns(seat) == []
    assert place(seat, "back") == pytest.approx(165j)
    assert place(seat, "front") == pytest.approx(-165j)


def test_round_ends_beside_the_widest_rows_are_halves_of_an_ellipse():
    """Half axes 150 and 100 behind, 150 and 130 in front, 70 of straight sides between."""
    seat = TableOfWidths(widths=((0.0, 0.0), (100.0, 300.0), (170.0, 300.0), (300.0, 0.0)))
    halves = [2 * 150 * ellipe(1 - (b / 150) ** 2) for b in (100, 130)]
    assert seat.contour().length == pytest.approx(sum(halves) + 2 * 70, rel=1e-7)
    assert seat.contour().area == pytest.approx(math.pi * 150 * 115 + 300 * 70, rel=1e-7)


def test_only_one_end_may_be_round():
    seat = TableOfWidths(widths=((0.0, 300.0), (200.0, 260.0), (330.0, 0.0)), **SHARP)
    assert corners(seat) == ["back left", "back right"]
    assert len(turns(seat)) == 2


LATE = ((0.0, 0.0), (100.0, 60.0), (200.0, 300.0), (300.0, 300.0))


def test_round_end_of_a_seat_that_widens_late_turns_one_way():
    """Past the row next to the end the side runs flatter than the chord of the end."""
    seat = TableOfWidths(widths=LATE, **SHARP)
    end = [each for each in seat.contour().segments
           if min(each.start.imag, each.end.imag) > 150 - 100 - 1e-6]  # fmt: skip
    assert len(end) > 4
    assert all(each.sweep > 0 for each in end)
    assert len(turns(seat)) == 2


def test_round_front_is_as_the_round_back():
    turned = tuple((300 - at, width) for at, width in reversed(LATE))
    back, front = (TableOfWidths(widths=rows, **SHARP).contour() for rows in (LATE, turned))
    assert front.length == pytest.approx(back.length, abs=1e-4)
    assert front.point_at(front.station("front")) == pytest.approx(-150j)


def test_two_rows_may_make_a_fan():
    seat = TableOfWidths(widths=((0.0, 0.0), (200.0, 300.0)), **SHARP)
    assert corners(seat) == ["front left", "front right"]
    assert len(turns(seat)) == 2
    assert seat.contour().is_convex


@pytest.mark.parametrize(
    "rows",
    [
        ((0.0, 300.0, 0.0), (300.0, 300.0, 0.0)),
        ((0.0, 0.0, 300.0), (200.0, 0.0, 300.0), (300.0, 0.0, 300.0)),
    ],
)
def test_side_that_lies_on_the_line_is_straight(rows):
    """It is no round end: the back edge is 300 wide."""
    seat = TableOfWidths(widths=rows, **SHARP).contour()
    assert seat.area == pytest.approx(300 * 300)
    assert seat.width == pytest.approx(300)


def test_sides_turn_sharply_where_they_are_said_to():
    widths = ((0.0, 400.0), (150.0, 400.0), (400.0, 200.0))
    seat = TableOfWidths(widths=widths, corners_at=((150.0,),), **SHARP)
    assert corners(seat) == ["back left", "left corner 1", "front left", "front right",
                             "right corner 1", "back right"]  # fmt: skip
    assert place(seat, "left corner 1") == pytest.approx(-200 + 50j)
    bend = math.atan2(100, 250)
    assert turns(seat) == pytest.approx([math.pi / 2, bend, math.pi / 2 - bend,
                                         math.pi / 2 - bend, bend, math.pi / 2])  # fmt: skip
    smooth = TableOfWidths(widths=widths, **SHARP)
    assert len(turns(smooth)) == 4


def test_several_corners_are_numbered_from_the_back_on_both_sides():
    widths = ((0.0, 300.0), (100.0, 400.0), (250.0, 420.0), (400.0, 200.0))
    seat = TableOfWidths(widths=widths, corners_at=((250.0,), (100.3,)), **SHARP)
    for number, x, y in ((1, 200, 100), (2, 210, -50)):
        assert place(seat, f"left corner {number}") == pytest.approx(complex(-x, y))
        assert place(seat, f"right corner {number}") == pytest.approx(complex(x, y))


def test_two_figures_to_a_row_are_what_lies_left_and_right_of_the_line():
    rows = ((0.0, 100.0, 200.0), (150.0, 120.0, 250.0), (300.0, 90.0, 180.0))
    seat = TableOfWidths(widths=rows, **SHARP)
    contour = seat.contour()
    assert contour.width == pytest.approx(370, abs=0.001)
    assert place(seat, "back right") - place(seat, "back left") == pytest.approx(300)
    assert place(seat, "back left").real - contour.bounds[0] == pytest.approx(20, abs=0.001)
    assert seat.partner() == TableOfWidths(
        widths=((0.0, 200.0, 100.0), (150.0, 250.0, 120.0), (300.0, 180.0, 90.0)), **SHARP
    )


def test_alike_left_and_right_it_is_its_own_mirror_image():
    seat = TableOfWidths(widths=WIDTHS)
    assert seat.partner() == seat


def test_widths_are_shown_where_they_were_taken():
    shown = [(each.field, abs(each.end - each.begin))
             for each in TableOfWidths(widths=WIDTHS).dimensions()]  # fmt: skip
    assert [field for field, _ in shown] == [*["widths"] * 5, "back_corner", "front_corner"]
    assert [length for _, length in shown] == pytest.approx([300, 380, 390, 350, 250, 40, 40])


def test_parts_of_a_width_are_shown_each_and_nothing_where_there_is_none():
    rows = ((0.0, 100.0, 0.0), (150.0, 120.0, 250.0), (300.0, 0.0, 0.0))
    seat = TableOfWidths(widths=rows, **SHARP)
    shown = [abs(each.end - each.begin) for each in seat.dimensions() if each.field == "widths"]
    assert shown == pytest.approx([120, 250])


def test_the_four_sides_stand_in_the_middle_of_a_seat_that_leans():
    rows = ((0.0, 20.0, 280.0), (200.0, 150.0, 150.0), (400.0, 280.0, 20.0))
    contour = TableOfWidths(widths=rows, **SHARP).contour()
    assert [name for name in contour.joints if name in SIDES] == list(SIDES)


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        (((0.0, 300.0), (200.0, 390.0), (90.0, 380.0)), ("widths, row 3, from the back: 90 mm does "
         "not come after the row before it (200 mm); give the rows in order from back to front")),
        (((10.0, 300.0), (200.0, 390.0)), ("widths, row 1, from the back: 10 mm is not the back "
         "edge; begin with the row [0, width at the back]")),
        (((0.0, 300.0), (200.0, 190.0, 200.0)), ("widths, row 2: has not as many figures as the "
         "first row; give the width in every row, or left and right in every row")),
        (((0.0, 300.0), (100.0, 15.0), (200.0, 200.0)), ("widths, row 2: the seat is 15 mm wide "
         "there, less than 20 mm; only its ends may be narrower")),
        (((0.0, 300.0), (49.0, 200.0)), ("widths: the seat is 49 mm deep, less than 50 mm; check "
         "the unit")),
        (((0.0, 40.0), (200.0, 30.0)), ("widths: the seat is 40 mm wide, less than 50 mm; check "
         "the unit")),
        (((0.0, 300.0),), "widths, number of rows: 1 is less than 2; make it 2 or more"),
    ],
)  # fmt: skip
def test_table_that_makes_no_seat_is_refused_with_its_row(rows, told):
    assert refused(TableOfWidths, widths=rows, **SHARP) == told


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"corners_at": ((90.0,), (100.0,))}, ("corners_at, row 2: there is no width at 100 mm; "
         "measure the width at the corner too")),
        ({"back_corner": 200}, ("back_corner: 200 mm is more than the corner has room for "
         "(176.8 mm); make the radius smaller, or its sides longer")),
        ({"front_corner": 200}, ("front_corner: 200 mm is more than the corner has room for "
         "(170.3 mm); make the radius smaller, or its sides longer")),
    ],
)  # fmt: skip
def test_corner_that_finds_no_place_is_refused(values, told):
    assert refused(TableOfWidths, widths=WIDTHS, **values) == told
