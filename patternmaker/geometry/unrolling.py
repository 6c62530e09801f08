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
from abc import ABC, abstractmethod
from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.errors import Refusal
from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.chains import plain
from patternmaker.geometry.contour import Path
from patternmaker.geometry.halving import halved
from patternmaker.geometry.quadrature import Integral
from patternmaker.geometry.segments import Line, dot

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from patternmaker.geometry.ruled import Span
    from patternmaker.geometry.segments import Segment


class Laid(ABC):
    """A span laid flat: its upper edge begins at the origin, its first ruling runs down."""

    def __init__(self, span: Span) -> None:
        self.span = span

    @property
    @abstractmethod
    def turn(self) -> float:
        """How far the last ruling is turned against the first, in radians."""

    @property
    @abstractmethod
    def end(self) -> complex:
        """Where the upper edge ends."""

    @abstractmethod
    def uppers(self) -> Iterable[Segment]:
        """Return the upper edge."""

    @abstractmethod
    def lowers(self) -> Iterable[Segment]:
        """Return the lower edge."""

    @abstractmethod
    def speed(self, share: float) -> float:
        """Return how far the upper edge runs for a share of 1, at a share."""

    @cached_property
    def upper(self) -> tuple[Segment, ...]:
        """The upper edge; none where it stays in one place."""
        return () if isinstance(self.span.upper, complex) else tuple(plain(self.uppers()))

    @cached_property
    def lower(self) -> tuple[Segment, ...]:
        """The lower edge; none where it stays in one place."""
        return () if isinstance(self.span.lower, complex) else tuple(plain(self.lowers()))

    @cached_property
    def length(self) -> float:
        """The length of the upper edge."""
        return sum(each.length for each in self.upper)

    def share_at(self, along: float) -> float:
        """Return the share at which the upper edge has run so far."""
        if self.span.is_even:
            return along / self.length
        run = Integral.of(self.speed, self.span.breaks)
        return sum(halved(0.0, 1.0, lambda share: run.at(share).real <= along)) / 2


def lay(span: Span) -> Laid:
    """Return a span laid flat."""
    if not span.leans:
        return Upright(span)
    return Plane(span) if span.is_plane else Leaning(span)


class Upright(Laid):
    """A span that stands straight over its lower edge: its rulings stay parallel."""

    turn = 0.0

    @cached_property
    def _over(self) -> Callable[[float], float]:
        """How far it runs up to a share: a closed form where it is drafted at one scale."""
        across, along = self.span.scale
        run = self.span.upper
        assert not isinstance(run, complex)  # nothing stands over a single place
        if across == along or isinstance(run, Line):
            whole = run.length * self.span.scaled(run.tangent())
            return lambda share: share * whole
        integral = Integral.of(lambda share: self._step(share).imag, self.span.breaks)
        return lambda share: integral.at(share).real

    def _step(self, share: float) -> complex:
        """Return how it moves: along its rulings, and square to them."""
        (_, above), _ = self.span.ends(share)
        return complex(-above.up, abs(above.plan) * self.span.scaled(above.plan))

    def _upper(self, share: float) -> tuple[complex, complex]:
        step = self._step(share)
        risen = self.span.height(share) - self.span.height(0.0)
        return complex(self._over(share), risen), -1j * step / abs(step)

    def uppers(self) -> Iterable[Segment]:
        """Return the upper edge, level or as its height goes."""
        if self.span.rise.is_level:
            return (Line(0j, complex(self._over(1.0))),)
        return fitted(self._upper, 0.0, 1.0)

    def lowers(self) -> Iterable[Segment]:
        """Return the lower edge, which is straight."""
        foot = complex(0.0, -self.span.height(0.0))
        return (Line(foot, foot + self._over(1.0)),)

    @property
    def end(self) -> complex:
        """Where the upper edge ends."""
        return self._upper(1.0)[0]

    def speed(self, share: float) -> float:
        """Return how far the upper edge runs for a share of 1, at a share."""
        return abs(self._step(share))


class Plane(Laid):
    """A plane span that leans: no part of its edges bends or climbs."""

    @cached_property
    def _quad(self) -> Quad:
        return Quad.of(self.span)

    @property
    def turn(self) -> float:
        """How far the last ruling is turned against the first, in radians."""
        return cmath.phase(1j * (self._quad.far_below - self._quad.far_above))

    @property
    def end(self) -> complex:
        """Where the upper edge ends."""
        return self._quad.far_above

    def uppers(self) -> Iterable[Segment]:
        """Return the upper edge."""
        return (Line(self._quad.above, self._quad.far_above),)

    def lowers(self) -> Iterable[Segment]:
        """Return the lower edge."""
        return (Line(self._quad.below, self._quad.far_below),)

    def speed(self, share: float) -> float:
        """Return how far the upper edge runs for a share of 1: its length."""
        del share
        return abs(self._quad.far_above)


class Leaning(Laid):
    """Any other span that leans, by the frame of its rulings."""

    @cached_property
    def _turn(self) -> Integral:
        return Integral.of(lambda share: self.span.ruling(share).turns, self.span.breaks)

    @property
    def turn(self) -> float:
        """How far the last ruling is turned against the first, in radians."""
        return self._turn.whole.real

    @cached_property
    def _move(self) -> Integral:
        return Integral.of(self._moves, self.span.breaks)

    def _moves(self, share: float) -> complex:
        ruling = self.span.ruling(share)
        return complex(ruling.down, ruling.over) * self._turned(share)

    def _turned(self, share: float) -> complex:
        """Return the direction of a ruling against the first."""
        return cmath.rect(1.0, self._turn.at(share).real)

    def _above(self, share: float) -> complex:
        return -1j * self._move.at(share)

    def _upper(self, share: float) -> tuple[complex, complex]:
        ruling = self.span.ruling(share)
        return self._above(share), self._way(complex(ruling.down, ruling.over), share)

    def _lower(self, share: float) -> tuple[complex, complex]:
        ruling = self.span.ruling(share)
        place = self._above(share) - 1j * self._turned(share) * ruling.length
        return place, self._way(complex(ruling.down_below, ruling.over_below), share)

    def _way(self, move: complex, share: float) -> complex:
        return -1j * self._turned(share) * move / abs(move)

    @property
    def end(self) -> complex:
        """Where the upper edge ends."""
        return self._above(1.0)

    def uppers(self) -> Iterable[Segment]:
        """Return the upper edge."""
        return fitted(self._upper, 0.0, 1.0)

    def lowers(self) -> Iterable[Segment]:
        """Return the lower edge."""
        return fitted(self._lower, 0.0, 1.0)

    def speed(self, share: float) -> float:
        """Return how far the upper edge runs for a share of 1, at a share."""
        return abs(self._moves(share))


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


def _too_askew(at: complex) -> Refusal:
    return Refusal(
        "base", f"it lies too far to one side of the seam near x {at.real:.0f}, y {at.imag:.0f} mm "
        "for this take-up",
        mend="take up less, or make it more like the seat",
    )  # fmt: skip


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
