"""Rings put together from parts, and what touches."""

import pytest

from patternmaker.geometry.contour import Path
from patternmaker.geometry.nearness import Bodies, Tips
from patternmaker.geometry.segments import Line
from patternmaker.geometry.trimming import Part, area, rings, touches
from tests.contours import polygon

FAR = Bodies.of([Line(9000, 9001)])
NONE = Tips.of(polygon(0, 1, 1j), 0)


def chain(*points: complex) -> list[Part]:
    return [Part(i, edge) for i, edge in enumerate(Path.through(*points, points[0]).segments)]


def test_nothing_makes_no_ring():
    assert rings([], FAR, NONE, 10) == []


def test_chain_that_crosses_itself_falls_into_its_loops():
    """A figure of eight, its loops of 100 x 50 / 2 run through in opposite ways."""
    eight = chain(0, 100 + 100j, 100j, 100 + 0j)
    assert sorted(area(ring) for ring in rings(eight, FAR, NONE, 10)) == pytest.approx(
        [-2500, 2500]
    )


def test_part_that_comes_too_near_opens_its_ring():
    near = Bodies.of([Line(30 - 5j, 60 - 5j)])
    assert rings(chain(0, 100, 100 + 100j, 100j), near, NONE, 4) != []
    assert rings(chain(0, 100, 100 + 100j, 100j), near, NONE, 6) == []


@pytest.mark.parametrize(
    ("points", "answer"),
    [
        ((0, 100, 100 + 100j, 100j), False),
        ((0, 100, 100 + 100j, 50 + 1e-9j, 100j), True),  # a corner on the opposite side
        ((0, 50 + 40j, 100, 100 + 100j, 50 + 40j + 1e-9j, 100j), True),  # two corners
        ((0, 50 + 40j, 100, 100 + 100j, 50 + 41j, 100j), False),
    ],
)
def test_ring_that_meets_itself(points, answer):
    assert touches(chain(*points)) is answer
