"""The bound: what a shape takes at least, told by hand."""

import numpy as np
import pytest

from patternmaker.laying.least import Need, least, need
from patternmaker.laying.rings import area, turned
from patternmaker.laying.sheeting import Sheeting
from tests.laying.rings import SHAPES, board

A4 = Sheeting(190.0, 274.0, 10.0)


def of(ring: np.ndarray, sheeting: Sheeting = A4, apart: float = 0.0) -> Need:
    return need(ring, area(ring), [sheeting], apart)


@pytest.mark.parametrize(
    ("width", "height", "sheets"),
    [
        (100, 100, 1),
        (190, 274, 1),
        (274, 190, 1),  # turned
        (192, 274, 2),
        (370, 274, 2),  # 2 x 190 less the overlap
        (372, 274, 3),
        (370, 538, 4),
        (372, 538, 6),
        (10, 600, 3),
    ],
)
def test_sheets_of_a_board_are_those_of_its_grid(width, height, sheets):
    """A square of the mesh is 1 mm, so less than two of them further is not seen to be too much."""
    assert of(board(width, height)).sheets == sheets


def test_a_shape_on_one_sheet_needs_its_area():
    assert of(board(150, 200)).area == pytest.approx(30_000)


def test_what_is_shown_twice_is_needed_twice():
    """Two sheets across share 10 mm of a board, and one square less for the shift within one."""
    assert of(board(370, 274)).area == pytest.approx(370 * 274 + 10 * 272, rel=0.01)
    assert of(board(370, 274)).area <= 370 * 274 + 10 * 274


@pytest.mark.parametrize("name", SHAPES)
@pytest.mark.parametrize("size", [1, 3, 5])
def test_need_is_the_same_however_the_shape_is_turned(name, size):
    needs = [of(turned(SHAPES[name] * size, turns)) for turns in range(4)]
    assert len({each.sheets for each in needs}) == 1
    assert [each.area for each in needs] == pytest.approx([needs[0].area] * 4, rel=0.003)


def test_shapes_that_keep_a_distance_need_some_of_it():
    near, far = of(board(150, 200)), of(board(150, 200), apart=8.0)
    assert near.area < far.area <= 158 * 208


@pytest.mark.parametrize(
    ("needs", "count"),
    [
        ([Need(1, 100.0)], 1),
        ([Need(1, A4.area)] * 3, 3),
        ([Need(1, A4.area), Need(1, 1.0)], 2),
        ([Need(6, A4.area)], 6),
    ],
)
def test_least_is_by_area_and_by_the_largest(needs, count):
    assert least(needs, A4.area) == count
