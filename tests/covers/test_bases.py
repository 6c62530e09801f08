import pytest

from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind, Piece
from tests.contours import distance
from tests.covers.seats import (
    BENCH,
    IN,
    boxed,
    brief,
    closed,
    guide,
    guides,
    objections,
    piece,
    told,
    with_bay,
)

BOARD = RoundedRectangle(width=740, depth=345, corner=30).contour()


def template(seat: Brief) -> Piece:
    return piece(boxed(seat), "base template")


def dust_cover(seat: Brief) -> Piece:
    return piece(boxed(seat), "dust cover")


def test_template_is_the_base_as_it_is_without_allowance_or_take_up():
    cut = template(brief(BENCH, Material(), base=BOARD)).cut
    assert cut is BOARD


def test_template_is_card_of_which_one_serves_a_whole_set():
    found = template(brief(BENCH))
    assert found.material.kind == "card"
    assert found.is_template


def test_reference_line_follows_the_edge_an_eighth_short_of_the_wrap():
    line = guide(template(brief(BENCH, base=BOARD, wrap=IN)), LineKind.REFERENCE).path
    assert [line.width, line.height] == pytest.approx([740 - 7 / 4 * IN, 345 - 7 / 4 * IN])


def test_reference_line_is_where_it_is_asked_for_and_the_template_says_so():
    found = template(brief(BENCH, base=BOARD, wrap=30, reference_line=20))
    assert guide(found, LineKind.REFERENCE).path.width == pytest.approx(700)
    assert "trace the reference line 20 mm from its edge" in told(found.notes)


def test_stapling_begins_at_the_four_quarters_of_the_base():
    marks = {g.name: g.path.segments[0] for g in
             guides(template(brief(BENCH, base=BOARD, wrap=30, reference_line=20)),
                    LineKind.STAPLE)}  # fmt: skip
    assert {name: mark.start for name, mark in marks.items()} == pytest.approx({
        "staple first: back": 172.5j, "staple first: left": -370,
        "staple first: front": -172.5j, "staple first: right": 370,
    })  # fmt: skip
    assert marks["staple first: left"].end.real > -370 + 20


def test_dust_cover_is_finished_inside_the_base_and_turned_in_all_round():
    """Common practice, no source: 3/8 in inside, 1/2 in turned."""
    found = dust_cover(brief(base=Circle(diameter=300).contour(), dust_cover_inset=IN * 3 / 8,
                             dust_cover_turning=IN / 2))  # fmt: skip
    assert found.finished == pytest.approx((300 - IN * 3 / 4,) * 2)
    assert found.cut.width == pytest.approx(300 - IN * 3 / 4 + IN)
    fold = closed(guide(found, LineKind.FOLD).path)
    assert distance(fold, found.cut.point_at(50)) == pytest.approx(IN / 2, abs=1e-3)
    assert "Turn in 12.5 mm all round" in told(found.notes)


def test_dust_cover_is_cambric_unless_the_job_says_otherwise():
    assert dust_cover(brief(BENCH, Material())).material.kind == "cambric"
    own = Material(kind="woven cloth", name="calico")
    assert dust_cover(brief(BENCH, roles={"dust cover": own})).material is own


@pytest.mark.parametrize(
    ("allowances", "field"),
    [
        ({"wrap": 60}, "allowances.wrap: a line 56.825 mm inside the edge closes up"),
        ({"wrap": 60, "reference_line": 55}, "allowances.reference_line: a line 55 mm inside"),
        ({"dust_cover_inset": 50}, "allowances.dust_cover_inset: a line 50 mm inside"),
    ],
)
def test_base_too_small_for_its_lines_is_refused_by_the_allowance_that_closes_up(allowances, field):
    base = RoundedRectangle(width=600, depth=99, corner=5).contour()
    (found,) = objections(brief(BENCH, base=base, **allowances))
    assert found.startswith(field)


def test_bay_that_the_turning_of_the_dust_cover_closes_is_refused():
    base = with_bay(mouth=60, corner=5)
    (found,) = objections(brief(BENCH, base=base, dust_cover_inset=0, dust_cover_turning=31))
    assert found.startswith("allowances.dust_cover_turning: a line 31 mm outside the edge closes")
