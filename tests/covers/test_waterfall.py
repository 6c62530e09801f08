"""The waterfall: the front falls from the top without a seam, and its corners are walked."""

import math

import pytest

from patternmaker.covers import COVERS
from patternmaker.covers.waterfall import Waterfall
from patternmaker.materials import Material
from patternmaker.outlines.bowed_front import BowedFront
from patternmaker.outlines.polygon import Polygon
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.outlines.rounded_trapezoid import RoundedTrapezoid
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind, Pattern
from tests.covers.seats import BENCH, CLOTH, ROUND, SHARP, brief, guides, piece, told, with_bay

BAY = with_bay(mouth=240)
HIDE = Material(kind="upholstery leather", take_up_across=0.02, take_up_along=0.03)


def fallen(seat: Brief, drop: float = 80.0) -> Pattern:
    cover = Waterfall(drop=drop)
    assert not list(cover.objections(seat))
    return cover.pattern(seat)


def objections(seat: Brief, drop: float = 80.0) -> list[str]:
    return [mistake.told() for mistake in Waterfall(drop=drop).objections(seat)]


def test_waterfall_is_a_known_cover_of_top_and_boxing_at_both_sides():
    assert COVERS.all["waterfall"] is Waterfall
    assert [each.name for each in fallen(brief(SHARP)).pieces] == [
        "top", "boxing left", "boxing right", "base template", "dust cover",
    ]  # fmt: skip


def test_sharp_bench_is_cut_in_one_as_deep_as_seat_fall_and_wrap_together():
    """400 by 300: 12 at the back, 300, a fall of 80, 25 to wrap; the sides run straight on."""
    top = piece(fallen(brief(SHARP, seam=12, wrap=25)), "top")
    assert (top.cut.width, top.cut.height) == pytest.approx((424, 417))
    assert top.cut.area == pytest.approx(424 * 417)
    assert top.finished == (400, 380)


def test_boxing_goes_from_each_end_of_the_fall_to_the_back():
    pattern = fallen(brief(SHARP))
    for side in ("left", "right"):
        assert piece(pattern, f"boxing {side}").sew_length == pytest.approx(500)
    assert piece(pattern, "top").sew_length == pytest.approx(1000)


def test_rounded_corner_is_boxed_and_the_fall_is_as_wide_as_the_straight_front():
    top = piece(fallen(brief(BENCH, seam=12)), "top")
    ends = [each.path for each in guides(top, LineKind.SEW) if each.name.endswith("end")]
    assert sorted(path.bounds[0] for path in ends) == pytest.approx([-340, 340])


def test_allowance_is_clipped_into_the_inner_corner_beside_the_fall():
    clips = [each.path for each in guides(piece(fallen(brief(BENCH)), "top"), LineKind.CLIP)]
    assert len(clips) == 2


@pytest.mark.parametrize("join", [12, 18, 8])
def test_straight_side_is_clipped_where_the_boxing_turns_down_the_fall(join):
    """400 by 300: square to the side, 1/8 in short of the ends of the front edge."""
    top = piece(fallen(brief(SHARP, seam=12, boxing_join=join)), "top")
    tips = [each.path.segments[-1].end for each in guides(top, LineKind.CLIP)]
    assert sorted(tips, key=lambda tip: tip.real) == pytest.approx(
        [-203.175 - 150j, 203.175 - 150j]
    )


def test_both_corner_seams_are_walked_from_the_corner_over_the_fold_to_the_cut_edge():
    corners = [s for s in fallen(brief(SHARP, wrap=25)).seams if s.name == "corner seam"]
    spans = [(str(s.a), str(s.b), s.spans[0]) for s in corners]
    assert spans == [
        ("boxing left/front end", "top/left end", ("left join", "fold", 80, 80)),
        ("boxing left/front end", "top/left end", ("fold", "end", 25, 25)),
        ("boxing right/front end", "top/right end", ("right join", "fold", 80, 80)),
        ("boxing right/front end", "top/right end", ("fold", "end", 25, 25)),
    ]


def test_seat_without_wrap_has_one_seam_at_each_corner():
    corners = [s for s in fallen(brief(SHARP, wrap=0)).seams if s.name == "corner seam"]
    assert [s.b.length for s in corners] == [80, 80]


def test_take_up_along_is_taken_of_depth_and_fall_with_one_allowance_and_not_of_the_wrap():
    """(300 + 80 + 12) (1 - 0.03) + 25 = 405.24; across (400 + 24) (1 - 0.02) = 415.52."""
    pattern = fallen(brief(SHARP, HIDE, seam=12, wrap=25))
    top = piece(pattern, "top")
    assert (top.cut.width, top.cut.height) == pytest.approx((415.52, 405.24))
    assert "300 mm + 80 mm = 380 mm" in told(pattern.fit.says)


def test_fall_is_stretched_to_the_plain_boxing_by_what_it_is_taken_up():
    """380 finished is sewn 368.24 long, so a fall of 80 is 80 / 380 of that."""
    pattern = fallen(brief(SHARP, HIDE, seam=12))
    eased = [s for s in pattern.seams if s.name == "corner seam" and s.spans[0][1] == "fold"]
    assert [s.eased for s in eased] == pytest.approx([80 - 80 * 368.24 / 380] * 2)
    assert max(s.worst for s in pattern.seams) < 1e-9
    assert "stretched by 2.5 mm" in told(pattern.fit.says)


def test_fold_is_notched_on_both_sides_of_each_corner_seam():
    pattern = fallen(brief(SHARP))
    for name, count in (("top", 2), ("boxing left", 1), ("boxing right", 1)):
        folds = [notch for notch in piece(pattern, name).notches if notch.name == "fold"]
        assert len(folds) == count


def test_boxing_of_short_strips_is_joined_evenly_on_both_sides():
    pattern = fallen(brief(BENCH, boxing_longest=500, boxing_spare=20))
    strips = [each for each in pattern.pieces if each.role == "boxing"]
    assert [each.name for each in strips] == [
        "boxing left 1", "boxing left 2", "boxing right 1", "boxing right 2",
    ]  # fmt: skip
    assert len({round(each.sew_length, 6) for each in strips}) == 1
    assert max(each.cut.width for each in strips) <= 500


def test_order_of_work_closes_the_join_at_the_back_after_the_top_and_then_the_corners():
    steps = told(fallen(brief(SHARP)).steps)
    assert steps.index("Top seam") < steps.index("Join: ") < steps.index("Corner seam")


def test_top_seam_is_left_open_beside_the_back_join_and_sewn_home_when_that_is_closed():
    """As the label of the boxing says: 50 mm on each side; its spare is trimmed in between."""
    steps = told(fallen(brief(SHARP, sewing_open=50, boxing_spare=30)).steps)
    order = ["Top seam", "end 50 mm short", "trim its spare (30 mm)", "Join: ", "home the 100 mm"]
    assert [steps.index(each) for each in order] == sorted(steps.index(each) for each in order)
    assert "short of the back join" not in told(fallen(brief(SHARP, sewing_open=0)).steps)


@pytest.mark.parametrize(
    ("outline", "says"),
    [
        (ROUND, "a waterfall takes half the width at least (160 mm); make the front straight"),
        (BowedFront(width=430, depth=400, bow=30).contour(), "over 0 mm only; a waterfall"),
        (BAY, "outline: it reaches further forward than its straight front, by 90 mm"),
    ],
)  # fmt: skip
def test_seat_without_a_straight_front_is_refused(outline, says):
    (mistake,) = objections(brief(outline))
    assert says in mistake


def test_topstitch_below_the_boxing_is_refused():
    (mistake,) = objections(brief(SHARP, seam=20, topstitch=12), drop=10)
    assert mistake.startswith("allowances.topstitch: 12 mm lies below the drop")


def test_strip_too_short_for_its_joins_and_spare_is_refused():
    (mistake,) = objections(brief(SHARP, boxing_longest=150, boxing_spare=75, boxing_join=40))
    assert mistake.startswith("allowances.boxing_longest: 150 mm leaves too little")


def test_allowance_too_wide_for_a_hollow_side_is_refused():
    hollow = Polygon(corners=((0, 0), (400, 0), (400, 100), (380, 110, 5), (400, 120), (400, 300),
                              (0, 300))).contour()  # fmt: skip
    assert any("allowances.seam" in mistake for mistake in objections(brief(hollow, seam=20)))


def test_leg_beside_the_fall_that_its_allowance_runs_into_is_refused():
    stepped = Polygon(corners=((0, 0), (400, 0), (400, 300), (345, 300), (345, 240), (315, 240),
                               (315, 300), (60, 300), (60, 290), (0, 290))).contour()  # fmt: skip
    wide = objections(brief(stepped, CLOTH, seam=6, boxing_join=40))
    (mistake,) = wide
    assert mistake.startswith("allowances.seam: 6 mm runs into the fall beside it")


def test_pointed_front_corner_loses_its_notch_where_the_allowance_is_cut_away():
    pointed = RoundedTrapezoid(front_width=700, back_width=100, depth=300, front_corner=0,
                               back_corner=0).contour()  # fmt: skip
    pattern = fallen(brief(pointed, seam=6, boxing_join=25, wrap=30), drop=10)
    assert not [n for each in pattern.pieces for n in each.notches if n.name == "fold"]


def test_inner_corner_tighter_than_the_allowance_is_cut_to_where_its_sides_meet():
    bay = Polygon(corners=((0, 0), (150, 0), (150, 90, 3), (280, 90, 3), (280, 0), (430, 0),
                           (430, 300), (0, 300))).contour()  # fmt: skip
    pattern = fallen(brief(bay, seam=12))
    assert max(seam.worst for seam in pattern.seams) < 1e-9


def test_unequal_corners_give_each_side_its_own_boxing():
    """Half the back 250, side 300; the round corner has 30 less of side and a quarter turn more."""
    seat = RoundedRectangle(width=500, depth=300, corner=0, front_right=30).contour()
    pattern = fallen(brief(seat))
    lengths = [piece(pattern, f"boxing {side}").sew_length for side in ("left", "right")]
    assert lengths == pytest.approx([550, 550 - 30 + 15 * math.pi])
