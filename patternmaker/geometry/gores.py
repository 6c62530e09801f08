"""Gores of a dome: flat pieces that meet at the crown and are sewn side to side.

A gore covers the part of a dome between two meridians. Laid flat, the meridian down its middle is
straight, and each level of the dome (the same share of the way from the crown to the seam, on every
meridian) is a curve about the crown. Exact, whatever the outline: the line down the middle, both
sides and the base have the lengths that they have on the dome, every part of the base that of its
part of the seam, and the angles at the crown close the full turn. Every level is as long as it is
on the dome, within the accuracy of the sum. In between, the cloth must shear, since no part of a
dome can be laid flat as it is (Gauss): that is the model.

Over a sphere this is the projection of Stab and Werner (J. P. Snyder, "Map Projections: A Working
Manual", USGS Professional Paper 1395, p. 139), but for its sides, which that one draws a little too
long: each level is drawn in at its ends by just so much that the side keeps its length.
"""

from __future__ import annotations

import cmath
import math
from bisect import bisect_right
from dataclasses import dataclass
from functools import cached_property, partial
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.contour import Path
from patternmaker.geometry.domes import Meridian, Place

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.geometry.domes import Dome
    from patternmaker.geometry.segments import Segment

LEVELS = 32  # from the crown to the seam
SPANS = 8  # at least, from the middle of a gore to its side
TURNS = 60  # tries to find how far a level is drawn in; five or six are enough
EXACT = 1e-11  # mm
GAUSS = ((-math.sqrt(0.6), 5 / 9), (0.0, 8 / 9), (math.sqrt(0.6), 5 / 9))
"""Places and weights of the rule of Gauss and Legendre on three places."""
FIFTHS = (
    (-25, 48, -36, 16, -3), (-3, -10, 18, -6, 1), (1, -8, 0, 8, -1), (-1, 6, -18, 10, 3),
    (3, -16, 36, -48, 25),
)  # fmt: skip
"""Twelve times the slope at each of five evenly spaced places (Abramowitz and Stegun, 25.3.6)."""


@dataclass(frozen=True)
class Gore:
    """A gore laid flat, its crown at the origin, the line down its middle along the bearing.

    Args:
        left: from the crown down to where its base begins.
        base: along the seam, anticlockwise round the seat.
        right: from where the base ends up to the crown.
    """

    left: Path
    base: Path
    right: Path

    def mapped(self, factor: complex) -> Gore:
        """Return it turned about the crown by the direction ``factor``."""
        return Gore(*(side.mapped(factor) for side in (self.left, self.base, self.right)))


def gore(dome: Dome, begin: float, end: float) -> Gore:
    """Return the gore between two places of a dome's seam, in the direction that it has in plan.

    Raises:
        Refusal: if it covers too much of the dome to be laid flat.
    """
    middle = (begin + end) / 2
    left, right = _Half(dome, middle, begin), _Half(dome, middle, end)
    bearing = dome.bearing(middle)
    edges = [*reversed(list(left.base(bearing))), *right.base(bearing)]
    return Gore(
        left.side(bearing),
        Path(tuple(each for edge in edges for each in edge)),
        right.side(bearing).reversed(),
    )


@dataclass(frozen=True)
class _Node:
    """A place between the middle of a gore and its side, in a sum along the seam.

    Args:
        place: where it is, seen from under the crown.
        share: how far it lies from the middle to the side.
        shares: how much that grows for each millimetre.
        weight: what it counts for in the sum.
    """

    place: Place
    share: float
    shares: float
    weight: float


@dataclass(frozen=True)
class _Level:
    """One level of half a gore, while it is found how far it is drawn in at its end.

    Args:
        reaches: for each node, how far it lies from the crown, undrawn.
        leaves: how much further each gets along the seam.
        speeds: how much of the level passes for each millimetre of the seam.
    """

    reaches: tuple[float, ...]
    leaves: tuple[float, ...]
    speeds: tuple[float, ...]

    def angle(self, nodes: Sequence[_Node], drawn: float) -> float:
        """Return the angle at the crown that the level sweeps."""
        return math.fsum(
            node.weight * _turning(speed, leaves - 2 * drawn * node.share * node.shares)
            / (reach - drawn * node.share**2)
            for node, reach, leaves, speed in zip(
                nodes, self.reaches, self.leaves, self.speeds, strict=True
            )
        )  # fmt: skip


def _turning(speed: float, leaving: float) -> float:
    """Return how much of a step goes round about the crown, not away from it."""
    return math.sqrt(max(0.0, speed * speed - leaving * leaving))


@dataclass(frozen=True)
class _Half:
    """Half a gore, from the line down its middle to one of its sides."""

    dome: Dome
    middle: float
    edge: float

    @property
    def _length(self) -> float:
        return self.edge - self.middle

    @cached_property
    def _spans(self) -> tuple[tuple[float, float], ...]:
        """The parts between the middle and the side in which nothing jumps, in that order."""
        seam, (low, high) = self.dome.seam, sorted((self.middle, self.edge))
        turn = math.floor(low / seam.length) * seam.length
        stops = [stop + turn + k * seam.length for k in (0, 1) for stop in seam.stops[:-1]]
        inner = [stop for stop in stops if low + 1e-9 < stop < high - 1e-9]
        places = [self.middle, *(inner if self._length > 0 else inner[::-1]), self.edge]
        return tuple(pairwise(places))

    @cached_property
    def _steps(self) -> tuple[tuple[float, float], ...]:
        """The same, none longer than a share of the half."""
        return tuple(
            (a + (b - a) * i / count, a + (b - a) * (i + 1) / count)
            for a, b in self._spans
            for count in [math.ceil(SPANS * (b - a) / self._length)]
            for i in range(count)
        )

    def _nodes(self, begin: float, end: float) -> Iterator[_Node]:
        """Yield the nodes of a step; a step has no joint inside it."""
        segment, start = self._segment((begin + end) / 2)
        for place, weight in GAUSS:
            at = (begin + end) / 2 + place * (end - begin) / 2
            yield self._node(segment, at - start, at, weight * (end - begin) / 2)

    def _node(self, segment: Segment, rest: float, at: float, weight: float = 1.0) -> _Node:
        share = (at - self.middle) / self._length
        place = Place.of(segment, rest, self.dome.crown)
        return _Node(place, share, 1 / self._length, weight)

    def _segment(self, at: float) -> tuple[Segment, float]:
        """Return the edge of the seam at a place, and the place at which it starts."""
        seam = self.dome.seam
        turn = math.floor(at / seam.length) * seam.length
        index = min(bisect_right(seam.stops, at - turn), len(seam.segments)) - 1
        return seam.segments[index], seam.stops[index] + turn

    @cached_property
    def _all(self) -> tuple[_Node, ...]:
        return tuple(node for step in self._steps for node in self._nodes(*step))

    def _level(self, tau: float, nodes: Sequence[_Node]) -> _Level:
        arcs = [Meridian(node.place.reach, self.dome.rise) for node in nodes]
        pairs = list(zip(arcs, nodes, strict=True))
        return _Level(
            tuple(tau * arc.length for arc in arcs),
            tuple(tau * arc.lengthens * node.place.leaves for arc, node in pairs),
            tuple(_speed(tau, arc, node.place) for arc, node in pairs),
        )

    @cached_property
    def _side(self) -> tuple[tuple[complex, ...], float]:
        """The places of the side at each level, and how far the last level is drawn in."""
        step = self.dome.meridian(self.edge).length / LEVELS
        places, drawn = [0j], 0.0
        for i in range(1, LEVELS + 1):
            level = self._level(i / LEVELS, self._all)
            half = _bend(places) / 2
            chord = step * (math.sin(half) / half if half else 1.0)
            place, drawn = self._placed(level, i * step, places[-1], chord, drawn)
            places.append(place)
        return tuple(places), drawn

    def _placed(
        self, level: _Level, reach: float, before: complex, chord: float, drawn: float
    ) -> tuple[complex, float]:
        """Return the end of a level, one step of the side on, and how far it is drawn in."""
        for _ in range(TURNS):
            place = cmath.rect(reach - drawn, level.angle(self._all, drawn))
            miss = abs(place - before) - chord
            if abs(miss) < EXACT:
                return place, drawn
            drawn += miss
        raise Refusal("", "a gore covers too much of the dome to be laid flat",
                      mend="make more gores, or the crown lower")  # fmt: skip

    def side(self, bearing: complex) -> Path:
        """Return the side from the crown down to the seam."""
        places, _ = self._side
        slopes = [_slope(places, i) for i in range(LEVELS + 1)]

        def curve(along: float) -> tuple[complex, complex]:
            i = min(int(along), LEVELS - 1)
            point, way = _hermite(places[i : i + 2], slopes[i : i + 2], along - i)
            return bearing * point, bearing * way / abs(way)

        return Path(fitted(curve, 0.0, float(LEVELS)))

    def base(self, bearing: complex) -> Iterator[tuple[Segment, ...]]:
        """Yield the part of the base in each span, from the middle on, each run anticlockwise."""
        _, drawn = self._side
        starts = [step[0] for step in self._steps]
        angles = list(accumulate((self._angle(*step, drawn) for step in self._steps), initial=0.0))

        def curve(edge: tuple[Segment, float], at: float) -> tuple[complex, complex]:
            i = _last(starts, at, self._length)
            angle = angles[i] + self._angle(starts[i], at, drawn)
            reach, way = self._drawn_in(self._node(edge[0], at - edge[1], at), drawn)
            turned = bearing * cmath.rect(1.0, angle)
            return turned * reach, turned * way / abs(way)

        for span in self._spans:
            edge = self._segment(sum(span) / 2)
            yield fitted(partial(curve, edge), *sorted(span))

    def _drawn_in(self, node: _Node, drawn: float) -> tuple[float, complex]:
        """Return how far a place of the base lies from the crown, and its way seen from there."""
        level = self._level(1.0, (node,))
        leaving = level.leaves[0] - 2 * drawn * node.share * node.shares
        way = complex(leaving, _turning(level.speeds[0], leaving))
        return level.reaches[0] - drawn * node.share**2, way

    def _angle(self, begin: float, end: float, drawn: float) -> float:
        """Return the angle that the base sweeps about the crown between two places of a step."""
        if begin == end:
            return 0.0
        nodes = tuple(self._nodes(begin, end))
        return self._level(1.0, nodes).angle(nodes, drawn)


def _last(starts: Sequence[float], at: float, way: float) -> int:
    """Return the step that a place is in; the steps begin in order, upward or downward."""
    if way > 0:
        return max(bisect_right(starts, at) - 1, 0)
    return max(bisect_right([-start for start in starts], -at) - 1, 0)


def _speed(tau: float, arc: Meridian, place: Place) -> float:
    """Return how much of a level passes for each millimetre along the seam.

    The level stands at R sin(tau phi) from the axis and at R cos(tau phi) - R + h over the seam.
    """
    steep, turn = arc.reach / arc.rise, tau * arc.angle
    out = steep * math.sin(turn) - tau * math.cos(turn)
    up = steep * (math.cos(turn) - 1) + tau * math.sin(turn)
    round_ = arc.radius * math.sin(turn) * place.turns
    return math.sqrt((out * out + up * up) * place.leaves**2 + round_**2)


def _bend(places: Sequence[complex]) -> float:
    """Return by how much the next step of a chain will turn, as its last three steps did."""
    if len(places) < 4:
        return 0.0
    one, two, three = (b - a for a, b in pairwise(places[-4:]))
    return 2 * cmath.phase(three / two) - cmath.phase(two / one)


def _slope(places: Sequence[complex], i: int) -> complex:
    """Return the slope at one of many evenly spaced places, for each step."""
    first = min(max(i - 2, 0), len(places) - 5)
    rule = FIFTHS[i - first]
    return sum(w * p for w, p in zip(rule, places[first : first + 5], strict=True)) / 12


def _hermite(
    ends: Sequence[complex], slopes: Sequence[complex], t: float
) -> tuple[complex, complex]:
    """Return the point and slope at ``t`` of the cubic between two places with given slopes."""
    (a, b), (leave, arrive) = ends, slopes
    chord = b - a
    bow, tail = 3 * chord - 2 * leave - arrive, leave + arrive - 2 * chord
    return a + t * (leave + t * (bow + t * tail)), leave + t * (2 * bow + 3 * t * tail)
