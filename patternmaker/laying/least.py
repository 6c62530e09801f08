"""A number of sheets that no laying can beat.

What a sheet shows of different shapes does not overlap, so all that the sheets show of them, what
is shown twice counted twice, is no more than the sheets' area. Of each shape they show at least its
``Need``, whatever the way in which it lies; so the sum of the needs over the area of a sheet is a
bound, and so is the largest number of sheets that one shape takes.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from patternmaker.laying.raster import Raster, counted, shifts_within, spread, tally

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.laying.raster import Ints, Ring, Squares
    from patternmaker.laying.sheeting import Line, Sheeting

FINE = (1.0, 25.4 / 32)  # mm of a square: sheets in mm are whole in the one, in inches in the other
MOST_SHIFTS = 120_000  # squares to a sheet, about
MOST_SQUARES = 1200  # that a shape has at most one way
SPARE = 1e-6  # squares; figures that are whole but for this are taken as whole


class Need(NamedTuple):
    """The least that a shape takes: sheets, and area shown."""

    sheets: int
    area: float


class _Strips(NamedTuple):
    """The squares of each sheet of a row that it shows whatever the shift within a square.

    For each sheet (first axis) and shift by whole squares (second axis): the first square and the
    one after the last; once of all that it shows, once of what no other sheet shows.
    """

    shown: tuple[Ints, Ints]
    own: tuple[Ints, Ints]


def _strips(line: Line, step: float, squares: int) -> _Strips:
    shifts = np.arange(math.ceil(line.pitch / step - SPARE))
    count = math.ceil((squares * step + line.lap) / line.pitch) + 2
    begin = (np.arange(count)[:, None] - 1) * line.pitch / step + shifts[None, :]

    def sure(low: float, high: float) -> tuple[Ints, Ints]:
        first = np.ceil(begin + low / step + 1 - SPARE)
        return first.astype(np.int64), np.floor(begin + high / step + SPARE).astype(np.int64)

    return _Strips(sure(0, line.shows), sure(line.lap, line.pitch))


@dataclass(frozen=True)
class _Shape:
    """A shape ready to be counted: its squares, and the squares just beyond its edge."""

    area: float
    inside: Squares
    beyond: Squares
    step: float

    @classmethod
    def of(cls, ring: Ring, area: float, apart: float, least_step: float) -> _Shape:
        longest = max(ring.real.max(), ring.imag.max())
        step = max(least_step, longest / MOST_SQUARES)
        raster = Raster(ring, step)
        near = spread(raster.inside, shifts_within(apart / 2 / step))
        wide = (near.shape[0] - raster.size[0]) // 2
        return cls(area, np.pad(raster.inside, wide), near & ~np.pad(raster.reached, wide), step)

    def needs(self, sheeting: Sheeting) -> Iterator[Need]:
        """Yield the need as it lies, and turned a quarter."""
        for turns in (0, 1):
            inside, beyond = (np.rot90(each, turns) for each in (self.inside, self.beyond))
            yield self._need(tally(inside), tally(beyond), sheeting)

    def _need(self, inside: Ints, beyond: Ints, sheeting: Sheeting) -> Need:
        rows, columns = (extent - 1 for extent in inside.shape)
        across = _strips(sheeting.columns, self.step, columns)
        up = _strips(sheeting.rows, self.step, rows)
        shape = up.own[0].shape[1], across.own[0].shape[1]
        sheets, shown, around = (np.zeros(shape, dtype=np.int64) for _ in range(3))
        for j, i in np.ndindex(up.own[0].shape[0], across.own[0].shape[0]):
            taken = counted(inside, _at(across.own, i), _at(up.own, j)) > 0
            if taken.any():
                ranges = _at(across.shown, i), _at(up.shown, j)
                sheets += taken
                shown += taken * counted(inside, *ranges)
                around += taken * counted(beyond, *ranges)
        along = _met(inside[-1], across.own)[None, :], _met(inside[:, -1], up.own)[:, None]
        sheets = np.maximum(sheets, np.maximum(*along))
        whole = inside[-1, -1]
        square = self.step * self.step
        area = self.area + (np.maximum(shown - whole, 0) + around) * square
        return Need(max(1, int(sheets.min())), float(area.min()))


def _met(sums: Ints, own: tuple[Ints, Ints]) -> Ints:
    """Return, by shift, in how many columns (or rows) of sheets a shape reaches beyond overlaps.

    Each of them needs a sheet at least, whatever the rest of the shape does.
    """
    first, last = (np.clip(each, 0, len(sums) - 1) for each in own)
    return np.asarray((sums[np.maximum(first, last)] > sums[first]).sum(axis=0))


def _at(ranges: tuple[Ints, Ints], index: int) -> tuple[Ints, Ints]:
    return ranges[0][index], ranges[1][index]


def need(ring: Ring, area: float, sheetings: Sequence[Sheeting], apart: float) -> Need:
    """Return the least that a shape takes, in any place, on any of some kinds of sheets.

    It may be turned by any quarter turns. Half a turn and three quarters are left out: with the
    sheets turned as well, which look the same then, they are no turn and one.
    """
    shape = _Shape.of(ring, area, apart, _step(sheetings[0]))
    found = [each for sheeting in sheetings for each in shape.needs(sheeting)]
    return Need(min(each.sheets for each in found), min(each.area for each in found))


def _step(sheeting: Sheeting) -> float:
    """Return the side of a square of which the sheets and their overlaps are best whole numbers.

    What is sure to be on a sheet then falls short of it by one square, not by two.
    """
    lengths = sheeting.columns.pitch, sheeting.rows.pitch, sheeting.lap
    best = min(FINE, key=lambda step: sum(abs(x / step - round(x / step)) for x in lengths))
    return best * max(1, math.ceil(math.sqrt(sheeting.area / MOST_SHIFTS) / best))


def least(needs: Sequence[Need], largest: float) -> int:
    """Return a number of sheets that shapes of such needs take at least.

    Args:
        needs: one for each shape.
        largest: the area that a sheet can show at most.
    """
    total = math.fsum(each.area for each in needs)
    return max(math.ceil(total / largest - 1e-6), *(each.sheets for each in needs), 1)
