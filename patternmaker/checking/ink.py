"""Strokes as points close enough together that no bend between two of them is missed."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from patternmaker.checking.plane import MM, Points, inside
from patternmaker.checking.tokens import Unreadable

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from patternmaker.checking.content import Content, Stroke

STEP = 5.0 / MM  # units between two points of a line
EDGE = 0.01 / MM  # units; a line along the edge of a window is seen
FURTHEST = 1e6  # units, 350 m
MOST_POINTS = 20_000_000  # 100 km of lines
SAG = 0.002 / MM  # units that a curve may stray from its chords


def spread(stroke: Stroke) -> Points:
    """Return points along a stroke, every vertex among them, in units."""
    if max(abs(point) for piece in stroke.pieces for point in piece) > FURTHEST:
        raise Unreadable("its drawing reaches further than any paper")
    parts = [_points(np.array(piece)) for piece in stroke.pieces]
    first = np.array(stroke.pieces[0][:1])
    return np.concatenate([first, *(part[1:] for part in parts)])


def _points(controls: Points) -> Points:
    count = math.ceil(float(np.abs(np.diff(controls)).sum()) / STEP) or 1
    if len(controls) == 2:
        return np.asarray(np.linspace(controls[0], controls[1], count + 1), np.complex128)
    bend = float(np.abs(np.diff(controls, 2)).max())
    count = max(4, count, math.ceil(math.sqrt(0.75 * bend / SAG)))  # 6 bend / 8 n^2 = SAG
    t = np.linspace(0.0, 1.0, count + 1)
    a, b, c, d = controls
    u = 1 - t
    return np.asarray(u**3 * a + 3 * u * u * t * b + 3 * u * t * t * c + t**3 * d, np.complex128)


@dataclass(frozen=True, eq=False)
class Ink:
    """All the strokes of a stream as points, one after another.

    Args:
        points: in units.
        begins: the index of the first point of each stroke, and past that of the last.
        strokes: as they were drawn.
    """

    points: Points
    begins: NDArray[np.int64]
    strokes: tuple[Stroke, ...]

    @classmethod
    def of(cls, content: Content) -> Ink:
        """Return the ink of a stream.

        Raises:
            Unreadable: if there is more of it than there can be.
        """
        parts, count = [], 0
        for stroke in content.strokes:
            parts.append(spread(stroke))
            count += len(parts[-1])
            if count > MOST_POINTS:
                raise Unreadable("its drawing is longer than any pattern")
        begins = np.concatenate([[0], np.cumsum([len(part) for part in parts])]).astype(np.int64)
        points = np.concatenate(parts) if parts else np.array([], np.complex128)
        return cls(points, begins, tuple(content.strokes))

    @cached_property
    def owners(self) -> NDArray[np.int64]:
        """The index of the stroke that each point belongs to."""
        return np.repeat(np.arange(len(self.strokes)), np.diff(self.begins))

    @cached_property
    def orders(self) -> NDArray[np.int64]:
        """When the stroke of each point is drawn."""
        return np.array([stroke.order for stroke in self.strokes], np.int64)[self.owners]

    @cached_property
    def within(self) -> NDArray[np.bool_]:
        """Whether each point lies inside what its stroke was clipped to when it was drawn."""
        found = np.ones(len(self.points), np.bool_)
        for i, stroke in enumerate(self.strokes):
            if stroke.clip:
                part = self.part(i)
                found[part] = inside(self.points[part], stroke.clip, EDGE)
        return found

    def part(self, stroke: int) -> slice:
        """Return where the points of a stroke stand."""
        return slice(int(self.begins[stroke]), int(self.begins[stroke + 1]))
