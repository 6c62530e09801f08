"""Where inside a contour there is room: for its centre mark, its label, its arrow."""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING

from patternmaker.geometry.touching import encloses

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.contour import Contour

AMPLE = 0.22  # of the lesser side; a middle that lies so far inside needs no better place
COARSE, FINE = 12, 3  # places each way: over the whole box, and round the best so far
CLOSER = 3  # times that the best place is looked for closer by


def roomiest(contour: Contour) -> complex:
    """Return the middle of the box round a contour, or the place furthest inside if that is scant.

    Of places that lie equally far inside the one nearest to the middle is taken.
    """
    best = contour.middle
    if _room(contour, best) >= AMPLE * min(contour.width, contour.height):
        return best
    step = complex(contour.width, contour.height) / (COARSE + 1)
    for count in (COARSE, *[FINE] * CLOSER):
        best = _best(contour, list(_around(best, step, count)))
        step /= FINE
    return best


def _best(contour: Contour, places: list[complex]) -> complex:
    """Return the place furthest inside, or the one nearest to the edge if all lie outside."""
    rooms = [(round(_off(contour, each), 2), -abs(each - contour.middle), each) for each in places]
    deepest_first = sorted(rooms, key=lambda room: room[:2], reverse=True)
    inside = (place for _, _, place in deepest_first if encloses(contour, place))
    return next(inside, deepest_first[-1][2])


def _off(contour: Contour, place: complex) -> float:
    """Return how far a place lies from the edge."""
    return min(each.distance(place) for each in contour.segments)


def _room(contour: Contour, place: complex) -> float:
    """Return how far a place lies inside, or a negative number."""
    return _off(contour, place) if encloses(contour, place) else -1.0


def _around(middle: complex, step: complex, count: int) -> Iterator[complex]:
    """Yield ``count`` places each way, evenly round a middle."""
    offsets = [i - (count - 1) / 2 for i in range(count)]
    for x, y in product(offsets, offsets):
        yield middle + complex(x * step.real, y * step.imag)
