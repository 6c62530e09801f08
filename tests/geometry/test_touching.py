"""Whether a contour reaches into a box, seen beside shapely's answer where it is close."""

import math

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from patternmaker.geometry.contour import Contour
from patternmaker.geometry.segments import Arc
from patternmaker.geometry.touching import encloses, touches
from tests.contours import horseshoe, l_shape, ring

DISC = Contour((Arc(0, 50, math.tau),))


@pytest.mark.parametrize(
    ("box", "answer"),
    [
        ((-60, -60, 60, 60), True),  # the contour lies inside
        ((-5, -5, 5, 5), True),  # the box lies inside
        ((40, -5, 60, 5), True),  # one side of the box is crossed
        ((-60, -5, 60, 5), True),  # passes right through
        ((-5, 49, 5, 60), True),  # an arc bulges in, both its ends outside
        ((36, 36, 60, 60), False),  # boxes overlap, the arc passes by
        ((50, -5, 60, 5), False),  # touched from outside
        ((60, -5, 70, 5), False),
        ((-5, 60, 5, 70), False),
    ],
)
def test_disc_of_radius_50(box, answer):
    assert touches(DISC, box) is answer


@pytest.mark.parametrize(
    ("box", "answer"),
    [
        ((151, 151, 299, 299), False),  # in the corner that is cut away
        ((150, 150, 300, 300), False),  # it fits that corner exactly
        ((149, 151, 299, 299), True),
        ((0, 0, 150, 150), True),
        ((100, 100, 110, 110), True),
    ],
)
def test_l_shape(box, answer):
    assert touches(l_shape(), box) is answer


def test_bay_of_a_horseshoe_is_not_enclosed():
    assert not encloses(horseshoe(), 100j)
    assert encloses(horseshoe(), 100 + 100j)


@given(
    st.sampled_from([DISC, l_shape(), horseshoe()]),
    st.integers(-300, 400),
    st.integers(-300, 400),
    st.integers(1, 200),
    st.integers(1, 200),
)
def test_any_box_is_touched_as_shapely_says(contour, left, bottom, width, height):
    box = (left, bottom, left + width, bottom + height)
    common = ring(contour).intersection(shapely.box(*box)).area
    assume(common == 0 or common > 1)
    assert touches(contour, box) is (common > 0)
