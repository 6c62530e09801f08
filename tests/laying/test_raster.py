"""Squares of a mesh, beside those that shapely finds one by one."""

import numpy as np
import pytest
import shapely

from patternmaker.laying.raster import Raster, counted, shifts_nearer, shifts_within, spread, tally
from tests.laying.rings import SHAPES, board, polygon_of


def squares(raster: Raster) -> np.ndarray:
    rows, columns = np.mgrid[0 : raster.size[0], 0 : raster.size[1]] * raster.step
    boxes: np.ndarray = shapely.box(columns, rows, columns + raster.step, rows + raster.step)
    return boxes


@pytest.mark.parametrize("name", SHAPES)
@pytest.mark.parametrize("step", [3.0, 7.1])
@pytest.mark.parametrize("lean", [1, np.exp(0.3j)])
def test_squares_are_those_that_shapely_finds(name, step, lean):
    ring = SHAPES[name] * lean
    raster = Raster(ring - complex(ring.real.min(), ring.imag.min()), step)
    shape, boxes = polygon_of(raster.ring), squares(raster)
    shared = shapely.area(shapely.intersection(shape, boxes))
    assert not (raster.inside & (shared < step * step - 1e-6)).any()
    assert not (~raster.reached & (shared > 1e-6)).any()
    assert (raster.reached & (shared < 1e-9)).mean() < 0.01
    assert (~raster.inside & (shared > step * step - 1e-9)).mean() < 0.01


def test_squares_of_a_board_fill_it():
    raster = Raster(board(12, 5), 1.0)
    assert raster.inside.sum() == raster.reached.sum() == 60


def test_squares_are_counted_between_columns_and_rows():
    found = np.zeros((4, 6), dtype=bool)
    found[1, 2] = found[3, 5] = True
    sums = tally(found)
    columns = np.array([0, 2, 3]), np.array([6, 3, 99])
    rows = np.array([-5, 1]), np.array([4, 2])
    assert counted(sums, columns, rows).tolist() == [[2, 1, 1], [1, 1, 0]]


def test_squares_spread_by_the_shifts():
    one = np.ones((1, 1), dtype=bool)
    assert spread(one, shifts_within(1.0)).sum() == 5
    assert spread(one, shifts_within(1.5)).sum() == 9
    assert spread(one, shifts_nearer(1.0, (1.0, 1.0))).sum() == 9
    assert spread(one, shifts_nearer(1.2, (1.0, 1.0))).sum() == 21
