"""The long saddle: a narrow nose, and a rear that flares."""

import math
from typing import Any

import pytest

from patternmaker.geometry.segments import Arc, Line
from patternmaker.outlines.long_saddle import LongSaddle
from tests.outlines.asking import bound, corners, place, refused, taken, turns

SIZES: dict[str, Any] = {"width": 260, "depth": 600, "nose": 130, "rear_corner": 50, "flare": 200}
SEAT = LongSaddle(**SIZES)


def test_arcs_meet_without_a_bend_at_named_places():
    assert corners(SEAT) == [
        "back left begins", "back left ends", "nose left", "nose right", "back right begins",
        "back right ends",
    ]  # fmt: skip
    assert turns(SEAT) == []


def test_sides_run_back_from_the_nose_level_with_each_other():
    contour = SEAT.contour()
    lines = [each for each in contour.segments if isinstance(each, Line)]
    upright = [each for each in lines if abs(each.tangent().real) < 1e-9]
    assert {round(each.start.real, 9) for each in upright} == {-65, 65}
    assert place(SEAT, "nose left") == pytest.approx(-65 - 235j)


def test_hollow_touches_side_and_rear_corner():
    """Its middle lies f beyond the side, and f + r from the corner's."""
    hollow = next(each for each in SEAT.contour().segments
                  if isinstance(each, Arc) and each.sweep < 0)  # fmt: skip
    assert hollow.radius == pytest.approx(200)
    assert hollow.centre.real == pytest.approx(-265)
    assert abs(hollow.centre - (-80 + 250j)) == pytest.approx(250)


def test_rear_may_be_one_round():
    """Corners of half the width each leave no straight between them."""
    seat = LongSaddle(width=160, depth=600, nose=130, rear_corner=47.5, flare=50)
    assert turns(seat) == []
    assert seat.contour().width == pytest.approx(160)


def test_it_is_its_own_mirror_image():
    assert SEAT.partner() == SEAT


def test_measurements_are_shown_at_their_length():
    assert taken(SEAT) == pytest.approx(SIZES)


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"nose": 245}, ("nose: 245 mm is more than the width less 20 mm, or half the depth "
         "(240 mm); take another shape")),
        ({"rear_corner": 100}, ("rear_corner: 100 mm is more than what the rear has room for "
         "(97.5 mm); make the corner smaller")),
        ({"flare": 2000}, ("flare: 2000 mm is more than what the length of a side has room for "
         "(1791.923 mm); make the flare smaller")),
        ({"width": 360, "rear_corner": 20, "flare": 50}, ("flare: 50 mm is less than what leads a "
         "side out to the rear corner (95 mm); make the flare or the corner larger")),
        ({"width": 150, "nose": 150}, ("nose: 150 mm is more than the width less 20 mm, or half "
         "the depth (130 mm); take another shape")),
    ],
)  # fmt: skip
def test_what_makes_no_long_saddle_is_refused(values, told):
    assert refused(LongSaddle, **{**SIZES, **values}) == told


def test_largest_flare_begins_at_the_nose():
    seat = LongSaddle(**{**SIZES, "flare": bound(LongSaddle, "flare", **SIZES)})
    upright = [each.length for each in seat.contour().segments
               if isinstance(each, Line) and abs(each.tangent().real) < 1e-9]  # fmt: skip
    assert sum(upright) == pytest.approx(0, abs=1e-3)
    assert turns(seat) == []


def test_least_flare_leaves_the_corner_square_across():
    """Between side and rear then lie two quarter turns, one hollow and one round."""
    seat = LongSaddle(width=360, depth=600, nose=130, rear_corner=20, flare=95)
    sweeps = sorted(each.sweep for each in seat.contour().segments
                    if isinstance(each, Arc) and each.sweep < 0)  # fmt: skip
    assert math.fsum(sweeps) == pytest.approx(-math.pi)
