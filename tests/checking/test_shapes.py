"""Distances of many points at once, against those of the segments one by one."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternmaker.checking.shapes import Shape
from patternmaker.geometry.contour import Path
from patternmaker.geometry.segments import Arc, Line
from patternmaker.job import load_job
from tests.paper.samples import SAMPLES

PLACES = st.complex_numbers(max_magnitude=500, allow_nan=False, allow_infinity=False)
CHAIN = Path((
    Line(0j, 100 + 0j), Arc(100 + 50j, 100 + 0j, math.pi), Arc(100 + 150j, 100 + 100j, -2.0),
))  # fmt: skip


@given(st.lists(PLACES, min_size=1, max_size=20))
def test_distance_is_that_of_the_nearest_segment(points):
    shape = Shape.of(CHAIN)
    true = [min(each.distance(point) for each in CHAIN.segments) for point in points]
    assert shape.nearest(np.array(points)) == pytest.approx(true, abs=1e-9)
    alongs = np.linspace(0, 1, len(points))
    assert shape.distances(np.array(points), alongs) == pytest.approx(true, abs=1e-9)


def test_points_of_a_contour_of_many_arcs_lie_on_it():
    job = load_job(SAMPLES / "traced-seats.toml")
    contour = job.seats[0].outline.contour()
    shape = Shape.of(contour)
    shares = np.linspace(0, 1, 500, endpoint=False)
    points = np.array([contour.point_at(share * contour.length) for share in shares])
    assert shape.distances(points, shares).max() < 1e-9
    assert shape.length == pytest.approx(contour.length)
    assert all(abs(shape.point(s) - p) < 1e-6 for s, p in zip(shares, points, strict=True))
