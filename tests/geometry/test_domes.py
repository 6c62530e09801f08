"""Domes: their meridians, their blanks, and what can bear none."""

import math

import pytest

from patternmaker.geometry.contour import Contour
from patternmaker.geometry.domes import Dome, Meridian, middle_of_area, over_crown, width_under
from patternmaker.geometry.plain import as_circle
from patternmaker.geometry.segments import Line
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.half_round import HalfRound
from patternmaker.outlines.l_shape import LShape
from patternmaker.outlines.oval import Oval
from patternmaker.outlines.rounded_rectangle import RoundedRectangle

ROUND = Circle(diameter=400).contour()
OVAL = Oval(width=450, depth=350).contour()
SQUARE = RoundedRectangle(width=400, depth=400, corner=0).contour()


def test_meridian_of_a_half_ball_is_a_quarter_circle():
    arc = Meridian(100, 100)
    assert (arc.radius, arc.angle) == pytest.approx((100, math.pi / 2))
    assert arc.length == pytest.approx(50 * math.pi)


def test_flat_meridian_is_as_long_as_its_reach():
    assert Meridian(200, 0.01).length == pytest.approx(200, abs=1e-5)


def test_place_on_a_meridian_lies_out_by_a_sine():
    arc = Meridian(200, 40)
    assert arc.out(arc.length) == pytest.approx(200)
    assert arc.out(520 * math.pi / 6) == pytest.approx(260)
    step = arc.out(101) - arc.out(99)
    assert 1 - step / 2 == pytest.approx(arc.shrinks(100), abs=1e-5)


def test_meridian_lengthens_as_its_reach_grows():
    step = Meridian(200.001, 40).length - Meridian(199.999, 40).length
    assert Meridian(200, 40).lengthens == pytest.approx(step / 0.002)


@pytest.mark.parametrize("rise", [1, 40, 120, 199, 200])
def test_width_comes_back_from_the_arc_over_the_crown(rise):
    assert width_under(over_crown(400, rise), rise) == pytest.approx(400, abs=1e-6)


def test_no_arc_is_shorter_than_half_the_circle_of_its_height():
    assert width_under(100, 40) == 80


def test_blank_of_a_round_dome_is_a_circle_as_far_out_as_the_arc_is_long():
    dome = Dome.over(ROUND, 40)
    circle = as_circle(dome.blank)
    assert circle
    assert circle.radius == pytest.approx(over_crown(400, 40) / 2)
    assert dome.blank.joints == ROUND.joints


def test_blank_of_a_circle_beside_the_origin_keeps_its_middle():
    beside = Dome.over(ROUND.mapped(1, 100 + 50j), 40).blank
    circle = as_circle(beside)
    assert circle
    assert circle.centre == pytest.approx(100 + 50j)


@pytest.mark.parametrize("seam", [OVAL, SQUARE, HalfRound().contour()])
def test_every_place_of_a_blank_is_as_far_from_the_crown_as_the_arc_over_it_is_long(seam):
    dome = Dome.over(seam, 50)
    for i in range(48):
        along = seam.length * i / 48
        place = dome.blank_point(along)
        assert abs(place - dome.crown) == pytest.approx(dome.meridian(along).length)
        edge = dome.blank.segments[dome.blank.nearest(place)]
        assert edge.distance(place) < 1e-3
    for name in seam.joints:
        joint = dome.blank.point_at(dome.blank.station(name))
        assert joint == pytest.approx(dome.blank_point(seam.station(name)), abs=1e-6)


def test_crown_stands_over_the_middle_of_the_area():
    assert middle_of_area(ROUND) == 0
    assert abs(middle_of_area(OVAL)) < 1e-9


def test_middle_of_a_half_disc_lies_4_r_over_3_pi_from_its_straight_side():
    ring = Circle(diameter=400).contour()
    left = ring.part(0, ring.station("front")).segments
    middle = middle_of_area(Contour((*left, Line(left[-1].end, left[0].start))))
    assert middle == pytest.approx(-4 * 200 / (3 * math.pi), abs=0.05)


def test_nearest_and_slant_tell_what_bears_no_dome():
    assert Dome.over(ROUND, 40).nearest == pytest.approx(200)
    assert Dome.over(ROUND, 40).slant == pytest.approx(math.pi / 2)
    assert Dome.over(SQUARE, 40).slant == pytest.approx(math.pi / 4)
    assert Dome.over(LShape().contour(), 40).slant < 0.2
