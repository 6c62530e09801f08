"""Papers, margins and overlaps: what is read, and what is refused."""

import math
from dataclasses import astuple

import pytest

from patternmaker.errors import Refusals
from patternmaker.sheets.papers import PAPERS, Margins, Paper, Stock, read_paper, stock_of
from patternmaker.units import Unit

TEN = Margins(10, 10, 10, 10)


@pytest.mark.parametrize("raw", ["A4", "a4", " A4 ", "a4\n"])
def test_papers_are_known_by_name_however_it_is_written(raw):
    assert read_paper(raw, Unit.IN) is PAPERS["a4"]


@pytest.mark.parametrize(
    ("raw", "unit", "size"),
    [
        ("600x900mm", Unit.IN, (600, 900)),
        ("900 x 600 mm", Unit.IN, (600, 900)),
        ("600×900", Unit.MM, (600, 900)),
        ("60X90", Unit.CM, (600, 900)),
        ("18x24in", Unit.MM, (457.2, 609.6)),
        ("18x24", Unit.IN, (457.2, 609.6)),
        ('8 1/2"x11"', Unit.MM, (215.9, 279.4)),
        ("600mmx24in", Unit.CM, (600, 609.6)),
    ],
)
def test_any_other_size_is_read_and_stands_upright(raw, unit, size):
    paper = read_paper(raw, unit)
    assert (paper.width, paper.height) == pytest.approx(size)


@pytest.mark.parametrize(
    ("raw", "says"),
    [
        ("A9", "A4"), ("leter", "Letter"), ("", "A4"), ("x", "A4"), ("12", "A4"),
        ("0x0mm", "paper"), ("-5x10mm", "50 mm"), ("49x600mm", "50 mm"), ("100x5081mm", "5080"),
        ("1e9x1e9mm", "paper"), ("infxinf", "A4"), ("100x", "A4"), ("1x2x3mm", "paper"),
    ],
)  # fmt: skip
def test_what_is_no_paper_is_refused_by_name(raw, says):
    with pytest.raises(Refusals, match="paper") as refused:
        read_paper(raw, Unit.MM)
    assert says in str(refused.value)


@pytest.mark.parametrize("unit", Unit)
def test_usual_stock_goes_with_the_unit(unit):
    stock = stock_of(unit)
    assert stock.paper.name == ("Letter" if unit is Unit.IN else "A4")
    assert stock.overlap == pytest.approx(9.525 if unit is Unit.IN else 10)
    assert stock.margins.bottom > stock.margins.top


def test_margins_are_one_length_or_four():
    assert stock_of(Unit.MM, margins="15").margins == Margins(15, 15, 15, 15)
    four = stock_of(Unit.IN, margins="1/4, 3/8,1/2, 12 mm").margins
    assert astuple(four) == pytest.approx((6.35, 9.525, 12.7, 12))


@pytest.mark.parametrize("raw", ["1,2", "1,2,3", "1,2,3,4,5", ",", "oak", "nan", "1,2,3,x"])
def test_other_margins_are_refused(raw):
    with pytest.raises(Refusals, match="margins"):
        stock_of(Unit.MM, margins=raw)


@pytest.mark.parametrize(
    ("margins", "overlap"),
    [
        ((-1, 10, 10, 10), 10), ((10, 10, 10, math.nan), 10), ((10, 10, 10, math.inf), 10),
        ((10, 10, 10, 10), -1), ((10, 10, 10, 10), math.nan), ((10, 10, 10, 10), math.inf),
        ((105, 105, 0, 0), 10), ((0, 0, 200, 200), 10), ((43, 43, 10, 10), 10),
        ((10, 10, 10, 10), 64),
    ],
)  # fmt: skip
def test_stock_that_can_hold_no_pattern_is_refused(margins, overlap):
    with pytest.raises(Refusals):
        Stock(PAPERS["a4"], Margins(*margins), overlap)


def test_an_overlap_of_a_third_of_a_sheet_is_the_most():
    assert Stock(PAPERS["a4"], TEN, 190 / 3).overlap == 190 / 3
    with pytest.raises(Refusals, match="overlap"):
        Stock(PAPERS["a4"], TEN, 190 / 3 + 0.001)


def test_page_and_window_turn_together():
    stock = Stock(PAPERS["a4"], Margins(5, 10, 15, 20), overlap=10)
    assert stock.page(landscape=False) == (210, 297)
    assert stock.page(landscape=True) == (297, 210)
    assert stock.window(landscape=False) == (195, 262)
    assert stock.window(landscape=True) == (282, 175)
    assert stock.usable_area == 195 * 262


def test_largest_paper_stays_within_what_viewers_open():
    """14,400 units of 1/72 in: PDF Reference, implementation limits."""
    assert read_paper("5080x5080mm", Unit.MM) == Paper("5080x5080mm", 5080, 5080)
