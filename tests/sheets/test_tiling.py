"""Grids of sheets, and the order in which they are joined."""

import pytest

from patternmaker.sheets.tiling import Grid, Join, Plate, in_joining_order, sheets_along
from tests.sheets.prints import A4, board, disc


@pytest.mark.parametrize(
    ("length", "count"),
    [(1, 1), (190, 1), (190.000001, 1), (190.01, 2), (370, 2), (370.01, 3), (550, 3), (1270, 7)],
)
def test_each_sheet_but_the_first_adds_its_width_less_the_overlap(length, count):
    assert sheets_along(length, 190, 10) == count


def test_sheets_may_meet_without_an_overlap():
    assert [sheets_along(length, 190, 0) for length in (190, 380, 381)] == [1, 2, 3]


def test_grid_is_as_large_as_its_sheets_laid_together():
    grid = Grid.over(A4, 500, 500, landscape=False)
    assert (grid.columns, grid.rows, grid.count) == (3, 2, 6)
    assert grid.size == pytest.approx((3 * 190 - 2 * 10, 2 * 274 - 10))
    assert grid.window((2, 1)) == pytest.approx((360, 264, 550, 538))


def test_windows_of_neighbours_share_the_overlap_and_their_cells_its_middle():
    grid = Grid.over(A4, 500, 500, landscape=True)
    first, right, above = ((0, 0), (1, 0), (0, 1))
    assert grid.window(first)[2] - grid.window(right)[0] == 10
    assert grid.window(first)[3] - grid.window(above)[1] == 10
    assert grid.window(first)[2] - grid.cell(first)[2] == 5
    assert grid.window(first)[3] - grid.cell(first)[3] == 5
    assert grid.cell(first)[2] == grid.cell(right)[0]
    assert grid.cell(first)[3] == grid.cell(above)[1]


def test_cells_reach_the_edge_of_the_grid():
    grid = Grid.over(A4, 500, 500, landscape=False)
    corners = grid.cell((0, 0))[:2], grid.cell((grid.columns - 1, grid.rows - 1))[2:]
    assert corners == ((0, 0), grid.size)


def test_places_run_row_by_row_from_the_top():
    grid = Grid(A4, landscape=False, columns=2, rows=2)
    assert list(grid.places()) == [(0, 1), (1, 1), (0, 0), (1, 0)]


def test_box_reaches_only_the_cells_that_it_enters():
    grid = Grid(A4, landscape=False, columns=3, rows=3)
    middle = grid.cell((1, 1))
    assert grid.reached(middle) == {(1, 1)}
    left, bottom, right, top = middle
    assert grid.reached((left - 1, bottom, right, top)) == {(0, 1), (1, 1)}
    assert grid.reached((0, 0, *grid.size)) == set(grid.places())


def test_corner_sheets_that_a_disc_misses_are_not_needed():
    grid = Grid(A4, landscape=False, columns=12, rows=9)
    round_one = disc(min(grid.size)).placed(0, 0, turned=False)
    needed = set(grid.needed(round_one))
    assert (0, 0) not in needed
    assert (5, 5) in needed
    assert needed < set(grid.places())


def test_growing_adds_columns_and_rows():
    grown = Grid(A4, landscape=False, columns=2, rows=1).grown(1, 2)
    assert (grown.columns, grown.rows) == (3, 3)


def test_joining_order_keeps_sheets_together():
    places = [(0, 2), (2, 2), (0, 1), (1, 1), (2, 1)]
    assert in_joining_order(places) == ((0, 2), (0, 1), (1, 1), (2, 1), (2, 2))


def test_joining_order_begins_again_where_nothing_meets():
    assert in_joining_order([(0, 0), (5, 5), (1, 0)]) == ((0, 0), (1, 0), (5, 5))


def plate(*places: tuple[int, int]) -> Plate:
    return Plate(Grid(A4, landscape=False, columns=3, rows=3), (board(1, 1),), places, {})


def test_every_two_neighbours_are_joined_once_and_numbered_through():
    joins = plate((0, 1), (1, 1), (0, 0), (1, 0)).joins(5)
    assert [join.number for join in joins] == [5, 6, 7, 8]
    assert {frozenset((join.first, join.second)) for join in joins} == {
        frozenset(pair)
        for pair in (((0, 1), (1, 1)), ((0, 1), (0, 0)), ((1, 1), (1, 0)), ((0, 0), (1, 0)))
    }


def test_later_sheet_is_laid_to_the_earlier_one():
    order = [(0, 1), (1, 1), (0, 0), (1, 0)]
    for join in plate(*order).joins(1):
        assert order.index(join.first) < order.index(join.second)


def test_sheets_that_only_touch_at_a_corner_are_not_joined():
    assert plate((0, 0), (1, 1)).joins(1) == ()


@pytest.mark.parametrize(
    ("other", "side", "back"),
    [((0, 1), "left", "right"), ((2, 1), "right", "left"), ((1, 2), "top", "bottom"),
     ((1, 0), "bottom", "top")],
)  # fmt: skip
def test_a_join_lies_on_facing_sides_of_its_sheets(other, side, back):
    join = Join(1, (1, 1), other)
    assert join.side_of((1, 1)) == side
    assert join.side_of(other) == back
