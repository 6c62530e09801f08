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
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH
from patternmaker.geometry.contour import MEETS, MITRE_LIMIT, Contour
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Arc, Line, Segment, turned

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

SLACK = 1e-5  # mm; a part this much closer than the distance asked for still keeps it
SPECK = 1e-7  # mm; a shorter segment is none
HALVINGS = 30  # of the search for the largest step that fits: to a millionth of a seat


def grown(contour: Contour, by: float) -> Contour:
    """Return the parallel of ``contour`` ``by`` mm further out; see `Contour.grown`."""
    if by == 0:
        return contour
    if contour.is_convex and (by > 0 or contour.tightest > -by):
        return _moved(contour, by)
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
        "", f"a line {{value}} {way} the edge closes up on itself", value=abs(by), limit=abs(fits),
        mend=f"the most that fits is {LENGTH.show(math.floor(abs(fits) * 10) / 10, None)}",
        show=LENGTH.show,
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
        before, turn = edges[i - 1], contour.corners[i]
        tip = list(_corner(before.end, edge.start, contour.segments[i].tangent(), turn, by))
        half = (len(tip) + 1) // 2
        chain += tip[:half]
        begins.append(len(chain))
        chain += [*tip[half:], edge]
    return _closed_from(chain, begins[0]), [
        (place - begins[0]) % len(chain) for place in begins
    ]  # fmt: skip


def _closed_from(chain: list[Segment], first: int) -> list[Segment]:
    return [*chain[first:], *chain[:first]]


def _corner(
    end: complex, start: complex, way: complex, turn: float, by: float
) -> Iterator[Segment]:
    """Yield the lines that join two moved edges at a corner, tip in the middle."""
    if not turn:
        return
    if turn * by < 0:  # the moved edges cross; the loop is cut away later
        yield Line(end, start)
        return
    tangent_before = way * turned(-turn)
    reach = abs(by) * math.tan(abs(turn) / 2)
    if 1 / math.cos(turn / 2) <= MITRE_LIMIT:
        tip = end + reach * tangent_before
        yield from (Line(end, tip), Line(tip, start))
        return
    reach = abs(by) * math.tan(abs(turn) / 4)
    one, two = end + reach * tangent_before, start - reach * way
    middle = (one + two) / 2
    yield from (Line(end, one), Line(one, middle), Line(middle, two), Line(two, start))


def _trimmed(contour: Contour, by: float) -> Contour | None:
    """Return the parallel with its loops cut away, or None if it closes up or falls apart."""
    chain = [each for each in _chain(contour, by)[0] if each.length > SPECK]
    kept = [
        part for part in _parts(chain) if _keeps_away(contour, part.point(part.length / 2), abs(by))
    ]
    rings = [ring for ring in _rings(kept) if _runs_left(ring)]
    return _with_joints(rings[0], contour, by) if len(rings) == 1 else None


def _parts(chain: Sequence[Segment]) -> Iterator[Segment]:
    """Yield the chain cut at each place where it crosses or touches itself."""
    cuts: list[list[float]] = [[0.0, each.length] for each in chain]
    for i, one in enumerate(chain):
        for j in range(i):
            for point in crossings(one, chain[j]):
                cuts[i].append(one.along(point))
                cuts[j].append(chain[j].along(point))
    for each, stops in zip(chain, cuts, strict=True):
        stops.sort()
        for begin, end in itertools.pairwise(stops):
            if end - begin > SPECK:
                yield each.cut(begin, end)


def _keeps_away(contour: Contour, point: complex, distance: float) -> bool:
    return all(each.distance(point) >= distance - SLACK for each in contour.segments)


def _rings(parts: list[Segment]) -> Iterator[list[Segment]]:
    """Yield closed rings put together from parts, each part used once."""
    loose = list(parts)
    while loose:
        ring = [loose.pop(0)]
        while abs(ring[-1].end - ring[0].start) > 10 * MEETS:
            after = next((p for p in loose if abs(p.start - ring[-1].end) <= 10 * MEETS), None)
            if after is None:
                break
            loose.remove(after)
            ring.append(after)
        else:
            yield ring


def _runs_left(ring: list[Segment]) -> bool:
    return sum(each.moment for each in ring) > 0


def _with_joints(ring: list[Segment], contour: Contour, by: float) -> Contour:
    """Return the ring with the joints of ``contour``, cut where a joint falls within an edge."""
    places: dict[str, tuple[int, float]] = {}
    for name in contour.joints:
        along = contour.station(name)
        point = contour.point_at(along) + by * contour.outward(along)
        index = min(range(len(ring)), key=lambda i: ring[i].distance(point))
        places[name] = index, _nearest(ring[index], point)
    return _cut_at(ring, places)


def _nearest(segment: Segment, point: complex) -> float:
    """Return the length along ``segment`` of its point nearest to ``point``."""
    if isinstance(segment, Arc):
        way = point - segment.centre
        if way and segment.faces(way):
            return segment.along(point)
        nearer_start = abs(point - segment.start) <= abs(point - segment.end)
        return 0.0 if nearer_start else segment.length
    return min(segment.length, max(0.0, segment.along(point)))


def _cut_at(ring: list[Segment], places: dict[str, tuple[int, float]]) -> Contour:
    edges: list[Segment] = []
    joints: dict[str, int] = {}
    for i, each in enumerate(ring):
        stops = sorted((along, name) for name, (index, along) in places.items() if index == i)
        begin = 0.0
        for along, name in stops:
            if along - begin > SPECK:
                edges.append(each.cut(begin, along))
                begin = along
            joints[name] = len(edges)
        if each.length - begin > SPECK:
            edges.append(each.cut(begin, each.length))
    first = next(iter(places), None)
    shift = joints[first] % len(edges) if first else 0
    return Contour(
        tuple(_closed_from(edges, shift)),
        {name: (index - shift) % len(edges) for name, index in joints.items()},
    )
