import math
from itertools import pairwise

import pytest

from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind, Piece
from tests.covers.seats import (
    BENCH,
    CLOTH,
    IN,
    ROUND,
    SHARP,
    boxed,
    brief,
    guide,
    guides,
    objections,
    piece,
    pieces,
    told,
)

ROUND_LENGTH = 1005.3096491  # 320 pi


def panels(seat: Brief, drop: float = 80.0) -> list[Piece]:
    return pieces(boxed(seat, drop), "boxing")


def only(seat: Brief, drop: float = 80.0) -> Piece:
    (panel,) = panels(seat, drop)
    return panel


def joins(seat: Brief) -> dict[str, float]:
    """Return name and place of each join, round from the back."""
    found = panels(seat)
    starts = [piece.edges["upper edge"].stations[0][0] for piece in found]
    seams = [seam for seam in boxed(seat).seams if seam.a.piece == "top"]
    places = [seam.a.stations[0][1] for seam in seams]
    return dict(zip(starts, places, strict=True))


def test_boxing_is_as_wide_as_drop_allowance_and_wrap():
    assert only(brief(seam=12, wrap=30), drop=85).cut.height == 85 + 12 + 30


def test_boxing_is_as_long_as_the_seam_and_an_allowance_at_each_end():
    assert only(brief(seam=12)).cut.width == pytest.approx(ROUND_LENGTH + 24)
    assert only(brief(seam=12, boxing_join=20)).cut.width == pytest.approx(ROUND_LENGTH + 40)


def test_boxing_is_cut_to_the_top_as_drafted_not_to_the_seat():
    leather = only(brief(ROUND, Material()))
    assert leather.sew_length == pytest.approx((344 * 0.975 - 24) / 320 * ROUND_LENGTH)


def test_spare_is_left_at_the_far_end_past_the_computed_join_line():
    panel = only(brief(seam=12, boxing_spare=75))
    assert panel.cut.width == pytest.approx(ROUND_LENGTH + 24 + 75)
    assert panel.cut.bounds[0] == -12
    lines = [join.path.bounds[0] for join in guides(panel, LineKind.JOIN)]
    assert lines == pytest.approx([0, ROUND_LENGTH])
    assert "75 mm spare at the right end: trim at the join line" in told(panel.notes)


def test_lines_of_the_boxing_lie_where_the_drop_puts_them():
    panel = only(brief(seam=12, wrap=30, topstitch=5), drop=85)
    levels = {kind: guide(panel, kind).path.bounds[1]
              for kind in (LineKind.SEW, LineKind.TOPSTITCH, LineKind.FOLD)}  # fmt: skip
    assert levels == {LineKind.SEW: 0, LineKind.TOPSTITCH: -5, LineKind.FOLD: -85}
    assert panel.cut.bounds[1] == -115
    assert guide(panel, LineKind.FOLD).path.width == panel.cut.width


def test_boxing_says_its_allowances():
    notes = told(only(brief(seam=12, boxing_join=10, wrap=30, topstitch=5), drop=85).notes)
    assert notes.splitlines() == [
        "Seam allowance 12 mm, at the joins 10 mm",
        "Topstitch 5 mm below the seam",
        "Sew and topstitch lines are gauges: trace neither on the show side",
        "Drop 85 mm, wrap-under 30 mm",
        "Close the join at the right end last: leave 89 mm unsewn on each side",
    ]


@pytest.mark.parametrize(
    ("kind", "lay"),
    [
        ("upholstery leather", "length along the backbone"),
        ("vinyl", "length across the roll"),
        ("woven cloth", "length across the warp"),
        ("velour", "length across the warp, nap downward"),
    ],
)
def test_boxing_says_how_it_lies(kind, lay):
    assert only(brief(roles={"boxing": Material(kind=kind)})).lay == lay


def test_boxing_s_arrow_leads_up_to_the_seat():
    assert only(brief()).arrow == (1j, "SEAT")


def test_join_at_the_back_meets_the_double_notch_itself():
    panel = only(brief())
    assert "back" not in {notch.name for notch in panel.notches}
    assert (panel.run[0][0], panel.run[-1][0]) == ("back", "back")
    assert panel.run[-1][1] == pytest.approx(ROUND_LENGTH)


def test_double_notch_meets_a_double_notch_where_no_join_does():
    back = piece(boxed(brief(BENCH, boxing_longest=1600)), "boxing back")
    (double,) = (notch for notch in back.notches if len(notch.feet) == 2)
    assert double.name == "back"
    assert [foot.real for foot in double.feet] == pytest.approx([340 - 3, 340 + 3])
    assert {foot.imag for foot in double.feet} == {12}


def test_sewing_marks_stand_on_the_boxing_where_they_stand_on_the_top():
    marks = {g.name: g.path.bounds[0] for g in guides(only(brief()), LineKind.SEWING)}
    assert marks == pytest.approx(
        {"start sewing": 3.5 * IN, "stop sewing": ROUND_LENGTH - 3.5 * IN}
    )


def test_a_small_seat_leaves_an_eighth_of_its_seam_unsewn_on_each_side():
    seat = brief(Circle(diameter=80).contour(), CLOTH, wrap=10)
    marks = {g.name: g.path.bounds[0] for g in guides(only(seat), LineKind.SEWING)}
    assert marks["start sewing"] == pytest.approx(10 * math.pi)


def test_the_last_panel_says_which_join_is_closed_last():
    front, back = panels(brief(boxing_longest=ROUND_LENGTH - 100))
    assert "Close the join at the right end last" in told(back.notes)
    assert "Close the join" not in told(front.notes)


def test_clips_of_a_sharp_corner_stop_an_eighth_short_of_the_seam():
    strokes = [clip.path for clip in guides(only(brief(SHARP, seam=12)), LineKind.CLIP)]
    assert [stroke.bounds[0] for stroke in strokes] == [200, 500, 900, 1200]
    assert {(stroke.bounds[1], stroke.bounds[3]) for stroke in strokes} == {(IN / 8, 12)}


def test_one_panel_serves_where_the_material_is_long_enough():
    enough = ROUND_LENGTH + 24 + 50
    assert len(panels(brief(boxing_longest=enough + 1e-6, boxing_spare=50))) == 1
    assert len(panels(brief(boxing_longest=enough - 0.1, boxing_spare=50))) == 2


def test_joins_of_two_panels_stand_behind_the_back_corners_alike_on_both_sides():
    """Behind the corners' arcs: 380 - 40 mm to either side of the back."""
    whole = BENCH.length
    assert joins(brief(BENCH, boxing_longest=1600)) == pytest.approx(
        {"left join": 340, "right join": whole - 340}
    )


def test_joins_stand_at_sharp_back_corners():
    assert joins(brief(SHARP, boxing_longest=1200)) == pytest.approx(
        {"left join": 200, "right join": 1200}
    )


def test_joins_of_a_round_seat_stand_as_far_back_as_the_strip_lets_them():
    found = panels(brief(boxing_longest=800))
    assert [panel.name for panel in found] == ["boxing front", "boxing back"]
    assert found[0].cut.width == pytest.approx(800)
    longer = panels(brief(boxing_longest=1000))
    assert longer[1].sew_length == pytest.approx(150)  # a shorter one would be a patch


@pytest.mark.parametrize(
    ("seat", "backs"),
    [
        (brief(ROUND, boxing_longest=530), 1),
        (brief(ROUND, boxing_longest=530, boxing_spare=100), 2),
        (brief(ROUND, boxing_longest=530, boxing_spare=260), 3),
        (brief(Circle(diameter=130).contour(), boxing_longest=305, boxing_spare=150,
               boxing_join=50, sewing_open=20), 4),
    ],
)  # fmt: skip
def test_back_takes_as_many_equal_panels_as_it_must(seat, backs):
    found = panels(seat)
    front = piece(boxed(seat), "boxing front")
    behind = [panel.sew_length for panel in found if panel.name != front.name]
    assert behind == pytest.approx([(seat.outline.length - front.sew_length) / backs] * backs)
    assert max(panel.cut.width for panel in found) <= seat.allowances.boxing_longest + 1e-9


def test_join_between_two_back_panels_is_at_the_back():
    found = joins(brief(ROUND, boxing_longest=530, boxing_spare=100))
    assert list(found) == ["back", "left join", "right join"]
    assert found["back"] == 0


@pytest.mark.parametrize(
    "seat",
    [
        brief(ROUND, boxing_longest=530, boxing_spare=260),
        brief(Circle(diameter=130).contour(), boxing_longest=305, boxing_spare=150,
              boxing_join=50, sewing_open=20),
    ],
)  # fmt: skip
def test_back_joins_are_numbered_round_the_seat_and_alike_on_both_sides(seat):
    found = joins(seat)
    assert list(found.values()) == sorted(found.values())
    assert [name for name in found if name.startswith("back join")] == [
        "back join 1",
        "back join 2",
    ]
    for near, far in (("left join", "right join"), ("back join 1", "back join 2")):
        assert found[near] == pytest.approx(seat.outline.length - found[far])


def test_back_panels_are_numbered_round_the_seat():
    found = panels(brief(ROUND, boxing_longest=530, boxing_spare=260))
    assert [(panel.name, panel.run[0][0]) for panel in found] == [
        ("boxing back 1", "back join 1"),
        ("boxing front", "left join"),
        ("boxing back 2", "right join"),
        ("boxing back 3", "back join 2"),
    ]


def test_front_panel_is_whole():
    found = panels(brief(BENCH, boxing_longest=1600))
    front = found[0]
    assert front.name == "boxing front"
    stops = [name for name, _ in front.run]
    assert {"front", "front left", "front right", "left", "right"} <= set(stops)


def test_only_the_panel_closed_last_has_the_spare():
    found = panels(brief(BENCH, boxing_longest=1600, boxing_spare=60))
    assert [panel.cut.width - panel.sew_length for panel in found] == pytest.approx([24, 84])


def test_corner_in_front_of_the_widest_points_is_no_back_corner():
    """A round back and two front corners: the joins stand at or behind the widest points."""
    joints = {name: at for name, at in BENCH.joints.items() if not name.startswith("back ")}
    seat = type(BENCH)(BENCH.segments, joints)
    found = joins(brief(seat, boxing_longest=1600))
    assert found["left join"] <= seat.station("left")


def test_join_at_a_corner_too_near_the_back_stands_at_its_middle():
    seat = RoundedRectangle(width=200, depth=300, corner=60).contour()
    found = joins(brief(seat, boxing_longest=800))
    assert found["left join"] == pytest.approx(seat.station("back left"))


def test_panels_are_walked_on_from_join_to_join():
    found = panels(brief(BENCH, boxing_longest=1600))
    for panel, after in pairwise([*found, found[0]]):
        assert panel.run[-1][0] == after.run[0][0]


def test_strip_too_short_for_any_panel_is_refused_with_what_it_takes():
    assert objections(brief(BENCH, boxing_longest=160)) == [
        (
            "allowances.boxing_longest: 160 mm is less than a panel of this boxing takes (174 mm); "
            "find a longer strip, or sew one up to that length first"
        )
    ]
    small = Circle(diameter=220).contour()
    assert "takes (369.575 mm)" in objections(brief(small, boxing_longest=300, sewing_open=20))[0]


def test_front_longer_than_a_strip_is_joined_at_its_corners_too():
    """A bench 760 wide: from the middle of a front corner to the other, and each side by itself."""
    seat = brief(BENCH, boxing_longest=1000)
    found = panels(seat)
    assert [panel.name for panel in found] == [
        "boxing left", "boxing front", "boxing right", "boxing back",
    ]  # fmt: skip
    corner = BENCH.station("front left")
    assert joins(seat) == pytest.approx({
        "left join": 340, "front left join": corner,
        "front right join": BENCH.length - corner, "right join": BENCH.length - 340,
    })  # fmt: skip


def test_round_front_longer_than_a_strip_is_joined_as_far_round_as_it_reaches():
    seat = brief(Circle(diameter=700).contour(), boxing_longest=820, sewing_open=60)
    found = panels(seat)
    front = next(panel for panel in found if panel.name == "boxing front")
    assert front.cut.width == pytest.approx(820)
    assert max(panel.cut.width for panel in found) <= 820 + 1e-9


def test_side_longer_than_a_strip_takes_equal_panels():
    seat = brief(RoundedRectangle(width=500, depth=1500, corner=0).contour(), boxing_longest=700)
    assert [panel.name for panel in panels(seat)] == [
        "boxing left 1", "boxing left 2", "boxing left 3", "boxing front",
        "boxing right 1", "boxing right 2", "boxing right 3", "boxing back",
    ]  # fmt: skip
    assert list(joins(seat)) == [
        "left join", "left join 2", "left join 3", "front left join", "front right join",
        "right join 3", "right join 2", "right join",
    ]  # fmt: skip


def test_strip_that_its_allowances_use_up_is_refused():
    seat = brief(Circle(diameter=150).contour(), boxing_longest=200, boxing_join=50,
                 boxing_spare=100, sewing_open=20)  # fmt: skip
    assert "boxing_longest: 200 mm is less than" in objections(seat)[0]


def test_more_left_unsewn_than_a_quarter_of_the_seam_is_refused():
    assert objections(brief(sewing_open=251.4)) == [
        (
            "allowances.sewing_open: 251.4 mm is more than a quarter of the seam (251.327 mm); "
            "leave less unsewn"
        )
    ]
    assert objections(brief(sewing_open=251.3)) == []
