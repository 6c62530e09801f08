"""Laws of the maps, ovals and Beziers, and of how strokes become chains."""

import cmath
import math

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from patternmaker.geometry.segments import Arc, Line
from patternmaker.tracing.beziers import Bezier
from patternmaker.tracing.curves import Affine, Oval, closeness, ellipse, extent
from patternmaker.tracing.gathering import Gathering, Stroke, printable

numbers = st.floats(-1000, 1000, allow_nan=False)
points = st.builds(complex, numbers, numbers)
maps = st.builds(Affine, points, points, points)


@given(maps, maps, points)
def test_a_map_after_another_does_both(outer, inner, z):
    assert outer.after(inner)(z) == pytest.approx(outer(inner(z)), rel=1e-9, abs=1e-3)


@given(st.lists(numbers, min_size=6, max_size=6), numbers, numbers)
def test_matrix_is_what_it_says(entries, x, y):
    a, b, c, d, e, f = entries
    expected = complex(a * x + c * y + e, b * x + d * y + f)
    assert Affine.matrix(*entries)(complex(x, y)) == pytest.approx(expected, rel=1e-9, abs=1e-6)


@given(maps, points, points, points, numbers)
def test_mapped_oval_is_the_map_of_its_points(by, centre, turn, back, t):
    oval = Oval(centre, turn, back)
    assert oval.mapped(by).at(t)[0] == pytest.approx(by(oval.at(t)[0]), rel=1e-9, abs=1e-3)


@given(maps, st.lists(points, min_size=2, max_size=5), st.floats(0, 1))
def test_mapped_bezier_is_the_map_of_its_points(by, handles, t):
    curve = Bezier(tuple(handles))
    assert curve.mapped(by).at(t)[0] == pytest.approx(by(curve.at(t)[0]), rel=1e-9, abs=1e-3)


@given(maps, st.lists(points, min_size=3, max_size=3), st.floats(0, 1))
def test_so_is_a_rational_one(by, handles, t):
    weights = (1.0, 2.5, 0.5)
    curve = Bezier(tuple(z * w for z, w in zip(handles, weights, strict=True)), weights)
    assert curve.mapped(by).at(t)[0] == pytest.approx(by(curve.at(t)[0]), rel=1e-9, abs=1e-3)


@given(st.lists(points, min_size=3, max_size=5), st.floats(0.01, 0.99), st.floats(0, 1))
def test_halves_of_a_bezier_are_it(handles, t, share):
    one, two = Bezier(tuple(handles)).halves(t)
    assert one.at(share)[0] == pytest.approx(Bezier(tuple(handles)).at(t * share)[0], abs=1e-6)
    assert two.at(share)[0] == pytest.approx(
        Bezier(tuple(handles)).at(t + (1 - t) * share)[0], abs=1e-6
    )


@given(st.lists(points, min_size=2, max_size=4, unique=True))
@example([-64 + 0j, 0.5 + 0j, 0j])  # turns on the spot just before its end
def test_every_bezier_is_followed_from_end_to_end(handles):
    """Beziers of up to the third degree turn on the spot twice at most."""
    curve = Bezier(tuple(handles))
    segments = curve.segments(0.001)
    if segments:
        assert segments[0].start == pytest.approx(handles[0], abs=1e-6)
        assert segments[-1].end == pytest.approx(handles[-1], abs=1e-6)
    places = [curve.at(i / 50)[0] for i in range(51)]
    for z in places:
        assert min((e.distance(z) for e in segments), default=abs(z - handles[0])) < 0.0015


def test_rational_bezier_cut_at_a_cusp_is_followed():
    curve = Bezier((0j, 200 + 200j, 100j, 100 + 0j), (1.0, 2.0, 1.0, 1.0))
    segments = curve.segments(0.001)
    for z in (curve.at(i / 300)[0] for i in range(301)):
        assert min(each.distance(z) for each in segments) < 0.0011


def test_speck_of_a_curve_is_a_line():
    assert Bezier((0j, 5e-5j, 2e-5 + 0j)).segments(0.0002) == (Line(0, 2e-5),)
    assert Oval(0, 1e-15, 0).segments(0.0002) == ()


@pytest.mark.parametrize("sweep", [math.pi / 3, -math.pi / 3, 3.0, -3.0])
def test_round_oval_is_one_arc(sweep):
    (arc,) = Oval(5, 10j, 0, 0.5, sweep).segments(0.001)
    assert isinstance(arc, Arc)
    assert arc.sweep == sweep
    assert arc.end == pytest.approx(5 + 10j * cmath.exp(1j * (0.5 + sweep)))


def test_oval_that_runs_back_turns_right():
    (arc,) = Oval(5, 0, 10, 0.0, 1.0).segments(0.001)
    assert isinstance(arc, Arc)
    assert arc.sweep == -1.0


def test_ellipse_run_to_the_right_is_followed():
    oval = ellipse(0, 100, 50)._replace(sweep=-math.tau)
    assert sum(each.moment for each in oval.segments(0.0001)) == pytest.approx(
        -math.pi * 5000, rel=1e-6
    )


def test_small_lines_are_followed_more_closely():
    assert closeness(1000) == closeness(500) > 5 * closeness(20)
    assert extent([]) == 0


def test_step_within_the_rounding_of_the_file_is_no_line():
    stroke = Stroke(0j, (100 + 0j, 100 + 1e-7j, 100 + 100j, 1e-7j), closed=True)
    chain = stroke.chain("seat")
    assert chain
    assert chain.segments == (Line(0, 100), Line(100, 100 + 100j), Line(100 + 100j, 1e-7j))


def test_string_that_says_twice_that_it_is_closed_ends_once():
    ring = tuple(cmath.rect(9, i) for i in range(14))
    chain = Stroke(ring[0], (*ring[1:], ring[0]), closed=True).chain("seat")
    assert chain
    assert chain.points == ring


def test_line_without_a_name_gets_one():
    gathered = Gathering()
    gathered.add("\x00\n", Stroke(0j, (5 + 0j,)))
    assert [chain.name for chain in gathered.sketch(None).chains] == ["line"]


def test_taken_names_are_passed_over():
    gathered = Gathering()
    for name in ("leg (2)", "leg", "leg", "leg (2)"):
        gathered.add(name, Stroke(0j, (5 + 0j,)))
    found = [chain.name for chain in gathered.sketch(None).chains]
    assert found[:2] == ["leg (2)", "leg"]
    assert len(set(found)) == 4


def test_names_are_told_on_one_line():
    assert printable(" a\tb\x1b[2J\n" + "o" * 199) == "a b [2J " + "o" * 112
