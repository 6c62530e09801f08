"""The pull-over cover of a slip seat."""

import pytest

from patternmaker.covers.pull_over import PullOver
from patternmaker.geometry.contour import Contour
from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.l_shape import LShape
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.outlines.t_shape import TShape
from patternmaker.pattern.piece import LineKind, Pattern
from tests.covers.pulled import ROUNDED, pulled, refused, top
from tests.covers.seats import (
    ROUND,
    SHARP,
    brief,
    closed,
    guides,
    kite,
    piece,
    pieces,
    told,
    with_bay,
)

LEATHER = Material(take_up=0.025)
TWO_WAYS = Material(take_up_across=0.02, take_up_along=0.04)
BAY = with_bay(width=700, depth=500, mouth=300, reach=200)


def folds(pattern: Pattern) -> list[Contour]:
    return [closed(g.path) for g in guides(top(pattern), LineKind.FOLD)][:2]


def test_side_is_foam_and_board_unless_the_drop_is_measured():
    assert PullOver(foam=40, board=10).side == 50
    assert PullOver(foam=40, board=10, drop=55).side == 55


def test_tight_width_is_taken_up_and_the_wrap_is_not():
    """(W + 2 side)(1 - r) + 2 wrap."""
    cut = top(pulled(brief(ROUNDED, LEATHER, wrap=30))).cut
    assert (cut.width, cut.height) == pytest.approx((520 * 0.975 + 60, 420 * 0.975 + 60))


def test_take_up_differs_across_and_along():
    cut = top(pulled(brief(ROUNDED, TWO_WAYS, wrap=30))).cut
    assert (cut.width, cut.height) == pytest.approx((520 * 0.98 + 60, 420 * 0.96 + 60), abs=1e-3)


def test_every_length_of_the_tight_part_comes_right_once_it_is_pulled():
    fold, board = folds(pulled(brief(ROUNDED, LEATHER)))
    assert (fold.width, fold.length) == pytest.approx((400 * 0.975, ROUNDED.length * 0.975))
    assert (board.width, board.height) == pytest.approx((520 * 0.975, 420 * 0.975))


def test_wrap_is_as_wide_as_given_all_round():
    pattern = pulled(brief(ROUNDED, TWO_WAYS, wrap=30))
    _, board = folds(pattern)
    cut = top(pattern).cut
    for i in range(100):
        place = cut.point_at(cut.length * i / 100)
        assert board.segments[board.nearest(place)].distance(place) == pytest.approx(30, abs=1e-6)


def test_old_cover_has_had_its_take_up():
    cut = top(pulled(brief(ROUNDED, LEATHER, wrap=30, taken="old cover"))).cut
    assert cut.width == pytest.approx(580)


def test_cut_size_is_rounded_with_its_wrap():
    pattern = pulled(brief(ROUNDED, LEATHER, wrap=30, round_cut_to=10))
    assert (top(pattern).cut.width, top(pattern).cut.height) == pytest.approx((570, 470))
    assert "rounded to the nearest 10 mm" in told(pattern.fit.says)


def test_pieces_are_the_cover_the_base_template_and_the_dust_cover():
    names = [each.name for each in pulled(brief(ROUNDED)).pieces]
    assert names == ["top cover", "base template", "dust cover"]


def test_reference_line_stays_on_the_base():
    pattern = pulled(brief(ROUNDED))
    assert not guides(top(pattern), LineKind.REFERENCE)
    assert guides(piece(pattern, "base template"), LineKind.REFERENCE)


def test_centre_marks_stand_on_the_cut_edge_the_back_one_double():
    notches = top(pulled(brief(ROUNDED, wrap=30))).notches
    assert [(n.name, len(n.feet)) for n in notches] == [
        ("back", 2), ("left", 1), ("front", 1), ("right", 1)
    ]  # fmt: skip
    left = notches[1]
    assert left.feet[0] == pytest.approx(-290)
    assert left.inward == pytest.approx(1)


def test_corner_at_a_centre_marks_it_itself():
    piece = top(pulled(brief(kite())))
    assert not piece.notches
    assert "No notch at back, left, front, right" in told(piece.notes)


def test_narrow_wrap_is_warned_of_and_bears_no_notch():
    pattern = pulled(brief(ROUNDED, wrap=12))
    assert not top(pattern).notches
    assert "12 mm leaves little to staple" in told(pattern.fit.warnings)
    assert "No notch" not in told(top(pattern).notes)
    for none in (0, 1e-90):
        assert not top(pulled(brief(SHARP, wrap=none))).notches


def test_board_line_is_broken_where_a_corner_is_cut_out():
    lines = guides(top(pulled(brief(SHARP))), LineKind.FOLD)
    assert [line.name for line in lines] == ["top edge"] + ["board's lower edge"] * 4
    assert [line.path.length for line in lines[1:]] == pytest.approx([300, 400, 300, 400])


def test_corner_seams_are_walked_and_said():
    pattern = pulled(brief(SHARP))
    assert [str(seam.a) for seam in pattern.seams] == [
        f"top cover/{name}, first leg"
        for name in ("back left", "front left", "front right", "back right")
    ]
    assert {seam.name for seam in pattern.seams} == {"corner seam"}
    assert "both legs of each of 4 meet within 0.001 mm" in told(pattern.fit.says)


def test_main_edge_is_the_line_on_the_board_all_round():
    edge = top(pulled(brief(ROUNDED))).edges["edge"]
    assert [name for name, _ in edge.stations] == ["back", "left", "front", "right", "back"]
    assert edge.length == pytest.approx(ROUNDED.length + 2 * 3.141592653589793 * 60)


def test_fullness_of_a_round_seat_is_two_pi_times_the_side_and_again_times_the_wrap():
    """2 pi 60 = 377; 2 pi 30 = 188.5."""
    says = told(pulled(brief(ROUND, wrap=30)).fit.says)
    assert "377 mm more than round the top; its corners take up 377 mm" in says
    assert "188.5 mm more again" in says
    assert "eased" not in says


def test_gentle_bow_is_eased_in_and_said():
    bench = RoundedRectangle(width=1300, depth=1300, corner=640).contour()
    says = told(pulled(brief(bench, wrap=30)).fit.says)
    assert "its corners take up nothing, 377 mm is eased in" in says


def test_corners_that_are_alike_are_told_as_one():
    says = told(pulled(brief(ROUNDED)).fit.says)
    assert (
        "Back left, front left, front right, back right: 4 pleats, each 12 mm deep at the board's "
        "lower edge: 94 mm taken up"
    ) in says
    assert "one pleat, each" in told(pulled(brief(ROUNDED), corner="pleats", pleats=1).fit.says)
    assert "dart, 94 mm taken up" in told(pulled(brief(ROUNDED), corner="dart").fit.says)
    ends = RoundedRectangle(width=600, depth=300, corner=150).contour()
    assert "Left, right: dart 2 times" in told(pulled(brief(ends), corner="dart").fit.says)
    small = RoundedRectangle(width=400, depth=300, corner=30).contour()
    assert "back right: eased in" in told(pulled(brief(small), drop=4).fit.says)


def test_stretch_of_the_pull_is_told_or_warned_of():
    says = told(pulled(brief(ROUNDED, LEATHER)).fit.says)
    assert "Top cover, from left to right, stretches 2.56 % to go on" in says
    tight = pulled(brief(ROUNDED, Material(take_up=0.1))).fit.warnings
    assert "Top cover, from left to right, must stretch" in told(tight)
    assert "No take-up in the top cover (woven cloth)" in told(pulled(brief(ROUNDED)).fit.says)


def test_legs_that_differ_are_said():
    says = told(pulled(brief(SHARP, TWO_WAYS)).fit.says)
    assert "Legs differ by up to 1 mm as drawn" in says
    assert "Keep the arrow's way" in told(top(pulled(brief(SHARP, TWO_WAYS))).notes)


def test_inner_corner_gets_a_relief_cut_to_the_top_edge_and_a_patch():
    seat = brief(LShape().contour(), wrap=30)
    pattern = pulled(seat)
    cut, end = (g.path for g in guides(top(pattern), LineKind.RELIEF))
    outline = seat.outline
    short = [each.distance(cut.point_at(cut.length)) for each in outline.segments]
    assert min(short) == pytest.approx(25.4 / 8)
    assert end.length == pytest.approx(6)
    (patch,) = pieces(pattern, "corner patch")
    assert patch.cut.height == pytest.approx(25.4 / 2 + 60 + 30)
    assert "no cover in one piece reaches round there" in told(pattern.fit.warnings)
    assert any("Fix the patch inner corner first" in told([step]) for step in pattern.steps)


def test_gap_of_a_sharp_inner_corner_is_twice_the_side():
    pattern = pulled(brief(BAY, wrap=30))
    assert "bay left: no cover" in told(pattern.fit.warnings)
    assert "opens to 120 mm" in told(pattern.fit.warnings)
    first, second = pieces(pattern, "corner patch")
    assert first.cut.width == second.cut.width == pytest.approx(120 + 2 * 25.4)


def test_wide_inner_bend_is_cut_across_the_wrap_only_if_the_side_can_stretch():
    """6 mm of side round a radius of 140 mm must stretch 4.5 %, which a giving cloth does."""
    giving = Material(kind="woven cloth", give=0.1)
    bay = with_bay(width=900, depth=600, mouth=400, reach=300, corner=140)
    pattern = pulled(brief(bay, giving, wrap=30), drop=6)
    cuts = [g.path for g in guides(top(pattern), LineKind.RELIEF) if g.name == "bay left"]
    assert len(cuts) == 5
    assert all(cut.length == pytest.approx(30 - 25.4 / 8) for cut in cuts)
    assert not pieces(pattern, "corner patch")
    assert "must stretch 4.48 % round the inner bend bay left" in told(pattern.fit.warnings)


def test_wide_inner_bend_of_what_does_not_give_is_cut_to_the_top_edge():
    """A quarter turn with sides of 60 lacks 94.2 mm, round a radius of 80 as of any wider."""
    bay = with_bay(width=900, depth=600, mouth=400, reach=300, corner=80)
    pattern = pulled(brief(bay, wrap=30))
    assert "bay left: no cover in one piece" in told(pattern.fit.warnings)
    assert "opens to 94 mm" in told(pattern.fit.warnings)
    assert pieces(pattern, "corner patch")[0].cut.width == pytest.approx(
        80 * 1.5707963 + 2 * 25.4
    )  # its bend is the longer


def test_little_stretch_round_an_inner_bend_is_not_worth_a_warning():
    giving = Material(kind="woven cloth", give=0.1)
    bay = with_bay(width=900, depth=600, mouth=400, reach=300, corner=140)
    pattern = pulled(brief(bay, giving, wrap=30), drop=3.5)
    assert guides(top(pattern), LineKind.RELIEF)
    assert "inner bend" not in told(pattern.fit.warnings)


def test_low_side_with_a_narrow_wrap_needs_no_relief():
    assert not guides(top(pulled(brief(BAY, wrap=4), drop=4)), LineKind.RELIEF)


def test_hardly_hollow_side_needs_no_cut():
    bay = with_bay(width=900, depth=600, mouth=400, reach=300, corner=140)
    pattern = pulled(brief(bay, Material(give=0.5), wrap=30), drop=6)
    assert not guides(top(pattern), LineKind.RELIEF)


def test_bay_too_narrow_for_its_sides_is_refused_by_the_field_that_sets_them():
    seat = brief(with_bay(mouth=100), wrap=20)
    (mistake,) = refused(seat)
    assert mistake == (
        "cover.drop: a line 60 mm outside the edge closes up on itself; the most that fits is "
        "49.9 mm"
    )
    assert refused(seat, drop=None, foam=48)[0].startswith("cover.foam: a line 60 mm")


def test_wrap_that_closes_a_bay_is_refused():
    (mistake,) = refused(brief(with_bay(mouth=160), wrap=30))
    assert mistake.startswith("allowances.wrap: a line 30 mm outside the edge closes up")


def test_corner_in_the_way_of_a_side_is_refused_with_the_height_that_fits():
    """An ear of 50 mm, sharp at its tip: a side of 30 and its wrap of 20 are the stem's."""
    seat = brief(TShape(width=600, back_width=500, corner=0, inner_corner=0).contour(), wrap=20)
    (mistake,) = refused(seat)
    assert mistake == (
        "cover.drop: another part of the cover, laid flat, is in the way of ear left: the side is "
        "60 mm high, the most that has room is 29.9 mm; make the sides lower or the wrap narrower"
    )
    assert not refused(seat, drop=29.9)
    assert refused(seat, drop=30.1)


def test_corner_close_to_an_inner_one_takes_up_only_what_hangs_clear():
    seat = brief(TShape().contour())
    says = told(pulled(seat).fit.says)
    assert "Ear left, ear right: 4 pleats" in says


def test_base_that_closes_up_is_refused_as_under_any_cover():
    assert refused(brief(ROUND, dust_cover_inset=50, base=Circle(diameter=60).contour()))


def test_steps_sew_the_corners_and_staple_the_centres_first():
    said = [told([step]) for step in pulled(brief(SHARP)).steps]
    order = [
        next(i for i, each in enumerate(said) if words in each)
        for words in ("Sew the cut-out corners", "draw the reference line",
                      "Bring its centre marks", "opposite pairs", "Lap the two wraps",
                      "Look from above", "dust cover")
    ]  # fmt: skip
    assert order == sorted(order)


def test_steps_say_how_pleats_and_darts_are_laid():
    assert "bring it to the line at its head" in told(pulled(brief(ROUNDED)).steps)
    assert "Fold each dart (back left" in told(pulled(brief(ROUNDED), corner="dart").steps)
    assert "snip the relief cut only" in told(pulled(brief(BAY, wrap=30)).steps)


def test_label_says_how_the_side_came_about():
    assert "60 mm down (as measured)" in told(top(pulled(brief(ROUNDED))).notes)
    notes = told(top(pulled(brief(ROUNDED), drop=None, foam=40, board=10)).notes)
    assert "50 mm down (foam and board)" in notes


def test_cut_out_that_takes_the_wrap_away_beside_an_inner_corner_is_refused():
    """A leg of 130 mm, and sides 108.5 mm high: its cut-out reaches into the bay."""
    seat = LShape(width=633.5, depth=500, back_depth=370, leg_width=310.5, inner_corner=25)
    cover = PullOver(drop=108.5, corner="cut-out")
    (mistake,) = cover.objections(brief(seat.contour(), seam=8.5, wrap=55))
    assert mistake.told().startswith("cover.corner: a cut-out takes away the wrap beside")
