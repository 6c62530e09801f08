import math

import pytest

from patternmaker.covers.parts.tops import TakeUp, sew_line, take_ups
from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind, Piece
from patternmaker.units import Unit, read_rate
from tests.contours import distance
from tests.covers.seats import (
    BENCH,
    CLOTH,
    IN,
    ROUND,
    boxed,
    brief,
    closed,
    guide,
    guides,
    piece,
    told,
    with_bay,
)

LEATHER = Material()
UNEVEN = Material(take_up_across=0.02, take_up_along=0.03)


def top(seat: Brief) -> Piece:
    return piece(boxed(seat), "top")


def test_take_up_is_taken_off_the_finished_width_with_both_allowances():
    """(W + 2a)(1 - r); the sewn width is that less both allowances."""
    each = TakeUp(finished=400, allowance=12, rate=0.025)
    assert each.cut == pytest.approx(424 * 0.975)
    assert each.scale == pytest.approx((424 * 0.975 - 24) / 400)
    assert each.on_finished == pytest.approx(0.025 * 424 / 400)
    assert each.on_cut == pytest.approx(0.025)


def test_rounded_cut_width_is_the_nearest_step_and_tells_its_rate():
    each = TakeUp(finished=400, allowance=12, rate=0.025, step=5)
    assert each.cut == 415
    assert each.on_cut == pytest.approx(1 - 415 / 424)


@pytest.mark.parametrize(("outline", "size"), [(ROUND, (320, 320)), (BENCH, (760, 360))])
def test_top_is_cut_by_the_take_up_each_way(outline, size):
    cut = top(brief(outline, LEATHER)).cut
    assert [cut.width, cut.height] == pytest.approx([(each + 24) * 0.975 for each in size])


def test_take_up_that_differs_is_taken_on_the_axes_of_the_material():
    cut = top(brief(ROUND, UNEVEN)).cut
    assert [cut.width, cut.height] == pytest.approx([344 * 0.98, 344 * 0.97])


def test_old_cover_has_its_take_up_already():
    cut = top(brief(ROUND, UNEVEN, taken="old cover")).cut
    assert [cut.width, cut.height] == pytest.approx([344, 344])


@pytest.mark.parametrize("taken", ["flat", "crown", "board"])
def test_every_other_way_of_measuring_has_none_in_it(taken):
    assert take_ups(brief(ROUND, LEATHER, taken=taken))[0].rate == 0.025


def test_finished_size_is_as_measured():
    assert top(brief(BENCH, LEATHER)).finished == (760, 360)


def test_trammel_radii_are_said_of_a_round_top():
    radius = 344 * 0.975 / 2
    says = f"Trammel: cut {round(radius * 2) / 2:g} mm, sew {round((radius - 12) * 2) / 2:g} mm"
    assert says in told(top(brief(ROUND, LEATHER)).notes).splitlines()


def test_round_top_with_uneven_take_up_is_oval_lies_one_way_and_has_no_trammel_radius():
    notes = told(top(brief(ROUND, UNEVEN)).notes)
    assert "Trammel" not in notes
    assert "Keep the arrow's way: the take-up differs by direction" in notes


def test_old_cover_of_an_uneven_hide_needs_no_way_of_its_own():
    notes = told(top(brief(ROUND, UNEVEN, taken="old cover")).notes)
    assert "Trammel" in notes
    assert "Keep the arrow's way" not in notes


def test_one_rate_written_in_two_ways_leaves_a_round_top_round():
    """1/4 in per 10 in and 2.5 % are the same, though their last digits differ."""
    rates = read_rate("1/4 per 10", Unit.IN), read_rate("2.5%")
    assert rates[0] != rates[1]
    hide = Material(take_up_across=rates[0], take_up_along=rates[1])
    assert not hide.must_lie_one_way
    found = top(brief(ROUND, hide))
    assert "Trammel" in told(found.notes)
    assert "Keep the arrow's way" not in told(found.notes)
    assert len(found.cut.segments) == 4


def test_corner_of_a_rectangle_after_uneven_take_up_is_part_of_an_ellipse():
    sew = sew_line(brief(BENCH, UNEVEN))
    across, along = (each.scale for each in take_ups(brief(BENCH, UNEVEN)))
    at_45 = complex((340 + 40 / 2**0.5) * across, (140 + 40 / 2**0.5) * along)
    assert distance(sew, at_45) < 0.001
    assert across != along


def test_centre_cross_stands_in_the_middle():
    one, two = (stroke.path for stroke in guides(top(brief(BENCH)), LineKind.CENTRE))
    assert one.point_at(one.length / 2) == two.point_at(two.length / 2) == pytest.approx(0)
    assert {one.width, two.width} == {20, 0}


def test_arrow_leads_to_the_front():
    assert top(brief()).arrow == (-1j, "FRONT")


def test_top_says_its_allowance_and_what_is_not_for_the_show_side():
    notes = told(top(brief(seam=14)).notes)
    assert "Seam allowance 14 mm" in notes
    assert "trace or prick neither on the show side" in notes


@pytest.mark.parametrize(
    ("kind", "lay"),
    [
        ("upholstery leather", "arrow along the backbone"),
        ("vinyl", "arrow along the roll"),
        ("woven cloth", "arrow along the warp"),
        ("velour", "arrow along the warp, nap back to front"),
    ],
)
def test_top_says_how_it_lies(kind, lay):
    assert top(brief(ROUND, Material(kind=kind))).lay == lay


def test_sewing_starts_and_stops_on_either_side_of_the_join():
    marks = {g.name: g.path for g in guides(top(brief(sewing_open=90)), LineKind.SEWING)}
    angle = 90 / 160
    start = complex(-math.sin(angle), math.cos(angle))
    assert marks["start sewing"].segments[0].start == pytest.approx(172 * start)
    assert marks["start sewing"].segments[0].end == pytest.approx(160 * start)
    assert marks["stop sewing"].segments[0].end == pytest.approx(-160 * start.conjugate())


def test_join_closed_at_once_has_no_mark_of_sewing():
    assert guides(top(brief(sewing_open=0)), LineKind.SEWING) == []


@pytest.mark.parametrize("corner", [0.0, 4.0, 30.0])
def test_clip_of_an_inner_corner_leads_from_the_cut_line_and_stops_short_of_the_seam(corner):
    piece_ = top(brief(with_bay(corner=corner)))
    strokes = [clip.path.segments[0] for clip in guides(piece_, LineKind.CLIP)]
    assert len(strokes) >= 2
    sew = closed(guide(piece_, LineKind.SEW).path)
    for stroke in strokes:
        assert distance(piece_.cut, stroke.start) < 2e-4
        assert distance(sew, stroke.end) == pytest.approx(IN / 8, abs=0.001)


def test_round_top_of_a_small_stool_is_whole():
    seat = brief(Circle(diameter=60).contour(), CLOTH, wrap=10, sewing_open=20)
    assert top(seat).cut.area == pytest.approx(math.pi * 42**2)


def test_top_of_a_graded_seam_says_how_its_edges_are_laid():
    graded = told(top(brief(seam=14, boxing_seam=10)).notes)
    assert "Graded seam, 10 mm on the boxing: lay sew line to sew line, not edge to edge" in graded
    assert "Graded" not in told(top(brief(seam=14)).notes)
