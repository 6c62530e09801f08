"""Laws of napped and striped cloth under every cover of every shape."""

from dataclasses import replace

import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from patternmaker.covers import COVERS
from patternmaker.drawing.pieces import label_room, piece_drawing
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.touching import encloses
from patternmaker.materials import Material
from patternmaker.pattern.cloth import laid
from patternmaker.pattern.piece import LineKind, Piece
from tests.covers.seats import guides
from tests.laws.strategies import contours, measurements
from tests.laws.test_covers import CHORDS, Covered, bays, few, line, point, seats

CLOTHS = st.sampled_from([
    Material(kind="woven cloth", repeat_across=60),
    Material(kind="woven cloth", repeat=200, repeat_across=90, nap="one way"),
    Material(kind="vinyl", repeat=200, lay="railroaded"),
    Material(kind="velour"),
])  # fmt: skip


@st.composite
def covered(draw: st.DrawFn) -> Covered:
    """Draw a seat of any shape under any cover, all of it in one cloth."""
    brief = replace(draw(seats(contours() | bays())), materials={"": draw(CLOTHS)})
    cover = draw(st.sampled_from(list(COVERS.all.values())).flatmap(measurements))
    assume(not list(cover.objections(brief)))
    return Covered(brief, cover, cover.pattern(brief))


@few
@given(covered())
def test_match_line_begins_at_the_cut_edge_and_stays_on_its_piece(seat):
    for piece in laid(seat.pattern).pieces:
        cut = line(piece.cut)
        inside = shapely.Polygon(cut).buffer(2 * CHORDS)
        for guide in guides(piece, LineKind.MATCH):
            assert cut.distance(point(guide.path.segments[0].start)) < 2 * CHORDS
            assert inside.contains(line(guide.path))


@few
@given(covered())
def test_every_piece_of_a_matched_cloth_that_has_a_front_notch_has_a_match_line(seat):
    for piece in laid(seat.pattern).pieces:
        names = [name for edge in piece.edges.values() for name, _ in edge.stations[1:-1]]
        if piece.material.is_matched and "front" in names and not _cut_away(piece):
            assert guides(piece, LineKind.MATCH), piece.name


def _cut_away(piece: Piece) -> bool:
    """Return whether the front of a ring lies in a corner that is cut out."""
    edge = next(iter(piece.edges.values())).path
    if not isinstance(edge, Contour) or "front" not in edge.joints:
        return False
    return not encloses(piece.cut, edge.point_at(edge.station("front")) + 1j)


@few
@given(covered())
def test_nap_and_repeat_change_no_cut_notch_or_seam(seat):
    again = laid(seat.pattern)
    assert again.seams == seat.pattern.seams
    for before, after in zip(seat.pattern.pieces, again.pieces, strict=True):
        assert (after.cut, after.notches, after.edges) == (before.cut, before.notches, before.edges)
        assert (after.nap is not None) is (after.turn == 360)


@few
@given(covered())
def test_every_sewn_piece_can_be_drawn_with_room_for_its_label(seat):
    for piece in (each for each in laid(seat.pattern).pieces if each.edges):
        assert piece_drawing(piece).marks
        left, bottom, right, top = label_room(piece)
        assert left <= right or piece.is_strip
        assert bottom <= top or piece.is_strip
