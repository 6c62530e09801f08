"""The seat with straight sides and no name."""

import math

import pytest

from patternmaker.outlines.polygon import Polygon
from tests.outlines.asking import corners, place, refused, turns

SQUARE = ((0.0, 0.0), (300.0, 0.0), (300.0, 300.0), (0.0, 300.0))
KITE = ((150.0, 0.0), (400.0, 100.0), (150.0, 400.0), (0.0, 100.0))


def test_corners_are_numbered_as_their_rows_are():
    """Measured from the left and from behind: the first row is the back left corner."""
    seat = Polygon(corners=SQUARE)
    assert place(seat, "corner 1") == -150 + 150j
    assert place(seat, "corner 2") == 150 + 150j
    assert corners(seat) == ["corner 1", "corner 4", "corner 3", "corner 2"]


def test_corners_given_the_other_way_round_make_the_same_seat():
    there, back = Polygon(corners=KITE), Polygon(corners=KITE[::-1])
    assert there.contour().segments == back.contour().segments
    assert place(there, "corner 1") == place(back, "corner 4")


def test_corner_without_a_radius_is_sharp_and_one_with_a_radius_round():
    seat = Polygon(corners=((0.0, 0.0, 40.0), (300.0, 0.0, 0.0), (300.0, 300.0), (0.0, 300.0)))
    assert turns(seat) == pytest.approx([math.pi / 2] * 3)
    assert "corner 1 begins" in corners(seat)
    assert "corner 2 begins" not in corners(seat)


def test_measured_from_a_rule_farther_off_it_is_the_same_seat():
    far = tuple((x + 20, y + 35) for x, y in KITE)
    near, away = Polygon(corners=KITE).contour(), Polygon(corners=far).contour()
    assert away.area == pytest.approx(near.area)
    assert away.bounds == pytest.approx(near.bounds)


def test_partner_is_measured_from_the_same_rule():
    seat = Polygon(corners=tuple((x + 20, y) for x, y in KITE))
    assert seat.partner() == Polygon(
        corners=((270.0, 0.0), (20.0, 100.0), (270.0, 400.0), (420.0, 100.0))
    )
    assert seat.partner().partner() == seat


def test_inner_corner_is_rounded_outward():
    rows = ((0.0, 0.0), (400.0, 0.0), (400.0, 150.0), (150.0, 150.0, 50.0), (150.0, 400.0),
            (0.0, 400.0))  # fmt: skip
    seat = Polygon(corners=rows)
    assert seat.contour().area == pytest.approx(97_500 + (1 - math.pi / 4) * 50**2)


def test_nothing_but_its_corners_is_measured():
    assert Polygon(corners=SQUARE).dimensions() == ()


STAR = tuple(
    (200 + 200 * math.sin(0.8 * math.pi * i), 200 - 200 * math.cos(0.8 * math.pi * i))
    for i in range(5)
)


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        (SQUARE[:2], "corners, number of rows: 2 is less than 3; make it 3 or more"),
        ((SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3]), ("corners: the edge crosses itself 150 mm "
         "from the left, 150 mm from the back; give the corners in the order in which one meets "
         "them round the seat")),
        ((*SQUARE[:2], (300.0, 0.5), *SQUARE[2:]), ("corners, row 3: is the same place as row 2; "
         "leave one of them out")),
        ((*SQUARE, (0.5, 0.0)), ("corners, row 1: is the same place as row 5; leave one of them "
         "out")),
        (tuple((x, y * 0.1) for x, y in SQUARE), ("corners: the seat is 30 mm at its narrowest, "
         "less than 50 mm; check the unit")),
        (((0.0, 0.0), (300.0, 300.0), (150.0, 151.0)), ("corners: there is no room between the "
         "sides; check the measurements")),
        (((0.0, 0.0), (300.0, 0.0, -1.0), (300.0, 300.0)), ("corners, row 2, radius: -1 mm is less "
         "than 0 mm; make it 0 mm or more")),
        (((0.0, 0.0), (6000.0, 0.0), (300.0, 300.0)), ("corners, row 2, from the left: 6000 mm is "
         "more than 5000 mm; make it 5000 mm or less; check the unit")),
        (((0.0, 0.0, 200.0), (300.0, 0.0, 120.0), *SQUARE[2:]), ("corners, row 1, radius: 200 mm "
         "is more than the corner has room for (180 mm); make the radius smaller, or its sides "
         "longer")),
        (((0.0, 0.0, math.nan), *SQUARE[1:]), ("corners, row 1, radius: nan is not a measurement; "
         "measure again")),
    ],
)  # fmt: skip
def test_what_makes_no_seat_is_refused_with_its_place(rows, told):
    assert refused(Polygon, corners=rows) == told


def test_star_drawn_at_one_stroke_crosses_itself():
    """It turns left at every corner, as a pentagon does, but twice round."""
    assert refused(Polygon, corners=STAR).startswith("corners: the edge crosses itself")


def test_corner_rounded_across_the_other_side_is_refused():
    """An arc that fits between its own sides cuts through a tip that stands in its way."""
    rows = ((0.0, 0.0, 280.0), (600.0, 0.0), (600.0, 600.0), (590.0, 600.0), (70.0, 75.0),
            (0.0, 600.0))  # fmt: skip
    assert refused(Polygon, corners=rows).startswith("corners: the rounded edge crosses itself")
