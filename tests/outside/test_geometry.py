"""Geometry against published figures, and figures worked out elsewhere to 25 digits or more."""

import math

import mpmath
import pytest
from scipy.special import ellipe

from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.segments import Arc, Line
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from tests.contours import l_shape, polygon, ring

SEAT = RoundedRectangle(width=500, depth=450, corner=60).contour()


def ellipse(a: float, b: float) -> Contour:
    """Return an ellipse by tangent arcs."""

    def curve(t: float) -> tuple[complex, complex]:
        way = complex(-a * math.sin(t), b * math.cos(t))
        return complex(a * math.cos(t), b * math.sin(t)), way / abs(way)

    return Contour(fitted(curve, 0.0, math.tau))


@pytest.mark.parametrize(
    ("by", "length"), [(0, 1796.99111843), (12, 1872.38934212), (-12, 1721.59289474)]
)
def test_rounded_rectangle_and_its_parallels(by, length):
    """2 (W + D) - (8 - 2 pi) r, worked out with mpmath to 25 digits."""
    assert SEAT.grown(by).length == pytest.approx(length, abs=1e-8)


def test_area_of_a_rounded_rectangle():
    """W D - (4 - pi) r^2, worked out with mpmath to 25 digits."""
    assert SEAT.area == pytest.approx(221909.733553, abs=1e-6)


@pytest.mark.parametrize("by", [3.0, 12.0, 40.0])
def test_parallel_curve_of_a_convex_one(by):
    """P + 2 pi d, A + P d + pi d^2: J. Steiner; stated in course notes on parallel curves."""
    grown = SEAT.grown(by)
    assert grown.length == pytest.approx(SEAT.length + 2 * math.pi * by, abs=1e-9)
    area = SEAT.area + SEAT.length * by + math.pi * by**2
    assert grown.area == pytest.approx(area, abs=1e-6)


def test_parallel_of_a_sharp_rectangle_is_round_plus_its_mitres():
    """P + 2 pi d = 1875.39822369 for 500 x 400 and d = 12; a mitre adds (2 - pi / 2) d each."""
    grown = polygon(0, 500, 500 + 400j, 400j).grown(12)
    assert grown.length == pytest.approx(1875.39822369 + 4 * (2 - math.pi / 2) * 12, abs=1e-7)
    assert grown.area == pytest.approx(222052.389342 + (4 - math.pi) * 144, abs=1e-5)


def test_inner_corner_takes_its_share():
    """d (phi - 2 tan(phi / 2)) = -5.15044408 for one inner right angle, d = 12; shapely agrees."""
    contour = l_shape()
    round_everywhere = contour.length + 2 * math.pi * 12 - 5.15044408
    mitres = 5 * (2 - math.pi / 2) * 12
    assert contour.grown(12).length == pytest.approx(round_everywhere + mitres, abs=1e-7)


@pytest.mark.parametrize(
    ("a", "b", "length"),
    [
        (3.5, 2.1, 17.8688992044),  # printed in the manual of scipy.special.ellipe
        (100, 75, 552.587304018),  # mpmath
        (250, 180, 1359.84965003),  # mpmath
        (250, 225, 1493.29011),  # mpmath, as the superellipse of power 2
    ],
)
def test_ellipse_by_arcs_is_as_long_as_the_elliptic_integral(a, b, length):
    assert 4 * a * ellipe(1 - (b / a) ** 2) == pytest.approx(length, rel=1e-8)
    assert ellipse(a, b).length == pytest.approx(length, abs=0.001)
    assert ellipse(a, b).area == pytest.approx(math.pi * a * b, abs=0.001 * length)


def test_parallel_of_an_ellipse():
    """1359.84965003 + 24 pi = 1435.24787372: worked out with mpmath."""
    assert ellipse(250, 180).grown(12).length == pytest.approx(1435.24787372, abs=0.001)


def test_elliptic_integral_by_a_second_library():
    with mpmath.workdps(30):
        length = 4 * 250 * mpmath.ellipe(1 - mpmath.mpf(180) ** 2 / mpmath.mpf(250) ** 2)
    assert float(length) == pytest.approx(1359.84965003, abs=1e-8)


@pytest.mark.parametrize(
    ("chord", "height", "radius", "degrees", "length", "area"),
    [
        # Machinery's Handbook, 31st edition, pp. 79 and 50-51 (printed 8 1/3; 14.06, 18.01)
        (16, 6, 8.33333333, None, None, None),
        (13.2664992, 2, 12, None, 14.0564530, 18.0062225),
        # a teaching page on circular sections
        (21, 6, 12.1875, 118.979525, 25.3083731, 89.2541484),
        # worked out with mpmath
        (500, 25, 1262.5, None, 503.326695, None),
    ],
)
def test_segment_of_a_circle(chord, height, radius, degrees, length, area):
    r = (chord**2 + 4 * height**2) / (8 * height)
    half = math.asin(chord / 2 / r)
    arc = Arc(0, r * complex(math.cos(-half), math.sin(-half)), 2 * half)
    segment = Contour((arc, Line(arc.end, arc.start)))
    assert arc.radius == pytest.approx(radius, rel=1e-8)
    for found, printed in (
        (math.degrees(arc.sweep), degrees), (arc.length, length), (segment.area, area),
        (segment.width, height), (segment.height, chord),
    ):  # fmt: skip
        assert printed is None or found == pytest.approx(printed, rel=1e-8)


@pytest.mark.parametrize(
    ("radius", "tolerance", "chords"), [(300, 0.05, 173), (50, 0.05, 71)]
)  # fmt: skip
def test_chords_of_a_circle_by_tolerance(radius, tolerance, chords):
    """The step is 2 acos(1 - t / R), derived by hand."""
    assert len(list(Arc(0, radius, math.tau).chords(tolerance))) == chords


@pytest.mark.parametrize("by", [12.0, -12.0])
@pytest.mark.parametrize("contour", [SEAT, ellipse(250, 180)])
def test_smooth_parallel_as_shapely_buffers_it(contour, by):
    """GEOS with 512 segments a quadrant; it was measured 0.0001 mm short at 256."""
    buffered = ring(contour, 1e-5).buffer(by, quad_segs=512)
    grown = contour.grown(by)
    assert grown.length == pytest.approx(buffered.length, abs=0.01)
    assert grown.area == pytest.approx(buffered.area, abs=1.0)


@pytest.mark.parametrize("by", [12.0, 60.0, -12.0, -70.0])
def test_mitred_parallel_as_shapely_buffers_it(by):
    """Between straight lines GEOS is exact."""
    buffered = ring(l_shape()).buffer(by, join_style="mitre", mitre_limit=2.0)
    assert l_shape().grown(by).length == pytest.approx(buffered.length, abs=1e-6)
    assert l_shape().grown(by).area == pytest.approx(buffered.area, abs=1e-6)
