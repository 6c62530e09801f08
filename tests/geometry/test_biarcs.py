"""Curves followed by tangent arcs, measured against the curves."""

import cmath
import math
from collections.abc import Callable
from itertools import pairwise

import pytest

from patternmaker.geometry.biarcs import arc_between, biarc, fitted
from patternmaker.geometry.segments import Arc, Line


def ellipse(a: float, b: float) -> Callable[[float], tuple[complex, complex]]:
    def curve(t: float) -> tuple[complex, complex]:
        way = complex(-a * math.sin(t), b * math.cos(t))
        return complex(a * math.cos(t), b * math.sin(t)), way / abs(way)

    return curve


def wave(x: float) -> tuple[complex, complex]:
    """A sine: it bends both ways."""
    way = complex(1, math.cos(x / 20))
    return complex(x, 20 * math.sin(x / 20)), way / abs(way)


def test_arc_between_two_points_of_a_circle_is_that_circle():
    arc = arc_between(10, 1j, 10j)
    assert isinstance(arc, Arc)
    assert arc.centre == pytest.approx(0)
    assert arc.sweep == pytest.approx(math.pi / 2)


def test_arc_that_turns_right_has_a_negative_sweep():
    assert arc_between(10j, 1, 10).sweep == pytest.approx(-math.pi / 2)


def test_arc_straight_ahead_is_a_line():
    assert arc_between(0, 1, 10) == Line(0, 10)


@pytest.mark.parametrize(("height", "kind"), [(1e-6, Arc), (1e-9, Line)])
def test_arc_too_flat_to_be_told_from_its_chord_is_a_line(height, kind):
    assert isinstance(arc_between(0, 1, 10 + 1j * height), kind)


def test_curve_that_ends_in_the_very_point_where_it_began_is_followed_round():
    def circle(t: float) -> tuple[complex, complex]:
        way = cmath.rect(1, math.tau * (t % 1))
        return 50 * way, 1j * way

    assert sum(each.length for each in fitted(circle, 0, 1)) == pytest.approx(100 * math.pi)


@pytest.mark.parametrize(
    ("leave", "arrive"), [(1, 1), (1j, 1), (cmath.rect(1, 0.5), cmath.rect(1, -1)), (-1j, -1)]
)
def test_biarc_leaves_meets_and_arrives_smoothly(leave, arrive):
    one, two = biarc(0, leave, 100 + 30j, arrive)
    assert one.tangent() == pytest.approx(leave)
    assert two.tangent(two.length) == pytest.approx(arrive)
    assert one.end == pytest.approx(two.start)
    assert one.tangent(one.length) == pytest.approx(two.tangent())
    assert two.end == pytest.approx(100 + 30j)


@pytest.mark.parametrize(
    ("curve", "end"), [(ellipse(250, 180), math.tau), (ellipse(300, 20), math.pi), (wave, 300.0)]
)
def test_every_point_of_the_curve_lies_within_a_fifth_of_a_thousandth(curve, end):
    """The probes of the fitting stand at eighths; these stand elsewhere."""
    arcs = fitted(curve, 0.0, end)
    for i in range(1, 700):
        point = curve(end * i / 700)[0]
        assert min(each.distance(point) for each in arcs) < 0.00021


def test_arcs_follow_each_other_without_a_corner():
    for one, two in pairwise(fitted(wave, 0.0, 300.0)):
        assert abs(one.end - two.start) < 1e-9
        assert abs(cmath.phase(two.tangent() / one.tangent(one.length))) < 1e-7


def test_closer_takes_more_arcs():
    assert len(fitted(wave, 0, 300, close=1e-5)) > 2 * len(fitted(wave, 0, 300, close=0.01))


def test_curve_with_a_corner_is_a_fault():
    def corner(t: float) -> tuple[complex, complex]:
        return (complex(t, 0), 1) if t < 1 / 3 else (complex(1 / 3, t - 1 / 3), 1j)

    with pytest.raises(ValueError, match="not smooth"):
        fitted(corner, 0.0, 1.0)
