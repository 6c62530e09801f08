"""Striking contours from point to point."""

import math

import pytest

from patternmaker.geometry.compass import Compass


def test_moves_of_no_length_draw_nothing():
    compass = Compass(0).line(0).line(10).arc(10, 1.0).arc(5, 0.0).line(10 + 10j).line(0)
    assert len(compass.closed().segments) == 3


def test_move_whose_direction_would_be_all_rounding_draws_nothing():
    compass = Compass(0).line(10).line(10 + 9e-7).line(10 + 10j).line(10j).line(0)
    assert len(compass.closed().segments) == 4


def test_joint_at_the_end_is_the_one_at_the_start():
    contour = Compass(0).joint("a").line(10).line(10j).joint("b").line(0).joint("c").closed()
    assert dict(contour.joints) == {"a": 0, "b": 2, "c": 0}


def test_arc_moves_the_compass_to_its_end():
    assert Compass(10).arc(0, math.pi / 2).at == 10j


def test_open_contour_is_a_fault():
    with pytest.raises(ValueError, match="not closed"):
        Compass(0).line(10).line(10j).closed()
