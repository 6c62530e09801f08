"""Exact parallels of a contour.

Every edge is moved by the same distance; at corners the moved edges are lengthened to the tip of
the mitre. Where that can't fold over (a convex contour grown, or shrunk by less than its tightest
radius: Blaschke's rolling theorem) the result stands. Elsewhere the moved chain may cross itself:
it is cut at every crossing, and the parts that came closer to the contour than the distance asked
for are dropped.
"""

from __future__ import annotations

import itertools
import math
from bisect import bisect_left
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.errors import Refusal
from patternmaker.facts import HAIR, LENGTH
from patternmaker.geometry.contour import SMOOTH, Contour, is_blunt
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Line, Segment, cross, turned
from patternmaker.geometry.validity import crossing

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.geometry.segments import Box

SLACK = 1e-7  # mm; a part this much closer than the distance asked for still keeps it
SPECK = 1e-7  # mm; a shorter segment is none
JOINED = 1e-6  # mm; parts whose ends lie closer follow each other
SLIVER = 1e-3  # mm2; a ring that holds less is what cutting leaves behind
HALVINGS = 20  # of the search for the largest step that fits: to a millionth of what was asked
HALF_TURN = math.pi - 1e-6  # radians; sides that run against each other
FINE = 0.1  # mm; the largest step that fits is told to this, rounded down


def grown(contour: Contour, by: float) -> Contour:
    """Return the parallel of ``contour`` ``by`` mm further out; see `Contour.grown`."""
    if by == 0:
        return contour
    if contour.is_convex and (by > 0 or contour.tightest > -by):
        return _moved(contour, by)
    if (where := crossing(contour)) is not None:
        says = f"the edge crosses itself at x {where.real:.1f}, y {where.imag:.1f} mm"
        raise Refusal("", says, mend="draw it so that it runs round once")
    parallel = _trimmed(contour, by)
    if parallel is None:
        raise _closes_up(contour, by)
    return parallel


def _closes_up(contour: Contour, by: float) -> Refusal:
    fits, fails = 0.0, by
    for _ in range(HALVINGS):
        middle = (fits + fails) / 2
        fits, fails = (fits, middle) if _trimmed(contour, middle) is None else (middle, fails)
    way = "inside" if by < 0 else "outside"
    return Refusal(
        "", f"a line {{value}} {way} the edge closes up on itself; the most that fits is {{limit}}",
        value=abs(by), limit=math.floor(abs(fits) / FINE) * FINE, show=LENGTH.show,
    )  # fmt: skip


def _moved(contour: Contour, by: float) -> Contour:
    """Return the moved chain of a contour that can't fold over."""
    edges, begins = _chain(contour, by)
    joints = {name: begins[index] for name, index in contour.joints.items()}
    return Contour(tuple(edges), joints)


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
        chain += [*tip[half:], edge]
    first = begins[0]
    return [*chain[first:], *chain[:first]], [place - first for place in begins]


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


class Part(NamedTuple):
    """What is left between two cuts of an edge of the moved chain."""

    place: int
    edge: Segment


def _trimmed(contour: Contour, by: float) -> Contour | None:
    """Return the parallel with its loops cut away, or None if it closes up or falls apart."""
    chain, begins = _chain(contour, by)
    close = JOINED + abs(by) * SMOOTH
    parts = [
        part for part in _parts(chain)
        if _keeps_away(contour, part.edge.point(part.edge.length / 2), abs(by))
    ]  # fmt: skip
    rings = [ring for ring in _rings(parts, close) if abs(_area(ring)) > SLIVER]
    if len(rings) != 1 or _area(rings[0]) < 0 or _touches(rings[0]):
        return None
    places = [part.place for part in rings[0]]
    if _closes_over(contour, by, begins, places):
        return None
    joints = {
        name: bisect_left(places, begins[index]) % len(places)
        for name, index in contour.joints.items()
    }
    return Contour(tuple(part.edge for part in rings[0]), joints)


def _touches(ring: list[Part]) -> bool:
    """Return whether a ring meets itself anywhere but where one part follows another."""
    starts = [part.edge.start for part in ring if part.edge.length > HAIR]
    twice = any(abs(one - two) <= SPECK for one, two in itertools.combinations(starts, 2))
    again = [part for part in _parts([part.edge for part in ring]) if part.edge.length > HAIR]
    return twice or any(one.place == two.place for one, two in itertools.pairwise(again))


def _closes_over(contour: Contour, by: float, begins: list[int], places: list[int]) -> bool:
    """Return whether the parallel skips a bay or a tongue whose two sides have met.

    A corner or an arc too tight for the parallel is skipped as well, but turns by less than a
    half turn: its sides draw together gradually, and the parallel follows them as far as it can.
    """
    side = math.copysign(1.0, -by)
    gaps = [bisect_left(places, begin) for begin in begins]
    over = bisect_left(gaps, len(places))  # the last vertices stand in the gap before the first
    run, here = 0.0, -1
    for i in [*range(over, len(gaps)), *range(over)]:
        skipped, here = gaps[i] % len(places) == here, gaps[i] % len(places)
        run = max(0.0, run + side * contour.segments[i - 1].sweep) if skipped else 0.0
        run = max(0.0, run + side * contour.corners[i])
        if run > HALF_TURN:
            return True
    return False


def _parts(chain: Sequence[Segment]) -> Iterator[Part]:
    """Yield the chain cut at each place where it crosses or touches itself."""
    edges = [(place, each, each.bounds) for place, each in enumerate(chain) if each.length > SPECK]
    cuts = {place: [0.0, each.length] for place, each, _ in edges}
    for (i, one, box), (j, two, other) in itertools.combinations(edges, 2):
        if _apart(box, other):
            continue
        for point in crossings(one, two):
            cuts[i].append(one.along(point))
            cuts[j].append(two.along(point))
    for place, each, _ in edges:
        for begin, end in itertools.pairwise(sorted(cuts[place])):
            if end - begin > SPECK:
                yield Part(place, each.cut(begin, end))


def _apart(one: Box, two: Box) -> bool:
    """Return whether two boxes lie more than a hair's breadth apart."""
    return (
        one[0] > two[2] + HAIR or two[0] > one[2] + HAIR
        or one[1] > two[3] + HAIR or two[1] > one[3] + HAIR
    )  # fmt: skip


def _keeps_away(contour: Contour, point: complex, distance: float) -> bool:
    return all(each.distance(point) >= distance - SLACK for each in contour.segments)


def _rings(parts: list[Part], close: float) -> Iterator[list[Part]]:
    """Yield closed rings put together from parts, each part used once.

    Where a loop too small to be told from the parallel is left at a crossing, the ring changes
    over to the other edge, and the loop becomes a ring of its own: a sliver.
    """
    loose = list(parts)
    while loose:
        ring = [loose.pop(0)]
        while abs(ring[-1].edge.end - ring[0].edge.start) > close:
            last = ring[-1]
            ways = [
                (part.place == last.place, abs(part.edge.start - last.edge.end), i)
                for i, part in enumerate(loose)
                if abs(part.edge.start - last.edge.end) <= close
            ]
            if not ways:
                break
            ring.append(loose.pop(min(ways)[2]))
        else:
            yield ring


def _area(ring: list[Part]) -> float:
    closing = cross(ring[-1].edge.end, ring[0].edge.start) / 2
    return math.fsum((*(part.edge.moment for part in ring), closing))
