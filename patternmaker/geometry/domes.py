"""A dome over a seat: arcs of circles from its crown down to every place of the seam.

The surface is a model. It stands on the seam, level, and has its crown at one height over one point
of the plan. Every upright cut through the crown is, on each side of it, an arc of a circle that
leaves the crown level and meets the seam. Over a circle that is a spherical cap, exactly, of radius
(c^2/4 + h^2) / 2h for a width c and a height h (Machinery's Handbook, 31st ed., p. 79 and 91). Over
any other outline it is how a moulded pad is taken to rise (common practice, no source); where the
outline has a corner the dome has a crease that runs from it to the crown.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING

from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.plain import as_circle
from patternmaker.geometry.segments import cross, dot, radius_over

if TYPE_CHECKING:
    from patternmaker.geometry.segments import Segment

CLOSELY = 8  # places to a segment at which the seam's slant is looked at
FINE = 0.05  # mm; chords from which the middle of an area is reckoned
CLOSE_ENOUGH = 1e-12  # of a chord, when it is solved from its arc


@dataclass(frozen=True)
class Meridian:
    """An arc from the seam up to the crown, where it is level.

    Args:
        reach: in plan, from under the crown to the seam.
        rise: how high the crown stands over the seam; no more than ``reach``.

    >>> Meridian(62.5, 50).radius, Meridian(200, 40).radius
    (64.0625, 520.0)
    """

    reach: float
    rise: float

    @property
    def radius(self) -> float:
        """Its radius."""
        return radius_over(self.reach, self.rise)

    @property
    def angle(self) -> float:
        """How far it turns from the crown to the seam, in radians."""
        return 2 * math.atan2(self.rise, self.reach)

    @property
    def length(self) -> float:
        """From the crown to the seam along it."""
        return self.radius * self.angle

    @property
    def lengthens(self) -> float:
        """How much longer it gets for each millimetre of reach."""
        return self.angle * self.reach / self.rise - 1

    def out(self, along: float) -> float:
        """Return how far out in plan one is, a length from the crown along it."""
        return self.radius * math.sin(along / self.radius)

    def shrinks(self, along: float) -> float:
        """Return how much less than a millimetre further out one gets there for a millimetre."""
        return 1 - math.cos(along / self.radius)


def over_crown(width: float, rise: float) -> float:
    """Return the length over the crown of a dome so wide and high in the middle.

    >>> round(over_crown(400, 40), 6)
    410.582764
    """
    return 2 * Meridian(width / 2, rise).length


def width_under(arc: float, rise: float) -> float:
    """Return how wide a dome of that height is whose length over the crown is ``arc``.

    The arc is at least a half circle, pi times the height. Newton's method, from above.
    """
    if arc <= math.pi * rise:
        return 2 * rise
    half = arc / 2
    while abs(miss := Meridian(half, rise).length - arc / 2) > CLOSE_ENOUGH * arc:
        half -= miss / Meridian(half, rise).lengthens
    return 2 * half


@dataclass(frozen=True)
class Place:
    """A place of the seam as seen from under the crown.

    Args:
        reach: how far away it is.
        leaves: how much further away it gets for each millimetre along the seam.
        turns: how far its bearing turns for each millimetre, in radians.
    """

    reach: float
    leaves: float
    turns: float

    @classmethod
    def of(cls, segment: Segment, rest: float, crown: complex) -> Place:
        """Return the place ``rest`` mm along an edge."""
        away, way = segment.point(rest) - crown, segment.tangent(rest)
        reach = abs(away)
        return cls(reach, dot(away, way) / reach, cross(away, way) / reach**2)


@dataclass(frozen=True)
class Dome:
    """A dome.

    Args:
        seam: its outline in plan.
        crown: the point of the plan over which it is highest.
        rise: how high it stands there over the seam.
    """

    seam: Contour
    crown: complex
    rise: float

    @classmethod
    def over(cls, seam: Contour, rise: float) -> Dome:
        """Return the dome whose crown stands over the middle of its area."""
        return cls(seam, middle_of_area(seam), rise)

    @property
    def nearest(self) -> float:
        """From under the crown to the nearest place of the seam: no dome can be higher."""
        return min(each.distance(self.crown) for each in self.seam.segments)

    @property
    def slant(self) -> float:
        """The least angle (radians) at which a line from under the crown meets the seam.

        Negative where the seam runs backwards: it is not wholly in sight from there.
        """
        slants = []
        for each in self.seam.segments:
            for i in range(CLOSELY + 1):
                place = Place.of(each, each.length * i / CLOSELY, self.crown)
                slants.append(math.asin(max(-1.0, min(1.0, place.turns * place.reach))))
        return min(slants)

    def meridian(self, along: float) -> Meridian:
        """Return the arc down to a place of the seam."""
        return Meridian(abs(self.seam.point_at(along) - self.crown), self.rise)

    def bearing(self, along: float) -> complex:
        """Return the direction in plan from the crown to a place of the seam."""
        away = self.seam.point_at(along) - self.crown
        return away / abs(away)

    @cached_property
    def blank(self) -> Contour:
        """The flat blank: every place of its edge as far from the crown as the arc over it is long.

        Over a circle it is a circle, exactly. Its joints are those of the seam.
        """
        if circle := as_circle(self.seam):
            factor = Meridian(circle.radius, self.rise).length / circle.radius
            return self.seam.mapped(factor, self.crown * (1 - factor))
        pieces = [self._blank_edge(each) for each in self.seam.segments]
        begins = list(accumulate((len(piece) for piece in pieces), initial=0))
        joints = {name: begins[index] for name, index in self.seam.joints.items()}
        return Contour(tuple(each for piece in pieces for each in piece), joints)

    def blank_point(self, along: float) -> complex:
        """Return the place on the blank's edge that belongs to a place of the seam."""
        return self.crown + self.meridian(along).length * self.bearing(along)

    def _blank_edge(self, segment: Segment) -> tuple[Segment, ...]:
        def edge(rest: float) -> tuple[complex, complex]:
            place = Place.of(segment, rest, self.crown)
            arc = Meridian(place.reach, self.rise)
            bearing = (segment.point(rest) - self.crown) / place.reach
            step = complex(arc.lengthens * place.leaves, arc.length * place.turns)
            return self.crown + arc.length * bearing, bearing * step / abs(step)

        return fitted(edge, 0.0, segment.length)


def middle_of_area(contour: Contour) -> complex:
    """Return the middle of an area: of a circle exactly, else as its fine chords have it."""
    if circle := as_circle(contour):
        return circle.centre
    chords = list(pairwise(contour.chords(FINE)))
    moments = [cross(a, b) for a, b in chords]
    sums = ((a + b) * moment for (a, b), moment in zip(chords, moments, strict=True))
    return sum(sums) / (3 * math.fsum(moments))
