"""Where lines and circles meet, worked out by hand."""

import math
from collections.abc import Iterable

import pytest

from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Arc, Line

CIRCLE = Arc(0, 5, 2 * math.pi)


def near(points: Iterable[complex]) -> list[tuple[float, float]]:
    return sorted((round(p.real, 9), round(p.imag, 9)) for p in points)


@pytest.mark.parametrize(
    ("one", "two", "points"),
    [
        (Line(0, 4 + 4j), Line(4, 4j), [(2, 2)]),
        (Line(0, 1 + 1j), Line(4, 4j), []),
        (Line(0, 4), Line(1j, 4 + 1j), []),
        (Line(0, 4), Line(2, 6), []),
        (Line(0, 4), Line(1 - 1e-10j, 3 + 1e-10j), []),
        (Line(0, 4), Line(1 - 1e-8j, 3 + 1e-8j), [(2, 0)]),
        (Line(0, 4), Line(4, 4 + 3j), [(4, 0)]),
        (Line(-9 + 3j, 9 + 3j), CIRCLE, [(-4, 3), (4, 3)]),
        (CIRCLE, Line(0 + 3j, 9 + 3j), [(4, 3)]),
        (CIRCLE, Line(-9 + 5j, 9 + 5j), [(0, 5)]),
        (CIRCLE, Line(-9 + 6j, 9 + 6j), []),
        (CIRCLE, Arc(6, 11, 2 * math.pi), [(3, -4), (3, 4)]),
        (CIRCLE, Arc(6, 1, -math.pi / 2), [(3, 4)]),
        (CIRCLE, Arc(10, 15, 2 * math.pi), [(5, 0)]),
        (CIRCLE, Arc(11, 16, 2 * math.pi), []),
        (CIRCLE, Arc(1, 3, 2 * math.pi), []),
        (CIRCLE, Arc(0, 4, 2 * math.pi), []),
        (CIRCLE, Arc(0, 5j, math.pi), []),
    ],
)
def test_crossings(one, two, points):
    assert near(crossings(one, two)) == points
    assert near(crossings(two, one)) == points


@pytest.mark.parametrize("radius", [1e5, 1e6, 1e7, 1e9])
@pytest.mark.parametrize("x", [10.0, 49.0])
def test_arc_as_good_as_straight_is_crossed_where_its_sagitta_says(radius, x):
    """y = (50^2 - x^2) / 2 R above its chord, but for terms of R^-3; crossed at right angles."""
    half = math.asin(50 / radius)
    flat = Arc(-1j * radius * math.cos(half), 50, 2 * half)
    height = (50**2 - x**2) / (2 * radius)
    assert list(crossings(Line(x - 1j, x + 1j), flat)) == [pytest.approx(x + 1j * height, abs=1e-6)]


@pytest.mark.parametrize("radius", [1e5, 1e6])
def test_level_line_crosses_such_an_arc_twice(radius):
    """Halfway up its sagitta a level line meets it at 50 / sqrt 2 on either side."""
    half = math.asin(50 / radius)
    flat = Arc(-1j * radius * math.cos(half), 50, 2 * half)
    level = 1j * 50**2 / (4 * radius)
    found = sorted(point.real for point in crossings(Line(level - 60, level + 60), flat))
    assert found == pytest.approx([-50 / math.sqrt(2), 50 / math.sqrt(2)], abs=1e-3)


def test_two_such_arcs_bent_apart_cross_at_their_ends():
    half = math.asin(50 / 1e6)
    up = Arc(-1e6j * math.cos(half), 50, 2 * half)
    down = Arc(1e6j * math.cos(half), -50, 2 * half)
    found = sorted(point.real for point in crossings(up, down))
    assert found == pytest.approx([-50, 50], abs=1e-5)
