"""Lines of the model as arrays, so that thousands of drawn points are measured to them at once."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from patternmaker.geometry.segments import Arc, Segment

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from patternmaker.checking.plane import Distances, Points
    from patternmaker.geometry.contour import Path

CLOSE = 0.01  # mm; a point that lies closer to the part expected of it needs no other measured
AT_ONCE = 4_000_000  # distances held in memory


@dataclass(frozen=True, eq=False)
class Shape:
    """A chain of lines and arcs: for each where it begins, where it ends, and about what it turns.

    A line has the sweep 0.
    """

    starts: Points
    ends: Points
    centres: Points
    sweeps: NDArray[np.float64]

    @classmethod
    def of(cls, path: Path) -> Shape:
        """Return a path of the model."""
        each = path.segments
        return cls(
            np.array([segment.start for segment in each], np.complex128),
            np.array([segment.end for segment in each], np.complex128),
            np.array([_centre(segment) for segment in each], np.complex128),
            np.array([segment.sweep for segment in each], np.float64),
        )

    @cached_property
    def lengths(self) -> NDArray[np.float64]:
        """The length of each part."""
        chords = np.abs(self.ends - self.starts)
        radii = np.abs(self.starts - self.centres)
        return np.where(self.sweeps == 0, chords, radii * np.abs(self.sweeps))

    @cached_property
    def stops(self) -> NDArray[np.float64]:
        """The length along it at each joint."""
        return np.concatenate([[0.0], np.cumsum(self.lengths)])

    @property
    def length(self) -> float:
        """Its whole length."""
        return float(self.stops[-1])

    @property
    def start(self) -> complex:
        """Where it begins."""
        return complex(self.starts[0])

    @property
    def end(self) -> complex:
        """Where it ends."""
        return complex(self.ends[-1])

    def point(self, share: float) -> complex:
        """Return the point at a share of the way along it."""
        at = share * self.length
        i = min(int(np.searchsorted(self.stops, at, "right")) - 1, len(self.starts) - 1)
        part = (at - self.stops[i]) / self.lengths[i] if self.lengths[i] else 0.0
        if self.sweeps[i] == 0:
            return complex(self.starts[i] + part * (self.ends[i] - self.starts[i]))
        arm = self.starts[i] - self.centres[i]
        return complex(self.centres[i] + arm * np.exp(1j * part * self.sweeps[i]))

    def distances(self, points: Points, alongs: Distances) -> Distances:
        """Return how far each point lies from it.

        Args:
            points: to be measured.
            alongs: about which share of the way along it each is expected.
        """
        here = np.searchsorted(self.stops, alongs * self.length, "right") - 1
        last = len(self.starts) - 1
        close = [
            self._to(points, np.clip(here + step, 0, last) if last else np.zeros_like(here))
            for step in (-1, 0, 1)
        ]
        found = np.minimum.reduce(close)
        far = np.flatnonzero(found > CLOSE)
        for some in np.array_split(far, max(1, len(far) * (last + 1) // AT_ONCE + 1)):
            found[some] = self.nearest(points[some])
        return np.asarray(found, np.float64)

    def nearest(self, points: Points) -> Distances:
        """Return how far each point lies from it, wherever that is."""
        every = np.arange(len(self.starts))[None, :]
        return np.asarray(self._to(points[:, None], every).min(axis=1, initial=np.inf), np.float64)

    def _to(self, points: Points, parts: NDArray[np.int64]) -> Distances:
        """Return the distances of points to parts of it."""
        start, end = self.starts[parts], self.ends[parts]
        way = end - start
        square = np.abs(way) ** 2
        with np.errstate(divide="ignore", invalid="ignore"):
            share = np.where(square > 0, ((points - start) * way.conj()).real / square, 0.0)
        straight = np.abs(points - start - np.clip(share, 0.0, 1.0) * way)
        if not self.sweeps.any():
            return np.asarray(straight, np.float64)
        centre, sweep = self.centres[parts], self.sweeps[parts]
        away, arm = points - centre, start - centre
        turn = np.angle(away * arm.conj()) * np.sign(sweep)
        faces = np.mod(turn, 2 * math.pi) <= np.abs(sweep)
        ends = np.minimum(np.abs(points - start), np.abs(points - end))
        bent = np.where(faces, np.abs(np.abs(away) - np.abs(arm)), ends)
        return np.asarray(np.where(sweep == 0, straight, bent), np.float64)


def _centre(segment: Segment) -> complex:
    return segment.centre if isinstance(segment, Arc) else segment.start
