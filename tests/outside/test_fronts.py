"""Tops that run over the front, and tops of panels, against sources; each beside its check."""

import math

import pytest

from patternmaker.covers.bull_nose import BullNose
from patternmaker.covers.fluted import Fluted
from patternmaker.covers.parts.flute import arc_over
from patternmaker.covers.waterfall import Waterfall
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.brief import Brief
from tests.covers.seats import CLOTH, IN, brief, piece

SQUARE = RoundedRectangle(width=12 * IN, depth=12 * IN, corner=0).contour()


def inched() -> Brief:
    """Return a 12 in square seat in cloth, 1/2 in allowances and 1 in to wrap."""
    return brief(SQUARE, CLOTH, seam=IN / 2, wrap=IN)


def test_waterfall_of_a_12_in_seat_is_its_plate_and_its_front_boxing_less_the_seam_between():
    """Source: a sewing group's worked example, cut plate = finished + 1 in (12 in: 13 in).

    The boxing of a drop of 3 in with 1/2 in seam and 1 in wrap is cut 4 1/2 in high; cut in one
    with the plate it saves both allowances of the seam: 13 + 4 1/2 - 1 = 16 1/2 in.
    """
    top = piece(Waterfall(drop=3 * IN).pattern(inched()), "top")
    assert (top.cut.width, top.cut.height) == pytest.approx((13 * IN, 16.5 * IN))


def test_boxing_beside_a_waterfall_is_the_perimeter_less_the_front():
    """Source: the same; boxing = perimeter at the stitch line, 48 in for a 12 in square."""
    pattern = Waterfall(drop=3 * IN).pattern(inched())
    sewn = sum(each.sew_length for each in pattern.pieces if each.role == "boxing")
    assert sewn == pytest.approx((48 - 12) * IN)


def test_fold_of_a_waterfall_is_notched_on_both_sides():
    """Source: a transcript of a seam tutorial: notch the fold line on both sides."""
    pattern = Waterfall(drop=3 * IN).pattern(inched())
    top = {round(notch.feet[0].real, 6): notch.feet[0].imag
           for notch in piece(pattern, "top").notches if notch.name == "fold"}  # fmt: skip
    assert top == pytest.approx({-6.5 * IN: -9 * IN, 6.5 * IN: -9 * IN})
    for side in ("left", "right"):
        (notch,) = (n for n in piece(pattern, f"boxing {side}").notches if n.name == "fold")
        assert notch.feet[0].imag == pytest.approx(-3 * IN)


def test_arc_of_a_roll_is_that_of_the_segment_of_a_circle():
    """Source: a maths teaching page on circular sections, chord 21, rise 6: arc 25.3083731."""
    assert arc_over(21, 6) == pytest.approx(25.3083731, abs=1e-7)


def test_arc_of_a_shallow_roll_is_nearly_that_of_the_handbook_s_short_form():
    """Source: Machinery's Handbook, p. 79: r = (c^2 + 4 h^2) / 8 h; c 500, h 25: r 1262.5.

    The arc of that radius is 503.326695 long, and the short form c + 8 h^2 / 3 c gives 503.333.
    """
    assert arc_over(500, 25) == pytest.approx(503.326695, abs=1e-6)
    assert arc_over(500, 25) == pytest.approx(500 + 8 * 25**2 / (3 * 500), abs=0.01)


def test_flat_fluted_top_takes_two_allowances_more_for_every_panel():
    """Source: a sewing group's worked example, cut plate = finished + 1 in, for each panel."""
    pattern = Fluted(drop=3 * IN, panels=4, roll=0).pattern(inched())
    widths = [each.cut.width for each in pattern.pieces if each.role == "top"]
    assert widths == pytest.approx([(12 / 4 + 1) * IN] * 4)


def test_gusset_of_a_bull_nose_is_notched_at_12_3_and_6_o_clock():
    """Source: Casey's chapter on marine upholstery; the places are those of a clock's hands."""
    pattern = BullNose(height=4 * IN).pattern(inched())
    gusset = piece(pattern, "gusset left")
    feet = {notch.name: notch.feet[0] for notch in gusset.notches if "clock" in notch.name}
    centre, radius = complex(10, -2) * IN, 2.5 * IN  # of the cut line
    ways = {"12 o'clock": 1j, "3 o'clock": 1, "6 o'clock": -1j}
    assert feet == pytest.approx({name: centre + radius * way for name, way in ways.items()})


def test_zip_panel_of_a_bull_nose_is_one_inch_larger_each_way():
    """Source: Casey's chapter on marine upholstery: the zip panel takes 1 in more in each way.

    With 1/2 in allowances: 12 + 1 wide and, once both folds meet on the zip, 4 + 1 high.
    """
    pattern = BullNose(height=4 * IN, zip_turning=0.75 * IN).pattern(inched())
    top, bottom = (piece(pattern, f"zip strip {face}").cut for face in ("top", "bottom"))
    assert (top.width, bottom.width) == pytest.approx((13 * IN, 13 * IN))
    assert top.height + bottom.height - 2 * 0.75 * IN == pytest.approx(5 * IN)


def test_each_zip_strip_is_half_the_cut_boxing_and_three_quarters_of_an_inch():
    """Source: box cushion instructions; boxing 4 in high is cut 5 in, half of it is 2 1/2."""
    pattern = BullNose(height=4 * IN, zip_turning=0.75 * IN).pattern(inched())
    assert piece(pattern, "zip strip top").cut.height == pytest.approx((2.5 + 0.75) * IN)


def test_piece_of_a_bull_nose_rolls_round_half_the_circumference_of_its_nose():
    """Source: the circumference of a circle, pi d (Machinery's Handbook): half of it is the nose.

    12 in deep, 4 in thick: 10 in flat above, 10 in below, 2 pi in round the nose, 1 in to sew.
    """
    top = piece(BullNose(height=4 * IN).pattern(inched()), "top").cut
    assert (top.width, top.height) == pytest.approx((13 * IN, (21 + 2 * math.pi) * IN))
