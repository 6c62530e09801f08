"""Chains of lines and arcs: open paths, and closed contours with named joints."""

from __future__ import annotations

import cmath
import math
from bisect import bisect_right
from dataclasses import dataclass, field
from functools import cached_property
from itertools import accumulate, pairwise
from types import MappingProxyType
from typing import TYPE_CHECKING, TypeVar

from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.segments import Arc, Box, Line, Segment, turned

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

P = TypeVar("P", bound="Path")

SMOOTH = 1e-7  # radians; a joint that turns less is no corner
MEETS = 1e-4  # mm, a tenth of a hair; ends that lie closer are the same point
MITRE_LIMIT = 2.0  # times the allowance; a sharper corner's tip is squared off


@dataclass(frozen=True)
class Path:
    """An open chain of segments, each beginning where the one before it ends."""

    segments: tuple[Segment, ...]

    def __post_init__(self) -> None:
        for one, two in zip(self.segments, self.segments[1:], strict=False):
            if abs(one.end - two.start) > MEETS:
                raise ValueError(f"the chain is broken between {one.end} and {two.start}")

    @classmethod
    def through(cls, *points: complex) -> Path:
        """Return straight lines from point to point."""
        return cls(tuple(Line(a, b) for a, b in pairwise(points)))

    @cached_property
    def stops(self) -> tuple[float, ...]:
        """The length along the chain at each vertex: zero first, the whole length last."""
        return tuple(accumulate((each.length for each in self.segments), initial=0.0))

    @property
    def length(self) -> float:
        """Its whole length."""
        return self.stops[-1]

    @cached_property
    def bounds(self) -> Box:
        """Its bounding box."""
        return joined_bounds(each.bounds for each in self.segments)

    @property
    def width(self) -> float:
        """Its extent from left to right."""
        return self.bounds[2] - self.bounds[0]

    @property
    def height(self) -> float:
        """Its extent from bottom to top."""
        return self.bounds[3] - self.bounds[1]

    @property
    def middle(self) -> complex:
        """The middle of its bounding box."""
        left, bottom, right, top = self.bounds
        return complex((left + right) / 2, (bottom + top) / 2)

    def point_at(self, along: float) -> complex:
        """Return the point at a length along it."""
        index, rest = self._find(along)
        return self.segments[index].point(rest)

    def tangent_at(self, along: float) -> complex:
        """Return the direction at a length along it."""
        index, rest = self._find(along)
        return self.segments[index].tangent(rest)

    def outward(self, along: float) -> complex:
        """Return the step from a point on it to the point of its parallel 1 mm to the right.

        At a smooth point that is the normal; at a corner it leads to the tip of the mitre, or to
        the middle of the squared tip.
        """
        index, rest = self._find(along)
        way = self.segments[index].tangent(rest)
        turn = self._turn_at(index) if abs(rest) <= MEETS else 0.0
        if not turn:
            return -1j * way
        middle = -1j * way * turned(-turn / 2)
        return middle / math.cos(turn / 2) if not is_blunt(turn) else middle

    def _turn_at(self, index: int) -> float:
        """Return how far the direction turns at a vertex; not at all at the ends."""
        return turn_between(self.segments[index - 1], self.segments[index]) if index else 0.0

    def part(self, begin: float, end: float) -> Path:
        """Return the part between two lengths along it."""
        (first, rest), (last, stop) = self._find(begin), self._find(end)
        if stop <= MEETS and last > first:
            last, stop = last - 1, self.segments[last - 1].length
        if first == last:
            return Path((_cut(self.segments[first], rest, stop),))
        head = self.segments[first]
        between = self.segments[first + 1 : last]
        return Path((
            _cut(head, rest, head.length), *between, _cut(self.segments[last], 0.0, stop),
        ))  # fmt: skip

    def reversed(self) -> Path:
        """Return it run the other way."""
        return Path(tuple(each.reversed() for each in reversed(self.segments)))

    def _find(self, along: float) -> tuple[int, float]:
        """Return the index of the segment at a length along the chain, and the length on it."""
        index = min(max(bisect_right(self.stops, along + MEETS) - 1, 0), len(self.segments) - 1)
        return index, along - self.stops[index]

    def mapped(self: P, factor: complex = 1, shift: complex = 0) -> P:
        """Return it turned and scaled by ``factor``, then moved by ``shift``."""
        return self._with(tuple(each.mapped(factor, shift) for each in self.segments))

    def _with(self: P, segments: tuple[Segment, ...]) -> P:
        return type(self)(segments)

    def chords(self, tolerance: float) -> list[complex]:
        """Return points whose chords stay within ``tolerance`` of it, for display and checks."""
        points = [point for each in self.segments for point in each.chords(tolerance)]
        return [*points, self.segments[-1].end]


@dataclass(frozen=True)
class Contour(Path):
    """A closed chain, anticlockwise, with named joints.

    Args:
        segments: the edges, in order; the last ends where the first begins.
        joints: the vertex of each named station, by its index: that of the edge that it begins.
    """

    joints: Mapping[str, int] = field(default_factory=dict)

    def __post_init__(self) -> None:
        super().__post_init__()
        if abs(self.segments[-1].end - self.segments[0].start) > MEETS:
            raise ValueError("the contour is not closed")
        object.__setattr__(self, "joints", MappingProxyType(dict(self.joints)))

    @cached_property
    def area(self) -> float:
        """The area inside, by Green's theorem; exact."""
        return math.fsum(each.moment for each in self.segments)

    @cached_property
    def corners(self) -> tuple[float, ...]:
        """How far the direction turns at each vertex, in radians; zero where it is smooth."""
        befores = (self.segments[-1], *self.segments[:-1])
        return tuple(turn_between(*pair) for pair in zip(befores, self.segments, strict=True))

    def _turn_at(self, index: int) -> float:
        return self.corners[index]

    @cached_property
    def is_convex(self) -> bool:
        """Whether it never turns to the right."""
        return all(t >= 0 for t in self.corners) and all(e.sweep >= 0 for e in self.segments)

    @property
    def tightest(self) -> float:
        """The smallest radius in it: zero at a corner, infinite on straight lines."""
        if any(self.corners):
            return 0.0
        return min((e.radius for e in self.segments if isinstance(e, Arc)), default=math.inf)

    def _find(self, along: float) -> tuple[int, float]:
        wrapped = along % self.length
        return super()._find(wrapped if wrapped < self.length - MEETS else wrapped - self.length)

    def part(self, begin: float, end: float) -> Path:
        """Return the part from one length on to another, past its beginning if need be.

        From a place on to itself it goes all round.
        """
        begin, length = begin % self.length, (end - begin) % self.length
        twice = Path(self.segments * 2)
        return twice.part(begin, begin + (length if length > MEETS else self.length))

    def station(self, joint: str) -> float:
        """Return the length along it at a named joint."""
        return self.stops[self.joints[joint]]

    def nearest(self, point: complex) -> int:
        """Return the index of the edge nearest to a point.

        No part of an edge is further from its start than it is long, so few need to be measured.
        """
        starts = [abs(point - each.start) for each in self.segments]
        bound = min(starts) + MEETS
        lengths = (there - here for here, there in pairwise(self.stops))
        close = [
            i for i, (far, length) in enumerate(zip(starts, lengths, strict=True))
            if far - length <= bound
        ]  # fmt: skip
        return min(close, key=lambda i: self.segments[i].distance(point))

    def grown(self, by: float) -> Contour:
        """Return the parallel contour ``by`` mm further out (negative: further in).

        Exact: lines stay lines, arcs stay arcs. Corners are mitred to `MITRE_LIMIT`, then squared
        off. Joints stay with their stations.

        Raises:
            Refusal: if the contour closes up, naming the largest step that would fit.
        """
        from patternmaker.geometry import offsets

        return offsets.grown(self, by)

    def scaled(self, across: float, along: float) -> Contour:
        """Return it scaled about the origin: from left to right, and from front to back.

        Where the two factors differ an arc becomes part of an ellipse, which is followed by
        tangent arcs.
        """
        if across == along:
            return self.mapped(across)
        pieces = [_scaled(each, across, along) for each in self.segments]
        begins = list(accumulate((len(piece) for piece in pieces), initial=0))
        joints = {name: begins[index] for name, index in self.joints.items()}
        return Contour(tuple(each for piece in pieces for each in piece), joints)

    def chords(self, tolerance: float) -> list[complex]:
        """Return points whose chords stay within ``tolerance`` of it; the last is the first."""
        points = super().chords(tolerance)
        return [*points[:-1], points[0]]

    def _with(self, segments: tuple[Segment, ...]) -> Contour:
        return Contour(segments, self.joints)


def _cut(segment: Segment, begin: float, end: float) -> Segment:
    whole = begin <= MEETS and end >= segment.length - MEETS
    return segment if whole else segment.cut(begin, end)


def turn_between(before: Segment, after: Segment) -> float:
    """Return how far the direction turns from one edge to the next; zero where it is smooth."""
    turn = cmath.phase(after.tangent() / before.tangent(before.length))
    return turn if abs(turn) > SMOOTH else 0.0


def is_blunt(turn: float) -> bool:
    """Return whether a corner is so sharp that its mitre is squared off."""
    return 1 / math.cos(turn / 2) > MITRE_LIMIT


def joined_bounds(boxes: Iterable[Box]) -> Box:
    """Return the box round several boxes."""
    lefts, bottoms, rights, tops = zip(*boxes, strict=True)
    return min(lefts), min(bottoms), max(rights), max(tops)


def _scaled(segment: Segment, across: float, along: float) -> tuple[Segment, ...]:
    def stretched(z: complex) -> complex:
        return complex(z.real * across, z.imag * along)

    if isinstance(segment, Line):
        return (Line(stretched(segment.start), stretched(segment.end)),)

    def ellipse(share: float) -> tuple[complex, complex]:
        way = stretched(segment.tangent(share * segment.length))
        return stretched(segment.point(share * segment.length)), way / abs(way)

    return fitted(ellipse, 0.0, 1.0)
