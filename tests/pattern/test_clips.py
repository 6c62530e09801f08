import math
from itertools import pairwise

import pytest

from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.clips import clips
from tests.covers.seats import IN, ROUND, SHARP, with_bay


def test_wide_curve_is_followed_without_clips():
    """Six allowances and more: common practice, no source."""
    assert clips(ROUND, 12, convex=True) == ()
    assert clips(Circle(diameter=2 * 72).contour(), 12, convex=True) == ()
    assert clips(Circle(diameter=2 * 71.9).contour(), 12, convex=True)


def test_sharp_corner_is_clipped_once_at_its_point():
    corners = [SHARP.station(f"{name}") for name in
               ("back left", "front left", "front right", "back right")]  # fmt: skip
    assert list(clips(SHARP, 12, convex=True)) == pytest.approx(corners)


def test_edge_that_never_turns_inward_is_not_clipped_on_its_own_piece():
    assert clips(SHARP, 12, convex=False) == ()


def test_corner_that_turns_inward_is_clipped_on_its_own_piece():
    bay = with_bay()
    inner = [bay.station("bay left"), bay.station("bay right")]
    assert list(clips(bay, 12, convex=False)) == pytest.approx(inner)
    assert len(clips(bay, 12, convex=True)) == 6


@pytest.mark.parametrize("convex", [True, False])
def test_no_clip_opens_further_than_an_eighth(convex):
    """A run of clips w apart round radius R at allowance a opens each by w a / R."""
    radius, allowance = 30.0, 12.0
    seat = RoundedRectangle(width=400, depth=300, corner=radius).contour()
    contour = seat if convex else with_bay(corner=radius)
    name = "back left" if convex else "bay left"
    begins, ends = contour.station(f"{name} begins"), contour.station(f"{name} ends")
    run = [at for at in clips(contour, allowance, convex=convex) if begins <= at <= ends]
    gaps = [b - a for a, b in pairwise(run)]
    assert max(gaps) * allowance / radius <= IN / 8 + 1e-9
    assert min(gaps) == pytest.approx(max(gaps))
    assert [run[0] - begins, ends - run[-1]] == pytest.approx([gaps[0] / 2] * 2)


def test_no_clip_stands_where_the_corner_is_notched():
    seat = RoundedRectangle(width=400, depth=300, corner=30).contour()
    middle = seat.station("back left")
    assert min(abs(at - middle) for at in clips(seat, 12, convex=True)) > 2


def test_clips_stay_a_quarter_inch_to_an_inch_apart():
    tight = RoundedRectangle(width=400, depth=300, corner=5).contour()
    run = clips(tight, 12, convex=True)
    assert len(run) == 4  # a quarter turn of 7.85 mm has no room for two at 1/4 in
    wide = Circle(diameter=140).contour()
    gaps = [b - a for a, b in pairwise(clips(wide, 12, convex=True))]
    assert len(gaps) + 1 == 2 * math.ceil(math.pi * 140 / 2 / (IN / 8 * 70 / 12))


@pytest.mark.parametrize("corner", [0.01, 0.5, 1, 3, 5, 8, 10, 15, 20, 30, 45, 70])
def test_clips_never_crowd_however_tight_the_corner(corner):
    seat = RoundedRectangle(width=400, depth=380, corner=corner).contour()
    places = clips(seat, 12, convex=True)
    assert len(places) >= 4
    assert min(b - a for a, b in pairwise(places)) >= IN / 4
