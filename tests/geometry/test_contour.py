"""Chains and contours: closed forms, and places along them."""

import math

import pytest

from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour, Path, joined_bounds
from patternmaker.geometry.segments import Arc, Line
from tests.contours import distance, l_shape, polygon, spread
from tests.waves import wavy

SQUARE = polygon(0, 100, 100 + 100j, 100j)
DISC = Contour((Arc(0, 50, math.tau),), {"right": 0})


@pytest.mark.parametrize("contour", [l_shape(), DISC, wavy(200, 0.2, 5)])
def test_nearest_edge_is_the_one_at_the_least_distance(contour):
    for x in range(-300, 400, 50):
        for point in (complex(x, y) for y in range(-300, 400, 50)):
            least = min(each.distance(point) for each in contour.segments)
            assert contour.segments[contour.nearest(point)].distance(point) == least


def test_broken_chain_is_a_fault():
    with pytest.raises(ValueError, match="broken"):
        Path((Line(0, 1), Line(2, 3)))


def test_open_contour_is_a_fault():
    with pytest.raises(ValueError, match="not closed"):
        Contour((Line(0, 1), Line(1, 2)))


def test_path_knows_its_length_and_its_box():
    path = Path.through(0, 30, 30 + 40j)
    assert (path.length, path.width, path.height, path.stops) == (70, 30, 40, (0, 30, 70))


@pytest.mark.parametrize(("along", "point"), [(0, 0), (30, 30), (50, 30 + 20j), (70, 30 + 40j)])
def test_path_is_walked_from_its_start_to_its_end(along, point):
    assert Path.through(0, 30, 30 + 40j).point_at(along) == pytest.approx(point)


def test_path_direction_at_a_bend_is_the_one_ahead():
    path = Path.through(0, 30, 30 + 40j)
    assert [path.tangent_at(along) for along in (29, 30, 70)] == [1, 1j, 1j]


def test_path_turned_and_moved_keeps_its_kind():
    moved = Path.through(0, 30).mapped(1j, 5)
    assert moved == Path.through(5, 5 + 30j)


def test_path_chords_end_at_its_end():
    assert Path.through(0, 30, 30 + 40j).chords(0.1) == [0, 30, 30 + 40j]


@pytest.mark.parametrize(
    ("along", "point"),
    [(0, 0), (150, 100 + 50j), (400, 0), (-50, 50j), (450, 50), (1250, 50), (400 - 1e-10, 0)],
)
def test_walk_round_a_contour_never_ends(along, point):
    assert SQUARE.point_at(along) == pytest.approx(point, abs=1e-8)


def test_area_by_green_is_the_schoolbook_one():
    assert SQUARE.area == pytest.approx(1e4)
    assert DISC.area == pytest.approx(2500 * math.pi)
    assert l_shape().area == pytest.approx(300**2 - 150**2)


def test_corners_turn_left_but_for_the_inner_one():
    quarter = math.pi / 2
    assert l_shape().corners == pytest.approx(
        (quarter, quarter, quarter, -quarter, quarter, quarter)
    )
    assert DISC.corners == (0.0,)


def test_tightest_radius():
    stadium = Compass(-50 - 20j).line(50 - 20j).arc(50, math.pi).line(-50 + 20j)
    assert stadium.arc(-50, math.pi).closed().tightest == pytest.approx(20)
    assert SQUARE.tightest == 0.0


def test_contour_without_corners_or_arcs_has_no_tightest_radius():
    """Lines there and back are no seat; nothing in them is round."""
    assert Contour((Line(0, 1), Line(1, 0))).tightest == 0.0


def test_only_shapes_that_never_turn_right_are_convex():
    bite = Compass(0).line(100).line(100 + 100j).line(70 + 100j).arc(50 + 100j, -math.pi)
    assert SQUARE.is_convex
    assert DISC.is_convex
    assert not l_shape().is_convex
    assert not bite.line(100j).line(0).closed().is_convex


def test_station_is_the_length_at_its_joint():
    assert [SQUARE.station(name) for name in ("v0", "v1", "v3")] == [0, 100, 300]


def test_joints_cannot_be_changed():
    with pytest.raises(TypeError):
        SQUARE.joints["v0"] = 1  # type: ignore[index]


def test_outward_step_is_the_normal_between_corners():
    assert SQUARE.outward(50) == -1j
    assert DISC.outward(0) == pytest.approx(1)


@pytest.mark.parametrize("along", [0, 1e-10, 400, -1e-10])
def test_outward_step_at_a_corner_leads_to_the_tip_of_the_mitre(along):
    assert SQUARE.outward(along) == pytest.approx(-1 - 1j)


def test_outward_step_at_an_inner_corner_leads_to_the_crossing_of_the_parallels():
    assert l_shape().outward(l_shape().station("v3")) == pytest.approx(1 + 1j)


def test_outward_step_at_a_sharp_corner_leads_to_the_middle_of_its_squared_tip():
    needle = polygon(0, 400 - 30j, 400 + 30j)
    assert needle.outward(0) == pytest.approx(-1)


def test_contour_turned_keeps_its_joints():
    turned = SQUARE.mapped(1j)
    assert turned.joints == SQUARE.joints
    assert turned.point_at(turned.station("v1")) == 100j


def test_chords_of_a_contour_come_back_to_the_very_first_point():
    points = DISC.mapped(0.7 + 0.1j, 3).chords(0.1)
    assert points[0] == points[-1]


def test_scaled_alike_both_ways_stays_exact():
    assert DISC.scaled(2, 2) == DISC.mapped(2)


def test_scaled_circle_passes_through_the_scaled_points():
    oval = DISC.scaled(1.2, 0.9)
    for point in spread(DISC, 50):
        assert distance(oval, complex(1.2 * point.real, 0.9 * point.imag)) < 0.001


def test_scaled_area_is_the_product_of_both_factors():
    assert DISC.scaled(1.2, 0.9).area == pytest.approx(DISC.area * 1.08, rel=1e-6)


def test_scaled_joints_stay_with_their_stations():
    bite = Compass(0).joint("a").line(100).joint("b").line(100 + 100j).joint("c")
    contour = bite.arc(100j + 50, math.pi).joint("d").line(0).closed()
    scaled = contour.scaled(0.9, 1.1)
    for name in contour.joints:
        point = contour.point_at(contour.station(name))
        there = complex(point.real * 0.9, point.imag * 1.1)
        assert scaled.point_at(scaled.station(name)) == pytest.approx(there, abs=1e-9)


def test_box_round_boxes():
    assert joined_bounds([(0, 0, 1, 1), (-1, 0.5, 0.5, 3)]) == (-1, 0, 1, 3)


@pytest.mark.parametrize("begin", [0, 30, 100, 350, 399.99999, 400, 430, -50])
@pytest.mark.parametrize("length", [20, 100, 330, 400])
def test_part_of_a_ring_runs_past_its_beginning(begin, length):
    part = SQUARE.part(begin, begin + length)
    assert part.length == pytest.approx(length, abs=1e-3)
    for share in (0, 0.3, 0.8, 1):
        place = SQUARE.point_at(begin + share * length)
        assert part.point_at(share * part.length) == pytest.approx(place, abs=1e-3)


def test_part_of_a_ring_from_a_place_on_to_itself_goes_all_round():
    assert SQUARE.part(150, 150).length == 400
    assert DISC.part(10, 10 + DISC.length).length == pytest.approx(DISC.length)
