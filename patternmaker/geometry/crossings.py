"""Where two segments meet; closed forms for lines and circles."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from patternmaker.geometry.segments import Arc, Line, Segment, cross, dot

if TYPE_CHECKING:
    from collections.abc import Iterator

ALONG = 1e-9  # radians; lines that meet at less run along each other
ON_IT = 1e-7  # mm; a point this close to a segment's end lies on the segment
SAME = 1e-12  # mm; circles whose centres lie closer do not cross


def crossings(one: Segment, two: Segment) -> Iterator[complex]:
    """Yield the points that two segments share (none where they run along each other)."""
    for rough in _candidates(one, two):
        for point in (rough, _truer(one, two, rough)):
            if one.distance(point) <= ON_IT and two.distance(point) <= ON_IT:
                yield point
                break


def _truer(one: Segment, two: Segment, point: complex) -> complex:
    """Return a crossing after one step of Newton's method.

    It mends what the square root of a difference of two very large radii has lost.
    """
    (off, away), (other_off, other_away) = _off(one, point), _off(two, point)
    slant = cross(away, other_away)
    if abs(slant) <= ALONG:
        return point
    return point + 1j * (off * other_away - other_off * away) / slant


def _off(segment: Segment, point: complex) -> tuple[float, complex]:
    """Return how far a point lies off the whole line or circle, and the direction of "off"."""
    if isinstance(segment, Line):
        away = -1j * segment.tangent()
        return dot(point - segment.start, away), away
    spoke = point - segment.centre
    return segment.beyond(point), spoke / abs(spoke) if spoke else 1.0


def _candidates(one: Segment, two: Segment) -> Iterator[complex]:
    if isinstance(one, Line):
        yield from _lines(one, two) if isinstance(two, Line) else _line_and_circle(one, two)
    elif isinstance(two, Line):
        yield from _line_and_circle(two, one)
    else:
        yield from _circles(one, two)


def _lines(one: Line, two: Line) -> Iterator[complex]:
    way, other = one.end - one.start, two.end - two.start
    slant = cross(way, other)
    if abs(slant) > ALONG * abs(way) * abs(other):
        yield one.start + way * cross(two.start - one.start, other) / slant


def _line_and_circle(line: Line, arc: Arc) -> Iterator[complex]:
    way = line.tangent()
    foot = line.start + dot(arc.centre - line.start, way) * way
    yield from _both_sides(foot, way, arc.radius, abs(foot - arc.centre))


def _circles(one: Arc, two: Arc) -> Iterator[complex]:
    apart = abs(two.centre - one.centre)
    if apart < SAME:
        return
    way = (two.centre - one.centre) / apart
    reach = (apart**2 + one.radius**2 - two.radius**2) / (2 * apart)
    yield from _both_sides(one.centre + reach * way, 1j * way, one.radius, abs(reach))


def _both_sides(foot: complex, way: complex, radius: float, reach: float) -> Iterator[complex]:
    """Yield the ends of a chord from its foot, which lies ``reach`` from the centre."""
    half = math.sqrt(max(0.0, (radius - reach) * (radius + reach)))
    yield foot + half * way
    if half:
        yield foot - half * way
