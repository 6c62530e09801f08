"""The proof page, by an independent reader of its lines and words."""

import pytest

from patternmaker.sheets.papers import stock_of
from patternmaker.sheets.printer import LONGEST_NAME
from patternmaker.sheets.proof import command_for, proof_page
from patternmaker.sheets.sides import proved
from patternmaker.units import Unit
from tests.paper.reader import Page, Paper

STOCKS = [
    ("A4", None, Unit.MM),
    ("Letter", None, Unit.IN),
    ("Letter", None, Unit.MM),
    ("A3", "5", Unit.CM),
    ("A0", "5,6,7,8", Unit.MM),
    ("145x155mm", "10mm", Unit.MM),
    ("145x155mm", "10mm", Unit.IN),
]


def page_of(paper: str, margins: str | None, unit: Unit, name: str = "") -> Page:
    content = proof_page(stock_of(unit, paper, margins), unit, command_for(name))
    (page,) = Paper(content).pages
    return page


@pytest.mark.parametrize(("paper", "margins", "unit"), STOCKS)
def test_triangle_has_the_sides_that_stand_beside_it(paper, margins, unit):
    page, sides = page_of(paper, margins, unit), proved(unit, stock_of(unit, paper, margins))
    (triangle,) = [line.curve for line in page.lines]
    drawn = sorted(piece.length() for piece in triangle.pieces)
    assert drawn == pytest.approx(sorted(sides.named.values()))
    assert triangle.size == pytest.approx((sides.across, sides.up))
    said = " ".join(word.text for word in page.words)
    assert all(f"{name}: " in said for name in ("across", "up", "long side"))


@pytest.mark.parametrize(("paper", "margins", "unit"), STOCKS)
def test_nothing_is_drawn_over_the_margins(paper, margins, unit):
    stock = stock_of(unit, paper, margins)
    page = page_of(paper, margins, unit, "x" * LONGEST_NAME)
    left, bottom = stock.margins.left, stock.margins.bottom
    for line in page.lines:
        assert line.curve.box[0] >= left
        assert line.curve.box[1] >= bottom
        assert line.curve.box[2] <= page.size[0] - stock.margins.right
        assert line.curve.box[3] <= page.size[1] - stock.margins.top
    assert all(word.at.imag >= bottom and word.at.real >= left for word in page.words)


@pytest.mark.parametrize(("paper", "margins", "unit"), STOCKS)
def test_page_says_what_to_type_whole_however_long_the_name_is(paper, margins, unit):
    words = "".join(word.text for word in page_of(paper, margins, unit, "w" * 40).words)
    assert "w" * 40 in words
    assert "--long-side" in words


def test_page_is_the_same_bytes_every_time():
    stock = stock_of(Unit.MM)
    one, two = (proof_page(stock, Unit.MM, command_for("east wing")) for _ in range(2))
    assert one == two


def test_name_of_two_words_is_quoted():
    assert command_for("east wing").startswith('patternmaker printer "east wing" --across')
