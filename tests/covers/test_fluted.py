"""The fluted top: its panels meet each other and, as flat as they were, the boxing."""

import math

import pytest

from patternmaker.covers import COVERS
from patternmaker.covers.fluted import Fluted
from patternmaker.covers.parts.flute import ACROSS
from patternmaker.materials import Material
from patternmaker.outlines.polygon import Polygon
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind, Pattern
from tests.covers.seats import (
    BENCH,
    ROUND,
    SHARP,
    boxed,
    brief,
    guide,
    guides,
    piece,
    told,
    with_bay,
)

WIDE = RoundedRectangle(width=600, depth=300, corner=0).contour()


def fluted(seat: Brief, panels: int = 5, roll: float = 8.0, **fields: str) -> Pattern:
    cover = Fluted(drop=80.0, panels=panels, roll=roll, **fields)
    assert not list(cover.objections(seat))
    return cover.pattern(seat)


def objections(seat: Brief, panels: int, roll: float, **fields: str) -> list[str]:
    cover = Fluted(drop=80.0, panels=panels, roll=roll, **fields)
    return [mistake.told() for mistake in cover.objections(seat)]


def tops(pattern: Pattern) -> list[str]:
    return [each.name for each in pattern.pieces if each.role == "top"]


def test_fluted_is_a_known_cover_of_panels_from_left_to_right():
    pattern = fluted(brief(SHARP))
    assert COVERS.all["fluted"] is Fluted
    assert tops(pattern) == [f"panel {i}" for i in range(1, 6)]
    middles = [piece(pattern, name).cut.middle.real for name in tops(pattern)]
    assert middles == sorted(middles)


def test_flat_panels_are_cut_as_wide_as_their_share_and_two_allowances():
    pattern = fluted(brief(WIDE, seam=12), panels=6, roll=0)
    assert [piece(pattern, n).cut.width for n in tops(pattern)] == pytest.approx([124] * 6)
    assert [piece(pattern, n).cut.height for n in tops(pattern)] == pytest.approx([324] * 6)
    assert "6 panels of 100 mm, flat" in told(pattern.fit.says)


def test_rolled_panel_is_widened_in_its_middle_by_what_its_arc_has_more_than_its_chord():
    """Chord 100, rise 10: radius 130, arc 102.6484; an inner panel takes all, an outer half."""
    more = 260 * math.asin(50 / 130) - 100
    pattern = fluted(brief(WIDE, seam=12), panels=6, roll=10)
    widths = [piece(pattern, n).cut.width for n in tops(pattern)]
    assert widths == pytest.approx([124 + more / 2, *[124 + more] * 4, 124 + more / 2])


def test_panel_has_its_flat_width_where_it_meets_the_boxing():
    inner = piece(fluted(brief(WIDE), panels=6, roll=10), "panel 3")
    assert [inner.edges[f"edge {i}"].length for i in (1, 2)] == pytest.approx([100, 100])


def test_edge_of_all_panels_is_as_long_as_that_of_a_plain_top():
    for seat in (brief(ROUND), brief(BENCH), brief(WIDE, Material(kind="vinyl"))):
        seams = [s for s in fluted(seat).seams if s.name == "top seam"]
        plain = [s for s in boxed(seat).seams if s.name == "top seam"]
        assert sum(s.a.length for s in seams) == pytest.approx(sum(s.b.length for s in plain))


def test_every_seam_is_walked_without_ease():
    for seat in (brief(ROUND), brief(with_bay(), seam=8)):
        for seam in fluted(seat).seams:
            assert seam.eased == 0
            assert seam.worst < 1e-6


def test_neighbours_meet_from_the_back_to_the_front_at_the_same_notches():
    pattern = fluted(brief(WIDE, notch_spacing=80), panels=3, roll=10)
    first, second = (s for s in pattern.seams if s.name == "panel seam")
    assert [str(e) for e in (first.a, first.b)] == ["panel 1/seam 1", "panel 2/seam 1"]
    assert [name for name, _ in second.a.stations] == ["back", "2·1", "2·2", "2·3", "front"]
    feet = {n.name: n.feet[0].imag for n in piece(pattern, "panel 2").notches if "·" in n.name}
    assert [feet[f"1·{i}"] for i in (1, 2, 3)] == pytest.approx([feet[f"2·{i}"] for i in (1, 2, 3)])
    assert feet["1·1"] > feet["1·2"] > feet["1·3"]


def test_ends_of_seams_are_notched_on_the_boxing_under_their_names_or_their_side_s():
    on_boxing = {n.name for n in piece(fluted(brief(WIDE), panels=4), "boxing").notches}
    assert {"seam 1 back", "seam 1 front", "seam 3 back", "front"} <= on_boxing
    assert "seam 2 front" not in on_boxing


def test_panels_across_are_counted_from_the_front():
    pattern = fluted(brief(WIDE), panels=3, run=ACROSS)
    middles = [piece(pattern, name).cut.middle.imag for name in tops(pattern)]
    assert middles == sorted(middles)
    assert "seam 1 left" in {n.name for n in piece(pattern, "boxing").notches}
    assert piece(pattern, "panel 2").finished == pytest.approx((600, 100))


def test_arms_of_a_seat_that_a_line_parts_are_panels_of_their_own():
    """A bay of 160 by 90 in a seat of 300: of three panels across, the front one is parted."""
    pattern = fluted(brief(with_bay(), seam=8), panels=4, run=ACROSS)
    assert tops(pattern)[:3] == ["panel 1a", "panel 1b", "panel 2"]


def test_join_within_a_panel_parts_its_seam_with_the_boxing():
    pattern = fluted(brief(BENCH, boxing_longest=1600), panels=3)
    assert [str(s.b) for s in pattern.seams if str(s.a) == "panel 1/edge"] == [
        "boxing front/upper edge", "boxing back/upper edge",
    ]  # fmt: skip


def test_sewing_marks_fall_on_the_panels_beside_the_back():
    pattern = fluted(brief(ROUND), panels=5)
    marked = [n for n in tops(pattern) if guides(piece(pattern, n), LineKind.SEWING)]
    assert marked == ["panel 2", "panel 4"]


def test_take_up_is_that_of_a_plain_top():
    hide = Material(kind="upholstery leather", take_up_across=0.02, take_up_along=0.03)
    pattern = fluted(brief(WIDE, hide, seam=12), panels=6, roll=0)
    sewn = sum(guide(piece(pattern, n), LineKind.SEW).path.width for n in tops(pattern))
    assert sewn == pytest.approx(624 * 0.98 - 24)
    assert "Keep the arrow's way" in told(piece(pattern, "panel 1").notes)


def test_order_of_work_sews_the_panels_before_the_boxing_goes_round():
    steps = told(fluted(brief(ROUND)).steps)
    assert steps.index("Panel seam") < steps.index("Lay the boxing")


def test_panels_narrower_than_their_allowances_and_rolls_past_a_half_round_are_refused():
    narrow, steep = objections(brief(ROUND, seam=12), panels=20, roll=9)
    assert narrow == (
        "cover.panels: 20 would each be narrower than its two seam allowances; "
        "there is room for 13; make fewer, or the seam allowance narrower"
    )
    assert steep.startswith("cover.roll: 9 mm is more than half the width of a panel (8 mm)")


def test_leg_that_reaches_a_little_past_a_line_would_be_a_sliver_and_is_refused():
    """Panels of 75 across; the right leg ends 5 past a line, and the bay's floor lies on one."""
    legs = Polygon(corners=((0, 0), (400, 0), (400, 230), (250, 230), (250, 150), (150, 150),
                            (150, 300), (0, 300))).contour()  # fmt: skip
    (mistake,) = objections(brief(legs, seam=8), panels=4, roll=0, run=ACROSS)
    assert mistake.startswith("cover.panels: 4 panels leave a sliver narrower than the seam")
    assert objections(brief(legs, seam=8), panels=3, roll=0, run=ACROSS) == []


def test_topstitch_below_the_boxing_and_an_allowance_wider_than_half_the_seat_are_refused():
    low = Fluted(drop=10.0, panels=2).objections(brief(ROUND, seam=20, topstitch=12))
    assert [mistake.field for mistake in low] == ["allowances.topstitch"]
    strip = RoundedRectangle(width=400, depth=60, corner=0).contour()
    assert any("more than half the seat" in each for each in objections(
        brief(strip, base=strip, seam=40), panels=2, roll=0.0))  # fmt: skip


def test_clip_that_would_cross_the_seam_of_a_pointed_tail_is_left_out():
    """The wall of a bay lies on a line, so its rounded corner leaves the next panel a tail."""
    pattern = fluted(brief(with_bay(mouth=160, corner=3), seam=6), panels=10, roll=0)
    for name in tops(pattern):
        panel = piece(pattern, name)
        sew = guide(panel, LineKind.SEW).path
        for clip in guides(panel, LineKind.CLIP):
            tip = clip.path.segments[-1].end
            assert min(each.distance(tip) for each in sew.segments) > 1.5


def test_roll_that_widens_a_short_seam_too_much_is_refused():
    pointed = Polygon(corners=((0, 100), (300, 0), (300, 200))).contour()
    mistakes = objections(brief(pointed, seam=6), panels=10, roll=15)
    assert any(mistake.startswith("cover.roll: it widens a panel by") for mistake in mistakes)


def test_seam_that_ends_at_the_back_but_for_the_figures_of_a_stretched_curve_ends_there():
    """Take-up that differs by direction makes arcs of ellipses: their ends lie a little off."""
    corners = ((26, 0, 52), (556, 0, 52), (647, 298, 65), (453, 517, 78), (103, 517, 78),
               (0, 259, 65))  # fmt: skip
    leather = Material(kind="upholstery leather", take_up_across=0.0066, take_up_along=0.0313)
    seat = brief(Polygon(corners=corners).contour(), leather, seam=14)
    seams = [seam for seam in fluted(seat, 2, 13).seams if seam.name == "top seam"]
    assert len(seams) == 2
    assert min(length for seam in seams for *_, length in seam.spans) > 1
