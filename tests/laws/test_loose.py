"""Laws of loose cushions over seats of every shape, measured by shapely on fine chords."""

import pytest
import shapely
import shapely.affinity
from hypothesis import Phase, assume, given, settings
from hypothesis import strategies as st

from patternmaker.covers.box_cushion import BoxCushion
from patternmaker.covers.knife_edge import KnifeEdge
from patternmaker.covers.loose_pad import LoosePad
from patternmaker.pattern.piece import LineKind
from tests.covers.seats import guides, piece, pieces
from tests.laws.test_covers import CHORDS, WALKS, Covered, covered, line

SOME = [Phase.explicit, Phase.reuse, Phase.generate]
few = settings(max_examples=25, phases=SOME)
BOXES = (BoxCushion, LoosePad)


def loose(*kinds: type) -> st.SearchStrategy[Covered]:
    kinds = kinds or (BoxCushion, KnifeEdge, LoosePad)
    return covered(kinds) | covered(kinds, in_panels=True)


@few
@given(loose(BoxCushion, LoosePad))
def test_a_cushion_is_cut_as_large_as_it_is_measured_and_two_allowances(seat):
    outline, both = seat.brief.outline, 2 * seat.brief.allowances.seam
    assert seat.sew.length == pytest.approx(line(outline).length, abs=WALKS)
    assert seat.sew.width + both == pytest.approx(outline.width + both, abs=1e-6)
    assert seat.pattern.fit.stretch_round == 1.0


@few
@given(loose())
def test_bottom_is_the_mirror_image_of_the_top_and_its_notches_are_too(seat):
    bottom = piece(seat.pattern, "bottom")
    turned = shapely.affinity.scale(line(bottom.cut), -1, 1, origin=(0, 0))
    assert turned.hausdorff_distance(line(seat.top.cut)) < 100 * CHORDS
    feet = {notch.name: sum(notch.feet) / len(notch.feet) for notch in bottom.notches}
    for notch in seat.top.notches:
        foot = sum(notch.feet) / len(notch.feet)
        assert abs(feet[notch.name] + foot.conjugate()) < 0.01


@few
@given(loose(*BOXES))
def test_boxing_goes_round_both_faces_once(seat):
    whole = line(seat.sew).length
    for name in ("top seam", "bottom seam"):
        lengths = [seam.b.length for seam in seat.pattern.seams if seam.name == name]
        assume(lengths)
        assert sum(lengths) == pytest.approx(whole, abs=WALKS)


@few
@given(loose(*BOXES))
def test_strip_is_as_high_as_its_part_of_the_foam_and_no_longer_than_there_is(seat):
    allowed, cover = seat.brief.allowances, seat.cover
    for panel in seat.panels:
        assert panel.cut.height == pytest.approx(cover.height + 2 * allowed.upper_edge)
    for strip in pieces(seat.pattern, "zip boxing"):
        high = cover.height / 2 + allowed.upper_edge + cover.zip_turning
        assert strip.cut.height == pytest.approx(high)
    longest = allowed.boxing_longest or float("inf")
    for strip in (*seat.panels, *pieces(seat.pattern, "zip boxing")):
        assert strip.cut.width <= longest + 1e-6


@few
@given(loose(KnifeEdge))
def test_corners_are_only_ever_drawn_inward(seat):
    outline = shapely.Polygon(line(seat.brief.outline))
    sew = shapely.Polygon(line(seat.sew))
    assert sew.is_valid
    assert outline.buffer(2 * CHORDS).contains(sew)
    assert line(seat.brief.outline).hausdorff_distance(line(seat.sew)) < 6 * seat.cover.taper + 0.01


@few
@given(loose())
def test_every_line_of_a_piece_lies_within_its_cut_line(seat):
    for each in seat.pattern.pieces:
        cut = shapely.Polygon(line(each.cut))
        assert cut.is_valid or each.is_template  # which may be larger by less than chords tell
        inside = cut.buffer(0.001)
        assert all(inside.contains(line(guide.path)) for guide in each.guides)
        assert len(guides(each, LineKind.SEWING)) <= 2
