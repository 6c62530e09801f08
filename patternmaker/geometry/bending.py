"""A sheet that slopes, or is bent one way, over a plan: how high it lies, and how it lies flat.

Bent one way only, it is part of a general cylinder, and lies flat without stretch: square to the
bend nothing changes, along it the arc length takes the place of the plan's.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Protocol

from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.chains import plain
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.halving import halved
from patternmaker.geometry.quadrature import Integral, evenly, length_of
from patternmaker.geometry.segments import radius_over

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from patternmaker.geometry.monotone import Monotone
    from patternmaker.geometry.segments import Segment

STEPS = 12  # intervals of an integral between two knots
SAME = 1e-9  # mm; a place so near an end of an integral is that end


class Profile(Protocol):
    """A curve's height over a straight line."""

    def at(self, place: float) -> tuple[float, float]:
        """Return the height at a place of the line, and the slope there."""

    def knots(self) -> Sequence[float]:
        """Return the places between which it is smooth."""


@dataclass(frozen=True)
class Straight:
    """A line that rises evenly."""

    slope: float = 0.0

    def at(self, place: float) -> tuple[float, float]:
        """Return height and slope."""
        return self.slope * place, self.slope

    def knots(self) -> tuple[float, ...]:
        """Return none: it is smooth."""
        return ()


@dataclass(frozen=True)
class Bow:
    """A circular arc over a chord about 0, its ends at height 0.

    Args:
        chord: the length of the chord.
        rise: how high its middle stands; below the chord if negative.
        slope: of the chord itself.
    """

    chord: float
    rise: float
    slope: float = 0.0

    @property
    def radius(self) -> float:
        """The radius of the arc."""
        return radius_over(self.chord / 2, abs(self.rise))

    def at(self, place: float) -> tuple[float, float]:
        """Return height and slope."""
        root = math.sqrt(self.radius**2 - place**2)
        half = math.sqrt(self.radius**2 - self.chord**2 / 4)
        up = math.copysign(1.0, self.rise)
        return up * (root - half) + self.slope * place, self.slope - up * place / root

    def knots(self) -> tuple[float, ...]:
        """Return none: it is smooth."""
        return ()


@dataclass(frozen=True)
class Tabled:
    """A smooth curve through a table of heights that never overshoots them."""

    curve: Monotone

    def at(self, place: float) -> tuple[float, float]:
        """Return height and slope."""
        return self.curve.at(place)

    def knots(self) -> Sequence[float]:
        """Return the places of the table."""
        return self.curve.places


@dataclass(frozen=True)
class Bend:
    """A sheet over a plan: one profile from front to back, or one from left to right.

    Args:
        level: its height over the plan's origin, mm.
        along: its profile from front to back.
        across: its profile from left to right; where this is bent, ``along`` is straight.
    """

    level: float
    along: Profile = Straight()
    across: Profile = Straight()

    @property
    def is_level(self) -> bool:
        """Whether it neither slopes nor bends."""
        return self.along == self.across == Straight()

    def at(self, place: complex) -> float:
        """Return its height over a place of the plan."""
        if self.is_level:
            return self.level
        return self.level + self.across.at(place.real)[0] + self.along.at(place.imag)[0]

    def slope(self, place: complex) -> complex:
        """Return how its height changes to the right and to the back, mm for each mm."""
        return complex(self.across.at(place.real)[1], self.along.at(place.imag)[1])


@dataclass(frozen=True)
class Spread:
    """A bent sheet laid flat, its plan drafted smaller by a scale each way.

    With the plan at x, y, the scales u, v, and the sheet's slope h' along its bend:
    bent from front to back it lies at (u x, integral of sqrt(v^2 + h'^2) dy); bent from left to
    right over a slope m to the back, with g = sqrt(v^2 + m^2), at the integral of
    sqrt(u^2 + (h' v / g)^2) dx to the right and at g y + m h / g to the back.
    """

    bend: Bend
    across: float
    along: float

    @property
    def _is_across(self) -> bool:
        return not isinstance(self.bend.across, Straight)

    @property
    def _slope(self) -> float:
        return self.bend.along.at(0.0)[1] if self._is_across else 0.0

    @property
    def _generator(self) -> float:
        """The length of a mm of plan to the back, along the straight lines of the sheet."""
        return math.hypot(self.along, self._slope)

    def across_speed(self, x: float) -> float:
        """Return how far a mm of plan to the right lies flat."""
        if not self._is_across:
            return self.across
        steep = self.bend.across.at(x)[1] * self.along / self._generator
        return math.hypot(self.across, steep)

    def along_speed(self, y: float) -> float:
        """Return how far a mm of plan to the back lies flat."""
        if self._is_across:
            return self._generator
        return math.hypot(self.along, self.bend.along.at(y)[1])

    def _speed(self, *, across: bool) -> tuple[Callable[[float], float], Profile]:
        if across:
            return self.across_speed, self.bend.across
        return self.along_speed, self.bend.along

    def extent(self, begin: float, end: float, *, across: bool) -> float:
        """Return how far it lies flat between two places of the plan, one way."""
        speed, profile = self._speed(across=across)
        if isinstance(profile, Straight):
            return speed(0.0) * (end - begin)
        return length_of(speed, _breaks(profile, begin, end))

    def laid(self, contour: Contour) -> Contour:
        """Return a contour of the plan as it lies on the flat sheet, its joints kept."""
        if isinstance(self.bend.along, Straight) and not self._is_across:
            return contour.scaled(self.across, self.along_speed(0.0))
        flat = _Flattened(self, contour)
        pieces = [tuple(plain(fitted(curve, 0.0, 1.0))) for curve in flat.curves()]
        begins = [0]
        for piece in pieces:
            begins.append(begins[-1] + len(piece))
        joints = {name: begins[index] for name, index in contour.joints.items()}
        return Contour(tuple(each for piece in pieces for each in piece), joints)


class _Flattened:
    """The map from the plan of one contour to the flat sheet."""

    def __init__(self, spread: Spread, contour: Contour) -> None:
        self.spread, self.contour = spread, contour
        left, bottom, right, top = contour.bounds
        self._right = self._run(left, right, across=True)
        self._back = self._run(bottom, top, across=False)

    def _run(self, begin: float, end: float, *, across: bool) -> Callable[[float], float]:
        """Return the flat distance from the origin's line to each place."""
        speed, profile = self.spread._speed(across=across)  # noqa: SLF001
        if isinstance(profile, Straight):
            return lambda place: speed(0.0) * place
        integral = Integral.of(speed, _breaks(profile, begin, end))
        middle = integral.at(0.0).real
        return lambda place: integral.at(place).real - middle

    def curves(self) -> list[Callable[[float], tuple[complex, complex]]]:
        """Return each edge of the contour as a curve on the flat sheet."""
        return [self._curve(each) for each in self.contour.segments]

    def _curve(self, segment: Segment) -> Callable[[float], tuple[complex, complex]]:
        def curve(share: float) -> tuple[complex, complex]:
            along = share * segment.length
            place, way = segment.point(along), segment.tangent(along)
            move = self._moved(place, way)
            return self._laid(place), move / abs(move)

        return curve

    def _laid(self, place: complex) -> complex:
        flat = complex(self._right(place.real), self._back(place.imag))
        return flat + 1j * self._sheared * self.spread.bend.across.at(place.real)[0]

    def _moved(self, place: complex, way: complex) -> complex:
        right = self.spread.across_speed(place.real) * way.real
        back = self.spread.along_speed(place.imag) * way.imag
        steep = self.spread.bend.across.at(place.real)[1]
        return complex(right, back + self._sheared * steep * way.real)

    @property
    def _sheared(self) -> float:
        """How far the sheet runs back for each mm that its bend rises."""
        return self.spread._slope / self.spread._generator  # noqa: SLF001


def _breaks(profile: Profile, begin: float, end: float) -> list[float]:
    inner = (knot for knot in profile.knots() if begin + SAME < knot < end - SAME)
    knots = [begin, *inner, end]
    return [*(place for pair in pairwise(knots) for place in evenly(*pair, STEPS)[:-1]), end]


def scale_for(extent: Callable[[float], float], wanted: float) -> float:
    """Return the scale of the plan at which an extent of the flat sheet is as wanted.

    Raises:
        ValueError: if the sheet is so steep that no plan is small enough.
    """
    if extent(0.0) >= wanted:
        raise ValueError("the sheet is too steep for that")
    high = 1.0
    while extent(high) < wanted:
        high *= 2
    return sum(halved(0.0, high, lambda scale: extent(scale) <= wanted)) / 2
