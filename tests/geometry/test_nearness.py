"""Many distances at once, beside one distance at a time."""

import math

import numpy as np
import pytest

from patternmaker.geometry.contour import Contour
from patternmaker.geometry.nearness import BLOCK, Bodies, Tips, near
from patternmaker.geometry.segments import Arc, Line
from tests.contours import horseshoe, l_shape, polygon
from tests.waves import wavy

SHAPES = [l_shape(), horseshoe(), wavy(200, 0.2, 5), Contour((Arc(0, 50, math.tau),))]


def scattered(count: int = 300) -> np.ndarray:
    pick = np.random.default_rng(7)
    return pick.uniform(-300, 300, count) + 1j * pick.uniform(-300, 300, count)


@pytest.mark.parametrize("contour", SHAPES)
def test_distances_are_those_of_each_segment(contour):
    bodies, points = Bodies.of(contour.segments), scattered()
    for i, each in enumerate(contour.segments[:40]):
        found = bodies.distances(points, np.full(len(points), i))
        assert found == pytest.approx([each.distance(point) for point in points], abs=1e-9)


@pytest.mark.parametrize("contour", SHAPES)
def test_boxes_hold_their_segments(contour):
    bodies = Bodies.of(contour.segments)
    for (left, bottom, right, top), each in zip(bodies.boxes, contour.segments, strict=True):
        for point in (each.point(each.length * i / 16) for i in range(17)):
            assert left - 1e-9 <= point.real <= right + 1e-9
            assert bottom - 1e-9 <= point.imag <= top + 1e-9


@pytest.mark.parametrize("contour", SHAPES)
@pytest.mark.parametrize("away", [0.0, 5.0, 40.0, 150.0])
def test_what_is_clear_lies_no_nearer_than_asked(contour, away):
    points = scattered()
    clear = Bodies.of(contour.segments).clear(points, np.full(len(points), away))
    nearest = [min(each.distance(point) for each in contour.segments) for point in points]
    assert clear.tolist() == [distance >= away for distance in nearest]


def test_near_boxes_are_found_in_every_block():
    """A row of unit boxes, one apart: each has its two neighbours, and itself."""
    lefts = 2.0 * np.arange(3 * BLOCK)
    row = np.stack([lefts, 0 * lefts, lefts + 1, 0 * lefts + 1], axis=-1)
    pairs = {
        (int(i), int(j))
        for i, j in zip(*map(np.concatenate, zip(*near(row, row, 1.0), strict=True)), strict=True)
    }
    assert pairs == {(i, j) for i in range(3 * BLOCK) for j in (i - 1, i, i + 1)
                     if 0 <= j < 3 * BLOCK}  # fmt: skip


def test_what_runs_on_smoothly_is_told_from_a_corner_and_from_a_gap():
    bodies = Bodies.of([Line(0, 10), Arc(10 + 5j, 10, 1.0), Line(10, 10 + 9j), Line(10.1, 20)])
    assert bodies.run_on(np.zeros(3, int), np.array([1, 2, 3])).tolist() == [True, False, False]


@pytest.mark.parametrize(
    ("point", "covered"),
    [
        (100.0 + 9 - 9j, True),  # beyond the arc round the corner, under the mitre's tip
        (100.0 + 9 + 1j, False),  # beside the side: nearer to it than asked, but no tip's
        (100.0 + 10.1 - 9j, False),  # outside the tip
        (50.0 + 50j, False),
    ],
)
def test_tip_of_a_square_corner(point, covered):
    tips = Tips.of(polygon(0, 100, 100 + 100j, 100j), 10)
    assert tips.cover(np.array([point]), 10).tolist() == [covered]


@pytest.mark.parametrize(("reach", "covered"), [(9.9, True), (10.1, False)])
def test_tip_of_a_needle_is_squared_off(reach, covered):
    tips = Tips.of(polygon(0, 400 - 30j, 400 + 30j), 10)
    assert tips.cover(np.array([complex(-reach, 0.5)]), 10).tolist() == [covered]


def test_no_tip_where_no_corner_turns_outward():
    assert not Tips.of(wavy(200, 0.1, 5), 10).cover(scattered(), 10).any()
