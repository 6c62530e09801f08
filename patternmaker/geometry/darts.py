"""Darts in the flat blank of a dome: wedges that take out what its edge has too much.

Exact: what is left of the blank's edge between two darts is as long as its part of the seam, and
both legs of a dart are of one length, since they mirror each other. The bow of the legs is a model:
at each distance from the crown a dart is as wide as the flat blank has too much there against the
dome below it, less a part that falls evenly to nothing at the seam, so that the dart ends in a
point. Inside the tips the blank stays whole; the little that it has too much there is left to the
material.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH
from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.contour import Path

if TYPE_CHECKING:
    from collections.abc import Sequence

    from patternmaker.geometry.domes import Dome, Meridian


@dataclass(frozen=True)
class Dart:
    """A dart in a blank.

    Args:
        begin: the length along the blank's edge at which its mouth begins.
        end: that at which it ends.
        before: its leg at the beginning, from the tip to the edge.
        after: its leg at the end, the same way.
    """

    begin: float
    end: float
    before: Path
    after: Path

    @property
    def width(self) -> float:
        """Its width at the edge, straight across."""
        return abs(self._mouth[1] - self._mouth[0])

    @property
    def _mouth(self) -> tuple[complex, complex]:
        return self.before.segments[-1].end, self.after.segments[-1].end

    @property
    def middle(self) -> complex:
        """The middle of its mouth."""
        return sum(self._mouth) / 2

    @property
    def tip(self) -> complex:
        """Its tip."""
        return self.before.segments[0].start


def darts(dome: Dome, places: Sequence[float], depth: float) -> tuple[Dart, ...]:
    """Return a dart at each of some places of a dome's seam, in order.

    Each takes half of what the blank's edge has too much on either side of it.

    Args:
        dome: the dome.
        places: where they are closed, as lengths along its seam, in order round it.
        depth: how far they reach in from the edge.

    Raises:
        Refusal: if the blank's edge is nowhere longer than the seam between two of them.
    """
    blank = dome.blank
    mouths = [_along(dome, place) for place in places]
    halves = [
        ((after - here) % blank.length - (next_ - place) % dome.seam.length) / 2
        for here, after, place, next_ in zip(
            mouths, [*mouths[1:], mouths[0]], places, [*places[1:], places[0]], strict=True
        )
    ]
    if min(halves) <= 0:
        raise Refusal(
            "",
            "between two darts the blank's edge is {value} shorter than its seam, so that there is "
            "nothing to take out",
            value=-2 * min(halves), show=LENGTH.show, mend="make gores instead, or fewer darts",
        )  # fmt: skip
    befores = [halves[-1], *halves[:-1]]
    return tuple(
        _dart(dome, dome.meridian(place), at - before, at + after, depth)
        for place, at, before, after in zip(places, mouths, befores, halves, strict=True)
    )


def _along(dome: Dome, place: float) -> float:
    """Return the length along the blank's edge at what belongs to a place of the seam."""
    point = dome.blank_point(place)
    index = dome.blank.nearest(point)
    along = dome.blank.stops[index] + dome.blank.segments[index].along(point)
    return along % dome.blank.length


def _dart(dome: Dome, meridian: Meridian, begin: float, end: float, depth: float) -> Dart:
    first, last = dome.blank.point_at(begin), dome.blank.point_at(end)
    across = (last - first) / abs(last - first)
    out, half = -1j * across, abs(last - first) / 2
    tip = (first + last) / 2 - depth * out

    def leg(side: int) -> Path:
        def curve(along: float) -> tuple[complex, complex]:
            wide, opens = _bow(meridian, depth, along)
            way = out + side * half * opens * across
            return tip + along * out + side * half * wide * across, way / abs(way)

        return Path(fitted(curve, 0.0, depth))

    return Dart(begin, end, leg(-1), leg(1))


def _bow(meridian: Meridian, depth: float, along: float) -> tuple[float, float]:
    """Return a dart's width as a share of its mouth's, and how fast that grows."""
    start = meridian.length - depth

    def spare(reach: float) -> float:
        return reach - meridian.out(reach)

    whole, left = spare(meridian.length), spare(start)
    wide = spare(start + along) - left * (1 - along / depth)
    opens = meridian.shrinks(start + along) + left / depth
    return wide / whole, opens / whole
