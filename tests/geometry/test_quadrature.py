"""Integrals known at every place, against closed forms."""

import math

import numpy as np
import pytest

from patternmaker.geometry.quadrature import Integral, evenly, legendre, length_of, nodes


def test_nodes_and_weights_are_gauss_s():
    """numpy.polynomial.legendre.leggauss; Abramowitz and Stegun, table 25.4."""
    places, weights = np.polynomial.legendre.leggauss(10)
    assert np.array(nodes()) == pytest.approx(np.stack([places, weights], axis=1), abs=1e-14)


def test_legendre_polynomials_are_those_of_the_tables():
    """P2 = (3 x^2 - 1) / 2, P3 = (5 x^3 - 3 x) / 2."""
    assert legendre(0.3, 3) == pytest.approx([1, 0.3, (0.27 - 1) / 2, (0.135 - 0.9) / 2])


@pytest.mark.parametrize("place", [0.0, 0.4, 1.0, 1.7, 3.0])
def test_integral_of_a_cosine_is_a_sine_at_every_place(place):
    integral = Integral.of(math.cos, evenly(0.0, 3.0, 3))
    assert integral.at(place) == pytest.approx(math.sin(place), abs=1e-13)
    assert integral.whole == pytest.approx(math.sin(3.0), abs=1e-14)


def test_polynomial_is_integrated_exactly_over_one_interval():
    integral = Integral.of(lambda x: 9 * x**8, [-1.0, 2.0])
    assert integral.at(1.5).real == pytest.approx(1.5**9 + 1)


def test_constant_has_one_term_and_an_even_integral():
    integral = Integral.of(lambda _: 2.5, [1.0, 2.0, 5.0])
    assert [len(terms) for terms in integral.terms] == [1, 1]
    assert [integral.at(place).real for place in (1.0, 1.5, 4.0)] == [0.0, 1.25, 7.5]


def test_integral_of_a_direction_is_a_place():
    """Round a quarter of a circle from 1 to 1j."""
    integral = Integral.of(lambda t: 1j * complex(math.cos(t), math.sin(t)), [0, math.pi / 2])
    assert 1 + integral.whole == pytest.approx(1j, abs=1e-14)


def test_length_of_a_parabola():
    """sqrt(1 + 4 x^2) from 0 to 1: sqrt(5) / 2 + asinh(2) / 4."""
    length = length_of(lambda x: math.hypot(1, 2 * x), evenly(0.0, 1.0, 8))
    assert length == pytest.approx(math.sqrt(5) / 2 + math.asinh(2) / 4, abs=1e-12)


def test_intervals_are_even_and_end_where_they_should():
    assert evenly(1.0, 2.0, 4) == [1.0, 1.25, 1.5, 1.75, 2.0]
