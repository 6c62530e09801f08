"""Laws of what is done to any cover: welts in any of its seams, and the thread of all of them."""

import math
from dataclasses import dataclass, replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from patternmaker.covers import finishing
from patternmaker.covers.parts import welts
from patternmaker.covers.parts.runs import length_of, runs, seam_beside
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.finishing import Finishing, WeltWish
from patternmaker.pattern.piece import LineKind, Pattern
from patternmaker.pattern.stitching import StitchRules
from tests.laws.strategies import measurements
from tests.laws.test_covers import CHORDS, covered, few, line, point


@dataclass(frozen=True)
class Welted:
    """A cover as it was drafted, and with a welt in one of its seams."""

    brief: Brief
    plain: Pattern
    pattern: Pattern

    def __repr__(self) -> str:
        """Say what is asked for."""
        return f"{self.brief.finishing} of {[piece.name for piece in self.plain.pieces]}"

    @property
    def wish(self) -> WeltWish:
        return self.brief.finishing.welts[0]


@st.composite
def welted(draw: st.DrawFn) -> Welted:
    seat = draw(covered().filter(lambda seat: bool(seat.pattern.seams)))
    wish = draw(measurements(WeltWish))
    wish = replace(wish, seam=draw(st.sampled_from(seat.pattern.seam_names)))
    rules = draw(measurements(StitchRules))
    brief = replace(seat.brief, finishing=Finishing(welts=(wish,), stitches=rules))
    assume(not list(finishing.objections(seat.pattern, brief)))
    return Welted(brief, seat.pattern, finishing.finished(seat.pattern, brief))


@few
@given(welted())
def test_strips_of_a_welt_are_together_as_long_as_its_seam(seat):
    strips = [piece for piece in seat.pattern.pieces if piece.role == "welt"]
    sewn = length_of(runs(seat.plain, seat.wish.seam))
    times = sum(run.times for run in runs(seat.plain, seat.wish.seam))
    open_ = sum(run.times for run in runs(seat.plain, seat.wish.seam) if not run.is_closed)
    ends = 2 * seat.brief.allowances.seam * open_
    whole = sum(piece.count * piece.sew_length for piece in strips)
    assert whole == pytest.approx(sewn + ends + seat.wish.spare * times, abs=0.05)


@few
@given(welted())
def test_no_strip_is_longer_than_the_material_gives(seat):
    given_ = seat.brief.allowances.boxing_longest
    for welt in welts.asked(seat.plain, seat.brief):
        longest = welt.material.longest_strip if given_ is None else given_
        slant = welt.width if welt.is_bias and welt.is_slanted else 0.0
        assert welt.piece().cut.width <= longest + slant + 1e-6


@few
@given(welted())
def test_area_of_a_strip_is_its_length_times_its_width(seat):
    for piece in seat.pattern.pieces:
        if piece.role == "welt":
            past = 2 * seat.wish.join * math.sqrt(2) if piece.is_slanted else 0.0
            area = (piece.sew_length + past) * piece.cut.height
            assert piece.cut.area == pytest.approx(area, rel=1e-9)
            assert all(line(piece.cut).convex_hull.buffer(CHORDS).contains(point(end))
                       for guide in piece.guides for end in guide.path.chords(1))  # fmt: skip


@few
@given(welted())
def test_welt_changes_nothing_else_but_the_topstitch_of_its_seam(seat):
    after = {piece.name: piece for piece in seat.pattern.pieces}
    for piece in seat.plain.pieces:
        same = after[piece.name]
        assert (same.cut, same.notches, same.edges) == (piece.cut, piece.notches, piece.edges)
        gone = [guide for guide in piece.guides if guide not in same.guides]
        assert all(guide.kind is LineKind.TOPSTITCH for guide in gone)
        assert not gone or not seat.wish.topstitch
        for guide in same.guides:
            if guide.kind is LineKind.TOPSTITCH and not seat.wish.topstitch:
                assert seam_beside(guide, piece, seat.plain.seams) != seat.wish.seam


@few
@given(welted())
def test_every_seam_has_its_stitches_and_they_take_more_than_twice_its_thread(seat):
    names = [row.seam for row in seat.pattern.stitches if not row.shows]
    assert [name for name in names if name in seat.plain.seam_names] == list(seat.plain.seam_names)
    for row in seat.pattern.stitches:
        assert row.thread >= 2 * row.run
        assert row.run > 0
