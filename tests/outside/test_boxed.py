"""The boxed cover against worked examples from elsewhere; the source stands beside each."""

import math

import pytest

from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.piece import LineKind
from patternmaker.units import Unit, read_length, show_length
from tests.covers.seats import IN, boxed, brief, guide, piece, told

CLOTH = Material(kind="woven cloth")
HIDE = Material(kind="upholstery leather", take_up=0.25 / 10)


def inches(text: str) -> float:
    return read_length(text, Unit.IN)


@pytest.fixture
def cushion():
    """A 12 in square cushion, 1/2 in allowances, no take-up."""
    square = RoundedRectangle(width=12 * IN, depth=12 * IN, corner=0).contour()
    return boxed(brief(square, CLOTH, seam=IN / 2), drop=4 * IN)


def test_plate_of_a_12_in_cushion_is_cut_13_in_square(cushion):
    """Source: a sewing group's worked example, cut plate = finished + 1 in."""
    cut = piece(cushion, "top").cut
    assert [cut.width, cut.height] == pytest.approx([13 * IN, 13 * IN])


def test_boxing_of_a_12_in_cushion_is_48_in_at_the_stitch_line(cushion):
    """Source: a sewing group's worked example; box cushion instructions say the same."""
    assert piece(cushion, "boxing").sew_length == pytest.approx(48 * IN)


@pytest.fixture
def stool():
    """Common practice, no source: a round top of 13 3/4 in, 1/2 in allowances, 1 in wrap-under."""
    outline = Circle(diameter=inches("13 3/4")).contour()
    seat = brief(outline, HIDE, seam=IN / 2, wrap=IN, tape=inches("44 1/4"))
    return boxed(seat, drop=inches("3 1/4"))


def test_round_top_of_13_3_4_in_is_cut_at_about_14_1_2(stool):
    """Common practice, no source: at 1/4 in per 10 in, about 14 1/2; exactly 14.38125."""
    width = piece(stool, "top").cut.width
    assert width == pytest.approx(14.38125 * IN)
    assert abs(width - inches("14 1/2")) < IN / 8


def test_rounded_to_the_nearest_quarter_it_is_cut_at_14_1_2_with_the_trammel_at_7_1_4():
    """Common practice, no source."""
    outline = Circle(diameter=inches("13 3/4")).contour()
    top = piece(boxed(brief(outline, HIDE, seam=IN / 2, round_cut_to=IN / 4)), "top")
    assert top.cut.width == pytest.approx(inches("14 1/2"))
    assert "Trammel: cut 7 1/4 in" in told(top.notes, Unit.IN)


def test_boxing_of_a_3_1_4_in_drop_is_4_3_4_in_wide(stool):
    """Common practice, no source: drop, 1/2 in allowance, 1 in wrap-under."""
    assert piece(stool, "boxing").cut.height == pytest.approx(inches("4 3/4"))


def test_reference_line_of_a_1_in_wrap_is_7_8_in_from_the_edge(stool):
    """Common practice, no source."""
    template = piece(stool, "base template")
    line = guide(template, LineKind.REFERENCE).path
    assert (template.cut.width - line.width) / 2 == pytest.approx(inches("7/8"))
    assert "the reference line 7/8 in from its edge" in told(template.notes, Unit.IN)


def test_tape_of_44_1_4_in_disagrees_by_2_4_per_cent_and_is_not_refused(stool):
    """Common practice, no source: 44.25 / 13.75 pi = 1.0244."""
    (warning,) = stool.fit.warnings
    says = warning.told(Unit.IN)
    assert f"by {(44.25 / (13.75 * math.pi) - 1) * 100:.3g} %" in says
    assert "by 2.44 %" in says
    assert f"a width of {show_length(44.25 / math.pi * IN, Unit.IN)}" in says


def test_notches_of_a_bullnose_stand_at_12_3_and_6_o_clock(stool):
    """Source: Casey's chapter on marine upholstery; 9 o'clock makes the round of a stool."""
    feet = {notch.name: notch.feet[0] for notch in piece(stool, "top").notches}
    radius = 14.38125 * IN / 2
    assert feet["right"] == pytest.approx(radius)
    assert feet["front"] == pytest.approx(-1j * radius)
    assert feet["left"] == pytest.approx(-radius)
    assert abs(feet["back"] - 1j * radius) < 4


def test_start_and_stop_leave_3_to_4_in_open_at_each_end(stool):
    """Common practice, no source."""
    panel = piece(stool, "boxing")
    marks = sorted(g.path.bounds[0] for g in panel.guides if g.kind is LineKind.SEWING)
    assert 3 * IN <= marks[0] <= 4 * IN
    assert 3 * IN <= panel.sew_length - marks[1] <= 4 * IN
