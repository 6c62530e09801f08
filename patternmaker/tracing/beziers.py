"""Bezier curves of any degree, rational ones too, and B-splines as such pieces."""

from __future__ import annotations

import math
from contextlib import suppress
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.segments import Line, cross, dot

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from patternmaker.geometry.segments import Segment
    from patternmaker.tracing.curves import Affine

Number = TypeVar("Number", float, complex)

SPOT = 1e-9  # of its size; control points of a curve that lie closer are one
CUSP = 1e-6  # of its size; the same, beside a cusp, whose place is found to a few parts in 1e-8
_SAMPLES = 64  # places to look for a cusp at
_GOLDEN = (math.sqrt(5) - 1) / 2


class Bezier(NamedTuple):
    """A Bezier curve.

    Args:
        points: its control points, each times its weight.
        weights: their weights, all positive; empty if they are all 1.
    """

    points: tuple[complex, ...]
    weights: tuple[float, ...] = ()

    @property
    def hull(self) -> tuple[complex, ...]:
        """Its control points."""
        if not self.weights:
            return self.points
        return tuple(z / w for z, w in zip(self.points, self.weights, strict=True))

    def mapped(self, by: Affine) -> Bezier:
        """Return it mapped, as its control points are."""
        if not self.weights:
            return Bezier(tuple(by(z) for z in self.points))
        pairs = zip(self.hull, self.weights, strict=True)
        return Bezier(tuple(by(z) * w for z, w in pairs), self.weights)

    def segments(self, close: float, spot: float = SPOT, cusps: int = 3) -> tuple[Segment, ...]:
        """Return tangent arcs within ``close`` of it; where it turns on the spot is a corner.

        Args:
            close: the largest distance allowed.
            spot: the share of its size within which control points are one.
            cusps: how often it may be cut where it turns on the spot.

        Raises:
            ValueError: if it turns on the spot more often.
        """
        hull = self.hull
        size = max(abs(z - hull[0]) for z in hull)
        off, onward = _lie(hull) if size > close else (0.0, True)
        if onward and off <= spot * size:
            return (Line(hull[0], hull[-1]),) if hull[0] != hull[-1] else ()
        if onward or off > close:
            with suppress(ValueError):
                return fitted(self._follower(spot * size), 0.0, 1.0, close)
        if not cusps:
            raise ValueError("it turns on the spot too often")
        one, two = self.halves(self._slowest())
        return one.segments(close, CUSP, cusps - 1) + two.segments(close, CUSP, cusps - 1)

    def _follower(self, small: float) -> Callable[[float], tuple[complex, complex]]:
        """Return a function from a parameter to the point and the direction there."""
        hull = self.hull
        leave = next(z - hull[0] for z in hull if abs(z - hull[0]) > small)
        arrive = next(hull[-1] - z for z in (*reversed(hull), 2 * hull[-1] - leave)
                      if abs(z - hull[-1]) > small)  # fmt: skip
        ends = {0.0: (hull[0], leave / abs(leave)), 1.0: (hull[-1], arrive / abs(arrive))}

        def curve(t: float) -> tuple[complex, complex]:
            if t in ends:
                return ends[t]
            point, way = self.at(t)
            return point, way / abs(way) if way else 1.0

        return curve

    def at(self, t: float) -> tuple[complex, complex]:
        """Return the point at a parameter, and which way it moves there."""
        degree = len(self.points) - 1
        one, two = _last_two(self.points, t)
        point, way = one + t * (two - one), degree * (two - one)
        if not self.weights:
            return point, way
        light, heavy = _last_two(self.weights, t)
        weight = light + t * (heavy - light)
        return point / weight, (way - degree * (heavy - light) * point / weight) / weight

    def _slowest(self) -> float:
        """Return the parameter at which it moves most slowly (golden section).

        That may lie close to an end, but a dip between two samples is preferred.
        """

        def speed(t: float) -> float:
            return abs(self.at(t)[1])

        found = [speed(i / _SAMPLES) for i in range(_SAMPLES + 1)]
        dips = [i for i in range(1, _SAMPLES) if found[i] <= min(found[i - 1], found[i + 1])]
        best = min(dips or (0, _SAMPLES), key=found.__getitem__)
        low, high = max(0, best - 1) / _SAMPLES, min(_SAMPLES, best + 1) / _SAMPLES
        for _ in range(60):
            left, right = high - _GOLDEN * (high - low), low + _GOLDEN * (high - low)
            low, high = (low, right) if speed(left) < speed(right) else (left, high)
        return (low + high) / 2

    def halves(self, t: float) -> tuple[Bezier, Bezier]:
        """Return its two parts, cut at a parameter (de Casteljau's scheme)."""
        begin, end = _cut(self.points, t)
        light, heavy = _cut(self.weights, t) if self.weights else ((), ())
        return Bezier(begin, light), Bezier(end, heavy)


def _lie(hull: tuple[complex, ...]) -> tuple[float, bool]:
    """Return how far control points lie off one line, and whether they follow each other on it."""
    far = max(hull, key=lambda z: abs(z - hull[0])) - hull[0]
    way = far / abs(far)
    off = max(abs(cross(z - hull[0], way)) for z in hull)
    steps = [dot(b - a, way) for a, b in pairwise(hull)]
    return off, min(steps) >= -SPOT * abs(far)


def _step(row: tuple[Number, ...], t: float) -> tuple[Number, ...]:
    return tuple([a + t * (b - a) for a, b in pairwise(row)])


def _last_two(values: tuple[Number, ...], t: float) -> tuple[Number, Number]:
    while len(values) > 2:
        values = _step(values, t)
    return values[0], values[1]


def _cut(values: tuple[Number, ...], t: float) -> tuple[tuple[Number, ...], tuple[Number, ...]]:
    rows = [values]
    while len(rows[-1]) > 1:
        rows.append(_step(rows[-1], t))
    return tuple(row[0] for row in rows), tuple(row[-1] for row in reversed(rows))


def splines(
    points: tuple[complex, ...], weights: tuple[float, ...], knots: tuple[float, ...], degree: int
) -> Iterator[Bezier]:
    """Yield the Bezier pieces of a B-spline, one from each knot to the next.

    A control point of a piece is its blossom at the knots (L. Ramshaw, "Blossoms are polar
    forms", Computer Aided Geometric Design 6 (1989)), which de Boor's scheme gives.

    Args:
        points: its control points.
        weights: their weights; empty if they are all 1.
        knots: ``degree`` + 1 more of them than points, none smaller than the one before it.
        degree: of each piece.
    """
    pairs = zip(points, weights, strict=True) if weights else ()
    loaded = tuple(z * w for z, w in pairs) if weights else points
    for k in range(degree, len(points)):
        low, high = knots[k], knots[k + 1]
        if low < high:
            spots = [(low,) * (degree - j) + (high,) * j for j in range(degree + 1)]
            yield Bezier(
                tuple(_blossom(loaded, knots, k, spot) for spot in spots),
                tuple(_blossom(weights, knots, k, spot) for spot in spots) if weights else (),
            )


def _blossom(
    values: tuple[Number, ...], knots: tuple[float, ...], k: int, spot: tuple[float, ...]
) -> Number:
    degree = len(spot)
    row = list(values[k - degree : k + 1])
    for r, t in enumerate(spot, 1):
        for j in range(degree, r - 1, -1):
            low, high = knots[k - degree + j], knots[k + 1 + j - r]
            row[j] = row[j - 1] + (t - low) / (high - low) * (row[j] - row[j - 1])
    return row[degree]
