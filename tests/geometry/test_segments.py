"""Lines and arcs, against what school geometry says of them."""

import cmath
import math
from itertools import pairwise

import pytest

from patternmaker.geometry.segments import Arc, Line, cross, dot, turned

LINE = Line(1 + 2j, 4 + 6j)  # 3-4-5
QUARTER = Arc(0, 10, math.pi / 2)
CLOCKWISE = Arc(0, 10j, -math.pi / 2)
BEYOND_HALF = Arc(5 + 5j, 15 + 5j, 1.5 * math.pi)


@pytest.mark.parametrize("quarters", [-2, -1, 1, 2])
def test_quarter_turns_are_exact(quarters):
    assert turned(quarters * math.pi / 2) == 1j**quarters


def test_other_turns_are_directions():
    assert turned(math.pi / 3) == pytest.approx(0.5 + math.sqrt(0.75) * 1j)


def test_left_is_positive():
    assert (cross(1, 1j), cross(1j, 1), dot(1 + 2j, 3 + 4j)) == (1, -1, 11)


def test_line_is_as_long_as_pythagoras_says():
    assert (LINE.length, LINE.sweep, LINE.bounds) == (5.0, 0.0, (1.0, 2.0, 4.0, 6.0))


def test_line_parallel_lies_to_the_right():
    assert Line(0, 10).grown(2) == Line(-2j, 10 - 2j)


def test_line_run_back_has_the_same_box():
    assert LINE.reversed().bounds == LINE.bounds


@pytest.mark.parametrize(
    ("point", "distance", "along"), [(5 + 3j, 3, 5), (-3 + 4j, 5, 0), (14 - 3j, 5, 10)]
)
def test_line_distance_is_to_its_nearest_point(point, distance, along):
    line = Line(0, 10)
    assert (line.distance(point), line.along(point)) == (distance, along)


def test_line_of_no_length_is_as_far_as_its_place():
    assert Line(3 + 4j, 3 + 4j).distance(0) == 5


def test_line_turned_and_moved():
    assert Line(0, 10).mapped(1j, 5) == Line(5, 5 + 10j)


def test_line_cut_keeps_its_direction():
    assert LINE.cut(1, 4).length == pytest.approx(3)
    assert LINE.cut(1, 4).tangent() == pytest.approx(0.6 + 0.8j)


def test_line_has_one_chord():
    assert list(LINE.chords(0.1)) == [LINE.start]


@pytest.mark.parametrize(
    ("arc", "end", "leaves", "arrives"),
    [(QUARTER, 10j, 1j, -1), (CLOCKWISE, 10, 1, -1j), (BEYOND_HALF, 5 - 5j, 1j, 1)],
)
def test_arc_leaves_and_arrives_square_to_its_radius(arc, end, leaves, arrives):
    assert arc.end == pytest.approx(end)
    assert arc.tangent() == pytest.approx(leaves)
    assert arc.tangent(arc.length) == pytest.approx(arrives)


def test_arc_length_is_radius_times_angle():
    assert BEYOND_HALF.length == pytest.approx(15 * math.pi)


@pytest.mark.parametrize(
    ("arc", "box"),
    [(QUARTER, (0, 0, 10, 10)), (CLOCKWISE, (0, 0, 10, 10)), (BEYOND_HALF, (-5, -5, 15, 15)),
     (Arc(0, 10 * turned(0.1), 0.2), (10 * math.cos(0.3), 10 * math.sin(0.1),
                                      10 * math.cos(0.1), 10 * math.sin(0.3)))],
)  # fmt: skip
def test_arc_box_reaches_the_outermost_points_that_it_passes(arc, box):
    assert arc.bounds == pytest.approx(box, abs=1e-12)


def test_bulge_of_a_half_turn_is_one():
    """DXF reference, VERTEX, group code 42: tangent of a quarter of the included angle."""
    assert Arc(0, 1, math.pi).bulge == pytest.approx(1)
    assert QUARTER.bulge == pytest.approx(math.tan(math.pi / 8))


def test_moment_of_an_arc_is_that_of_its_sector_when_centred():
    assert QUARTER.moment == pytest.approx(25 * math.pi)
    assert CLOCKWISE.moment == pytest.approx(-25 * math.pi)


@pytest.mark.parametrize(
    ("arc", "radius"), [(QUARTER, 12), (CLOCKWISE, 8), (BEYOND_HALF, 12)]
)  # fmt: skip
def test_arc_parallel_is_concentric(arc, radius):
    grown = arc.grown(2)
    assert (grown.centre, grown.sweep) == (arc.centre, arc.sweep)
    assert grown.radius == pytest.approx(radius)


def test_arc_past_its_centre_runs_backwards_on_the_far_side():
    loop = QUARTER.grown(-13)
    assert loop.start == pytest.approx(-3)
    assert loop.tangent() == pytest.approx(-QUARTER.tangent())


def test_arc_cut_and_reversed():
    cut = BEYOND_HALF.cut(5 * math.pi, 10 * math.pi)
    assert [cut.start, cut.end] == pytest.approx([5 + 15j, -5 + 5j])
    assert cut.reversed().start == pytest.approx(cut.end)
    assert cut.reversed().end == pytest.approx(cut.start)


def test_arc_turned_scaled_and_moved():
    moved = QUARTER.mapped(2j, 1)
    assert [moved.start, moved.end] == pytest.approx([1 + 20j, -19])


@pytest.mark.parametrize(
    ("point", "distance", "along"),
    [
        (20 + 20j, math.hypot(20, 20) - 10, 2.5 * math.pi), (1 + 1j, 10 - math.sqrt(2),
        2.5 * math.pi), (10 - 3j, 3, 0), (-3 + 10j, 3, 5 * math.pi), (0, 10, 0),
        (10 - 1e-8j, 1e-8, 0), (-1e-8 + 10j, 1e-8, 5 * math.pi),
    ],
)  # fmt: skip
def test_arc_distance_is_to_its_nearest_point(point, distance, along):
    assert QUARTER.distance(point) == pytest.approx(distance)
    assert QUARTER.along(point) == pytest.approx(along, abs=1e-9)


def test_nearly_full_turn_faces_all_but_its_gap():
    arc = Arc(0, 100, 2 * math.pi - 0.01)
    assert not arc.faces(turned(-0.005))
    assert all(arc.faces(turned(angle)) for angle in (0, 1, 3, -1, -0.0101))
    assert arc.along(100 * turned(-0.02)) == pytest.approx(100 * (2 * math.pi - 0.02))
    assert arc.along(100 * turned(-0.002)) == 0.0


def test_flat_arc_ends_where_its_chord_ends():
    """An arc of 100 mm that turns by 1e-8 has its centre ten thousand kilometres away."""
    radius = 100 / 1e-8
    arc = Arc(1j * radius + 7, 7, 1e-8)
    assert abs(arc.end - (107 + 0.5e-6j)) < 1e-9
    assert abs(arc.grown(12).end - (107 + 12e-8 - 12j + 0.5e-6j)) < 1e-6


@pytest.mark.parametrize("tolerance", [20.0, 0.5, 0.01])
def test_chords_stay_within_the_tolerance(tolerance):
    """The sagitta of a chord is r (1 - cos(angle / 2))."""
    points = [*BEYOND_HALF.chords(tolerance), BEYOND_HALF.end]
    middles = [(a + b) / 2 for a, b in pairwise(points)]
    assert all(10 - abs(m - BEYOND_HALF.centre) <= tolerance * (1 + 1e-9) for m in middles)


@pytest.mark.parametrize(("sweep", "pieces"), [(math.pi / 4, 1), (-math.pi, 4), (0.8, 2)])
def test_beziers_turn_by_45_degrees_at_most_and_miss_the_arc_by_less_than_5e_6(sweep, pieces):
    arc = Arc(3j, 1 + 3j, sweep)
    start, found = arc.start, list(arc.beziers())
    assert len(found) == pieces
    for one, two, end in found:
        for t in (0.1, 0.25, 0.5, 0.8):
            s = 1 - t
            point = s**3 * start + 3 * s * s * t * one + 3 * s * t * t * two + t**3 * end
            assert abs(abs(point - arc.centre) - 1) < 5e-6
        start = end
    assert start == pytest.approx(arc.end)


def test_points_of_an_arc_lie_on_it():
    for along in (0, 1, 20, BEYOND_HALF.length):
        point = BEYOND_HALF.point(along)
        assert abs(point - BEYOND_HALF.centre) == pytest.approx(10)
        assert cmath.phase(point - BEYOND_HALF.centre) % math.tau == pytest.approx(along / 10)


@pytest.mark.parametrize("radius", [1e3, 1e6, 1e9])
def test_distance_from_an_arc_does_not_depend_on_how_far_its_centre_is(radius):
    arc = Arc(-1j * radius, 0, -100 / radius)
    middle = arc.point(50)
    spoke = (middle + 1j * radius) / radius
    for away in (-2.5, 1e-6, 30):
        assert arc.distance(middle + away * spoke) == pytest.approx(abs(away), abs=1e-8)


def test_centre_of_an_arc_is_a_radius_away_from_it():
    assert Arc(3 + 4j, 0, math.pi / 2).distance(3 + 4j) == 5
