"""What every sheet carries: bars, heading, join marks."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

import pytest
import shapely

from patternmaker.drawing.surface import Fill, Letters, Mark, Stroke
from patternmaker.drawing.typeface import width
from patternmaker.sheets.furniture import (
    bar_length,
    blanks,
    frame,
    heading,
    join_lines,
    join_number,
    proof_triangle,
    shortened,
)
from patternmaker.sheets.joining import BUTT, FOLD, JOININGS, LAP
from patternmaker.sheets.numbers import beside
from patternmaker.sheets.papers import LEAST_LONG, LEAST_SHORT, Margins, Paper, Stock, stock_of
from patternmaker.sheets.tiling import Grid, Join, Side
from patternmaker.units import Unit
from tests.sheets.prints import A4

SMALLEST = Stock(Paper("small", LEAST_SHORT, LEAST_LONG), Margins(0, 0, 0, 0), overlap=10)
GRIDS = [Grid(stock, way, 3, 3) for stock in (A4, SMALLEST) for way in (False, True)]


def within(grid: Grid, marks: Iterable[Mark]) -> Iterator[bool]:
    across, up = grid.window_size
    for mark in marks:
        if isinstance(mark, Stroke):
            left, bottom, right, top = mark.path.bounds
            yield left >= 0 and bottom >= 0 and right <= across and top <= up
        elif isinstance(mark, Letters):
            yield 0 <= mark.at.real <= across and 0 <= mark.at.imag <= up


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("grid", GRIDS)
def test_bars_stay_on_the_sheet_whatever_the_paper(grid, unit):
    assert all(within(grid, frame(grid, unit).marks))


@pytest.mark.parametrize("unit", Unit)
def test_a_bar_each_way_each_in_one_stroke(unit):
    sizes = [
        (mark.path.width, mark.path.height)
        for mark in frame(GRIDS[0], unit).marks
        if isinstance(mark, Stroke)
    ]
    long = [size for size in sizes if max(size) == pytest.approx(bar_length(unit))]
    assert len(long) == 2
    assert long[0] == pytest.approx(long[1][::-1])


def test_bars_and_triangle_are_whole_numbers_of_the_unit():
    assert bar_length(Unit.IN) == pytest.approx(4 * 25.4)
    assert bar_length(Unit.MM) == bar_length(Unit.CM) == 100
    for unit, sides in ((Unit.MM, (90, 120)), (Unit.CM, (90, 120)), (Unit.IN, (76.2, 101.6))):
        assert proof_triangle(unit) == pytest.approx(sides)


@pytest.mark.parametrize("grid", GRIDS)
def test_heading_leaves_room_between_its_ends(grid):
    words = heading("A very long name " * 20, "sheet 999 of 1000", grid)
    left, right = (word for word in words if isinstance(word, Letters))
    ends = left.at.real + width(left.text, left.size)
    begins = right.at.real - width(right.text, right.size, bold=True)
    assert ends < begins
    assert left.text.endswith("…")
    assert all(within(grid, (left, right)))


def test_short_words_are_left_as_they_are():
    assert shortened("Stool", 3, 100) == "Stool"
    assert shortened("Stool", 3, 4) in {"S…", "…"}


@pytest.mark.parametrize("grid", GRIDS)
@pytest.mark.parametrize(
    ("side", "other"), [("right", "left"), ("top", "bottom")]
)  # fmt: skip
def test_marks_of_a_join_coincide_when_its_sheets_are_laid_together(grid, side, other):
    step = grid.window((1, 0))[0] + 0j if side == "right" else 1j * grid.window((0, 1))[1]
    here = join_lines(grid, [side]).marks
    there = join_lines(grid, [other]).mapped(1, step).marks
    assert len(here) == len(there) >= 5
    for one, two in zip(here, there, strict=True):
        assert isinstance(one, Stroke)
        assert isinstance(two, Stroke)
        for a, b in zip(one.path.segments, two.path.segments, strict=True):
            assert abs(a.start - b.start) < 1e-9
            assert abs(a.end - b.end) < 1e-9


@pytest.mark.parametrize("grid", GRIDS)
@pytest.mark.parametrize(("side", "other"), [("right", "left"), ("top", "bottom")])
def test_like_number_stands_beside_like_number(grid, side, other):
    step = grid.window((1, 0))[0] + 0j if side == "right" else 1j * grid.window((0, 1))[1]
    one, two = (join_number(grid, each, 7, 0.36) for each in (side, other))
    assert one.text == two.text == "7"
    assert abs(one.at - (two.at + step)) < 12


@pytest.mark.parametrize("overlap", [0.0, 2.0, 6.0, 9.525, 10.0, 20.0])
def test_crosses_of_a_corner_are_one_or_stand_well_apart(overlap):
    """Two crosses a hair's breadth apart would leave a person to guess which is meant."""
    grid = Grid(Stock(Paper("p", 210, 297), Margins(10, 10, 10, 13), overlap), False, 3, 3)
    strokes = [
        mark.path
        for mark in join_lines(grid, ["left", "right", "top", "bottom"]).marks
        if isinstance(mark, Stroke) and mark.path.length < 25
    ]
    middles = {(path.segments[0].start + path.segments[-1].end) / 2 for path in strokes}
    for one in middles:
        for two in middles:
            assert abs(one - two) < 1e-6 or abs(one - two) > 6


def white(grid: Grid, place: tuple[int, int], sides: Iterable[Side]) -> list[shapely.Polygon]:
    """Return what is blanked on the sheet at a place, as it lies on the plate."""
    left, bottom, *_ = grid.window(place)
    fills = [mark for mark in blanks(grid, sides).marks if isinstance(mark, Fill)]
    return [shapely.box(*fill.path.mapped(1, complex(left, bottom)).bounds) for fill in fills]


@pytest.mark.parametrize("landscape", [False, True])
@pytest.mark.parametrize(
    ("side", "beside"), [("left", (0, 1)), ("bottom", (1, 0)), ("top", (1, 2))]
)
def test_white_under_bars_and_words_hides_nothing_that_the_sheet_beside_does_not_show(
    landscape, side, beside
):
    """The middle one of nine sheets: what is blanked on a side is shown beside it, unblanked."""
    grid = Grid(A4, landscape, 3, 3)
    (hidden,) = white(grid, (1, 1), [side])
    window = shapely.box(*grid.window(beside))
    shown = window - shapely.union_all(white(grid, beside, ["left", "bottom", "top"]))
    assert shown.covers(hidden)


def test_no_white_where_no_sheet_is_joined():
    assert blanks(Grid(A4, landscape=False, columns=3, rows=3), []).marks == ()


@pytest.mark.parametrize(
    ("joining", "there", "new"),
    [(LAP, [], ["TRIM"]), (BUTT, ["TRIM"], ["TRIM"]), (FOLD, [], ["FOLD BACK"])],
)
def test_what_is_done_at_an_edge_goes_with_the_way_of_joining(joining, there, new):
    grid, join = Grid(replace(A4, joining=joining), False, 2, 1), Join(1, (0, 0), (1, 0))
    told = [[word.text for word in beside(join, grid, (i, 0), 0.4)] for i in (0, 1)]
    assert told == [["1", *there], ["1", *new]]


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("join", JOININGS)
def test_usual_overlap_has_room_for_bars_and_words(join, unit):
    stock = stock_of(unit, join=join)
    assert blanks(Grid(stock, landscape=False, columns=2, rows=1), ["left"]).marks
    assert (join == "lap") == (stock.overlap == stock_of(unit).overlap)
