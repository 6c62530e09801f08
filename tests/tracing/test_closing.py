"""Loose lines put end to end."""

import itertools
import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternmaker.geometry.segments import Arc, Line, Segment
from patternmaker.tracing.closing import Row, rows
from patternmaker.tracing.sketch import Chain

BENCH: tuple[Segment, ...] = (
    Line(-200 - 100j, 200 - 100j),
    Arc(200, 200 - 100j, math.pi),
    Line(200 + 100j, -200 + 100j),
    Arc(-200, -200 + 100j, math.pi),
)


def chain(name: str, *segments: Segment) -> Chain:
    return Chain(name, segments=segments)


def ends(row: Row) -> list[tuple[complex, complex]]:
    return [(link.start, link.end) for link in row.links]


@given(st.permutations(range(4)), st.lists(st.booleans(), min_size=4, max_size=4))
def test_lines_and_arcs_in_any_order_and_direction_make_one_loop(order, backwards):
    pieces = [
        each.reversed() if back else each for each, back in zip(BENCH, backwards, strict=True)
    ]
    (row,) = rows([chain(f"line {i}", pieces[i]) for i in order], gap=1.0)
    assert row.closed
    assert max(row.gaps) < 1e-9
    assert sorted(link.chain.name for link in row.links) == [f"line {i}" for i in range(4)]


def test_gap_is_closed_up_to_the_one_allowed():
    lines = [chain("a", Line(0, 100)), chain("b", Line(100.5, 50 + 80j)),
             chain("c", Line(50 + 80j, 0))]  # fmt: skip
    assert [row.closed for row in rows(lines, gap=0.6)] == [True]
    assert [row.closed for row in rows(lines, gap=0.4)] == [False]
    assert rows(lines, gap=0.6)[0].gaps == (0.5, 0, 0)


def test_of_two_ends_in_reach_the_nearer_is_joined():
    lines = [chain("a", Line(0, 100)), chain("far", Line(100.9, 200)),
             chain("near", Line(100.2, 100 + 90j))]  # fmt: skip
    joined = next(row for row in rows(lines, gap=1.0) if len(row.links) == 2)
    assert {link.chain.name for link in joined.links} == {"a", "near"}


def test_very_short_line_does_not_bite_its_own_tail():
    lines = [chain("a", Line(0, 100)), chain("tiny", Line(100, 100.5)),
             chain("b", Line(100.5, 50 + 80j)), chain("c", Line(50 + 80j, 0))]  # fmt: skip
    (row,) = rows(lines, gap=1.0)
    assert row.closed
    assert len(row.links) == 4


def test_closed_lines_stay_by_themselves_in_the_order_of_the_file():
    square = Chain("square", points=(0, 100, 100 + 100j, 100j), closed=True)
    circle = Chain("circle", segments=(Arc(0, 40, math.tau),), closed=True)
    found = rows([square, chain("loose", Line(0, 60)), circle], gap=1.0)
    assert [(row.name, row.closed, row.gaps) for row in found] == [
        ("square", True, ()), ("loose", False, ()), ("circle", True, ()),
    ]  # fmt: skip


def test_string_of_points_is_closed_over_a_step_like_its_others():
    square = Chain("points", points=(0, 100, 100 + 100j, 100j))
    assert rows([square], gap=1.0)[0].closed
    half = Chain("half", points=tuple(complex(math.cos(i), math.sin(i)) * 100 for i in range(3)))
    many = Chain("arc", points=tuple(complex(i, i * i / 90) for i in range(90)))
    assert rows([half], gap=1.0)[0].closed
    assert not rows([many], gap=1.0)[0].closed


def test_thousands_of_pieces_are_joined():
    spots = [complex(math.cos(math.tau * i / 5000), math.sin(math.tau * i / 5000)) * 300
             for i in range(5000)]  # fmt: skip
    sides = [Line(*pair) for pair in itertools.pairwise([*spots, spots[0]])]
    random.Random(1).shuffle(sides)
    (row,) = rows([chain(f"{i}", side) for i, side in enumerate(sides)], gap=1.0)
    assert row.closed
    assert len(row.links) == 5000


def test_row_is_enlarged_whole():
    (row,) = rows([chain("a", Line(0, 100)), chain("b", Line(50 + 80j, 100))], gap=1.0)
    assert ends(row.scaled(2)) == [(2 * a, 2 * b) for a, b in ends(row)]
    assert row.scaled(1) is row
    assert row.bounds == pytest.approx((0, 0, 100, 80))
