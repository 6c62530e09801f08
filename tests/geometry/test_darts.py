"""Darts take out of a blank's edge exactly what it has too much."""

import math
from itertools import pairwise

import pytest

from patternmaker.errors import Refusal
from patternmaker.geometry.darts import darts
from patternmaker.geometry.domes import Dome
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.oval import Oval
from patternmaker.outlines.rounded_rectangle import RoundedRectangle

SEATS = {
    "circle": (Circle(diameter=350).contour(), 60),
    "oval": (Oval(width=450, depth=350).contour(), 60),
    "rounded rectangle": (RoundedRectangle(width=500, depth=400, corner=60).contour(), 60),
}


@pytest.fixture(params=SEATS)
def dome(request):
    return Dome.over(*SEATS[request.param])


def six(dome: Dome):
    places = [dome.seam.length * i / 6 for i in range(6)]
    return places, darts(dome, places, 120)


def test_what_is_left_of_the_edge_is_as_long_as_the_seam(dome):
    _, found = six(dome)
    whole = dome.blank.length
    for here, there in pairwise((*found, found[0])):
        left = (there.begin - here.end) % whole
        assert left == pytest.approx(dome.seam.length / 6, abs=1e-3)


def test_legs_of_a_dart_are_of_one_length_and_meet_at_its_tip(dome):
    for dart in six(dome)[1]:
        assert dart.before.length == pytest.approx(dart.after.length, abs=1e-9)
        assert dart.before.segments[0].start == dart.after.segments[0].start == dart.tip
        assert abs(dart.middle - dart.tip) == pytest.approx(120)


def test_legs_end_on_the_edge_where_the_mouth_begins_and_ends(dome):
    for dart in six(dome)[1]:
        for leg, along in ((dart.before, dart.begin), (dart.after, dart.end)):
            assert leg.segments[-1].end == pytest.approx(dome.blank.point_at(along), abs=1e-6)


def test_darts_of_a_round_dome_share_its_surplus_alike():
    dome = Dome.over(*SEATS["circle"])
    _, found = six(dome)
    surplus = math.tau * (dome.meridian(0).length - 175)
    assert [(d.end - d.begin) % dome.blank.length for d in found] == pytest.approx(
        [surplus / 6] * 6
    )
    assert all(0.99 * surplus / 6 < dart.width < surplus / 6 for dart in found)


def test_dart_lies_on_the_line_from_the_crown_to_its_place(dome):
    places, found = six(dome)
    for place, dart in zip(places, found, strict=True):
        off = dart.middle * dome.bearing(place).conjugate()
        assert abs(off.imag) < 8  # it leans where its sides take out different lengths


def test_dart_is_narrower_all_the_way_to_its_tip(dome):
    for dart in six(dome)[1]:
        shares = [i / 10 for i in range(11)]
        wide = [abs(dart.after.point_at(dart.after.length * s)
                    - dart.before.point_at(dart.before.length * s)) for s in shares]  # fmt: skip
        assert all(a < b for a, b in pairwise(wide))


def test_edge_that_is_nowhere_longer_than_its_seam_takes_no_dart():
    bench = Dome.over(RoundedRectangle(width=760, depth=360, corner=40).contour(), 50)
    with pytest.raises(Refusal, match="nothing to take out"):
        darts(bench, [bench.seam.length * i / 12 for i in range(12)], 60)
