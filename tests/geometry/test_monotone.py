"""Steffen's curve goes through the values and never past them."""

import numpy as np
import pytest

from patternmaker.geometry.monotone import Monotone
from tests.outside.reckoning import steffen

TABLES = [
    ((0, 90, 200, 300, 370), (300, 380, 390, 350, 250)),
    ((0, 10, 20, 30, 40), (0, 0, 10, 10, 10)),  # level, a step, level
    ((0, 1, 50, 60), (0, 5, 6, 100)),  # slopes that must be held back
    ((0, 30, 100), (100, 90, 95)),
    ((0, 30, 100), (100, 50, 95)),  # the parabola through its ends would turn, and be too steep
]


@pytest.mark.parametrize(("places", "values"), TABLES)
def test_curve_goes_through_its_values(places, values):
    curve = Monotone(places, values)
    assert [curve.at(place)[0] for place in places] == pytest.approx(values)


@pytest.mark.parametrize(("places", "values"), TABLES)
def test_curve_is_steffen_s_by_his_own_formulas_and_scipy_s_cubics(places, values):
    curve, other = Monotone(places, values), steffen(places, values)
    for place in np.linspace(places[0], places[-1], 201):
        found = curve.at(place)
        assert found == pytest.approx([float(other(place, n)) for n in (0, 1)], abs=1e-9)


@pytest.mark.parametrize(("places", "values"), TABLES)
def test_curve_rises_and_falls_only_where_its_values_do(places, values):
    curve = Monotone(places, values)
    for index, secant in enumerate(curve.secants):
        slopes = [curve.on(index, curve.steps[index] * i / 50)[1] for i in range(51)]
        assert min(slope * np.sign(secant) for slope in slopes) >= -1e-12
        assert secant or not any(slopes)


def test_two_values_are_joined_by_a_straight_line():
    assert Monotone((0, 10), (5, 25)).at(2.5) == (10, 2)


def test_curve_is_level_at_its_crest():
    assert Monotone((0, 10, 20), (0, 7, 3)).slopes[1] == 0


def test_values_of_a_parabola_that_rises_throughout_are_met_by_it():
    """Its own slopes are well within Steffen's limits."""
    places = (1.0, 2.0, 3.0, 4.0)
    curve = Monotone(places, [place**2 for place in places])
    assert curve.slopes == pytest.approx([2, 4, 6, 8])
    assert curve.at(2.5) == pytest.approx((6.25, 5))
