"""Templates of what lies under a cover, and pieces that are left out."""

from dataclasses import replace

import pytest

from patternmaker.covers import finishing
from patternmaker.covers.boxed import Boxed
from patternmaker.covers.parts.padding import foam_template
from patternmaker.errors import Refusals
from patternmaker.geometry.contour import Contour
from patternmaker.materials import Material
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.finishing import Padding
from patternmaker.pattern.piece import LineKind
from patternmaker.units import Unit
from tests.covers.seats import BENCH, IN, ROUND, brief, guide, piece, told, with_bay
from tests.covers.welted import finished, objections, with_finishing


def padded(outline: Contour = BENCH, **padding: float) -> Brief:
    return with_finishing(brief(outline), padding=Padding(**padding))


def test_foam_is_cut_larger_than_the_seat_on_each_side():
    """1/2 in in width and length, 1/4 in on each side (a sailing magazine's cushion article)."""
    foam = piece(finished(padded(foam=50, foam_oversize=IN / 4)), "foam template")
    assert foam.cut.width == pytest.approx(760 + IN / 2)
    assert foam.cut.height == pytest.approx(360 + IN / 2)
    assert foam.is_template
    assert "6.5 mm larger than the cover on every side" in told(foam.notes)


def test_wadding_goes_over_the_foam_and_down_both_its_sides():
    wadding = piece(finished(padded(foam=50, foam_oversize=6, wadding=12)), "wadding")
    assert wadding.cut.width == pytest.approx(760 + 2 * 6 + 2 * 50)
    fold = guide(wadding, LineKind.FOLD).path
    assert fold.width == pytest.approx(760 + 2 * 6)


def test_wadding_alone_is_cut_as_the_seat():
    pattern = finished(padded(wadding=12))
    assert piece(pattern, "wadding").cut.width == pytest.approx(760)
    assert not [each for each in pattern.pieces if each.role == "foam template"]


def test_thickness_is_told_as_foam_is_sold():
    foam = foam_template(ROUND, 0, 2 * IN)
    assert "For the foam, 2 in thick" in told(foam.notes, Unit.IN)


def test_padding_of_nothing_is_refused():
    with pytest.raises(Refusals, match="foam: is missing; give its thickness, or that of the wad"):
        Padding()


def test_bay_that_closes_up_is_refused():
    (refused,) = objections(padded(with_bay(mouth=80), foam=30, foam_oversize=45))
    assert refused.startswith("padding.foam_oversize: ")
    (refused,) = objections(padded(with_bay(mouth=80), foam=60, wadding=12))
    assert refused.startswith("padding.foam: ")


def test_cover_with_foam_of_its_own_takes_no_other():
    seat = padded(foam=30)
    pattern = Boxed(drop=80).pattern(seat)
    own = replace(pattern, pieces=(*pattern.pieces, foam_template(ROUND, 0, 30)))
    assert [mistake.told() for mistake in finishing.objections(own, seat)] == [
        "padding: this cover has a foam template of its own; leave the padding away"
    ]


def test_pieces_may_be_left_out():
    seat = with_finishing(brief(), without=("dust cover", "base template"))
    pattern = finished(seat)
    assert [each.name for each in pattern.pieces] == ["top", "boxing"]
    steps = told(pattern.steps)
    assert "dust cover" not in steps
    assert "base template" not in steps
    assert "draw the reference line" in steps


def test_template_of_the_padding_may_be_left_out_too():
    seat = with_finishing(brief(), padding=Padding(foam=50, wadding=12), without=("foam template",))
    assert [each.name for each in finished(seat).pieces][-1] == "wadding"


def test_unknown_piece_is_refused_with_the_known_ones():
    (refused,) = objections(with_finishing(brief(), without=("valance",)))
    assert refused == "without: 'valance' is not known; it can be base template, dust cover"
    (refused,) = objections(with_finishing(brief(), without=("dust covers",)))
    assert refused.endswith("did you mean 'dust cover'?")


def test_sewn_piece_is_not_left_out():
    (refused,) = objections(with_finishing(brief(), without=("boxing",)))
    assert refused == (
        "without: 'boxing' is sewn to others: the cover needs it; what may be left out is base "
        "template, dust cover"
    )


def test_template_is_of_card():
    assert foam_template(ROUND, 5, 30).material == Material(kind="card")
