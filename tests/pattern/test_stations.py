import cmath
import math
from collections.abc import Iterable
from itertools import pairwise

import pytest

from patternmaker.geometry.contour import Contour
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.stations import CARDINALS, Station, notches_round, stations
from tests.contours import distance
from tests.covers.seats import BENCH, ROUND, SHARP, kite, with_bay
from tests.waves import wavy


def wave(swing: float, waves: int) -> Contour:
    """Return a smooth seat that turns both ways, its back at one of its crests."""
    smooth = wavy(200, swing, waves)
    at = [smooth.joints[f"crest {i * waves // 4}"] for i in range(4)]
    return Contour(smooth.segments, dict(zip(CARDINALS, at, strict=True)))


def test_notch_on_a_trimmed_bend_stands_at_the_corner_of_the_cut_line():
    """Halfway between two crests the allowances of both flanks meet on the axis of the trough."""
    seat = wave(0.1, 7)
    trough = Station("trough", seat.station("back") + seat.length / 14)
    notch = notches_round(seat, [trough], 60, 3)[0]
    axis = cmath.rect(1, math.pi / 7)
    assert notch.feet[0] / axis == pytest.approx(abs(notch.feet[0]), abs=0.01)
    assert notch.inward == pytest.approx(-axis, abs=1e-3)


def names(
    contour: Contour, spacing: float = 5000.0, joins: Iterable[tuple[str, float]] = ()
) -> list[str]:
    return [place.name for place in stations(contour, spacing, joins)]


def test_circle_is_notched_at_its_four_quarters():
    assert names(ROUND) == ["back", "left", "front", "right"]


def test_only_the_back_is_double():
    assert [place.name for place in stations(BENCH, 120) if place.double] == ["back"]


def test_short_corner_is_notched_at_its_middle():
    """40 mm x pi / 2 = 63 mm of arc."""
    assert names(BENCH)[:3] == ["back", "back left", "left"]
    middle = next(place for place in stations(BENCH, 5000) if place.name == "back left")
    assert middle.at == pytest.approx(BENCH.station("back left begins") + 40 * 3.14159265 / 4)


def test_long_corner_is_notched_at_both_ends():
    """80 mm x pi / 2 = 126 mm of arc."""
    seat = RoundedRectangle(width=760, depth=360, corner=80).contour()
    assert names(seat)[:4] == ["back", "back left begins", "back left ends", "left"]


def test_sharp_corner_is_notched_at_its_point():
    assert names(SHARP)[1] == "back left"


def test_gaps_are_divided_evenly_and_numbered_round_the_seat():
    """A quarter of 320 pi is 251.3 mm: two spans of 125.7 mm where 150 mm is the most."""
    places = stations(ROUND, 150)
    gaps = [b.at - a.at for a, b in pairwise(places)]
    assert gaps == pytest.approx([ROUND.length / 8] * 7)
    assert [place.name for place in places[1::2]] == ["1", "2", "3", "4"]


def test_gap_of_exactly_the_spacing_takes_no_notch():
    square = RoundedRectangle(width=300, depth=300, corner=0).contour()
    assert len(stations(square, 150)) == 8


def test_corner_that_crowds_a_side_gives_way():
    """Corners 20 mm from the middle of the side are kept, those 12.5 mm from it are not."""
    seat = RoundedRectangle(width=400, depth=50, corner=0).contour()
    assert names(seat.scaled(1, 0.8))[1] == "back left"
    assert names(seat.scaled(1, 0.5)) == ["back", "left", "front", "right"]


def test_side_that_crowds_a_join_gives_way():
    at = ROUND.station("left") - 10
    found = names(ROUND, joins=[("left join", at), ("right join", ROUND.length - at)])
    assert found == ["back", "left join", "front", "right join"]


def test_join_is_notched_however_near_the_back_it_stands():
    joins = [("left join", 14.0), ("right join", ROUND.length - 14.0)]
    assert names(ROUND, joins=joins)[:2] == ["back", "left join"]
    assert names(ROUND, joins=joins)[-1] == "right join"


@pytest.mark.parametrize(
    ("contour", "by"),
    [
        (ROUND, 12), (BENCH, 12), (SHARP, 12), (kite(), 12), (with_bay(), 12),
        (with_bay(corner=8), 12), (wave(0.1, 7), 12), (wave(0.1, 7), 60), (wave(0.2, 5), 40),
    ],
)  # fmt: skip
def test_foot_of_every_notch_lies_on_the_cut_line_and_its_slit_leads_inward(contour, by):
    """Also where an inner bend is tighter than the allowance, and trimmed to a corner."""
    cut = contour.grown(by)
    for notch in notches_round(contour, stations(contour, contour.length / 32), by, 3):
        for foot, tip in notch.slits:
            assert distance(cut, foot) < 2e-4
            assert distance(contour, tip) < distance(contour, foot)
            assert abs(foot - tip) == pytest.approx(3)


@pytest.mark.parametrize(("contour", "apart"), [(ROUND, 6), (kite(), 6 / 2**0.5)])
def test_double_notch_is_two_slits_6_mm_apart_along_the_cut_line(contour, apart):
    back = notches_round(contour, stations(contour, 5000), 12, 3)[0]
    one, two = back.feet
    assert one.real == pytest.approx(-two.real)
    assert one.imag == pytest.approx(two.imag)
    assert abs(one - two) == pytest.approx(apart, rel=1e-3)


def test_notch_beside_an_inner_corner_stands_at_the_corner_of_the_cut_line():
    """Within an allowance of it both sides share one allowance."""
    bay = with_bay()
    near = stations(bay, 5000, [("join", bay.station("bay left") + 5)])
    notch = next(n for n in notches_round(bay, near, 12, 3) if n.name == "join")
    assert notch.feet[0] == pytest.approx(complex(-80 + 12, -60 - 12))


def test_circle_smaller_than_the_spacing_keeps_its_quarters():
    assert len(stations(Circle(diameter=50).contour(), 1000)) == 4
