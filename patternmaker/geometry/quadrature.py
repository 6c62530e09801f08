"""Integrals of smooth functions, known at every place between two ends.

A function is followed over each interval by its Legendre series through the nodes of Gauss's rule,
which is integrated term by term (Abramowitz and Stegun, 22.7, 22.8 and 25.4.29): exact for
polynomials up to the degree of the series, and of the order of rounding for the curves of seats.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

NODES = 10  # to each interval


@cache
def nodes() -> tuple[tuple[float, float], ...]:
    """Return the nodes of Gauss's rule between -1 and 1, in order, each with its weight."""
    found = []
    for i in range(NODES, 0, -1):
        x = math.cos(math.pi * (i - 0.25) / (NODES + 0.5))
        for _ in range(8):
            *_, before, last = legendre(x, NODES)
            slope = NODES * (x * last - before) / (x * x - 1)
            x -= last / slope
        found.append((x, 2 / ((1 - x * x) * slope * slope)))
    return tuple(found)


def legendre(x: float, degree: int) -> list[float]:
    """Return the Legendre polynomials of ``x`` up to a degree."""
    values = [1.0, x]
    for n in range(1, degree):
        values.append(((2 * n + 1) * x * values[n] - n * values[n - 1]) / (n + 1))
    return values


@cache
def _projection() -> tuple[tuple[float, ...], ...]:
    """Return, for each term of a series, the share that the value at each node has in it."""
    at = [legendre(x, NODES) for x, _ in nodes()]
    return tuple(
        tuple((2 * k + 1) / 2 * weight * at[j][k] for j, (_, weight) in enumerate(nodes()))
        for k in range(NODES)
    )


@dataclass(frozen=True)
class Integral:
    """The integral of a function from the first of some breaks to any place up to the last.

    Args:
        breaks: the ends of the intervals, in order; the function is smooth within each.
        terms: the series over each interval.
        sums: the integral up to each break.
    """

    breaks: tuple[float, ...]
    terms: tuple[tuple[complex, ...], ...]
    sums: tuple[complex, ...]

    @classmethod
    def of(cls, function: Callable[[float], complex], breaks: Sequence[float]) -> Integral:
        """Return the integral of a function that is smooth between its breaks."""
        terms, sums = [], [0j]
        for begin, end in pairwise(breaks):
            half, middle = (end - begin) / 2, (begin + end) / 2
            values = [function(middle + half * x) for x, _ in nodes()]
            terms.append(_series([value * half for value in values]))
            sums.append(sums[-1] + 2 * terms[-1][0])
        return cls(tuple(breaks), tuple(terms), tuple(sums))

    @property
    def whole(self) -> complex:
        """The integral over all of it."""
        return self.sums[-1]

    def at(self, place: float) -> complex:
        """Return the integral from the first break to a place."""
        index = min(max(bisect_right(self.breaks, place) - 1, 0), len(self.terms) - 1)
        begin, end = self.breaks[index], self.breaks[index + 1]
        x = (2 * place - begin - end) / (end - begin)
        values = legendre(x, NODES)
        first, *terms = self.terms[index]
        risen = first * (x + 1)
        for k, term in enumerate(terms, 1):
            if term:
                risen += term * (values[k + 1] - values[k - 1]) / (2 * k + 1)
        return self.sums[index] + risen


def _series(values: Sequence[complex]) -> tuple[complex, ...]:
    """Return the Legendre series through values at the nodes; a constant has a single term."""
    first = values[0]
    if all(value == first for value in values):
        return (first,)
    return tuple(
        sum(share * value for share, value in zip(shares, values, strict=True))
        for shares in _projection()
    )


def length_of(speed: Callable[[float], float], breaks: Sequence[float]) -> float:
    """Return the integral of a speed over all its intervals: a length."""
    return Integral.of(speed, breaks).whole.real


def evenly(begin: float, end: float, count: int) -> list[float]:
    """Return the ends of equal intervals."""
    return [begin + (end - begin) * i / count for i in range(count)] + [end]
