"""The drum-throne or stool saddle: two lobes behind, a waist, a nose."""

import math
from typing import Any

import pytest

from patternmaker.geometry.segments import Arc, Line
from patternmaker.outlines.saddle import Saddle
from tests.outlines.asking import bound, corners, place, refused, taken, touches, turns

SIZES: dict[str, Any] = {
    "width": 360,
    "depth": 330,
    "lobe": 75,
    "nose": 130,
    "waist": 230,
    "dip": 12,
}


def arcs(seat: Saddle) -> list[Arc]:
    return [each for each in seat.contour().segments if isinstance(each, Arc)]


def test_arcs_meet_without_a_bend_at_named_places():
    assert corners(Saddle()) == [
        "left lobe", "left hollow begins", "left hollow ends", "right hollow begins",
        "right hollow ends", "right lobe",
    ]  # fmt: skip
    assert turns(Saddle()) == []


@pytest.mark.parametrize("waist", [150, 190, 230, 265])
def test_sides_pass_through_the_measured_waist(waist):
    """Halfway between back edge and nose; the dip brings the middle of the box forward."""
    seat = Saddle(**{**SIZES, "waist": waist, "dip": 0})
    assert touches(seat, complex(-waist / 2))
    assert touches(seat, complex(waist / 2))
    assert seat.contour().width == pytest.approx(360)
    assert seat.contour().height == pytest.approx(330)


def test_lobes_nose_and_hollows_are_as_round_as_they_were_measured():
    found = arcs(Saddle(**SIZES))
    radii = [each.radius for each in found if each.sweep > 0]
    assert set(map(round, radii)) == {75, 65}
    hollow = [each for each in found if each.sweep < 0 and each.centre.imag < 100]
    assert len(hollow) == 4  # both cut at the side
    assert hollow[0].centre == pytest.approx(-hollow[-1].centre.conjugate())


def test_back_is_straight_without_a_dip():
    seat = Saddle(**{**SIZES, "dip": 0})
    (one, other) = [each for each in seat.contour().segments if isinstance(each, Line)]
    assert one.length + other.length == pytest.approx(360 - 2 * 75)
    assert turns(seat) == []


def test_dip_lies_as_far_before_the_lobes_as_it_was_measured():
    seat = Saddle(**SIZES)
    assert seat.contour().bounds[3] - place(seat, "back").imag == pytest.approx(12)
    assert turns(seat) == []


def test_dip_too_slight_to_strike_is_none():
    slight, none = Saddle(**{**SIZES, "dip": 0.9}), Saddle(**{**SIZES, "dip": 0})
    assert slight.contour() == none.contour()


def test_dip_as_deep_as_half_a_lobe_turns_the_edge_no_sharper_than_a_lobe():
    seat = Saddle(**{**SIZES, "dip": 37.5})
    assert turns(seat) == []
    assert min(each.radius for each in arcs(seat)) == pytest.approx(65)


def test_it_is_its_own_mirror_image():
    assert Saddle().partner() == Saddle()


def test_measurements_are_shown_at_their_length():
    assert taken(Saddle(**SIZES)) == pytest.approx(SIZES)


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"lobe": 90}, ("lobe: 90 mm is more than a quarter of the width or of the depth (82.5 "
         "mm); make the lobes smaller")),
        ({"nose": 170}, ("nose: 170 mm is more than six tenths of the width or half the depth "
         "(165 mm); make the nose smaller, or take another shape")),
        ({"waist": 300}, ("waist: 300 mm is more than where a rule laid from lobe to nose crosses "
         "the middle (274.457 mm); measure the waist again: a saddle is hollow there")),
        ({"waist": 100}, ("waist: 100 mm is less than what a hollow between lobe and nose can be "
         "(105.727 mm); measure the waist again, or make lobes and nose smaller")),
        ({"dip": 40}, "dip: 40 mm is more than half a lobe (37.5 mm); make the dip smaller"),
    ],
)  # fmt: skip
def test_what_makes_no_saddle_is_refused(values, told):
    assert refused(Saddle, **{**SIZES, **values}) == told


def test_rule_from_lobe_to_nose_crosses_the_middle_where_the_refusal_says():
    """A common tangent of both circles: each lies its radius from the line, by the normal form."""
    lobe, nose, waist = complex(-105, 90), complex(0, -100), (274.457 + 1) / 2
    along = math.atan2((nose - lobe).imag, (nose - lobe).real)
    normal = along - math.acos((75 - 65) / abs(nose - lobe))
    out = complex(math.cos(normal), math.sin(normal))
    reach = ((lobe.conjugate() * out).real + 75, (nose.conjugate() * out).real + 65)
    assert reach[0] == pytest.approx(reach[1])
    assert reach[0] / out.real == pytest.approx(-waist, abs=0.001)


@pytest.mark.parametrize("lobe", [25, 50, 80])
@pytest.mark.parametrize("nose", [40, 100, 165])
def test_narrowest_and_widest_waist_that_are_named_can_be_struck(lobe, nose):
    sizes = {**SIZES, "lobe": lobe, "nose": nose}
    for upper in (True, False):
        waist = bound(Saddle, "waist", upper=upper, **sizes)
        seat = Saddle(**{**sizes, "waist": waist, "dip": 0})
        assert turns(seat) == []
        assert touches(seat, complex(-waist / 2))


def test_lobes_far_too_large_are_refused_before_the_waist_is_reckoned():
    assert refused(Saddle, width=150, depth=150, lobe=1200, nose=40, waist=100, dip=0) == (
        "lobe: 1200 mm is more than a quarter of the width or of the depth (37.5 mm); "
        "make the lobes smaller"
    )
