"""Domes against handbook values, and gores put back on the dome by reckonings of others.

scipy integrates and mpmath finds the roots; no code of the package is used but to cut the gores.
"""

import cmath
import math

import mpmath
import numpy as np
import pytest
from scipy.integrate import quad

from patternmaker.geometry.domes import Dome, Meridian, over_crown, width_under
from patternmaker.geometry.gores import gore
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.oval import Oval

LEVELS = [0.1 * i for i in range(1, 11)]
CLOSES = 0.1  # mm


def test_ball_of_a_cap_125_wide_and_50_high_has_the_radius_of_the_handbook():
    """Machinery's Handbook, 31st ed., p. 91: printed 64; exactly 64.0625."""
    assert Meridian(62.5, 50).radius == 64.0625


def test_radius_of_a_segment_with_a_chord_of_16_and_a_height_of_6():
    """Machinery's Handbook, 31st ed., p. 79: r = (c^2 + 4 h^2) / 8h, printed 8 1/3."""
    assert Meridian(8, 6).radius == pytest.approx(8 + 1 / 3)


def test_arc_of_a_segment_with_a_chord_of_21_and_a_height_of_6():
    """A maths teaching page on circular sections: r 12.1875, arc 25.3083731."""
    assert Meridian(10.5, 6).radius == pytest.approx(12.1875)
    assert over_crown(21, 6) == pytest.approx(25.3083731)


def test_arc_over_a_shallow_crown_is_nearly_c_plus_8_h_squared_over_3_c():
    """The approximation of the handbooks: 503.333333 for c 500, h 25; exactly 503.326695."""
    assert over_crown(500, 25) == pytest.approx(503.326695, abs=1e-6)
    assert over_crown(500, 25) == pytest.approx(500 + 8 * 25**2 / (3 * 500), abs=0.01)


def test_width_under_an_arc_is_the_root_that_mpmath_finds():
    """c400 h40: arc over the crown 410.582764, by mpmath at 25 digits."""
    with mpmath.workdps(30):
        arc = mpmath.mpf("410.582764")

        def miss(c):
            return 2 * (c * c / 4 + 1600) / 80 * 2 * mpmath.atan(80 / c) - arc

        root = float(mpmath.findroot(miss, 390))
    assert width_under(410.582764, 40) == pytest.approx(root, abs=1e-9)
    assert root == pytest.approx(400, abs=1e-5)


@pytest.mark.parametrize(("width", "rise", "area"), [(125, 50, 20125.8279), (400, 40, 130690.254)])
def test_gores_cover_the_area_of_the_cap(width, rise, area):
    """A = pi (c^2 / 4 + h^2): Machinery's Handbook, 31st ed., p. 91.

    The projection that the gores come from keeps areas (Snyder, USGS Professional Paper 1395,
    p. 139); drawing their sides in takes off far less than the material shows.
    """
    dome = Dome.over(Circle(diameter=width).contour(), rise)
    each = gore(dome, 0, dome.seam.length / 12)
    parts = [part for side in (each.left, each.base, each.right) for part in side.segments]
    assert 12 * math.fsum(part.moment for part in parts) == pytest.approx(area, rel=0.003)
    assert math.pi * (width**2 / 4 + rise**2) == pytest.approx(area)


def flat_width(each, middle: float, bearing: complex, share: float) -> float:
    """Return how long a gore's level is, read off its flat outline.

    It is taken as the smooth curve about the crown through three places: on the left side and on
    the right at that share of their lengths, and on the line down the middle.
    """
    left = each.left.point_at(share * each.left.length) / bearing
    right = each.right.point_at((1 - share) * each.right.length) / bearing
    angles = [cmath.phase(left), 0.0, cmath.phase(right)]
    curve = np.polynomial.Polynomial.fit(angles, [abs(left), share * middle, abs(right)], 2)
    slope = curve.deriv()
    return float(quad(lambda a: math.hypot(curve(a), slope(a)), angles[0], angles[2])[0])


@pytest.mark.parametrize(("rise", "count"), [(40, 4), (40, 8), (90, 6), (150, 8), (200, 12)])
def test_gores_close_on_the_ball_that_they_were_cut_for(rise, count):
    """At every level they are together as wide as the parallel there: 2 pi R sin(t / R)."""
    width = 400
    dome = Dome.over(Circle(diameter=width).contour(), rise)
    ball = (width**2 / 4 + rise**2) / (2 * rise)
    whole = quad(lambda r: 1 / math.sqrt(1 - min(1.0, r / ball) ** 2), 0, width / 2)[0]
    each = gore(dome, 0, dome.seam.length / count)
    bearing = dome.bearing(dome.seam.length / count / 2)
    for share in LEVELS:
        parallel = math.tau * ball * math.sin(share * whole / ball)
        gap = flat_width(each, whole, bearing, share) - parallel / count
        assert abs(gap) < CLOSES
    assert each.left.length == pytest.approx(whole, abs=0.002)


@pytest.mark.parametrize("count", [8, 12])
def test_gores_close_on_the_dome_over_an_oval(count):
    """Each level measured on the surface itself, along 4,000 chords.

    Fewer gores close as well, but three places no longer tell how long a level of one is.
    """
    a, b, rise = 225.0, 175.0, 50.0
    dome = Dome.over(Oval(width=2 * a, depth=2 * b).contour(), rise)
    for i in range(count):
        ends = [dome.seam.length * (i + j) / count for j in (0, 1)]
        each, middle = gore(dome, *ends), sum(ends) / 2
        reach = abs(dome.seam.point_at(middle))
        ball = (reach**2 + rise**2) / (2 * rise)
        whole = 2 * ball * math.atan(rise / reach)
        first, last = (cmath.phase(dome.seam.point_at(end)) for end in ends)
        bearings = np.linspace(first, first + (last - first) % math.tau, 4001)
        for share in LEVELS:
            gap = flat_width(each, whole, dome.bearing(middle), share)
            gap -= level(a, b, rise, bearings, share)
            assert abs(gap) < CLOSES


def level(a: float, b: float, rise: float, bearings, share: float) -> float:
    """Return the length of a level on arcs from a crown to an ellipse."""
    reach = a * b / np.hypot(b * np.cos(bearings), a * np.sin(bearings))
    ball = (reach**2 + rise**2) / (2 * rise)
    turn = share * 2 * np.arctan(rise / reach)
    out, up = ball * np.sin(turn), ball * (np.cos(turn) - 1) + rise
    places = np.stack([out * np.cos(bearings), out * np.sin(bearings), up])
    return float(np.linalg.norm(np.diff(places), axis=0).sum())
