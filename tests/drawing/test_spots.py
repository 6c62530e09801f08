"""Letters stand where they cover nothing."""

from itertools import combinations

import pytest

from patternmaker.drawing.measures import Measure, box_round, measures, usual
from patternmaker.drawing.spots import spots
from patternmaker.outlines import SHAPES
from patternmaker.outlines.circle import Circle
from patternmaker.units import Unit

ROUND = Circle(diameter=400).contour()
ROOM = 20 + 20j
WIDE = (-300.0, -300.0, 300.0, 300.0)


def line(begin: complex, end: complex) -> Measure:
    return Measure("A", "width", begin, end, is_radius=False)


def test_letter_of_a_lone_line_stands_in_its_middle():
    assert spots(ROUND, [line(-200, 200)], ROOM, WIDE) == {0: pytest.approx(0)}


def test_letters_of_lines_that_cross_stand_clear_of_the_crossing_on_their_own_lines():
    found = spots(ROUND, [line(-200, 200), line(-200j, 200j)], ROOM, WIDE)
    assert abs(found[0].real) > 10
    assert found[0].imag == 0
    assert abs(found[1].imag) > 10
    assert found[1].real == 0


def test_letter_that_would_hide_its_line_stands_beside_it():
    (found,) = spots(ROUND, [line(0, 8)], ROOM, WIDE).values()
    assert abs(found - 4) > 10


def test_letter_of_a_line_on_the_edge_stands_off_it():
    contour = SHAPES.all["rounded rectangle"](width=400, depth=400, corner=0).contour()  # type: ignore[call-arg]
    (found,) = spots(contour, [line(-200 - 200j, 200 - 200j)], ROOM, WIDE).values()
    assert min(edge.distance(found) for edge in contour.segments) > 10


def test_letter_keeps_off_what_is_to_be_avoided():
    (found,) = spots(ROUND, [line(-200, 200)], ROOM, WIDE, avoid=[0]).values()
    assert abs(found) > 10


@pytest.mark.parametrize("kind", list(SHAPES.all.values()))
def test_no_letter_of_any_shape_covers_another_or_leaves_the_picture(kind):
    if (seat := usual(kind, Unit.MM)) is None:
        return
    contour = seat.contour()
    lines = measures(seat, contour)
    left, bottom, right, top = box_round(contour, lines)
    size = max(right - left, top - bottom) / 25 * (1 + 1j)
    limits = (left - size.real, bottom - size.imag, right + size.real, top + size.imag)
    found = spots(contour, lines, size, limits)
    assert len(found) == len(lines)
    for one, two in combinations(found.values(), 2):
        assert max(abs((one - two).real), abs((one - two).imag)) >= size.real * (1 - 1e-9)
    for spot in found.values():
        assert left - size.real / 2 <= spot.real <= right + size.real / 2
        assert bottom - size.imag / 2 <= spot.imag <= top + size.imag / 2
