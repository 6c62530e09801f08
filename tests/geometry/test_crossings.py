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
