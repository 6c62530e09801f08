"""The corners of a cover in one piece: cut out, sewn to darts, pleated."""

import cmath
import math

import pytest

from patternmaker.covers.parts.cornering import cut_line, seams
from patternmaker.geometry.segments import dot
from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.oval import Oval
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.outlines.table_of_widths import TableOfWidths
from patternmaker.pattern.piece import LineKind
from tests.covers.pulled import ROUNDED, chamfered, found, pulled, refused, top
from tests.covers.seats import SHARP, brief, guides, kite

LEATHER = Material(take_up=0.025)
SMALL = 1e-9


def square(radius: float):
    return RoundedRectangle(width=400, depth=400, corner=radius).contour()


@pytest.mark.parametrize(
    ("radius", "how"),
    [(0, "cut-out"), (6.35, "cut-out"), (6.5, "dart"), (25.4, "dart"), (30, "dart"),
     (30.1, "pleats"), (120, "pleats")],
)  # fmt: skip
def test_corner_goes_by_its_radius(radius, how):
    """To 1/4 in a cut-out; to 1 in, or half the side of 60 mm, a dart; wider, pleats."""
    corners, _ = found(brief(square(radius), seam=6))
    assert {corner.how for corner in corners} == {how}


def test_low_side_leaves_the_dart_its_inch():
    assert {corner.how for corner in found(brief(square(25.4)), side=20)[0]} == {"dart"}
    assert {corner.how for corner in found(brief(square(25.5)), side=20)[0]} == {"pleats"}


def test_little_is_eased_in():
    """A quarter turn has 1.57 times the side too much: 6.35 mm at 4.04 mm."""
    assert {corner.how for corner in found(brief(square(30)), side=4)[0]} == {"eased"}
    assert {corner.how for corner in found(brief(square(30)), side=4.1)[0]} == {"pleats"}


def test_wedges_take_up_what_the_bend_has_too_much_exactly():
    """T (R + s) comes back to t R, less the take-up: t s (1 - r)."""
    for how in ("cut-out", "dart", "pleats"):
        corners, _ = found(brief(ROUNDED, LEATHER, seam=6), how)
        wanted = math.pi / 2 * 60 * 0.975
        assert [corner.taken for corner in corners] == pytest.approx([wanted] * 4)


def test_what_is_left_of_the_board_line_is_as_long_as_the_top_edge():
    for outline in (ROUNDED, Oval(width=420, depth=330).contour(), Circle(diameter=320).contour()):
        corners, draped = found(brief(outline, LEATHER))
        left = draped.board.length - sum(corner.taken for corner in corners)
        assert left == pytest.approx(draped.fold.length)


def test_straight_sides_take_up_hardly_more_halfway_down():
    """At a depth of d it should be t d; by the angle at which a side meets that circle."""
    corners, _ = found(brief(ROUNDED), "dart")
    (wedge,) = corners[0].wedges
    centre, depth = -140 + 90j, 30.0
    angles = []
    for leg in wedge.legs:
        ats = [leg.length * i / 10_000 for i in range(10_001)]
        at = min(ats, key=lambda at: abs(abs(leg.point_at(at) - centre) - 60 - depth))
        angles.append(cmath.phase((leg.point_at(at) - centre) / (wedge.apex - centre)))
    taken = abs(angles[1] - angles[0]) * (60 + depth)
    assert 0 < taken - math.pi / 2 * depth < 0.02 * wedge.taken


def test_sharp_corner_has_a_square_too_much():
    corners, draped = found(brief(SHARP))
    (wedge,) = corners[0].wedges
    assert wedge.apex == pytest.approx(-200 + 150j)
    assert wedge.feet == (pytest.approx(-200 + 210j), pytest.approx(-260 + 150j))
    assert wedge.tips == (pytest.approx(-200 + 235j), pytest.approx(-285 + 150j))
    assert draped.cut.width == pytest.approx(570)


def test_legs_are_equally_long_even_where_a_curve_tightens():
    rows = ((0, 150), (100, 200), (250, 230), (360, 120))
    for outline in (ROUNDED, Oval(width=460, depth=300).contour(),
                    TableOfWidths(widths=rows).contour()):  # fmt: skip
        corners, _ = found(brief(outline), "dart")
        for seam in seams(corners, "top cover"):
            assert abs(seam.ease) < 1e-6
            assert seam.worst < 1e-6


def test_kinks_and_short_lines_take_up_what_they_have_too_much_as_well():
    for outline in (chamfered(0, kink=10), chamfered(0.5)):
        corners, draped = found(brief(outline), "pleats", pleats=2)
        left = draped.board.length - sum(corner.taken for corner in corners)
        assert left == pytest.approx(draped.fold.length)


def test_legs_on_either_side_of_a_short_line_differ_by_less_than_it_is_long():
    corners, _ = found(brief(chamfered(0.5)), "dart")
    seam = next(iter(seams(corners, "top cover")))
    assert 0 < abs(seam.eased) < 0.5
    assert seam.worst < SMALL


def test_legs_of_a_sharp_corner_differ_as_the_take_up_does_and_the_seam_says_so():
    two_ways = Material(take_up_across=0.02, take_up_along=0.04)
    corners, _ = found(brief(SHARP, two_ways))
    seam = next(iter(seams(corners, "top cover")))
    assert (seam.a.length, seam.b.length) == pytest.approx((60 * 0.96, 60 * 0.98))
    assert seam.eased == pytest.approx(60 * -0.02)
    assert seam.worst < SMALL


def test_legs_run_from_the_top_edge_to_the_board():
    corners, draped = found(brief(ROUNDED), "dart")
    for seam in seams(corners, "top cover"):
        assert [name for name, _ in seam.a.stations] == ["top edge", "board edge"]
        for edge in (seam.a, seam.b):
            start, end = edge.path.segments[0].start, edge.path.segments[-1].end
            assert draped.fold.segments[draped.fold.nearest(start)].distance(start) < SMALL
            assert draped.board.segments[draped.board.nearest(end)].distance(end) < SMALL


def test_cut_out_leaves_its_allowance_beside_both_legs():
    corners, draped = found(brief(SHARP, seam=12))
    cut = cut_line(draped, corners, 12)
    assert cut.area == pytest.approx(570 * 470 - 4 * (85 - 12) ** 2)
    tips = [each.start for each in cut.segments if abs(each.start.real) == pytest.approx(212)]
    assert any(abs(tip - (-212 + 162j)) < SMALL for tip in tips)


def test_cut_line_without_a_cut_out_is_the_parallel_itself():
    corners, draped = found(brief(ROUNDED))
    assert cut_line(draped, corners, 12) is draped.cut


def test_allowance_that_leaves_nothing_to_cut_out_is_refused_with_the_most():
    (mistake,) = refused(brief(square(60), seam=45, topstitch=5), corner="cut-out")
    assert mistake.startswith("allowances.seam: 45 mm leaves nothing to cut out at back left (at")
    limit = float(mistake.split("at most ")[1].split(" mm")[0])
    assert not refused(brief(square(60), seam=limit - 0.01, topstitch=5), corner="cut-out")
    assert refused(brief(square(60), seam=limit + 0.01, topstitch=5), corner="cut-out")


def test_by_radius_a_corner_too_small_to_be_cut_out_takes_a_dart():
    corners, _ = found(brief(SHARP, seam=45, topstitch=5), side=40)
    assert {corner.how for corner in corners} == {"dart"}


@pytest.mark.parametrize(("depth", "count"), [(12, 4), (8, 6), (24, 2), (50, 1)])
def test_as_many_pleats_as_keep_to_their_depth(depth, count):
    """94.25 mm to take up, two depths to a pleat."""
    corners, _ = found(brief(ROUNDED), depth=depth)
    assert [len(corner.wedges) for corner in corners] == [count] * 4
    assert all(wedge.taken / 2 <= depth for corner in corners for wedge in corner.wedges)


def test_pleats_are_as_many_as_asked_for_and_equally_deep():
    corners, _ = found(brief(ROUNDED), "pleats", pleats=3)
    depths = [wedge.taken / 2 for wedge in corners[0].wedges]
    assert depths == pytest.approx([15 * math.pi / 3] * 3)


def test_sharp_corner_takes_one_pleat_however_many_are_asked_for():
    corners, _ = found(brief(SHARP), "pleats", pleats=5)
    assert [len(corner.wedges) for corner in corners] == [1] * 4


def test_tight_corner_takes_one_pleat():
    corners, _ = found(brief(square(20)), "pleats")
    assert [len(corner.wedges) for corner in corners] == [1] * 4


def test_pleat_deeper_than_its_corner_is_refused_with_the_limit():
    """Three pleats in a corner of radius 20: 15.7 deep, 10.4 apart."""
    (mistake,) = refused(brief(square(20)), corner="pleats", pleats=3)
    assert mistake == (
        "cover.pleats: a pleat 15.708 mm deep is deeper than back left has room for (10.4 mm); "
        'sew a dart there (corner = "dart"), take fewer pleats, or lower the sides'
    )


def test_no_pleat_of_a_round_seat_stands_at_a_centre_mark():
    pattern = pulled(brief(Circle(diameter=320).contour()))
    assert {notch.name for notch in top(pattern).notches} == {"back", "left", "front", "right"}


def test_pleat_is_two_lines_and_an_arrow_toward_the_back():
    piece = top(pulled(brief(ROUNDED), pleats=1, corner="pleats"))
    for name in ("back left", "front left", "front right", "back right"):
        one, two, shaft, *barbs = (
            g.path for g in guides(piece, LineKind.PLEAT) if g.name == name
        )  # fmt: skip
        assert one.segments[0].start == two.segments[0].start
        assert len(barbs) == 2
        way = shaft.segments[0].end - shaft.segments[0].start
        assert dot(way, 1j) > 0


def test_dart_is_two_legs_and_the_fold_between():
    piece = top(pulled(brief(ROUNDED), corner="dart"))
    folds = [g for g in guides(piece, LineKind.FOLD) if g.name == "back left"]
    legs = [g for g in guides(piece, LineKind.SEW) if g.name == "back left"]
    assert (len(folds), len(legs)) == (1, 2)
    assert folds[0].path.length > legs[0].path.length


def test_half_turn_takes_two_darts():
    end = RoundedRectangle(width=600, depth=300, corner=150).contour()
    corners, _ = found(brief(end), "dart")
    assert [len(corner.wedges) for corner in corners] == [2, 2]
    assert [name for name, _ in corners[0].named] == ["left, 1", "left, 2"]


def test_corner_at_the_back_is_cut_out_like_any_other():
    corners, draped = found(brief(kite()))
    assert {corner.how for corner in corners} == {"cut-out"}
    assert cut_line(draped, corners, 12).area < draped.cut.area
