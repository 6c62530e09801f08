"""Drawn curves walked by numeric integration; a point is a complex number, in mm."""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import brentq

Points = NDArray[np.complex128]
NODES, WEIGHTS = np.polynomial.legendre.leggauss(16)
GRID = np.linspace(0.0, 1.0, 9)
SHARP = math.radians(2)  # the drawn curves turn less where they are smooth


@dataclass(frozen=True)
class Piece:
    """A line or a cubic Bezier curve, by its 2 or 4 control points."""

    controls: tuple[complex, ...]

    def at(self, t: NDArray[np.float64]) -> Points:
        return _bernstein(self.controls, np.asarray(t, float))

    def speed(self, t: NDArray[np.float64]) -> Points:
        steps = np.diff(np.array(self.controls)) * (len(self.controls) - 1)
        return _bernstein(tuple(steps), np.asarray(t, float))

    def length(self, end: float = 1.0) -> float:
        """Return its length up to a parameter, by Gauss and Legendre."""
        t = (NODES + 1) * end / 2
        return float(np.dot(np.abs(self.speed(t)), WEIGHTS) * end / 2)

    def moment(self) -> float:
        """Return its share of the area that its ring encloses (Green's theorem)."""
        t = (NODES + 1) / 2
        turned = np.imag(np.conj(self.at(t)) * self.speed(t))
        return float(np.dot(turned, WEIGHTS) / 4)

    def moved(self, factor: complex, shift: complex) -> Piece:
        return Piece(tuple(point * factor + shift for point in self.controls))


def _bernstein(controls: tuple[complex, ...], t: NDArray[np.float64]) -> Points:
    n = len(controls) - 1
    return np.asarray(
        sum(math.comb(n, i) * t**i * (1 - t) ** (n - i) * p for i, p in enumerate(controls)),
        complex,
    )


@dataclass(frozen=True)
class Curve:
    """A chain of drawn pieces."""

    pieces: tuple[Piece, ...]

    @cached_property
    def stops(self) -> list[float]:
        return [0.0, *np.cumsum([piece.length() for piece in self.pieces]).tolist()]

    @property
    def length(self) -> float:
        return float(self.stops[-1])

    @property
    def area(self) -> float:
        """The signed area inside: positive where it runs anticlockwise."""
        return sum(piece.moment() for piece in self.pieces)

    @property
    def start(self) -> complex:
        return self.pieces[0].controls[0]

    @property
    def end(self) -> complex:
        return self.pieces[-1].controls[-1]

    @property
    def is_closed(self) -> bool:
        return abs(self.start - self.end) < 1e-3

    def spread(self, each: int = 64) -> Points:
        """Return points all along it, each piece's ends included."""
        t = np.linspace(0.0, 1.0, each + 1)
        return np.concatenate([piece.at(t) for piece in self.pieces])

    @cached_property
    def box(self) -> tuple[float, float, float, float]:
        points = self.spread(256)
        return (
            float(points.real.min()), float(points.imag.min()),
            float(points.real.max()), float(points.imag.max()),
        )  # fmt: skip

    @property
    def size(self) -> tuple[float, float]:
        left, bottom, right, top = self.box
        return right - left, top - bottom

    @property
    def middle(self) -> complex:
        left, bottom, right, top = self.box
        return complex(left + right, bottom + top) / 2

    @cached_property
    def corners(self) -> list[float]:
        """Where it turns sharply, and where it ends if it is open: the lengths along it."""
        before = (self.pieces[-1], *self.pieces[:-1])
        met = zip(before, self.pieces, self.stops, strict=False)
        turns = [at for one, two, at in met if _turn(one, two) > SHARP]
        return turns if self.is_closed else [0.0, *(at for at in turns if at), self.length]

    @cached_property
    def _grid(self) -> Points:
        return np.array([piece.at(GRID) for piece in self.pieces])

    def nearest(self, point: complex) -> tuple[float, float]:
        """Return the length along it at its place nearest to a point, and how far that is off."""
        away = np.abs(self._grid - point)
        close = np.argsort(away.min(axis=1))[:4]
        found = [_square(self.pieces[i], float(GRID[away[i].argmin()]), point) for i in close]
        off, i, t = min((off, int(i), t) for (t, off), i in zip(found, close, strict=True))
        return self.stops[i] + self.pieces[i].length(t), off

    def at(self, along: float) -> complex:
        """Return the point at a length along it."""
        piece, t = self._find(along)
        return complex(piece.at(t))

    def way(self, along: float) -> complex:
        """Return its direction at a length along it."""
        piece, t = self._find(along)
        return complex(piece.speed(t))

    def _find(self, along: float) -> tuple[Piece, NDArray[np.float64]]:
        i = min(int(np.searchsorted(self.stops, along, "right")) - 1, len(self.pieces) - 1)
        piece, rest = self.pieces[i], along - self.stops[i]
        inside = 0 < rest < piece.length()
        t = brentq(lambda t: piece.length(t) - rest, 0, 1) if inside else float(rest > 0)
        return piece, np.array(t)

    def moved(self, factor: complex = 1, shift: complex = 0) -> Curve:
        return Curve(tuple(piece.moved(factor, shift) for piece in self.pieces))

    def met_by(self, point: complex, way: complex) -> float:
        """Return the length along it where the line through a point meets it, nearest to that."""
        return min(self.meets(point, way))[1]

    def meets(self, point: complex, way: complex) -> list[tuple[float, float]]:
        """Return how far off, and at what length along it, the line through a point meets it."""
        found: list[tuple[float, float]] = []
        for piece, begin in zip(self.pieces, self.stops, strict=False):
            for t in _crossings(piece, point, way / abs(way)):
                away = abs(complex(piece.at(np.array(t))) - point)
                found.append((away, begin + piece.length(t)))
        return found


def _turn(one: Piece, two: Piece) -> float:
    """Return by how many radians the way turns from one piece to the next."""
    return abs(cmath.phase(complex(two.speed(np.array(0.0)) / one.speed(np.array(1.0)))))


def _square(piece: Piece, t: float, point: complex) -> tuple[float, float]:
    """Return the parameter where a piece lies square below a point, or its end, and how far off."""

    def leans(t: float) -> float:
        here = np.array(t)
        return float(np.real((piece.at(here) - point) * np.conj(piece.speed(here))))

    low, high = max(0.0, t - GRID[1]), min(1.0, t + GRID[1])
    if leans(low) < 0 < leans(high):
        t = float(brentq(leans, low, high, xtol=1e-14))
    else:
        t = low if leans(low) >= 0 else high
    return t, abs(complex(piece.at(np.array(t))) - point)


def _crossings(piece: Piece, point: complex, way: complex) -> list[float]:
    def off(t: float) -> float:
        return float(((complex(piece.at(np.array(t))) - point) / way).imag)

    steps = np.linspace(0.0, 1.0, 33)
    values = np.imag((piece.at(steps) - point) / way)
    found = [float(t) for t, value in zip(steps, values, strict=True) if abs(value) < 1e-9]
    return found + [
        float(brentq(off, steps[i], steps[i + 1], xtol=1e-14))
        for i in range(32)
        if values[i] * values[i + 1] < 0
    ]
