"""Sheets that slope or bend one way, laid flat."""

import math

import numpy as np
import pytest

from patternmaker.geometry.bending import Bend, Bow, Spread, Straight, Tabled, scale_for
from patternmaker.geometry.monotone import Monotone
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle

BOX = RoundedRectangle(width=400, depth=300, corner=40).contour()
DIP = Tabled(Monotone((-200.0, -50.0, 80.0, 200.0), (95.0, 70.0, 66.0, 90.0)))
PROFILES = [Straight(0.2), Bow(400, 40), Bow(400, -40, 0.1), DIP]


@pytest.mark.parametrize("profile", PROFILES)
def test_slope_is_how_the_height_changes(profile):
    for place in np.linspace(-190, 190, 23):
        (low, _), (high, _) = profile.at(place - 1e-4), profile.at(place + 1e-4)
        assert profile.at(place)[1] == pytest.approx((high - low) / 2e-4, abs=1e-6)


def test_bow_is_level_at_its_ends_and_as_high_as_it_rises():
    for rise in (40.0, -25.0):
        assert [Bow(400, rise).at(x)[0] for x in (-200, 0, 200)] == pytest.approx([0, rise, 0])
    assert Bow(400, 40, 0.1).at(200)[0] == pytest.approx(20)
    assert Bow(400, 40).knots() == Straight().knots() == ()
    assert DIP.knots() == (-200.0, -50.0, 80.0, 200.0)


def test_sheet_that_neither_slopes_nor_bends_is_level():
    assert Bend(80).is_level
    assert Bend(80).at(30 + 40j) == 80
    assert not Bend(80, along=Straight(0.1)).is_level
    assert Bend(80, along=Straight(0.1), across=Bow(400, 40)).at(200 + 100j) == pytest.approx(90)
    assert Bend(80, along=Straight(0.1)).slope(5j) == 0.1j


def test_sloping_sheet_is_longer_by_the_hypotenuse():
    flat = Spread(Bend(80, along=Straight(0.75)), 1.0, 1.0).laid(BOX)
    assert (flat.width, flat.height) == pytest.approx((400, 375))
    assert flat.joints.keys() == BOX.joints.keys()


@pytest.mark.parametrize("bend", [Bend(80, along=Straight(0.3), across=Bow(400, 40)),
                                  Bend(80, along=Bow(300, -30, 0.2)), Bend(0, across=DIP),
                                  Bend(9, along=Straight(-0.2), across=DIP)])  # fmt: skip
@pytest.mark.parametrize("scale", [(1.0, 1.0), (0.97, 0.99)])
def test_every_edge_of_a_bent_sheet_keeps_its_length_in_space(bend, scale):
    """Measured on 4,000 chords of each edge of the plan, drafted to scale, at its own heights."""
    flat = Spread(bend, *scale).laid(BOX)
    stops = {index: name for name, index in BOX.joints.items()}
    length = 0.0
    for index, edge in enumerate(BOX.segments):
        if name := stops.get(index):
            assert flat.station(name) == pytest.approx(length, abs=0.001)
        plan = np.array([edge.point(edge.length * i / 4000) for i in range(4001)])
        up = np.array([bend.at(place) for place in plan])
        steps = np.diff(plan.real * scale[0]), np.diff(plan.imag * scale[1]), np.diff(up)
        length += float(np.sqrt(sum(step**2 for step in steps)).sum())
    assert flat.length == pytest.approx(length, abs=0.002)


@pytest.mark.parametrize("bend", [Bend(80, along=Straight(0.3), across=Bow(400, 40)),
                                  Bend(80, along=Bow(300, -30, 0.2))])  # fmt: skip
def test_area_of_a_bent_sheet_is_kept(bend):
    """The area over a plan is the integral of sqrt(1 + slope^2), here over fine squares."""
    disc = Circle(diameter=280).contour()
    x = (np.arange(700) + 0.5) / 700 * 280 - 140
    grid = (x[:, None] + 1j * x[None, :]).ravel()
    inside = grid[np.abs(grid) < 140]
    slopes = np.array([abs(bend.slope(place)) for place in inside[::7]])
    mean = float(np.hypot(1, slopes).mean())
    flat = Spread(bend, 1.0, 1.0).laid(disc)
    assert flat.area == pytest.approx(math.pi * 140**2 * mean, rel=2e-4)


def test_extent_is_told_each_way():
    sheet = Spread(Bend(80, along=Straight(0.75), across=Bow(400, 40)), 1.0, 1.0)
    assert sheet.extent(-150, 150, across=False) == pytest.approx(375)
    assert sheet.extent(-200, 200, across=True) > 400


def test_scale_is_found_at_which_an_extent_is_as_wanted():
    assert scale_for(lambda scale: math.hypot(3, 4 * scale), 5.0) == pytest.approx(1.0)
    assert scale_for(lambda scale: 100 * scale, 350.0) == pytest.approx(3.5)


def test_sheet_that_climbs_further_than_it_may_be_long_has_no_scale():
    with pytest.raises(ValueError, match="too steep"):
        scale_for(lambda scale: math.hypot(3, 4 * scale), 2.9)


def test_knot_at_the_very_end_makes_no_interval_of_next_to_nothing():
    end = math.nextafter(-200.0, 0)
    sheet = Spread(Bend(0, across=DIP), 1.0, 1.0)
    assert sheet.extent(end, 200, across=True) == pytest.approx(
        sheet.extent(-200, 200, across=True)
    )
