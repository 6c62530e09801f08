"""The oval seat: an ellipse."""

import math

import pytest

from patternmaker.outlines.circle import Circle
from patternmaker.outlines.oval import Oval
from tests.outlines.asking import corners, place, refused, taken, touches, turns

SEAT = Oval(width=400, depth=330)


def test_sides_stand_at_the_ends_of_the_axes():
    sides = [place(SEAT, name) for name in ("back", "left", "front", "right")]
    assert sides == pytest.approx([165j, -200, -165j, 200])
    assert corners(SEAT) == []


def test_oval_has_no_corner():
    assert turns(SEAT) == []


def test_oval_passes_through_the_points_of_an_ellipse():
    """By the gardener's string: from both foci together 400 mm, here at three fifths of the way."""
    reach = math.sqrt(200**2 - 165**2)
    point = complex(0.6 * 200, 0.8 * 165)
    assert abs(point - reach) + abs(point + reach) == pytest.approx(400)
    nearest = SEAT.contour().nearest(point)
    assert SEAT.contour().segments[nearest].distance(point) < 0.0003


def test_oval_as_deep_as_it_is_wide_is_a_circle():
    assert Oval(width=330, depth=330).contour().area == pytest.approx(
        Circle(diameter=330).contour().area, rel=1e-9
    )


def test_oval_turned_by_a_quarter_has_the_same_length():
    deep = Oval(width=330, depth=400)
    assert deep.contour().length == pytest.approx(SEAT.contour().length, rel=1e-9)
    assert touches(deep, 200j)


def test_measurements_are_shown_at_their_length():
    assert taken(SEAT) == pytest.approx({"width": 400, "depth": 330})


@pytest.mark.parametrize("field", ["width", "depth"])
def test_too_small_a_seat_is_refused(field):
    assert (
        refused(Oval, **{field: 49}) == f"{field}: 49 mm is less than 50 mm; make it 50 mm or more"
    )
