"""The T-shaped cushion, its ears in front of the chair's arms."""

import math
from typing import Any

import pytest

from patternmaker.outlines.t_shape import TShape
from tests.outlines.asking import corners, place, refused, taken, turns

SIZES: dict[str, Any] = {"width": 660, "depth": 560, "back_width": 500, "ear_depth": 130}
NAMES = ["back left", "inner left", "ear left", "front left", "front right", "ear right",
         "inner right", "back right"]  # fmt: skip
SHARP = TShape(corner=0, inner_corner=0, **SIZES)


def test_ears_stand_out_in_front():
    assert corners(SHARP) == NAMES
    places = [place(SHARP, name) + 280j for name in NAMES[:4]]
    assert places == pytest.approx([-250 + 560j, -250 + 130j, -330 + 130j, -330])


def test_only_the_inner_corners_turn_right():
    signs = [math.copysign(1, turn) for turn in turns(SHARP)]
    assert signs == [-1 if name.startswith("inner") else 1 for name in NAMES]


def test_rounded_corners_are_three_joints_each_and_bend_nowhere():
    assert corners(TShape()) == [
        f"{name}{part}" for name in NAMES for part in (" begins", "", " ends")
    ]
    assert turns(TShape()) == []


def test_it_is_its_own_mirror_image():
    assert TShape().partner() == TShape()
    assert place(SHARP, "ear right") == pytest.approx(-place(SHARP, "ear left").conjugate())


def test_measurements_are_shown_at_their_length():
    seat = TShape(corner=40, inner_corner=12, **SIZES)
    assert taken(seat) == pytest.approx({**SIZES, "corner": 40, "inner_corner": 12})


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"back_width": 630}, ("back_width: 630 mm is more than the width less 20 mm for each ear "
         "(620 mm); make it smaller, or take a rectangle")),
        ({"ear_depth": 540}, ("ear_depth: 540 mm is more than the depth less 30 mm (530 mm); "
         "make it smaller, or take a rectangle")),
        ({"corner": 70}, ("corner: 70 mm is more than what the ears and the back have room for "
         "(65 mm); make the corner smaller")),
        ({"corner": 40, "inner_corner": 60}, ("inner_corner: 60 mm is more than what the outer "
         "corners leave of its sides (40 mm); make the corner smaller")),
    ],
)  # fmt: skip
def test_what_makes_no_t_is_refused(values, told):
    assert refused(TShape, **{**SIZES, **values}) == told
