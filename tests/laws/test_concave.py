"""Laws of the parallels of contours that turn both ways."""

import cmath
import math
from itertools import pairwise
from typing import cast

import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from patternmaker.errors import Refusal
from patternmaker.geometry.contour import MITRE_LIMIT, Contour
from patternmaker.geometry.offsets import FINE
from tests.contours import ring, spread
from tests.laws.strategies import contours
from tests.waves import rounded_off, tightest_inner, wavy

STEPS = st.floats(3, 40) | st.floats(-40, -3)
LENGTHS = st.integers(60, 200)
CHORD = 1e-3  # mm
NEAR = 0.005  # mm; how well a parallel keeps its distance
FEW = settings(max_examples=60)  # each draws hundreds of arcs


@st.composite
def waves(draw: st.DrawFn) -> Contour:
    """Draw a curve that runs to and fro about a circle."""
    count = draw(st.integers(2, 9))
    return wavy(draw(st.integers(120, 300)), draw(st.floats(0.02, 0.9 / count)), count)


@st.composite
def stars(draw: st.DrawFn) -> Contour:
    """Draw a star, all of its corners rounded."""
    count = draw(st.integers(3, 6))
    outer, inner = draw(st.integers(200, 350)), draw(st.integers(100, 190))
    reaches = [outer, inner] * count
    points = [cmath.rect(r, math.pi * i / count) for i, r in enumerate(reaches)]
    return rounded_off(points, draw(_radii(len(points), 15)))


@st.composite
def letters(draw: st.DrawFn) -> Contour:
    """Draw an L, a T or a U, its corners rounded."""
    a, b, c, d, e = (draw(LENGTHS) for _ in range(5))
    top, low = (b + d) * 1j, b * 1j
    points = draw(st.sampled_from([
        (0, a + c, a + c + low, a + low, a + top, top),
        (0, a, a + low, a + c + low, a + c + top, -e + top, -e + low, low),
        (0, a + c + e, a + c + e + top, a + c + top, a + c + low, a + low, a + top, top),
    ]))  # fmt: skip
    return rounded_off(points, draw(_radii(len(points), 29)))


def _radii(count: int, most: int) -> st.SearchStrategy[list[float]]:
    return st.lists(st.floats(1, most), min_size=count, max_size=count)


SMOOTH = waves() | stars() | letters()


def signed(contour: Contour, points: list[complex]) -> list[float]:
    """Return how far outside a contour points lie, negative inside, measured by shapely."""
    area = ring(contour, CHORD)
    shapes = [shapely.Point(point.real, point.imag) for point in points]
    return [area.exterior.distance(p) * (-1 if area.contains(p) else 1) for p in shapes]


def most_that_fits(contour: Contour, by: float) -> float:
    """Return a step, or the largest that fits if that one closes up."""
    try:
        contour.grown(by)
    except Refusal as refused:
        return math.copysign(cast("float", refused.limit), by)
    return by


def clear_of_tips(contour: Contour, by: float, points: list[complex]) -> list[complex]:
    """Return the points that don't lie in the reach of a mitre."""
    corners = zip(contour.corners, contour.segments, strict=True)
    tips = [after.start for turn, after in corners if turn * by > 0]
    reach = MITRE_LIMIT * abs(by) + NEAR
    return [point for point in points if all(abs(point - tip) > reach for tip in tips)]


@given(SMOOTH | contours(), STEPS)
def test_parallel_is_simple_and_everywhere_at_its_distance_or_its_limit_is(contour, by):
    """What closes up names the most that fits; a fifth of a millimetre more does not.

    At a mitre its tip lies further out, at most at the limit of twice.
    """
    fits = most_that_fits(contour, by)
    if fits != by:
        with pytest.raises(Refusal):
            contour.grown(fits + math.copysign(2 * FINE, by))
    grown = contour.grown(fits)
    assert ring(grown, CHORD).is_valid
    points = [*spread(grown, 100), *(each.start for each in grown.segments)]
    away = [abs(place) for place in signed(contour, points)]
    assert min(away) > abs(fits) - NEAR
    assert max(away) < MITRE_LIMIT * abs(fits) + NEAR
    clear = clear_of_tips(contour, fits, points)
    assert all(abs(place - fits) < NEAR for place in signed(contour, clear))


@FEW
@given(
    SMOOTH | contours(),
    STEPS,
    st.lists(st.tuples(st.floats(0, 1), st.floats(-60, 60)), min_size=30),
)
def test_places_beyond_a_parallel_are_those_further_than_it(contour, by, strewn):
    try:
        grown = ring(contour.grown(by), CHORD)
    except Refusal:
        assume(False)
    walks = ((along * contour.length, out) for along, out in strewn)
    points = [contour.point_at(at) + out * contour.outward(at) for at, out in walks]
    clear = set(clear_of_tips(contour, by, points))
    for point, out in zip(points, signed(contour, points), strict=True):
        if abs(out - by) > NEAR and point in clear:
            assert grown.contains(shapely.Point(point.real, point.imag)) is (out < by)


@FEW
@given(SMOOTH, st.floats(0.5, 40))
def test_smooth_parallel_less_than_its_tightest_bend_is_longer_by_its_turning(contour, by):
    """P + 2 pi d, A + P d + pi d^2: J. Steiner's formulas hold as long as nothing is trimmed."""
    assume(by < tightest_inner(contour))
    try:
        grown = contour.grown(by)
    except Refusal:
        assume(False)
    assert grown.length == pytest.approx(contour.length + math.tau * by, rel=1e-7)
    area = contour.area + contour.length * by + math.pi * by**2
    assert grown.area == pytest.approx(area, rel=1e-7)


@FEW
@given(SMOOTH | contours(), STEPS)
def test_joints_keep_their_order_however_much_is_trimmed(contour, by):
    try:
        grown = contour.grown(by)
    except Refusal:
        assume(False)
    stations = [grown.station(name) for name in contour.joints]
    assert list(grown.joints) == list(contour.joints)
    assert sum(b < a for a, b in pairwise([*stations, stations[0]])) <= 1
