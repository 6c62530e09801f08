"""Nap and repeat on the pieces of a seat: which way they lie, and where they meet."""

from dataclasses import replace
from typing import Any

import pytest

from patternmaker.covers.panelled import Panelled
from patternmaker.geometry.contour import Path
from patternmaker.materials import Material
from patternmaker.outlines.bowed_front import BowedFront
from patternmaker.outlines.saddle import Saddle
from patternmaker.pattern.brief import Panel
from patternmaker.pattern.cloth import laid, match_line
from patternmaker.pattern.piece import LineKind, Pattern, Piece
from tests.covers.seats import BENCH, ROUND, boxed, brief, guides, kite, piece, told, with_bay

CHAIR = BowedFront(width=430, depth=400, bow=30).contour()
TWEED = Material(kind="woven cloth", name="tweed", repeat_across=60)
CHECK = Material(kind="woven cloth", name="check", repeat=240, repeat_across=120)
VELOUR = Material(kind="velour", name="wine velour")


def seat(outline, material=TWEED, **more: Any) -> Pattern:
    return laid(boxed(brief(outline, material, **more)))


def matched(piece: Piece) -> Path:
    line = match_line(piece)
    assert line
    return line


@pytest.mark.parametrize("outline", [ROUND, BENCH, CHAIR, with_bay(), kite(260)])
def test_match_line_runs_from_the_cut_edge_through_the_front_centre(outline):
    top = piece(seat(outline), "top")
    front = outline.point_at(outline.station("front"))
    for guide in guides(top, LineKind.MATCH):
        stroke = guide.path.segments[0]
        assert stroke.start.real == stroke.end.real == pytest.approx(front.real)
        nearest = top.cut.segments[top.cut.nearest(stroke.start)]
        assert nearest.distance(stroke.start) < 1e-6
    near = matched(top).segments[0]
    assert near.start.imag < front.imag < near.end.imag  # from the front edge, past the seam, in


def test_top_has_a_stroke_at_either_end_and_none_in_its_middle():
    top = piece(seat(BENCH), "top")
    front, back = (guide.path.bounds for guide in guides(top, LineKind.MATCH))
    assert (front[1], front[3]) == pytest.approx((-192, -147))  # 180 and 12 of allowance; 45 long
    assert (back[1], back[3]) == pytest.approx((167, 192))


def test_match_line_crosses_the_boxing_where_its_front_meets_that_of_the_top():
    pattern = seat(CHAIR)
    boxing = piece(pattern, "boxing")
    (guide,) = guides(boxing, LineKind.MATCH)
    front = dict(boxing.run)["front"]
    assert guide.path.bounds == pytest.approx((front, -80 - 25, front, 12))
    (seam,) = (seam for seam in pattern.seams if seam.a.piece == "top")
    assert dict(seam.a.stations)["front"] - seam.a.stations[0][1] == pytest.approx(front)


def test_boxing_tells_how_far_its_front_centre_is_from_either_join():
    """Half way round a bench of 2(760 + 360) - (8 - 2 pi)40 = 2171.3 mm."""
    assert "Front centre 1085.5 mm from the left join line, 1085.5 mm from the right" in told(
        piece(seat(BENCH), "boxing").notes
    )


def test_of_boxing_in_panels_only_the_front_one_is_matched():
    pattern = seat(BENCH, boxing_longest=1600)
    front, back = piece(pattern, "boxing front"), piece(pattern, "boxing back")
    assert match_line(back) is None
    assert front.sew_length / 2 == pytest.approx(matched(front).bounds[0])
    assert told(pattern.fit.says).splitlines()[-1] == (
        "On the match line of top and boxing front lay the middle of the same stripe (tweed)"
    )


def test_label_says_what_to_match():
    assert "Lay the middle of the same stripe on the match line" in told(
        piece(seat(CHAIR), "top").notes
    )
    assert "Lay the same place of the repeat where it meets the seam on the match line" in told(
        piece(seat(CHAIR, CHECK), "boxing").notes
    )


@pytest.mark.parametrize("name", ["base template", "dust cover"])
def test_what_is_not_cut_from_the_cloth_has_no_match_line(name):
    assert match_line(piece(seat(CHAIR), name)) is None


def test_material_without_repeat_or_nap_leaves_a_pattern_as_it_is():
    pattern = boxed(brief(BENCH, Material()))
    assert laid(pattern) == pattern


def test_panels_are_matched_at_the_middle_of_their_fronts():
    outline = Saddle().contour()
    wanted = replace(brief(outline, TWEED), panels=(Panel("seat", outline),))
    panel = piece(laid(Panelled().pattern(wanted)), "seat")
    front = outline.point_at(outline.station("front"))
    assert matched(panel).bounds[0] == pytest.approx(front.real)


def test_nap_runs_down_the_paper_to_the_front_and_down_the_boxing():
    pattern = seat(CHAIR, VELOUR)
    top, boxing = piece(pattern, "top"), piece(pattern, "boxing")
    assert top.nap == boxing.nap == -1j
    assert top.arrow[0] == -1j  # the front lies there
    assert boxing.arrow[0] == 1j  # the seat's top does
    assert "Nap one way: never turn it end for end" in told(top.notes)
    assert piece(pattern, "dust cover").nap is None
    assert not guides(top, LineKind.MATCH)


def test_nap_locks_a_piece_and_the_warp_lets_it_go_half_round():
    assert piece(seat(CHAIR, VELOUR), "top").turn == 360
    assert piece(seat(CHAIR, TWEED), "top").turn == 180
    assert piece(seat(CHAIR, VELOUR), "dust cover").turn == 90


def test_velour_whose_nap_the_job_denies_may_be_turned():
    pattern = seat(CHAIR, Material(kind="velour", nap="none"))
    assert piece(pattern, "top").nap is None
    assert piece(pattern, "boxing").lay == "length across the warp"
