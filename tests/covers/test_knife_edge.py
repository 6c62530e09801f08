"""The knife-edge cushion: two equal faces, the corners drawn in."""

import math

import pytest

from patternmaker.covers.knife_edge import KnifeEdge, filled
from patternmaker.covers.parts.stitches import stitches
from patternmaker.materials import Material
from patternmaker.outlines.l_shape import LShape
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import Pattern
from tests.covers.seats import BENCH, ROUND, SHARP, brief, kite, piece, told


def cushion(seat: Brief, **measures: float | str) -> Pattern:
    cover = KnifeEdge(**measures)  # type: ignore[arg-type]
    assert not list(cover.objections(seat))
    return cover.pattern(seat)


def objections(seat: Brief, **measures: float) -> list[str]:
    return [mistake.told() for mistake in KnifeEdge(**measures).objections(seat)]  # type: ignore[arg-type]


def test_pieces_are_two_equal_faces():
    pattern = cushion(brief(LShape().contour()))
    top, bottom = pattern.pieces
    assert [top.role, bottom.role] == list(KnifeEdge.roles)
    assert top.cut.area == pytest.approx(bottom.cut.area)
    assert top.finished == pytest.approx(bottom.finished)


def test_middles_of_the_sides_stay_and_the_corners_move():
    top = piece(cushion(brief(SHARP, Material(), seam=12), taper=12), "top")
    assert top.finished == pytest.approx((400, 300))
    assert max(abs(edge.start) for edge in top.cut.segments) < abs(212 + 162j) - 12


def test_seam_goes_round_and_the_opening_is_in_its_back():
    pattern = cushion(brief(SHARP), opening=250)
    seam, closing = pattern.seams
    assert (seam.name, closing.name) == ("seam", "zip seam")
    assert closing.a.length == pytest.approx(250)
    assert seam.a.length + closing.a.length == pytest.approx(piece(pattern, "top").sew_length)
    assert [name for name, _ in closing.a.stations][1] in {"1", "back"}
    assert closing.worst < 1e-9
    assert seam.worst < 1e-9


def test_both_faces_are_notched_where_the_opening_ends():
    for face in cushion(brief(SHARP)).pieces:
        assert {"opening left", "opening right"} <= {notch.name for notch in face.notches}


def test_opening_takes_three_quarters_of_the_back_unless_told():
    rounded = RoundedRectangle(width=400, depth=300, corner=40).contour()
    back = 320 + 2 * 40 * math.pi / 4
    assert cushion(brief(rounded)).seams[1].a.length == pytest.approx(0.75 * back)


def test_opening_takes_a_quarter_of_the_seam_where_nothing_faces_back():
    steep = kite().scaled(0.9, 1.0)
    pattern = cushion(brief(steep), taper=0)
    assert pattern.seams[1].a.length == pytest.approx(steep.length / 4)


def test_opening_longer_than_half_the_seam_is_refused():
    (mistake,) = objections(brief(ROUND), opening=600)
    assert mistake.startswith("cover.opening: 600 mm is more than half of the seam (502.6")
    assert "leave less open" in mistake


def test_filled_thicker_than_it_is_wide_is_refused():
    (mistake,) = objections(brief(SHARP), height=151)
    assert mistake == (
        "cover.height: 151 mm is more than half the width or depth (150 mm); fill it less"
    )
    assert not objections(brief(SHARP), height=150)


def test_corner_without_room_is_refused_alone():
    (mistake,) = objections(brief(SHARP), taper=60, opening=700)
    assert mistake.startswith("cover.taper: 60 mm")


def test_face_without_filling_is_as_wide_as_it_is_cut():
    assert filled(400, 0.01) == pytest.approx(400, abs=1e-3)


def test_half_a_circle_is_as_wide_as_its_diameter():
    """A face bent to a half circle: flat pi R, height of both 2 R, width 2 R."""
    assert filled(math.pi * 100, 200 - 1e-9) == pytest.approx(200, abs=1e-5)


def test_report_tells_flat_and_filled_size():
    says = told(cushion(brief(SHARP), height=100, taper=12, opening=300).fit.says)
    assert "Sewn flat 400 mm by 300 mm; filled to 100 mm in the middle it shrinks to about" in says
    assert "4 corners drawn in by 12 mm, tapered over the last 75 mm to 100 mm of each side" in says
    assert "Zip: 300 mm, in the back seam" in says


def test_one_reach_is_told_once():
    says = told(cushion(brief(SHARP), taper_over=80).fit.says)
    assert "tapered over the last 80 mm of each side" in says


def test_rounded_seat_has_no_corner_drawn_in():
    assert "No corner is drawn in" in told(cushion(brief(BENCH)).fit.says)
    assert "No corner is drawn in" in told(cushion(brief(SHARP), taper=0).fit.says)


def test_hardly_rounded_corners_are_warned_of():
    tight = RoundedRectangle(width=400, depth=300, corner=15).contour()
    warned = told(cushion(brief(tight)).fit.warnings)
    assert "Rounded by less than 25 mm, and so not drawn in: back left, front left" in warned
    assert not cushion(brief(BENCH)).fit.warnings


def test_zip_is_sewn_in_first():
    says = told(cushion(brief(SHARP)).steps)
    assert says.index("Zip first") < says.index("Seam: top to bottom")
    assert "Trim the allowance across each corner" in says
    assert says.endswith("Close the zip")


def test_opening_closed_by_hand_is_closed_last():
    pattern = cushion(brief(ROUND), closed_by="slip stitch", opening=200)
    says = told(pattern.steps)
    assert pattern.seams[1].name == "closing seam"
    assert "Zip" not in says
    assert "Trim" not in says
    assert says.endswith("Slip-stitch the opening")
    assert "Opening 200 mm in the back seam, slip-stitched" in told(pattern.fit.says)


def test_opening_closed_by_hand_is_no_row_of_the_machine():
    seat = brief(ROUND)
    by_hand = cushion(seat, closed_by="slip stitch")
    assert [row.seam for row in stitches(by_hand, seat)] == ["seam"]
    assert [row.seam for row in stitches(cushion(seat), seat)] == ["seam", "zip seam"]
