"""The horseshoe seat: a circle cut off straight in front."""

import math

import pytest

from patternmaker.outlines.half_round import HalfRound
from patternmaker.outlines.horseshoe import Horseshoe
from tests.outlines.asking import corners, place, refused, taken, turns


def test_front_is_straight_and_the_rest_a_circle():
    """Diameter 500, opening 300: the front lies 200 from the middle, the back 250 behind it.

    A tangent of a circle meets a chord at half the angle of its arc: asin(300 / 500).
    """
    seat = Horseshoe(diameter=500, opening=300, corner=0)
    assert corners(seat) == ["front left", "front right"]
    assert place(seat, "front left") == pytest.approx(-150 - 225j)
    assert place(seat, "back") == pytest.approx(225j)
    assert turns(seat) == pytest.approx([math.asin(0.6)] * 2)


def test_rounded_corners_are_three_joints_each_and_bend_nowhere():
    names = ("front left", "front right")
    assert corners(Horseshoe()) == [
        f"{name}{part}" for name in names for part in (" begins", "", " ends")
    ]
    assert turns(Horseshoe()) == []


@pytest.mark.parametrize("corner", [0, 25])
def test_opening_as_wide_as_the_seat_makes_a_half_round(corner):
    seat = Horseshoe(diameter=460, opening=460, corner=corner)
    half = HalfRound(width=460, depth=230, round="back", corner=corner)
    assert seat.contour().length == pytest.approx(half.contour().length)
    assert seat.contour().height == pytest.approx(230)


@pytest.mark.parametrize("corner", [0, 25])
def test_measurements_are_shown_at_their_length(corner):
    seat = Horseshoe(diameter=460, opening=360, corner=corner)
    assert taken(seat) == pytest.approx({"diameter": 460, "opening": 360, "corner": corner})


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"diameter": 460, "opening": 461}, ("opening: 461 mm is more than the diameter (460 mm); "
         "make it smaller, or take a half round")),
        ({"diameter": 460, "opening": 460, "corner": 115}, ("corner: 115 mm is more than half the "
         "depth (114.999 mm); make the corner smaller or the seat larger")),
    ],
)  # fmt: skip
def test_what_makes_no_horseshoe_is_refused(values, told):
    assert refused(Horseshoe, **values) == told
