"""The round seat: length pi d, area pi d^2 / 4."""

import math

import pytest

from patternmaker.errors import Refusals
from patternmaker.outlines.circle import Circle


def test_length_and_area():
    contour = Circle(diameter=330).contour()
    assert contour.length == pytest.approx(math.pi * 330)
    assert contour.area == pytest.approx(math.pi * 330**2 / 4)


def test_joints_stand_at_the_quarters_anticlockwise_from_the_back():
    contour = Circle(diameter=100).contour()
    points = [contour.point_at(contour.station(name)) for name in contour.joints]
    assert list(contour.joints) == ["back", "left", "front", "right"]
    assert points == pytest.approx([50j, -50, -50j, 50])


def test_diameter_is_shown_straight_across_the_middle():
    (shown,) = Circle(diameter=330).dimensions()
    assert (shown.field, shown.begin, shown.end) == ("diameter", -165, 165)


def test_nothing_is_remarked_upon_and_it_is_its_own_mirror_image():
    assert Circle().remarks() == ()
    assert Circle().partner() == Circle()


def test_too_small_a_seat_is_refused():
    with pytest.raises(Refusals, match="diameter: 49 mm is less than 50 mm"):
        Circle(diameter=49)
