"""The loose pad: face to face or with a narrow boxing, held by ties."""

import pytest

from patternmaker.covers.loose_pad import LoosePad
from patternmaker.errors import Refusals
from patternmaker.materials import Material
from patternmaker.outlines.polygon import Polygon
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.outlines.rounded_trapezoid import RoundedTrapezoid
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind, Pattern
from tests.covers.seats import BENCH, ROUND, SHARP, brief, guides, kite, piece, pieces, told

CHAIR = RoundedTrapezoid(front_width=430, back_width=380, depth=400).contour()


def pad(seat: Brief, **measures: float) -> Pattern:
    cover = LoosePad(**measures)  # type: ignore[arg-type]
    assert not list(cover.objections(seat))
    return cover.pattern(seat)


def objections(seat: Brief, **measures: float) -> list[str]:
    cover = LoosePad(**measures)  # type: ignore[arg-type]
    return [mistake.told() for mistake in cover.objections(seat)]


def test_pad_of_no_height_is_two_faces_and_its_ties():
    assert [each.name for each in pad(brief(CHAIR)).pieces] == ["top", "bottom", "tie"]


def test_pad_with_a_height_has_boxing_and_a_template_of_its_foam():
    pattern = pad(brief(CHAIR), height=30)
    assert [each.role for each in pattern.pieces] == list(LoosePad.roles)
    assert piece(pattern, "boxing").finished == pytest.approx((CHAIR.length, 30))
    assert piece(pattern, "foam template").cut.height == pytest.approx(400 + 12)


def test_nothing_is_taken_up():
    top = piece(pad(brief(SHARP, Material(), seam=12)), "top")
    assert (top.cut.width, top.cut.height) == (424, 324)


def test_ties_and_opening_are_notched_in_both_faces():
    wanted = {"tie back left", "tie back right", "opening left", "opening right"}
    for height in (0, 30):
        for face in pad(brief(CHAIR), height=height).pieces[:2]:
            assert wanted <= {notch.name for notch in face.notches}
    boxing = piece(pad(brief(CHAIR), height=30), "boxing")
    assert wanted <= {notch.name for notch in boxing.notches}


def test_seam_of_two_faces_goes_from_the_opening_round_to_it():
    seam, closing = pad(brief(SHARP), opening=160).seams
    assert (seam.name, closing.name) == ("seam", "closing seam")
    assert closing.a.length == pytest.approx(160)
    assert seam.a.length == pytest.approx(1400 - 160)


def test_boxing_is_joined_at_the_back_and_walked_on_both_sides():
    seams = pad(brief(SHARP), height=30).seams
    assert [seam.name for seam in seams] == ["join", "top seam", "bottom seam"]
    assert [seam.a.length for seam in seams] == pytest.approx([30, 1400, 1400])
    assert max(seam.worst for seam in seams) < 1e-9


def test_boxing_longer_than_its_strip_is_in_panels_the_front_one_whole():
    pattern = pad(brief(SHARP, boxing_longest=800, boxing_spare=40), height=30)
    panels = pieces(pattern, "boxing")
    assert [panel.name for panel in panels] == ["boxing 1", "boxing 2", "boxing 3"]
    assert max(panel.cut.width for panel in panels) <= 800
    assert "front" in dict(panels[1].run)
    assert [seam.name for seam in pattern.seams].count("join") == 3


def test_strip_too_short_for_any_panel_is_refused():
    (mistake,) = objections(brief(SHARP, boxing_longest=150, boxing_spare=75), height=30)
    assert mistake.startswith("allowances.boxing_longest: 150 mm is less than a panel of boxing")
    assert not objections(brief(SHARP, boxing_longest=150, boxing_spare=75))


def test_sewing_marks_are_for_boxing_alone():
    assert not guides(piece(pad(brief(SHARP)), "top"), LineKind.SEWING)
    assert len(guides(piece(pad(brief(SHARP), height=30), "top"), LineKind.SEWING)) == 2


def test_too_much_left_open_beside_the_join_is_refused_of_boxing_alone():
    small = RoundedRectangle(width=300, depth=250, corner=0).contour()
    seat = brief(small, sewing_open=280)
    assert objections(seat) == []
    (mistake,) = objections(seat, height=30)
    assert mistake.startswith("allowances.sewing_open: 280 mm is more than a quarter of the seam")


def test_opening_stays_clear_of_the_ties():
    (mistake,) = objections(brief(SHARP), opening=320)
    assert mistake == (
        "cover.opening: 320 mm reaches the ties at the back (310 mm); leave less open, or set the "
        "ties in less"
    )
    assert not objections(brief(SHARP), opening=310)


def test_usual_opening_is_half_the_back_or_what_the_ties_leave():
    assert pad(brief(SHARP)).seams[1].a.length == pytest.approx(200)
    assert pad(brief(SHARP), tie_inset=100).seams[1].a.length == pytest.approx(160)


def test_opening_stands_in_the_middle_of_a_back_that_is_off_the_middle():
    corners = ((20.0, 0.0), (400.0, 0.0), (300.0, 400.0), (200.0, 400.0))
    seat = Polygon(corners=corners).contour()
    pattern = pad(brief(seat))
    at = dict(piece(pattern, "top").edges["edge"].stations)
    ends = [at[name] for name in ("opening left", "tie back left")]
    others = [at[name] - seat.length for name in ("opening right", "tie back right")]
    assert sum(ends[:1] + others[:1]) == pytest.approx(sum(ends[1:] + others[1:]))


def test_low_boxing_and_three_pairs_are_refused_together():
    with pytest.raises(Refusals) as refused:
        LoosePad(height=5, pairs=3)
    told_ = [mistake.told() for mistake in refused.value]
    assert told_ == [
        "height: 5 mm is less than a boxing takes (10 mm); make it higher, or 0",
        "pairs: 3 is neither 2 nor 4; say 2 or 4",
    ]


def test_point_at_the_back_takes_no_ties():
    (mistake,) = objections(brief(kite().scaled(0.8, 1.0)), opening=80)
    assert mistake.startswith("outline: faces back for only 0 mm")


def test_report_tells_sizes_ties_and_opening():
    says = told(pad(brief(SHARP, seam=12)).fit.says)
    assert "Finished 400 mm by 300 mm, sewn flat" in says
    assert "4 ties 20 mm by 250 mm: strips 80 mm by 274 mm" in says
    assert "Opening 200 mm in the back seam" in says
    says = told(pad(brief(SHARP), height=30).fit.says)
    assert "Finished 400 mm by 300 mm by 30 mm" in says
    assert "Foam 412 mm by 312 mm by 30 mm: 6 mm larger on every side" in says


def test_long_boxing_is_warned_of():
    assert "takes a strip of" in told(pad(brief(BENCH), height=30).fit.warnings)
    assert not pad(brief(ROUND), height=30).fit.warnings


def test_ties_are_pinned_before_the_seam_that_catches_them():
    says = told(pad(brief(SHARP)).steps)
    assert says.index("Pin two at each") < says.index("Seam: top to bottom")
    says = told(pad(brief(SHARP), height=30).steps)
    assert says.index("Lay the boxing to the top") < says.index("Lay the boxing to the bottom")
    assert "200 mm at the back stays open" in says
    assert says.endswith("slip-stitch the opening")
