"""The ways in which a shape can be turned, each kept once."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from patternmaker.laying.footing import Footing
from patternmaker.laying.raster import Raster
from patternmaker.laying.rings import turned

if TYPE_CHECKING:
    from collections.abc import Iterable

    from patternmaker.laying.footing import Lattice
    from patternmaker.laying.raster import Ring

COARSE, ALIKE = 2.0, 0.004  # mm of a square; the share of squares in which like shapes may differ
SAME = 1e-6  # mm between the vertices of rings that are the same


@dataclass(frozen=True, eq=False)
class Way:
    """A shape turned one way, on a lattice.

    Args:
        ring: its vertices, anticlockwise, its box beginning at the origin.
        turns: quarter turns to the left.
        lattice: the places at which it may lie.
    """

    ring: Ring
    turns: int
    lattice: Lattice

    @cached_property
    def footing(self) -> Footing:
        """The sheets that it takes, by place."""
        return Footing.of(self.ring, self.lattice)

    @property
    def middle(self) -> complex:
        """The middle of its box, from the corner."""
        return complex(self.ring.real.max(), self.ring.imag.max()) / 2


Ways = tuple[Way, ...]


def ways_of(rings: Iterable[Ring], lattice: Lattice) -> list[Ways]:
    """Return the ways of each ring, the same for the same rings; the first is the ring as it is."""
    found: list[Ways] = []
    for ring in rings:
        like = [ways for ways in found if _same(ways[0].ring, ring)]
        found.append(like[0] if like else _turned_ways(ring, lattice))
    return found


def _same(one: Ring, two: Ring) -> bool:
    return len(one) == len(two) and bool((np.abs(one - two) < SAME).all())


def _turned_ways(ring: Ring, lattice: Lattice) -> Ways:
    """Return the ring turned by quarters, without those that look like one before."""
    kept: list[Way] = []
    rasters: list[Raster] = []
    for turns in range(4):
        way = Way(turned(ring, turns), turns, lattice)
        raster = Raster(way.ring, COARSE)
        if not any(_alike(raster, other) for other in rasters):
            kept.append(way)
            rasters.append(raster)
    return tuple(kept)


def _alike(one: Raster, two: Raster) -> bool:
    return one.size == two.size and float((one.reached != two.reached).mean()) < ALIKE
