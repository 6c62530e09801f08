"""A contour cut into slices by upright lines: exact, whatever its edges do at the lines.

The ring is cut where it crosses a line; each part of it then belongs to one slice, an edge that
runs along a line to the slice that it bounds. Runs of such parts (chains) are closed along the
lines, upward on the right of a slice and downward on its left, to where the next chain of the same
slice begins. So a contour that turns inward may give several pieces of one slice.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from dataclasses import dataclass
from itertools import groupby, pairwise
from typing import TYPE_CHECKING

from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Arc, Line, radius_over

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.geometry.segments import Segment

ON_LINE = 1e-6  # mm; a place this close to a line lies on it

STRAIGHT = 1e-3  # mm; an arc that rises less is a straight line


@dataclass(frozen=True)
class Chain:
    """A run of the contour itself: it begins ``begin`` mm along it."""

    path: Path
    begin: float


@dataclass(frozen=True)
class Link:
    """A straight run along a cutting line, by the line's number from the left, zero first."""

    line: int
    path: Path

    @property
    def lowest(self) -> float:
        """Its lower end."""
        return self.path.bounds[1]

    def bulged(self, rise: float) -> Path:
        """Return the arc over it that rises ``rise`` mm to its right, out of its slice."""
        (line,) = self.path.segments
        way, chord = line.tangent(), line.length
        if rise < STRAIGHT:
            return self.path
        radius = radius_over(chord / 2, rise)
        centre = line.point(chord / 2) + (radius - rise) * 1j * way
        return Path((Arc(centre, line.start, 4 * math.atan2(2 * rise, chord)),))


@dataclass(frozen=True)
class Slice:
    """One closed piece between two lines: chains and links in order, anticlockwise."""

    number: int
    sides: tuple[Chain | Link, ...]

    @property
    def contour(self) -> Contour:
        """Its outline."""
        return Contour(tuple(each for side in self.sides for each in side.path.segments))

    @property
    def links(self) -> tuple[Link, ...]:
        """Its sides along the lines."""
        return tuple(side for side in self.sides if isinstance(side, Link))


@dataclass(frozen=True)
class _Run:
    """A chain while the slices are put together: its slice, and those before and after it."""

    chain: Chain
    number: int
    before: int
    after: int

    @property
    def start(self) -> complex:
        return self.chain.path.segments[0].start

    @property
    def end(self) -> complex:
        return self.chain.path.segments[-1].end


def sliced(contour: Contour, lines: Sequence[float]) -> tuple[Slice, ...]:
    """Return the slices of a contour between upright lines at some x, from left to right.

    Several pieces of one slice come in order from the highest to the lowest.
    """
    runs = list(_runs(contour, lines))
    if len(runs) == 1:
        return (Slice(runs[0].number, (runs[0].chain,)),)
    slices = [each for number in range(len(lines) + 1) for each in _closed(runs, number)]
    return tuple(sorted(slices, key=lambda each: (each.number, -each.contour.bounds[3])))


def _runs(contour: Contour, lines: Sequence[float]) -> Iterator[_Run]:
    """Yield the chains of a contour in order."""
    parts = [
        (_slice_of(part, lines), part, contour.stops[i] + at)
        for i, edge in enumerate(contour.segments)
        for part, at in _parts(edge, lines)
    ]
    first = next((i for i in range(len(parts)) if parts[i][0] != parts[i - 1][0]), 0)
    ring = [*parts[first:], *parts[:first]]
    groups = [list(group) for _, group in groupby(ring, lambda part: part[0])]
    for i, group in enumerate(groups):
        chain = Chain(Path(tuple(part for _, part, _ in group)), group[0][2])
        after = groups[(i + 1) % len(groups)][0][0]
        yield _Run(chain, group[0][0], groups[i - 1][0][0], after)


def _parts(edge: Segment, lines: Sequence[float]) -> Iterator[tuple[Segment, float]]:
    """Yield the parts of an edge between the lines that it crosses, and where each begins."""
    left, low, right, high = edge.bounds
    met = (
        edge.along(point)
        for x in lines[bisect_left(lines, left) : bisect_left(lines, right)]
        for point in crossings(edge, Line(complex(x, low - 1), complex(x, high + 1)))
    )
    inner = sorted(at for at in met if ON_LINE < at < edge.length - ON_LINE)
    places = [0.0, *(b for a, b in pairwise([0.0, *inner]) if b - a > ON_LINE), edge.length]
    if len(places) == 2:
        yield edge, 0.0
        return
    for begin, end in pairwise(places):
        yield edge.cut(begin, end), begin


def _slice_of(part: Segment, lines: Sequence[float]) -> int:
    """Return the number of the slice in which a part lies; one along a line, that it bounds."""
    middle = part.point(part.length / 2).real
    nearest = min(range(len(lines)), key=lambda i: abs(lines[i] - middle))
    if abs(lines[nearest] - middle) <= ON_LINE:
        return nearest + (part.tangent(part.length / 2).imag < 0)
    return bisect_left(lines, middle)


def _closed(runs: Iterable[_Run], number: int) -> Iterator[Slice]:
    """Yield each piece of one slice."""
    mine = [run for run in runs if run.number == number]
    while mine:
        first = here = mine[0]
        sides: list[Chain | Link] = []
        while True:
            sides.append(here.chain)
            there = _next(mine, here)
            line = max(here.after, number) - 1
            sides.append(Link(line, Path.through(here.end, there.start)))
            mine.remove(there)
            here = there
            if here is first:
                break
        yield Slice(number, tuple(sides))


def _next(runs: Sequence[_Run], here: _Run) -> _Run:
    """Return the chain that begins next along the line on which one ends."""
    up = here.after > here.number
    way = 1 if up else -1
    starts = [run for run in runs if run.before == here.after]
    beyond = [run for run in starts if way * (run.start - here.end).imag > -ON_LINE]
    return min(beyond or starts, key=lambda run: way * (run.start - here.end).imag)
