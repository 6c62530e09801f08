"""A smooth curve through a table of values that never overshoots them.

M. Steffen, "A simple method for monotonic interpolation in one dimension", Astronomy and
Astrophysics 239 (1990): a cubic between each two values, its slopes so limited that it rises and
falls only where the values do.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence


@dataclass(frozen=True)
class Monotone:
    """The curve through ``values`` at ``places``, which rise.

    Args:
        places: where the values are.
        values: what they are.
        steepest: the largest size that the slope may have at some of the places, by their index.

    >>> curve = Monotone((0.0, 1.0, 2.0), (0.0, 1.0, 1.0))
    >>> curve.at(1.0), curve.at(1.5)
    ((1.0, 0.0), (1.0, 0.0))
    """

    places: Sequence[float]
    values: Sequence[float]
    steepest: Mapping[int, float] = field(default_factory=dict)

    @cached_property
    def steps(self) -> list[float]:
        """The width of each interval."""
        return [b - a for a, b in pairwise(self.places)]

    @cached_property
    def secants(self) -> list[float]:
        """The slope of the chord over each interval."""
        rises = (b - a for a, b in pairwise(self.values))
        return [rise / step for rise, step in zip(rises, self.steps, strict=True)]

    @cached_property
    def slopes(self) -> list[float]:
        """The slope at each place."""
        return [
            math.copysign(min(abs(slope), self.steepest.get(i, math.inf)), slope)
            for i, slope in enumerate(self._steffen())
        ]

    def _steffen(self) -> list[float]:
        """Return the slope at each place by Steffen's equations 11 and 26."""
        h, s = self.steps, self.secants
        if len(s) == 1:
            return [s[0], s[0]]
        inner = [
            _limited((s[i] * h[i + 1] + s[i + 1] * h[i]) / (h[i] + h[i + 1]), s[i], s[i + 1])
            for i in range(len(s) - 1)
        ]
        first = _end_slope(s[0], s[1], h[0], h[1])
        last = _end_slope(s[-1], s[-2], h[-1], h[-2])
        return [first, *inner, last]

    def at(self, place: float) -> tuple[float, float]:
        """Return the value and the slope at a place."""
        index = max(i for i, begin in enumerate(self.places[:-1]) if i == 0 or begin <= place)
        return self.on(index, place - self.places[index])

    def on(self, index: int, along: float) -> tuple[float, float]:
        """Return the value and the slope at a length along an interval."""
        h, s = self.steps[index], self.secants[index]
        begin, end = self.slopes[index], self.slopes[index + 1]
        cubic, square = (begin + end - 2 * s) / h**2, (3 * s - 2 * begin - end) / h
        value = ((cubic * along + square) * along + begin) * along + self.values[index]
        return value, (3 * cubic * along + 2 * square) * along + begin


def _limited(slope: float, one: float, two: float) -> float:
    """Return a slope that is zero at a turning value, and at most twice the lesser secant."""
    if one * two <= 0:
        return 0.0
    return math.copysign(min(abs(slope), 2 * abs(one), 2 * abs(two)), one)


def _end_slope(near: float, far: float, step: float, next_step: float) -> float:
    """Return the slope of the parabola through the last three values, limited in the same way."""
    share = step / (step + next_step)
    slope = near * (1 + share) - far * share
    if slope * near <= 0:
        return 0.0
    return math.copysign(min(abs(slope), 2 * abs(near)), near)
