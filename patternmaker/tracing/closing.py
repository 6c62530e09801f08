"""Loose lines end to end: which of them make a loop, and how wide the gaps between them are."""

from __future__ import annotations

import math
from collections import defaultdict
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.geometry.contour import joined_bounds

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.geometry.segments import Box
    from patternmaker.tracing.sketch import Chain

TOUCHING = 1e-6  # mm; ends that lie closer touch, however small a gap may be
CLOSELY = 1e-3  # of the gap allowed: ends that lie so close are joined before all others
CROWD = 32  # ends about one end that are looked at; more is hatching
STEPS = 2.0  # times the longest step between its points: a drawn line's last step may be as long


class Link(NamedTuple):
    """A line in a row of lines, and whether it is run backwards."""

    chain: Chain
    backwards: bool

    @property
    def start(self) -> complex:
        """Where it begins as it is run."""
        return ends_of(self.chain)[self.backwards]

    @property
    def end(self) -> complex:
        """Where it ends as it is run."""
        return ends_of(self.chain)[not self.backwards]


class Row(NamedTuple):
    """Lines that follow each other.

    Args:
        links: the lines in order.
        closed: whether the last is followed by the first.
    """

    links: tuple[Link, ...]
    closed: bool

    @property
    def name(self) -> str:
        """The name of its first line."""
        return self.links[0].chain.name

    @property
    def gaps(self) -> tuple[float, ...]:
        """How far it is from each line to the next; of a closed row also to the first.

        A line that is closed by itself has none.
        """
        if self.links[0].chain.closed:
            return ()
        links = (*self.links, self.links[0]) if self.closed else self.links
        return tuple(abs(one.end - two.start) for one, two in pairwise(links))

    def scaled(self, factor: float) -> Row:
        """Return it enlarged about the origin."""
        if factor == 1:
            return self
        links = (Link(link.chain.scaled(factor), link.backwards) for link in self.links)
        return Row(tuple(links), self.closed)

    @property
    def bounds(self) -> Box:
        """Its bounding box."""
        return joined_bounds(bounds_of(link.chain) for link in self.links)


def ends_of(chain: Chain) -> tuple[complex, complex]:
    """Return where a line begins and ends."""
    if chain.drawn:
        return chain.points[0], chain.points[-1]
    return chain.segments[0].start, chain.segments[-1].end


def bounds_of(chain: Chain) -> Box:
    """Return the box round a line."""
    if not chain.drawn:
        return joined_bounds(each.bounds for each in chain.segments)
    xs, ys = [point.real for point in chain.points], [point.imag for point in chain.points]
    return min(xs), min(ys), max(xs), max(ys)


def rows(chains: Iterable[Chain], gap: float) -> list[Row]:
    """Return lines put end to end where their ends lie within ``gap`` mm, nearest ends first."""
    chains = list(chains)
    loose = [chain for chain in chains if not chain.closed]
    found = [Row((Link(chain, backwards=False),), closed=True) for chain in chains if chain.closed]
    order = {id(chain): i for i, chain in enumerate(chains)}
    found += [_closed_over(row) for row in _walked(loose, _joined(loose, gap))]
    return sorted(found, key=lambda row: min(order[id(link.chain)] for link in row.links))


def _closed_over(row: Row) -> Row:
    """Return a row of drawn lines closed, if its last step is no longer than others in it."""
    if row.closed or not all(link.chain.drawn for link in row.links):
        return row
    longest = max(
        (abs(b - a) for link in row.links for a, b in pairwise(link.chain.points)), default=0.0
    )
    open_by = abs(row.links[-1].end - row.links[0].start)
    return row._replace(closed=open_by <= STEPS * longest)


def _joined(chains: Sequence[Chain], gap: float) -> dict[int, int]:
    """Return which end is joined to which: end 2 i is the beginning of line i, 2 i + 1 its end."""
    ends = [end for chain in chains for end in ends_of(chain)]
    own = [_is_long(chain, gap) for chain in chains]
    joined: dict[int, int] = {}
    for reach in (max(TOUCHING, CLOSELY * gap), max(TOUCHING, gap)):
        free = [i for i in range(len(ends)) if i not in joined]
        for _, i, j in sorted(_pairs(ends, free, reach)):
            if i not in joined and j not in joined and (i ^ j != 1 or own[i // 2]):
                joined[i], joined[j] = j, i
    return joined


def _is_long(chain: Chain, gap: float) -> bool:
    """Return whether a line is so long that its two ends may be joined."""
    left, front, right, back = bounds_of(chain)
    return math.hypot(right - left, back - front) > 2 * gap


def _pairs(
    ends: Sequence[complex], free: Sequence[int], reach: float
) -> Iterator[tuple[float, int, int]]:
    """Yield the pairs of ends that lie within reach of each other, found through a grid."""
    cells: dict[tuple[int, int], list[int]] = defaultdict(list)
    for i in free:
        cells[_cell(ends[i], reach)].append(i)
    for i in free:
        x, y = _cell(ends[i], reach)
        about = [(x + a, y + b) for a in (-1, 0, 1) for b in (-1, 0, 1)]
        for j in (j for cell in about for j in cells.get(cell, ())[:CROWD]):
            if i < j and (apart := abs(ends[i] - ends[j])) <= reach:
                yield apart, i, j


def _cell(place: complex, size: float) -> tuple[int, int]:
    return math.floor(place.real / size), math.floor(place.imag / size)


def _walked(chains: Sequence[Chain], joined: dict[int, int]) -> Iterator[Row]:
    """Yield each row of joined lines once; open ones from a free end."""
    seen: set[int] = set()
    free = [i for i in range(2 * len(chains)) if i not in joined]
    for first in (*free, *range(0, 2 * len(chains), 2)):
        if first // 2 in seen:
            continue
        links, at = [], first
        while at // 2 not in seen:
            seen.add(at // 2)
            links.append(Link(chains[at // 2], bool(at % 2)))
            at = joined.get(at ^ 1, at)
        yield Row(tuple(links), closed=joined.get(first) is not None)
