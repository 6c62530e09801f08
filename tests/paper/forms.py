"""Closed forms of what must be on paper, by formulas of their own; centred at the origin, mm."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from scipy.special import ellipe

if TYPE_CHECKING:
    from tests.paper.curves import Points

EIGHTH = 25.4 / 8  # mm: 1/8 in
Distances = NDArray[np.float64]


@dataclass(frozen=True)
class Rounded:
    """A rectangle with round corners: a circle where they take up all of it."""

    width: float
    depth: float
    corner: float

    @property
    def size(self) -> tuple[float, float]:
        return self.width, self.depth

    @property
    def length(self) -> float:
        return 2 * (self.width + self.depth) - (8 - 2 * math.pi) * self.corner

    @property
    def area(self) -> float:
        return self.width * self.depth - (4 - math.pi) * self.corner**2

    def grown(self, by: float) -> Rounded:
        return Rounded(self.width + 2 * by, self.depth + 2 * by, max(0.0, self.corner + by))

    def rim(self, step: float) -> tuple[Points, Points]:
        """Return points about ``step`` mm apart all round it, and the normal at each."""
        x, y, r = self.width / 2 - self.corner, self.depth / 2 - self.corner, self.corner
        points, normals = [], []
        for quarter, middle in enumerate((x + 1j * y, -x + 1j * y, -x - 1j * y, x - 1j * y)):
            turns = np.linspace(quarter, quarter + 1, int(r * math.pi / 2 / step) + 2) * math.pi / 2
            ways = np.exp(1j * turns)
            side = 2 * (x if quarter % 2 == 0 else y)
            along = np.arange(step / 2, side, step) * 1j * ways[-1]
            points += [middle + r * ways, middle + r * ways[-1] + along]
            normals += [ways, np.full(len(along), ways[-1])]
        return np.concatenate(points), np.concatenate(normals)

    def distances(self, points: Points) -> Distances:
        """Return how far each point lies from it."""
        x = np.abs(points.real) - (self.width / 2 - self.corner)
        y = np.abs(points.imag) - (self.depth / 2 - self.corner)
        outside = np.hypot(np.maximum(x, 0), np.maximum(y, 0))
        return np.asarray(np.abs(outside + np.minimum(np.maximum(x, y), 0) - self.corner))


@dataclass(frozen=True)
class Oval:
    """A line ``by`` mm outside an ellipse."""

    across: float
    along: float
    by: float = 0.0

    @property
    def size(self) -> tuple[float, float]:
        return self.across + 2 * self.by, self.along + 2 * self.by

    @property
    def length(self) -> float:
        """4 a E(1 - b^2 / a^2), and 2 pi d more."""
        a, b = sorted((self.across / 2, self.along / 2), reverse=True)
        return float(4 * a * ellipe(1 - (b / a) ** 2)) + 2 * math.pi * self.by

    @property
    def area(self) -> float:
        """Steiner: A + P d + pi d^2."""
        inner = Oval(self.across, self.along)
        ellipse = math.pi * self.across * self.along / 4
        return ellipse + inner.length * self.by + math.pi * self.by**2

    def grown(self, by: float) -> Oval:
        return Oval(self.across, self.along, self.by + by)

    def distances(self, points: Points) -> Distances:
        """Return how far each point lies from it: the nearest of the ellipse's by Newton."""
        a, b = self.across / 2, self.along / 2
        turns = np.linspace(0, 2 * math.pi, 721)
        rim = a * np.cos(turns) + 1j * b * np.sin(turns)
        t = turns[np.argmin(np.abs(points[:, None] - rim[None, :]), axis=1)]
        for _ in range(8):
            away = a * np.cos(t) + 1j * b * np.sin(t) - points
            step = -a * np.sin(t) + 1j * b * np.cos(t)
            bend = -a * np.cos(t) - 1j * b * np.sin(t)
            slope = np.real(np.conj(step) * step + np.conj(away) * bend)
            t = t - np.real(np.conj(away) * step) / slope
        nearest = a * np.cos(t) + 1j * b * np.sin(t)
        return np.asarray(np.abs(np.abs(points - nearest) - self.by))


@dataclass(frozen=True)
class Seat:
    """What a sample says of a seat, in mm, and what its paper must then show."""

    job: str
    name: str
    outline: Rounded
    base: Rounded
    seam: float
    drop: float
    wrap: float
    across: float = 0.0
    along: float = 0.0
    spare: float = 0.0
    fronts: tuple[float, ...] = ()
    slit: float = EIGHTH
    slit_in_boxing: float = EIGHTH
    dust: tuple[float, float] = (10.0, 12.0)
    open: float = 3.5 * 25.4

    @property
    def sew(self) -> Rounded | Oval:
        """The top's sew line: cut width (W + 2a)(1 - r), less an allowance on each side."""
        width, depth = (
            (side + 2 * self.seam) * (1 - rate) - 2 * self.seam
            for side, rate in ((self.outline.width, self.across), (self.outline.depth, self.along))
        )
        if self.across == self.along == 0:
            return self.outline
        if self.across == self.along:
            return Rounded(width, depth, width / 2)
        return Oval(width, depth)

    @property
    def panels(self) -> tuple[float, ...]:
        """The length of seam of each panel of boxing."""
        return (*self.fronts, self.sew.length - sum(self.fronts))

    @property
    def closed_lines(self) -> list[tuple[str, str, Rounded | Oval]]:
        """Piece, kind and form of every closed line but the boxing's."""
        inset, turning = self.dust
        dust = self.base.grown(-inset)
        return [
            ("top", "cut line", self.sew.grown(self.seam)),
            ("top", "sew line", self.sew),
            ("base template", "cut line", self.base),
            ("base template", "reference line", self.base.grown(-(self.wrap - EIGHTH))),
            ("dust cover", "cut line", dust.grown(turning)),
            ("dust cover", "fold line", dust),
        ]


def circle(diameter: float) -> Rounded:
    return Rounded(diameter, diameter, diameter / 2)


IN = 25.4
BENCH = Rounded(440, 440, 60)
BENCH_FRONT = BENCH.length - (440 - 2 * 60)  # from one back corner round to the other

SEATS = (
    Seat("round-piano-stool", "Round piano stool", circle(12.5 * IN), circle(12.25 * IN),
         0.5 * IN, 2.75 * IN, 1 * IN, 0.025, 0.025, spare=3 * IN,
         dust=(3 / 8 * IN, 1 / 2 * IN), open=3.5 * IN),
    Seat("organ-bench", "Organ bench", BENCH, Rounded(430, 430, 55), 12, 85, 30,
         fronts=(BENCH_FRONT,), slit=12 - IN / 4 - IN / 16),
    Seat("music-school", "Round piano stool", circle(318), circle(312), 12, 70, 25, 0.025, 0.025),
    Seat("music-school", "Drum throne", circle(13.75 * IN), circle(13.75 * IN - 6), 12, 3.25 * IN,
         25, 0.02, 0.03),
    Seat("music-school", "Organ bench", Rounded(760, 360, 40), Rounded(750, 350, 35), 12, 85, 30,
         slit=12 - IN / 4 - IN / 16),
)  # fmt: skip
