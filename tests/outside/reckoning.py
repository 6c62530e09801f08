"""Length and area of outlines by other means than the package's: none of its code is used here."""

import cmath
import itertools
import math
from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

import numpy as np
from scipy.integrate import quad
from scipy.interpolate import CubicHermiteSpline
from scipy.optimize import brentq


class Measured(NamedTuple):
    """A length, and an area."""

    length: float
    area: float


class Stretch(NamedTuple):
    """Part of an edge: its point and its speed at a parameter, and where that begins and ends."""

    point: Callable[[float], complex]
    speed: Callable[[float], complex]
    begin: float
    end: float


def arc(centre: complex, radius: float, begin: float, end: float) -> Stretch:
    """Return an arc from one angle to another, in radians."""
    return Stretch(
        lambda t: centre + cmath.rect(radius, t), lambda t: 1j * cmath.rect(radius, t), begin, end
    )


def line(begin: complex, end: complex) -> Stretch:
    """Return a straight stretch."""
    return Stretch(lambda t: begin + t * (end - begin), lambda t: end - begin, 0.0, 1.0)


def quadrature(stretches: Iterable[Stretch]) -> Measured:
    """Return the length of stretches and the area that they sweep about the origin.

    QUADPACK's adaptive quadrature (scipy.integrate.quad); the area by Green's theorem.
    """
    length = area = 0.0
    for point, speed, begin, end in stretches:
        bounds = {"epsabs": 1e-9, "epsrel": 1e-11, "limit": 200}
        sign = math.copysign(1.0, end - begin)
        length += sign * quad(lambda t, v=speed: abs(v(t)), begin, end, **bounds)[0]
        area += quad(
            lambda t, z=point, v=speed: (z(t).conjugate() * v(t)).imag / 2, begin, end, **bounds
        )[0]
    return Measured(length, area)


def both_sides(*left_half: Stretch) -> Measured:
    """Return the measures of an outline that is alike left and right from those of its left half.

    The half runs from the middle of the back to the middle of the front, both on x = 0.
    """
    length, area = quadrature(left_half)
    return Measured(2 * length, 2 * area)


def polygon(points: Sequence[complex], radii: Sequence[float]) -> Measured:
    """Return the measures of a polygon, anticlockwise, its corners rounded.

    Shoelace formula; a corner that turns by v gives up 2 r tan(v / 2) - r v of the length, and
    r^2 (tan(v / 2) - v / 2) of the area, which an inner corner gains.
    """
    length = area = 0.0
    ring = list(points)
    for i, (here, radius) in enumerate(zip(ring, radii, strict=True)):
        before, after = ring[i - 1], ring[(i + 1) % len(ring)]
        turn = cmath.phase((after - here) / (here - before))
        v = abs(turn)
        length += abs(after - here) - radius * (2 * math.tan(v / 2) - v)
        area += (here.conjugate() * after).imag / 2
        area -= math.copysign(radius**2 * (math.tan(v / 2) - v / 2), turn)
    return Measured(length, area)


def steffen(places: Sequence[float], values: Sequence[float]) -> CubicHermiteSpline:
    """Return the monotone cubics of M. Steffen, Astronomy and Astrophysics 239 (1990), 443.

    His equations 8, 11, 24, 25 and 26 for the slopes; scipy's Hermite cubics for the curve.
    """
    h = np.diff(places)
    s = np.diff(values) / h
    p = (s[:-1] * h[1:] + s[1:] * h[:-1]) / (h[:-1] + h[1:])
    least = np.minimum(np.minimum(abs(s[:-1]), abs(s[1:])), abs(p) / 2)
    inner = (np.sign(s[:-1]) + np.sign(s[1:])) * least
    return CubicHermiteSpline(
        places, values, [_end(s[0], s[1], h[0], h[1]), *inner, _end(s[-1], s[-2], h[-1], h[-2])]
    )


def _end(s: float, after: float, h: float, next_h: float) -> float:
    p = s * (1 + h / (h + next_h)) - after * h / (h + next_h)
    if p * s <= 0:
        return 0.0
    return 2 * s if abs(p) > 2 * abs(s) else p


def table(places: Sequence[float], widths: Sequence[float], back: float, front: float) -> Measured:
    """Return the measures of a table of widths with corners of two radii behind and in front.

    A corner's middle lies its radius from the edge across and from the side: brentq finds where.
    """
    curve = steffen(places, [width / 2 for width in widths])
    slope, depth = curve.derivative(), places[-1]

    def middle(at: float, radius: float) -> complex:
        return side(at) + 1j * radius * down(at) / abs(down(at))

    def side(at: float) -> complex:
        return complex(-curve(at), -at)

    def down(at: float) -> complex:
        return complex(-slope(at), -1)

    begin = brentq(lambda at: middle(at, back).imag + back, 0, depth / 3, xtol=1e-13)
    end = brentq(lambda at: middle(at, front).imag + depth - front, depth * 0.7, depth, xtol=1e-13)
    upper, lower = middle(begin, back), middle(end, front)
    knots = [begin, *(at for at in places if begin < at < end), end]
    return both_sides(
        line(0, complex(upper.real, 0)),
        arc(upper, back, math.pi / 2, cmath.phase(side(begin) - upper) % math.tau),
        *(Stretch(side, down, *run) for run in itertools.pairwise(knots)),
        arc(lower, front, cmath.phase(side(end) - lower) % math.tau, 1.5 * math.pi),
        line(complex(lower.real, -depth), -1j * depth),
    )
