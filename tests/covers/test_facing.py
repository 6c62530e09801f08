"""The run of a seam that faces the back or the front."""

import math

import pytest

from patternmaker.covers.parts.facing import Run, facing
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.l_shape import LShape
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from tests.covers.seats import SHARP, kite


def test_sharp_back_faces_back_from_corner_to_corner():
    assert facing(SHARP, "back") == Run(-200, 200)
    assert facing(SHARP, "front").length == pytest.approx(400)


def test_round_corner_belongs_to_the_back_up_to_its_middle():
    back = facing(RoundedRectangle(width=400, depth=300, corner=60).contour(), "back")
    assert back.end == pytest.approx(140 + 60 * math.pi / 4)
    assert back.begin == pytest.approx(-back.end)


def test_a_quarter_of_a_circle_faces_each_way():
    seat = Circle(diameter=320).contour()
    for joint in ("back", "front"):
        run = facing(seat, joint)
        assert run.length == pytest.approx(math.pi * 320 / 4)
        assert (run.begin + run.end) / 2 == pytest.approx(seat.station(joint))


def test_a_seat_on_its_corner_faces_back_along_both_sides():
    """They slant 45 degrees, which is no more than it may be."""
    assert facing(kite(), "back").length == pytest.approx(2 * 200 * math.sqrt(2))


def test_a_steep_point_does_not_face_back():
    steep = kite().scaled(0.9, 1.0)
    assert facing(steep, "back") == Run(0, 0)


def test_inner_corner_faces_no_way():
    assert facing(LShape().contour(), "front").length == 0


def test_run_is_made_longer_at_both_ends():
    assert Run(-10, 30).longer(5) == Run(-15, 35)
    assert Run(-10, 30).longer(5).length == 50
