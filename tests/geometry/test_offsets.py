"""Parallels, measured by other means than those by which they are made."""

import cmath
import math

import pytest

from patternmaker.errors import Refusal
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.segments import Arc
from patternmaker.units import Unit
from tests.contours import distance, horseshoe, l_shape, polygon, ring, spread
from tests.waves import chopped, rounded_off, tightest_inner, wavy, wavy_by, with_bay

SQUARE = polygon(0, 100, 100 + 100j, 100j)
NEEDLE = polygon(0, 400 - 30j, 400 + 30j)
TAB = polygon(0, 100, 100 - 50j, 110 - 50j, 110, 400, 400 + 300j, 300j)


def rounded(width: float = 400.0, depth: float = 380.0, corner: float = 50.0) -> Contour:
    """Return a rounded rectangle, a joint at each end of each corner."""
    x, y, quarter = width / 2, depth / 2, math.pi / 2
    compass = Compass(complex(corner - x, -y))
    compass.joint("a").line(complex(x - corner, -y)).joint("b")
    compass.arc(complex(x - corner, corner - y), quarter).joint("c").line(complex(x, y - corner))
    compass.joint("d").arc(complex(x - corner, y - corner), quarter).joint("e")
    compass.line(complex(corner - x, y)).joint("f").arc(complex(corner - x, y - corner), quarter)
    compass.joint("g").line(complex(-x, corner - y)).joint("h")
    return compass.arc(complex(corner - x, corner - y), quarter).closed()


def keyhole(mouth: float = 40.0) -> Contour:
    """Return a square with a round hole of radius 100, open at the top through a narrow mouth."""
    half = mouth / 2
    reach = math.sqrt(100**2 - half**2)
    compass = Compass(-200 - 200j).line(200 - 200j).line(200 + 200j).line(complex(half, 200))
    compass.line(complex(half, reach)).arc(0, 2 * math.asin(half / 100) - math.tau)
    return compass.line(complex(-half, 200)).line(-200 + 200j).line(-200 - 200j).closed()


def dovetail() -> Contour:
    """Return a block with a recess 10 mm deep, its mouth 104 mm wide, undercut by 20 degrees.

    The tips of its mouth reach tan 55 of the allowance across: they meet at 52 / 1.428 = 36.4 mm.
    """
    foot = 52 + 10 * math.tan(math.radians(20))
    recess = (52 + 0j, foot - 10j, -foot - 10j, -52 + 0j)
    return polygon(-300 - 300j, 300 - 300j, 300 + 0j, *recess, -300 + 0j)


def inner_corner(radius: float = 10.0) -> Contour:
    """Return an L whose inner corner is an arc."""
    compass = Compass(0).line(300).line(300 + 150j).line(complex(150 + radius, 150)).joint("in")
    compass.arc(complex(150 + radius, 150 + radius), -math.pi / 2).joint("out")
    return compass.line(150 + 300j).line(300j).line(0).closed()


def test_parallel_at_no_distance_is_the_contour_itself():
    assert SQUARE.grown(0) is SQUARE


def test_grown_square_is_a_larger_square_with_mitred_corners():
    grown = SQUARE.grown(12)
    assert (grown.width, grown.height) == (124, 124)
    assert [grown.area, grown.length] == pytest.approx([124**2, 4 * 124])


def test_joint_of_a_mitred_corner_stands_at_its_tip():
    grown = SQUARE.grown(12)
    assert grown.point_at(grown.station("v2")) == pytest.approx(112 + 112j)


def test_shrunk_square_keeps_its_corners():
    shrunk = SQUARE.grown(-12)
    assert shrunk.area == pytest.approx(76**2)
    assert [shrunk.point_at(shrunk.station(f"v{i}")) for i in range(4)] == pytest.approx(
        [12 + 12j, 88 + 12j, 88 + 88j, 12 + 88j]
    )


def test_squared_tip_of_a_sharp_corner_lies_at_the_allowance():
    grown = NEEDLE.grown(12)
    assert grown.bounds[0] == pytest.approx(-12)
    assert grown.point_at(grown.station("v0")) == pytest.approx(-12)
    assert ring(grown).is_valid


def test_sharp_corner_is_not_squared_off_on_its_inner_side():
    """The parallels meet at the allowance over the sine of half the angle."""
    shrunk = NEEDLE.grown(-5)
    assert shrunk.bounds[0] == pytest.approx(5 / math.sin(math.atan2(30, 400)))
    assert shrunk.station("v0") == 0


def test_mitre_limit_is_twice_the_allowance():
    """The mitre of a corner of 60 degrees: 1 / sin 30 = 2."""
    for flank, reach in ((0.58, 12 / math.sin(math.atan(0.58))), (0.57, 12)):
        y = 400j * flank
        house = polygon(0, 400 - y, 800 - y, 800 + y, 400 + y)
        assert house.grown(12).bounds[0] == pytest.approx(-reach)


@pytest.mark.parametrize("by", [-12.0, -49.99, -50.0, -50.01, -60.0, -180.0])
def test_corner_arcs_vanish_into_sharp_corners(by):
    shrunk = rounded().grown(by)
    r = max(0.0, 50 + by)
    assert shrunk.area == pytest.approx((400 + 2 * by) * (380 + 2 * by) - (4 - math.pi) * r * r)
    assert ring(shrunk).is_valid


@pytest.mark.parametrize("off", [1e-15, 1e-13, 1e-10, 1e-7, 5e-6])
def test_corner_arc_shrunk_to_a_point_by_figures_alone_is_a_sharp_corner(off):
    """An eighth and three eighths off a corner of half an inch leave none, but for figures."""
    for by in (off - 50, -off - 50):
        shrunk = rounded().grown(by)
        assert len(shrunk.segments) == 4
        assert list(shrunk.joints.values()) == [0, 1, 1, 2, 2, 3, 3, 0]
        assert shrunk.grown(20).area == pytest.approx(340 * 320, abs=0.01)


@pytest.mark.parametrize("off", [1e-15, 1e-13, 1e-10, 1e-7])
def test_what_shrinks_to_a_point_or_to_a_line_closes_up(off):
    bench = rounded(600, 100, 50)
    circle = Compass(-50j).arc(0j, math.tau).closed()
    for contour in (bench, circle):
        with pytest.raises(Refusal, match="closes up"):
            contour.grown(off - 50)


def test_ends_of_a_vanished_arc_stand_at_the_corner():
    shrunk = rounded().grown(-60)
    assert [shrunk.point_at(shrunk.station(name)) for name in "bc"] == pytest.approx(
        [140 - 130j, 140 - 130j]
    )


def test_joint_whose_corner_has_come_round_stays_in_order():
    assert list(rounded().grown(-60).joints.items()) == [
        ("a", 0), ("b", 1), ("c", 1), ("d", 2), ("e", 2), ("f", 3), ("g", 3), ("h", 0),
    ]  # fmt: skip


@pytest.mark.parametrize("contour", [rounded(), SQUARE, l_shape()])
def test_grown_and_shrunk_again_is_the_same(contour):
    again = contour.grown(12).grown(-12)
    assert [again.length, again.area] == pytest.approx([contour.length, contour.area])


@pytest.mark.parametrize("by", [12.0, 40.0, 100.0, -12.0, -40.0, -74.9])
def test_every_point_of_an_l_shape_s_parallel_keeps_its_distance(by):
    """Measured with shapely; further only at the tips of the mitres."""
    contour = l_shape()
    away = [distance(contour, point) for point in spread(contour.grown(by))]
    assert min(away) == pytest.approx(abs(by), abs=1e-6)
    assert max(away) <= abs(by) * math.sqrt(2) + 1e-6


def test_l_shape_grown_is_longer_by_its_turning_in_mitres():
    """Each mitre of 90 degrees adds 2 d, each inner corner takes 2 d: (5 - 1) x 2 d."""
    assert l_shape().grown(12).length == pytest.approx(1200 + 8 * 12)


@pytest.mark.parametrize("by", [5.0, 9.999, 10.0, 10.001, 12.0, 60.0])
def test_inner_arc_tighter_than_the_allowance_becomes_a_corner(by):
    """Until it vanishes the arc of 90 degrees has the radius that is left."""
    grown = inner_corner().grown(by)
    r = max(0.0, 10 - by)
    assert grown.length == pytest.approx(1200 + 8 * by - (2 - math.pi / 2) * r)
    assert ring(grown).is_valid


def test_both_ends_of_a_vanished_inner_arc_stand_where_the_parallels_cross():
    grown = inner_corner().grown(30)
    assert [grown.point_at(grown.station(name)) for name in ("in", "out")] == pytest.approx(
        [180 + 180j, 180 + 180j]
    )


def test_v_shaped_bay_fills_up_gradually():
    """The parallels of a 90 degree bay cross sqrt(2) d above its bottom."""
    bay = polygon(0, 400, 400 + 300j, 300 + 300j, 200 + 200j, 100 + 300j, 300j)
    grown = bay.grown(12)
    bottom = grown.point_at(grown.station("v4"))
    assert bottom == pytest.approx(200 + (200 + 12 * math.sqrt(2)) * 1j)


@pytest.mark.parametrize("angle", [1.2e-7, 1.5e-7, 2e-7, 5e-7, 1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 0.1])
@pytest.mark.parametrize("by", [1.0, 3.0, 12.0, 60.0])
@pytest.mark.parametrize("place", [0, 3000 + 4000j])
def test_slightest_inner_corner_takes_what_trigonometry_says(angle, by, place):
    """A mitred ring is longer by d times the sum of 2 tan(turn / 2)."""
    contour = polygon(0, 200 + 200j * math.tan(angle / 2), 400, 400 + 300j, 300j).mapped(1, place)
    turning = sum(2 * math.tan(turn / 2) for turn in contour.corners)
    grown = contour.grown(by)
    assert grown.length == pytest.approx(contour.length + by * turning, abs=2e-5)
    assert ring(grown).is_valid


@pytest.mark.parametrize("turns", range(12))
@pytest.mark.parametrize("by", [1.0, 2.0, 3.0])
def test_slightest_inner_corner_does_not_depend_on_how_the_seat_lies(by, turns):
    """What rounding leaves of the loop at such a corner differs from direction to direction."""
    contour = polygon(0, 200 + 1.2e-5j, 400, 400 + 300j, 300j).mapped(cmath.rect(1, turns / 2))
    assert contour.corners[1] < 0
    assert contour.grown(by).length == pytest.approx(contour.length + 8 * by, abs=2e-5)


@pytest.mark.parametrize("bend", [6e-5j, -6e-5j])
def test_joint_too_slight_to_be_a_corner_does_not_open_a_wide_ring(bend):
    """The two moved edges stand 4e-6 mm apart there."""
    outline = (0, 1500 + bend, 3000, 3000 + 1500j, 1500 + 1500j, 1500 + 3000j, 3000j)
    contour = polygon(*outline)
    assert contour.corners[1] == 0.0
    assert contour.grown(50).length == pytest.approx(12000 + 8 * 50, abs=0.001)


def test_joint_too_slight_to_be_a_corner_does_not_break_a_wide_parallel():
    contour = polygon(0, 200 + 0.9e-5j, 400, 400 + 300j, 300j)
    assert contour.corners[1] == 0.0
    assert contour.grown(150).length == pytest.approx(1400 + 8 * 150, abs=0.001)


@pytest.mark.parametrize(
    ("contour", "by", "fits"),
    [
        (rounded(), -190.0, 189.9), (rounded(), -300.0, 189.9), (SQUARE, -50.0, 49.9),
        (rounded(400, 200, 100), -100.0, 99.9), (Contour((Arc(0, 50, math.tau),)), -50.0, 49.9),
        (NEEDLE, -300.0, 27.8), (l_shape(), -75.0, 74.9), (l_shape(), -500.0, 74.9),
        (horseshoe(), 30.0, 29.9), (horseshoe(), 31.0, 29.9), (horseshoe(), 300.0, 29.9),
        (horseshoe(), -85.0, 84.9), (keyhole(), 20.0, 19.9), (keyhole(), 21.0, 19.9),
        (keyhole(), 150.0, 19.9), (TAB, -5.0, 4.9), (TAB, -12.0, 4.9),
        (with_bay(60, 80, 5), 30.0, 29.9), (with_bay(60, 80, 5, mouth=5), 40.0, 29.9),
        (with_bay(23.9, 80, 5), 12.0, 11.9), (with_bay(20, 80, 10 - 1e-9), 12.0, 9.9),
        (wavy(200, 0.4, 2), -300.0, 119.9), (wavy(200, 0.1, 7), -250.0, 179.9),
        (dovetail(), 37.0, 36.4), (dovetail(), 45.0, 36.4), (dovetail(), 80.0, 36.4),
    ],
)  # fmt: skip
def test_what_closes_up_is_refused_with_the_largest_step_that_fits(contour, by, fits):
    with pytest.raises(Refusal) as refused:
        contour.grown(by)
    assert refused.value.limit == pytest.approx(fits)
    assert ring(contour.grown(math.copysign(fits, by))).is_valid


def test_refusal_speaks_in_the_unit_of_the_job():
    with pytest.raises(Refusal) as refused:
        horseshoe().grown(38.1)
    assert refused.value.told(Unit.IN).startswith("a line 1 1/2 in outside the edge closes up")
    assert refused.value.told(Unit.MM).endswith("the most that fits is 29.9 mm")
    assert refused.value.told(Unit.IN).endswith("the most that fits is 1.177 in")


def test_refusal_inside_says_inside():
    with pytest.raises(Refusal, match="60 mm inside the edge"):
        SQUARE.grown(-60)


def test_horseshoe_follows_its_bay_while_it_is_open():
    """400 square less a bay of 60 by 200 and a half disc of radius 30, by the schoolbook."""
    grown = horseshoe().grown(12)
    assert grown.area == pytest.approx(424**2 - (36 * 212 + math.pi / 2 * 18**2))
    assert grown.point_at(grown.station("bay")) == pytest.approx(18)


def test_keyhole_s_nearly_full_turn_keeps_its_distance():
    contour = keyhole()
    away = [distance(contour, point) for point in spread(contour.grown(12))]
    assert min(away) == pytest.approx(12, abs=1e-4)


def test_full_turn_of_one_arc_grows():
    assert Contour((Arc(0, 50, math.tau),)).grown(12).length == pytest.approx(math.tau * 62)


def test_bay_with_tightly_rounded_inner_corners_is_trimmed_to_sharp_ones():
    """400 square, 80 deep: a mitre adds 2 d at six corners, the two inner ones take 2 d each."""
    grown = with_bay(60, 80, 5).grown(12)
    assert grown.length == pytest.approx(1600 + 160 + 8 * 12)
    assert ring(grown).is_valid


@pytest.mark.parametrize("joint", ["in 4", "out 4"])
def test_ends_of_a_trimmed_inner_arc_stand_where_wall_and_floor_meet(joint):
    grown = with_bay(60, 80, 5).grown(12)
    assert grown.point_at(grown.station(joint)) == pytest.approx(18 + 132j)


@pytest.mark.parametrize("by", [12.0, 29.0, 29.9])
def test_bay_is_followed_until_its_walls_meet(by):
    """What is left of it: 60 less 2 d wide, always 80 deep, for mouth and floor rise alike."""
    grown = with_bay(60, 80, 5).grown(by)
    assert grown.area == pytest.approx((400 + 2 * by) ** 2 - (60 - 2 * by) * 80)


@pytest.mark.parametrize("degrees", [30, 60, 89])
def test_round_bottom_of_a_bay_that_opens_is_trimmed_like_a_sharp_one(degrees):
    """It opens by so many degrees, so its bottom turns by less than a half turn."""
    half = 100 * math.tan(math.radians(degrees / 2))
    bay = (300 + half + 300j, 300 + 200j, 300 - half + 300j)
    outline = (0, 600, 600 + 300j, *bay, 300j)
    sharp, blunt = (rounded_off(outline, (0, 0, 0, 0, r, 0, 0)) for r in (0, 4))
    assert blunt.grown(12).length == pytest.approx(sharp.grown(12).length)


def test_shallow_dip_fills_from_its_floor_before_its_walls_meet():
    """60 mm wide, 11 mm deep, moved by 31: the floor is still 31 mm away, and all of it counts."""
    grown = with_bay(60, 11, 5, mouth=5).grown(31)
    assert min(abs(point - 220j) for point in spread(grown, 4000)) < 1
    assert min(distance(with_bay(60, 11, 5, mouth=5), p) for p in spread(grown)) > 31 - 1e-3


@pytest.mark.parametrize("by", [12.0, -12.0])
def test_outline_of_two_thousand_arcs_is_longer_by_its_turning(by):
    contour = wavy_by(2000, 200, 0.1, 7)
    assert tightest_inner(contour) > 12
    assert contour.grown(by).length == pytest.approx(contour.length + math.tau * by, rel=1e-9)


@pytest.mark.parametrize(
    ("contour", "by"),
    [
        (horseshoe(), 12.0), (horseshoe(), -12.0), (wavy(150, 0.1, 5), 60.0),
        (wavy(150, 0.1, 5), -60.0), (with_bay(130, 80, 5), 60.0), (with_bay(130, 80, 5), -60.0),
    ],
)  # fmt: skip
def test_crumbs_between_the_edges_change_nothing(contour, by):
    crumbled = chopped(contour, 0.01).grown(by)
    assert crumbled.length == pytest.approx(contour.grown(by).length, abs=1e-4)


@pytest.mark.parametrize("radius", [1e6, 1e8, 3e9])
@pytest.mark.parametrize("by", [12.0, -12.0, -74.9])
def test_sides_as_good_as_straight_move_like_straight_ones(radius, by):
    """Their arcs stand at most 300^2 / 8 R = 0.011 mm off them."""
    corners = [edge.start for edge in l_shape().segments]
    sides = zip(corners, [*corners[1:], corners[0]], strict=True)
    bowed = Contour(tuple(_bowed(one, two, radius) for one, two in sides))
    straight = l_shape().grown(by)
    assert bowed.grown(by).length == pytest.approx(straight.length, abs=0.1)


def _bowed(one: complex, two: complex, radius: float) -> Arc:
    """Return an arc of a very large radius that bulges to the right."""
    half = math.asin(abs(two - one) / 2 / radius)
    to_centre = 1j * radius * cmath.rect(1, -half) * (two - one) / abs(two - one)
    return Arc(one + to_centre, one, 2 * half)


def test_crossing_of_tips_does_not_leave_loose_ends():
    """A step lower than the allowance: the tip of its upper corner covers part of the lower."""
    stairs = polygon(0, 300, 300 + 100j, 200 + 100j, 200 + 105j, 100 + 105j, 100 + 200j, 200j)
    assert stairs.grown(12).length == pytest.approx(stairs.length + 8 * 12)
