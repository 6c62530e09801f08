"""Where shapes are too near to each other, beside the distances that shapely measures."""

import math
from itertools import product

import numpy as np
import pytest

from patternmaker.laying.nofit import stamp
from patternmaker.laying.rings import is_convex, simpler
from tests.laying.rings import SHAPES, board, polygon_of

APART, STEPS = 4.0, (5.0, 7.0)


def barred(one: str, two: str, row: int, column: int) -> bool:
    made = stamp(SHAPES[one], SHAPES[two], APART, STEPS)
    place = row - made.corner[0], column - made.corner[1]
    inside = all(0 <= at < size for at, size in zip(place, made.barred.shape, strict=True))
    return inside and bool(made.barred[place])


@pytest.mark.parametrize(("one", "two"), list(product(SHAPES, SHAPES)))
def test_no_place_that_is_left_open_is_too_near(one, two):
    """And where both are convex none is barred that is not; the circle has 16 sides: 2 %."""
    made = stamp(SHAPES[one], SHAPES[two], APART, STEPS)
    exact = is_convex(SHAPES[one]) and is_convex(SHAPES[two])
    first = polygon_of(SHAPES[one])
    rows, columns = made.barred.shape
    for row, column in product(range(-1, rows + 1, 3), range(-1, columns + 1, 3)):
        up, across = row + made.corner[0], column + made.corner[1]
        at = complex(across * STEPS[0], up * STEPS[1])
        distance = first.distance(polygon_of(SHAPES[two], at))
        if not barred(one, two, up, across):
            assert distance >= APART - 1e-6
        elif exact:
            assert distance <= APART / math.cos(math.pi / 16) + 1e-6
        else:
            assert distance <= APART + 3 * math.hypot(*STEPS)


def test_a_stamp_reversed_is_that_of_the_other_way_round():
    made = stamp(SHAPES["slant"], SHAPES["disc"], APART, STEPS).reversed
    other = stamp(SHAPES["disc"], SHAPES["slant"], APART, STEPS)
    assert made.corner == other.corner
    assert np.array_equal(made.barred, other.barred)


def test_boards_may_lie_side_by_side():
    made = stamp(board(96, 46), board(96, 46), APART, (4.0, 4.0))
    assert made.corner == (-12, -24)
    assert made.barred.shape == (25, 49)


def test_a_small_shape_fits_into_the_bay_of_a_large_one():
    large, small = SHAPES["horseshoe"], board(20, 20)
    made = stamp(large, small, APART, (4.0, 4.0))
    row, column = round(190 / 4) - made.corner[0], round(100 / 4) - made.corner[1]
    assert not made.barred[row, column]
    assert made.barred[row - 15, column]
    assert made.barred[row, column + 50]


def test_a_shape_that_is_nearly_convex_is_laid_as_its_hull():
    disc = SHAPES["disc"].copy()
    disc[5] *= 0.999
    assert is_convex(simpler(disc))
    assert simpler(SHAPES["l"]) is SHAPES["l"]
