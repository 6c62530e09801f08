"""Walls laid flat: cones, prisms, planes and strips that twist."""

import cmath
import math

import numpy as np
import pytest

from patternmaker.errors import Refusal
from patternmaker.geometry.bending import Bend, Bow, Straight
from patternmaker.geometry.chains import plain
from patternmaker.geometry.ruled import Span, Step
from patternmaker.geometry.segments import Arc, Line, Segment
from patternmaker.geometry.unrolling import Leaning, Quad, Upright, flat, lay

LEVEL = Bend(120.0)
QUARTER = Arc(0j, 150j, math.pi / 2)
FLARED = Arc(0j, 200j, math.pi / 2)
ACROSS, FURTHER = Line(150j, -300 + 150j), Line(200j + 50, -350 + 200j)


def test_steps_in_space_are_added_and_multiplied():
    one, two = Step(3 + 0j, 4.0), Step(0j, 2.0)
    assert one.length == 5
    assert one.of(two) == 8
    assert one.plus(two, 0.5) == Step(3 + 0j, 5.0)


def test_upright_wall_of_one_height_is_a_rectangle():
    laid = lay(Span(QUARTER, QUARTER, LEVEL))
    assert isinstance(laid, Upright)
    assert laid.turn == 0.0
    (above,), (below,) = laid.upper, laid.lower
    assert isinstance(above, Line)
    assert above.start == 0
    assert above.end == pytest.approx(75 * math.pi)
    assert below.start == -120j
    assert laid.end == pytest.approx(75 * math.pi)


def test_quarter_of_a_cone_is_a_quarter_of_its_sector():
    laid = lay(Span(QUARTER, FLARED, LEVEL))
    assert isinstance(laid, Leaning)
    assert abs(laid.turn) == pytest.approx(math.pi / 2 * 50 / 130)
    assert sum(each.length for each in laid.lower) == pytest.approx(100 * math.pi)
    assert laid.length == pytest.approx(75 * math.pi)


def test_plane_wall_between_two_lines_is_a_trapezoid():
    """Slant sqrt(120^2 + 50^2) = 130 throughout, edges of 300 and 400."""
    laid = lay(Span(ACROSS, FURTHER, LEVEL))
    (above,), (below,) = laid.upper, laid.lower
    assert (above.length, below.length) == pytest.approx((300, 400))
    assert abs(above.start - below.start) == pytest.approx(math.hypot(120, 50, 50))
    way = above.tangent()
    assert below.tangent() == pytest.approx(way)
    assert ((below.start - above.start) / way).imag == pytest.approx(-130)
    assert laid.turn == pytest.approx(2 * math.atan(50 / 130))
    assert laid.end == above.end


@pytest.mark.parametrize("scale", [(0.97, 0.97), (0.95, 0.99)])
def test_plane_wall_drafted_to_scale_keeps_its_end_rulings(scale):
    quad = Quad.of(Span(ACROSS, FURTHER, LEVEL, scale))
    ruling = math.hypot(120, 50, 50)
    assert abs(quad.far_above - quad.above) == pytest.approx(300 * scale[0])
    assert abs(quad.far_below - quad.below) == pytest.approx(400 * scale[0])
    assert abs(quad.below - quad.above) == pytest.approx(ruling)
    assert abs(quad.far_below - quad.far_above) == pytest.approx(ruling)


def test_askew_plane_wall_keeps_both_of_its_end_rulings_too():
    span = Span(ACROSS, Line(200j + 10, -380 + 200j), LEVEL, (0.97, 0.97))
    quad = Quad.of(span)
    assert abs(quad.below - quad.above) == pytest.approx(math.hypot(120, 50, 10))
    assert abs(quad.far_below - quad.far_above) == pytest.approx(math.hypot(120, 50, 80))


def test_plane_wall_too_far_to_one_side_for_its_take_up_is_refused():
    aside = Line(150j - 200, -500 + 150j)
    with pytest.raises(Refusal, match="too far to one side of the seam near x 0, y 150 mm"):
        Quad.of(Span(ACROSS, aside, Bend(10.0), (0.9, 0.9)))


def test_corner_over_a_side_and_a_side_over_a_corner_are_triangles():
    over = lay(Span(150j, FURTHER, LEVEL))
    assert over.upper == ()
    assert over.length == 0
    assert [each.length for each in over.lower] == pytest.approx([400])
    under = lay(Span(ACROSS, 200j + 0, LEVEL))
    assert under.lower == ()
    assert [each.length for each in under.upper] == pytest.approx([300])
    assert abs(under.end - 0) == pytest.approx(300)


def test_corner_over_a_bend_is_part_of_a_slanting_cone():
    """Its rulings from one tip to the bend; the edge as long as that."""
    laid = lay(Span(150j, FLARED, LEVEL))
    assert laid.upper == ()
    assert sum(each.length for each in laid.lower) == pytest.approx(100 * math.pi, abs=0.001)


def test_upright_wall_under_a_slope_is_as_high_as_that_everywhere():
    slope = Bend(100.0, along=Straight(0.2))
    laid = lay(Span(QUARTER, QUARTER, slope))
    for edge in laid.upper:
        for share in (0.0, 0.5, 1.0):
            place = edge.point(share * edge.length)
            y = 150 * math.cos(place.real / 150)
            assert place.imag == pytest.approx(0.2 * (y - 150), abs=0.001)


def test_wall_that_twists_keeps_both_edges():
    bend = Bend(100.0, across=Bow(320, 40))
    laid = lay(Span(QUARTER, FLARED, bend))
    turns = np.linspace(math.pi / 2, math.pi, 20001)
    upper = 150 * np.exp(1j * turns)
    up = np.array([bend.at(place) for place in upper])
    steps = np.abs(np.diff(upper)), np.abs(np.diff(up))
    assert laid.length == pytest.approx(float(np.hypot(*steps).sum()), abs=0.001)
    assert sum(each.length for each in laid.lower) == pytest.approx(100 * math.pi, abs=0.001)


def test_part_of_a_wall_is_that_part_of_its_flat():
    bend = Bend(100.0, across=Bow(320, 40))
    span = Span(QUARTER, FLARED, bend)
    whole = lay(span)
    share = whole.share_at(whole.length / 3)
    parts = [lay(span.cut(0.0, share)), lay(span.cut(share, 1.0))]
    assert parts[0].length == pytest.approx(whole.length / 3, abs=1e-3)
    one, both = flat([whole]), flat(parts)
    assert both.upper.length == pytest.approx(one.upper.length, abs=1e-3)
    for here, there in zip(one.ends, both.ends, strict=True):
        assert here[1] - here[0] == pytest.approx(there[1] - there[0], abs=1e-3)
    assert lay(Span(QUARTER, QUARTER, LEVEL).cut(0.2, 0.4)).length == pytest.approx(15 * math.pi)
    assert Span(150j, FLARED, bend).cut(0.2, 0.4).upper == 150j


def test_share_of_an_even_edge_is_that_of_its_length():
    assert lay(Span(QUARTER, FLARED, LEVEL)).share_at(30 * math.pi) == pytest.approx(0.4)
    assert Span(ACROSS, FURTHER, LEVEL, (0.9, 1.0)).is_even
    uneven = lay(Span(QUARTER, FLARED, LEVEL, (0.9, 1.0)))
    assert not uneven.span.is_even
    half = uneven.share_at(uneven.length / 2)
    assert half > 0.5  # the edge begins along x, where it is drafted shorter
    assert lay(uneven.span.cut(0.0, half)).length == pytest.approx(uneven.length / 2, abs=1e-3)


def test_scale_of_an_edge_is_that_of_its_direction():
    span = Span(ACROSS, FURTHER, LEVEL, (0.9, 1.0))
    assert [span.scaled(way) for way in (1 + 0j, 1j, 0j)] == pytest.approx([0.9, 1.0, 0.9])
    assert span.scaled(1 + 1j) == pytest.approx(math.hypot(0.9, 1.0) / math.sqrt(2))


def test_edge_that_runs_against_the_seam_is_refused_with_its_place():
    span = Span(ACROSS, Line(-300 + 150j, 150j), Bend(100.0, along=Straight(0.1)))
    with pytest.raises(Refusal, match="base: its edge runs against the seam near x 0, y 150 mm"):
        span.ruling(0.0)


def test_whole_wall_laid_flat_stands_level():
    parts = [lay(Span(each, other, LEVEL)) for each, other in
             ((QUARTER, FLARED), (QUARTER.mapped(1j, 0), FLARED.mapped(1j, 0)))]  # fmt: skip
    both = flat(parts)
    (above, below), (far_above, far_below) = both.ends
    lean = cmath.phase(1j * (below - above)), cmath.phase(1j * (far_below - far_above))
    assert lean[0] == pytest.approx(-lean[1])
    assert both.upper.segments[0].start == 0


def test_lines_that_run_straight_on_become_one():
    chain: list[Segment] = [
        Line(0j, 10 + 0j),
        Line(10 + 0j, 30 + 0j),
        Line(30 + 0j, 40 + 5j),
        QUARTER,
    ]
    assert list(plain(chain)) == [Line(0j, 30 + 0j), *chain[2:]]
    assert list(plain([])) == []
