"""The bull-nose: one piece rolls round the nose, and meets the gussets all the way."""

import math

import pytest

from patternmaker.covers import COVERS
from patternmaker.covers.bull_nose import BullNose
from patternmaker.drawing.pieces import label_room
from patternmaker.outlines.polygon import Polygon
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind, Pattern
from tests.covers.seats import BENCH, ROUND, SHARP, brief, guides, piece, told

ROUND_BACK = RoundedRectangle(width=500, depth=400, corner=60, front_left=0,
                              front_right=0).contour()  # fmt: skip
UNEQUAL = Polygon(corners=((0, 60), (500, 0), (500, 400), (0, 400))).contour()


def nosed(seat: Brief, height: float = 80.0, *, zip_: bool = True) -> Pattern:
    cover = BullNose(height=height, zip=zip_)
    assert not list(cover.objections(seat))
    return cover.pattern(seat)


def objections(
    seat: Brief, height: float = 80.0, *, zip_turning: float = 20.0, foam_oversize: float = 6.0
) -> list[str]:
    cover = BullNose(height=height, zip_turning=zip_turning, foam_oversize=foam_oversize)
    return [each.told() for each in cover.objections(seat)]


def test_bull_nose_is_a_known_cover_of_one_piece_two_gussets_and_a_zip_behind():
    assert COVERS.all["bull-nose"] is BullNose
    assert [each.name for each in nosed(brief(SHARP)).pieces] == [
        "top", "gusset left", "gusset right", "zip strip top", "zip strip bottom", "foam template",
    ]  # fmt: skip


def test_piece_is_flat_top_and_bottom_with_half_a_circle_between():
    """400 by 300, 80 thick: 260 above and below, 40 pi round the nose, 12 on every side."""
    top = piece(nosed(brief(SHARP, seam=12)), "top")
    length = 2 * 260 + 40 * math.pi
    assert (top.cut.width, top.cut.height) == pytest.approx((424, length + 24))
    assert top.finished == pytest.approx((400, length))


def test_gusset_is_a_rectangle_with_a_half_round_end():
    gusset = piece(nosed(brief(SHARP, seam=12)), "gusset left")
    assert gusset.finished == pytest.approx((300, 80))
    area = 104 * (260 + 12) + math.pi * 52**2 / 2
    assert gusset.cut.area == pytest.approx(area)


def test_gussets_are_sewn_to_both_sides_from_the_top_s_back_round_the_nose():
    left, right = (s for s in nosed(brief(SHARP)).seams if s.name == "gusset seam")
    assert [str(e) for e in (left.a, left.b)] == ["top/left side", "gusset left/edge"]
    assert [str(e) for e in (right.a, right.b)] == ["top/right side", "gusset right/edge"]
    for seam in (left, right):
        assert seam.a.length == pytest.approx(520 + 40 * math.pi)
        assert seam.worst < 1e-9
        names = [name for name, _ in seam.a.stations]
        assert names == ["top", "1", "12 o'clock", "3 o'clock", "6 o'clock", "2", "bottom"]


def test_noses_of_the_gussets_point_to_the_front_as_seen_from_outside():
    pattern = nosed(brief(SHARP))
    noses = {side: {n.name: n.feet[0].real for n in piece(pattern, f"gusset {side}").notches}
             for side in ("left", "right")}  # fmt: skip
    assert noses["left"]["3 o'clock"] > noses["left"]["1"]
    assert noses["right"]["3 o'clock"] < noses["right"]["1"]


def test_straight_side_is_clipped_where_it_turns_round_the_nose():
    clips = guides(piece(nosed(brief(SHARP)), "top"), LineKind.CLIP)
    heights = [clip.path.bounds[1] for clip in clips]
    nose = -150 + 40  # where the nose begins
    assert clips
    assert min(heights) > nose - 40 * math.pi
    assert max(heights) < nose


def test_wide_nose_is_followed_without_a_clip():
    assert not guides(piece(nosed(brief(SHARP, seam=6), height=100), "top"), LineKind.CLIP)


def test_rounded_back_is_boxed_and_its_corners_are_notched_where_the_gussets_end():
    pattern = nosed(brief(ROUND_BACK))
    back = piece(pattern, "zip strip top")
    assert back.sew_length == pytest.approx(380 + 60 * math.pi)
    names = [n.name for n in piece(pattern, "top").notches]
    assert names.count("left join") == names.count("right join") == 2


def test_sides_of_unequal_length_take_gussets_of_their_own():
    pattern = nosed(brief(UNEQUAL))
    assert piece(pattern, "gusset left").finished == pytest.approx((340, 80))
    assert piece(pattern, "gusset right").finished == pytest.approx((400, 80))
    assert max(seam.worst for seam in pattern.seams) < 1e-6


def test_bottom_is_the_mirror_image_of_the_top():
    sew = BullNose(height=80).pattern(brief(ROUND_BACK)).pieces[0].guides[0].path
    low = -200 + 40 - 20 * math.pi
    for along in range(0, 2000, 50):
        point = sew.point_at(along)
        mirrored = point.conjugate() + 2j * low
        assert min(each.distance(mirrored) for each in sew.segments) < 1e-9


def test_without_a_zip_one_strip_closes_the_back_and_the_bottom_is_closed_by_hand():
    pattern = nosed(brief(SHARP), zip_=False)
    boxing = piece(pattern, "boxing")
    assert (boxing.cut.width, boxing.cut.height) == pytest.approx((424, 104))
    assert "zip" not in {n.name for n in piece(pattern, "gusset left").notches}
    steps = told(pattern.steps)
    assert "leave 300 mm open in its middle" in steps  # three quarters of 400
    assert "Close the opening by hand" in steps
    assert "Zip" not in told(pattern.fit.says)


def test_zip_is_opened_before_the_last_seam_shuts_it_in():
    steps = told(nosed(brief(SHARP)).steps)
    assert steps.index("Back seam") < steps.index("Open the zip") < steps.index("Bottom seam")


@pytest.mark.parametrize("zip_", [True, False])
def test_every_seam_is_walked_and_both_of_its_edges_name_the_same_stations(zip_):
    for seam in nosed(brief(ROUND_BACK), zip_=zip_).seams:
        assert seam.worst < 1e-6
        assert [name for name, _ in seam.a.stations] == [name for name, _ in seam.b.stations]


def test_nothing_is_taken_up_and_the_foam_is_cut_larger():
    pattern = nosed(brief(SHARP))
    assert piece(pattern, "foam template").cut.width == pytest.approx(412)
    assert "No take-up" in told(pattern.fit.says)
    assert "its front edge rounded to a radius of 40 mm" in told(pattern.fit.says)


def test_round_seats_and_rounded_front_corners_are_refused():
    assert "a bull-nose takes half the width" in objections(brief(ROUND))[0]
    (mistake,) = objections(brief(BENCH))
    assert "from sharp front corners, over 0 mm only; a bull-nose of this height takes" in mistake


def test_cushion_too_thick_for_its_depth_is_refused():
    """100 deep: a nose of 160 takes 80 of it, and leaves less than an inch of side."""
    shallow = RoundedRectangle(width=400, depth=100, corner=0).contour()
    (mistake,) = objections(brief(shallow), height=160)
    assert "over 100 mm only; a bull-nose of this height takes 105.4 mm" in mistake


def test_back_that_comes_to_a_point_is_too_short_to_be_filled_by():
    pointed = RoundedRectangle(width=70, depth=300, corner=0).contour()
    (mistake,) = objections(brief(pointed))
    assert "its back is only 70 mm long" in mistake


def test_other_measurements_that_do_not_go_together_are_refused():
    assert objections(brief(SHARP), height=40, zip_turning=50)[0].startswith("cover.zip_turning")
    assert objections(brief(SHARP, boxing_longest=300))[0].startswith("allowances.boxing_longest")
    assert objections(brief(SHARP, seam=50, boxing_join=10), foam_oversize=0.0) == []
    house = Polygon(corners=((200, 0), (400, 20), (400, 300), (0, 300), (0, 20))).contour()
    assert objections(brief(house)) == []


def test_label_of_a_gusset_has_the_room_about_its_middle_that_no_cross_takes():
    gusset = piece(nosed(brief(SHARP)), "gusset left")
    _, bottom, _, top = label_room(gusset)
    middle = gusset.cut.middle.imag
    assert bottom < middle < top
