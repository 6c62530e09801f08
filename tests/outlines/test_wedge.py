"""The wedge that fills the corner of a bench."""

import math

import pytest

from patternmaker.geometry.segments import Arc
from patternmaker.outlines.wedge import Wedge
from tests.outlines.asking import bound, corners, place, refused, taken, turns

NAMES = ["back left", "front left", "front right", "back right"]


def test_sharp_corners_stand_where_the_sides_meet_the_arcs():
    """A quarter of a ring of 500 and 900: its box reaches from 500 cos 45 to 900 forward."""
    seat = Wedge(outer_radius=900, inner_radius=500, angle=90, corner=0)
    half, middle = math.sqrt(0.5), (500 * math.sqrt(0.5) + 900) / 2
    assert corners(seat) == NAMES
    assert place(seat, "back left") == pytest.approx(complex(-900 * half, 900 * half - middle))
    assert place(seat, "front right") == pytest.approx(complex(500 * half, 500 * half - middle))
    assert turns(seat) == pytest.approx([math.pi / 2] * 4)


def test_rounded_corners_are_three_joints_each_and_bend_nowhere():
    assert corners(Wedge()) == [
        f"{name}{part}" for name in NAMES for part in (" begins", "", " ends")
    ]
    assert turns(Wedge()) == []


def test_inner_edge_is_hollow():
    assert not Wedge().contour().is_convex


def test_wedge_of_a_half_turn_has_its_sides_in_one_line():
    seat = Wedge(outer_radius=900, inner_radius=500, angle=180, corner=0)
    assert place(seat, "front left").imag == pytest.approx(place(seat, "back right").imag)
    assert seat.contour().width == pytest.approx(1800)


def test_measurements_are_shown_at_their_length():
    seat = Wedge(outer_radius=900, inner_radius=500, angle=60, corner=30)
    shown = {"outer_radius": 900, "inner_radius": 500, "corner": 30}
    assert taken(seat) == pytest.approx(shown)


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"outer_radius": 500, "inner_radius": 460, "corner": 0}, ("inner_radius: 460 mm is more "
         "than the outer radius less 50 mm (450 mm); make it smaller, or the outer one larger")),
        ({"angle": 181}, "angle: 181° is more than 180°; make it 180° or less"),
        ({"angle": 9.5}, "angle: 9.5° is less than 10°; make it 10° or more"),
        ({"outer_radius": 900, "inner_radius": 500, "corner": 201}, ("corner: 201 mm is more than "
         "what its sides and arcs have room for (199.999 mm); make the corner smaller")),
    ],
)  # fmt: skip
def test_what_makes_no_wedge_is_refused(values, told):
    assert refused(Wedge, **values) == told


@pytest.mark.parametrize(
    ("outer", "inner", "angle"),
    [(900, 500, 10), (2000, 60, 10), (900, 500, 180), (300, 200, 120)],
)
def test_largest_corner_named_fits_and_nearly_uses_up_a_side_or_an_arc(outer, inner, angle):
    sizes = {"outer_radius": outer, "inner_radius": inner, "angle": angle}
    limit = bound(Wedge, "corner", **sizes)
    seat = Wedge(corner=limit, **sizes)
    left_over = [each.length for each in seat.contour().segments
                 if not isinstance(each, Arc) or abs(each.radius - limit) > 1]  # fmt: skip
    assert turns(seat) == []
    assert min(left_over) < 0.01
