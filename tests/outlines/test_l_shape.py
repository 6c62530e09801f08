"""The L-shaped cushion."""

import math
from typing import Any

import pytest

from patternmaker.outlines.l_shape import LShape
from tests.outlines.asking import corners, place, refused, taken, turns

SIZES: dict[str, Any] = {"width": 600, "depth": 560, "back_depth": 280, "leg_width": 300}
NAMES = ["back left", "front left", "leg corner", "inner corner", "arm corner", "back right"]
SHARP = LShape(corner=0, inner_corner=0, **SIZES)


def test_leg_is_at_the_left_in_front_and_the_arm_behind():
    assert corners(SHARP) == NAMES
    places = [place(SHARP, name) + 300 + 280j for name in NAMES]
    assert places == pytest.approx([560j, 0, 300, 300 + 280j, 600 + 280j, 600 + 560j])


def test_only_the_inner_corner_turns_right():
    right, left = -math.pi / 2, math.pi / 2
    assert turns(SHARP) == pytest.approx([left, left, left, right, left, left])


def test_rounded_corners_are_three_joints_each_and_bend_nowhere():
    assert corners(LShape()) == [
        f"{name}{part}" for name in NAMES for part in (" begins", "", " ends")
    ]
    assert turns(LShape()) == []


def test_one_kind_of_corner_may_be_sharp_and_the_other_round():
    assert "inner corner begins" not in corners(LShape(inner_corner=0))
    assert turns(LShape(inner_corner=0)) == pytest.approx([-math.pi / 2])
    assert turns(LShape(corner=0, inner_corner=30)) == pytest.approx([math.pi / 2] * 5)


def test_its_partner_has_the_leg_at_the_right():
    partner = SHARP.partner()
    assert partner == LShape(corner=0, inner_corner=0, hand="right", **SIZES)
    assert place(partner, "front right") == pytest.approx(-place(SHARP, "front left").conjugate())
    assert place(partner, "inner corner") == pytest.approx(
        -place(SHARP, "inner corner").conjugate()
    )


def test_front_stands_under_the_leg_and_the_side_beside_the_arm():
    """Where the middle lines meet only the far arm, the seat's furthest part is its side."""
    seat = LShape(width=600, depth=560, back_depth=100, leg_width=120, corner=0, inner_corner=0)
    assert place(seat, "front") == pytest.approx(-240 - 280j)
    assert place(seat, "right") == pytest.approx(300 + 230j)


@pytest.mark.parametrize("hand", ["left", "right"])
def test_measurements_are_shown_at_their_length(hand):
    seat = LShape(corner=40, inner_corner=25, hand=hand, **SIZES)
    assert taken(seat) == pytest.approx({**SIZES, "corner": 40, "inner_corner": 25})


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"back_depth": 540}, ("back_depth: 540 mm is more than the depth less 30 mm (530 mm); "
         "make it smaller, or take a rectangle")),
        ({"leg_width": 580}, ("leg_width: 580 mm is more than the width less 30 mm (570 mm); "
         "make it smaller, or take a rectangle")),
        ({"corner": 150}, ("corner: 150 mm is more than what the leg and the back have room for "
         "(140 mm); make the corner smaller")),
        ({"corner": 40, "inner_corner": 250}, ("inner_corner: 250 mm is more than what the outer "
         "corners leave of its sides (240 mm); make the corner smaller")),
        ({"hand": "middle"}, "hand: 'middle' is not known; it can be left, right"),
    ],
)  # fmt: skip
def test_what_makes_no_l_is_refused(values, told):
    assert refused(LShape, **{**SIZES, **values}) == told
