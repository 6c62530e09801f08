"""Which sheets a shape takes, by where in its sheet the corner of its box lies."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from patternmaker.laying.raster import Raster, counted, tally

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from patternmaker.laying.raster import Ints, Ring
    from patternmaker.laying.sheeting import Line, Sheeting

FINE, MOST_SQUARES = 1.0, 1200  # mm of a square, and how many of them a shape has at most one way
BITS = 32  # sheets whose being taken or not is kept in one number


@dataclass(frozen=True)
class Lattice:
    """The places for the corners of boxes: equal steps, a whole number of them to a sheet.

    Args:
        sheeting: the sheets.
        columns: steps from one sheet to the next across.
        rows: the same upward.
        off: the first place lies so far inside the first sheet, across and up.
    """

    sheeting: Sheeting
    columns: int
    rows: int
    off: float

    @classmethod
    def over(cls, sheeting: Sheeting, step: float, off: float) -> Lattice:
        """Return the one whose steps are no longer than ``step``."""
        pitches = sheeting.columns.pitch, sheeting.rows.pitch
        columns, rows = (math.ceil(pitch / step - 1e-9) for pitch in pitches)
        return cls(sheeting, columns, rows, off)

    @property
    def steps(self) -> tuple[float, float]:
        """Its steps across and up."""
        pitches = self.sheeting.columns.pitch, self.sheeting.rows.pitch
        return pitches[0] / self.columns, pitches[1] / self.rows


@dataclass(frozen=True)
class Footing:
    """The sheets that a shape takes, and how much of it lies on each.

    Args:
        reach: how many columns and rows of sheets it can take.
        takes: row of sheet, column of sheet, place in the sheet: whether it is taken, 0 or 1.
        area: the same: how much of the sheet it fills, as a share.
    """

    reach: tuple[int, int]
    takes: NDArray[np.float32]
    area: NDArray[np.float32]

    @cached_property
    def _distinct(self) -> tuple[Ints, Ints]:
        flat = self.takes.reshape(-1, self.takes.shape[2]).astype(np.int64)
        keys = [part.T @ (1 << np.arange(len(part))) for part in _parts(flat)]
        _, first, where = np.unique(keys[0], return_index=True, return_inverse=True)
        for key in keys[1:]:
            both = where * (key.max() + 1) + key
            _, first, where = np.unique(both, return_index=True, return_inverse=True)
        return flat.T[first], where

    @property
    def patterns(self) -> Ints:
        """The different sets of sheets that it can take: 0 or 1 for each, row by row."""
        return self._distinct[0]

    @property
    def pattern_at(self) -> Ints:
        """Which of them it is, by place."""
        return self._distinct[1]

    @classmethod
    def of(cls, ring: Ring, lattice: Lattice) -> Footing:
        """Return the footing of a ring whose box begins at the origin."""
        step = max(FINE, max(ring.real.max(), ring.imag.max()) / MOST_SQUARES)
        sums = tally(Raster(ring, step).reached)
        sheeting, off = lattice.sheeting, lattice.off
        across = _ranges(sheeting.columns, lattice.columns, ring.real.max(), off, step)
        up = _ranges(sheeting.rows, lattice.rows, ring.imag.max(), off, step)
        reach = len(across[0][0]), len(up[0][0])
        size = (reach[1], reach[0], lattice.rows * lattice.columns)
        takes, area = (np.zeros(size, dtype=np.float32) for _ in range(2))
        for j, i in np.ndindex(reach[1], reach[0]):
            own, cell = (
                counted(sums, (a[0][i], a[1][i]), (b[0][j], b[1][j]))
                for a, b in zip(across, up, strict=True)
            )
            takes[j, i], area[j, i] = (own > 0).ravel(), cell.ravel()
        return cls(reach, takes, area * np.float32(step * step / sheeting.area))


_Range = tuple["Ints", "Ints"]


def _ranges(
    line: Line, places: int, extent: float, off: float, step: float
) -> tuple[_Range, _Range]:
    """Return what each sheet alone shows, and its cell, in squares of the shape, by place."""
    begin = off + np.arange(places) * (line.pitch / places)
    count = math.floor((begin[-1] + extent + off - line.lap) / line.pitch - 1e-9) + 1
    sheet = np.arange(max(1, count))[:, None] * line.pitch - begin[None, :]

    def squares(low: float, high: float) -> _Range:
        first = np.floor((sheet + low) / step + 1e-6).astype(np.int64)
        return first, np.ceil((sheet + high) / step - 1e-6).astype(np.int64)

    def nearest(low: float, high: float) -> _Range:
        first = np.rint((sheet + low) / step).astype(np.int64)
        first[0] = 0
        return first, np.rint((sheet + high) / step).astype(np.int64)

    return squares(line.lap - off, line.pitch + off), nearest(
        line.lap / 2, line.pitch + line.lap / 2
    )


def _parts(flat: Ints) -> list[Ints]:
    return [flat[begin : begin + BITS] for begin in range(0, len(flat), BITS)]
