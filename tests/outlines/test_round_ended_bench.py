"""The bench with one end round, or both."""

import math

import pytest

from patternmaker.geometry.segments import Arc
from patternmaker.outlines.round_ended_bench import RoundEndedBench
from tests.outlines.asking import corners, place, refused, taken, turns

LEFT = RoundEndedBench(width=900, depth=300, round_ends="left", corner=40)


def test_both_ends_are_half_circles_across_the_whole_depth():
    bench = RoundEndedBench(width=900, depth=300)
    arcs = [each for each in bench.contour().segments if isinstance(each, Arc)]
    assert {abs(each.centre.real) for each in arcs} == {300}
    assert sum(each.sweep for each in arcs) == pytest.approx(2 * math.pi)
    assert corners(bench) == []
    assert turns(bench) == []


def test_square_end_has_corners():
    assert [name for name in corners(LEFT) if " right" in name] == corners(LEFT)
    assert len(corners(LEFT)) == 6
    assert turns(LEFT) == []


def test_square_end_may_be_sharp():
    bench = RoundEndedBench(width=900, depth=300, round_ends="right", corner=0)
    assert corners(bench) == ["back left", "front left"]
    assert place(bench, "back left") == pytest.approx(-450 + 150j)
    assert turns(bench) == pytest.approx([math.pi / 2] * 2)


def test_bench_as_wide_as_deep_is_a_circle():
    bench = RoundEndedBench(width=300, depth=300)
    assert bench.contour().length == pytest.approx(300 * math.pi)
    assert len(bench.contour().segments) == 4


def test_partner_has_its_other_end_round():
    assert LEFT.partner() == RoundEndedBench(width=900, depth=300, round_ends="right", corner=40)
    assert RoundEndedBench().partner() == RoundEndedBench()


@pytest.mark.parametrize("end", ["left", "right"])
def test_corner_is_shown_where_it_is(end):
    bench = RoundEndedBench(width=900, depth=300, round_ends=end, corner=40)
    assert taken(bench) == pytest.approx({"width": 900, "depth": 300, "corner": 40})
    corner = bench.dimensions()[-1].end
    assert (corner.real > 0) is (end == "left")
    assert "corner" not in taken(RoundEndedBench())


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ({"width": 300, "depth": 330}, ("width: 300 mm is less than the depth (330 mm); exchange "
         "the two: a bench is wide")),
        ({"depth": 330, "corner": 170}, ("corner: 170 mm is more than half the depth (165 mm); "
         "make the corner smaller or the bench deeper")),
        ({"round_ends": "front"}, "round_ends: 'front' is not known; it can be both, left, right"),
    ],
)  # fmt: skip
def test_what_makes_no_bench_is_refused(values, told):
    assert refused(RoundEndedBench, **values) == told
