"""Sloping, bent and flared boxed seats: their heights, panels, notes, and what is refused."""

import math

import pytest
import shapely

from patternmaker.covers.boxed import TO_BASE, Boxed
from patternmaker.covers.parts.forms import Form
from patternmaker.covers.parts.joining import sewing_places
from patternmaker.covers.parts.sloping import ACROSS, ALONG, CROWN, DISH, NOT, Bending
from patternmaker.covers.parts.walls import Wall, drops_over, fullness
from patternmaker.geometry.bending import Bend, Bow, Straight
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.segments import Line
from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.allowances import Allowances
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind, Pattern
from tests.covers.seats import (
    BENCH,
    ROUND,
    SHARP,
    brief,
    guide,
    guides,
    kite,
    piece,
    told,
    with_bay,
)

BOX = RoundedRectangle(width=400, depth=300, corner=40).contour()
LEATHER = Material(kind="upholstery leather", take_up=0.03, take_up_along=0.02)


def drafted(seat: Brief, **cover: float | str) -> Pattern:
    boxed = Boxed(**cover)  # type: ignore[arg-type]
    assert [each.told() for each in boxed.objections(seat)] == []
    return boxed.pattern(seat)


def refusals(seat: Brief, **cover: object) -> list[str]:
    return [each.told() for each in Boxed(**cover).objections(seat)]  # type: ignore[arg-type]


def flared(outline: Contour, outset: float = 50.0, stuff: Material | None = None,
           **allowances: float) -> Brief:  # fmt: skip
    stuff = stuff or Material(kind="woven cloth")
    base = outline.grown(outset)
    return brief(outline, stuff, base=base, **allowances)  # type: ignore[arg-type]


def test_boxing_of_a_sloping_seat_is_as_high_as_measured_at_back_and_front():
    boxing = piece(drafted(brief(BOX), drop=60, drop_back=100), "boxing")
    edge = boxing.edges["upper edge"]
    fold = guide(boxing, LineKind.FOLD).path.bounds[3]
    heights = {name: edge.path.point_at(at).imag - fold for name, at in edge.stations}
    assert (heights["back"], heights["front"], heights["left"]) == pytest.approx((100, 60, 80))
    assert boxing.finished == pytest.approx((BOX.length, 100), abs=10)
    assert "Drop 60 mm to 100 mm" in told(boxing.notes)
    assert not boxing.run
    assert boxing.heart is not None


def test_plain_boxing_is_told_by_one_drop_and_prints_as_its_ends():
    boxing = piece(drafted(brief(BOX), drop=80), "boxing")
    assert "Drop 80 mm, wrap-under" in told(boxing.notes)
    assert boxing.run[0] == ("back", 0.0)
    assert boxing.heart is None


@pytest.mark.parametrize("outline", [SHARP, kite(), BENCH])
def test_flared_panels_meet_at_their_joins_in_a_stuff_that_is_taken_up(outline):
    seat = flared(outline, 30, LEATHER, boxing_longest=outline.length * 0.8, wrap=10)
    pattern = drafted(seat, drop=90, walls=TO_BASE)
    assert len([each for each in pattern.pieces if each.role == "boxing"]) > 1
    assert max(seam.worst for seam in pattern.seams) < 0.001


def test_panels_of_a_bent_seat_have_each_place_once():
    seat = brief(ROUND, LEATHER, boxing_longest=622)
    pattern = drafted(seat, drop=90, bent=ACROSS, bend_depth=25)
    for panel in (each for each in pattern.pieces if each.role == "boxing"):
        places = [at for _, at in panel.edges["upper edge"].stations]
        assert len(set(places)) == len(places)
    assert max(seam.worst for seam in pattern.seams) < 0.001


def test_spare_and_sewing_marks_stand_on_a_flared_panel_too():
    boxing = piece(drafted(flared(ROUND, boxing_spare=40, sewing_open=80), walls=TO_BASE),
                   "boxing")  # fmt: skip
    assert {each.name for each in guides(boxing, LineKind.SEWING)} == {
        "start sewing", "stop sewing",
    }  # fmt: skip
    assert "40 mm spare at the right end" in told(boxing.notes)
    plain = piece(drafted(flared(ROUND, sewing_open=0), walls=TO_BASE), "boxing")
    assert guides(plain, LineKind.SEWING) == []
    assert sewing_places(1000, (("back", 0.0),), Allowances(sewing_open=0)) == ()


def test_corner_of_a_flared_wall_is_shared_by_the_panels_joined_there():
    seat = flared(kite(), 40)
    wall = Boxed(walls=TO_BASE).wall(Form(seat, Bend(90.0)))
    soft = brief(SHARP, base=RoundedRectangle(width=480, depth=380, corner=40).contour())
    fans = Boxed(walls=TO_BASE).wall(Form(soft, Bend(90.0)))
    at = fans.sew.station("back left")
    before, after = fans.part(0.0, at), fans.part(at, fans.sew.length)
    whole = fans.part(0.0, fans.sew.length)
    assert before.lower.length + after.lower.length == pytest.approx(whole.lower.length, abs=1e-6)
    assert wall.lower_length == pytest.approx(kite().grown(40).length)


def test_part_of_a_wall_may_run_past_its_beginning():
    wall = Wall.upright(ROUND, 80.0)
    assert wall.part(900.0, 1100.0).upper.length == pytest.approx(200)


def test_least_and_greatest_height_are_found_round_the_seam():
    assert drops_over(Bend(80.0), BOX) == (80, 80)
    assert drops_over(Bend(80.0, along=Straight(0.2)), BOX) == pytest.approx((50, 110))
    assert drops_over(Bend(80.0, along=Bow(300, -20)), BOX) == pytest.approx((60, 80))


def test_wrap_round_a_circle_is_fuller_by_its_turn():
    assert fullness(ROUND, 25) == pytest.approx(2 * math.pi * 25)
    assert fullness(SHARP, 25) == 0


def test_take_up_of_a_bent_top_is_that_of_its_own_length():
    """The top laid flat is cut (length + 2 a)(1 - r), as a flat one is."""
    form = Form(brief(BOX, LEATHER), Bend(90.0, along=Bow(300, -40)))
    arc = 2 * math.asin(150 / form.bend.along.radius) * form.bend.along.radius  # type: ignore[attr-defined]
    assert form.sew.height + 24 == pytest.approx((arc + 24) * 0.98, abs=0.001)
    assert form.sew.width + 24 == pytest.approx((400 + 24) * 0.97, abs=0.001)
    assert not form.is_too_steep
    assert form.seam == pytest.approx(Form(brief(BOX), form.bend).sew.length, abs=0.01)
    assert Form(brief(BOX), Bend(80.0)).seam == BOX.length


def test_bend_that_goes_up_and_down_more_than_its_take_up_leaves_is_refused():
    stuff = Material(kind="woven cloth", take_up=0.1, take_up_along=0.1)
    rows = tuple((100.0 * i, 20.0 if i % 2 else 600.0) for i in range(5))
    (mistake,) = refusals(brief(BOX, stuff), bent=ACROSS, drops=rows)
    assert mistake.startswith("cover.drop_back: the top is too steep for its take-up; take up less")


def test_dish_that_dips_below_the_base_is_refused_however_its_wall_runs():
    for walls in ("upright", TO_BASE):
        (mistake,) = refusals(flared(ROUND), drop=60, bent=ALONG, bend_depth=80, walls=walls)
        assert mistake.startswith("cover.drop: the top comes within 0 mm of the base's lower edge")


NARROW = with_bay(300, 250, 90, 60, 5.0)
"""A seat with a bay in front, whose inner corners are tight."""


@pytest.mark.parametrize(
    ("outset", "wrap", "bent", "says"),
    [
        (20, 60, False, "allowances.wrap: the allowances of two edges run past each other"),
        (20, 60, True, "allowances.wrap: an allowance of 60 mm is too wide for a curve of radius"),
        (-40, 150, True, "allowances.seam: an allowance of 20 mm is too wide for a curve"),
    ],
)
def test_allowance_that_a_bent_panel_has_no_room_for_is_named(outset, wrap, bent, says):
    crown = {"bent": ALONG, "bend": CROWN, "bend_depth": 60} if bent else {}
    found = refusals(flared(NARROW, outset, wrap=wrap, seam=20), drop=15 if outset > 0 else 30,
                     walls=TO_BASE, **crown)  # fmt: skip
    assert any(each.startswith(says) for each in found)


def test_base_of_another_kind_of_shape_is_refused_where_the_two_part():
    seat = brief(NARROW, base=SHARP)
    (mistake,) = refusals(seat, drop=90, walls=TO_BASE)
    assert mistake.startswith("base: its edge does not follow the seam near x ")


def test_topstitch_keeps_its_distance_past_corners_tighter_than_itself():
    seat = flared(RoundedRectangle(width=400, depth=300, corner=5).contour(), -60)
    boxing = piece(drafted(seat, drop=60, walls=TO_BASE, bent=ALONG, bend_depth=15), "boxing")
    seam = shapely.LineString(
        [(z.real, z.imag) for z in guide(boxing, LineKind.SEW).path.chords(1e-3)]
    )
    stitch = guide(boxing, LineKind.TOPSTITCH).path.chords(0.01)
    off = [seam.distance(shapely.Point(z.real, z.imag)) for z in stitch]
    assert off == pytest.approx([seat.allowances.topstitch_at] * len(off), abs=0.005)


def test_bend_of_next_to_nothing_is_none():
    for way in (ALONG, ACROSS):
        flat = Bending(way, DISH, 0.0005, None, (), 80.0, 80.0).over(BOX)
        assert flat.is_level


def test_depth_and_radius_tell_the_same_bend():
    """r = (c^2 + 4 h^2) / 8 h: Machinery's Handbook, p. 79."""
    for sense, depth in ((DISH, -20.0), (CROWN, 20.0)):
        by_depth = Bending(ALONG, sense, 20.0, None, (), 80.0, 80.0).over(BOX)
        radius = (300**2 + 4 * 20**2) / 160
        by_radius = Bending(ALONG, sense, None, radius, (), 80.0, 80.0).over(BOX)
        assert by_depth.at(0j) == pytest.approx(80 + depth)
        assert by_radius.at(30j) == pytest.approx(by_depth.at(30j))


def test_table_of_drops_is_met_from_the_back_and_from_the_left():
    rows = ((0.0, 95.0), (120.0, 70.0), (400.0, 90.0))
    across = Bending(ACROSS, DISH, None, None, rows, 80.0, 80.0).over(BOX)
    assert [across.at(x - 200) for x, _ in rows] == pytest.approx([95, 70, 90])
    rows = ((0.0, 95.0), (120.0, 70.0), (300.0, 90.0))
    along = Bending(ALONG, DISH, None, None, rows, 80.0, 80.0).over(BOX)
    assert [along.at(1j * (150 - y)) for y, _ in rows] == pytest.approx([95, 70, 90])


def test_way_of_a_bend_that_is_not_told_is_asked_for():
    told_twice = Bending(ALONG, DISH, 20.0, 900.0, (), 80.0, 80.0)
    assert [each.told() for each in told_twice.misfits()] == [
        "bend_radius: is given beside bend_depth; give one of the two"
    ]
    without = Bending(NOT, DISH, 20.0, None, (), 80.0, 80.0)
    assert [each.field for each in without.misfits()] == ["bend_depth"]
    nothing = Bending(ALONG, DISH, None, None, (), 80.0, 80.0)
    assert [each.field for each in nothing.misfits()] == ["bent"]


def test_circle_s_wall_is_one_part_of_a_cone_with_straight_ends():
    boxing = piece(drafted(flared(Circle(diameter=300).contour()), drop=120, walls=TO_BASE),
                   "boxing")  # fmt: skip
    joins = [each.path.segments for each in guides(boxing, LineKind.JOIN)]
    assert [len(each) for each in joins] == [1, 1]
    assert all(isinstance(each[0], Line) for each in joins)
    assert joins[0][0].length == pytest.approx(130 + 12 + 25)


@pytest.mark.parametrize(
    ("cover", "says"),
    [
        ({"drop": 60, "drop_back": 280}, "drop_back: differs from the drop at the front by 220 mm"),
        ({"bent": ALONG, "bend_radius": 160}, "bend_radius: 160 mm is less than the bend of"),
        ({"bent": ALONG, "bend_depth": 100}, "bend_depth: 100 mm is more than three tenths"),
        ({"bent": ACROSS, "drops": ((0.0, 90.0), (390.0, 80.0))}, "drops: the rows run to 390 mm"),
    ],
)  # fmt: skip
def test_top_that_the_seat_has_no_room_for_is_refused_with_its_limit(cover, says):
    (mistake,) = refusals(brief(BOX), **cover)
    assert mistake.startswith(f"cover.{says}")


def test_rows_of_a_table_must_be_in_order():
    rows = ((0.0, 90.0), (200.0, 70.0), (200.0, 72.0), (400.0, 90.0))
    (mistake,) = Bending(ACROSS, DISH, None, None, rows, 80.0, 80.0).misfits()
    assert mistake.told() == (
        "drops, row 3: 200 mm is no further than 200 mm before it; put the rows in order, each "
        "place once"
    )
