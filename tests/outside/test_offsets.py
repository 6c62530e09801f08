"""Parallels of contours that turn both ways, beside scipy, GEOS and the schoolbook."""

import cmath
import functools
import math

import numpy as np
import pytest
import shapely
from scipy.spatial import cKDTree

from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour
from tests.contours import horseshoe, polygon, ring, spread
from tests.waves import rounded_off, wavy, wavy_by, with_bay

STEP = 0.05  # mm between places on a contour: a chord's middle is 3e-5 mm nearer than its ends
RIGHT = 0.005  # mm; how well a parallel keeps its distance
SEED = 20261125


def sector(inner: float, outer: float, sweep: float) -> Contour:
    """Return part of a ring, its four corners sharp."""
    end = cmath.rect(1, sweep)
    return Compass(inner).line(outer).arc(0, sweep).line(inner * end).arc(0, -sweep).closed()


def tee(corner: float) -> Contour:
    """Return a T with all of its corners rounded alike; its two inner ones are 3 and 6."""
    points = (150, 350, 350 + 200j, 500 + 200j, 500 + 400j, 400j, 200j, 150 + 200j)
    return rounded_off(points, (corner,) * len(points))


ROUNDED = {
    "wavy": wavy(200, 0.12, 6),
    "waist": wavy(220, 0.3, 2),
    "traced": wavy_by(1200, 250, 0.05, 11),
    "tee": tee(20),
    "tee, tight": tee(2),
    "bay": with_bay(130, 80, 5, mouth=10),
    "star": rounded_off(
        [cmath.rect(300 - 130 * (i % 2), i * 0.7853981) for i in range(8)], [9] * 8
    ),
}
STEPS = [3.0, 12.0, 40.0, -3.0, -12.0, -40.0]


@functools.cache
def tree(name: str) -> cKDTree:
    """Return places all along a contour in scipy's index of nearest neighbours."""
    places = [
        each.point(each.length * i / count)
        for each in ROUNDED[name].segments
        for count in [math.ceil(each.length / STEP)]
        for i in range(count)
    ]
    return cKDTree(flat(places))


def flat(points: list[complex]) -> np.ndarray:
    return np.array([(point.real, point.imag) for point in points])


@pytest.mark.parametrize("by", STEPS)
@pytest.mark.parametrize("name", ROUNDED)
def test_parallel_keeps_its_distance_as_a_nearest_neighbour_search_measures_it(name, by):
    contour = ROUNDED[name]
    grown = contour.grown(by)
    away, _ = tree(name).query(flat([*spread(grown, 800), *(e.start for e in grown.segments)]))
    tips = math.sqrt(2) if any(turn * by > 0 for turn in contour.corners) else 1.0
    assert away.min() > abs(by) - RIGHT
    assert away.max() < abs(by) * tips + RIGHT


@pytest.mark.parametrize("by", STEPS)
@pytest.mark.parametrize("name", [name for name in ROUNDED if name != "bay"])
def test_parallel_parts_the_plane_where_the_distance_is_reached(name, by):
    """Every one of 8,000 places strewn over it lies on the side that its distance says."""
    contour = ROUNDED[name]
    left, bottom, right, top = contour.bounds
    strewn = np.random.default_rng(SEED).uniform(
        (left - 60, bottom - 60), (right + 60, top + 60), (8_000, 2)
    )
    away, _ = tree(name).query(strewn)
    points = shapely.points(strewn)
    outside = away * np.where(shapely.contains(ring(contour), points), -1, 1)
    clear = np.abs(outside - by) > RIGHT
    within = shapely.contains(ring(contour.grown(by)), points)
    assert (within == (outside < by))[clear].all()


@pytest.mark.parametrize("by", [3.0, 12.0, 24.0, -3.0, -12.0, -40.0])
@pytest.mark.parametrize(
    "contour", [with_bay(60, 80, 0), tee(0), polygon(0, 300, 300 + 90j, 210 + 90j, 90 + 300j, 300j)]
)
def test_parallel_between_straight_lines_holds_what_geos_says(contour, by):
    """A mitre is exact in GEOS as long as its limit is not reached."""
    buffered = ring(contour).buffer(by, join_style="mitre", mitre_limit=2.0)
    assert contour.grown(by).area == pytest.approx(buffered.area, abs=1e-6)
    assert contour.grown(by).length == pytest.approx(buffered.length, abs=1e-6)


@pytest.mark.parametrize("by", [3.0, 12.0, 40.0])
@pytest.mark.parametrize("name", ["wavy", "waist", "traced", "tee", "star"])
def test_area_of_a_smooth_parallel_is_near_what_geos_says(name, by):
    """GEOS leaves out bends on the inner side that are slighter than 1 % of the distance."""
    buffered = ring(ROUNDED[name]).buffer(by, quad_segs=256)
    assert ROUNDED[name].grown(by).area == pytest.approx(buffered.area, rel=2e-5 * by)


@pytest.mark.parametrize("by", [3.0, 12.0, 40.0])
def test_ring_sector_by_the_schoolbook(by):
    """Its radii change by the allowance; each corner of a right angle takes a square of it.

    Grown, the band is 2 d wider; each end is moved out by d, from inner radius to outer.
    """
    grown = sector(150, 200, 2.0).grown(by)
    inner, outer = 150 - by, 200 + by
    band = (outer**2 - inner**2) / 2 * 2.0 + 2 * by * (50 + 2 * by)
    assert grown.area == pytest.approx(band, abs=1e-6)
    assert grown.length == pytest.approx(2.0 * (inner + outer) + 2 * (50 + 2 * by) + 4 * by)


def test_horseshoe_s_parallel_is_that_of_geos_until_its_bay_is_full():
    buffered = ring(horseshoe()).buffer(29.5, join_style="mitre", mitre_limit=2.0, quad_segs=256)
    assert horseshoe().grown(29.5).area == pytest.approx(buffered.area, rel=1e-5)
