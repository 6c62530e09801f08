"""The seat with equal sides: hexagon, octagon and so on."""

import cmath
import math

import pytest

from patternmaker.outlines.regular_polygon import RegularPolygon
from tests.outlines.asking import corners, place, refused, taken, touches, turns


@pytest.mark.parametrize("sides", range(3, 13))
def test_one_side_is_straight_in_front_and_every_corner_turns_alike(sides):
    seat = RegularPolygon(sides=sides, side=200, corner=0)
    assert turns(seat) == pytest.approx([2 * math.pi / sides] * sides)
    contour = seat.contour()
    front = contour.tangent_at(contour.station("front"))
    assert front == pytest.approx(1)
    assert corners(seat) == [f"corner {i + 1}" for i in range(sides)]


def test_corners_of_a_hexagon_lie_as_far_from_the_middle_as_a_side_is_long():
    seat = RegularPolygon(sides=6, side=200, corner=0)
    found = [place(seat, name) for name in corners(seat)]
    assert found == pytest.approx([200 * cmath.rect(1, math.pi * i / 3) for i in range(2, 8)])


def test_corner_may_stand_at_the_back():
    seat = RegularPolygon(sides=5, side=200, corner=0)
    assert place(seat, "corner 1") == place(seat, "back")


def test_rounded_as_far_as_may_be_it_is_a_circle():
    """The circle inside an octagon of side s has the radius s (1 + sqrt(2)) / 2."""
    radius = 100 * (1 + math.sqrt(2))
    seat = RegularPolygon(sides=8, side=200, corner=radius)
    assert seat.contour().length == pytest.approx(2 * math.pi * radius)
    assert touches(seat, radius * cmath.rect(1, 1))


def test_measurements_are_shown_at_their_length():
    shown = taken(RegularPolygon(sides=7, side=150, corner=20))
    assert shown == pytest.approx({"side": 150, "corner": 20})


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"sides": 2}, "sides: 2 is less than 3; make it 3 or more"),
        ({"sides": 25}, "sides: 25 is more than 24; make it 24 or less"),
        ({"side": 10}, "side: 10 mm is less than 20 mm; make it 20 mm or more"),
        ({"sides": 6, "side": 200, "corner": 175}, ("corner: 175 mm is more than that of the "
         "circle inside (173.205 mm); make the corner smaller or the sides longer")),
    ],
)  # fmt: skip
def test_what_makes_no_regular_polygon_is_refused(values, told):
    assert refused(RegularPolygon, **values) == told
