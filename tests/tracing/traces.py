"""Outlines as people trace them: points along known curves, clean or off their places."""

import cmath
import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import cKDTree

from patternmaker.geometry.contour import Path
from patternmaker.geometry.segments import Segment
from patternmaker.outlines.rounded_rectangle import RoundedRectangle

Points = NDArray[np.complex128]
FINE = 60_000  # points by which a curve is told


def ellipse(count: int, a: float = 250, b: float = 180) -> Points:
    angle = np.arange(count) * math.tau / count
    found: Points = a * np.cos(angle) + 1j * b * np.sin(angle)
    return found


def along(segments: Sequence[Segment], count: int) -> Points:
    """Return points all along a chain, evenly."""
    path = Path(tuple(segments))
    return np.array([path.point_at(path.length * i / count) for i in range(count)])


def rounded(count: int) -> Points:
    return along(RoundedRectangle(width=500, depth=450, corner=60).contour().segments, count)


def tips(points: int = 5, outer: float = 200, inner: float = 100) -> list[complex]:
    return [cmath.rect(inner if i % 2 else outer, math.pi * i / points) for i in range(2 * points)]


def star(count: int) -> Points:
    return along(Path.through(*tips(), tips()[0]).segments, count)


def off_place(points: Points, by: float, seed: int = 1) -> Points:
    """Return each point moved by up to ``by`` mm in x and in y."""
    chance = np.random.default_rng(seed)
    moved = chance.uniform(-by, by, (2, len(points)))
    found: Points = points + moved[0] + 1j * moved[1]
    return found


def by_hand(points: Points, most: float, wave: float, seed: int = 1) -> Points:
    """Return points that waver to the left and right of their line, in waves of about ``wave``."""
    chance = np.random.default_rng(seed)
    run = np.concatenate([[0], np.cumsum(np.abs(np.diff(points, append=points[:1])))])
    waves = np.round(run[-1] / (wave * chance.uniform(0.8, 1.25, 8)))
    phases = chance.uniform(0, math.tau, 8)
    sway = np.sin(math.tau * run[:-1, None] / run[-1] * waves + phases).sum(axis=1)
    way = np.roll(points, -1) - np.roll(points, 1)
    moved: Points = points + most * sway / np.abs(sway).max() * 1j * way / np.abs(way)
    return moved


def apart(found: Points, truth: Points) -> float:
    """Return how far the farthest of some points lies from the polygon through others."""
    _, near = cKDTree(np.c_[truth.real, truth.imag]).query(np.c_[found.real, found.imag])
    least = np.full(len(found), np.inf)
    for step in (-1, 0):
        start = truth[(near + step) % len(truth)]
        way = truth[(near + step + 1) % len(truth)] - start
        share = ((found - start) * way.conj()).real / np.maximum(np.abs(way) ** 2, 1e-300)
        least = np.minimum(least, np.abs(found - start - share.clip(0, 1) * way))
    return float(least.max())


def both_ways(segments: Sequence[Segment], truth: Points) -> float:
    """Return how far a chain and a curve of very many points lie apart, looked at from both."""
    found = along(segments, FINE)
    return max(apart(found, truth), apart(truth, found))


def turns(segments: Sequence[Segment]) -> list[float]:
    """Return by how much a closed chain turns at each of its vertices, in degrees."""
    return [
        abs(math.degrees(cmath.phase(two.tangent() / one.tangent(one.length))))
        for one, two in zip(segments, [*segments[1:], segments[0]], strict=True)
    ]
