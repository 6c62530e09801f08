"""Circles and rectangles are told from what is only like them."""

import math

import pytest

from patternmaker.geometry.contour import Contour
from patternmaker.geometry.plain import Circle, Rectangle, as_circle, as_rectangle
from patternmaker.geometry.segments import Arc
from patternmaker.outlines import circle, rounded_rectangle
from tests.contours import l_shape, polygon

DISC = circle.Circle(diameter=330).contour()
STADIUM = rounded_rectangle.RoundedRectangle(width=400, depth=200, corner=100).contour()


def rectangle(corner: float) -> Contour:
    """Return a seat 400 by 300."""
    return rounded_rectangle.RoundedRectangle(width=400, depth=300, corner=corner).contour()


def test_circle_is_told_wherever_it_lies():
    assert as_circle(DISC) == Circle(0, 165)
    assert as_circle(Contour((Arc(7, 57, math.tau),))) == Circle(7, 50)


@pytest.mark.parametrize(
    "contour", [rectangle(50), STADIUM, polygon(0, 1, 1j), DISC.scaled(1.01, 1)]
)
def test_what_has_other_edges_is_no_circle(contour):
    assert as_circle(contour) is None


@pytest.mark.parametrize("corner", [0.0, 50.0, 149.0])
def test_rectangle_is_told_with_its_corner(corner):
    found = as_rectangle(rectangle(corner).mapped(1, 3 + 4j))
    assert found is not None
    assert found.centre == pytest.approx(3 + 4j)
    assert [found.width, found.height, found.corner] == pytest.approx([400, 300, corner], abs=1e-4)


def test_stadium_is_a_rectangle_rounded_at_its_ends():
    found = as_rectangle(STADIUM)
    assert found is not None
    assert found.corner == pytest.approx(100)


@pytest.mark.parametrize(
    "contour", [DISC, DISC.scaled(1.001, 1), l_shape(), polygon(0, 300, 290 + 200j, 10 + 200j)]
)
def test_what_strays_from_its_rule_is_no_rectangle(contour):
    assert as_rectangle(contour) is None


def test_barely_scaled_rectangle_still_is_one_to_a_knife():
    assert as_rectangle(rectangle(50).scaled(0.999, 1)) is not None
    assert as_rectangle(rectangle(50).scaled(0.98, 1), close=0.01) is None


def test_diagonal_proves_a_rectangle_square():
    assert Rectangle(0, 300, 400, 20).diagonal == 500


@pytest.mark.parametrize(
    ("point", "distance"),
    [
        (250, 50),  # beside a side
        (0, -150),  # in the middle, nearest to the longer sides
        (200 + 160j, 20),  # 3-4-5 from the centre of the corner: 50 less the radius
        (170 + 120j, -30),  # the centre of the corner
    ],
)
def test_distance_from_a_rounded_rectangle(point, distance):
    assert Rectangle(0, 400, 300, 30).distance(point) == pytest.approx(distance)
