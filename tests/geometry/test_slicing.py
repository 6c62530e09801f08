"""A contour cut by upright lines: nothing is lost, and what runs along a line has one side."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternmaker.geometry.segments import Arc
from patternmaker.geometry.slicing import Chain, Link, sliced
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.polygon import Polygon
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from tests.covers.seats import with_bay
from tests.laws.strategies import contours

SQUARE = RoundedRectangle(width=300, depth=200, corner=0).contour()
ELL = Polygon(corners=((0, 0), (150, 0), (150, 100), (300, 100), (300, 200), (0, 200))).contour()


def test_rectangle_is_cut_into_rectangles():
    slices = sliced(SQUARE, [-50, 50])
    assert [each.number for each in slices] == [0, 1, 2]
    assert [each.contour.area for each in slices] == pytest.approx([20000] * 3)
    assert [len(each.links) for each in slices] == [1, 2, 1]


def test_circle_is_cut_into_segments_by_their_formula():
    """A segment of height h: r^2 acos((r - h) / r) - (r - h) sqrt(2 r h - h^2)."""
    outer, _, _ = sliced(Circle(diameter=300).contour(), [-50, 50])
    area = 150**2 * math.acos(50 / 150) - 50 * math.sqrt(150**2 - 50**2)
    assert outer.contour.area == pytest.approx(area)


def test_chains_lie_on_the_contour_where_they_say():
    contour = Circle(diameter=300).contour()
    for each in sliced(contour, [-70.0, 0.0, 20.0]):
        for side in each.sides:
            if isinstance(side, Chain):
                assert abs(side.path.segments[0].start - contour.point_at(side.begin)) < 1e-9


def test_line_along_an_edge_leaves_it_to_the_slice_that_it_bounds():
    """The inner upright edge of an L lies on the line between its two halves."""
    left, right = sliced(ELL, [0.0])
    assert (left.contour.area, right.contour.area) == pytest.approx((30000, 15000))
    assert [link.path.length for link in (*left.links, *right.links)] == pytest.approx([100, 100])


def test_bay_parts_a_slice_in_two_seen_from_the_back():
    bay = with_bay()
    turned = bay.mapped(1j)
    slices = sliced(turned, [80.0, 120.0])
    assert [each.number for each in slices] == [0, 1, 1, 2, 2]
    assert sum(each.contour.area for each in slices) == pytest.approx(bay.area)


def test_contour_that_no_line_meets_is_one_slice():
    (whole,) = sliced(SQUARE, [400.0])
    assert whole.links == ()
    assert whole.contour.area == pytest.approx(SQUARE.area)


def test_link_bulges_into_an_arc_of_its_rise_and_a_slight_one_stays_straight():
    """Radius (c^2 + 4 h^2) / 8 h: chord 21, rise 6 gives 12.1875 and 25.3084 along the arc."""
    (square, _) = sliced(RoundedRectangle(width=60, depth=50, corner=0).contour(), [0.0])
    link = Link(0, square.links[0].path.mapped(21 / 50))
    (arc,) = link.bulged(6.0).segments
    assert isinstance(arc, Arc)
    assert (arc.radius, arc.length) == pytest.approx((12.1875, 25.3083731))
    assert arc.bounds[2] == pytest.approx(6.0)
    assert link.bulged(0.0005) is link.path


@settings(max_examples=40)
@given(contours(), st.integers(2, 9))
def test_slices_have_the_area_of_the_whole_and_share_every_link(contour, count):
    left, _, right, _ = contour.bounds
    lines = [left + (right - left) * i / count for i in range(1, count)]
    slices = sliced(contour, lines)
    assert math.fsum(s.contour.area for s in slices) == pytest.approx(contour.area, rel=1e-6)
    for number in range(count - 1):
        links = [(s.number, link.path.length) for s in slices for link in s.links
                 if link.line == number]  # fmt: skip
        ones = sorted(length for side, length in links if side == number)
        twos = sorted(length for side, length in links if side == number + 1)
        assert ones == pytest.approx(twos, abs=1e-6)
