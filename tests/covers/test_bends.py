"""Where a seat's edge bends."""

import math

import pytest

from patternmaker.covers.parts.bends import bends, is_left
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.half_round import HalfRound
from patternmaker.outlines.horseshoe import Horseshoe
from patternmaker.outlines.oval import Oval
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from tests.covers.pulled import chamfered
from tests.covers.seats import SHARP, kite, with_bay

CORNERS = ["back left", "front left", "front right", "back right"]


def test_sharp_corner_is_a_bend_without_length():
    found = bends(SHARP, 600)
    assert [bend.name for bend in found] == CORNERS
    assert all(bend.is_sharp and bend.radius == 0 for bend in found)
    assert [bend.angle for bend in found] == pytest.approx([math.pi / 2] * 4)


def test_rounded_corner_is_one_bend_of_its_radius():
    found = bends(RoundedRectangle(width=400, depth=300, corner=60).contour(), 600)
    assert [bend.name for bend in found] == CORNERS
    assert [bend.radius for bend in found] == pytest.approx([60] * 4)
    assert [bend.length for bend in found] == pytest.approx([30 * math.pi] * 4)


def test_circle_is_one_bend_all_round():
    (bend,) = bends(Circle(diameter=320).contour(), 600)
    assert bend.name == "all round"
    assert bend.angle == pytest.approx(math.tau)


def test_what_turns_more_gently_is_no_bend():
    assert not bends(Circle(diameter=320).contour(), 160)
    assert bends(Circle(diameter=320).contour(), 160.1)


def test_curve_of_many_arcs_is_one_bend():
    (bend,) = bends(Oval(width=400, depth=330).contour(), 600)
    assert bend.angle == pytest.approx(math.tau)


def test_tight_corner_that_runs_on_into_a_wide_arc_is_a_bend_of_its_own():
    found = bends(HalfRound(width=450, depth=360, corner=30).contour(), 600)
    assert [bend.name for bend in found] == ["back left", "front", "back right"]


def test_corners_at_the_centres_are_named_after_them():
    found = bends(kite(), 600)
    assert sorted(bend.name for bend in found) == ["back", "front", "left", "right"]


def test_bend_that_runs_over_the_back_is_one():
    found = bends(Horseshoe(diameter=460, opening=360, corner=25).contour(), 600)
    (back,) = (bend for bend in found if bend.name == "back")
    assert back.at(0.5).outward == pytest.approx(1j)


def test_inner_corners_are_the_inward_bends():
    inner = bends(with_bay(corner=20), math.inf, outward=False)
    assert [bend.name for bend in inner] == ["bay left", "bay right"]
    assert [bend.angle for bend in inner] == pytest.approx([-math.pi / 2] * 2)


def test_place_at_a_share_of_the_turning():
    bend = bends(RoundedRectangle(width=400, depth=300, corner=60).contour(), 600)[0]
    middle = bend.at(0.5)
    assert middle.along == pytest.approx(bend.begin + bend.length / 2)
    assert middle.outward == pytest.approx((-1 + 1j) / math.sqrt(2))


def test_places_at_a_sharp_corner_share_its_point_and_turn_outward_with_it():
    bend = bends(SHARP, 600)[0]
    assert [bend.at(share).along for share in (0, 1)] == [bend.begin] * 2
    assert [bend.at(share).outward for share in (0, 1)] == pytest.approx([1j, -1])


def test_small_kinks_and_short_lines_belong_to_their_bend():
    """Two arcs of 45 degrees with a line of 0.5 mm between are one bend, of 40 mm two."""
    for line, count in ((0.5, 1), (40, 2)):
        found = bends(chamfered(line), 100)
        assert len([bend for bend in found if bend.begin < 400]) == count


def test_left_lies_between_back_and_front():
    assert is_left(SHARP, SHARP.station("left"))
    assert not is_left(SHARP, SHARP.station("right"))


def test_bends_of_the_same_name_are_numbered():
    names = [bend.name for bend in bends(chamfered(40), 100)]
    assert len(set(names)) == len(names)


def test_kink_within_a_bend_belongs_to_it():
    bend = bends(chamfered(0, kink=10), 100)[0]
    assert math.degrees(bend.angle) == pytest.approx(90)
    assert bend.has_kinks
    assert bend.tightest == 0
