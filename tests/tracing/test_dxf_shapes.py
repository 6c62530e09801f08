"""What DXF entities draw: against formulas, and splines against ezdxf and svgpathtools."""

import math
import re
from typing import Any

import numpy as np
import pytest
import svgpathtools
from ezdxf.math import BSpline

from patternmaker.geometry.segments import Arc, Line
from patternmaker.tracing.sketch import Chain, read_sketch
from tests.tracing.drawings import apart, dxf, only, told

SEAT = [(0, 0, 0), (400, 0, 0.3), (400, 300, 0), (200, 320, -0.1), (0, 300, 1)]
ROUNDED = [
    (60, 0, 0), (440, 0, math.tan(math.pi / 8)), (500, 60, 0), (500, 390, math.tan(math.pi / 8)),
    (440, 450, 0), (60, 450, math.tan(math.pi / 8)), (0, 390, 0), (0, 60, math.tan(math.pi / 8)),
]  # fmt: skip


def chain(fill: Any) -> Chain:
    return only(read_sketch("seat.dxf", dxf(fill)))


def bulged(points: Any, closed: bool = True) -> Chain:
    return chain(lambda space: space.add_lwpolyline(points, format="xyb", close=closed))


def test_rounded_polyline_is_as_long_as_its_formula_says():
    """2(W+H) - (8-2pi)r: 500 x 450 r 60, worked out with mpmath."""
    seat = bulged(ROUNDED)
    assert seat.closed
    assert not seat.drawn
    assert seat.path.length == pytest.approx(1796.99111843, abs=1e-7)
    assert [type(each) for each in seat.segments] == [Line, Arc] * 4


def test_bulge_of_1_is_half_round_to_the_right_of_its_chord():
    """DXF reference, VERTEX, code 42: the tangent of a quarter of the angle; left is positive."""
    (arc,) = bulged([(0, 0, 1), (100, 0, 0)], closed=False).segments
    assert isinstance(arc, Arc)
    assert arc.centre == pytest.approx(50)
    assert arc.sweep == pytest.approx(math.pi)
    assert arc.point(arc.length / 2) == pytest.approx(50 - 50j)
    assert bulged([(0, 0, -1), (100, 0, 0)], closed=False).path.bounds[3] == pytest.approx(50)


@pytest.mark.parametrize("bulge", [1e-12, 1e-7, 0.01, 0.4, 1, 5, 1000, -1e-7, -0.4, -5])
def test_bulge_tells_the_height_of_its_arc(bulge):
    """The height of an arc over its chord is half the chord times the bulge."""
    path = bulged([(0, 0, bulge), (100, 0, 0)], closed=False).path
    assert path.point_at(path.length / 2).imag == pytest.approx(-50 * bulge, rel=1e-6, abs=1e-9)
    assert path.segments[-1].end == pytest.approx(100, abs=1e-9)


@pytest.mark.parametrize("version", ["R12", "R2000", "R2018"])
@pytest.mark.parametrize("fmt", ["asc", "bin"])
def test_old_polyline_is_the_same_as_the_new_one(version, fmt):
    content = dxf(
        lambda space: space.add_polyline2d(SEAT, format="xyb", close=True), fmt=fmt, version=version
    )
    assert only(read_sketch("a.dxf", content)).segments == bulged(SEAT).segments


def test_polyline_of_many_straight_lines_is_a_string_of_points():
    spots = [(10 * i, i * i % 7) for i in range(30)]
    seat = chain(lambda space: space.add_lwpolyline(spots, close=True))
    assert seat.drawn
    assert seat.closed
    assert seat.points == tuple(complex(*each) for each in spots)


def test_polyline_of_many_lines_with_one_bulge_is_no_string():
    assert not bulged([(10 * i, i * i % 7, 0.1 * (i == 5)) for i in range(30)]).drawn


def test_polyline_in_space_is_read_if_it_is_flat():
    flat = [(0, 0, 7), (10, 0, 7), (10, 10, 7)]
    assert len(chain(lambda space: space.add_polyline3d(flat, close=True)).segments) == 3


def test_curve_points_of_a_smoothed_polyline_count_and_its_frame_does_not():
    """VERTEX, code 70: 16 marks a control point, 8 a point of the curve."""

    def fill(space):
        line = space.add_polyline2d([(0, 0), (50, 90), (100, 0)])
        line.dxf.flags = 4
        for vertex, flag in zip(line.vertices, (8, 16, 8), strict=True):
            vertex.dxf.flags = flag

    assert chain(fill).segments == (Line(0, 100),)


def test_line_arc_and_circle():
    def fill(space):
        space.add_line((1, 2), (3, 4))
        space.add_arc((50, 60), 40, 300, 30)
        space.add_circle((200, 150), 160)

    line, arc, circle = read_sketch("a.dxf", dxf(fill)).chains
    assert line.segments == (Line(1 + 2j, 3 + 4j),)
    (round_one,) = arc.segments
    assert round_one.sweep == pytest.approx(math.pi / 2)
    assert round_one.start == pytest.approx(50 + 60j + 40 * np.exp(-1j * math.pi / 3))
    assert [line.closed, arc.closed, circle.closed] == [False, False, True]
    assert circle.path.length == pytest.approx(320 * math.pi, abs=1e-9)


def test_arc_that_ends_where_it_begins_is_a_whole_circle():
    assert chain(lambda space: space.add_arc((0, 0), 5, 0, 360)).closed


def test_ellipse_is_followed():
    seat = chain(lambda space: space.add_ellipse((300, 200), major_axis=(0, 250), ratio=0.72))
    assert seat.closed
    assert seat.path.length == pytest.approx(1359.84965003, abs=0.001)  # by mpmath: 250, 180
    assert seat.path.bounds == pytest.approx((120, -50, 480, 450), abs=1e-6)


def test_part_of_an_ellipse():
    part = chain(lambda space: space.add_ellipse((0, 0), (100, 30), 0.5, 1.0, 2.5))
    t = np.linspace(1.0, 2.5, 2000)
    axis = 100 + 30j
    assert apart(part.path, axis * np.cos(t) + 0.5j * axis * np.sin(t)) < 0.0005
    assert not part.closed


def test_ellipse_of_ratio_1_is_a_circle():
    seat = chain(lambda space: space.add_ellipse((0, 0), (30, 40), 1))
    assert {type(each) for each in seat.segments} == {Arc}


FOUR = [(0, 0), (30, 90), (120, 80), (150, 10)]
MANY = [*FOUR, (190, -40), (260, 30), (200, 120)]


def sampled(curve: BSpline, low: float = 0.0, high: float | None = None) -> np.ndarray:
    high = high or curve.max_t
    knots = [t for t in curve.knots() if low <= t <= high]
    places = np.unique([*np.linspace(low, high, 3000), *knots])
    points = [curve.point(t) for t in places]
    return np.array([complex(p.x, p.y) for p in points])


@pytest.mark.parametrize("degree", [1, 2, 3, 5])
@pytest.mark.parametrize("weights", [None, [1, 2, 0.5, 1, 3, 1, 1]])
def test_spline_is_followed(degree, weights):
    def fill(space):
        if weights:
            space.add_rational_spline(MANY, weights, degree)
        else:
            space.add_open_spline(MANY, degree)

    reference = sampled(BSpline(MANY, degree + 1, weights=weights))
    assert apart(chain(fill).path, reference) < 0.0005


def test_cubic_spline_of_four_points_is_a_bezier():
    bezier = svgpathtools.CubicBezier(*(complex(*each) for each in FOUR))
    points = np.array([bezier.point(t) for t in np.linspace(0, 1, 3000)])
    assert apart(chain(lambda space: space.add_open_spline(FOUR)).path, points) < 0.0005


def test_rational_spline_can_be_a_quarter_of_a_circle():
    """The textbook case: weights 1, root of a half, 1."""

    def fill(space):
        space.add_rational_spline([(100, 0), (100, 100), (0, 100)], [1, math.sqrt(0.5), 1], 2)

    path = chain(fill).path
    assert path.length == pytest.approx(50 * math.pi, abs=1e-5)
    assert all(abs(abs(z) - 100) < 0.0003 for z in path.chords(1e-5))


@pytest.mark.parametrize(
    "knots", [[0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], [0, 0, 1, 3, 4, 5, 8, 9, 9, 12, 13]]
)
def test_spline_without_full_knots_at_its_ends_begins_inside(knots):
    """It runs from the knot of its degree to the one as far from the end."""
    reference = sampled(BSpline(MANY, 4, knots=knots), knots[3], knots[7])
    path = chain(lambda space: _knotted(space, MANY, knots)).path
    assert apart(path, reference) < 0.0005


def _knotted(space: Any, points: Any, knots: Any, degree: int = 3) -> Any:
    spline = space.add_spline(degree=degree)
    spline.control_points, spline.knots = [(x, y, 0) for x, y in points], knots
    return spline


def test_knot_as_full_as_the_degree_may_be_a_corner():
    knots = [0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 2]
    path = chain(lambda space: _knotted(space, MANY, knots)).path
    turns = [abs(np.angle(b.tangent() / a.tangent(a.length)))
             for a, b in zip(path.segments, path.segments[1:], strict=False)]  # fmt: skip
    assert sum(turn > 1e-7 for turn in turns) == 1
    assert apart(path, sampled(BSpline(MANY, 4, knots=knots))) < 0.0005


def test_closed_spline_ends_where_it_begins():
    ring = [(100, 0), (60, 90), (-70, 80), (-90, -20), (0, -100)]

    def fill(space):
        _knotted(space, [*ring, *ring[:3]], list(range(12))).closed = True

    seat = chain(fill)
    assert seat.closed
    assert seat.segments[-1].end == pytest.approx(seat.segments[0].start, abs=1e-9)


def test_spline_through_points_passes_them():
    seat = chain(lambda space: space.add_spline(MANY))
    assert all(min(each.distance(complex(*z)) for each in seat.segments) < 0.001 for z in MANY)


def test_drawing_seen_from_below_is_turned_over():
    """Extrusion 0, 0, -1: x runs the other way (DXF reference, arbitrary axis algorithm)."""

    def fill(space):
        below = {"extrusion": (0, 0, -1)}
        space.add_circle((100, 50), 20, dxfattribs=below)
        space.add_arc((100, 50), 20, 0, 90, dxfattribs=below)
        space.add_lwpolyline(SEAT, format="xyb", close=True, dxfattribs=below)
        space.add_ellipse((100, 50), (30, 0), 0.5, 0, math.pi / 2, dxfattribs=below)

    circle, arc, seat, part = read_sketch("a.dxf", dxf(fill)).chains
    assert circle.path.bounds == pytest.approx((-120, 30, -80, 70))
    assert (arc.segments[0].start, arc.segments[0].end) == pytest.approx((-120 + 50j, -100 + 70j))
    assert seat.path.length == pytest.approx(bulged(SEAT).path.length)
    assert seat.path.bounds[0] == pytest.approx(-bulged(SEAT).path.bounds[2])
    assert (part.segments[0].start, part.segments[-1].end) == pytest.approx((130 + 50j, 100 + 35j))


@pytest.mark.parametrize(
    ("fill", "what"),
    [
        (lambda s: s.add_line((0, 0, 0), (1, 1, 1)), "LINE"),
        (lambda s: s.add_circle((0, 0), 5, dxfattribs={"extrusion": (0, 1, 1)}), "CIRCLE"),
        (lambda s: s.add_arc((0, 0), 5, 0, 9, dxfattribs={"extrusion": (1, 0, 0)}), "ARC"),
        (lambda s: s.add_ellipse((0, 0), (5, 0, 5), 0.5), "ELLIPSE"),
        (lambda s: s.add_polyline3d([(0, 0, 0), (9, 0, 0), (9, 9, 9)]), "POLYLINE"),
        (lambda s: s.add_open_spline([(0, 0, 0), (9, 0, 0), (9, 9, 9), (0, 9, 0)]), "SPLINE"),
        (lambda s: s.add_lwpolyline(MANY, dxfattribs={"extrusion": (0, 0.1, 1)}), "LWPOLYLINE"),
    ],
)
def test_what_is_not_flat_is_refused_with_its_handle(fill, what):
    message = told("a.dxf", dxf(fill))
    assert message.startswith(f"holds a thing that is not flat: 0 {what} ")
    assert message.endswith("; draw it anew in the plane")


@pytest.mark.parametrize(
    ("knots", "degree"),
    [([0, 0, 1, 1], 3), (list(range(11, 0, -1)), 3), ([0] * 27, 19), ([1] * 11, 3)],
)  # fmt: skip
def test_broken_spline_is_refused_with_its_handle(knots, degree):
    message = told("a.dxf", dxf(lambda space: _knotted(space, MANY, knots, degree)))
    assert message.startswith("holds a thing that is broken: 0 SPLINE ")


def test_spline_without_knots_has_them_one_apart():
    """SPLINE, code 40: a knot."""
    before, spline, after = dxf(lambda s: s.add_open_spline(MANY)).partition(b"AcDbSpline")
    content = before + spline + re.sub(rb" 40\n.*\n", b"", after)
    assert apart(only(read_sketch("a.dxf", content)).path, sampled(BSpline(MANY, 4))) < 0.0005


def test_bulge_beyond_all_numbers_is_refused():
    content = dxf(lambda space: space.add_lwpolyline([(0, 0, 1e200), (1e-9, 0, 0)], format="xyb"))
    assert told("a.dxf", content).startswith("holds a point farther out than ")


def test_spline_with_a_gap_in_it_is_refused():
    def fill(space):
        _knotted(space, [*MANY, (0, 50)], [0] * 4 + [1] * 4 + [2] * 4)

    assert "is broken: 0 SPLINE" in told("a.dxf", dxf(fill))


def test_spline_that_turns_on_the_spot_too_often_is_refused():
    """A Chebyshev polynomial of degree 9 goes to and fro eight times; these are its handles."""
    handles = [(-1) ** i * math.comb(18, 2 * i) / math.comb(9, i) for i in range(10)]

    def fill(space):
        space.add_open_spline([(each, 0) for each in handles], degree=9)

    assert told("a.dxf", dxf(fill)).startswith("holds a curve that can't be followed, in 0 ")


def test_weight_below_nothing_is_refused():
    content = dxf(lambda space: space.add_rational_spline(FOUR, [1, -1, 1, 1]))
    assert "is broken: 0 SPLINE" in told("a.dxf", content)
