"""Where one shape must not lie beside another: on a lattice of places, exact where both are convex.

Two shapes are too near when the place of the second, seen from the first, is inside the sum of the
first with the second turned by half a turn, grown by the distance to be kept: the no-fit polygon.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from patternmaker.laying.raster import Raster, shifts_nearer, spread
from patternmaker.laying.rings import is_convex

if TYPE_CHECKING:
    from patternmaker.laying.raster import Floats, Ring, Squares

ROUND = 16  # sides of the polygon about the circle by which a shape is grown, four of them square
TOUCHING = 1e-7  # mm; shapes this much nearer than they may be are still apart


@dataclass(frozen=True)
class Stamp:
    """The places at which a second shape is too near to a first one, on the lattice.

    Args:
        barred: the places, in rows from the bottom.
        corner: row and column of its lower left place, seen from the place of the first shape.
    """

    barred: Squares
    corner: tuple[int, int]

    @property
    def reversed(self) -> Stamp:
        """Where the first shape is too near to the second."""
        rows, columns = self.barred.shape
        row, column = self.corner
        return Stamp(self.barred[::-1, ::-1].copy(), (1 - row - rows, 1 - column - columns))


def stamp(one: Ring, two: Ring, apart: float, steps: tuple[float, float]) -> Stamp:
    """Return where ``two`` must not lie, seen from ``one``; each place is the corner of its box.

    Args:
        one: a ring, anticlockwise, its box beginning at the origin.
        two: another.
        apart: the distance to be kept.
        steps: of the lattice, across and up.
    """
    if is_convex(one) and is_convex(two):
        return _of_convex(one, two, apart, steps)
    return _of_squares(one, two, apart, steps)


def _of_convex(one: Ring, two: Ring, apart: float, steps: tuple[float, float]) -> Stamp:
    corners = np.exp(2j * np.pi * (np.arange(ROUND) + 0.5) / ROUND)
    corners *= apart / math.cos(math.pi / ROUND)
    ring = _sum(_sum(one, -two), corners)
    across, up = steps
    low, high = math.ceil(ring.imag.min() / up), math.floor(ring.imag.max() / up)
    left, right = _widths(ring, np.arange(low, high + 1) * up)
    first, last = np.ceil(left / across), np.floor(right / across)
    begin, end = int(first.min()), int(last.max())
    columns = np.arange(begin, end + 1)
    return Stamp((columns >= first[:, None]) & (columns <= last[:, None]), (low, begin))


def _sum(one: Ring, two: Ring) -> Ring:
    """Return the ring of all sums of a point in one convex ring and a point in another."""
    edges = np.concatenate([np.roll(each, -1) - each for each in (one, two)])
    edges = edges[np.abs(edges) > 0]
    order = np.argsort(np.angle(edges) % (2 * np.pi), kind="stable")
    begin = sum(each[np.lexsort((each.real, each.imag))[0]] for each in (one, two))
    return np.asarray(begin + np.concatenate([[0], edges[order].cumsum()[:-1]]))


def _widths(ring: Ring, levels: Floats) -> tuple[Floats, Floats]:
    """Return where a convex ring that begins at its lowest point begins and ends at each level."""
    top = int(np.argmax(ring.imag))
    right, left = ring[: top + 1], np.concatenate([ring[top:], ring[:1]])[::-1]
    ends = np.interp(levels, right.imag, right.real)
    begins = np.interp(levels, left.imag, left.real)
    return begins + TOUCHING, ends - TOUCHING


def _of_squares(one: Ring, two: Ring, apart: float, steps: tuple[float, float]) -> Stamp:
    """Return the stamp of shapes as squares, each taken whole; a little too near is too near."""
    first, second = _squares(one, steps), _squares(two, steps)
    near = spread(first, shifts_nearer(apart, steps))
    wide = (near.shape[0] - first.shape[0]) // 2
    rows, columns = (wide + extent - 1 for extent in second.shape)
    return Stamp(_met(near, second), (-rows, -columns))


def _squares(ring: Ring, steps: tuple[float, float]) -> Squares:
    return Raster(ring.real / steps[0] + 1j * ring.imag / steps[1], 1.0).reached


def _met(first: Squares, second: Squares) -> Squares:
    """Return, for each shift, whether any square of two sets is the same, by Fourier transforms."""
    shape = [a + b - 1 for a, b in zip(first.shape, second.shape, strict=True)]
    size = [_quick(extent) for extent in shape]
    spectra = np.fft.rfft2(first, size), np.fft.rfft2(second[::-1, ::-1], size)
    return np.asarray(np.fft.irfft2(spectra[0] * spectra[1], size)[: shape[0], : shape[1]] > 0.5)


def _quick(extent: int) -> int:
    """Return a size no smaller for which the transform is quick: few and small factors."""
    power = 1 << (extent - 1).bit_length()
    return min(each for each in (power * 5 // 8, power * 3 // 4, power) if each >= extent)
