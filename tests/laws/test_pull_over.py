"""Laws of covers in one piece over seats of every shape, measured by shapely on fine chords."""

import math

import pytest
import shapely
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from patternmaker.covers.parts.bends import bends
from patternmaker.covers.pull_over import PullOver
from patternmaker.geometry.contour import Contour
from patternmaker.pattern.piece import LineKind
from tests.covers.seats import guides
from tests.laws.strategies import contours, measurements
from tests.laws.test_covers import CHORDS, Covered, bays, covered, line, point, seats

SOME = [Phase.explicit, Phase.reuse, Phase.generate]
few = settings(max_examples=25, phases=SOME)


def pulled() -> st.SearchStrategy[Covered]:
    return covered((PullOver,))


def top_edge(seat: Covered) -> Contour:
    path = guides(seat.pattern.pieces[0], LineKind.FOLD)[0].path
    assert isinstance(path, Contour)
    return path


@few
@given(pulled())
def test_cut_line_runs_round_once_and_holds_every_line(seat):
    piece = seat.pattern.pieces[0]
    inside = shapely.Polygon(line(piece.cut))
    assert inside.is_valid
    for guide in piece.guides:
        if guide.kind is not LineKind.RELIEF:  # its end is marked across the line
            assert inside.buffer(0.01).contains(line(guide.path))


@few
@given(pulled())
def test_tight_part_is_scaled_as_one(seat):
    """Its area is that of the outline times what is kept each way."""
    fold, outline = top_edge(seat), seat.brief.outline
    across, along = fold.width / outline.width, fold.height / outline.height
    assert fold.area == pytest.approx(outline.area * across * along, rel=1e-5)


@few
@given(pulled())
def test_legs_of_every_corner_seam_start_at_one_point_of_the_top_edge(seat):
    edge = line(top_edge(seat))
    for seam in seat.pattern.seams:
        one, two = (each.path.segments[0].start for each in (seam.a, seam.b))
        assert one == two
        assert edge.distance(point(one)) < 2 * CHORDS


@few
@given(seats(contours() | bays()), measurements(PullOver))
def test_every_refusal_names_its_field_and_its_mend(brief, cover):
    for mistake in cover.objections(brief):
        assert mistake.field.startswith(("cover.", "allowances."))
        assert "{" not in mistake.told()


@few
@given(contours())
def test_bends_outward_less_bends_inward_turn_once_round(contour):
    """The total turning of a closed curve (Hopf's Umlaufsatz)."""
    out = math.fsum(bend.angle for bend in bends(contour, math.inf))
    inward = math.fsum(bend.angle for bend in bends(contour, math.inf, outward=False))
    assert out + inward == pytest.approx(math.tau, abs=1e-3)
