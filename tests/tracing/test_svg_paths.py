"""Path data drawn by every command, against the same data read by svgpathtools."""

import math
from itertools import pairwise

import numpy as np
import pytest
import svgpathtools

from patternmaker.geometry.segments import Arc, Line
from tests.tracing.drawings import apart, drawn, only, svg, told

CLOSE = 0.0005  # mm; half of what a curve may be missed by, and what these chords add


def points(data: str, count: int = 2000) -> np.ndarray:
    """The reference: each segment of svgpathtools, sampled evenly and turned to run upward."""
    path = svgpathtools.parse_path(data)
    return np.concatenate([np.conj([each.point(t) for t in np.linspace(0, 1, count)])
                           for each in path])  # fmt: skip


@pytest.mark.parametrize(
    "data",
    [
        "M 10 20 L 110 30 200,90",
        "m 10 20 l 100 10 l 90,60",
        "M10 20 110 30 200 90",
        "m10 20 100 10 90 60",
        "M 10 20 H 90 V 70 h -20 v -10 H 40 v 30",
        "M 10 20 h 50 40 v 10 20",
        "M 10 80 C 40 10, 65 10, 95 80 S 150 150, 180 80",
        "m 10 80 c 30 -70 55 -70 85 0 s 55 70 85 0 50 -60 90 10",
        "M 10 80 S 60 10 95 80",
        "M 10 80 Q 52.5 10, 95 80 T 180 80 T 270 95",
        "m 10 80 q 42.5 -70 85 0 t 85 0",
        "M 10 80 T 95 80 180 90",
        "M 10 80 Q 52 10 95 80 C 120 100 140 150 180 80 T 250 90",
        "M 300 200 A 150 150 0 1 0 150 350",
        "M 300 200 A 150 150 0 0 1 150 350",
        "M 300 200 a 150 150 0 0 0 -150 150",
        "M 300 200 a 150 150 0 1 1 -150 150",
        "M 300 200 a 150 80 30 1 1 -50 50 a 20 45 -70 0 0 30 20",
        "M 100 100 A 10 10 0 0 1 200 140",
        "M 100 100 a 20 10 15 1 0 200 40",
        "M 100 100 A -30 30 0 0 1 140 120",
        "M 40 40 C 40 40 90 10 120 40 S 160 70 160 70",
    ],
)
def test_open_path_is_followed(data):
    chain = only(drawn(f'<path d="{data}"/>'))
    assert not chain.closed
    assert apart(chain.path, points(data)) < CLOSE


@pytest.mark.parametrize(
    "data",
    [
        "M 10 20 L 110 30 60 90 Z",
        "m 10 20 l 100 10 l -50,60 z",
        "M 10 80 C 40 10, 65 10, 95 80 S 150 150, 180 80 Z",
        "M 20 20 H 120 A 30 30 0 0 1 150 50 V 120 H 20 Z",
    ],
)
def test_closed_path_ends_where_it_begins(data):
    chain = only(drawn(f'<path d="{data}"/>'))
    assert chain.closed
    assert chain.segments[-1].end == pytest.approx(chain.segments[0].start, abs=1e-9)
    assert apart(chain.path, points(data)) < CLOSE


def test_numbers_may_stand_without_spaces():
    """SVG 1.1, 8.3.9: a number ends where the next one can only begin."""
    (line,) = only(drawn('<path d="M1e2.5l.5-3"/>')).segments
    assert line == Line(100 - 0.5j, 100.5 + 2.5j)


def test_arc_without_a_radius_is_a_line():
    """SVG 1.1, F.6.2."""
    (line,) = only(drawn('<path d="M 1 2 A 0 30 0 0 1 40 20"/>')).segments
    assert line == Line(1 - 2j, 40 - 20j)


def test_lengths_of_lines_and_a_fillet_are_exact():
    """Three sides and a quarter of a circle; 381.136084472 mm, by hand."""
    data = "M20,20 L120,20 A30,30 0 0 1 150,50 L150,120 Z"
    expected = 100 + 15 * math.pi + 70 + abs(130 + 100j)
    assert only(drawn(f'<path d="{data}"/>')).path.length == pytest.approx(expected, abs=1e-9)


def test_flags_of_an_arc_may_stand_without_spaces():
    spaced = only(drawn('<path d="M100 100 a 25 25 -30 0 1 50 -25 a25 25 0 1 0 10 5"/>'))
    close = only(drawn('<path d="M100 100a25,25-30 01 50-25 25 25 0 1010 5"/>'))
    assert close.segments == spaced.segments


def test_round_arc_stays_one_arc():
    (arc,) = only(drawn('<path d="M 300 200 A 150 150 0 1 0 150 350"/>')).segments
    assert isinstance(arc, Arc)
    assert arc.radius == pytest.approx(150, abs=1e-9)
    assert arc.sweep == pytest.approx(1.5 * math.pi, abs=1e-9)


@pytest.mark.parametrize("way", range(0, 360, 7))
def test_half_circle_rounded_to_six_digits_stays_half_round(way):
    """Its centre could not be told from its ends better than within 0.02 mm otherwise."""
    step = 201.2345678 * complex(math.cos(way), math.sin(way))
    ends = [500 + 500j + step, 500 + 500j - step]
    (ax, ay), (bx, by) = [(f"{z.real:.6f}", f"{z.imag:.6f}") for z in ends]
    (arc,) = only(drawn(f'<path d="M{ax} {ay} A201.234568 201.234568 0 0 1 {bx} {by}"/>')).segments
    assert isinstance(arc, Arc)
    assert arc.centre == pytest.approx(500 - 500j, abs=1e-6)


def test_a_second_subpath_is_a_line_of_its_own():
    one, two, three = drawn('<path id="top" d="M0 0 9 0 9 9z l 5 -5 m 3 3 h 9"/>').chains
    assert [one.name, two.name, three.name] == ["top", "top part 2", "top part 3"]
    assert [one.closed, two.closed, three.closed] == [True, False, False]
    assert two.path.segments == (Line(0, 5 + 5j),)
    assert three.path.segments == (Line(8 + 2j, 17 + 2j),)


def test_corner_between_two_curves_stays_and_a_smooth_join_stays_smooth():
    chain = only(drawn('<path d="M0 0 C 30 0 60 30 60 60 S 90 120 120 120 Q 90 60 120 0"/>'))
    turns = [abs(np.angle(b.tangent() / a.tangent(a.length))) for a, b in pairwise(chain.segments)]
    assert sum(turn > 1e-7 for turn in turns) == 1
    assert max(turns) == pytest.approx(math.pi - math.atan2(60, 30), abs=1e-9)


def test_curve_whose_handles_lie_on_its_chord_is_one_line():
    assert only(drawn('<path d="M0 0 C 10 0 20 0 30 0"/>')).segments == (Line(0, 30),)


@pytest.mark.parametrize(
    "data",
    [
        "M 0 0 C 90 60 0 60 90 0",  # a loop
        "M 0 0 C 100 100 0 100 100 0",  # a cusp in the middle
        "M 0 0 C 200 50 -100 50 100 0",
        "M 0 0 C 100 0 -60 0 30 0",  # to and fro on a line, twice
        "M 0 0 Q 100 0 20 0",  # once
        "M 0 0 C 50 50 50 50 0 0",  # and home again
        "M 0 0 C 0 0 100 80 100 80",
    ],
)
def test_curve_that_turns_on_the_spot_is_followed_round(data):
    assert apart(only(drawn(f'<path d="{data}"/>')).path, points(data, 3000)) < CLOSE


def test_many_straight_lines_are_a_string_of_points():
    spots = [(round(math.cos(i), 3), round(math.sin(i), 3)) for i in range(40)]
    chain = only(drawn(f'<path d="M{" ".join(f"{x},{y}" for x, y in spots)} z"/>'))
    assert chain.drawn
    assert chain.closed
    assert chain.points == tuple(complex(x, -y) for x, y in spots)


def test_few_straight_lines_are_true_lines():
    assert not only(drawn('<path d="M0 0 1 0 2 1 2 2 1 3 0 3 -1 2 -1 1z"/>')).drawn


NOTHING = ["", " ", "none", "M 5 5", "M5 5 z", "M1 1 L1 1 z", "M1 1A2 2 0 0 1 1 1", "M1 1Q1 1 1 1"]


@pytest.mark.parametrize("data", NOTHING)
def test_path_that_draws_nothing_is_no_line(data):
    assert drawn(f'<path d="{data}"/>').chains == ()


@pytest.mark.parametrize(
    ("data", "where"),
    [
        ("L 5 5", "it begins with 'L', not with M"),
        ("5 5", "it begins with '5', not with M"),
        ("M 5", "command 1, M"),
        ("M 5 5 L", "command 2, L"),
        ("M 5 5 L 6 6 7", "command 2, L"),
        ("M 5 5 H 6 V", "command 3, V"),
        ("M 5 5 Z 6", "command 2, Z"),
        ("M 5 5 C 1 2 3 4 5", "command 2, C"),
        ("M 5 5 A 1 2 3 4 5 6 7", "command 2, A"),
        ("M 5 5 A 1 2 3 0 1 6", "command 2, A"),
        ("M 5 5 L nan 5", "command 2, L"),
        ("M 5 5 X 5 5", "command 1, M"),
        ("M 5 5 L 1e99 5", "command 2, L"),
        ("M 5 5 A 1e99 1 0 0 0 5 9", "command 2, A"),
        ("M 5 5 L 1e999 5", "command 2, L"),
    ],
)
def test_broken_path_is_refused_with_the_command(data, where):
    assert told("a.svg", svg(f'\n<path d="{data}"/>')) == (
        f"can't be read in line 2: d of path, {where}; mend it there, or save the drawing again"
    )
