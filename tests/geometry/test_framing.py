"""A ring drawn anywhere becomes a contour that stands as every seat does."""

import math

import pytest

from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.framing import Ring, framed, middle_of, mirrored, sharp
from patternmaker.geometry.segments import Arc

SIDES = ("back", "left", "front", "right")
SQUARE = sharp({"a": 10 + 20j, "b": 210 + 20j, "c": 210 + 120j, "d": 10 + 120j})


def places(contour: Contour) -> dict[str, complex]:
    return {name: contour.point_at(contour.station(name)) for name in SIDES}


def ell(leg: float = 100) -> Ring:
    """Return an L with its arm behind and its leg at the left."""
    return sharp({"a": 0, "b": leg, "c": leg + 200j, "d": 300 + 200j, "e": 300 + 300j, "f": 300j})


def test_middle_of_the_box_comes_to_the_origin():
    assert middle_of(SQUARE.segments) == 110 + 70j
    assert framed(*SQUARE).bounds == (-100, -50, 100, 50)


def test_contour_begins_at_the_back_and_the_four_sides_stand_in_the_middle():
    contour = framed(*SQUARE)
    assert places(contour) == pytest.approx({"back": 50j, "left": -100, "front": -50j,
                                             "right": 100})  # fmt: skip
    assert list(contour.joints) == ["back", "d", "left", "a", "front", "b", "right", "c"]
    assert contour.station("back") == 0


def test_corner_that_stands_on_a_middle_line_is_joint_and_side_at_once():
    contour = framed(*sharp({"a": -100j, "b": 100, "c": 100j, "d": -100}))
    assert len(contour.segments) == 4
    assert contour.joints == {"back": 0, "c": 0, "left": 1, "d": 1, "front": 2, "a": 2,
                              "right": 3, "b": 3}  # fmt: skip


def test_ring_that_begins_in_the_middle_of_a_side_is_not_cut_there_again():
    compass = Compass(0).line(100).line(100 + 80j).line(-100 + 80j).line(-100).line(0)
    contour = framed(*compass.ring())
    assert len(contour.segments) == 8
    assert places(contour)["front"] == -40j


def test_circle_of_one_stroke_is_cut_in_four():
    contour = framed(*Compass(50 + 7j).arc(7j, math.tau).ring())
    assert [each.sweep for each in contour.segments] == pytest.approx([math.pi / 2] * 4)


def test_middle_line_that_misses_the_leg_leaves_the_front_where_the_seat_reaches_furthest():
    """The line to the front meets the arm behind the middle; the leg is in front of that."""
    sides = places(framed(*ell()))
    assert sides["front"] == -100 - 150j
    assert sides["right"] == 150 + 100j
    assert sides["back"] == 150j
    assert sides["left"] == -150


def test_part_that_reaches_furthest_may_be_round():
    compass = Compass(0).arc(50, math.pi).line(100 + 200j).line(300 + 200j)
    ring = compass.line(300 + 250j).arc(250 + 250j, math.pi / 2).line(300j).line(0).ring()
    contour = framed(*ring)
    assert places(contour)["front"] == pytest.approx(-100 - 175j)


def test_longest_of_the_parts_that_reach_furthest_is_taken():
    """A slanting side reaches as far at its end only; of two feet the broader one counts."""
    points = (0, 40, 40 + 30j, 60 + 30j, 60, 130, 160 + 200j, 400 + 200j, 400 + 300j, 300j)
    contour = framed(*sharp({f"v{i}": point for i, point in enumerate(points)}))
    assert places(contour)["front"] == pytest.approx(complex(95 - 200, -150))


def test_part_that_reaches_furthest_may_be_a_corner():
    points = (40 - 1j, 100 + 200j, 300 + 200j, 300 + 300j, 300j)
    contour = framed(*sharp({f"v{i}": point for i, point in enumerate(points)}))
    assert contour.joints["front"] == contour.joints["v0"]


def test_framed_ring_stays_as_it_is_when_it_is_framed_again():
    """Cut at its sides, an L has other longest parts; the sides stay where they are."""
    once = framed(*ell())
    again = framed(once.segments, once.joints)
    assert again == once


def test_mirror_image_is_anticlockwise_with_left_and_right_exchanged():
    ring = Compass(0).joint("front left begins").line(200).joint("corner 2").line(50 + 90j)
    image = mirrored(ring.joint("back").line(0).ring())
    assert framed(*image).area == pytest.approx(200 * 90 / 2)
    starts = {name: image.segments[at].start for name, at in image.joints.items()}
    assert starts == {"front right ends": 0, "corner 2": -200, "back": -50 + 90j}


def test_mirror_image_of_the_mirror_image_is_the_ring():
    ring = Compass(100).line(100j).joint("left tip").arc(0, math.pi / 2).line(100).ring()
    again = mirrored(mirrored(ring))
    assert again.joints == ring.joints
    for one, other in zip(again.segments, ring.segments, strict=True):
        assert one.start == pytest.approx(other.start)
        assert one.sweep == pytest.approx(other.sweep)


def test_side_as_good_as_straight_is_cut_at_its_end_and_leaves_no_speck():
    """An arc of a radius of 2,000 km, on which a place is known to a few millionths of a mm."""
    radius = 2.060452803e9
    flat = Arc(40 + 1j * (60 - radius), 40 + 60j, (40 - 2e-6) / radius)
    rest = Path.through(flat.end, -40 + 60j, -40 - 60j, 40 - 60j, 40 + 60j)
    contour = framed((flat, *rest.segments), {})
    assert min(each.length for each in contour.segments) > 1
