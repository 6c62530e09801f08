"""Lines and circular arcs: the two things that every edge is made of.

A point of the plane is a complex number, x + yj in millimetres; a direction is one of length 1.
So a quarter turn to the left is a product with ``1j``, exactly, and a distance is ``abs``.
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    from collections.abc import Iterator

Box: TypeAlias = tuple[float, float, float, float]
"""left, bottom, right, top"""

FULL_TURN = 2 * math.pi
LARGEST_BEZIER = math.pi / 4  # a cubic misses an arc of 45 degrees by 4.2e-6 of its radius
_QUARTERS = {math.pi / 2: 1j, -math.pi / 2: -1j, math.pi: -1 + 0j, -math.pi: -1 + 0j}


def turned(angle: float) -> complex:
    """Return the direction at ``angle`` radians from the x axis, exact at quarter turns."""
    return _QUARTERS.get(angle) or cmath.rect(1.0, angle)


def cross(a: complex, b: complex) -> float:
    """Return the z of the cross product: positive where ``b`` lies to the left of ``a``."""
    return a.real * b.imag - a.imag * b.real


def dot(a: complex, b: complex) -> float:
    """Return the scalar product."""
    return a.real * b.real + a.imag * b.imag


def radius_over(half: float, rise: float) -> float:
    """Return the radius of the arc that rises over a chord, from half the chord.

    r = (c^2 + 4 h^2) / 8 h for a chord c and a rise h (Machinery's Handbook, p. 79).

    >>> round(radius_over(16 / 2, 6), 6)
    8.333333
    """
    return (half**2 + rise**2) / (2 * rise)


@dataclass(frozen=True, slots=True)
class Line:
    """A straight edge from ``start`` to ``end``."""

    start: complex
    end: complex

    @property
    def length(self) -> float:
        """Its length."""
        return abs(self.end - self.start)

    @property
    def sweep(self) -> float:
        """How far its direction turns: not at all."""
        return 0.0

    @property
    def moment(self) -> float:
        """Its share of the area of the ring that it belongs to (Green's theorem)."""
        return cross(self.start, self.end) / 2

    @property
    def bounds(self) -> Box:
        """Its bounding box."""
        (x1, x2), (y1, y2) = _sorted(self.start.real, self.end.real), _sorted(
            self.start.imag, self.end.imag
        )  # fmt: skip
        return x1, y1, x2, y2

    def point(self, along: float) -> complex:
        """Return the point ``along`` mm from its start."""
        return self.start + along * self.tangent(along)

    def tangent(self, along: float = 0.0) -> complex:
        """Return its direction."""
        del along
        way = self.end - self.start
        return way / abs(way)

    def grown(self, by: float) -> Line:
        """Return the parallel line, ``by`` mm to the right of its direction."""
        shift = -1j * by * self.tangent()
        return Line(self.start + shift, self.end + shift)

    def cut(self, begin: float, end: float) -> Line:
        """Return the part between two lengths along it."""
        return Line(self.point(begin), self.point(end))

    def reversed(self) -> Line:
        """Return it run the other way."""
        return Line(self.end, self.start)

    def mapped(self, factor: complex, shift: complex) -> Line:
        """Return it turned and scaled by ``factor``, then moved by ``shift``."""
        return Line(self.start * factor + shift, self.end * factor + shift)

    def distance(self, point: complex) -> float:
        """Return how far ``point`` lies from it."""
        way = self.end - self.start
        square = dot(way, way)
        share = dot(point - self.start, way) / square if square else 0.0  # a side of no length
        return abs(point - self.start - min(1.0, max(0.0, share)) * way)

    def along(self, point: complex) -> float:
        """Return the length along it of its point nearest to ``point``."""
        return min(self.length, max(0.0, dot(point - self.start, self.tangent())))

    def chords(self, tolerance: float) -> Iterator[complex]:
        """Yield points along it, without its end."""
        del tolerance
        yield self.start


@dataclass(frozen=True, slots=True)
class Arc:
    """A circular edge from ``start`` about ``centre``, through ``sweep`` radians (to the left)."""

    centre: complex
    start: complex
    sweep: float

    @property
    def radius(self) -> float:
        """Its radius."""
        return abs(self.start - self.centre)

    @property
    def end(self) -> complex:
        """Its end."""
        return self._turned_by(self.sweep)

    @property
    def length(self) -> float:
        """Its length."""
        return self.radius * abs(self.sweep)

    @property
    def moment(self) -> float:
        """Its share of the area of its ring: that of its chord, and the segment beyond."""
        segment = self.radius**2 * (self.sweep - math.sin(self.sweep)) / 2
        return cross(self.start, self.end) / 2 + segment

    @property
    def bulge(self) -> float:
        """The tangent of a quarter of its sweep (DXF reference, VERTEX code 42)."""
        return math.tan(self.sweep / 4)

    @property
    def bounds(self) -> Box:
        """Its bounding box: of its ends, and of the outermost points that it passes."""
        points = [self.start, self.end]
        points += [self.centre + self.radius * way for way in (1, 1j, -1, -1j) if self.faces(way)]
        xs, ys = [p.real for p in points], [p.imag for p in points]
        return min(xs), min(ys), max(xs), max(ys)

    def faces(self, way: complex) -> bool:
        """Return whether the point that lies in direction ``way`` from the centre is on it."""
        return self.angle_to(way) <= abs(self.sweep) + 1e-12

    def angle_to(self, way: complex) -> float:
        """Return how far along its sweep the direction ``way`` from the centre lies."""
        angle = cmath.phase(way / (self.start - self.centre)) * math.copysign(1.0, self.sweep)
        return angle if angle >= -1e-12 else angle + FULL_TURN

    def point(self, along: float) -> complex:
        """Return the point ``along`` mm from its start."""
        return self._turned_by(self._angle(along))

    def tangent(self, along: float = 0.0) -> complex:
        """Return its direction ``along`` mm from its start."""
        way = (self.start - self.centre) / self.radius * turned(self._angle(along))
        return way * math.copysign(1.0, self.sweep) * 1j

    def _turned_by(self, angle: float) -> complex:
        """Return its start turned about its centre, as a step from the start.

        So an arc so flat that its centre is far away still ends where it should.
        """
        arm = self.start - self.centre
        if angle in _QUARTERS:
            return self.centre + arm * _QUARTERS[angle]
        return self.start + arm * (2j * math.sin(angle / 2)) * turned(angle / 2)

    def _angle(self, along: float) -> float:
        return self.sweep * (along / self.length)

    def grown(self, by: float) -> Arc:
        """Return the concentric arc, ``by`` mm to the right of its direction.

        Where that passes the centre the arc comes out on the far side, running backwards: a loop
        that `Contour.grown` cuts away.
        """
        arm = self.start - self.centre
        step = math.copysign(by, by * self.sweep) * arm / self.radius
        return Arc(self.centre, self.start + step, self.sweep)

    def cut(self, begin: float, end: float) -> Arc:
        """Return the part between two lengths along it."""
        return Arc(self.centre, self.point(begin), self._angle(end) - self._angle(begin))

    def reversed(self) -> Arc:
        """Return it run the other way."""
        return Arc(self.centre, self.end, -self.sweep)

    def mapped(self, factor: complex, shift: complex) -> Arc:
        """Return it turned and scaled by ``factor``, then moved by ``shift``."""
        return Arc(self.centre * factor + shift, self.start * factor + shift, self.sweep)

    def distance(self, point: complex) -> float:
        """Return how far ``point`` lies from it."""
        if (point == self.centre) or self.faces(point - self.centre):
            return abs(self.beyond(point))
        return min(abs(point - self.start), abs(point - self.end))

    def beyond(self, point: complex) -> float:
        """Return how far ``point`` lies outside its circle, negative inside.

        Reckoned from its start, so that it is as good on an arc so flat that its centre is far
        away: |v + arm| - r = (|v|^2 + 2 v . arm) / (|v + arm| + r).
        """
        away, arm = point - self.start, self.start - self.centre
        return (abs(away) ** 2 + 2 * dot(away, arm)) / (abs(away + arm) + abs(arm))

    def along(self, point: complex) -> float:
        """Return the length along it of its point nearest to ``point``."""
        way = point - self.centre
        if way and self.faces(way):
            return min(self.length, self.radius * max(0.0, self.angle_to(way)))
        return 0.0 if abs(point - self.start) <= abs(point - self.end) else self.length

    def chords(self, tolerance: float) -> Iterator[complex]:
        """Yield points along it, without its end, whose chords stay within ``tolerance`` of it."""
        step = 2 * math.acos(max(0.0, 1 - tolerance / self.radius))
        count = max(1, math.ceil(abs(self.sweep) / step))
        for i in range(count):
            yield self.point(self.length * i / count)

    def beziers(self) -> Iterator[tuple[complex, complex, complex]]:
        """Yield cubic Bezier pieces: two handles and an end, of 45 degrees at most each.

        The handle's length, 4/3 tan(sweep / 4) of the radius, is the usual one: it puts the
        middle of the piece on the arc.
        """
        count = max(1, math.ceil(abs(self.sweep) / LARGEST_BEZIER - 1e-9))
        step = self.sweep / count
        reach = 4 / 3 * math.tan(step / 4) * 1j
        ways = [(self.start - self.centre) * turned(step * i) for i in range(count)]
        for here, there in zip(ways, [*ways[1:], self.end - self.centre], strict=True):
            yield (
                self.centre + here * (1 + reach),
                self.centre + there * (1 - reach),
                self.centre + there,
            )


Segment: TypeAlias = Line | Arc


def _sorted(a: float, b: float) -> tuple[float, float]:
    return (a, b) if a <= b else (b, a)
