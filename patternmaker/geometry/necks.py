"""Where two sides of a contour, each moved by the same distance, meet face to face.

That happens in the middle of a chord that stands square on both sides and has no other part of the
edge nearer to its middle: the bottlenecks of a curve. At the least half of such a chord the
parallel touches itself; beyond it, it falls apart, or swallows the bay behind the neck. A bay whose
sides draw together at an angle has no such chord: it fills up gradually.

Everything is reckoned on the right of the edge. Between the two feet of a chord, the edge turns by
exactly a half turn to the right.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from patternmaker.geometry.contour import Contour
from patternmaker.geometry.nearness import Bodies, near
from patternmaker.geometry.segments import Line, dot, turned

if TYPE_CHECKING:
    from collections.abc import Iterator

FACING = 1e-6  # radians; sides that run against each other within it stand face to face
BARE = 1e-5  # mm; by so much another part of the edge may be nearer to the middle of a chord
SAME = 1e-6  # mm; arcs whose centres lie closer have one centre
SHARES = (0.0, 0.25, 0.5, 0.75, 1.0)  # where along two sides with many chords they are tried


@dataclass(frozen=True)
class Front:
    """A side that moves: of a line, of an arc, or of a corner, which is an arc of no radius.

    Args:
        place: the edge that it is, or that begins at the corner.
        centre: of the arc; the start of a line.
        radius: negative where the arc turns right, and closes up as it moves.
        low: its least direction, an angle; angles run on round the contour.
        high: its greatest direction.
        length: of a line; zero for all else.
    """

    place: int
    centre: complex
    radius: float
    low: float
    high: float
    length: float = 0.0

    def has(self, way: complex) -> bool:
        """Return whether it has a point at which its right-hand normal is ``way``."""
        above = (cmath.phase(1j * way) - self.low + FACING) % math.tau
        return above <= self.high - self.low + 2 * FACING

    @property
    def way(self) -> complex:
        """The direction of a line."""
        return turned(self.low)

    @property
    def normals(self) -> Iterator[complex]:
        """The right-hand normals in some of its points."""
        for share in SHARES:
            yield -1j * turned(self.low + share * (self.high - self.low))


def narrowest(contour: Contour, by: float) -> float | None:
    """Return the least distance, up to ``by``, at which two moved sides meet face to face."""
    course = contour if by > 0 else _run_back(contour)
    bodies = Bodies.of(course.segments)
    chords = [chord for chord in _chords(course, bodies, abs(by)) if 0 <= chord[0] <= abs(by)]
    if not chords:
        return None
    halves, middles = np.array([half for half, _ in chords]), np.array([mid for _, mid in chords])
    return min(halves[bodies.clear(middles, halves - BARE)].tolist(), default=None)


def _run_back(contour: Contour) -> Contour:
    return Contour(tuple(each.reversed() for each in reversed(contour.segments)))


def _chords(course: Contour, bodies: Bodies, reach: float) -> Iterator[tuple[float, complex]]:
    """Yield half of each chord square on two sides (negative between backs), and its middle."""
    fronts = list(_fronts(course))
    lows, highs = np.array([f.low for f in fronts]), np.array([f.high for f in fronts])
    other_way = math.copysign(math.tau, course.area) + math.pi
    boxes = bodies.boxes[[f.place for f in fronts]]
    for i, j in near(boxes, boxes, 2 * reach):
        least, most = lows[j] - highs[i] - FACING, highs[j] - lows[i] + FACING
        facing = (least <= -math.pi) & (most >= -math.pi)
        facing |= (least <= other_way) & (most >= other_way)
        facing &= i <= j
        for one, two in zip(i[facing], j[facing], strict=True):
            yield from _between(fronts[one], fronts[two])


def _fronts(course: Contour) -> Iterator[Front]:
    """Yield the fronts in order."""
    angle = cmath.phase(course.segments[0].tangent())
    for place, (each, turn) in enumerate(zip(course.segments, course.corners, strict=True)):
        begin = cmath.phase(each.tangent())
        begin += math.tau * round((angle + turn - begin) / math.tau)
        if turn > 0:
            yield Front(place, each.start, 0.0, begin - turn, begin)
        angle = begin + each.sweep
        if isinstance(each, Line):
            yield Front(place, each.start, 0.0, begin, begin, each.length)
        else:
            radius = math.copysign(each.radius, each.sweep)
            yield Front(place, each.centre, radius, min(begin, angle), max(begin, angle))


def _between(one: Front, two: Front) -> Iterator[tuple[float, complex]]:
    if one.length and two.length:
        yield from _lines(one, two)
    elif one.length:
        yield from _line_and_round(one, two)
    elif two.length:
        yield from _line_and_round(two, one)
    else:
        yield from _rounds(one, two)


def _lines(one: Front, two: Front) -> Iterator[tuple[float, complex]]:
    """Yield some of the chords between two lines that run against each other."""
    apart, normal = two.centre - one.centre, -1j * one.way
    last = dot(apart, one.way)
    low, high = max(0.0, last - two.length), min(one.length, last)
    for share in SHARES if high >= low - SAME else ():
        along = low + share * (high - low)
        foot = one.centre + along * one.way
        width = dot(two.centre + (last - along) * two.way - foot, normal)
        yield width / 2, foot + width / 2 * normal


def _line_and_round(line: Front, arc: Front) -> Iterator[tuple[float, complex]]:
    normal = -1j * line.way
    far = arc.centre - arc.radius * normal
    along, width = dot(far - line.centre, line.way), dot(far - line.centre, normal)
    if -SAME <= along <= line.length + SAME and arc.has(-normal):
        yield width / 2, far - width / 2 * normal


def _rounds(one: Front, two: Front) -> Iterator[tuple[float, complex]]:
    """Yield the chords between two arcs: on the line of their centres, or all if they share it."""
    apart = two.centre - one.centre
    if abs(apart) > SAME:
        normals = [apart / abs(apart), -apart / abs(apart)]
    else:
        normals = [*one.normals, *(-way for way in two.normals)]
    for normal in normals:
        width = dot(apart, normal) - one.radius - two.radius
        if one.has(normal) and two.has(-normal):
            yield width / 2, one.centre + (one.radius + width / 2) * normal
