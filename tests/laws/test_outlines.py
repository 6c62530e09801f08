"""Laws of every seat shape, whatever its name."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.contours import ring
from tests.laws.strategies import contours

WIDEST = ("back", "left", "front", "right")


@given(contours())
def test_outline_is_closed_simple_and_anticlockwise(contour):
    assert abs(contour.segments[-1].end - contour.segments[0].start) < 1e-9
    assert ring(contour, 0.01).is_valid
    assert contour.area > 0


@given(contours())
def test_outline_turns_once_round(contour):
    turning = sum(contour.corners) + sum(each.sweep for each in contour.segments)
    assert turning == pytest.approx(2 * math.pi, abs=1e-5)


@given(contours())
def test_outline_stands_with_its_middle_at_the_origin(contour):
    left, bottom, right, top = contour.bounds
    assert [left + right, bottom + top] == pytest.approx([0, 0], abs=1e-6)


@given(contours())
def test_widest_points_are_the_named_joints(contour):
    left, bottom, right, top = contour.bounds
    back, west, front, east = (contour.point_at(contour.station(name)) for name in WIDEST)
    assert [back.imag, west.real, front.imag, east.real] == pytest.approx(
        [top, left, bottom, right], abs=1e-6
    )


@given(contours())
def test_joints_stand_in_order_anticlockwise_from_the_back(contour):
    stations = [contour.station(name) for name in contour.joints]
    assert contour.station("back") == 0
    assert sum(b < a for a, b in pairwise([*stations, stations[0]])) <= 1


@given(contours(), st.floats(0, 1))
def test_outline_is_the_same_seen_in_a_mirror(contour, share):
    """Every shape so far is alike left and right; one that is not must say so here."""
    point = contour.point_at(share * contour.length)
    mirrored = contour.point_at((1 - share) * contour.length)
    assert mirrored == pytest.approx(complex(-point.real, point.imag), abs=1e-6)


@given(contours())
def test_area_is_that_of_its_chords(contour):
    assert contour.area == pytest.approx(ring(contour, 1e-3).area, abs=0.001 * contour.length)
