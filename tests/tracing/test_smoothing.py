"""Drawn lines as lines and arcs, measured against the curves that they were drawn along."""

import cmath
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternmaker.errors import Refusal
from patternmaker.geometry.segments import Arc, Line, Segment
from patternmaker.tracing.smoothing import smoothed
from tests.tracing.traces import (
    FINE,
    Points,
    along,
    apart,
    both_ways,
    by_hand,
    ellipse,
    off_place,
    rounded,
    star,
    tips,
    turns,
)

ELLIPSE, ROUNDED, STAR = ellipse(FINE), rounded(FINE), star(FINE)


def lines(segments: tuple[Segment, ...]) -> int:
    return sum(isinstance(each, Line) for each in segments)


@pytest.mark.parametrize("count", [500, 3000, 20_000])
def test_clean_oval_comes_back(count):
    found = smoothed(ellipse(count), 0.5, 30).segments
    assert both_ways(found, ELLIPSE) < 0.003
    assert max(turns(found)) < 1e-6
    assert len(found) < 120


@pytest.mark.parametrize("count", [500, 3000, 20_000])
def test_clean_rounded_seat_comes_back_as_four_lines_and_its_corners(count):
    found = smoothed(rounded(count), 0.5, 30).segments
    assert both_ways(found, ROUNDED) < 0.005
    assert lines(found) == 4
    assert len(found) == 12


@pytest.mark.parametrize("count", [500, 3001, 20_000])
def test_clean_star_comes_back_as_ten_lines_whose_corners_no_point_need_stand_on(count):
    found = smoothed(star(count), 0.5, 30).segments
    assert lines(found) == len(found) == 10
    assert all(min(abs(tip - each.start) for each in found) < 1e-6 for tip in tips())


@pytest.mark.parametrize("count", [3000, 20_000, 100_000])
def test_oval_with_every_point_off_its_place(count):
    """At 100,000 points the wobble is more than their spacing: the line goes to and fro."""
    found = smoothed(off_place(ellipse(count), 0.05), 0.5, 30)
    assert both_ways(found.segments, ELLIPSE) < 0.02
    assert 0.07 <= found.largest < 0.1
    assert found.usual == pytest.approx(0.05 / math.sqrt(3), rel=0.05)
    assert max(turns(found.segments)) < 1e-6
    assert len(found.segments) < 80


@pytest.mark.parametrize("count", [3000, 20_000, 100_000])
def test_corners_of_a_star_with_every_point_off_its_place(count):
    found = smoothed(off_place(star(count), 0.05), 0.5, 30).segments
    assert all(min(abs(tip - each.start) for each in found) < 0.02 for tip in tips())
    assert sum(turn > 30 for turn in turns(found)) == 10


@pytest.mark.parametrize("shape", [ELLIPSE, ROUNDED, STAR])
@pytest.mark.parametrize(("most", "wave", "smooth"), [(0.5, 5, 1.0), (0.7, 7, 1.5), (1, 10, 1.5)])
def test_hand_that_wavers_is_steadied(shape, most, wave, smooth):
    traced = by_hand(shape[::20], most, wave)
    found = smoothed(traced, smooth, 30)
    assert both_ways(found.segments, shape) < 0.5 * most
    assert apart(traced, along(found.segments, FINE)) < smooth
    assert len(found.segments) < 40
    corners = 10 if shape is STAR else 0
    assert sum(turn > 1e-6 for turn in turns(found.segments)) == corners


@pytest.mark.parametrize("smooth", [0.5, 0.1])
@pytest.mark.parametrize("count", [3000, 20_000])
def test_hand_that_wavers_more_than_may_be_smoothed_is_followed(smooth, count):
    traced = by_hand(ellipse(count), 1, 10)
    found = smoothed(traced, smooth, 30)
    assert apart(traced, along(found.segments, FINE)) < smooth + 0.003
    assert apart(along(found.segments, FINE), ELLIPSE) < 1.5


@pytest.mark.parametrize(
    "points",
    [
        (0, 300, 300 + 150j, 150 + 150j, 150 + 300j, 300j),
        (0, 400, 400 + 300j, 300j),
        tuple(cmath.rect(200, math.tau * i / 6) for i in range(6)),
        (0, 300, 100 + 200j),
        tuple(tips()),
    ],
)
def test_polygon_of_few_points_stays_what_it_is(points):
    found = smoothed(np.array(points), 0.5, 30).segments
    assert sorted((each.start for each in found), key=abs) == sorted(points, key=abs)
    assert lines(found) == len(points)


def test_circle_drawn_by_24_chords_is_round_again():
    found = smoothed(ellipse(24, 200, 200), 0.5, 30).segments
    assert both_ways(found, ellipse(FINE, 200, 200)) < 0.005


def test_long_sides_with_a_slight_bend_between_them_are_rounded_where_they_meet():
    points = np.array([0, 400, 700 + 100j, 700 + 500j, 500j])
    found = smoothed(points, 0.5, 30).segments
    bends = [each for each in found if isinstance(each, Arc)]
    assert len(bends) == 1
    assert bends[0].sweep == pytest.approx(math.atan(1 / 3))
    assert bends[0].distance(400 + 0j) == pytest.approx(0.5)
    assert sum(turn > 1e-6 for turn in turns(found)) == 4


def test_tight_round_corner_is_not_taken_for_a_sharp_one():
    bend: list[Segment] = [
        Line(0, 100),
        Arc(100 + 2j, 100, math.pi / 2),
        Line(102 + 2j, 102 + 102j),
        Line(102 + 102j, 0),
    ]
    found = smoothed(along(bend, 20_000), 0.5, 30).segments
    assert both_ways(found, along(bend, FINE)) < 0.005
    assert sum(turn > 1 for turn in turns(found)) == 2


def test_curved_sides_meet_in_a_corner():
    """A lens of two arcs of radius 250 about points 300 mm apart: its tips stand 200 mm off."""
    half = math.atan2(200, 150)
    lens = [Arc(-150, -150 + cmath.rect(250, -half), 2 * half),
            Arc(150, 150 + cmath.rect(250, math.pi - half), 2 * half)]  # fmt: skip
    for count in (601, 20_000):
        found = smoothed(along(lens, count), 0.5, 30).segments
        assert both_ways(found, along(lens, FINE)) < 0.005
        assert sum(turn > 30 for turn in turns(found)) == 2


def test_open_line_keeps_its_ends():
    points = ellipse(1000)[:400]
    found = smoothed(points, 0.5, 30, closed=False).segments
    assert found[0].start == points[0]
    assert found[-1].end == points[-1]
    assert apart(along(found, FINE), ELLIPSE) < 0.003


def test_straight_run_of_points_is_one_line():
    found = smoothed(
        np.array([share / 49 * (300 + 100j) for share in range(50)]), 0.5, 30, closed=False
    ).segments
    assert found == (Line(0, 300 + 100j),)


def test_points_all_over_the_place_are_refused():
    with pytest.raises(Refusal, match=r"smooth: the point at .* allow more"):
        smoothed(off_place(rounded(5000), 1.0), 0.5, 30)


@pytest.mark.parametrize("count", [400, 20_000])
def test_stray_point_is_no_wobble_and_is_followed(count):
    points = ellipse(count)
    points[count // 4] += 3 + 2j
    found = smoothed(points, 0.5, 30).segments
    assert apart(points, along(found, FINE)) < 0.51


@settings(max_examples=25)
@given(
    st.integers(200, 900),
    st.floats(60, 400),
    st.floats(60, 400),
    st.floats(0, math.tau),
    st.floats(0, 0.2),
)
def test_any_gentle_outline_comes_back(count, width, depth, turn, wave):
    """A wave of three humps laid on an oval: it bends both ways, and smoothly."""
    fine = shape(FINE, width, depth, turn, wave)
    found = smoothed(shape(count, width, depth, turn, wave), 0.5, 30).segments
    chord = np.abs(np.diff(fine[:: FINE // count])).max()
    assert both_ways(found, fine) < max(0.005, chord**2 / 700)
    assert max(turns(found)) < 1e-5


def shape(count: int, width: float, depth: float, turn: float, wave: float) -> Points:
    angle = np.arange(count) * math.tau / count
    size = 1 + wave * np.cos(3 * angle) / 3
    found: Points = size * (width * np.cos(angle) + 1j * depth * np.sin(angle)) / 1.2
    return found * cmath.rect(1, turn)


@settings(max_examples=25)
@given(st.integers(0, 10_000))
def test_where_a_closed_string_begins_does_not_matter(start):
    points = np.roll(off_place(star(2000), 0.02), start)
    found = smoothed(points, 0.5, 30).segments
    assert both_ways(found, STAR) < 0.02
    assert len(found) == 10


def test_same_points_give_the_same_arcs():
    points = off_place(ellipse(5000), 0.05)
    assert smoothed(points, 0.5, 30) == smoothed(points.copy(), 0.5, 30)
