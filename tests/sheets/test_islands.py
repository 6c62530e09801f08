"""Sheets that hang together by their sides, and those that do not."""

import cmath
import math

import pytest
import shapely

from patternmaker.drawing.prints import Print
from patternmaker.drawing.surface import Drawing
from patternmaker.geometry.contour import Contour, Path
from patternmaker.sheets.arranging import arranged
from patternmaker.sheets.islands import hanging_together, islands
from patternmaker.sheets.map import numbered
from patternmaker.sheets.papers import Margins, Paper, Stock
from patternmaker.sheets.tiling import Grid, Plate
from tests.contours import ring
from tests.sheets.prints import A4, board

GRID = Grid(A4, landscape=False, columns=4, rows=3)


def slat(length: float, breadth: float, degrees: float) -> Print:
    """Return the print of a slat that lies at an angle."""
    way = cmath.rect(1, math.radians(degrees))
    corners = [0, length * way, length * way + 1j * breadth * way, 1j * breadth * way, 0]
    return Print("slat", "Seat", Drawing(()), Contour(Path.through(*corners).segments))


def test_places_that_touch_at_a_corner_are_two_islands():
    assert islands([(0, 0), (1, 1), (1, 0)]) == [{(0, 0), (1, 0), (1, 1)}]
    assert islands([(0, 0), (1, 1)]) == [{(0, 0)}, {(1, 1)}]


def test_plate_that_hangs_together_stays_as_it_is():
    plate = Plate(
        GRID, (board(100, 100).placed(20, 20, turned=False),), ((0, 0),), {(0, 0): ("b",)}
    )
    assert list(hanging_together(plate)) == [plate]


def test_prints_that_share_no_sheet_come_to_plates_of_their_own():
    prints = [
        board(100, 100, name).placed(x, y, turned=False)
        for name, x, y in (("one", 20, 20), ("two", 580, 560))
    ]
    shows = {(0, 0): (prints[0].title,), (3, 2): (prints[1].title,)}
    one, two = hanging_together(Plate(GRID, tuple(prints), ((0, 0), (3, 2)), shows))
    assert (one.grid.count, two.grid.count) == (1, 1)
    assert (one.sheets, two.sheets) == (((0, 0),), ((0, 0),))
    assert (one.prints, two.prints[0].piece) == ((prints[0],), "two")
    assert two.prints[0].shape.bounds == pytest.approx((40, 32, 140, 132))


def test_sheet_is_added_where_a_print_would_fall_into_two():
    """Nothing is on a corner's sheet alone that the two beside it do not show as well."""
    corner = complex(*GRID.cell((0, 0))[2:])
    long = slat(200, 2, 45)
    each = long.moved(corner - 100 * cmath.rect(1, math.pi / 4))
    shows = {(0, 0): (each.title,), (1, 1): (each.title,)}
    (plate,) = hanging_together(Plate(GRID, (each,), ((0, 0), (1, 1)), shows))
    assert len(plate.sheets) == 3
    assert len(plate.joins(1)) == 2
    assert set(plate.sheets) - {(0, 0), (1, 1)} <= {(1, 0), (0, 1)}


@pytest.mark.parametrize("degrees", range(5, 90, 5))
@pytest.mark.parametrize("lap", [0.0, 4.0, 10.0, 30.0])
def test_slanting_slats_are_joined_without_a_gap(degrees, lap):
    stock = Stock(Paper("p", 200, 240), Margins(5, 5, 5, 5), lap)
    for length in (400, 700):
        (plate,) = numbered(arranged([slat(length, 6, degrees)], stock, 1000).plates)
        assert {join.second for join in plate.joins} == set(plate.plate.sheets[1:])
        windows = [shapely.box(*plate.plate.grid.window(place)) for place in plate.plate.sheets]
        shown = shapely.union_all(windows).buffer(1e-4)
        assert shown.covers(ring(plate.plate.prints[0].shape, 0.01))
