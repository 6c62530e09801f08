"""What the sides of a proof triangle tell of a printer."""

import dataclasses
import math

import pytest

from patternmaker.errors import Refusals
from patternmaker.sheets.papers import PAPERS, Margins, Paper, Stock, usual_margins
from patternmaker.sheets.printer import Printer, Sides
from patternmaker.units import Unit

DRAWN = Sides(180, 240, 300)
A4, MARGINS = PAPERS["a4"], usual_margins(Unit.MM)


def printer(
    across: float = 180,
    up: float = 240,
    long: float | None = 300,
    name: str = "east wing",
) -> Printer:
    return Printer(name, A4, MARGINS, Unit.MM, DRAWN, Sides(across, up, long))


def stock(one: Printer | None, margins: Margins = MARGINS, paper: Paper = A4) -> Stock:
    return Stock(paper, margins, 10, one)


def test_long_is_drawn_smaller_and_short_is_drawn_larger():
    x, y = printer(across=180 * 1.006, up=240 * 0.996).scale(landscape=False)
    assert (x, y) == pytest.approx((1 / 1.006, 1 / 0.996))


def test_ways_of_the_paper_change_places_on_a_page_that_lies():
    one = printer(across=180 * 1.006, up=240 * 0.996)
    assert one.scale(landscape=True) == one.scale(landscape=False)[::-1]


def test_sheets_show_less_where_more_would_be_drawn_than_there_is_room_for():
    plain, lying = stock(None), stock(printer(across=180 * 1.006, up=240 * 0.996))
    assert lying.window(landscape=False) == pytest.approx((190, 274 * 0.996))
    assert lying.window(landscape=True) == pytest.approx((277 * 0.996, 187))
    assert plain.window(landscape=False) == (190, 274)


def test_page_is_drawn_in_the_middle_of_what_its_margins_leave():
    one = stock(printer(across=180 * 1.01, up=240 * 0.99))
    fitted = one.fitted(landscape=False)
    assert fitted
    x, y, shift = fitted
    (width, height), corner = one.window(landscape=False), MARGINS.corner
    drawn = complex(corner.real * x, corner.imag * y) + shift
    assert drawn.real - MARGINS.left == pytest.approx((190 - width * x) / 2)
    assert drawn.imag - MARGINS.bottom == pytest.approx((274 - height * y) / 2)


def test_stock_of_no_known_printer_is_drawn_as_it_is():
    assert stock(None).fitted(landscape=True) is None


@pytest.mark.parametrize("degrees", [-1.2, -0.4, 0.4, 1.2])
def test_long_side_tells_how_far_a_sheared_page_leans(degrees):
    """By construction: the level side stays, the upright side turns to the left by so much."""
    turn = math.radians(degrees)
    upper = 240 * complex(-math.sin(turn), math.cos(turn))
    one = printer(long=abs(upper - 180))
    assert one.lean == pytest.approx(math.tan(turn))
    assert one.is_askew
    way = "left" if degrees > 0 else "right"
    assert f"leans {abs(math.tan(turn)) * 100:.2f} mm in 100 to the {way}" in one.squareness()


def test_printer_is_square_as_far_as_the_sides_are_read():
    """All three misread by a quarter of a millimetre, the worst way."""
    one = printer(across=179.75, up=239.75, long=300.25)
    assert one.lean == pytest.approx(one.reading_lean, rel=0.01)
    assert one.reading_lean == pytest.approx(0.25 * 720 / 43200)
    assert "square, as finely as the sides were read" in printer(long=300.3).squareness()


def test_long_and_short_alike_is_square():
    grown = printer(across=180 * 1.01, up=240 * 1.01, long=300 * 1.01)
    assert grown.lean == pytest.approx(0, abs=1e-12)


def test_nothing_is_said_of_squareness_without_the_long_side():
    one = printer(long=None)
    assert one.lean is None
    assert one.squareness() == "whether it prints square was not measured"


def test_exactly_three_per_cent_is_taken_and_more_is_not():
    printer(across=180 * 1.03, up=240 * 0.97, long=None)
    with pytest.raises(Refusals) as caught:
        printer(across=180 * 1.031, up=240 * 0.969, long=None)
    told = str(caught.value).splitlines()
    assert [line.split(":")[0] for line in told] == ["across", "up"]
    assert "185.58 mm is 3.1 % more than 180 mm: more than 3 %" in told[0]
    assert "actual size" in told[0]


def test_long_side_that_goes_with_no_short_ones_is_refused():
    with pytest.raises(Refusals, match="only if the printer leaned by 3"):
        printer(across=176, up=236, long=299.5)


@pytest.mark.parametrize("name", ["", "  ", "a\nb", "x" * 41])
def test_name_that_no_sheet_could_bear_is_refused(name):
    with pytest.raises(Refusals, match="its name"):
        printer(name=name)


def test_quarter_of_a_millimetre_on_180_is_no_more_than_the_reading():
    assert printer(across=180.2).is_true
    assert not printer(across=180.3).is_true


def test_report_says_both_ways_and_how_finely_they_are_known():
    across, up, square = printer(across=181, up=239.8).report()
    assert across.startswith("across the paper: prints 0.56 % long (known to 0.14 %, sides read")
    assert "prints 0.08 % short" in up
    assert "no more than the reading itself may be off" in up
    assert "square" in square


def test_inches_are_read_to_a_thirty_second():
    inch = dataclasses.replace(printer(), unit=Unit.IN)
    assert inch.reading_errors[0] == pytest.approx(25.4 / 64 / 180)


def test_another_paper_and_other_margins_are_doubted_and_the_same_are_not():
    one = printer()
    assert not list(one.doubts(stock(one)))
    (paper,) = one.doubts(stock(one, paper=PAPERS["a3"]))
    assert "'east wing' was measured on A4, and this is A3" in paper
    (margins,) = one.doubts(stock(one, margins=Margins(5, 5, 5, 5)))
    assert "with other margins (10 mm, 10 mm, 10 mm, 13 mm; these are 5 mm" in margins


def test_printer_that_leans_is_told_at_every_draft():
    one = printer(long=302)
    (said,) = one.doubts(stock(one))
    assert said.startswith("printer 'east wing' is not square")
