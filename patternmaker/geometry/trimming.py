"""Cutting the loops away from a moved chain that crosses itself.

The chain is cut at every crossing; the parts that came closer to the contour than the distance
asked for are dropped, and the others are put together to rings.
"""

from __future__ import annotations

import math
from collections import defaultdict
from itertools import pairwise, product
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from patternmaker.facts import HAIR
from patternmaker.geometry.contour import SMOOTH
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.nearness import JOINED, Bodies, Tips, near
from patternmaker.geometry.segments import Segment, cross

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

SLACK = 1e-7  # mm; a part this much closer than the distance asked for still keeps it
SPECK = 1e-7  # mm; a shorter segment is none
SLIVER = 1e-3  # mm2; a ring that holds less is what cutting leaves behind


class Part(NamedTuple):
    """An edge of the moved chain, or what is left of it between two cuts, and its place there."""

    place: int
    edge: Segment


def rings(chain: Sequence[Part], bodies: Bodies, tips: Tips, distance: float) -> list[list[Part]]:
    """Return the rings of all the parts of a chain that keep their distance.

    Args:
        chain: moved edges, in order; places may be missing.
        bodies: the edges before they were moved.
        tips: the corners that were mitred.
        distance: how far they were moved.
    """
    parts = list(_parts(chain))
    if not parts:
        return []
    middles = np.array([part.edge.point(part.edge.length / 2) for part in parts])
    clear = bodies.clear(middles, np.full(len(parts), distance - SLACK))
    clear &= ~tips.cover(middles, distance - SLACK)
    kept = [part for part, keeps in zip(parts, clear.tolist(), strict=True) if keeps]
    found = _joined(kept, JOINED + distance * SMOOTH)
    return [ring for ring in found if abs(area(ring)) > SLIVER]


def area(ring: Sequence[Part]) -> float:
    """Return the area inside a ring, negative where it runs clockwise."""
    closing = cross(ring[-1].edge.end, ring[0].edge.start) / 2
    return math.fsum((*(part.edge.moment for part in ring), closing))


def touches(ring: Sequence[Part]) -> bool:
    """Return whether a ring meets itself anywhere but where one part follows another."""
    long = [Part(i, part.edge) for i, part in enumerate(ring) if part.edge.length > HAIR]
    again = [part for part in _parts(long) if part.edge.length > HAIR]
    if any(one.place == two.place for one, two in pairwise(again)):
        return True
    spots = _Spots([part.edge.start for part in long], SPECK)
    return any(len(list(spots.near(part.edge.start))) > 1 for part in long)


def _parts(chain: Sequence[Part]) -> Iterator[Part]:
    """Yield the chain cut at each place where it crosses or touches itself."""
    parts = [part for part in chain if part.edge.length > SPECK]
    cuts = _cuts(parts)
    for i, (place, edge) in enumerate(parts):
        if i not in cuts:
            yield Part(place, edge)
            continue
        for begin, end in pairwise(sorted([0.0, *cuts[i], edge.length])):
            if end - begin > SPECK:
                yield Part(place, edge.cut(begin, end))


def _cuts(parts: Sequence[Part]) -> dict[int, list[float]]:
    """Return the lengths along each part at which it meets another, by its index."""
    cuts = defaultdict(list)
    bodies = Bodies.of([part.edge for part in parts])
    boxes = bodies.boxes
    for ones, twos in near(boxes, boxes, HAIR):
        apart = (ones < twos) & ~bodies.run_on(ones, twos) & ~bodies.run_on(twos, ones)
        for i, j in zip(ones[apart].tolist(), twos[apart].tolist(), strict=True):
            one, two = parts[i].edge, parts[j].edge
            for point in crossings(one, two):
                cuts[i].append(one.along(point))
                cuts[j].append(two.along(point))
    return cuts


class _Spots:
    """Points in pigeonholes, to find those near a place."""

    def __init__(self, points: Sequence[complex], close: float) -> None:
        self._points, self._close = points, close
        self._holes: dict[tuple[int, int], list[int]] = defaultdict(list)
        for i, point in enumerate(points):
            self._holes[self._hole(point)].append(i)

    def _hole(self, point: complex) -> tuple[int, int]:
        return math.floor(point.real / self._close), math.floor(point.imag / self._close)

    def near(self, place: complex) -> Iterator[int]:
        """Yield the index of each point not further than ``close`` from a place."""
        x, y = self._hole(place)
        for hole in product((x - 1, x, x + 1), (y - 1, y, y + 1)):
            for i in self._holes.get(hole, ()):
                if abs(self._points[i] - place) <= self._close:
                    yield i


def _joined(parts: Sequence[Part], close: float) -> Iterator[list[Part]]:
    """Yield closed rings put together from parts, each part used once.

    Where a loop too small to be told from the parallel is left at a crossing, the ring changes
    over to the other edge, and the loop becomes a ring of its own: a sliver.
    """
    spots = _Spots([part.edge.start for part in parts], close)
    loose = dict.fromkeys(range(len(parts)))
    while loose:
        first = next(iter(loose))
        ring = [parts[first]]
        del loose[first]
        while abs(ring[-1].edge.end - ring[0].edge.start) > close:
            place, end = ring[-1].place, ring[-1].edge.end
            ways = [
                (parts[i].place == place, abs(parts[i].edge.start - end), i)
                for i in spots.near(end) if i in loose
            ]  # fmt: skip
            if not ways:
                break
            ring.append(parts[min(ways)[2]])
            del loose[min(ways)[2]]
        else:
            yield ring
