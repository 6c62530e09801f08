"""A side wall between two edges in space: ruled, since straight lines join the one to the other.

Its parts are smooth; each is told by the runs of the plan between which its rulings stand, and how
high the upper one lies.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple, Protocol

from patternmaker.errors import Refusal
from patternmaker.geometry.quadrature import evenly
from patternmaker.geometry.segments import Arc, Line, dot

if TYPE_CHECKING:
    from patternmaker.geometry.pairing import Run

ROUNDING = 1e-12  # of a product; steps that run against each other by less do not
BEND = math.pi / 12  # radians of a plan's arc to an interval of an integral
STEPS = 8  # intervals along a straight part whose height changes


class Rise(Protocol):
    """How high the upper edge lies over each place of the plan."""

    @property
    def is_level(self) -> bool:
        """Whether it is the same everywhere."""

    def at(self, place: complex) -> float:
        """Return the height over a place of the plan, mm."""

    def slope(self, place: complex) -> complex:
        """Return how the height changes to the right and to the back, mm for each mm."""


class Step(NamedTuple):
    """A place in space, or a move: in the plan, and up."""

    plan: complex
    up: float

    def of(self, other: Step) -> float:
        """Return the scalar product."""
        return dot(self.plan, other.plan) + self.up * other.up

    def plus(self, other: Step, share: float = 1.0) -> Step:
        """Return the sum with a share of another move."""
        return Step(self.plan + share * other.plan, self.up + share * other.up)

    @property
    def length(self) -> float:
        """Its length."""
        return math.hypot(self.plan.real, self.plan.imag, self.up)


class Ruling(NamedTuple):
    """What a ruling tells of the wall beside it, for a move of 1 of the share along its part.

    Args:
        length: of the ruling.
        down: p, what the upper edge moves along the ruling.
        over: q, what it moves square to it.
        down_below: the same two of the lower edge.
        over_below: r.
    """

    length: float
    down: float
    over: float
    down_below: float
    over_below: float

    @property
    def turns(self) -> float:
        """How far the flat ruling turns."""
        return (self.over_below - self.over) / self.length


@dataclass(frozen=True)
class Span:
    """A smooth part of a wall.

    Args:
        upper: the part of the seam above, in plan, or the one place where it stays.
        lower: the part of the base's edge below.
        rise: the height of the seam over the base's lower edge.
        scale: how much of their finished length, across and along, the edges are drafted.
    """

    upper: Run
    lower: Run
    rise: Rise
    scale: tuple[float, float] = (1.0, 1.0)

    @property
    def leans(self) -> bool:
        """Whether its lower edge does not lie straight below the upper one."""
        return self.upper != self.lower

    @property
    def is_plane(self) -> bool:
        """Whether it lies in one plane, and leans."""
        return (
            self.leans
            and self.rise.is_level
            and not any(isinstance(run, Arc) for run in (self.upper, self.lower))
        )

    @property
    def is_even(self) -> bool:
        """Whether its upper edge is drafted at one scale all along, level."""
        across, along = self.scale
        return self.rise.is_level and (across == along or isinstance(self.upper, Line))

    @property
    def moves(self) -> tuple[complex, complex]:
        """How far its upper and its lower edge run, in plan."""
        upper, lower = (
            0j if isinstance(run, complex) else run.end - run.start
            for run in (self.upper, self.lower)
        )
        return upper, lower

    def height(self, share: float) -> float:
        """Return the height of the upper edge."""
        return self.rise.at(_on(self.upper, share)[0])

    def cut(self, begin: float, end: float) -> Span:
        """Return the part between two shares of it."""
        return Span(_cut(self.upper, begin, end), _cut(self.lower, begin, end),
                    self.rise, self.scale)  # fmt: skip

    def ruling(self, share: float) -> Ruling:
        """Return what holds of the ruling at a share of it."""
        (top, above), (foot, below) = self.ends(share)
        whole = Step(foot - top.plan, -top.up)
        length = whole.length
        way = Step(whole.plan / length, whole.up / length)
        p, r = above.of(way), Step(below, 0.0).of(way)
        square, square_below = above.plus(way, -p), Step(below, 0.0).plus(way, -r)
        over, over_below = square.length, square_below.length
        if square.of(square_below) < -ROUNDING * over * over_below:
            raise _inside_out(top.plan)
        return Ruling(length, p, self._drafted(over, above.plan),
                       r, self._drafted(over_below, below))  # fmt: skip

    def _drafted(self, over: float, move: complex) -> float:
        """Return a step square to the ruling such that its edge is drafted to scale.

        The edge then moves by the scaled plan and its whole climb, as the top's sew line does.
        """
        k = self.scaled(move)
        return math.sqrt(max(0.0, over * over - (1 - k * k) * abs(move) ** 2))

    def ends(self, share: float) -> tuple[tuple[Step, Step], tuple[complex, complex]]:
        """Return both ends of a ruling, from above, each with how it moves there."""
        place, move = _on(self.upper, share)
        climb = 0.0 if self.rise.is_level else dot(self.rise.slope(place), move)
        return (Step(place, self.rise.at(place)), Step(move, climb)), _on(self.lower, share)

    def scaled(self, move: complex) -> float:
        """Return how much of a finished length in this direction is drafted."""
        across, along = self.scale
        if across == along or not move:
            return across
        return abs(complex(move.real * across, move.imag * along)) / abs(move)

    @property
    def breaks(self) -> list[float]:
        """Shares between which it is smooth enough for an integral."""
        bend = max(abs(run.sweep) if isinstance(run, Arc) else 0.0
                   for run in (self.upper, self.lower))  # fmt: skip
        count = math.ceil(bend / BEND) or 1
        return evenly(0.0, 1.0, count if self.rise.is_level else max(STEPS, count))


def _cut(run: Run, begin: float, end: float) -> Run:
    if isinstance(run, complex):
        return run
    return run.cut(begin * run.length, end * run.length)


def _on(run: Run, share: float) -> tuple[complex, complex]:
    """Return a place on a run, and how it moves with the share."""
    if isinstance(run, complex):
        return run, 0j
    along = share * run.length
    move = run.end - run.start if isinstance(run, Line) else run.tangent(along) * run.length
    return run.point(along), move


def _inside_out(at: complex) -> Refusal:
    return Refusal(
        "base", f"its edge runs against the seam near x {at.real:.0f}, y {at.imag:.0f} mm",
        mend="make it more like the seat",
    )  # fmt: skip
