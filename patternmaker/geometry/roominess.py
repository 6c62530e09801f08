"""Where inside a contour there is room: for its centre mark, its label, its arrow."""

from __future__ import annotations

from itertools import pairwise, product
from typing import TYPE_CHECKING

from patternmaker.geometry.segments import cross
from patternmaker.geometry.touching import encloses

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.contour import Contour

AMPLE = 0.22  # of the lesser side; a middle that lies so far inside needs no better place
ROUGHLY = 0.5  # mm; chords this close tell how much room there is
COARSE, FINE = 12, 3  # places each way: over the whole box, and round the best so far
CLOSER = 3  # times that the best place is looked for closer by


def roomiest(contour: Contour) -> complex:
    """Return the middle of the box round a contour, or the place furthest inside if that is scant.

    Of places that lie equally far inside the one nearest to the middle is taken.
    """
    left, bottom, right, top = contour.bounds
    middle = complex((left + right) / 2, (bottom + top) / 2)
    if _room(contour, middle) >= AMPLE * min(contour.width, contour.height):
        return middle
    points = contour.chords(ROUGHLY)
    step = complex(contour.width, contour.height) / (COARSE + 1)
    best = max(_around(middle, step, COARSE), key=lambda place: _depth(points, place, middle))
    for _ in range(CLOSER):
        step /= FINE
        best = max(_around(best, step, FINE), key=lambda place: _depth(points, place, middle))
    return best


def _room(contour: Contour, place: complex) -> float:
    """Return how far a place lies inside, or a negative number."""
    if not encloses(contour, place):
        return -1.0
    return min(each.distance(place) for each in contour.segments)


def _around(middle: complex, step: complex, count: int) -> Iterator[complex]:
    """Yield ``count`` places each way, evenly round a middle."""
    offsets = [i - (count - 1) / 2 for i in range(count)]
    for x, y in product(offsets, offsets):
        yield middle + complex(x * step.real, y * step.imag)


def _depth(points: list[complex], place: complex, middle: complex) -> tuple[float, float]:
    """Return how far a place lies inside a ring of points, and then how near to the middle."""
    rounds, nearest = 0, float("inf")
    for one, two in pairwise(points):
        way, to = two - one, place - one
        share = (to.real * way.real + to.imag * way.imag) / (abs(way) ** 2 or 1.0)
        nearest = min(nearest, abs(to - min(1.0, max(0.0, share)) * way))
        if (one.imag <= place.imag) != (two.imag <= place.imag):
            left_of = cross(way, to) > 0
            rounds += (1 if left_of else 0) if way.imag > 0 else (0 if left_of else -1)
    return (round(nearest, 2) if rounds else -nearest), -abs(place - middle)
