"""Ruin and recreate: take a handful of neighbours up, put them back otherwise, keep what is better.

A worse laying is kept now and then, by simulated annealing (Kirkpatrick 1983): less often the
longer it goes on. The lots are drawn from a seed, and the length is counted in places looked at,
not in seconds, so the same shapes are always laid the same way.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.laying.ground import Ground, Stamps

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from patternmaker.laying.footing import Lattice
    from patternmaker.laying.ground import Spot
    from patternmaker.laying.ways import Ways

WARM, COLD = 0.5, 0.03  # sheets by which a worse laying may well be kept, at first and at the end
MOST_TAKEN_UP = 6  # shapes at a time
EMPTYING, DRAWN_SHEETS = 0.5, 3  # how often a sheet is emptied, and out of how many drawn by lot
PLACES = 20_000_000  # looked at for each step of effort
ROUNDS = 12  # for each shape, at most, in a step of effort
SEED = 1


@dataclass(frozen=True)
class Laid:
    """Where a shape lies, and the sheets that it takes.

    Args:
        turns: quarter turns to the left.
        corner: the lower left corner of its box, from that of the first sheet.
        sheets: column and row of each.
    """

    turns: int
    corner: complex
    sheets: frozenset[tuple[int, int]]


class Search:
    """A search for the laying of some shapes that takes the fewest sheets.

    Args:
        shapes: each with the ways in which it may be turned.
        lattice: the places at which they may lie.
        apart: the distance to be kept between them.
        side: how many sheets there are across and up.
    """

    def __init__(self, shapes: Sequence[Ways], lattice: Lattice, apart: float, side: int) -> None:
        self._shapes, self._lattice = shapes, lattice
        self._stamps = Stamps(lattice, apart)
        self._chance = random.Random(SEED)
        self._ground = Ground(lattice, side, side, self._stamps)
        self._sizes = [float(ways[0].footing.area[:, :, 0].sum()) for ways in shapes]
        self._best: list[Laid] = []
        self._fewest = 0

    def run(self, effort: int, enough: int, told: Callable[[float, int], None]) -> tuple[Laid, ...]:
        """Return the best laying found; ``told`` hears the share of the way, and the best so far.

        It stops at ``enough`` sheets. A person who interrupts it gets the best so far. Where there
        is no room for all of the shapes, nothing is returned.
        """
        whole = effort * PLACES
        each = PLACES // (ROUNDS * len(self._shapes))
        if not self._put_back(range(len(self._shapes)), noise=0.0):
            return ()
        self._keep()
        try:
            while self._fewest > enough and (work := self._stamps.work) < whole:
                told(work / whole, self._fewest)
                self._stamps.work += each
                self._step(WARM * (COLD / WARM) ** (work / whole))
        except KeyboardInterrupt as stop:
            if stop.args:  # told to end altogether
                raise
        return tuple(self._best)

    def _step(self, warmth: float) -> None:
        ground = self._ground
        cost = ground.cost
        before = {name: ground.take(name) for name in self._neighbours()}
        laid = self._put_back(before, noise=1.0)
        lot = 1.0 - self._chance.random()
        if not laid or ground.cost > cost - warmth * math.log(lot):
            self._undo(before)
        elif ground.count < self._fewest:
            self._keep()

    def _undo(self, before: dict[int, Spot]) -> None:
        for name in before:
            if name in self._ground.laid:
                self._ground.take(name)
        for name, spot in before.items():
            self._ground.put(name, spot)

    def _keep(self) -> None:
        """Keep the laying as the best so far."""
        self._fewest = self._ground.count
        spots = sorted(self._ground.laid.items())
        self._best = [
            Laid(spot.way.turns, self._corner(spot), frozenset(self._ground.taken_by(name)))
            for name, spot in spots
        ]

    def _corner(self, spot: Spot) -> complex:
        across, up = self._lattice.steps
        off = self._lattice.off
        return complex(spot.column * across + off, spot.row * up + off)

    def _put_back(self, names: Iterable[int], noise: float) -> bool:
        """Lay shapes where each adds the fewest sheets, the larger ones first, more or less.

        Return whether there was room for all of them.
        """
        draw = self._chance.random
        sizes = {name: self._sizes[name] * (1 + noise * (draw() - 0.5)) for name in names}
        for name in sorted(sizes, key=lambda name: -sizes[name]):
            found = (self._ground.best(way, self._chance) for way in self._shapes[name])
            spots = [spot for spot in found if spot]
            fewest = min((spot.added for spot in spots), default=None)
            if fewest is None:
                return False
            good = [spot for spot in spots if spot.added == fewest]
            self._ground.put(name, self._chance.choice(good))
        return True

    def _neighbours(self) -> list[int]:
        """Return a handful of shapes that lie near each other, or share a sheet hardly filled."""
        middles = {
            name: self._corner(spot) + spot.way.middle for name, spot in self._ground.laid.items()
        }
        names = sorted(middles)
        if self._chance.random() < EMPTYING:
            sharing = self._on_an_emptier_sheet(names)
            many = len(sharing) + self._chance.randint(0, MOST_TAKEN_UP // 2)
            first = middles[sharing[0]]
        else:
            sharing, first = [], middles[self._chance.choice(names)]
            many = self._chance.randint(1, MOST_TAKEN_UP)
        near = sorted(names, key=lambda name: (name not in sharing, abs(middles[name] - first)))
        return near[: min(many, MOST_TAKEN_UP)]

    def _on_an_emptier_sheet(self, names: Sequence[int]) -> list[int]:
        """Return the shapes on the emptiest of a few sheets."""
        taken = {name: self._ground.taken_by(name) for name in names}
        sheets = sorted({sheet for each in taken.values() for sheet in each})
        drawn = (self._chance.choice(sheets) for _ in range(DRAWN_SHEETS))
        column, row = min(drawn, key=lambda sheet: float(self._ground.fill[sheet[1], sheet[0]]))
        return [name for name in names if (column, row) in taken[name]]
