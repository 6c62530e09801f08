"""Contours as rings of straight chords, for shapes to be laid by."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from patternmaker.geometry.contour import Contour
    from patternmaker.laying.raster import Ring

CHORD = 0.02  # mm; chords stay this close to the contour
NEARLY = 1.02  # times its area; a shape whose hull is no larger is laid as its hull


def ring_of(contour: Contour, tolerance: float = CHORD) -> Ring:
    """Return a contour's chords, anticlockwise, its box beginning at the origin."""
    return at_origin(np.array(contour.chords(tolerance)[:-1], dtype=np.complex128))


def at_origin(ring: Ring) -> Ring:
    """Return a ring moved so that its box begins at the origin."""
    return ring - complex(ring.real.min(), ring.imag.min())


def turned(ring: Ring, turns: int) -> Ring:
    """Return a ring turned so many quarters to the left, its box beginning at the origin."""
    return at_origin(ring * (1, 1j, -1, -1j)[turns % 4])


def area(ring: Ring) -> float:
    """Return the area inside a ring."""
    return float((ring.conj() * np.roll(ring, -1)).imag.sum() / 2)


def is_convex(ring: Ring) -> bool:
    """Return whether a ring, anticlockwise, never turns to the right."""
    ways = np.roll(ring, -1) - ring
    after = np.roll(ways, -1)
    return bool(((ways.conj() * after).imag >= -1e-9 * np.abs(ways * after)).all())


def simpler(ring: Ring) -> Ring:
    """Return a ring's convex hull, where that is hardly larger; else the ring."""
    if is_convex(ring):
        return ring
    hull = _hull(ring)
    return hull if area(hull) <= NEARLY * area(ring) else ring


def _hull(ring: Ring) -> Ring:
    """Return the convex hull: its lower chain and its upper chain (Andrew 1979)."""
    points = sorted(ring.tolist(), key=lambda z: (z.real, z.imag))
    return np.array([*_chain(points), *_chain(points[::-1])], dtype=np.complex128)


def _chain(points: list[complex]) -> list[complex]:
    """Return the chain that turns left only, without its last point."""
    chain: list[complex] = []
    for point in points:
        while len(chain) > 1 and _turn(chain[-2], chain[-1], point) <= 0:
            chain.pop()
        chain.append(point)
    return chain[:-1]


def _turn(one: complex, two: complex, three: complex) -> float:
    return ((two - one).conjugate() * (three - two)).imag
