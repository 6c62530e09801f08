"""Where a line turns on the spot, and how far its points stray, told from the points alone."""

import math
from itertools import pairwise

import numpy as np
import pytest

from patternmaker.tracing.corners import corners
from patternmaker.tracing.curve import curve_along, line_along
from patternmaker.tracing.thinning import BINS, Nodes, bin_width, lengths, thinned
from patternmaker.tracing.wobble import Wobble, wobble
from tests.tracing.traces import Points, by_hand, ellipse, off_place, rounded, star, tips


def nodes_of(points: Points) -> Nodes:
    along = lengths(points, closed=True)
    return thinned(points, along[: len(points)], bin_width(len(points), float(along[-1])))


def found(points: Points, stray: Wobble, *, closed: bool = True) -> list[complex]:
    return [each.at for each in corners(nodes_of(points), stray, math.radians(30), closed=closed)]


def polyline(*points: complex, step: float) -> Points:
    parts = [np.arange(0, abs(b - a), step) / abs(b - a) * (b - a) + a
             for a, b in pairwise(points)]  # fmt: skip
    return np.concatenate([*parts, np.array([points[-1]])])


def test_corner_between_points_is_found_where_the_sides_meet():
    spots = found(star(501), Wobble(0.0, 2.6))
    assert all(min(abs(spot - tip) for tip in tips()) < 1e-9 for spot in spots)
    assert len(spots) == 10


def test_chamfer_longer_than_the_steps_beside_it_has_two_corners():
    points = polyline(0, 97, 100 + 3j, 100 + 100j, step=1.0)
    assert found(points, Wobble(0.0, 1.0), closed=False) == pytest.approx([97, 100 + 3j])


def test_corner_near_the_end_of_an_open_line_is_at_a_point():
    points = polyline(0, 2, 2 + 60j, step=1.0)
    assert found(points, Wobble(0.0, 1.0), closed=False) == [2]


def test_sides_that_are_all_but_parallel_meet_nowhere_far_off():
    points = off_place(polyline(0, 60, 60 + 1j, 1j, step=2.0), 0.01)
    spots = found(points, Wobble(0.01, 2.0))
    assert len(spots) == 2
    assert all(min(abs(spot), abs(spot - 60)) < 10 for spot in spots)


def test_too_few_points_that_stray_show_no_corner():
    assert found(off_place(star(8), 0.5), Wobble(0.5, 100.0)) == []


@pytest.mark.parametrize("by", [0.05, 0.005])
@pytest.mark.parametrize("shape", [ellipse, rounded, star])
def test_wobble_of_each_point_by_itself(shape, by):
    points = off_place(shape(3000), by)
    stray = wobble(points, lengths(points, closed=True)[:-1], closed=True)
    assert stray.size == pytest.approx(by / math.sqrt(3), rel=0.1)


@pytest.mark.parametrize("shape", [ellipse, rounded, star])
def test_wobble_of_a_hand_is_told_from_the_shape(shape):
    points = by_hand(shape(3000), 0.7, 7)
    sway = np.abs(points - shape(3000))
    stray = wobble(points, lengths(points, closed=True)[:-1], closed=True)
    assert stray.size == pytest.approx(math.sqrt((sway**2).mean()), rel=0.3)


@pytest.mark.parametrize("shape", [ellipse, rounded, star])
def test_clean_points_do_not_wobble(shape):
    points = shape(3000)
    assert wobble(points, lengths(points, closed=True)[:-1], closed=True).size < 1e-6


@pytest.mark.parametrize("points", [star(24), star(60), star(100), rounded(30), ellipse(20)])
def test_few_clean_points_do_not_wobble(points):
    assert wobble(points, lengths(points, closed=True)[:-1], closed=True).size < 1e-6


def test_length_of_a_line_that_goes_to_and_fro_is_that_of_the_line():
    """The string itself is more than three times as long."""
    points = off_place(ellipse(100_000), 0.05)
    assert np.abs(np.diff(points)).sum() > 3 * 1359.85
    assert lengths(points, closed=True)[-1] == pytest.approx(1359.85, rel=0.02)


def test_means_of_points_lie_on_the_line_in_spite_of_its_bend():
    nodes = nodes_of(ellipse(50_000, 200, 200))
    assert BINS * 0.99 < len(nodes.at) <= BINS
    assert np.abs(np.abs(nodes.at) - 200).max() < 1e-4


@pytest.mark.parametrize("turn", [0.01, 0.5, 2.0, -1.0])
def test_curve_along_points_of_a_circle_is_that_circle(turn):
    points = 30 + 40j + 50 * np.exp(1j * np.linspace(1, 1 + turn, 20))
    curve = curve_along(points)
    assert curve.bend == pytest.approx(math.copysign(1 / 50, turn))
    at, way = curve.nearest(complex(points[3]))
    assert at == pytest.approx(complex(points[3]))
    assert way == pytest.approx(1j * math.copysign(1, turn) * complex(points[3] - 30 - 40j) / 50)


def test_curve_along_points_of_a_line_is_that_line():
    points = np.array([share * (3 + 4j) for share in range(9)])
    for curve in (curve_along(points), line_along(points)):
        assert curve.bend == pytest.approx(0, abs=1e-12)
        assert curve.way == pytest.approx(0.6 + 0.8j)
        assert curve.strays(np.array([3j + 4])) == pytest.approx(np.array([-1.4]))


def test_points_all_round_a_circle_show_no_way_to_run():
    assert curve_along(ellipse(8, 50, 50)).bend == 0
