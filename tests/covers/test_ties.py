"""Ties, and where they are caught."""

import pytest

from patternmaker.covers.parts.ties import Ties
from patternmaker.geometry.contour import Contour
from patternmaker.materials import Material
from patternmaker.outlines.l_shape import LShape
from patternmaker.pattern.piece import LineKind
from tests.covers.seats import CLOTH, SHARP, brief, guides, kite, told


def ties(pairs: int = 2, inset: float = 25.0) -> Ties:
    return Ties(pairs=pairs, width=20, length=250, inset=inset)


def refused(sew: Contour, straps: Ties) -> list[str]:
    return [mistake.told() for mistake in straps.objections(sew)]


def test_two_pairs_stand_inside_the_back_corners():
    marks = dict(ties(inset=30).marks(SHARP))
    assert SHARP.point_at(marks["tie back left"]) == pytest.approx(-170 + 150j)
    assert SHARP.point_at(marks["tie back right"]) == pytest.approx(170 + 150j)
    assert len(marks) == 2


def test_four_pairs_stand_inside_the_front_corners_too():
    marks = dict(ties(4, inset=30).marks(SHARP))
    assert SHARP.point_at(marks["tie front left"]) == pytest.approx(-170 - 150j)
    assert SHARP.point_at(marks["tie front right"]) == pytest.approx(170 - 150j)
    assert len(marks) == 4


def test_a_strap_is_cut_four_times_as_wide_and_two_allowances_longer():
    strap = ties().piece(brief(SHARP, seam=12))
    assert (strap.cut.width, strap.cut.height) == (274, 80)
    assert strap.finished == pytest.approx((250, 20))
    assert strap.count == 4
    assert ties(4).piece(brief(SHARP)).count == 8


def test_folds_are_shown_at_both_ends_a_width_apart():
    strap = ties().piece(brief(SHARP, seam=12))
    level = [each.path for each in guides(strap, LineKind.FOLD) if not each.path.height]
    assert sorted({path.bounds[1] for path in level}) == [-20, 0, 20]
    assert len(level) == 6
    assert all(path.width == 12 + 30 for path in level)


def test_straps_are_cut_from_the_top_s_material_unless_they_have_their_own():
    webbing = Material(kind="vinyl", name="black webbing")
    assert ties().piece(brief(SHARP)).material is CLOTH
    assert ties().piece(brief(SHARP, roles={"tie": webbing})).material is webbing


def test_what_they_take_is_told():
    says = told([ties().note(12), *ties().steps(12)])
    assert "4 ties 20 mm by 250 mm: strips 80 mm by 274 mm, 1096 mm of that width in all" in says
    assert "20 mm wide. Make 4" in says
    assert "Pin two at each of the 2 tie marks" in says


def test_ties_set_in_so_far_that_they_meet_are_refused():
    (mistake,) = refused(SHARP, ties(inset=140))
    assert mistake == (
        "cover.tie_inset: 140 mm brings the ties at the back too near each other (136.5 mm); "
        "set them in less"
    )
    assert not refused(SHARP, ties(inset=136))


def test_a_point_at_the_back_has_no_room_for_two_places():
    (mistake,) = refused(kite().scaled(0.8, 1.0), ties())
    assert mistake.startswith("outline: faces back for only 0 mm, and two places for ties take 127")


def test_an_inner_corner_at_the_front_has_no_room_for_ties():
    (mistake,) = refused(LShape().contour(), ties(4))
    assert mistake.startswith("cover.pairs: the seat faces front for only 0 mm")
    assert mistake.endswith("tie it at the back alone (pairs = 2)")
