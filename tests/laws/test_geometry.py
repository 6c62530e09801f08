"""Laws of contours: parallels, scaling, turning, walking."""

import cmath
import math
from itertools import pairwise

import pytest
import shapely
from hypothesis import assume, given, reject
from hypothesis import strategies as st

from patternmaker.errors import Refusal
from patternmaker.geometry.contour import Contour
from tests.contours import polygon, ring, spread
from tests.laws.strategies import contours
from tests.waves import tightest_inner

ALLOWANCES = st.floats(0.5, 60)
FACTORS = st.floats(0.9, 1.1)


@st.composite
def polygons(draw: st.DrawFn, nearest: int = 60, corners: int = 3) -> Contour:
    """Draw a star-shaped polygon, mostly with corners that turn right."""
    reaches = draw(st.lists(st.integers(nearest, 400), min_size=corners, max_size=9))
    return polygon(*(cmath.rect(r, math.tau * i / len(reaches)) for i, r in enumerate(reaches)))


@st.composite
def bent_polygons(draw: st.DrawFn) -> Contour:
    """Draw a regular polygon whose sides are bent in or out, from an atom's to a finger's width."""
    count = draw(st.integers(4, 9))
    bends = st.floats(-9, 0.5).map(lambda power: 10**power) | st.just(0.0)
    points: list[complex] = []
    for i in range(count):
        one, two = (cmath.rect(200, math.tau * k / count) for k in (i, i + 1))
        bend = draw(bends) * draw(st.sampled_from((-1, 1)))
        points += [one, (one + two) / 2 + 1j * bend * (two - one) / abs(two - one)]
    return polygon(*points)


def away(contour: Contour, points: list[complex]) -> list[float]:
    """Return how far points lie from fine chords of a contour, by shapely."""
    line = ring(contour, 1e-3).exterior
    return [line.distance(shapely.Point(point.real, point.imag)) for point in points]


@given(contours(), ALLOWANCES)
def test_parallel_of_a_smooth_convex_outline_is_longer_by_its_turning(contour, by):
    assume(contour.is_convex and not any(contour.corners))
    grown = contour.grown(by)
    assert grown.length == pytest.approx(contour.length + math.tau * by, rel=1e-9)
    assert grown.area == pytest.approx(
        contour.area + contour.length * by + math.pi * by**2, rel=1e-9
    )


def parallel(contour: Contour, by: float) -> Contour:
    """Return a parallel; what closes up is another law's matter."""
    try:
        return contour.grown(by)
    except Refusal:
        reject()


def moves_whole(contour: Contour, by: float) -> bool:
    """Return whether no edge of a contour is trimmed away when it grows."""
    return min(contour.corners) >= 0 and by < tightest_inner(contour) - 0.01


@given(contours(), ALLOWANCES)
def test_every_point_of_a_parallel_keeps_its_distance(contour, by):
    """Only the tip of a mitre lies further out, at most at the limit of twice."""
    distances = away(contour, spread(parallel(contour, by), 60))
    assert min(distances) >= by - 1e-3
    assert max(distances) <= (by if not any(contour.corners) else 2 * by) + 2e-3


@given(contours(), ALLOWANCES)
def test_growing_and_shrinking_returns_home(contour, by):
    assume(moves_whole(contour, by))
    again = parallel(contour, by).grown(-by)
    assert again.length == pytest.approx(contour.length, abs=1e-5)
    assert again.area == pytest.approx(contour.area, rel=1e-8)


@given(contours(), st.floats(-30, 60))
def test_joints_of_a_parallel_lie_on_it_in_order(contour, by):
    assume(min(contour.width, contour.height) > 100)
    grown = parallel(contour, by)
    stations = [grown.station(name) for name in contour.joints]
    assert sum(b < a for a, b in pairwise([*stations, stations[0]])) <= 1
    assert max(away(contour, [grown.point_at(each) for each in stations])) <= 3 * abs(by) + 0.01


@given(contours(), st.floats(0.5, 40))
def test_foot_of_a_step_outward_lies_on_the_parallel(contour, by):
    assume(moves_whole(contour, by))
    line = parallel(contour, by)
    feet = [
        contour.point_at(along) + by * contour.outward(along)
        for along in map(contour.station, contour.joints)
    ]
    assert max(away(line, feet)) < 2e-3


@given(polygons(), st.floats(0.5, 25))
def test_parallel_of_any_polygon_is_simple_and_never_too_near(contour, by):
    grown = contour.grown(by)
    assert ring(grown).is_valid
    assert min(away(contour, spread(grown, 150))) >= by - 1e-3


@given(bent_polygons(), st.sampled_from([-40.0, -12.0, 3.0, 12.0, 60.0]))
def test_no_bend_however_slight_upsets_a_parallel(contour, by):
    """Compared with a mitred buffer by shapely, which cuts off the slightest tips: 2e-5 mm."""
    buffered = ring(contour).buffer(by, join_style="mitre", mitre_limit=5.0)
    grown = contour.grown(by)
    assert ring(grown).is_valid
    assert grown.area == pytest.approx(buffered.area, abs=0.02)
    assert grown.length == pytest.approx(buffered.length, abs=0.001)


@given(polygons(nearest=250, corners=5), st.floats(0.5, 10))
def test_parallel_inside_any_polygon_holds_what_shapely_says(contour, by):
    """A mitred join is exact for GEOS as long as its limit is not reached."""
    inner = ring(contour).buffer(-by, join_style="mitre", mitre_limit=2.0)
    assume(max(map(abs, contour.corners)) < 2.0)
    assert contour.grown(-by).area == pytest.approx(inner.area, rel=1e-6)


@given(contours(), FACTORS, FACTORS, st.floats(0, 1))
def test_scaled_contour_passes_through_the_scaled_points(contour, across, along, share):
    point = contour.point_at(share * contour.length)
    there = complex(point.real * across, point.imag * along)
    scaled = contour.scaled(across, along)
    assert min(each.distance(there) for each in scaled.segments) < 0.0005


@given(contours(), FACTORS, FACTORS)
def test_scaled_area_is_the_product_of_the_factors(contour, across, along):
    scaled = contour.scaled(across, along)
    assert scaled.area == pytest.approx(contour.area * across * along, abs=0.001 * contour.length)


@given(contours(), FACTORS, FACTORS)
def test_scaled_smooth_contour_stays_smooth(contour, across, along):
    assume(not any(contour.corners))
    assert not any(contour.scaled(across, along).corners)


@given(contours(), st.floats(-4, 4), st.complex_numbers(max_magnitude=5000))
def test_turning_and_moving_change_no_length_and_no_area(contour, angle, shift):
    moved = contour.mapped(cmath.rect(1, angle), shift)
    assert moved.length == pytest.approx(contour.length, rel=1e-9)
    assert moved.area == pytest.approx(contour.area, rel=1e-6)


@given(contours(), st.floats(-3, 3))
def test_walk_of_any_length_ends_on_the_contour(contour, rounds):
    point = contour.point_at(rounds * contour.length)
    assert min(each.distance(point) for each in contour.segments) < 1e-6


@given(contours(), st.floats(0, 1), st.floats(0, 1))
def test_no_chord_is_longer_than_the_walk(contour, one, two):
    chord = abs(contour.point_at(one * contour.length) - contour.point_at(two * contour.length))
    assert chord <= abs(one - two) * contour.length + 1e-6
