"""The seat whose outline was traced, and lies in a file."""

import cmath
import math
from typing import Any

import pytest

from patternmaker.facts import Found
from patternmaker.outlines.traced import Traced
from patternmaker.outlines.wedge import Wedge
from tests.outlines.asking import corners, place, refused, taken, turns

SVG = """<svg xmlns="http://www.w3.org/2000/svg"
 width="{0}mm" height="{0}mm" viewBox="0 0 {0} {0}">{1}</svg>"""


def drawing(lines: str, size: int = 500) -> Found:
    """Return an SVG drawing in millimetres."""
    return Found("seat.svg", SVG.format(size, lines).encode())


def seat(lines: str, **wishes: Any) -> Traced:
    return Traced(file=drawing(lines), **wishes)


SQUARE = '<path id="seat" d="M 50 50 H 450 V 350 H 50 Z"/>'
LEANING = '<path d="M 100 50 H 450 V 350 H 50 Z"/>'


def dots(radius: float, count: int, wobble: float = 0.0) -> Found:
    """Return points in millimetres round a circle, by turns in and out."""
    places = [cmath.rect(radius + wobble * (-1) ** i, 2 * math.pi * i / count)
              for i in range(count)]  # fmt: skip
    rows = "\n".join(f"{z.real:.6f},{z.imag:.6f}" for z in places)
    return Found("seat.csv", f"x (mm),y (mm)\n{rows}\n".encode())


def test_true_lines_stay_as_they_are_drawn():
    contour = seat(SQUARE).contour()
    assert (contour.width, contour.height) == pytest.approx((400, 300))
    assert contour.area == pytest.approx(120_000)
    assert corners(seat(SQUARE)) == [f"corner {i}" for i in range(1, 5)]


def test_true_circle_stays_one():
    contour = seat('<circle cx="250" cy="250" r="160"/>').contour()
    assert contour.length == pytest.approx(2 * math.pi * 160, rel=1e-9)
    assert corners(seat('<circle cx="250" cy="250" r="160"/>')) == []


def test_points_are_followed_by_tangent_arcs():
    """200 points lie on the circle, whose chords are 0.02 mm inside it."""
    outline = Traced(file=dots(165, 200))
    assert outline.contour().length == pytest.approx(2 * math.pi * 165, abs=0.1)
    assert turns(outline) == []
    assert len(outline.contour().segments) < 20


def test_fit_report_is_told_what_was_done_to_the_line():
    """Alternate points lie 0.4 mm apart in and out: 0.2 mm off the circle between them."""
    says = {said.says.partition(":")[0]: said.values for said in
            Traced(file=dots(165, 200, wobble=0.2)).remarks()}  # fmt: skip
    assert says["smoothed"] == pytest.approx((0.2, 0.2), rel=0.1)


def test_line_that_needs_nothing_is_not_remarked_upon():
    assert seat(SQUARE).remarks() == ()


def test_drawing_is_brought_to_a_measured_width():
    outline = seat(SQUARE, width=600)
    assert outline.contour().bounds == pytest.approx((-300, -225, 300, 225))
    assert taken(outline) == pytest.approx({"width": 600})


def test_drawing_is_brought_to_a_measured_depth():
    outline = seat(SQUARE, depth=150)
    assert outline.contour().width == pytest.approx(200)
    assert taken(outline) == pytest.approx({"depth": 150})


def test_nothing_is_measured_on_a_drawing_that_is_at_its_own_size():
    assert seat(SQUARE).dimensions() == ()


def test_line_is_chosen_by_its_id():
    two = SQUARE + '<circle id="hole" cx="250" cy="200" r="60"/>'
    assert seat(two, line="hole").contour().width == pytest.approx(120)
    assert refused(Traced, file=drawing(two)).startswith("line: ")


def test_back_of_the_seat_may_lie_on_any_side_of_the_drawing():
    up, left = seat(LEANING), seat(LEANING, back="left")
    assert left.contour().width == pytest.approx(up.contour().height)
    assert left.contour().area == pytest.approx(up.contour().area)


def test_partner_is_the_drawing_seen_from_below():
    outline = seat(LEANING)
    assert outline.partner() == seat(LEANING, turned_over=True)
    mirrored = {-place(outline, name).conjugate() for name in corners(outline)}
    there = [place(outline.partner(), name) for name in corners(outline.partner())]
    assert all(min(abs(one - other) for other in mirrored) < 1e-9 for one in there)


def test_both_halves_may_be_made_alike():
    contour = seat(LEANING, symmetrical=True).contour()
    for along in (0.1, 0.2, 0.3, 0.4):
        point = contour.point_at(along * contour.length)
        other = -point.conjugate()
        assert contour.segments[contour.nearest(other)].distance(other) < 1e-6


def test_joints_of_a_trace_stay_where_the_trace_has_them():
    """They are not found anew on the edges that they have cut already."""
    wedge = Wedge(corner=0).contour()
    ends = [wedge.point_at(wedge.length * i / 400) for i in range(400)]
    path = " L ".join(f"{z.real + 700:.3f} {700 - z.imag:.3f}" for z in ends)
    outline = Traced(file=drawing(f'<path d="M {path} Z"/>', 1400))
    ring = outline.struck()
    for name, at in ring.joints.items():
        assert place(outline, name) == pytest.approx(ring.segments[at].start, abs=1e-9)


@pytest.mark.parametrize(
    ("lines", "wishes", "told"),
    [
        ('<path d="M 50 50 L 450 350 H 50 V 40 L 450 40 Z"/>', {}, "line: the line crosses"),
        (SQUARE, {"line": "steat"}, "line: "),
        (SQUARE, {"ruler_length": 100.0}, "ruler: is missing"),
        (SQUARE, {"ruler": "none", "ruler_length": 100.0}, "ruler: "),
        (SQUARE, {"width": 400.0, "depth": 300.0}, "depth: the size is given by"),
        (SQUARE, {"file_units": "ells"}, "file_units: 'ells' is not known"),
        (SQUARE, {"back": "behind"}, "back: 'behind' is not known"),
        (SQUARE, {"gap": 51.0}, "gap: 51 mm is more than 50 mm"),
        (SQUARE, {"smooth": -1.0}, "smooth: -1 mm is less than 0 mm"),
        (SQUARE, {"corner": 121.0}, "corner: 121° is more than 120°"),
        (SQUARE, {"width": 40.0}, "width: 40 mm is less than 50 mm"),
        ("", {}, "line: the file draws no line"),
    ],
)
def test_what_is_no_trace_of_a_seat_is_refused_by_the_field_that_mends_it(lines, wishes, told):
    assert refused(Traced, file=drawing(lines), **wishes).startswith(told)


def test_unit_that_a_drawing_does_not_say_is_asked_for_by_its_field():
    bare = Found("seat.csv", b"x,y\n" + b"\n".join(b"%d,%d" % (x, x * x) for x in range(5)))
    assert refused(Traced, file=bare).startswith("file_units: ")


def test_file_that_is_no_drawing_is_refused():
    text = Found("seat.txt", b"a round seat")
    assert refused(Traced, file=text).startswith("file: ")
