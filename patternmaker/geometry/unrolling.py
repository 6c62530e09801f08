"""A side wall between two edges in space, laid flat.

The wall is ruled: straight lines, the rulings, join its upper edge to its lower one. Laid flat,
both edges keep their lengths, each ruling its length, and each edge the angle at which it meets the
rulings. Where the wall is developable that is the exact development, edges, rulings and areas
alike; where it twists it is the strip that sews to both edges.

Along a ruling let e be its direction downward and l its length, and let the edges move by A' and
B'. With p = A'.e, and q, r the parts of A' and B' square to e, the flat upper edge moves by
(p + iq) E, the ruling's direction E turns by (r - q) / l, and the lower edge follows from both:
since B'.e = p + l', it moves by (p + l' + ir) E. This is the moving frame of a ruled surface (D. J.
Struik, "Lectures on Classical Differential Geometry", 2-4 and 5-5; from memory), reckoned by
integrals to rounding.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple, Protocol

from patternmaker.errors import Refusal
from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.contour import Path
from patternmaker.geometry.quadrature import Integral, evenly
from patternmaker.geometry.segments import Arc, Line, Segment, dot

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.geometry.pairing import Run

STRAIGHT = 1e-12  # a turn, or a slope, that is all rounding
BEND = math.pi / 12  # radians of a plan's arc to an interval of an integral
HALVINGS = 60  # of a share, until it is found to rounding
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


class _Ruling(NamedTuple):
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

    def ruling(self, share: float) -> _Ruling:
        """Return what holds of the ruling at a share of it."""
        (top, above), (foot, below) = self.ends(share)
        whole = Step(foot - top.plan, -top.up)
        length = whole.length
        way = Step(whole.plan / length, whole.up / length)
        p, r = above.of(way), Step(below, 0.0).of(way)
        square, square_below = above.plus(way, -p), Step(below, 0.0).plus(way, -r)
        over, over_below = square.length, square_below.length
        if square.of(square_below) < -STRAIGHT * over * over_below:
            raise _inside_out(top.plan)
        return _Ruling(length, p, self._drafted(over, above.plan),
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


def _too_askew(at: complex) -> Refusal:
    return Refusal(
        "base", f"it lies too far to one side of the seam near x {at.real:.0f}, y {at.imag:.0f} mm "
        "for this take-up",
        mend="take up less, or make it more like the seat",
    )  # fmt: skip


class Quad(NamedTuple):
    """The four corners of a plane span, laid flat."""

    above: complex
    below: complex
    far_above: complex
    far_below: complex

    @classmethod
    def of(cls, span: Span) -> Quad:
        """Return a plane span of level edges, these drafted to scale, its end rulings as they are.

        So it meets its neighbours, however these are drafted. Its first ruling runs down from the
        origin; that one reaches ``over`` along the edges, the last one d less the other way, with
        d what the lower edge has more than the upper: both rulings and both edges given, so are
        the half sum and the difference of those reaches.
        """
        (top, _), (foot, _) = span.ends(0.0)
        tops, feet = (abs(move) for move in span.moves)
        way = _run_of(span)
        k = span.scaled(way)
        over, more = dot(foot - top.plan, way), feet - tops
        drafted = ((2 * over + more) / k - k * more) / 2
        square = abs(foot - top.plan) ** 2 + top.up**2 - drafted**2
        if square <= 0:
            raise _too_askew(top.plan)
        corner = complex(drafted, -math.sqrt(square))
        level = -1j * abs(corner) / corner
        return cls(0j, level * corner, level * k * tops, level * (corner + k * feet))


def _run_of(span: Span) -> complex:
    """Return the direction of a plane span's edges, in plan."""
    move = span.moves[0] or span.moves[1]
    return move / abs(move)


@dataclass(frozen=True)
class Laid:
    """A span laid flat: its upper edge begins at the origin, its first ruling runs down."""

    span: Span

    @cached_property
    def _plane(self) -> Quad | None:
        """Its corners, if it is plane: no part of its edges bends or climbs."""
        return Quad.of(self.span) if self.span.is_plane else None

    @cached_property
    def _turn(self) -> Integral:
        return Integral.of(lambda share: self.span.ruling(share).turns, self.span.breaks)

    @cached_property
    def is_upright(self) -> bool:
        """Whether its rulings stay parallel."""
        return all(abs(term) < STRAIGHT for terms in self._turn.terms for term in terms)

    @property
    def turn(self) -> float:
        """How far the last ruling is turned against the first, in radians."""
        if quad := self._plane:
            return cmath.phase(1j * (quad.far_below - quad.far_above))
        return 0.0 if self.is_upright else self._turn.whole.real

    @cached_property
    def _move(self) -> Integral:
        return Integral.of(self._moves, self.span.breaks)

    def _moves(self, share: float) -> complex:
        ruling = self.span.ruling(share)
        return complex(ruling.down, ruling.over) * self._turned(share)

    def _turned(self, share: float) -> complex:
        """Return the direction of a ruling against the first."""
        return 1 + 0j if self.is_upright else cmath.rect(1.0, self._turn.at(share).real)

    def _above(self, share: float) -> complex:
        """Return the place on the upper edge; an upright wall tells its height without integral."""
        move = self._move.at(share)
        if self.is_upright and not self.span.leans:
            move = complex(self.span.height(0.0) - self.span.height(share), move.imag)
        return -1j * move

    def _upper(self, share: float) -> tuple[complex, complex]:
        ruling = self.span.ruling(share)
        return self._above(share), self._way(complex(ruling.down, ruling.over), share)

    def _lower(self, share: float) -> tuple[complex, complex]:
        ruling = self.span.ruling(share)
        place = self._above(share) - 1j * self._turned(share) * ruling.length
        return place, self._way(complex(ruling.down_below, ruling.over_below), share)

    def _way(self, move: complex, share: float) -> complex:
        return -1j * self._turned(share) * move / abs(move)

    @cached_property
    def upper(self) -> tuple[Segment, ...]:
        """The upper edge; none where it stays in one place."""
        if isinstance(self.span.upper, complex):
            return ()
        if quad := self._plane:
            return (Line(quad.above, quad.far_above),)
        return tuple(plain(fitted(self._upper, 0.0, 1.0)))

    @cached_property
    def lower(self) -> tuple[Segment, ...]:
        """The lower edge; none where it stays in one place."""
        if isinstance(self.span.lower, complex):
            return ()
        if quad := self._plane:
            return (Line(quad.below, quad.far_below),)
        return tuple(plain(fitted(self._lower, 0.0, 1.0)))

    @cached_property
    def length(self) -> float:
        """The length of the upper edge."""
        return sum(each.length for each in self.upper)

    @property
    def end(self) -> complex:
        """Where the upper edge ends."""
        return self._plane.far_above if self._plane else self._above(1.0)

    def share_at(self, along: float) -> float:
        """Return the share at which the upper edge has run so far."""
        if self.span.is_even:
            return along / self.length
        speed = Integral.of(lambda share: abs(self._moves(share)), self.span.breaks)
        low, high = 0.0, 1.0
        for _ in range(HALVINGS):
            middle = (low + high) / 2
            low, high = (low, middle) if speed.at(middle).real > along else (middle, high)
        return (low + high) / 2


class Flat(NamedTuple):
    """A wall laid flat: x along the seam, y up; its rulings run from the upper edge to the lower.

    Args:
        upper: the seam, from the left.
        lower: the base's edge.
    """

    upper: Path
    lower: Path

    @property
    def ends(self) -> tuple[tuple[complex, complex], tuple[complex, complex]]:
        """The first ruling and the last, each from above."""
        ones, twos = self.upper.segments, self.lower.segments
        return (ones[0].start, twos[0].start), (ones[-1].end, twos[-1].end)


def flat(parts: Iterable[Laid]) -> Flat:
    """Return the wall of some spans in one piece, turned so that it stands level."""
    parts = list(parts)
    at, turn = 0j, -math.fsum(part.turn for part in parts) / 2
    upper: list[Segment] = []
    lower: list[Segment] = []
    for part in parts:
        way = cmath.rect(1.0, turn)
        upper += (each.mapped(way, at) for each in part.upper)
        lower += (each.mapped(way, at) for each in part.lower)
        at, turn = at + way * part.end, turn + part.turn
    return Flat(Path(tuple(plain(upper))), Path(tuple(plain(lower))))


def plain(chain: Iterable[Segment]) -> Iterator[Segment]:
    """Yield a chain, its lines that run on straight made one."""
    held: Segment | None = None
    for each in chain:
        joined = _one(held, each) if held is not None else None
        if joined is None and held is not None:
            yield held
        held = joined or each
    if held is not None:
        yield held


def _one(before: Segment, after: Segment) -> Segment | None:
    """Return two lines as one, if they run on straight."""
    if not (isinstance(before, Line) and isinstance(after, Line)):
        return None
    one, two = before.tangent(), after.tangent()
    return Line(before.start, after.end) if abs(one - two) < STRAIGHT else None
