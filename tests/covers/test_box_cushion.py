"""The box cushion: two faces, boxing as high as the foam, a zip round the back."""

import math

import pytest

from patternmaker.covers.box_cushion import BoxCushion
from patternmaker.covers.parts.cushions import turned_over
from patternmaker.geometry.contour import Contour
from patternmaker.materials import Material
from patternmaker.outlines.l_shape import LShape
from patternmaker.outlines.round_ended_bench import RoundEndedBench
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind, Pattern
from patternmaker.units import Unit
from tests.covers.seats import BENCH, CLOTH, ROUND, SHARP, brief, guides, kite, piece, pieces, told

LEATHER = Material()


def cushion(seat: Brief, **measures: float) -> Pattern:
    cover = BoxCushion(**{"height": 80, **measures})
    assert not list(cover.objections(seat))
    return cover.pattern(seat)


def objections(seat: Brief, **measures: float) -> list[str]:
    cover = BoxCushion(**{"height": 80, **measures})
    return [mistake.told() for mistake in cover.objections(seat)]


def test_pieces_are_two_faces_boxing_two_zip_strips_and_the_foam():
    assert [each.name for each in cushion(brief(SHARP)).pieces] == [
        "top", "bottom", "boxing", "zip strip top", "zip strip bottom", "foam template",
    ]  # fmt: skip
    assert {each.role for each in cushion(brief(SHARP)).pieces} == set(BoxCushion.roles)


def test_nothing_is_taken_up_even_of_leather():
    top = piece(cushion(brief(SHARP, LEATHER, seam=12)), "top")
    assert (top.cut.width, top.cut.height) == (424, 324)
    assert top.finished == (400, 300)


def test_boxing_is_cut_as_high_as_the_foam_and_two_allowances():
    boxing = piece(cushion(brief(SHARP, seam=12), height=75, zip_lap=0), "boxing")
    assert boxing.cut.height == pytest.approx(75 + 24)
    assert boxing.finished == pytest.approx((1400 - 600, 75))


def test_zip_runs_along_the_back_and_on_along_both_sides():
    pattern = cushion(brief(SHARP), zip_return=100)
    assert piece(pattern, "zip strip top").sew_length == pytest.approx(600)
    assert piece(pattern, "boxing").sew_length == pytest.approx(800)


def test_lap_is_laid_flat_in_the_boxing():
    """Over the zip, and back: its join lies two laps past where it is sewn round the faces."""
    with_lap = piece(cushion(brief(SHARP, boxing_join=10), zip_lap=30), "boxing")
    assert with_lap.cut.width == pytest.approx(800 + 60 + 20)
    assert with_lap.sew_length == pytest.approx(800)
    assert dict(with_lap.run)["lap fold"] == pytest.approx(830)
    folds = sorted(each.path.bounds[0] for each in guides(with_lap, LineKind.FOLD))
    assert folds == pytest.approx([800, 830])


def test_without_a_lap_nothing_is_folded():
    flat = cushion(brief(SHARP, boxing_join=10), zip_lap=0)
    assert piece(flat, "boxing").cut.width == pytest.approx(820)
    assert not guides(piece(flat, "boxing"), LineKind.FOLD)
    assert "lap fold" not in told(flat.steps)


def test_spare_is_left_at_the_end_that_is_closed_last():
    boxing = piece(cushion(brief(SHARP, boxing_join=10, boxing_spare=50), zip_lap=0), "boxing")
    assert boxing.cut.bounds[2] == pytest.approx(800 + 10 + 50)
    assert "50 mm spare at the right end" in told(boxing.notes)


def test_every_seam_is_walked_and_named():
    seams = cushion(brief(SHARP)).seams
    names = [seam.name for seam in seams]
    assert {name: names.count(name) for name in names} == {
        "zip seam": 1, "join": 4, "top seam": 2, "bottom seam": 2,
    }  # fmt: skip
    for name in ("top seam", "bottom seam"):
        assert sum(s.a.length for s in seams if s.name == name) == pytest.approx(1400)


def test_joins_are_as_long_as_half_the_height():
    joins = [seam for seam in cushion(brief(SHARP), height=80).seams if seam.name == "join"]
    assert [seam.a.length for seam in joins] == pytest.approx([40] * 4)


def test_both_zip_strips_read_from_left_to_right():
    pattern = cushion(brief(LShape().contour()))
    upper, lower = piece(pattern, "zip strip top"), piece(pattern, "zip strip bottom")
    assert upper.run == lower.run
    assert upper.run[0][0] == "right zip join"
    assert max(guides(upper, LineKind.FOLD)[0].path.bounds[1::2]) == -40
    assert max(guides(lower, LineKind.FOLD)[0].path.bounds[1::2]) == 0


def test_notches_of_both_edges_of_the_boxing_stand_one_above_the_other():
    boxing = piece(cushion(brief(BENCH)), "boxing")
    rows: dict[bool, dict[str, float]] = {True: {}, False: {}}
    for notch in boxing.notches:
        if abs(notch.inward.imag) > 0.5:
            rows[notch.inward.imag < 0][notch.name] = notch.feet[0].real
    assert rows[True] == pytest.approx(rows[False])
    assert len(rows[True]) > 5


def test_zip_s_middle_is_notched_in_both_ends_of_the_boxing():
    boxing = piece(cushion(brief(SHARP), height=80), "boxing")
    ends = [notch for notch in boxing.notches if notch.name == "zip"]
    assert [notch.feet[0].imag for notch in ends] == pytest.approx([-40, -40])


def test_bottom_is_the_top_turned_over():
    pattern = cushion(brief(LShape().contour()))
    top, bottom = piece(pattern, "top"), piece(pattern, "bottom")
    feet = {notch.name: notch.feet[0] for notch in top.notches if notch.name != "back"}
    turned = {notch.name: notch.feet[0] for notch in bottom.notches if notch.name != "back"}
    assert turned == pytest.approx({name: -z.conjugate() for name, z in feet.items()})
    assert bottom.cut.area == pytest.approx(top.cut.area)


def test_a_contour_turned_over_twice_is_itself():
    again = turned_over(turned_over(ROUND))
    assert isinstance(again, Contour)
    assert again.joints == ROUND.joints
    assert [edge.start for edge in again.segments] == [edge.start for edge in ROUND.segments]


def test_sewing_starts_on_the_zip_boxing_and_stops_on_the_boxing():
    pattern = cushion(brief(SHARP, sewing_open=60), zip_lap=0)
    (start,) = guides(piece(pattern, "zip strip top"), LineKind.SEWING)
    (stop,) = guides(piece(pattern, "boxing"), LineKind.SEWING)
    assert start.name == "start sewing"
    assert start.path.bounds[0] == pytest.approx(60)
    assert stop.name == "stop sewing"
    assert stop.path.bounds[0] == pytest.approx(740)
    assert len(guides(piece(pattern, "top"), LineKind.SEWING)) == 2
    assert not guides(piece(pattern, "bottom"), LineKind.SEWING)


def test_nothing_left_open_has_no_marks():
    assert not guides(piece(cushion(brief(SHARP, sewing_open=0)), "top"), LineKind.SEWING)


def test_clips_stand_at_both_edges_of_the_boxing_and_one_of_each_zip_strip():
    pattern = cushion(brief(SHARP), zip_return=50)
    assert len(guides(piece(pattern, "boxing"), LineKind.CLIP)) == 2 * 2  # corners, edges
    for name in ("zip strip top", "zip strip bottom"):
        clips = guides(piece(pattern, name), LineKind.CLIP)
        assert sorted(each.path.bounds[0] for each in clips) == pytest.approx([50, 450])


def test_foam_template_is_larger_on_every_side_and_of_card():
    foam = piece(cushion(brief(SHARP), foam_oversize=6), "foam template")
    assert (foam.cut.width, foam.cut.height) == (412, 312)
    assert foam.is_template
    assert foam.material.kind == "card"


def test_boxing_longer_than_its_strip_is_joined_with_a_whole_front():
    pattern = cushion(brief(BENCH, boxing_longest=1150), zip_return=50)
    panels = pieces(pattern, "boxing")
    assert [panel.name for panel in panels] == ["boxing 1", "boxing 2", "boxing 3"]
    assert max(panel.cut.width for panel in panels) <= 1150
    assert "front" in dict(panels[1].run)
    assert [seam.name for seam in pattern.seams].count("join") == 6


def test_zip_boxing_longer_than_the_strip_is_refused():
    (mistake,) = objections(brief(SHARP, boxing_longest=500))
    assert mistake == (
        "allowances.boxing_longest: 500 mm is less than the zip boxing takes, which is whole "
        "(624 mm); find a longer strip, or let the zip run less far along the sides"
    )


def test_zip_longer_than_the_boxing_has_room_for_is_refused():
    small = brief(RoundedRectangle(width=300, depth=200, corner=0).contour())
    (mistake,) = objections(small, zip_return=300)
    assert mistake == (
        "cover.zip_return: 300 mm makes the zip longer than the boxing has room for (299.2 mm); "
        "let the zip run less far along the sides"
    )
    assert not objections(small, zip_return=299)


def test_turning_wider_than_half_the_boxing_is_refused():
    (mistake,) = objections(brief(SHARP, seam=10), height=30, zip_turning=26)
    assert mistake.startswith("cover.zip_turning: 26 mm is more than half the height")
    assert "(25 mm)" in mistake


def test_point_at_the_back_takes_no_zip():
    (mistake,) = objections(brief(kite().scaled(0.8, 1.0)))
    assert mistake.startswith("outline: faces back for only 0 mm, and a zip needs a back edge of")


def test_allowance_wider_than_half_the_cushion_is_refused():
    small = RoundedRectangle(width=60, depth=60, corner=0).contour()
    assert any("more than half the cushion (30 mm)" in each for each in
               objections(brief(small, base=small, seam=31)))  # fmt: skip


def test_too_much_left_open_is_refused():
    (mistake,) = objections(brief(RoundedRectangle(width=300, depth=200, corner=0).contour(),
                                  sewing_open=260))  # fmt: skip
    assert mistake.startswith("allowances.sewing_open: 260 mm is more than a quarter of the seam")


def test_report_tells_the_zip_to_buy_and_the_foam_to_cut():
    says = told(cushion(brief(SHARP, seam=12), zip_return=100, foam_oversize=6).fit.says)
    assert "Finished 400 mm by 300 mm by 80 mm" in says
    assert "600 mm from join to join; from the roll cut 624 mm" in says
    assert "Foam 412 mm by 312 mm by 80 mm: 6 mm larger on every side" in says
    assert "No take-up" in says


def test_short_zip_is_warned_of():
    ends = RoundEndedBench(width=900, depth=330).contour()
    assert "must be folded" in told(cushion(brief(ends), zip_return=10).fit.warnings)
    assert "must be folded" not in told(cushion(brief(ends), zip_return=100).fit.warnings)


def test_strip_longer_than_cloth_gives_is_warned_of():
    long = RoundedRectangle(width=1600, depth=400, corner=0).contour()
    warned = told(cushion(brief(long)).fit.warnings)
    assert "The zip strip top takes a strip of" in warned
    assert not told(cushion(brief(long, boxing_longest=2000)).fit.warnings)


def test_zip_strips_are_cut_from_the_boxing_s_material_unless_they_have_their_own():
    vinyl, velour = Material(kind="vinyl"), Material(kind="velour")
    pattern = cushion(brief(SHARP, CLOTH, roles={"boxing": vinyl}))
    assert piece(pattern, "zip strip top").material is vinyl
    pattern = cushion(brief(SHARP, CLOTH, roles={"boxing": vinyl, "zip boxing": velour}))
    assert piece(pattern, "zip strip top").material is velour


def test_order_of_work_sews_the_zip_first_and_the_bottom_last():
    says = told(cushion(brief(BENCH)).steps)
    places = [says.index(part) for part in (
        "Turn 20 mm under along the zip edge", "at its lap fold",
        "leave the right zip join open", "Lay the boxing to the top",
        "Close the right zip join", "Open the zip", "Lay the boxing to the bottom",
        "Turn the cover through the zip",
    )]  # fmt: skip
    assert places == sorted(places)
    assert "staple" not in says


def test_inches_are_told_to_who_measures_in_inches():
    says = told(cushion(brief(SHARP)).fit.says, Unit.IN)
    assert "15 3/4 in" in says


@pytest.mark.parametrize("outline", [ROUND, BENCH, SHARP, kite()])
def test_any_outline_drafts_and_walks(outline):
    pattern = cushion(brief(outline))
    assert max(seam.worst for seam in pattern.seams) < 0.001
    whole = sum(seam.b.length for seam in pattern.seams if seam.name == "top seam")
    assert whole == pytest.approx(outline.length)
    assert math.isclose(pattern.fit.stretch_round, 1.0)


def test_boxing_may_have_an_allowance_of_its_own():
    pattern = cushion(brief(SHARP, seam=12, boxing_seam=15), height=75, zip_turning=20)
    assert piece(pattern, "boxing").cut.height == pytest.approx(75 + 30)
    assert piece(pattern, "zip strip bottom").cut.height == pytest.approx(37.5 + 15 + 20)
    assert piece(pattern, "top").cut.height == 324


def test_a_clip_beside_a_join_is_left_out():
    """A corner a hair past the end of the zip boxing gives way at the join by itself."""
    panels = cushion(brief(SHARP), zip_return=0).pieces[2:5]
    assert not guides(panels[1], LineKind.CLIP)
    near = cushion(brief(SHARP), zip_return=5).pieces[2:5]
    assert not guides(near[1], LineKind.CLIP)
    assert len(guides(cushion(brief(SHARP), zip_return=7).pieces[3], LineKind.CLIP)) == 2
