"""The ground on which shapes are laid: sheets taken so far, and where there still is room."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from patternmaker.laying.nofit import stamp

if TYPE_CHECKING:
    import random

    from numpy.typing import NDArray

    from patternmaker.laying.footing import Lattice
    from patternmaker.laying.nofit import Stamp
    from patternmaker.laying.raster import Floats, Ints, Squares
    from patternmaker.laying.ways import Way

OUTSIDE = 255  # sheets; what a sheet beyond the ground is said to cost
LOOKED_AT = 300  # of the places that are as good, drawn by lot
STAMPING = 6  # times as long as looking at a place, to make one of a stamp
SNUG, FULL, DRAWN = 0.3, 0.5, 0.4  # what weighs how much between places that are as good


class Spot(NamedTuple):
    """A way of lying at a place: row and column on the lattice, and the sheets that it adds."""

    way: Way
    row: int
    column: int
    added: int


class Stamps:
    """The stamps of ways beside each other, each made once.

    Args:
        lattice: the places at which they may lie.
        apart: the distance to be kept.

    Attributes:
        work: how many places have been looked at, here and by grounds.
    """

    def __init__(self, lattice: Lattice, apart: float) -> None:
        self.work = 0
        self._steps, self._apart = lattice.steps, apart
        self._made: dict[tuple[Way, Way], Stamp] = {}

    def of(self, one: Way, two: Way) -> Stamp:
        """Return where ``two`` must not lie, seen from ``one``."""
        if (one, two) not in self._made:
            made = stamp(one.ring, two.ring, self._apart, self._steps)
            self.work += STAMPING * made.barred.size
            self._made[one, two], self._made[two, one] = made, made.reversed
        return self._made[one, two]


class Ground:
    """Sheets in columns and rows, and what has been laid on them."""

    def __init__(self, lattice: Lattice, columns: int, rows: int, stamps: Stamps) -> None:
        self.lattice, self._stamps, self.size = lattice, stamps, (rows, columns)
        self.takers = np.zeros((2 * rows, 2 * columns), dtype=np.int32)
        self.fill = np.zeros((2 * rows, 2 * columns), dtype=np.float32)
        self.laid: dict[int, Spot] = {}

    @property
    def count(self) -> int:
        """How many sheets are taken."""
        return int(np.count_nonzero(self.takers))

    @property
    def cost(self) -> float:
        """The sheets taken, less for some of them being full: the rest is the nearer to empty."""
        return self.count - float((self.fill * self.fill).sum()) / max(1.0, float(self.fill.sum()))

    def put(self, name: int, spot: Spot) -> None:
        """Lay a shape on a spot."""
        self.laid[name] = spot
        self._change(spot, 1)

    def take(self, name: int) -> Spot:
        """Take a shape up again."""
        spot = self.laid.pop(name)
        self._change(spot, -1)
        return spot

    def _change(self, spot: Spot, by: int) -> None:
        sheets, place = self._sheets(spot)
        self.takers[sheets] += by * spot.way.footing.takes[:, :, place].astype(np.int32)
        self.fill[sheets] += by * spot.way.footing.area[:, :, place]

    def _sheets(self, spot: Spot) -> tuple[tuple[slice, slice], int]:
        (row, up), (column, across) = (
            divmod(spot.row, self.lattice.rows), divmod(spot.column, self.lattice.columns)
        )  # fmt: skip
        columns, rows = spot.way.footing.reach
        sheets = slice(row, row + rows), slice(column, column + columns)
        return sheets, up * self.lattice.columns + across

    def taken_by(self, name: int) -> list[tuple[int, int]]:
        """Return column and row of the sheets that a shape takes."""
        (rows, columns), place = self._sheets(self.laid[name])
        takes = np.argwhere(self.laid[name].way.footing.takes[:, :, place])
        return [(int(column) + columns.start, int(row) + rows.start) for row, column in takes]

    def best(self, way: Way, chance: random.Random) -> Spot | None:
        """Return the spot that adds the fewest sheets; of those as good, one that lies snug."""
        rows, columns = self._within(way)
        barred = self._barred(way, rows, columns)
        self._stamps.work += barred.size
        added = self._added(way, rows, columns)
        np.putmask(added, self._by_sheet(barred, rows, columns), OUTSIDE)
        fewest = int(added.min())
        if fewest >= OUTSIDE:
            return None
        found = np.flatnonzero(added == fewest)
        if len(found) > LOOKED_AT:
            found = found[np.sort(chance.choices(range(len(found)), k=LOOKED_AT))]
        sheet, place = np.divmod(found, added.shape[1])
        row = sheet // columns * self.lattice.rows + place // self.lattice.columns
        column = sheet % columns * self.lattice.columns + place % self.lattice.columns
        worth = SNUG * _snug(barred, row, column) + FULL * self._full(way, sheet, place, columns)
        worth += DRAWN * np.array([chance.random() for _ in range(len(found))])
        at = int(worth.argmax())
        return Spot(way, int(row[at]), int(column[at]), fewest)

    def _within(self, way: Way) -> tuple[int, int]:
        """Return how many rows and columns of sheets are worth looking at."""
        taken = np.argwhere(self.takers)
        highest = taken.max(axis=0) if len(taken) else np.array([-1, -1])
        reach = way.footing.reach
        rows = min(self.size[0], int(highest[0]) + 1 + reach[1])
        return rows, min(self.size[1], int(highest[1]) + 1 + reach[0])

    def _barred(self, way: Way, rows: int, columns: int) -> Squares:
        barred = np.zeros((rows * self.lattice.rows, columns * self.lattice.columns), dtype=bool)
        for spot in self.laid.values():
            stamped = self._stamps.of(spot.way, way)
            _press(barred, stamped, spot.row, spot.column)
        return barred

    def _by_sheet(self, places: Squares, rows: int, columns: int) -> Squares:
        up, across = self.lattice.rows, self.lattice.columns
        split = places.reshape(rows, up, columns, across).transpose(0, 2, 1, 3)
        return split.reshape(rows * columns, up * across)

    def _added(self, way: Way, rows: int, columns: int) -> NDArray[np.uint8]:
        """Return the sheets that the way would add, by the sheet of its corner and the place."""
        across, up = way.footing.reach
        costs = np.full((rows + up - 1, columns + across - 1), OUTSIDE, dtype=np.int64)
        high, wide = min(self.size[0], len(costs)), min(self.size[1], costs.shape[1])
        costs[:high, :wide] = self.takers[:high, :wide] == 0
        patches = np.lib.stride_tricks.sliding_window_view(costs, (up, across))
        flat = patches.reshape(rows * columns, across * up)
        by_pattern = np.minimum(flat @ way.footing.patterns.T, OUTSIDE).astype(np.uint8)
        return np.asarray(by_pattern.take(way.footing.pattern_at, axis=1))

    def _full(self, way: Way, sheet: Ints, place: Ints, columns: int) -> Floats:
        """Return how full the sheets are on which most of a shape would lie, by spot."""
        reach, area = way.footing.reach, way.footing.area
        padded = np.pad(self.fill, ((0, reach[1]), (0, reach[0])))
        found = np.zeros(len(sheet))
        for j, i in np.ndindex(reach[1], reach[0]):
            found += padded[sheet // columns + j, sheet % columns + i] * area[j, i, place]
        return found


def _press(barred: Squares, stamped: Stamp, row: int, column: int) -> None:
    low, left = row + stamped.corner[0], column + stamped.corner[1]
    rows, columns = stamped.barred.shape
    high, right = min(barred.shape[0], low + rows), min(barred.shape[1], left + columns)
    first, beside = max(0, low), max(0, left)
    if first < high and beside < right:
        part = stamped.barred[first - low : high - low, beside - left : right - left]
        barred[first:high, beside:right] |= part


def _snug(barred: Squares, row: Ints, column: Ints) -> Floats:
    """Return on how many of its four sides a place can't be moved, as a share."""
    padded = np.pad(barred, 1, constant_values=True)
    sides = ((1, 0), (-1, 0), (0, 1), (0, -1))
    held = [padded[row + 1 + up, column + 1 + across] for up, across in sides]
    return np.asarray(np.sum(held, axis=0) / len(sides))
