"""Traces against figures that were worked out elsewhere."""

import math

import numpy as np
import pytest
from scipy.special import ellipe

from patternmaker.tracing.sketch import Chain, Sketch
from patternmaker.tracing.trace import Wishes, traced
from tests.tracing.traces import Points, ellipse, off_place


def outline(points: Points):
    chain = Chain("seat", points=tuple(points.tolist()), closed=True)
    return traced(Sketch((chain,), 1.0), Wishes()).contour


@pytest.mark.parametrize("count", [500, 5000, 20_000])
def test_traced_oval_is_as_long_as_the_elliptic_integral(count):
    """4 a E(1 - b^2 / a^2) = 1359.84965003 for a = 250 and b = 180: mpmath, and scipy."""
    assert 4 * 250 * ellipe(1 - (180 / 250) ** 2) == pytest.approx(1359.84965003, abs=1e-8)
    contour = outline(ellipse(count))
    assert contour.length == pytest.approx(1359.84965003, abs=0.005)
    assert contour.area == pytest.approx(math.pi * 250 * 180, abs=1.0)


def test_oval_off_its_place_by_more_than_its_points_are_apart():
    """The same length; the points lie 0.014 mm apart, and up to 0.05 mm off in x and in y."""
    contour = outline(off_place(ellipse(100_000), 0.05))
    assert contour.length == pytest.approx(1359.84965003, abs=0.1)
    assert contour.area == pytest.approx(math.pi * 250 * 180, abs=5.0)


@pytest.mark.parametrize(
    ("power", "area", "length"),
    [(2.5, 190177.614, 1555.65975), (4, 208583.401, 1667.20620), (2, None, 1493.29011)],
)
def test_traced_superellipse(power, area, length):
    """Areas 4 a b G(1 + 1/n)^2 / G(1 + 2/n) and lengths for a = 250, b = 225: mpmath."""
    angle = np.arange(4000) * math.tau / 4000
    x, y = np.cos(angle), np.sin(angle)
    points = 250 * np.sign(x) * np.abs(x) ** (2 / power) + 225j * np.sign(y) * np.abs(y) ** (
        2 / power
    )
    contour = outline(points)
    assert contour.length == pytest.approx(length, abs=0.02)
    assert area is None or contour.area == pytest.approx(area, abs=3.0)
