"""The basic shapes, against what SVG 1.1, 9 says that they are."""

import math

import numpy as np
import pytest

from patternmaker.geometry.segments import Arc
from tests.tracing.drawings import apart, drawn, only, svg, told


def ring(centre: complex, a: float, b: float) -> np.ndarray:
    t = np.linspace(0, math.tau, 3000)
    return centre + a * np.cos(t) + 1j * b * np.sin(t)


def test_circle_is_round_exactly():
    chain = only(drawn('<circle id="seat" cx="200" cy="150" r="160"/>'))
    assert chain.name == "seat"
    assert chain.closed
    assert chain.path.length == pytest.approx(320 * math.pi, abs=1e-9)
    assert {type(each) for each in chain.segments} == {Arc}
    assert all(each.centre == 200 - 150j for each in chain.segments if isinstance(each, Arc))


def test_ellipse_is_followed():
    chain = only(drawn('<ellipse cx="300" cy="200" rx="250" ry="180"/>'))
    assert apart(chain.path, ring(300 - 200j, 250, 180)) < 0.0005
    assert chain.path.length == pytest.approx(1359.84965003, abs=0.001)  # by mpmath


@pytest.mark.parametrize("attributes", ['rx="90"', 'ry="90"', 'rx="90" ry="auto"'])
def test_ellipse_with_one_radius_has_two_alike(attributes):
    """SVG 2, 10.4: auto means the other one."""
    chain = only(drawn(f"<ellipse {attributes}/>"))
    assert chain.path.length == pytest.approx(180 * math.pi, abs=1e-9)


def test_square_cornered_rectangle():
    chain = only(drawn('<rect x="10" y="20" width="400" height="300"/>'))
    assert chain.closed
    assert [each.start for each in chain.segments] == [10 - 20j, 410 - 20j, 410 - 320j, 10 - 320j]


@pytest.mark.parametrize("attributes", ['rx="60"', 'ry="60"', 'rx="60" ry="60"', 'rx="60" ry="-1"'])
def test_rounded_rectangle_is_as_long_as_its_formula_says(attributes):
    """2(W+H) - (8-2pi)r: 500 x 450 r 60, worked out with mpmath."""
    chain = only(drawn(f'<rect width="500" height="450" {attributes}/>'))
    assert chain.path.length == pytest.approx(1796.99111843, abs=1e-7)
    assert len(chain.segments) == 8


def test_radii_of_a_rectangle_end_at_half_its_sides():
    chain = only(drawn('<rect width="200" height="200" rx="900"/>'))
    assert chain.path.length == pytest.approx(200 * math.pi, abs=1e-9)
    assert len(chain.segments) == 4


def test_rectangle_with_elliptical_corners():
    chain = only(drawn('<rect width="400" height="300" rx="80" ry="40"/>'))
    corner = ring(320 - 40j, 80, 40)[:750]
    assert max(min(e.distance(z) for e in chain.segments) for z in corner) < 0.0005
    assert chain.path.bounds == pytest.approx((0, -300, 400, 0), abs=1e-9)


def test_line_polyline_and_polygon():
    line, open_one, ring_of_three = drawn(
        '<line x1="1" y1="2" x2="10" y2="20"/>'
        '<polyline points="0,0 10,0 10,10"/><polygon points="0 0 10 0 10,10"/>'
    ).chains
    assert (line.path.segments[0].start, line.path.segments[0].end) == (1 - 2j, 10 - 20j)
    assert [line.closed, open_one.closed, ring_of_three.closed] == [False, False, True]
    assert [len(open_one.segments), len(ring_of_three.segments)] == [2, 3]


def test_polygon_of_many_corners_is_a_string_of_points():
    points = " ".join(f"{i} {i * i % 7}" for i in range(30))
    chain = only(drawn(f'<polygon points="{points}"/>'))
    assert chain.drawn
    assert len(chain.points) == 30


@pytest.mark.parametrize(
    ("length", "mm"),
    [("25.4mm", 25.4), ("1in", 25.4), ("2.54cm", 25.4), ("72pt", 25.4), ("6pc", 25.4),
     ("96px", 25.4), ("96", 25.4), ("101.6Q", 25.4), ("2e1 mm", 20)],
)  # fmt: skip
def test_lengths_may_have_units(length, mm):
    chain = only(drawn(f'<circle r="{length}"/>', size=""))
    assert chain.path.width == pytest.approx(2 * mm, abs=1e-9)


def test_percentages_are_of_the_viewport():
    """SVG 1.1, 7.10: width, height, and for a radius the diagonal over the root of 2."""
    size = 'width="400mm" height="300mm" viewBox="0 0 400 300"'
    line, circle = drawn('<line x2="50%" y2="10%"/><circle r="10%"/>', size).chains
    assert line.path.segments[0].end == pytest.approx(200 - 30j)
    assert circle.path.width == pytest.approx(2 * 0.1 * 500 / math.sqrt(2))


@pytest.mark.parametrize(
    "shape",
    ['<rect width="0" height="5"/>', '<circle r="0"/>', '<ellipse rx="0" ry="9"/>', "<rect/>",
     '<circle r="-5"/>', "<polygon/>", '<polyline points="5,5"/>', "<line/>", "<ellipse/>"],
)  # fmt: skip
def test_shape_without_size_draws_nothing(shape):
    assert drawn(shape).chains == ()


@pytest.mark.parametrize(
    ("shape", "what"),
    [
        ('<circle r="ten"/>', "r of circle, 'ten'"),
        ('<circle r="5em"/>', "r of circle, '5em'"),
        ('<circle r="1e99"/>', "r of circle, '1e99'"),
        ('<polygon points="1 2 3"/>', "points of polygon, '1 2 3'"),
        ('<polyline points="a b"/>', "points of polyline, 'a b'"),
    ],
)
def test_what_can_not_be_read_is_named(shape, what):
    assert told("a.svg", svg(shape)).startswith(f"can't be read in line 1: {what};")
