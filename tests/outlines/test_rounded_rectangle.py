"""The rectangular seat: length 2 (W + D) - (8 - 2 pi) r, area W D - (4 - pi) r^2."""

import math

import pytest

from patternmaker.errors import Refusals
from patternmaker.outlines.rounded_rectangle import RoundedRectangle


@pytest.mark.parametrize("corner", [0, 1e-12, 50, 190])
def test_length_and_area(corner):
    contour = RoundedRectangle(width=400, depth=380, corner=corner).contour()
    assert contour.length == pytest.approx(1560 - (8 - 2 * math.pi) * corner)
    assert contour.area == pytest.approx(400 * 380 - (4 - math.pi) * corner**2)


def test_corner_finer_than_a_hair_is_sharp():
    contour = RoundedRectangle(width=400, depth=300, corner=0.0009).contour()
    assert len(contour.segments) == 8


def test_fully_rounded_square_is_a_circle():
    contour = RoundedRectangle(width=400, depth=400, corner=200).contour()
    assert contour.length == pytest.approx(math.pi * 400)
    assert contour.corners == (0.0,) * len(contour.segments)


def test_sharp_corner_is_one_joint():
    contour = RoundedRectangle(width=400, depth=300, corner=0).contour()
    assert list(contour.joints) == [
        "back", "back left", "left", "front left", "front", "front right", "right", "back right",
    ]  # fmt: skip
    assert contour.point_at(contour.station("front right")) == 200 - 150j


def test_rounded_corner_is_three():
    contour = RoundedRectangle(width=400, depth=300, corner=40).contour()
    names = ("back left begins", "back left", "back left ends")
    diagonal = 40 * (1 - math.sqrt(0.5))
    assert [contour.point_at(contour.station(name)) for name in names] == pytest.approx(
        [-160 + 150j, complex(diagonal - 200, 150 - diagonal), -200 + 110j]
    )


def test_corner_larger_than_half_the_shorter_side_is_refused():
    with pytest.raises(Refusals, match=r"corner: 150\.5 mm is more than half the shorter side"):
        RoundedRectangle(width=400, depth=300, corner=150.5)
