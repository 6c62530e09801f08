"""Circles that touch two others and pass through a point."""

import cmath

import pytest

from patternmaker.geometry.tangency import Disc, touching


@pytest.mark.parametrize(
    ("one", "two", "through"),
    [
        (Disc(-105 + 90j, 75), Disc(-100j, 65), -115 + 0j),
        (Disc(0, 10), Disc(100, 30), 50 + 40j),
        (Disc(300 + 300j, 1), Disc(-10, 2), 5j),
        (Disc(0, 0), Disc(40, 0), 20 + 35j),  # points: the circle round a triangle
    ],
)
def test_circles_touch_both_from_outside_and_pass_through_the_point(one, two, through):
    found = list(touching(one, two, through))
    assert found
    for each in found:
        assert abs(each.middle - one.middle) == pytest.approx(each.radius + one.radius)
        assert abs(each.middle - two.middle) == pytest.approx(each.radius + two.radius)
        assert abs(each.middle - through) == pytest.approx(each.radius)


def test_unit_circle_fits_between_two_others():
    """Two of radius 1 about -2 and 2: the one about 0 touches both and passes through 1j."""
    (found,) = touching(Disc(-2, 1), Disc(2, 1), 1j)
    assert found.middle == pytest.approx(0)
    assert found.radius == pytest.approx(1)


def test_circle_round_a_right_triangle_has_half_its_longest_side():
    """Thales."""
    (found,) = touching(Disc(0, 0), Disc(60, 0), 80j)
    assert found.middle == pytest.approx(30 + 40j)
    assert found.radius == pytest.approx(50)


def test_small_circle_and_a_large_one_pass_through_a_point_below_the_common_tangent():
    """By Pythagoras: 50^2 + 0 = (20 + 30)^2, and 50^2 + 120^2 = (100 + 30)^2."""
    found = sorted(touching(Disc(-50, 30), Disc(50, 30), 20j), key=lambda each: each.radius)
    assert [each.middle for each in found] == pytest.approx([0, 120j])
    assert [each.radius for each in found] == pytest.approx([20, 100])


def test_nothing_passes_between_two_that_touch_at_the_point():
    assert list(touching(Disc(-1, 1), Disc(1, 1), 0)) == []


def test_order_of_the_two_does_not_matter():
    one, two = Disc(cmath.rect(80, 2), 20), Disc(cmath.rect(90, 4), 35)
    here, there = touching(one, two, 5), touching(two, one, 5)
    assert sorted(each.radius for each in here) == pytest.approx(
        sorted(each.radius for each in there)
    )
