"""The seat with straight sides and a bowed front."""

import math

import pytest

from patternmaker.geometry.segments import Arc
from patternmaker.outlines.bowed_front import BowedFront
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from tests.outlines.asking import bound, corners, place, refused, taken, touches, turns

SEAT = BowedFront(width=480, depth=400, bow=120, back_corner=0, front_corner=0)


def test_front_is_an_arc_through_the_ends_of_the_sides_and_the_bow():
    """Chord 480, rise 120: radius 300. It meets a side at an angle of asin(4 / 5) past square."""
    arcs = [each for each in SEAT.contour().segments if isinstance(each, Arc)]
    assert [each.radius for each in arcs] == pytest.approx([300, 300])
    assert place(SEAT, "front left") == pytest.approx(-240 - 80j)
    assert place(SEAT, "front") == pytest.approx(-200j)
    front = math.pi / 2 - math.asin(0.8)
    assert turns(SEAT) == pytest.approx([math.pi / 2, front, front, math.pi / 2])


def test_rounded_corners_are_three_joints_each_and_bend_nowhere():
    names = ("back left", "front left", "front right", "back right")
    wanted = [f"{name}{part}" for name in names for part in (" begins", "", " ends")]
    assert corners(BowedFront()) == wanted
    assert turns(BowedFront()) == []


@pytest.mark.parametrize("bow", [0, 0.0009])
def test_front_that_does_not_bow_is_straight(bow):
    seat = BowedFront(width=430, depth=400, bow=bow, back_corner=30, front_corner=30)
    plain = RoundedRectangle(width=430, depth=400, corner=30)
    assert seat.contour().length == pytest.approx(plain.contour().length, abs=0.002)
    assert not any(isinstance(each, Arc) and each.radius > 31 for each in seat.contour().segments)


def test_slightest_bow_is_an_arc():
    seat = BowedFront(width=430, depth=400, bow=0.01)
    assert touches(seat, -200j)
    assert turns(seat) == []


def test_front_may_be_half_a_circle():
    seat = BowedFront(width=400, depth=400, bow=200, back_corner=0, front_corner=30)
    assert seat.contour().length == pytest.approx(800 + 200 * math.pi)
    assert turns(seat) == pytest.approx([math.pi / 2] * 2)


def test_measurements_are_shown_at_their_length():
    lengths = {"width": 430, "depth": 400, "back_corner": 25, "front_corner": 50}
    shown = taken(BowedFront(bow=30, **lengths))
    bow = shown.pop("bow")
    assert shown == pytest.approx(lengths)
    assert bow == pytest.approx(30)


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"width": 430, "bow": 216}, ("bow: 216 mm is more than half the width, or the depth less "
         "10 mm (215 mm); measure the bow again")),
        ({"depth": 100, "bow": 95}, ("bow: 95 mm is more than half the width, or the depth less "
         "10 mm (90 mm); measure the bow again")),
        ({"back_corner": 216}, ("back_corner: 216 mm is more than half the back, or the length of "
         "a side (215 mm); make the corner smaller")),
        ({"depth": 200, "bow": 100, "back_corner": 101}, ("back_corner: 101 mm is more than half "
         "the back, or the length of a side (100 mm); make the corner smaller")),
        ({"front_corner": 300}, ("front_corner: 300 mm is more than what the bow and the sides "
         "have room for (214.999 mm); make the corner smaller")),
        ({"bow": 0, "front_corner": 216}, ("front_corner: 216 mm is more than what the bow and the "
         "sides have room for (215 mm); make the corner smaller")),
    ],
)  # fmt: skip
def test_what_makes_no_bowed_front_is_refused(values, told):
    assert refused(BowedFront, **values) == told


@pytest.mark.parametrize(("bow", "back"), [(30, 25), (200, 190), (5, 215), (0, 0)])
def test_largest_front_corner_named_fits_and_a_larger_one_does_not(bow, back):
    rest = {"width": 430, "depth": 400, "bow": bow, "back_corner": back}
    limit = bound(BowedFront, "front_corner", **rest)
    assert turns(BowedFront(front_corner=limit, **rest)) == ([] if back else [math.pi / 2] * 2)
    assert refused(BowedFront, front_corner=limit + 0.01, **rest).startswith("front_corner")


def test_front_so_little_bowed_that_it_is_straight_still_leaves_the_corners_their_sides():
    seat = BowedFront(width=1500, depth=60, bow=5e-4, back_corner=10, front_corner=60 - 10 - 5e-4)
    assert seat.contour().height == pytest.approx(60, abs=1e-3)
