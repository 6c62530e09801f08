"""Smooth curves as tangent arcs.

A biarc is a pair of arcs that leaves one point in a given direction and arrives at another in a
given direction, with a common tangent where the two meet. With both handles of one length (the
usual choice; see K. M. Bolton, "Biarc curves", Computer-Aided Design 7 (1975)) it exists wherever
the curve turns by less than a half turn, so a curve is halved until every biarc lies close to it.
"""

from __future__ import annotations

import cmath
import math
from typing import TYPE_CHECKING

from patternmaker.geometry.segments import Arc, Line, Segment, dot

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

CLOSE = 0.0002  # mm; lengths then agree to better than a thousandth (measured on ellipses)
STRAIGHT = 1e-8  # radians; an arc that turns less is a line
DEEPEST = 24  # halvings; a curve that needs more is not smooth
_PROBES = (0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875)


def arc_between(start: complex, way: complex, end: complex) -> Segment:
    """Return the arc (or line) that leaves ``start`` in direction ``way`` and reaches ``end``."""
    chord = end - start
    half = cmath.phase(chord / way)
    if abs(half) < STRAIGHT:
        return Line(start, end)
    radius = abs(chord) / (2 * math.sin(half))  # negative where it turns right
    return Arc(start + 1j * radius * way, start, 2 * half)


def biarc(start: complex, leave: complex, end: complex, arrive: complex) -> tuple[Segment, ...]:
    """Return the two tangent arcs from ``start`` to ``end`` with the given directions."""
    chord, both = end - start, leave + arrive
    a = 2 * (1 - dot(leave, arrive))
    b = 2 * dot(chord, both)
    c = -dot(chord, chord)
    if a < 1e-14:
        reach = -c / b
    else:
        root = math.sqrt(b * b - 4 * a * c)
        reach = -2 * c / (b + root) if b >= 0 else (root - b) / (2 * a)
    meet = (start + reach * leave + end - reach * arrive) / 2
    return arc_between(start, leave, meet), arc_between(end, -arrive, meet).reversed()


def fitted(
    curve: Callable[[float], tuple[complex, complex]],
    begin: float,
    end: float,
    close: float = CLOSE,
) -> tuple[Segment, ...]:
    """Return tangent arcs that follow ``curve`` within ``close`` mm.

    Args:
        curve: takes a parameter, gives a point and the direction (length 1) there.
        begin: the parameter of the first point.
        end: the parameter of the last.
        close: the largest distance allowed between a point of the curve and the arcs.

    Raises:
        ValueError: if the curve is not smooth between its ends.
    """
    return tuple(_halved(curve, begin, end, close, DEEPEST))


def _halved(
    curve: Callable[[float], tuple[complex, complex]],
    begin: float,
    end: float,
    close: float,
    left: int,
) -> Iterator[Segment]:
    (start, leave), (stop, arrive) = curve(begin), curve(end)
    if left == 0:
        raise ValueError("the curve is not smooth")
    if dot(leave, arrive) > 0 and dot(stop - start, leave + arrive) > 0:
        pair = biarc(start, leave, stop, arrive)
        probes = (curve(begin + share * (end - begin))[0] for share in _PROBES)
        if all(_distance(pair, probe) <= close for probe in probes):
            yield from pair
            return
    middle = (begin + end) / 2
    yield from _halved(curve, begin, middle, close, left - 1)
    yield from _halved(curve, middle, end, close, left - 1)


def _distance(pair: tuple[Segment, ...], point: complex) -> float:
    """Return how far ``point`` lies from the nearer of the two circles (or lines)."""
    return min(
        abs(abs(point - each.centre) - each.radius)
        if isinstance(each, Arc)
        else abs(((point - each.start) / each.tangent()).imag)
        for each in pair
    )
