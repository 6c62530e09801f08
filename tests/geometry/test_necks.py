"""Where two sides meet face to face, known from how each contour was drawn."""

import math

import pytest

from patternmaker.geometry.contour import Contour
from patternmaker.geometry.necks import narrowest
from patternmaker.geometry.segments import Arc, Line
from tests.contours import horseshoe, l_shape, polygon
from tests.waves import wavy, with_bay

HOURGLASS = polygon(0, 200, 130 + 100j, 200 + 200j, 200j, 70 + 100j)
WEDGE = polygon(0, 300, 300 + 300j, 200 + 300j, 150 + 100j, 100 + 300j, 300j)


@pytest.mark.parametrize(
    ("contour", "by", "neck"),
    [
        (Contour((Arc(0, 50, math.tau),)), -60, 50),  # all its diameters
        (polygon(0, 100, 100 + 60j, 60j), -60, 30),  # two sides
        (horseshoe(), 60, 30),  # the walls of the bay, and its round end
        (horseshoe(), -200, 85),  # the legs; 170 mm under the bay is as wide
        (l_shape(), -200, 75),  # its arms
        (HOURGLASS, -60, 30),  # two corners
        (with_bay(60, 80, 30 - 1e-9), 60, 30),  # two quarters that make a half turn
        (with_bay(60, 80, 5, mouth=5), 60, 30),
        (wavy(200, 0.4, 2), -200, 120),  # a waist: 2 R (1 - e) wide, its two troughs
    ],
)
def test_narrowest_is_half_of_the_least_bare_chord(contour, by, neck):
    assert narrowest(contour, by) == pytest.approx(neck, abs=1e-6)
    assert narrowest(contour, math.copysign(neck - 1e-3, by)) is None


@pytest.mark.parametrize(
    ("contour", "by"),
    [
        (polygon(0, 300, 150 + 260j), -500),  # a triangle ends in a point, no two sides face
        (WEDGE, 500),  # a bay whose sides draw together fills up gradually
        (wavy(200, 0.1, 7), 500),
        (l_shape(), 500),
    ],
)
def test_sides_that_meet_at_an_angle_have_no_neck(contour, by):
    assert narrowest(contour, by) is None


def test_chord_with_the_floor_nearer_than_its_ends_is_no_neck():
    """A bay 60 mm wide, 11 mm deep: the allowance rises from its floor before its walls meet."""
    assert narrowest(with_bay(60, 11, 5, mouth=5), 100) is None


def test_band_between_two_arcs_of_one_centre_is_as_narrow_as_their_radii_say():
    outer, inner = Arc(0, 200, 2.0), Arc(0, 150, 2.0).reversed()
    ends = Line(outer.end, inner.start), Line(inner.end, outer.start)
    assert narrowest(Contour((outer, ends[0], inner, ends[1])), -60) == pytest.approx(25)


def test_corner_against_the_opposite_side():
    """The tip of a dart 30 mm short of the far side."""
    dart = polygon(0, 300, 300 + 200j, 180 + 200j, 150 + 30j, 120 + 200j, 200j)
    assert narrowest(dart, -60) == pytest.approx(15)
