"""Parts of two contours that face each other."""

import cmath
import math

import pytest

from patternmaker.errors import Refusal
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.pairing import Corner, Pair, Run, paired
from patternmaker.geometry.segments import Line
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.oval import Oval
from patternmaker.outlines.regular_polygon import RegularPolygon
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from tests.covers.seats import kite, with_bay

ROUND = Circle(diameter=300).contour()
SQUARE = RoundedRectangle(width=300, depth=300, corner=0).contour()
SOFT = RoundedRectangle(width=400, depth=300, corner=40).contour()


def length(run: Run) -> float:
    return 0.0 if isinstance(run, complex) else run.length


def ends(run: Run) -> tuple[complex, complex]:
    return (run, run) if isinstance(run, complex) else (run.start, run.end)


def sound(pairs: list[Pair], one: Contour, two: Contour) -> None:
    """Assert that pairs go round both contours without a gap, alike in direction all along."""
    for k, contour in enumerate((one, two)):
        runs = [pair[k] for pair in pairs]
        assert math.fsum(map(length, runs)) == pytest.approx(contour.length)
        for here, there in zip(runs, [*runs[1:], runs[0]], strict=True):
            assert ends(here)[1] == pytest.approx(ends(there)[0], abs=1e-4)
    for upper, lower in pairs:
        if isinstance(upper, complex) or isinstance(lower, complex):
            continue
        for share in (0.0, 0.5, 1.0):
            ways = upper.tangent(share * upper.length), lower.tangent(share * lower.length)
            assert abs(cmath.phase(ways[0] / ways[1])) < 1e-6


@pytest.mark.parametrize("outline", [ROUND, SOFT, SQUARE, kite(), with_bay(corner=15),
                                     with_bay(), Oval(width=400, depth=330).contour()])  # fmt: skip
@pytest.mark.parametrize("step", [-12.0, 0.0, 12.0])
def test_parallel_contours_are_paired_all_round(outline, step):
    other = outline.grown(step)
    sound(paired(outline, other), outline, other)


def test_points_of_parallel_contours_face_each_other_squarely():
    for upper, lower in paired(SOFT, SOFT.grown(30)):
        assert not isinstance(upper, complex)
        assert not isinstance(lower, complex)
        for share in (0.0, 0.3, 1.0):
            top, foot = (run.point(share * run.length) for run in (upper, lower))
            assert foot - top == pytest.approx(-30j * upper.tangent(share * upper.length))


def test_oval_faces_a_rectangle_s_sides_from_four_places():
    """An oval has the direction of a side in one place only; the rest of it faces the corners."""
    oval = Oval(width=300, depth=200).contour()
    board = RoundedRectangle(width=400, depth=300, corner=50).contour()
    pairs = paired(oval, board)
    sound(pairs, oval, board)
    sides = [(upper, lower) for upper, lower in pairs if isinstance(lower, Line)]
    assert [upper for upper, _ in sides if isinstance(upper, complex)]
    assert sum(length(lower) for _, lower in sides) == pytest.approx(2 * (300 + 200))


def test_sharp_corner_faces_all_of_a_round_one():
    """The frustum between a square and a rounded square has a quarter of a cone at each corner."""
    soft = RoundedRectangle(width=400, depth=400, corner=60).contour()
    pairs = paired(SQUARE, soft)
    sound(pairs, SQUARE, soft)
    corners = [lower for upper, lower in pairs if isinstance(upper, complex)]
    assert sum(map(length, corners)) == pytest.approx(2 * math.pi * 60)
    back = [upper for upper, lower in paired(soft, SQUARE) if isinstance(lower, complex)]
    assert sum(map(length, back)) == pytest.approx(2 * math.pi * 60)


def test_base_that_begins_further_round_or_less_far_is_turned_to_its_seat():
    for turn in (20, 100, -20, -100, 170):
        other = ROUND.grown(20).mapped(cmath.rect(1, math.radians(turn)))
        sound(paired(ROUND, other), ROUND, other)
    for quarter in (1j, -1j, -1):
        other = SQUARE.grown(20).mapped(quarter)
        sound(paired(SQUARE, other), SQUARE, other)


def test_rounding_that_is_left_of_a_turn_faces_nothing():
    board = RegularPolygon().contour().grown(25).mapped(1j)
    sound(paired(ROUND, board), ROUND, board)


def test_lines_that_run_on_straight_are_faced_as_one():
    halves = [upper for upper, _ in paired(SQUARE, SQUARE)]
    assert sorted(map(length, halves)) == pytest.approx([150, 150, 300, 300, 300])


def test_bay_over_a_base_without_one_is_refused():
    with pytest.raises(Refusal, match="its edge does not follow the seam near"):
        paired(with_bay(corner=15), SQUARE)
    with pytest.raises(Refusal, match="one turns there where the other does not"):
        paired(SQUARE, with_bay(corner=15))


def test_edge_that_turns_once_more_is_refused():
    """A loop in the other edge: it turns twice round."""
    twice = Compass(0j).arc(-50j, 2 * math.pi).arc(-50j, 2 * math.pi).closed()
    with pytest.raises(Refusal, match="give a smaller inset or outset"):
        paired(ROUND, twice)


def test_corner_begins_and_ends_where_it_is():
    assert Corner(3 + 4j, 1.0).start == Corner(3 + 4j, 1.0).end == 3 + 4j
