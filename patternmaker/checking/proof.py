"""The proof of scale as it was drawn: the triangle of the overview, the bars of each sheet."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from patternmaker.checking.plane import moved
from patternmaker.units import MM_PER_INCH, Unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.checking.content import Stroke
    from patternmaker.checking.ink import Ink
    from patternmaker.checking.leaf import Leaf

LEVEL = 0.05  # of a direction; a mark that was slanted is still known as one
ALIKE = 2e-3  # of a length; the sides of a 3-4-5 triangle, the ticks of a bar
INCH = MM_PER_INCH
METRIC = 120.0, 90.0, 100.0  # mm: the triangle's level and upright side, a bar
ACROSS, UP, SLOPE = "across", "up", "on the slope"


@dataclass(frozen=True)
class Proof:
    """A length that was drawn for proof: on which page, how long it is and should be, mm."""

    page: int
    way: str
    drawn: float
    true: float

    @property
    def off(self) -> float:
        """How much too long it is, mm."""
        return self.drawn - self.true

    @property
    def scale(self) -> float:
        """By how much it was enlarged."""
        return self.drawn / self.true


def proofs_of(leaf: Leaf, unit: Unit) -> Iterator[Proof]:
    """Yield every proof of scale on a page."""
    level, upright, bar = (4 * INCH, 3 * INCH, 4 * INCH) if unit is Unit.IN else METRIC
    for layer in leaf.layers:
        for kind, start, end in marks_of(layer.ink):
            step = moved(end, layer.matrix) - moved(start, layer.matrix)
            if kind == "slope":
                yield Proof(leaf.number, SLOPE, abs(step), abs(complex(level, upright)))
                continue
            across = abs(step.real) > abs(step.imag)
            true = bar if kind == "bar" else level if across else upright
            yield Proof(leaf.number, ACROSS if across else UP, abs(step), true)


def has_triangle(leaf: Leaf) -> bool:
    """Return whether a page has a proof triangle on it."""
    return any(kind == "side" for layer in leaf.layers for kind, *_ in marks_of(layer.ink))


@lru_cache(maxsize=4096)
def marks_of(ink: Ink) -> tuple[tuple[str, complex, complex], ...]:
    """Return the bars and the sides of triangles of a layer, in units."""
    found: list[tuple[str, complex, complex]] = []
    for stroke in ink.strokes:
        if any(len(piece) != 2 for piece in stroke.pieces):
            continue
        sides = [b - a for a, b in stroke.pieces]
        if _is_bar(sides):
            found.append(("bar", *_ends(stroke, 2)))
        elif _is_triangle(sides):
            names = ("side", "slope", "side")
            found += [(name, *_ends(stroke, i)) for i, name in enumerate(names)]
    return tuple(found)


def _ends(stroke: Stroke, i: int) -> tuple[complex, complex]:
    return stroke.pieces[i][0], stroke.pieces[i][-1]


def _is_bar(sides: list[complex]) -> bool:
    """Return whether lines are a bar with a tick at either end, in one stroke."""
    if len(sides) != 5:
        return False
    tick, half, bar, other, last = sides
    ticks = _same(tick, -2 * half) and _same(last, -2 * other)
    return ticks and abs((half / bar).real) < LEVEL and 10 * abs(tick) < abs(bar)


def _is_triangle(sides: list[complex]) -> bool:
    """Return whether lines are a triangle of 3, 5 and 4 parts, both short sides upright or level.

    Its shape may have been stretched; so only the right angle is looked for, and the size.
    """
    if len(sides) != 3 or abs(sum(sides)) > LEVEL * abs(sides[1]):
        return False
    upright, level = sides[0], sides[2]
    square = abs((upright / level).real) < LEVEL
    stands = min(abs(upright.real), abs(upright.imag)) < LEVEL * abs(upright)
    return square and stands and 0.6 < abs(upright / level) < 0.9 and abs(level) > 200


def _same(one: complex, two: complex) -> bool:
    return abs(one - two) < ALIKE * abs(two)
