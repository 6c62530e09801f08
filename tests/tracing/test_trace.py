"""From what a file draws to the outline of a seat, and what is refused on the way."""

import cmath
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternmaker.errors import Refusal
from patternmaker.geometry.contour import Path
from patternmaker.geometry.segments import Arc, Line, Segment
from patternmaker.tracing.sketch import Chain, Sketch
from patternmaker.tracing.trace import Trace, Wishes, traced
from tests.tracing.traces import FINE, along, both_ways, ellipse, off_place, star, tips

L_SHAPE = (0, 300, 300 + 150j, 150 + 150j, 150 + 300j, 300j)
BOX: tuple[Segment, ...] = (
    Line(0, 400), Line(400, 400 + 300j), Line(400 + 300j, 300j), Line(300j, 0),
)  # fmt: skip
BENCH: tuple[Segment, ...] = (
    Line(-200 - 100j, 200 - 100j), Arc(200, 200 - 100j, math.pi),
    Line(200 + 100j, -200 + 100j), Arc(-200, -200 + 100j, math.pi),
)  # fmt: skip


def drawn(*points: complex, name: str = "seat", closed: bool = True) -> Chain:
    return Chain(name, points=tuple(complex(each) for each in points), closed=closed)


def true(*segments: Segment, name: str = "seat", closed: bool = True) -> Chain:
    return Chain(name, segments=segments, closed=closed)


def loose(*segments: Segment) -> list[Chain]:
    return [true(each, name=f"line {i}", closed=False) for i, each in enumerate(segments)]


def trace(*chains: Chain, unit: float | None = 1.0, **wishes) -> Trace:
    marks = wishes.pop("marks", {})
    return traced(Sketch(tuple(chains), unit, marks=marks), Wishes(**wishes))


def told(found: Trace) -> str:
    return "\n".join(each.says.format(*(f"{value:.4g}" for value in each.values))
                     for each in found.notes)  # fmt: skip


def refused(*chains: Chain, **wishes) -> str:
    with pytest.raises(Refusal) as fault:
        trace(*chains, **wishes)
    return str(fault.value)


def corners(found: Trace) -> dict[str, complex]:
    contour = found.contour
    return {name: contour.segments[index].start for name, index in contour.joints.items()
            if name.startswith("corner")}  # fmt: skip


def test_true_lines_and_arcs_stay_exactly_as_they_are():
    contour = trace(true(*BENCH)).contour
    assert contour.length == pytest.approx(800 + 200 * math.pi, abs=1e-9)
    assert contour.area == pytest.approx(80_000 + 10_000 * math.pi, abs=1e-6)
    assert [*contour.joints] == ["back", "left", "front", "right"]


def test_loose_lines_and_arcs_run_either_way_make_the_seat():
    contour = trace(*loose(BENCH[2].reversed(), BENCH[1], BENCH[0], BENCH[3].reversed())).contour
    assert contour.area == pytest.approx(80_000 + 10_000 * math.pi, abs=1e-6)


def test_clockwise_line_comes_out_anticlockwise():
    contour = trace(drawn(*reversed(L_SHAPE))).contour
    assert contour.area == pytest.approx(67_500)


def test_corners_are_numbered_anticlockwise_from_the_back():
    found = corners(trace(drawn(*L_SHAPE)))
    assert [*found.values()] == pytest.approx(
        [150j, -150 + 150j, -150 - 150j, 150 - 150j, 150, 0]
    )  # fmt: skip
    assert [*found] == [f"corner {i}" for i in range(1, 7)]


@pytest.mark.parametrize(
    ("back", "turned_over", "bay"),
    [
        ("up", False, 75 + 75j), ("left", False, 75 - 75j), ("down", False, -75 - 75j),
        ("right", False, -75 + 75j), ("up", True, -75 + 75j), ("left", True, -75 - 75j),
    ],
)  # fmt: skip
@pytest.mark.parametrize("true_lines", [True, False])
def test_the_named_side_becomes_the_back(back, turned_over, bay, true_lines):
    """The drawing's bay is at its upper right: where it comes to lie was worked out on paper."""
    ring = tuple(Line(a, b) for a, b in zip(L_SHAPE, (*L_SHAPE[1:], 0), strict=True))
    chain = true(*ring) if true_lines else drawn(*L_SHAPE)
    contour = trace(chain, back=back, turned_over=turned_over).contour
    inner = min(corners_of(contour), key=abs)
    assert inner == pytest.approx(0)
    assert contour.area == pytest.approx(67_500)
    missing = [way for way in (1 + 1j, -1 + 1j, -1 - 1j, 1 - 1j)
               if all(abs(each - 150 * way) > 1 for each in corners_of(contour))]  # fmt: skip
    assert missing == [bay / 75]


def corners_of(contour) -> list[complex]:
    return [each.start for each in contour.segments]


def test_arc_seen_from_below_is_its_mirror_image():
    half = trace(true(Arc(0, 200, math.pi), Line(-200, 200)), turned_over=True, back="right")
    assert half.contour.area == pytest.approx(20_000 * math.pi)
    assert half.contour.width == pytest.approx(400 if half.contour.height < 250 else 200)


def test_points_are_followed_and_what_was_smoothed_is_told():
    found = trace(drawn(*off_place(ellipse(3000), 0.05)))
    assert both_ways(found.contour.segments, ellipse(FINE)) < 0.03
    assert "smoothed: the points lie up to 0.07" in told(found)
    assert all(value < 0.1 for each in found.notes for value in each.values)


def test_clean_points_need_no_word():
    assert told(trace(drawn(*ellipse(2000)))) == ""


def test_doubled_points_are_dropped_and_counted():
    points = [point for point in L_SHAPE for _ in range(2)]
    found = trace(drawn(*points))
    assert found.contour.area == pytest.approx(67_500)
    assert told(found) == "left out 6 doubled points"
    assert told(trace(drawn(*L_SHAPE, 0))) == "left out 1 doubled point"


def test_open_string_is_closed_over_a_step_like_its_others():
    found = trace(drawn(*L_SHAPE, closed=False))
    assert found.contour.area == pytest.approx(67_500)
    assert told(found) == "closed a gap between ends of lines, the widest of 300"


def test_every_point_is_kept_where_nothing_may_be_smoothed():
    contour = trace(drawn(*ellipse(1000)), smooth=0).contour
    assert len(contour.segments) == 1000
    assert all(isinstance(each, Line) for each in contour.segments)


def test_drawn_lines_between_true_ones_are_smoothed_up_to_their_ends():
    chord = [complex(x, 0.0) for x in np.linspace(-200, 200, 300)]
    lid = true(Arc(0, 200, math.pi), name="lid", closed=False)
    for points in (chord, chord[::-1], chord[1:-1]):
        contour = trace(lid, drawn(*points, name="edge", closed=False), gap=2).contour
        assert contour.area == pytest.approx(20_000 * math.pi, abs=1e-6)
        assert len(contour.segments) == 6
    halves = chord[:150], chord[149:]
    parts = [drawn(*half, name=f"{i}", closed=False) for i, half in enumerate(halves)]
    assert trace(*parts, lid).contour.area == pytest.approx(20_000 * math.pi, abs=1e-6)


def test_gaps_between_true_lines_are_closed_without_a_step():
    apart = [Line(each.start + 0.3, each.end - 0.2j) for each in BOX]
    found = trace(*loose(*apart))
    assert len(corners(found)) == 4
    assert found.contour.area == pytest.approx(120_000, rel=1e-3)
    assert told(found) == "closed 4 gaps between ends of lines, the widest of 0.3606"


def test_lone_line_that_all_but_closes_is_closed_by_a_short_one():
    found = trace(true(*BOX[:3], Line(300j, 0.5j), closed=False))
    assert found.contour.area == pytest.approx(120_000)
    assert told(found) == "closed a gap between ends of lines, the widest of 0.5"


def test_line_shorter_than_its_gaps_is_reached_by_short_ones():
    sides = (Line(0, 400), Line(400.4, 401), Line(401 + 0.5j, 400 + 300j), Line(400 + 300j, 300j),
             Line(300j, 0))  # fmt: skip
    found = trace(*loose(*sides), gap=0.6)
    assert found.contour.area == pytest.approx(120_000, rel=0.01)
    assert told(found).startswith("closed 2 gaps")


def test_other_lines_are_left_out_with_a_word():
    other = drawn(0, 60, 60 + 60j, name="label")
    found = trace(drawn(*L_SHAPE), other, line="seat")
    assert found.contour.area == pytest.approx(67_500)
    assert told(found) == "left out 1 other line of the file"


def test_named_part_of_a_loop_names_the_loop():
    found = trace(*loose(*BOX), drawn(*L_SHAPE, name="other"), line="line 2")
    assert found.contour.area == pytest.approx(120_000)


@pytest.mark.parametrize(
    ("wishes", "width"),
    [
        ({"width": 450}, 450), ({"depth": 600}, 800), ({"unit": 25.4}, 400 * 25.4 / 10),
        ({"ruler": "rule", "ruler_length": 200}, 800),
    ],
)  # fmt: skip
def test_drawing_is_brought_to_its_true_size(wishes, width):
    box = true(*(each.mapped(0.1, 0) for each in BOX))
    rule = true(Line(90, 100), name="rule", closed=False)
    found = traced(Sketch((box, rule)), Wishes(line="seat", **wishes))
    assert found.contour.width == pytest.approx(width, rel=1e-9)
    assert found.contour.height == pytest.approx(0.75 * width, rel=1e-9)


def test_width_holds_exactly_for_a_smoothed_line_too():
    oval = drawn(*off_place(ellipse(2000), 0.05))
    assert trace(oval, unit=None, width=333).contour.width == pytest.approx(333, abs=1e-9)
    assert trace(oval, depth=333).contour.height == pytest.approx(333, abs=1e-9)
    assert told(trace(oval, width=333)).startswith("scaled by 0.666")


def test_unit_that_the_file_says_is_overruled():
    found = trace(true(*BOX), unit=1.0)
    assert found.contour.width == pytest.approx(400)
    inches = traced(Sketch((true(*BOX),), unit=1.0), Wishes(unit=2.0))
    assert inches.contour.width == pytest.approx(800)
    assert told(inches) == "taken 2 times as large as the file says"


def test_what_the_reader_noted_is_passed_on_whatever_its_signs():
    sketch = Sketch((true(*BOX),), 1.0, notes=("passed over: {text}",))
    assert told(traced(sketch, Wishes())) == "passed over: {text}"


def test_places_that_the_file_names_become_vertices():
    marks = {
        "zip begins": 400 + 75j,
        "tuft": 100 + 301j,
        "corner seam": 0j,
        "almost": 0.0005j,
        "just": 0.0005 + 0j,
    }
    contour = trace(true(*BOX), marks=marks).contour
    spots = {name: contour.segments[contour.joints[name]].start for name in marks}
    assert spots["zip begins"] == pytest.approx(200 - 75j)
    assert spots["tuft"] == pytest.approx(-100 + 150j)
    assert spots["corner seam"] == pytest.approx(-200 - 150j)
    assert spots["just"] == spots["almost"] == spots["corner seam"]
    assert len(contour.segments) == 10


def test_places_are_turned_and_scaled_with_the_line():
    found = trace(true(*BOX), back="left", width=600, marks={"tuft": 100 + 300j})
    place = found.contour.segments[found.contour.joints["tuft"]].start
    assert place == pytest.approx(300 + 200j)


@pytest.mark.parametrize("name", ["back", "corner 3"])
def test_place_named_as_one_on_every_seat_is_refused(name):
    assert f"names a place '{name}'" in refused(true(*BOX), marks={name: 0j})


def test_seat_is_made_alike_left_and_right():
    crooked = drawn(0, 420, 380 + 300j, 20 + 300j, 10 + 150j)
    found = trace(crooked, symmetrical=True)
    places = corners_of(found.contour)
    assert all(min(abs(-each.conjugate() - other) for other in places) < 1e-9 for each in places)
    assert "made alike left and right: the halves lay up to" in told(found)


def test_star_traced_by_hand_has_ten_corners():
    found = trace(drawn(*off_place(star(3000), 0.05) * 1j))
    assert len(corners(found)) == 10


@pytest.mark.parametrize(
    ("chains", "wishes", "message"),
    [
        ((), {}, "line: the file draws no line"),
        ((drawn(0, 300, name="ruler", closed=False),), {"ruler": "ruler", "ruler_length": 9},
         "line: the file draws no line but the ruler"),
        (loose(*BOX[:3]), {},
         "line 0 is not closed: the nearest ends lie 300 mm apart near the left (x -200 mm, y 0"),
        (loose(*BOX[:3], Line(300j, 3j)), {},
         "gap: line 0 is not closed: the nearest ends lie 3 mm apart near the left front"),
        ((*loose(*BOX[:2]), true(*BENCH, name="bench")), {"line": "line 1"}, "is not closed"),
        ((drawn(*L_SHAPE, name="a"), drawn(*L_SHAPE, name="b")), {},
         "line: the file draws 2 closed lines: 'a', 'b'; name the one to take"),
        ([drawn(*L_SHAPE, name=f"l{i}") for i in range(15)], {}, "'l11' and 3 more; name"),
        ((drawn(*L_SHAPE, name="cushion top"),), {"line": "cushon top"},
         "line: the file has no line named 'cushon top'; did you mean 'cushion top'?"),
        ([drawn(*L_SHAPE, name=f"l{i}") for i in range(15)], {"line": "zzz"},
         "no line named 'zzz'; it has 'l0', "),
        ((drawn(0, 300 + 300j, 300, 300j),), {},
         "line: the line crosses or touches itself near the middle, at x 0 mm, y 0 mm"),
        ((drawn(*(cmath.rect(200, math.tau * 2 * i / 5) for i in range(5))),), {},
         "line: the line crosses or touches itself near"),
        ((drawn(0, 300 + 300j),), {}, "line: has 2 points only; a seat takes three at the least"),
        ((drawn(0, 600 + 598j, 600 + 602j),), {},
         "line: the line holds no area"),
        ((drawn(0, 30, 30 + 300j, 300j),), {},
         "unit: the line is 30 mm across, less than any seat"),
        ((drawn(0, 6000, 300j),), {}, "unit: the line is 6000 mm across, more than any seat"),
        ((drawn(*L_SHAPE),), {"unit": None}, "unit: the file does not say its unit; give it"),
        ((drawn(*L_SHAPE),), {"width": 300.0, "depth": 300.0},
         "depth: the size is given by width and by depth; give one of them only"),
        ((drawn(*L_SHAPE),), {"ruler": "seat"}, "ruler_length: is missing"),
        ((drawn(*L_SHAPE),), {"ruler_length": 9.0}, "ruler: is missing"),
        ((drawn(*L_SHAPE),), {"ruler": "rule", "ruler_length": 9.0},
         "ruler: the file has no line named 'rule'"),
        ((drawn(*L_SHAPE),), {"ruler": "seat", "ruler_length": 9.0},
         "ruler: 'seat' is not a straight line"),
        ((drawn(0, 300j, 100j),), {"width": 300.0}, "width: the line has none"),
        ((drawn(0, 300, 100),), {"depth": 300.0}, "depth: the line has none"),
        ((drawn(*ellipse(5001)),), {"smooth": 0},
         "smooth: keeps every point of a line of 5,001, more than 5,000; allow some smoothing"),
    ],
)  # fmt: skip
def test_what_is_no_seat_is_refused_with_how_to_mend_it(chains, wishes, message):
    assert message in refused(*chains, **wishes)


WHERE = st.builds(complex, st.integers(-300, 300), st.integers(-300, 300))


@settings(max_examples=60)
@given(
    st.lists(WHERE, min_size=1, max_size=40),
    st.integers(1, 30),
    st.sampled_from((0.0, 0.1, 0.5, 5.0)),
    st.booleans(),
)
def test_any_points_are_a_seat_or_refused(spots, between, smooth, symmetrical):
    """Points stand at each spot and between it and the next, as often as there is room."""
    ring = zip(spots, [*spots[1:], spots[0]], strict=True)
    points = [a + (b - a) * i / between for a, b in ring for i in range(between)]
    try:
        found = trace(drawn(*points), smooth=smooth, symmetrical=symmetrical)
    except Refusal as mistake:
        refused = mistake.field
    else:
        assert found.contour.area > 0
        assert found.contour.bounds[0] == pytest.approx(-found.contour.bounds[2], abs=1e-6)
        return
    assert refused in {"line", "unit", "smooth", "symmetrical"}


@settings(max_examples=30)
@given(st.floats(20, 60), st.integers(0, 50), st.sampled_from((300, 1000)))
def test_corners_of_any_star_are_named_and_in_their_places(inner, turn, count):
    """Every corner of a star with wobble lies within a tenth of a millimetre of its place."""
    sharp = [tip * cmath.exp(0.1j * turn) for tip in tips(outer=200, inner=inner + 60)]
    path = Path.through(*sharp, sharp[0])
    points = off_place(along(path.segments, count), 0.03, seed=turn)
    chain = drawn(*points)
    found = trace(chain)
    left, front, right, back = path.bounds
    middle = complex((left + right) / 2, (front + back) / 2)
    assert len(corners(found)) == 10
    for place in corners(found).values():
        assert min(abs(place + middle - tip) for tip in sharp) < 0.15
