"""Where each piece lies on its plate: found by what is drawn, not told by what drew it.

A line of a piece that few drawn lines are as long as gives places where the piece may lie; the
place where most of its lines are found is the one. So one line that was changed hides no piece.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections import defaultdict
from dataclasses import dataclass, field
from statistics import median
from typing import TYPE_CHECKING

import numpy as np

from patternmaker.checking.bodies import SHARES
from patternmaker.checking.kinds import kinds_of
from patternmaker.checking.plane import moved

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.checking.bodies import Body, ModelLine, Wanted
    from patternmaker.checking.plane import Distances, Points
    from patternmaker.checking.sheets import Plate
    from patternmaker.pattern.piece import LineKind

NEAR = 0.25  # mm; a drawn line this near in length and place is taken for a line of the model
FAR = 25.0  # mm; one that was changed is looked for no further off
QUARTERS = (1, 1j, -1, -1j)
LEAST = 0.3  # of the lines of a body; where fewer are found it does not lie
MOST_TRIED, MOST_ANCHORS = 48, 8


@dataclass(frozen=True, eq=False)
class Drawn:
    """A stroke of a plate, unclipped, in the plate's places."""

    plate: int
    stroke: int
    kind: LineKind
    points: Points

    def __post_init__(self) -> None:
        steps = np.concatenate([[0.0], np.cumsum(np.abs(np.diff(self.points)))])
        object.__setattr__(self, "stops", steps)
        marks = np.interp(np.array(SHARES) * steps[-1], steps, np.arange(len(steps)))
        low = np.minimum(marks.astype(int), len(steps) - 2) if len(steps) > 1 else [0, 0, 0]
        part = marks - low
        after = self.points[np.minimum(np.asarray(low) + 1, len(self.points) - 1)]
        inner = self.points[low] * (1 - part) + after * part
        object.__setattr__(self, "inner", tuple(complex(each) for each in inner))

    stops: Distances = field(init=False)
    inner: tuple[complex, ...] = field(init=False)

    @property
    def length(self) -> float:
        """Its length."""
        return float(self.stops[-1])

    @property
    def start(self) -> complex:
        """Where it begins."""
        return complex(self.points[0])

    @property
    def end(self) -> complex:
        """Where it ends."""
        return complex(self.points[-1])

    @property
    def alongs(self) -> Distances:
        """The share of the way along it at each of its points."""
        return self.stops / (self.length or 1.0)

    def marks(self, *, backward: bool) -> tuple[complex, ...]:
        """Return where it begins, three places along it, and where it ends."""
        places = (self.start, *self.inner, self.end)
        return places[::-1] if backward else places


@dataclass(frozen=True)
class Placing:
    """Where a body lies: its plate, its turn, its shift."""

    plate: int
    turn: complex
    shift: complex

    def back(self, points: Points) -> Points:
        """Return places of the plate as those of the body."""
        return np.asarray((points - self.shift) / self.turn, np.complex128)


@dataclass(frozen=True, eq=False)
class Pair:
    """A line of a body and the stroke that draws it, if there is one."""

    line: ModelLine
    drawn: Drawn | None
    backward: bool = False


@dataclass(frozen=True, eq=False)
class Found:
    """A body as it was found, or None for its place."""

    body: Body
    placing: Placing | None
    pairs: tuple[Pair, ...]


def drawn_on(plates: Sequence[Plate]) -> Iterator[Drawn]:
    """Yield every stroke of every plate that draws a line of a piece."""
    for number, plate in enumerate(plates):
        layer = plate.first.pattern
        points = moved(layer.ink.points, layer.matrix)
        for stroke, kind in kinds_of(layer.ink).items():
            yield Drawn(number, stroke, kind, points[layer.ink.part(stroke)])


class Finder:
    """Finds bodies among strokes, each stroke for one body only."""

    def __init__(self, strokes: Iterable[Drawn]) -> None:
        self.free: dict[Drawn, None] = dict.fromkeys(strokes)
        by_kind: dict[LineKind, list[Drawn]] = defaultdict(list)
        self._at: dict[tuple[int, LineKind, int, int], list[tuple[Drawn, bool]]] = defaultdict(list)
        for each in self.free:
            by_kind[each.kind].append(each)
            for backward in (False, True):
                begin = each.marks(backward=backward)[0]
                self._at[each.plate, each.kind, *_cell(begin)].append((each, backward))
        self._by_length = {
            kind: sorted(group, key=lambda each: each.length) for kind, group in by_kind.items()
        }

    def all_of(self, wanted: Sequence[Wanted]) -> list[Found]:
        """Return pieces as they lie on paper, each whole or as its ends.

        Those of most lines choose first: the lines of one may be some of another's.
        """
        bodies = [body for each in wanted for body in self._printed(each)]
        order = sorted(range(len(bodies)), key=lambda i: -len(bodies[i].lines))
        placed = {i: self.found(bodies[i]) for i in order}
        return [self.completed(placed[i]) for i in range(len(bodies))]

    def _printed(self, wanted: Wanted) -> tuple[Body, ...]:
        """Return a piece as it was printed: as its ends, if more of those is found than of it."""
        if not wanted.ends:
            return (wanted.whole,)
        of_ends = self._share(wanted.ends)
        if of_ends == 1.0 or of_ends > self._share((wanted.whole,)):
            return wanted.ends
        return (wanted.whole,)

    def _share(self, bodies: Sequence[Body]) -> float:
        """Return which share of the lines of some bodies is found."""
        return sum(self._best(each)[0] for each in bodies) / sum(len(each.lines) for each in bodies)

    def found(self, body: Body) -> Found:
        """Return a body as it lies on paper, and keep its strokes from other bodies."""
        _, placing = self._best(body)
        if placing is None:
            return Found(body, None, tuple(Pair(line, None) for line in body.lines))
        return self._claimed(body, placing)

    def _best(self, body: Body) -> tuple[int, Placing | None]:
        """Return where the most lines of a body are found, and how many those are."""
        best: tuple[int, Placing | None] = (0, None)
        lines = sorted(body.lines, key=lambda line: -line.shape.length)
        for placing in self._placings(body):
            least = max(best[0] + 1, math.ceil(LEAST * len(lines)))
            count = self._count(lines, placing, least)
            if count >= least:
                best = count, placing
            if count == len(lines):
                break
        return best

    def _count(self, lines: Sequence[ModelLine], placing: Placing, least: int) -> int:
        """Return how many lines are found where they should lie, none if fewer than ``least``."""
        missed = 0
        for line in lines:
            missed += self._on(line, placing) is None
            if missed > len(lines) - least:
                return 0
        return len(lines) - missed

    def _placings(self, body: Body) -> Iterator[Placing]:
        """Yield where a body may lie, by its lines that the fewest strokes are as long as."""
        ranked = sorted(
            ((self._as_long_as(line), line) for line in body.lines),
            key=lambda pair: (len(pair[0]), -pair[1].shape.length),
        )
        for candidates, line in [pair for pair in ranked if pair[0]][:MOST_ANCHORS]:
            places = line.marks
            for drawn in candidates[:MOST_TRIED]:
                for backward in (False, True):
                    yield from _fits(places, drawn, backward=backward)

    def _as_long_as(self, line: ModelLine) -> list[Drawn]:
        group, length = self._by_length.get(line.kind, []), line.shape.length
        low = bisect_left(group, length - NEAR, key=lambda each: each.length)
        high = bisect_right(group, length + NEAR, key=lambda each: each.length)
        return [each for each in group[low:high] if each in self.free]

    def _on(self, line: ModelLine, placing: Placing) -> tuple[Drawn, bool] | None:
        """Return the free stroke that draws a line of a body that lies so."""
        places = [each * placing.turn + placing.shift for each in line.marks]
        x, y = _cell(places[0])
        for i in (x - 1, x, x + 1):
            for j in (y - 1, y, y + 1):
                for drawn, backward in self._at.get((placing.plate, line.kind, i, j), ()):
                    marks = drawn.marks(backward=backward)
                    if drawn in self.free and _near(marks, places):
                        return drawn, backward
        return None

    def _claimed(self, body: Body, placing: Placing) -> Found:
        """Return a body with its strokes, its place put right by all of them together."""
        pairs = []
        for line in body.lines:
            found = self._on(line, placing)
            if found:
                del self.free[found[0]]
            pairs.append(Pair(line, *found) if found else Pair(line, None))
        offs = [
            mark - place * placing.turn
            for pair in pairs
            if pair.drawn
            for mark, place in zip(
                pair.drawn.marks(backward=pair.backward), pair.line.marks, strict=True
            )
        ]
        shift = complex(median(o.real for o in offs), median(o.imag for o in offs))
        return Found(body, Placing(placing.plate, placing.turn, shift), tuple(pairs))

    def completed(self, found: Found) -> Found:
        """Return a body with the strokes added that draw its other lines, though not rightly."""
        if found.placing is None:
            return found
        pairs = [pair if pair.drawn else self._changed(pair, found.placing) for pair in found.pairs]
        return Found(found.body, found.placing, tuple(pairs))

    def _changed(self, pair: Pair, placing: Placing) -> Pair:
        """Return the free stroke of its kind that lies closest to a line, if one lies near."""
        shape = pair.line.shape
        best: tuple[float, Drawn | None] = (FAR, None)
        for drawn in self.free:
            if (drawn.plate, drawn.kind) == (placing.plate, pair.line.kind):
                places = np.array(drawn.marks(backward=False))
                off = float(np.median(shape.nearest(placing.back(places))))
                off += min(FAR, abs(drawn.length - shape.length)) / 2
                best = min(best, (off, drawn), key=lambda each: each[0])
        if best[1]:
            del self.free[best[1]]
        return Pair(pair.line, best[1])


def _cell(point: complex) -> tuple[int, int]:
    return round(point.real), round(point.imag)


def _near(marks: Sequence[complex], places: Sequence[complex]) -> bool:
    return all(abs(a - b) < NEAR for a, b in zip(marks, places, strict=True))


def _fits(places: Sequence[complex], drawn: Drawn, *, backward: bool) -> Iterator[Placing]:
    """Yield the ways in which a body may lie so that a line of it lies on a stroke."""
    marks = drawn.marks(backward=backward)
    for turn in QUARTERS:
        shift = marks[0] - places[0] * turn
        if _near(marks, [place * turn + shift for place in places]):
            yield Placing(drawn.plate, turn, shift)
