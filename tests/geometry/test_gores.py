"""Gores: what is exact in them, and what can't be laid flat."""

import cmath
import math
from itertools import pairwise

import pytest

from patternmaker.errors import Refusal
from patternmaker.geometry.domes import Dome
from patternmaker.geometry.gores import Gore, gore
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.half_round import HalfRound
from patternmaker.outlines.oval import Oval
from patternmaker.outlines.rounded_rectangle import RoundedRectangle

SEATS = {
    "circle": (Circle(diameter=400).contour(), 40),
    "half ball": (Circle(diameter=400).contour(), 200),
    "oval": (Oval(width=450, depth=350).contour(), 60),
    "rounded rectangle": (RoundedRectangle(width=500, depth=400, corner=60).contour(), 60),
    "sharp square": (RoundedRectangle(width=400, depth=400, corner=0).contour(), 80),
    "bench": (RoundedRectangle(width=760, depth=360, corner=40).contour(), 50),
    "half round": (HalfRound().contour(), 50),
}
MEETS = 5e-4  # mm; an arc that follows a curve is as long as it within half a thousandth


def places(dome: Dome, count: int, start: float = 0.0) -> list[tuple[float, float]]:
    ends = [start + dome.seam.length * i / count for i in range(count + 1)]
    return list(pairwise(ends))


def cut(dome: Dome, count: int, start: float = 0.0) -> list[Gore]:
    return [gore(dome, *each) for each in places(dome, count, start)]


@pytest.fixture(params=SEATS)
def dome(request):
    return Dome.over(*SEATS[request.param])


@pytest.mark.parametrize("count", [5, 8])
def test_bases_are_as_long_as_their_parts_of_the_seam(dome, count):
    for each in cut(dome, count):
        assert each.base.length == pytest.approx(dome.seam.length / count, abs=MEETS)


def test_sides_are_as_long_as_the_meridians_that_they_lie_along(dome):
    for each, (begin, end) in zip(cut(dome, 8), places(dome, 8), strict=True):
        assert each.left.length == pytest.approx(dome.meridian(begin).length, abs=MEETS)
        assert each.right.length == pytest.approx(dome.meridian(end).length, abs=MEETS)


def test_base_lies_square_to_the_middle_at_the_length_of_its_meridian(dome):
    for each, ends in zip(cut(dome, 8), places(dome, 8), strict=True):
        middle = sum(ends) / 2
        reach = dome.meridian(middle).length * dome.bearing(middle)
        place = each.base.point_at(each.base.length / 2)
        assert place == pytest.approx(reach, abs=1e-3)


def test_gore_is_a_closed_ring_run_anticlockwise(dome):
    for each in cut(dome, 8):
        sides = (each.left, each.base, each.right)
        for one, two in pairwise((*sides, sides[0])):
            assert one.segments[-1].end == pytest.approx(two.segments[0].start, abs=1e-6)
        area = math.fsum(part.moment for side in sides for part in side.segments)
        assert area > 0


def test_angles_at_the_crown_close_the_full_turn(dome):
    angles = [
        cmath.phase(-each.right.segments[-1].tangent(each.right.segments[-1].length)
                    / each.left.segments[0].tangent())
        for each in cut(dome, 8)
    ]  # fmt: skip
    assert math.fsum(angles) == pytest.approx(math.tau, abs=0.002)


def test_gores_of_a_round_dome_are_alike_wherever_they_begin():
    dome = Dome.over(*SEATS["circle"])
    one, two = gore(dome, 0, 150), gore(dome, 1000, 1150)
    turned = dome.bearing(1075) / dome.bearing(75)
    for share in (0.1, 0.5, 1.0):
        for side in ("left", "base", "right"):
            a, b = getattr(one, side), getattr(two, side)
            here, there = a.point_at(a.length * share), b.point_at(b.length * share)
            assert there == pytest.approx(here * turned, abs=1e-3)


def test_gore_of_a_flat_dome_is_a_sector_of_the_disc():
    dome = Dome.over(Circle(diameter=400).contour(), 0.001)
    each = gore(dome, 0, dome.seam.length / 6)
    for side in (each.left, each.right):
        chord = side.segments[-1].end - side.segments[0].start
        assert abs(chord) == pytest.approx(side.length, abs=1e-6)
    assert abs(each.base.point_at(40)) == pytest.approx(200, abs=1e-3)


def test_gore_may_begin_before_the_back_and_end_past_it():
    dome = Dome.over(*SEATS["oval"])
    across = gore(dome, -80, 80)
    assert across.base.length == pytest.approx(160, abs=MEETS)
    assert across.left.length == pytest.approx(across.right.length, abs=MEETS)


def test_gore_that_covers_too_much_of_a_dome_is_refused():
    dome = Dome.over(*SEATS["half ball"])
    with pytest.raises(Refusal, match="covers too much of the dome"):
        gore(dome, 0, dome.seam.length)
