"""Exact parallels of a contour.

Every edge is moved by the same distance; at corners the moved edges are lengthened to the tip of
the mitre. Where that can't fold over (a convex contour grown, or shrunk by less than its tightest
radius: Blaschke's rolling theorem) the result stands. Elsewhere the moved chain may cross itself,
and is trimmed: corners and arcs too tight for the parallel vanish where their two sides run into
each other, gradually. What closes up is refused: where two sides meet face to face, or where
nothing is left.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from itertools import accumulate, compress, groupby
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH
from patternmaker.geometry.contour import Contour, is_blunt
from patternmaker.geometry.segments import Arc, Line, Segment, turned
from patternmaker.geometry.validity import crossing

if TYPE_CHECKING:
    from collections.abc import Iterator

HALF_TURN = math.pi - 1e-6  # radians; sides that run against each other
NOTHING = 1e-9  # mm; a shorter step is none
FINE = 0.1  # mm; the largest step that fits is told to this, rounded down
ROUNDING = 1e-6  # of that step; a neck that is a whole number of them wide is not one wider
FOLDED = 1e-5  # mm; an arc that has passed its centre, and is too near by this, is none


def grown(contour: Contour, by: float) -> Contour:
    """Return the parallel of ``contour`` ``by`` mm further out; see `Contour.grown`."""
    if abs(by) < NOTHING:
        return contour
    if contour.is_convex and (by > 0 or contour.tightest > -by) and (moved := _moved(contour, by)):
        return moved
    if (where := crossing(contour)) is not None:
        says = f"the edge crosses itself at x {where.real:.1f}, y {where.imag:.1f} mm"
        raise Refusal("", says, mend="draw it so that it runs round once")
    from patternmaker.geometry.necks import narrowest

    neck = narrowest(contour, by)
    parallel = None if neck else _trimmed(contour, by)
    if parallel is None:
        raise _closes_up(contour, by, neck or abs(by))
    return parallel


def _closes_up(contour: Contour, by: float, neck: float) -> Refusal:
    """Return the refusal, with the largest step that fits; ``neck`` is one that does not."""
    way = "inside" if by < 0 else "outside"
    steps = _steps_that_fit(contour, math.copysign(FINE, by), neck)
    return Refusal(
        "", f"a line {{value}} {way} the edge closes up on itself; the most that fits is {{limit}}",
        value=abs(by), limit=round(steps * FINE, 1), show=LENGTH.show,
    )  # fmt: skip


def _steps_that_fit(contour: Contour, step: float, neck: float) -> int:
    """Return how many steps fit; mostly as many as the neck is wide, less by what its tips take."""
    fails = math.ceil(neck / FINE - ROUNDING)
    fits, middle = 0, fails - 1
    while fails - fits > 1:
        if _trimmed(contour, middle * step):
            fits = middle
        else:
            fails = middle
        middle = (fits + fails) // 2
    return fits


def _moved(contour: Contour, by: float) -> Contour | None:
    """Return the moved chain of a contour that can't fold over, or None if hardly any is left.

    An arc that has come down to its centre, but for the rounding of figures, has no direction.
    """
    chain, begins = _chain(contour, by)
    kept = [not isinstance(edge, Arc) or edge.radius > FOLDED for edge in chain]
    edges, before = list(compress(chain, kept)), list(accumulate(kept, initial=0))
    if not edges:
        return None
    joints = {name: before[begins[index]] % len(edges) for name, index in contour.joints.items()}
    moved = Contour(tuple(edges), joints)
    return moved if moved.area > FOLDED * moved.length else None


def _chain(contour: Contour, by: float) -> tuple[list[Segment], list[int]]:
    """Return the moved edges joined at their corners, and the place of each old vertex in them."""
    edges = [each.grown(by) for each in contour.segments]
    chain: list[Segment] = []
    begins = []
    for i, edge in enumerate(edges):
        way, turn = contour.segments[i].tangent(), contour.corners[i]
        tip = list(_corner(edges[i - 1].end, edge.start, way, turn, by))
        half = (len(tip) + 1) // 2
        chain += tip[:half]
        begins.append(len(chain))
        chain += tip[half:]
        if not _folded(contour.segments[i], by):
            chain.append(edge)
    first = begins[0]
    return [*chain[first:], *chain[:first]], [place - first for place in begins]


def _folded(edge: Segment, by: float) -> bool:
    """Return whether an arc moved past its centre is too near to its own far end all along."""
    if edge.sweep * by >= 0 or not isinstance(edge, Arc) or edge.radius >= abs(by):
        return False
    beyond = 1 - edge.radius / abs(by)
    return edge.radius * beyond * (1 - math.cos(min(math.pi, abs(edge.sweep) / 2))) > FOLDED


def _corner(
    end: complex, start: complex, way: complex, turn: float, by: float
) -> Iterator[Segment]:
    """Yield the lines that join two moved edges at a corner, tip in the middle."""
    if not turn:
        return
    if turn * by < 0:  # the moved edges cross; the loop is cut away later
        yield Line(end, start)
        return
    way_before = way * turned(-turn)
    if not is_blunt(turn):
        tip = end + abs(by) * math.tan(abs(turn) / 2) * way_before
        yield from (Line(end, tip), Line(tip, start))
        return
    reach = abs(by) * math.tan(abs(turn) / 4)
    one, two = end + reach * way_before, start - reach * way
    middle = (one + two) / 2
    yield from (Line(end, one), Line(one, middle), Line(middle, two), Line(two, start))


def _trimmed(contour: Contour, by: float) -> Contour | None:
    """Return the parallel with its loops cut away, or None if it closes up or falls apart."""
    from patternmaker.geometry import trimming
    from patternmaker.geometry.nearness import Bodies, Tips

    chain, begins = _chain(contour, by)
    parts = [trimming.Part(i, each) for i, each in enumerate(chain)]
    bodies, tips = Bodies.of(contour.segments), Tips.of(contour, by)
    rings = trimming.rings(parts, bodies, tips, abs(by))
    if len(rings) != 1 or trimming.area(rings[0]) < 0 or trimming.touches(rings[0]):
        return None
    places = [part.place for part in rings[0]]
    if _closes_over(contour, by, begins, places):
        return None
    joints = {
        name: bisect_left(places, begins[index]) % len(places)
        for name, index in contour.joints.items()
    }
    return Contour(tuple(part.edge for part in rings[0]), joints)


def _closes_over(contour: Contour, by: float, begins: list[int], places: list[int]) -> bool:
    """Return whether the parallel skips a bay or a tongue that the tips of its corners have shut.

    The tips reach further than the distance, so they may meet where no two sides do. A bay that
    has corners, and somewhere in it turns by a half turn, is taken to be shut once it is skipped.
    """
    side = math.copysign(1.0, -by)
    gaps = [bisect_left(places, begin) for begin in begins]
    over = bisect_left(gaps, len(places))  # the last vertices stand in the gap before the first
    order = [*range(over, len(gaps)), *range(over)]
    skipped = (list(each) for _, each in groupby(order, lambda i: gaps[i] % len(places)))
    return any(
        any(contour.corners[i] * side < 0 for i in each) and _turn(contour, each, side) > HALF_TURN
        for each in skipped
    )


def _turn(contour: Contour, vertices: list[int], side: float) -> float:
    """Return the most by which a contour turns to one side anywhere between some vertices."""
    run = most = 0.0
    for i, vertex in enumerate(vertices):
        run += side * contour.segments[vertex - 1].sweep if i else 0.0
        run = max(0.0, run) + side * contour.corners[vertex]
        run, most = max(0.0, run), max(most, run)
    return most
