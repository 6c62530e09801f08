"""Which pages are sheets, and how they lie once they are joined: by their numbers and crosses."""

from __future__ import annotations

import re
from collections import defaultdict, deque
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from itertools import combinations
from typing import TYPE_CHECKING

from patternmaker.checking.kinds import kinds_of
from patternmaker.checking.plane import MM, moved

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.checking.ink import Ink
    from patternmaker.checking.leaf import Layer, Leaf

IS_SHEET = re.compile(r"sheet (\d{1,6}) of (\d{1,6})")
IS_NUMBER = re.compile(r"\d{1,6}")
LARGEST_CROSS = 25.0  # mm
ON_THE_LINE = 0.5  # mm from a join's line to the middle of its crosses
MOST_AT_ONCE = 64  # strokes with the same middle; a cross has two
HALVED = 0.01  # mm; strokes of a cross halve each other as closely


@dataclass(frozen=True)
class Sheet:
    """A page that says that it is a sheet, the layer that shows the pattern, and the rest."""

    leaf: Leaf
    number: int
    of: int
    pattern: Layer
    joins: dict[int, tuple[complex, ...]]


def sheet_of(leaf: Leaf) -> Sheet | None:
    """Return a page as a sheet, or None if it doesn't say that it is one or shows no piece."""
    told = [match for words, _ in leaf.words if (match := IS_SHEET.fullmatch(words.text))]
    if not told or not leaf.layers:
        return None
    pattern = max(leaf.layers, key=lambda layer: len(kinds_of(layer.ink)))
    number, of = map(int, told[-1].groups())
    return Sheet(leaf, number, of, pattern, _joins(leaf, pattern))


def _joins(leaf: Leaf, pattern: Layer) -> dict[int, tuple[complex, ...]]:
    """Return the crosses of each join, by the number beside its line."""
    marks = [_Marks.of(layer) for layer in leaf.layers if layer is not pattern]
    lines = [line for each in marks for line in each.lines]
    crosses = [cross for each in marks for cross in each.crosses]
    found: dict[int, tuple[complex, ...]] = {}
    for words, key in leaf.words:
        if lines and key != pattern.key and IS_NUMBER.fullmatch(words.text):
            middle = words.at + words.size * complex(0.28 * len(words.text), 0.35)
            line = min(lines, key=lambda line: _off(line, middle))
            on_it = [cross for cross in crosses if _off(line, cross) < ON_THE_LINE]
            found[int(words.text)] = tuple(_once(on_it))
    return found


@dataclass(frozen=True)
class _Marks:
    """The lines of joins and the crosses on them, of one layer, mm on the page."""

    lines: list[tuple[complex, complex]]
    crosses: list[complex]

    @classmethod
    def of(cls, layer: Layer) -> _Marks:
        lines, crosses = marks_of(layer.ink)
        return cls(
            [(moved(a, layer.matrix), moved(b, layer.matrix)) for a, b in lines],
            [moved(cross, layer.matrix) for cross in crosses],
        )


@lru_cache(maxsize=4096)
def marks_of(ink: Ink) -> tuple[list[tuple[complex, complex]], list[complex]]:
    """Return the ends of every dashed line, and the middles of the crosses, in units."""
    lines, strokes = [], []
    for stroke in ink.strokes:
        if len(stroke.pieces) != 1 or len(stroke.pieces[0]) != 2:
            continue
        a, b = stroke.pieces[0]
        if stroke.pen.dashes and abs(b - a) * MM > LARGEST_CROSS:
            lines.append((a, b))
        elif not stroke.pen.dashes and 0 < abs(b - a) * MM < LARGEST_CROSS:
            strokes.append((a, b))
    return lines, list(_crosses(strokes))


def _crosses(strokes: list[tuple[complex, complex]]) -> Iterator[complex]:
    """Yield the middles of crosses: two strokes of one length that halve each other squarely."""
    near: dict[tuple[int, int], list[tuple[complex, complex]]] = defaultdict(list)
    for a, b in strokes:
        middle = (a + b) / 2 * MM
        near[round(middle.real), round(middle.imag)].append((a, b))
    for group in near.values():
        for (a, b), (c, d) in combinations(group[:MOST_AT_ONCE], 2):
            halve = abs(a + b - c - d) / 2 * MM < HALVED
            alike = abs(abs(b - a) - abs(d - c)) * MM < HALVED
            if halve and alike and abs(((b - a) / (d - c)).real) < 1e-3:
                yield (a + b + c + d) / 4


def _off(line: tuple[complex, complex], point: complex) -> float:
    """Return how far a point lies from a straight line, or from its nearer end."""
    start, end = line
    share = ((point - start) / (end - start)).real
    return abs(point - start - min(1.0, max(0.0, share)) * (end - start))


def _once(points: list[complex]) -> list[complex]:
    """Return points in order, those that coincide once."""
    kept: list[complex] = []
    for point in points:
        if all(abs(point - other) > 0.01 for other in kept):
            kept.append(point)
    return sorted(kept, key=lambda point: (round(point.real, 0), round(point.imag, 0)))


@dataclass
class Plate:
    """Sheets that show the same drawing, laid together.

    Args:
        sheets: in the order of their numbers.
        shifts: what brings each sheet's places to those of the plate.
        apart: how far the crosses of each join lie from each other.
        loose: the numbers of sheets that no join leads to; they lie where their drawing does.
    """

    sheets: list[Sheet]
    shifts: dict[int, complex] = field(default_factory=dict)
    apart: dict[int, float] = field(default_factory=dict)
    loose: list[int] = field(default_factory=list)

    @cached_property
    def first(self) -> Sheet:
        """The sheet that the others are laid to."""
        return self.sheets[0]

    @classmethod
    def joined(cls, sheets: list[Sheet]) -> Plate:
        """Lay sheets together, each to those that it shares a join with."""
        plate = cls(sheets)
        waiting = {sheet.number: sheet for sheet in sheets}
        at: dict[int, list[Sheet]] = defaultdict(list)
        for sheet in sheets:
            for number in sheet.joins:
                at[number].append(sheet)
        while waiting:
            start = next(iter(waiting.values()))
            plate._start(start)
            reached = deque([waiting.pop(start.number)])
            while reached:
                here = reached.popleft()
                beside = [(there, number) for number in here.joins for there in at[number]]
                for there, number in beside:
                    if there.number in waiting and plate._lay(here, there, number):
                        reached.append(waiting.pop(there.number))
        for number, pair in at.items():
            plate._measure(number, pair)
        return plate

    def _start(self, sheet: Sheet) -> None:
        """Lay a sheet that no other leads to: where its drawing lies, if it is not the first."""
        if sheet is self.first:
            self.shifts[sheet.number] = 0j
            return
        self.loose.append(sheet.number)
        here, there = (moved(0j, each.pattern.matrix) for each in (self.first, sheet))
        self.shifts[sheet.number] = here - there

    def _lay(self, here: Sheet, there: Sheet, number: int) -> bool:
        one, two = here.joins[number], there.joins[number]
        if len(one) != len(two) or not one:
            return False
        steps = [a - b for a, b in zip(one, two, strict=True)]
        self.shifts[there.number] = self.shifts[here.number] + sum(steps) / len(steps)
        return True

    def _measure(self, number: int, pair: list[Sheet]) -> None:
        if len(pair) != 2:
            return
        one, two = ([p + self.shifts[s.number] for p in s.joins[number]] for s in pair)
        if len(one) == len(two) and one:
            self.apart[number] = max(abs(a - b) for a, b in zip(one, two, strict=True))


def plates_of(sheets: list[Sheet]) -> list[Plate]:
    """Return sheets by the drawing that they show, joined."""
    found: dict[int, list[Sheet]] = defaultdict(list)
    for sheet in sorted(sheets, key=lambda sheet: sheet.number):
        found[sheet.pattern.key].append(sheet)
    return [Plate.joined(each) for each in found.values()]


def join_faults(sheets: list[Sheet]) -> Iterator[str]:
    """Yield what keeps sheets from being joined: numbers that lack, or stand on one sheet only."""
    counts = [sheet.of for sheet in sheets]
    for count in sorted(set(counts)):
        there = {sheet.number for sheet in sheets}
        if missing := [n for n in range(1, min(count, 10**5) + 1) if n not in there]:
            yield f"sheet {_listed(missing)} of {count} is missing: print the whole file"
    at: dict[int, int] = defaultdict(int)
    for sheet in sheets:
        for number in sheet.joins:
            at[number] += 1
    if lone := sorted(number for number, count in at.items() if count != 2):
        yield f"join {_listed(lone)} is not on exactly two sheets"


def _listed(numbers: list[int]) -> str:
    shown = ", ".join(map(str, numbers[:12]))
    return f"{shown} and {len(numbers) - 12} more" if len(numbers) > 12 else shown
