"""Covers pulled over slip seats, checked against a published figure, a textbook and shapely."""

import math

import pytest
import shapely

from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.piece import LineKind
from tests.covers.pulled import pulled, top
from tests.covers.seats import CLOTH, IN, brief, guides

CHORDS = 1e-4  # mm; how far chords may stray


def ring(path) -> shapely.LinearRing:
    return shapely.LinearRing([(p.real, p.imag) for p in path.chords(CHORDS)])


def test_leather_is_cut_three_inches_larger_all_round():
    """Woodworker's Journal 32-6: 3 in all round a slip seat; how they are made up is ours.

    1 in of padding, a board of 1/2 in, 1 1/2 in turned under; no take-up.
    """
    board = RoundedRectangle(width=17 * IN, depth=15 * IN, corner=1 * IN).contour()
    untaken = Material(kind="upholstery leather", take_up=0)
    pattern = pulled(brief(board, untaken, wrap=1.5 * IN), drop=None, foam=IN, board=IN / 2)
    cut = top(pattern).cut
    assert (cut.width / IN, cut.height / IN) == pytest.approx((17 + 6, 15 + 6))


def test_take_up_makes_it_smaller_by_its_rate_on_what_is_pulled_alone():
    """The same with 1/4 in per 10 in on 20 by 18 in: 1/2 in and 9/20 in less."""
    board = RoundedRectangle(width=17 * IN, depth=15 * IN, corner=1 * IN).contour()
    pattern = pulled(brief(board, Material(take_up=0.025), wrap=1.5 * IN), drop=1.5 * IN)
    cut = top(pattern).cut
    assert (cut.width / IN, cut.height / IN) == pytest.approx((23 - 0.5, 21 - 0.45))


def test_cut_edge_of_a_rounded_seat_by_steiner():
    """L + 2 pi d, A + L d + pi d^2 (course note "parallel curve to a convex closed plane curve").

    500 x 450 mm with corners of 60: L 1796.99111843, A 221909.733553; d = 62 + 25.
    """
    seat = RoundedRectangle(width=500, depth=450, corner=60).contour()
    cut = top(pulled(brief(seat, CLOTH, wrap=25), drop=62)).cut
    assert cut.length == pytest.approx(1796.99111843 + math.tau * 87)
    assert cut.area == pytest.approx(221909.733553 + 1796.99111843 * 87 + math.pi * 87**2)


def test_fullness_is_the_turning_times_the_side():
    """By shapely: the lines on the board and on the top's edge, and the arcs that pleats take up.

    A pleat of an arc of radius R and turn t takes t s / n: t (R + s) must come back to t R.
    """
    piece = top(pulled(brief(Circle(diameter=300).contour(), CLOTH, wrap=25), drop=50))
    fold, board = (ring(g.path) for g in guides(piece, LineKind.FOLD))
    pleats = [g.path for g in guides(piece, LineKind.PLEAT)]
    sides = [path for path in pleats if path.length > 60]
    feet = [board.intersection(_line(path)) for path in sides]
    taken = [
        400 * math.asin(a.distance(b) / 400) for a, b in zip(feet[::2], feet[1::2], strict=True)
    ]
    assert board.length - fold.length == pytest.approx(math.tau * 50, abs=1e-3)
    assert sum(taken) == pytest.approx(math.tau * 50, abs=1e-2)
    assert taken == pytest.approx([taken[0]] * len(taken), abs=1e-3)


def _line(path) -> shapely.LineString:
    ends = path.segments[0].start, path.segments[-1].end
    return shapely.LineString([(p.real, p.imag) for p in ends])


def test_square_cornered_cover_is_the_sheet_of_an_open_box():
    """The open box of the calculus books: squares of side h cut from the corners of a sheet.

    A seat of 300 x 200, sides of 50 and no wrap: 400 x 300 less four squares of 50, which the
    seam allowance makes 12 smaller each way; the sewn legs are the box's upright edges.
    """
    pattern = pulled(
        brief(RoundedRectangle(width=300, depth=200, corner=0).contour(), wrap=0), drop=50
    )
    assert top(pattern).cut.area == pytest.approx(400 * 300 - 4 * 38**2)
    assert [seam.a.length for seam in pattern.seams] == pytest.approx([50] * 4)
