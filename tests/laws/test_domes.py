"""Laws of domed tops over outlines that bear one; `test_covers` draws them over all the others."""

import math
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from patternmaker.covers.domed import DomedTop
from patternmaker.covers.parts import crowns
from patternmaker.geometry.domes import over_crown
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.half_round import HalfRound
from patternmaker.outlines.oval import Oval
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.outlines.rounded_trapezoid import RoundedTrapezoid
from patternmaker.pattern.piece import LineKind
from tests.covers.seats import guides
from tests.laws.strategies import measurements
from tests.laws.test_covers import Covered, covered, few, line

if TYPE_CHECKING:
    from patternmaker.geometry.contour import Contour

CLOSELY = 0.002  # mm


def domed(*, in_panels: bool = False) -> st.SearchStrategy[Covered]:
    kinds = st.sampled_from([Circle, Oval, RoundedRectangle, HalfRound, RoundedTrapezoid])
    outlines: st.SearchStrategy[Contour] = kinds.flatmap(measurements).map(
        lambda kind: kind.contour()
    )
    return covered((DomedTop,), outlines, in_panels=in_panels)


def crown_of(seat: Covered) -> float:
    assert isinstance(seat.cover, DomedTop)
    return seat.cover.crown


@few
@given(domed())
def test_length_over_the_crown_is_taken_up_exactly_both_ways(seat):
    brief = crowns.in_plan(seat.brief, crown_of(seat))
    dome = crowns.sewn(brief, crown_of(seat))
    ups = crowns.take_ups(brief, crown_of(seat))
    for up, size in zip(ups, (dome.seam.width, dome.seam.height), strict=True):
        drafted = over_crown(size, dome.rise) + 2 * brief.allowances.seam
        assert drafted == pytest.approx(up.cut, abs=CLOSELY)


@few
@given(domed())
def test_width_measured_over_the_crown_is_the_arc_over_the_width_in_plan(seat):
    taped, crown = seat.brief.taped, crown_of(seat)
    assume(min(taped.width, taped.height) >= math.pi * crown)
    flat = crowns.flat(taped, crown)
    for over, plan in ((taped.width, flat.width), (taped.height, flat.height)):
        assert over_crown(plan, crown) == pytest.approx(over, abs=CLOSELY)


@few
@given(domed(in_panels=True))
def test_every_place_of_the_boxing_is_sewn_to_the_top_once(seat):
    for panel in seat.panels:
        spans = [
            (seam.b.stations[0][1], seam.b.stations[-1][1])
            for seam in seat.pattern.seams
            if seam.name == "top seam" and seam.b.piece == panel.name
        ]
        ends = [at for span in sorted(spans) for at in span]
        assert ends[0] == 0
        assert ends[-1] == pytest.approx(panel.sew_length)
        assert ends[1:-1:2] == ends[2::2]


@few
@given(domed())
def test_sew_lines_of_the_top_lie_inside_its_cut_lines(seat):
    for piece in seat.pattern.pieces:
        if piece.role == "top":
            lines = [line(guide.path) for guide in guides(piece, LineKind.SEW)]
            cut = line(piece.cut)
            assert all(cut.distance(each) > seat.brief.allowances.seam / 2 for each in lines)
