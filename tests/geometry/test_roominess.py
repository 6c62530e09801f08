"""Where inside a seat there is room for its label."""

import pytest

from patternmaker.geometry.roominess import roomiest
from patternmaker.geometry.touching import encloses
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.l_shape import LShape
from patternmaker.outlines.wedge import Wedge
from tests.contours import distance, horseshoe

L = LShape(width=600, depth=560, back_depth=280, leg_width=300)


def test_round_seat_has_its_middle():
    assert roomiest(Circle(diameter=300).contour()) == pytest.approx(0, abs=1e-9)


def test_l_has_it_where_its_arm_and_its_leg_meet():
    """The largest circle in that corner touches the two outer sides and the inner corner."""
    contour = L.contour()
    place = roomiest(contour)
    assert (place.real < 0, place.imag > 0) == (True, True)
    assert distance(contour, place) > 0.9 * 170


def test_place_lies_inside_though_the_middle_of_the_box_does_not():
    bow = Wedge(outer_radius=900, inner_radius=700, angle=170).contour()
    bay = horseshoe()
    for contour in (bow, bay):
        assert encloses(contour, roomiest(contour))
    assert not encloses(bow, bow.middle)
