"""The seat with one straight edge and one round one."""

import math

import pytest

from patternmaker.geometry.segments import Arc, Line
from patternmaker.outlines.half_round import HalfRound
from tests.outlines.asking import corners, place, refused, taken, touches, turns

ROUNDED = ["back left begins", "back left", "back left ends", "back right begins", "back right",
           "back right ends"]  # fmt: skip


def largest(seat: HalfRound) -> float:
    return max(each.radius for each in seat.contour().segments if isinstance(each, Arc))


def test_rounded_corners_are_three_joints_each():
    assert corners(HalfRound()) == ROUNDED
    assert turns(HalfRound()) == []


def test_sharp_corners_are_one_joint_each():
    """A shallow one's corners: the arc of 2 asin(4 / 5) meets its chord at asin(24 / 25)."""
    seat = HalfRound(width=480, depth=120, corner=0)
    assert corners(seat) == ["back left", "back right"]
    assert turns(seat) == pytest.approx([math.pi - math.asin(0.8)] * 2)
    assert place(seat, "back left") == pytest.approx(-240 + 60j)


def test_shallow_one_is_part_of_a_circle():
    """Chord 480, rise 120: radius (240^2 + 120^2) / 240 = 300."""
    seat = HalfRound(width=480, depth=120, corner=0)
    assert largest(seat) == pytest.approx(300)
    assert touches(seat, complex(0, 60 - 120))


def test_deep_one_is_a_half_circle_with_straight_sides():
    seat = HalfRound(width=450, depth=360, corner=0)
    assert largest(seat) == pytest.approx(225)
    assert touches(seat, complex(-225, 180 - 100))
    assert turns(seat) == pytest.approx([math.pi / 2] * 2)


def test_half_as_deep_as_wide_is_half_a_circle():
    seat = HalfRound(width=450, depth=225, corner=0)
    assert seat.contour().length == pytest.approx(450 + 225 * math.pi)
    assert sum(isinstance(each, Line) for each in seat.contour().segments) == 2


def test_round_back_is_the_round_front_turned_half_round():
    front, back = HalfRound(), HalfRound(round="back")
    assert place(back, "front right") == pytest.approx(-place(front, "back left"))
    assert sorted(corners(back)) == sorted(name.replace("back", "front") for name in ROUNDED)


@pytest.mark.parametrize("round_edge", ["front", "back"])
def test_measurements_are_shown_at_their_length(round_edge):
    seat = HalfRound(width=480, depth=120, corner=20, round=round_edge)
    assert taken(seat) == pytest.approx({"width": 480, "depth": 120, "corner": 20})


def test_it_is_its_own_mirror_image():
    assert HalfRound().partner() == HalfRound()


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"width": 300, "corner": 150}, ("corner: 150 mm is more than half the shorter of width "
         "and depth (149.999 mm); make the corner smaller or the seat larger")),
        ({"round": "left"}, "round: 'left' is not known; it can be front, back"),
    ],
)  # fmt: skip
def test_what_makes_no_half_round_is_refused(values, told):
    assert refused(HalfRound, **values) == told
