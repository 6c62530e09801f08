"""Telling the contours that rule and compass strike as well as paper does."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.geometry.segments import Arc

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.contour import Contour

SAME = 1e-6  # mm; centres and radii this close are the same
SHARP = 0.001  # mm; a corner of a smaller radius is sharp
CLOSELY = 16  # places to a segment at which it is compared
KNIFE = 0.25  # mm; what a knife along a rule strays: a simpler line this close will do


@dataclass(frozen=True)
class Circle:
    """A full circle."""

    centre: complex
    radius: float


@dataclass(frozen=True)
class Rectangle:
    """A rectangle with corners of one radius, its middle at ``centre``."""

    centre: complex
    width: float
    height: float
    corner: float

    @property
    def diagonal(self) -> float:
        """From corner to corner of the sharp rectangle round it: proves that it is square."""
        return math.hypot(self.width, self.height)

    def distance(self, point: complex) -> float:
        """Return how far a point lies outside its edge, negative inside."""
        away = point - self.centre
        x = abs(away.real) - (self.width / 2 - self.corner)
        y = abs(away.imag) - (self.height / 2 - self.corner)
        return abs(complex(max(x, 0.0), max(y, 0.0))) + min(max(x, y), 0.0) - self.corner


def as_circle(contour: Contour) -> Circle | None:
    """Return the circle that a contour is, or None."""
    first = contour.segments[0]
    if isinstance(first, Arc) and all(
        isinstance(each, Arc)
        and abs(each.centre - first.centre) < SAME
        and abs(each.radius - first.radius) < SAME
        for each in contour.segments
    ):
        return Circle(first.centre, first.radius)
    return None


def as_rectangle(contour: Contour, close: float = KNIFE) -> Rectangle | None:
    """Return the rounded rectangle that a contour follows within ``close`` mm, or None.

    The corner's radius is the one that gives the same area: W H - (4 - pi) r^2. A circle that is
    drawn out of round has no sides to rule, and is none.
    """
    missing = max(0.0, contour.width * contour.height - contour.area)
    corner = math.sqrt(missing / (4 - math.pi))
    if corner < SHARP:
        corner = 0.0
    shorter, longer = sorted((contour.width, contour.height))
    if corner > shorter / 2 + close or 2 * corner > longer - 2 * close:
        return None
    guess = Rectangle(contour.middle, contour.width, contour.height, min(corner, shorter / 2))
    strays = (abs(guess.distance(point)) for point in _closely(contour))
    return guess if all(stray <= close for stray in strays) else None


def _closely(contour: Contour) -> Iterator[complex]:
    """Yield points all along a contour."""
    for each in contour.segments:
        for i in range(CLOSELY):
            yield each.point(each.length * i / CLOSELY)
