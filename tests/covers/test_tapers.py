"""Corners drawn in."""

import math

import pytest

from patternmaker.covers.parts.tapers import drawn_in, hardly_rounded, objections, sharp_corners
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.segments import Line
from patternmaker.outlines.half_round import HalfRound
from patternmaker.outlines.regular_polygon import RegularPolygon
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from tests.covers.seats import ROUND, SHARP, kite, with_bay


def corner(contour: Contour, name: str) -> complex:
    return contour.segments[contour.joints[name]].start


def told(contour: Contour, by: float, over: float | None = None) -> list[str]:
    return [mistake.told() for mistake in objections(contour, by, over)]


def test_tip_of_a_square_corner_moves_inward_from_both_sides():
    drawn = drawn_in(SHARP, 12, None)
    assert corner(drawn, "back left") == pytest.approx(-188 + 138j)
    assert corner(drawn, "front right") == pytest.approx(188 - 138j)


def test_tip_of_any_corner_lies_as_far_from_both_of_its_sides():
    seat = RegularPolygon(sides=3, side=200, corner=0).contour()
    for each in sharp_corners(seat, None):
        tip = seat.point_at(each.at) + each.drawn(12)
        for side in (
            seat.segments[seat._find(each.at)[0]],
            seat.segments[seat._find(each.at - 1)[0]],
        ):
            assert side.distance(tip) == pytest.approx(12)


def test_sides_are_tapered_over_a_quarter_of_them_and_stay_where_they_were_between():
    drawn = drawn_in(SHARP, 12, None)
    points = [edge.start for edge in drawn.segments]
    for kept in (-100 + 150j, 100 + 150j, -200 + 75j, -200 - 75j):
        assert min(abs(point - kept) for point in points) < 1e-9
    assert (drawn.width, drawn.height) == (400, 300)


def test_taper_begins_where_it_is_told_to():
    points = [edge.start for edge in drawn_in(SHARP, 12, 60).segments]
    assert min(abs(point - (-140 + 150j)) for point in points) < 1e-9


def test_straight_sides_stay_straight():
    assert all(isinstance(edge, Line) for edge in drawn_in(SHARP, 12, None).segments)


def test_every_joint_keeps_its_name():
    assert set(drawn_in(SHARP, 12, None).joints) == set(SHARP.joints)
    assert drawn_in(SHARP, 12, None).station("left") == pytest.approx(
        drawn_in(SHARP, 12, None).length / 4, abs=60
    )


def test_nothing_is_drawn_in_by_nothing_or_without_a_sharp_corner():
    assert drawn_in(SHARP, 0, None).length == SHARP.length
    assert drawn_in(ROUND, 12, None).segments == ROUND.segments
    rounded = RoundedRectangle(width=400, depth=300, corner=30).contour()
    assert not sharp_corners(rounded, None)


def test_blunt_corners_are_left():
    assert len(sharp_corners(RegularPolygon(sides=8, side=200, corner=0).contour(), None)) == 8
    assert not sharp_corners(RegularPolygon(sides=10, side=200, corner=0).contour(), None)


def test_corners_that_turn_inward_are_left_and_end_a_side():
    corners = sharp_corners(with_bay(), None)
    assert len(corners) == 6  # four of the rectangle, two of the bay's mouth
    assert min(min(each.sides) for each in corners) == pytest.approx(90)


def test_corner_at_the_very_back_is_drawn_in_on_both_sides_of_the_beginning():
    drawn = drawn_in(kite(), 10, None)
    assert corner(drawn, "back") == pytest.approx(1j * (200 - 10 * math.sqrt(2)))
    assert corner(drawn, "front") == pytest.approx(-1j * (200 - 10 * math.sqrt(2)))


def test_a_curved_side_is_tapered_without_a_kink():
    """From the tip, 12 mm in from both sides, to the end of its taper a bow is smooth."""
    seat = HalfRound(width=450, depth=300, corner=0).contour()
    drawn = drawn_in(seat, 12, None)
    assert corner(drawn, "back left") == pytest.approx(corner(seat, "back left") + 12 - 12j)
    turns = [turn for turn in drawn.corners if turn]
    straight = math.atan2(12, 450 / 4 - 12)
    assert max(turns) < math.pi / 2
    assert all(turn > 0 for turn in turns)
    assert len(turns) == 6  # on each half: where either taper ends, and the tip
    assert any(turn == pytest.approx(straight, abs=1e-6) for turn in turns)


def test_taper_that_begins_past_the_middle_of_a_side_is_refused():
    (mistake,) = told(SHARP, 12, 160)
    assert mistake == (
        "cover.taper_over: 160 mm is more than half of a side (150 mm); "
        "let the taper begin nearer the corner"
    )
    assert not told(SHARP, 12, 150)


def test_taper_deeper_than_the_corner_has_room_for_is_refused():
    (mistake,) = told(SHARP, 40)
    assert mistake.startswith("cover.taper: 40 mm is more than a corner has room for (37.5 mm)")
    assert not told(SHARP, 37.5)
    assert not told(ROUND, 80)


def test_acute_corners_have_less_room():
    triangle = RegularPolygon(sides=3, side=200, corner=0).contour()
    (room,) = {round(each.room, 6) for each in sharp_corners(triangle, 80)}
    assert room == pytest.approx(40 / math.tan(math.radians(60)))


def test_rounded_corners_are_named_if_they_may_dog_ear():
    assert (
        len(list(hardly_rounded(RoundedRectangle(width=400, depth=300, corner=24).contour()))) == 4
    )
    assert not list(hardly_rounded(RoundedRectangle(width=400, depth=300, corner=25).contour()))
    assert not list(hardly_rounded(with_bay(corner=5)))


def test_tapers_that_meet_in_the_middle_of_their_side_leave_no_speck_between():
    for sides in (3, 5, 7):
        seat = RegularPolygon(sides=sides, side=200, corner=0).contour()
        drawn = drawn_in(seat, 5, 100)
        assert min(edge.length for edge in drawn.segments) > 1


def test_a_side_that_curves_is_tapered_no_further_than_it_is_nearly_straight():
    """Half a circle: its corners of 90 degrees let the bow turn by 22.5, an eighth of it."""
    seat = HalfRound(width=400, depth=200, corner=0).contour()
    bow = math.pi * 200
    reaches = {round(reach, 6) for each in sharp_corners(seat, None)
               for reach in (each.before, each.after)}  # fmt: skip
    assert reaches == {100, round(bow / 8, 6)}
    (mistake,) = told(seat, 10, 100)
    assert mistake.startswith("cover.taper_over: 100 mm is more than a side goes nearly straight")
    assert "(78.5" in mistake
    assert not told(seat, 10, 78)
