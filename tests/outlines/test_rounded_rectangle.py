"""The rectangular seat: length 2 (W + D) - (8 - 2 pi) r, area W D - (4 - pi) r^2."""

import math

import pytest

from patternmaker.errors import Refusals
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from tests.outlines.asking import corners, place, refused, taken


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


def test_corner_may_have_a_radius_of_its_own():
    seat = RoundedRectangle(width=400, depth=300, corner=40, back_left=0, front_right=100)
    assert "back left begins" not in corners(seat)
    assert place(seat, "front right begins") == pytest.approx(100 - 150j)
    assert place(seat, "back right ends") == pytest.approx(160 + 150j)
    assert seat.contour().area == pytest.approx(
        400 * 300 - (1 - math.pi / 4) * (40**2 + 40**2 + 100**2)
    )


def test_partner_has_its_left_and_right_corners_exchanged():
    seat = RoundedRectangle(width=400, depth=300, corner=40, back_left=0, front_right=100)
    other = RoundedRectangle(width=400, depth=300, corner=40, back_right=0, front_left=100)
    assert seat.partner() == other
    assert RoundedRectangle().partner() == RoundedRectangle()


def test_each_radius_is_shown_in_a_corner_that_has_it():
    seat = RoundedRectangle(width=400, depth=300, corner=40, back_left=10, front_right=100)
    assert taken(seat) == pytest.approx(
        {"width": 400, "depth": 300, "corner": 40, "back_left": 10, "front_right": 100}
    )
    own = RoundedRectangle(width=400, depth=300, corner=40, back_left=10, back_right=20,
                           front_left=30, front_right=0)  # fmt: skip
    assert "corner" not in taken(own)


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"corner": 50, "back_left": 251}, ("back_left: 251 mm is more than the shorter side less "
         "the radius of the other corners (250 mm); make it smaller, or the other corners, or the "
         "seat larger")),
        ({"corner": 0, "back_left": 150, "front_left": 170}, ("front_left: 170 mm is more than the "
         "back left corner leaves of that side (150 mm); make one of them smaller")),
        ({"corner": 0, "front_left": 150, "front_right": 300}, ("front_right: 300 mm is more than "
         "the front left corner leaves of that side (250 mm); make one of them smaller")),
    ],
)  # fmt: skip
def test_corners_that_leave_each_other_no_room_are_refused(values, told):
    assert refused(RoundedRectangle, **{"width": 400, "depth": 300, **values}) == told
