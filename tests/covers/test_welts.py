"""Welts in the seams of any cover."""

import math
from dataclasses import replace

import pytest

from patternmaker.covers import finishing
from patternmaker.covers.boxed import Boxed
from patternmaker.covers.parts.welts import strips_for, wrapping
from patternmaker.drawing.pieces import label_room
from patternmaker.materials import Material
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.finishing import Finishing, WeltWish
from patternmaker.pattern.piece import LineKind, Pattern, Piece
from tests.covers.seats import BENCH, CLOTH, IN, ROUND, brief, guides, piece, pieces, told
from tests.covers.welted import finished, objections, with_welts

LEATHER = Material(thickness=1)


def welt(seat: Brief, **wish) -> Piece:
    """Return the one piece that a welt in the top seam is cut as."""
    (found,) = pieces(finished(with_welts(seat, seam="top seam", **wish)), "welt")
    return found


def test_strip_goes_round_the_cord_and_its_layer_and_has_two_allowances():
    strip = welt(brief(material=LEATHER), cord=4, allowance=10)
    assert strip.cut.height == pytest.approx(math.pi * (4 + 1) + 20)


def test_strip_has_the_allowance_of_the_seat_unless_it_has_its_own():
    assert welt(brief(material=LEATHER, seam=15), cord=4).cut.height == pytest.approx(
        math.pi * 5 + 30
    )


def test_one_strip_round_a_seat_is_as_long_as_its_seam():
    strip = welt(brief(material=CLOTH), cut="straight")
    assert (strip.name, strip.count) == ("top seam welt", 1)
    assert strip.sew_length == pytest.approx(ROUND.length)
    assert strip.run[-1][1] == pytest.approx(ROUND.length)


def test_long_welt_is_joined_from_equal_strips_none_longer_than_the_material_gives():
    strip = welt(brief(BENCH, CLOTH), cut="straight")
    assert strip.count == 2
    assert strip.count * strip.sew_length == pytest.approx(BENCH.length)
    assert strip.cut.width <= 54 * IN


def test_longest_strip_is_what_the_job_says_where_it_does():
    assert welt(brief(ROUND)).count == 1
    assert welt(brief(ROUND, boxing_longest=600, boxing_join=12)).count == 2


def test_spare_makes_it_longer():
    assert welt(brief(), spare=40).sew_length == pytest.approx(ROUND.length + 40)


def test_ends_are_cut_at_45_degrees_with_the_allowance_of_the_join_square_to_the_cut():
    strip = welt(brief(), join=8)
    cut_end = strip.cut.segments[0]
    assert abs(cut_end.tangent().real) == pytest.approx(abs(cut_end.tangent().imag))
    for join in guides(strip, LineKind.JOIN):
        middle = join.path.point_at(join.path.length / 2)
        away = min(abs(each.distance(middle)) for each in strip.cut.segments[::2])
        assert away == pytest.approx(8)


def test_strips_fit_end_to_end_at_their_slant():
    """The far join line is the near one, moved by the length of the seam."""
    strip = welt(brief())
    near, far = guides(strip, LineKind.JOIN)
    for i in (0, 1):
        ends = [(path.point_at(0), path.point_at(path.length)) for path in (near.path, far.path)]
        assert ends[1][i] - ends[0][i] == pytest.approx(strip.sew_length)


def test_both_sew_lines_lie_at_the_allowance_and_the_fold_halfway():
    strip = welt(brief(material=LEATHER), cord=5, allowance=9)
    _, bottom, _, top = strip.cut.bounds
    lower, upper = sorted({line.path.bounds[1] for line in guides(strip, LineKind.SEW)})
    (fold,) = {line.path.bounds[1] for line in guides(strip, LineKind.FOLD)}
    assert (top - upper, lower - bottom) == pytest.approx((9, 9))
    assert fold == pytest.approx((upper + lower) / 2)
    assert upper - lower == pytest.approx(math.pi * 6)


def test_wider_strip_than_need_be_has_wider_allowances():
    strip = welt(brief(material=LEATHER), cord=4, allowance=10, strip=math.pi * 5 + 24)
    assert strip.cut.bounds[3] == pytest.approx(12)


@pytest.mark.parametrize(("kind", "bias"), [("woven cloth", True), ("upholstery leather", False)])
def test_what_frays_is_cut_on_the_bias_and_leather_straight(kind, bias):
    assert ("bias" in welt(brief(material=Material(kind=kind))).lay) is bias
    assert "bias" in welt(brief(material=Material(kind=kind)), cut="bias").lay
    assert "bias" not in welt(brief(material=Material(kind=kind)), cut="straight").lay


def test_nap_of_a_strip_is_not_told():
    assert welt(brief(material=Material(kind="velour")), cut="straight").lay == (
        "length across the warp"
    )


def test_welt_may_be_of_another_material():
    black = Material(name="black leather")
    assert welt(brief(roles={"welt": black})).material is black


def test_seam_with_a_welt_has_no_topstitch():
    plain, welted = finished(brief()), finished(with_welts(brief(), seam="top seam"))
    assert guides(piece(plain, "boxing"), LineKind.TOPSTITCH)
    assert not guides(piece(welted, "boxing"), LineKind.TOPSTITCH)
    assert "opstitch" in told(piece(plain, "boxing").notes)
    assert "opstitch" not in told(piece(welted, "boxing").notes)
    assert "The sew line is a gauge" in told(piece(welted, "boxing").notes)


def test_topstitch_stays_where_it_is_asked_for():
    pattern = finished(with_welts(brief(), seam="top seam", topstitch=True))
    assert guides(piece(pattern, "boxing"), LineKind.TOPSTITCH)
    assert "Topstitch" in told(piece(pattern, "boxing").notes)
    assert "Topstitch on the boxing" in told(pattern.steps)


def test_topstitch_stays_where_another_seam_is_welted():
    seat = brief(BENCH, boxing_longest=1600, boxing_join=12)
    pattern = finished(with_welts(seat, seam="join"))
    assert all(guides(each, LineKind.TOPSTITCH) for each in pieces(pattern, "boxing"))
    assert "Topstitch on the boxing" in told(pattern.steps)


def test_welt_of_an_open_seam_is_square_and_goes_through_the_allowances_at_both_ends():
    """A join of the boxing is as long as the boxing is high."""
    seat = with_welts(brief(seam=12, wrap=25), seam="join")
    (strip,) = pieces(finished(seat), "welt")
    assert strip.cut.width == pytest.approx(80 + 12 + 25 + 2 * 12)
    assert not strip.is_slanted
    assert not guides(strip, LineKind.JOIN)


def test_runs_of_one_length_are_cut_from_one_strip():
    seat = brief(BENCH, boxing_longest=1600, boxing_join=12)
    (strip,) = pieces(finished(with_welts(seat, seam="join")), "welt")
    assert strip.count == 2


def test_welt_in_each_of_two_seams():
    pattern = finished(with_welts(brief(), {"seam": "top seam"}, {"seam": "join"}))
    assert [each.name for each in pieces(pattern, "welt")] == ["top seam welt", "join welt"]


def test_welt_stands_with_the_sewn_pieces():
    names = [each.name for each in finished(with_welts(brief(), seam="top seam")).pieces]
    assert names.index("boxing") < names.index("top seam welt") < names.index("base template")


def test_its_ends_meet_at_the_back():
    pattern = finished(with_welts(brief(), seam="top seam"))
    assert "Its ends meet at the back" in told(piece(pattern, "top seam welt").notes)
    assert "Join its ends at 45° at the back, the cord butted" in told(pattern.steps)


def test_welt_is_made_up_after_the_pieces_are_cut_and_before_they_are_sewn():
    steps = told(finished(with_welts(brief(), seam="top seam")).steps)
    assert (
        steps.index("Snip the notches")
        < steps.index("fold it round its cord")
        < steps.index("Lay the")
    )
    assert "not topstitched" in steps


def test_joined_strips_are_joined_first():
    steps = told(finished(with_welts(brief(BENCH, CLOTH), seam="top seam")).steps)
    assert steps.index("Join the 2 strips of the top seam welt") < steps.index(
        "fold it round its cord"
    )


def test_report_tells_what_a_roll_gives_for_it():
    """A cord of 4 mm in cloth of 0.8 mm, allowances of 12 mm: (pi 4.8 + 24) mm wide."""
    seat = with_welts(brief(BENCH, CLOTH), seam="top seam", cut="straight")
    wide = math.pi * 4.8 + 24
    assert f"in 2 strips {round(2 * wide) / 2:g} mm wide round a cord of 4 mm" in told(
        finished(seat).fit.says
    )
    assert f"it takes {round(4 * wide) / 2:g} mm of the roll" in told(finished(seat).fit.says)


def test_hide_is_not_told_by_the_roll():
    seat = with_welts(brief(material=LEATHER), seam="top seam")
    assert "of the roll" not in told(finished(seat).fit.says)


def test_unknown_seam_is_refused_with_the_known_ones():
    assert objections(with_welts(brief(), seam="hem")) == [
        "welt 1.seam: 'hem' is not known; it can be top seam, join"
    ]


def test_two_welts_in_one_seam_are_refused():
    assert objections(with_welts(brief(), {"seam": "join"}, {"seam": "join"})) == [
        "welt 1.seam: 'join' has a welt already; give each seam one"
    ]


def test_cord_too_thick_for_its_strip_is_refused_with_the_thickest_that_it_bears():
    """(38.1 - 2 x 12.7) / pi - 0: 1 1/2 in of cloth with 1/2 in allowances."""
    flat = brief(material=Material(kind="woven cloth", thickness=0), seam=12.7)
    bears = (1.5 * IN - IN) / math.pi
    (refused,) = objections(with_welts(flat, seam="top seam", cord=IN / 4, strip=1.5 * IN))
    assert refused.startswith(
        f"welt 1.cord: 6.35 mm is more than its strip bears beside its allowances ({bears:.3f}"
    )
    assert not objections(with_welts(flat, seam="top seam", cord=bears, strip=1.5 * IN))


def test_strip_shorter_than_its_slanting_ends_is_refused():
    seat = brief(boxing_longest=150, boxing_join=12)
    wide = with_welts(seat, seam="top seam", cord=30, join=30, cut="straight")
    found = finishing.objections(Boxed(drop=80).pattern(brief()), wide)
    (refused,) = (mistake.told() for mistake in found)
    assert refused.startswith("welt 1.strip: a strip of 150 mm leaves a welt too little")


def test_width_round_a_cord_without_thickness():
    assert wrapping(10, 0) == pytest.approx(31.41592653589793)


@pytest.mark.parametrize(
    ("length", "longest", "lost", "count"),
    [(100, 100, 0, 1), (100.1, 100, 0, 2), (100, 100, 1, 2), (1, 50, 0, 1)],
)
def test_strips_that_a_length_takes(length, longest, lost, count):
    assert strips_for(length, longest, lost) == count


def test_finished_pattern_without_wishes_has_the_same_pieces():
    seat: Brief = brief()
    plain: Pattern = Boxed(drop=80).pattern(seat)
    done = finishing.finished(plain, seat)
    assert [each.cut for each in done.pieces] == [each.cut for each in plain.pieces]
    assert done.steps == plain.steps
    assert seat.finishing == Finishing()
    assert WeltWish(seam="top seam").cord == 4


def test_cover_without_seams_takes_no_welt():
    seat = with_welts(brief(), seam="top seam")
    bare = replace(Boxed(drop=80).pattern(seat), seams=())
    assert [mistake.told() for mistake in finishing.objections(bare, seat)] == [
        "welt 1.seam: this cover has no seam to sew it into; leave the welt away"
    ]


def test_lines_are_drawn_at_both_ends_and_leave_room_for_words_between():
    strip = welt(brief())
    assert len(guides(strip, LineKind.SEW)) == 4
    left, _, right, _ = label_room(strip)
    for line in guides(strip, LineKind.SEW):
        assert line.path.bounds[2] < left or line.path.bounds[0] > right
    assert right - left > 800


def test_short_strip_has_its_lines_all_along():
    (strip,) = pieces(finished(with_welts(brief(wrap=0, seam=6), seam="join")), "welt")
    assert len(guides(strip, LineKind.FOLD)) == 1


@pytest.mark.parametrize(
    ("material", "cut", "puckers"),
    [(CLOTH, "straight", True), (CLOTH, "bias", False), (LEATHER, "straight", False)],
)
def test_cloth_cut_straight_is_warned_of(material, cut, puckers):
    """Common practice, no source: leather gives every way, and cloth on the bias."""
    pattern = finished(with_welts(brief(material=material), seam="top seam", cut=cut))
    assert ("puckers" in told(pattern.fit.warnings)) is puckers
