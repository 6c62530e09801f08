"""The seat that is wider in front than behind, or the other way."""

import math

import pytest

from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.outlines.rounded_trapezoid import RoundedTrapezoid
from tests.outlines.asking import corners, place, refused, taken, turns

NAMES = ["back left", "front left", "front right", "back right"]
SHARP = RoundedTrapezoid(
    front_width=480, back_width=360, depth=400, front_corner=0, back_corner=0
)  # fmt: skip


def test_sharp_corners_are_where_the_tape_was_laid():
    assert corners(SHARP) == NAMES
    places = [place(SHARP, name) for name in NAMES]
    assert places == pytest.approx([-180 + 200j, -240 - 200j, 240 - 200j, 180 + 200j])


def test_sides_lean_alike():
    """60 out over 400: the front corners turn by a quarter and atan(0.15) more, the back less."""
    lean = math.atan(0.15)
    front, back = math.pi / 2 + lean, math.pi / 2 - lean
    assert turns(SHARP) == pytest.approx([back, front, front, back])


def test_rounded_corners_are_three_joints_each_and_bend_nowhere():
    assert corners(RoundedTrapezoid()) == [
        f"{name}{part}" for name in NAMES for part in (" begins", "", " ends")
    ]
    assert turns(RoundedTrapezoid()) == []


def test_as_wide_behind_as_in_front_it_is_a_rectangle():
    seat = RoundedTrapezoid(
        front_width=450, back_width=450, depth=400, front_corner=50, back_corner=50
    )
    plain = RoundedRectangle(width=450, depth=400, corner=50)
    assert seat.contour().area == pytest.approx(plain.contour().area)


def test_measurements_are_shown_at_their_length():
    lengths = {"front_width": 450, "back_width": 380, "depth": 400, "front_corner": 60,
               "back_corner": 40}  # fmt: skip
    assert taken(RoundedTrapezoid(**lengths)) == pytest.approx(lengths)


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"front_corner": 300}, ("front_corner: 300 mm is more than what the front and the sides "
         "have room for (206.172 mm); make the corner smaller or the seat larger")),
        ({"front_width": 450, "back_width": 380, "depth": 200, "back_corner": 170},
         ("back_corner: 170 mm is more than what the back and the sides have room for "
         "(156.663 mm); make the corner smaller or the seat larger")),
    ],
)  # fmt: skip
def test_what_makes_no_trapezoid_is_refused(values, told):
    assert refused(RoundedTrapezoid, **values) == told
