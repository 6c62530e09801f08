"""The sheets that a shape takes at each place, beside those that shapely finds."""

import numpy as np
import pytest
import shapely

from patternmaker.laying.footing import Footing, Lattice
from patternmaker.laying.sheeting import Sheeting
from tests.laying.rings import SHAPES, polygon_of

SHEETING = Sheeting(100.0, 140.0, 8.0)
LATTICE = Lattice.over(SHEETING, 10.0, 0.5)


def test_a_whole_number_of_steps_goes_to_a_sheet():
    assert (LATTICE.columns, LATTICE.rows) == (10, 14)
    assert LATTICE.steps == pytest.approx((9.2, 132 / 14))


@pytest.mark.parametrize("name", SHAPES)
def test_sheets_taken_are_those_that_alone_show_some_of_it(name):
    ring = SHAPES[name]
    footing = Footing.of(ring, LATTICE)
    for place in range(0, LATTICE.rows * LATTICE.columns, 7):
        up, across = divmod(place, LATTICE.columns)
        at = complex(across * LATTICE.steps[0] + 0.5, up * LATTICE.steps[1] + 0.5)
        shape = polygon_of(ring, at)
        for row, column in np.ndindex(footing.reach[1] + 1, footing.reach[0] + 1):
            left, low = column * 92.0, row * 132.0
            own = shapely.box(left + 8, low + 8, left + 92, low + 132)
            inside = row < footing.reach[1] and column < footing.reach[0]
            taken = inside and bool(footing.takes[row, column, place])
            if shape.intersection(own).area > 1e-6:
                assert taken
            elif taken:
                assert shape.distance(own) < 1.5  # a square of the mesh, and the stroke


@pytest.mark.parametrize("name", SHAPES)
def test_shares_of_the_sheets_add_up_to_the_shape(name):
    ring = SHAPES[name]
    whole = Footing.of(ring, LATTICE).area.sum(axis=(0, 1)) * SHEETING.area
    assert whole == pytest.approx(polygon_of(ring).area, rel=0.06)


def test_patterns_tell_the_same_sheets():
    footing = Footing.of(SHAPES["horseshoe"], LATTICE)
    flat = footing.takes.reshape(-1, footing.takes.shape[2]).T
    assert np.array_equal(footing.patterns[footing.pattern_at], flat)
    assert len(footing.patterns) < len(flat)
