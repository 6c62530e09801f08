"""What needs no paper is struck by hand from a few figures."""

import math

import pytest

from patternmaker.covers.boxed import Boxed
from patternmaker.cutlist.strike import by_hand
from patternmaker.materials import Material
from patternmaker.outlines import Outline
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.allowances import Allowances
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import Piece
from patternmaker.units import Unit

ROUND = Circle(diameter=320)
SQUARE = RoundedRectangle(width=400, depth=300, corner=40)


def piece(role: str, outline: Outline, kind: str = "woven cloth", **wishes: float) -> Piece:
    brief = Brief(
        outline.contour(), outline.contour(), Allowances(seam=12, wrap=25, **wishes),
        {"": Material(kind=kind)},
    )  # fmt: skip
    return next(p for p in Boxed(drop=70).pattern(brief).pieces if p.role == role)


def test_round_top_is_struck_with_a_trammel():
    (note,) = by_hand(piece("top", ROUND))
    assert note.told(Unit.MM) == "Trammel set to 172 mm: a circle 344 mm across"


def test_rectangle_is_proved_by_its_diagonal():
    told = [note.told(Unit.MM) for note in by_hand(piece("top", SQUARE))]
    diagonal = math.hypot(424, 324)
    assert told[0] == f"Rectangle 424 mm × 324 mm, diagonal {round(2 * diagonal) / 2:g} mm"
    assert told[1] == "corners of radius 52 mm, struck from 52 mm inside both edges"


def test_sharp_rectangle_says_so():
    bench = RoundedRectangle(width=400, depth=300, corner=0)
    assert by_hand(piece("base template", bench))[-1].told(Unit.MM) == "corners sharp"


def test_strip_gives_its_lines_from_the_upper_edge():
    told = [note.told(Unit.MM) for note in by_hand(piece("boxing", ROUND, boxing_spare=30))]
    run = math.pi * 320
    length, height = run + 24 + 30, 12 + 70 + 25
    assert told[0].startswith(f"Strip {round(2 * length) / 2:g} mm × {height} mm, diagonal")
    assert "near join line 12 mm from the end; seam 12 mm from the upper edge" in told
    assert "fold 82 mm from the upper edge" in told  # seam + drop


def test_strip_gives_its_marks_from_the_near_join():
    told = by_hand(piece("boxing", ROUND))[-1].told(Unit.MM)
    quarter = round(2 * math.pi * 80) / 2
    assert told.startswith("from the near join line: ")
    assert f"{quarter:g} mm (left)" in told


@pytest.mark.parametrize("rates", [{"take_up_across": 0.0, "take_up_along": 0.1}])
def test_round_top_that_becomes_oval_takes_paper(rates):
    brief = Brief(
        ROUND.contour(), ROUND.contour(), Allowances(seam=12, wrap=25), {"": Material(**rates)}
    )
    assert by_hand(Boxed(drop=70).pattern(brief).pieces[0]) == ()
