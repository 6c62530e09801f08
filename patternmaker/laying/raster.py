"""Shapes on a fine mesh of squares: which squares they reach into, and which they fill."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Ints = NDArray[np.int64]
    Squares = NDArray[np.bool_]
    Ring = NDArray[np.complex128]

ON_LINE = 1e-9  # squares; a ring no further from a line of the mesh runs along it


@dataclass(frozen=True)
class Raster:
    """A closed ring on a mesh that begins at the lower left corner of its box.

    Args:
        ring: its vertices, its box beginning at the origin.
        step: the side of a square.
    """

    ring: Ring
    step: float

    @cached_property
    def size(self) -> tuple[int, int]:
        """How many rows and columns of squares its box reaches into."""
        right, top = self.ring.real.max(), self.ring.imag.max()
        return _squares(top / self.step), _squares(right / self.step)

    @cached_property
    def edge(self) -> Squares:
        """The squares through whose inside the ring runs; exact."""
        found = np.zeros(self.size, dtype=bool)
        middles = _middles(self.ring / self.step)
        middles = middles[_off_line(middles.real) & _off_line(middles.imag)]
        rows = np.clip(middles.imag.astype(int), 0, self.size[0] - 1)
        columns = np.clip(middles.real.astype(int), 0, self.size[1] - 1)
        found[rows, columns] = True
        return found

    @cached_property
    def filled(self) -> Squares:
        """The squares whose middle lies inside the ring."""
        begin = self.ring / self.step - 0.5j
        edge, share = _crossed(begin.imag, np.roll(begin, -1).imag)
        x = begin.real[edge] + share * (np.roll(begin, -1) - begin).real[edge]
        y = begin.imag[edge] + share * (np.roll(begin, -1) - begin).imag[edge]
        turns = np.zeros((self.size[0], self.size[1] + 1), dtype=np.int64)
        columns = np.clip(np.ceil(x - 0.5).astype(int), 0, self.size[1])
        np.add.at(turns, (np.clip(np.rint(y).astype(int), 0, self.size[0] - 1), columns), 1)
        return np.asarray(turns.cumsum(axis=1)[:, :-1] % 2 == 1)

    @property
    def reached(self) -> Squares:
        """The squares that have any part inside the ring."""
        return self.filled | self.edge

    @property
    def inside(self) -> Squares:
        """The squares that lie inside the ring whole."""
        return self.filled & ~self.edge


def _off_line(values: Floats) -> Squares:
    """Return which values are not on a line of the mesh."""
    return np.asarray(np.abs(values - np.rint(values)) > ON_LINE)


def _squares(extent: float) -> int:
    return max(1, int(np.ceil(extent - 1e-9)))


def _crossed(begin: Floats, end: Floats) -> tuple[Ints, Floats]:
    """Return where edges cross whole numbers: the edge, and the share of the way along it.

    A number counts as crossed by an edge from below it to it or beyond, and the same downward, so
    that a vertex on a line is counted once where the ring passes, twice or not where it turns back.
    """
    low, high = np.minimum(begin, end), np.maximum(begin, end)
    first = np.floor(low).astype(np.int64) + 1
    count = np.floor(high).astype(np.int64) + 1 - first
    edge = np.repeat(np.arange(len(begin)), count)
    number = np.arange(count.sum()) - np.repeat(count.cumsum() - count, count) + first[edge]
    return edge, (number - begin[edge]) / (end - begin)[edge]


def _middles(ring: Ring) -> Ring:
    """Return a point in the middle of each part of a ring between two lines of the mesh."""
    after = np.roll(ring, -1)
    every = np.arange(len(ring))
    cuts = [_crossed(ring.real, after.real), _crossed(ring.imag, after.imag)]
    edge = np.concatenate([every, every, *(cut[0] for cut in cuts)])
    share = np.concatenate([np.zeros(len(ring)), np.ones(len(ring)), *(cut[1] for cut in cuts)])
    order = np.lexsort((share, edge))
    edge, share = edge[order], share[order]
    same = np.flatnonzero(edge[1:] == edge[:-1])
    middle = (share[same] + share[same + 1]) / 2
    return np.asarray(ring[edge[same]] + middle * (after - ring)[edge[same]])


def tally(squares: Squares) -> Ints:
    """Return how many squares are set below and to the left of each corner of the mesh."""
    rows, columns = squares.shape
    sums = np.zeros((rows + 1, columns + 1), dtype=np.int64)
    squares.cumsum(axis=0, dtype=np.int64).cumsum(axis=1, out=sums[1:, 1:])
    return sums


def counted(sums: Ints, columns: tuple[Ints, Ints], rows: tuple[Ints, Ints]) -> Ints:
    """Return how many squares are set between columns and rows, for all pairs of them.

    Args:
        sums: as ``tally`` gives them.
        columns: first column, and the one after the last, of each range.
        rows: the same of rows.
    """
    most = sums.shape[1] - 1, sums.shape[0] - 1
    left, right = (np.clip(each, 0, most[0]) for each in columns)
    low, high = (np.clip(each, 0, most[1]) for each in rows)
    right, high = np.maximum(left, right), np.maximum(low, high)
    upper, lower = sums[high], sums[low]
    return np.asarray(upper[:, right] - upper[:, left] - lower[:, right] + lower[:, left])


def spread(squares: Squares, shifts: Sequence[tuple[int, int]]) -> Squares:
    """Return squares with all those that are shifted from them by rows and columns.

    The mesh is wider by the largest shift, on each side.
    """
    wide = max(max(abs(up), abs(across)) for up, across in shifts)
    rows, columns = squares.shape
    found = np.zeros((rows + 2 * wide, columns + 2 * wide), dtype=bool)
    for up, across in shifts:
        found[wide + up : wide + up + rows, wide + across : wide + across + columns] |= squares
    return found


def shifts_within(reach: float) -> list[tuple[int, int]]:
    """Return the shifts that move a square no further than ``reach`` squares."""
    return [(up, across) for up, across in _shifts(reach) if math.hypot(up, across) <= reach + 1e-9]


def shifts_nearer(apart: float, steps: tuple[float, float]) -> list[tuple[int, int]]:
    """Return the shifts of an oblong, so wide and high, that leave less than ``apart`` between."""
    found = []
    for up, across in _shifts(apart / min(steps) + 1):
        gaps = max(0, abs(across) - 1) * steps[0], max(0, abs(up) - 1) * steps[1]
        if math.hypot(*gaps) < apart - 1e-9:
            found.append((up, across))
    return found


def _shifts(reach: float) -> Iterator[tuple[int, int]]:
    whole = int(reach + 1e-9)
    span = range(-whole, whole + 1)
    return itertools.product(span, span)
