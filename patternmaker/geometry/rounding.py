"""Rounding the corners of a ring, as a draughtsman does: by an arc that touches both sides.

The centre of the arc is where the lines meet that run beside both sides at the distance of its
radius; the arc begins and ends at the feet of that centre on the sides. It serves lines and arcs,
and corners that turn in as well as out.
"""

from __future__ import annotations

import cmath
import math
from itertools import accumulate
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.errors import Refusal
from patternmaker.facts import HAIR, LENGTH
from patternmaker.geometry.contour import SMOOTH
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.framing import Ring
from patternmaker.geometry.halving import halved
from patternmaker.geometry.segments import Arc, Line

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from patternmaker.geometry.segments import Box, Segment

TOUCH = 1e-7  # mm; arcs whose ends lie closer follow each other
HALVINGS = 16  # of the search for the largest radius that fits
FINE = 0.1  # mm; that radius is told to this, rounded down


class _Place(NamedTuple):
    """A place on the ring: an edge by its number, which may run past the last, and along it."""

    edge: int
    along: float


class _Fillet(NamedTuple):
    """The arc that rounds a corner, and where it leaves one side and meets the other."""

    arc: Arc
    begin: _Place
    end: _Place


def rounded(ring: Ring, radii: Mapping[str, float]) -> Ring:
    """Return a ring with its named corners rounded; a radius under a hair leaves one sharp.

    A corner becomes three joints: where its arc begins, its middle, and where it ends.

    Raises:
        Refusal: if an arc doesn't fit; the field is the corner's name, the limit what would fit.
    """
    fillets = _fillets(ring, radii)
    if wrong := _overlong(ring, fillets):
        raise _does_not_fit(ring, radii, wrong)
    return _joined(ring, fillets)


def _fillets(ring: Ring, radii: Mapping[str, float]) -> dict[str, _Fillet | None]:
    """Return the fillet of each corner in order round the ring: None where none can be struck."""
    wanted = {
        name: radius for name, radius in radii.items()
        if radius >= HAIR and abs(_turn(ring, ring.joints[name])) > SMOOTH
    }  # fmt: skip
    ordered = sorted(wanted, key=lambda name: ring.joints[name])
    return {name: _fillet(ring, ring.joints[name], wanted[name]) for name in ordered}


def _turn(ring: Ring, corner: int) -> float:
    """Return how far the direction turns at a vertex."""
    before = ring.segments[corner - 1]
    return cmath.phase(ring.segments[corner].tangent() / before.tangent(before.length))


def _fillet(ring: Ring, corner: int, radius: float) -> _Fillet | None:
    """Return the arc nearest to the corner that touches the sides before and after it."""
    turn = _turn(ring, corner)
    beside = _Beside(ring.segments, -math.copysign(radius, turn))
    for back, on in _outward(len(ring.segments)):
        before, after = corner - 1 - back, corner + on
        for centre in beside.meeting(before, after):
            way_in, way_out = beside.foot(before, centre), beside.foot(after, centre)
            sweep = cmath.phase((way_out - centre) / (way_in - centre))
            if sweep * turn > 0:
                begin = _Place(before, beside.at(before).along(way_in))
                end = _Place(after, beside.at(after).along(way_out))
                return _Fillet(Arc(centre, way_in, sweep), begin, end)
    return None


def _outward(count: int) -> Iterator[tuple[int, int]]:
    """Yield pairs of steps away from a corner, the nearest first."""
    for both in range(count - 1):
        for back in range(both + 1):
            yield back, both - back


class _Beside:
    """The lines that run beside the edges of a ring at one distance, where they have any."""

    def __init__(self, segments: Sequence[Segment], by: float) -> None:
        self._segments = segments
        self._lines = [each.grown(by) if _bears(each, by) else None for each in segments]
        self._boxes = [line.bounds if line else None for line in self._lines]

    def at(self, edge: int) -> Segment:
        """Return an edge by its number, which may run past the last or before the first."""
        return self._segments[edge % len(self._segments)]

    def foot(self, edge: int, centre: complex) -> complex:
        """Return the foot of a centre on an edge."""
        return self.at(edge).point(self.at(edge).along(centre))

    def meeting(self, before: int, after: int) -> Iterator[complex]:
        """Yield where the lines beside two edges meet."""
        one, two = before % len(self._lines), after % len(self._lines)
        here, there = self._boxes[one], self._boxes[two]
        line, other = self._lines[one], self._lines[two]
        if line and other and here and there and _near(here, there):
            yield from crossings(line, other)


def _near(one: Box, two: Box) -> bool:
    """Return whether two boxes overlap or lie a hair's breadth apart."""
    across = one[0] <= two[2] + HAIR and two[0] <= one[2] + HAIR
    return across and one[1] <= two[3] + HAIR and two[1] <= one[3] + HAIR


def _bears(segment: Segment, by: float) -> bool:
    """Return whether a side has a parallel at that distance."""
    return isinstance(segment, Line) or segment.radius + math.copysign(by, by * segment.sweep) > 0


def _overlong(ring: Ring, fillets: Mapping[str, _Fillet | None]) -> str | None:
    """Return the name of a corner whose arc finds no room, or None."""
    for name, fillet in fillets.items():
        if fillet is None:
            return name
    stops = list(accumulate((each.length for each in ring.segments), initial=0.0))
    known = [(name, fillet) for name, fillet in fillets.items() if fillet]
    for (name, fillet), (other, after) in zip(known, [*known[1:], *known[:1]], strict=True):
        ahead = _along(stops, after.begin) + (stops[-1] if after is known[0][1] else 0.0)
        if ahead < _along(stops, fillet.end) - TOUCH:
            return max((name, other), key=lambda each: _radius(fillets, each))
    return None


def _along(stops: Sequence[float], place: _Place) -> float:
    """Return the length along the ring at a place, negative before its beginning."""
    rounds, edge = divmod(place.edge, len(stops) - 1)
    return rounds * stops[-1] + stops[edge] + place.along


def _radius(fillets: Mapping[str, _Fillet | None], name: str) -> float:
    fillet = fillets[name]
    return fillet.arc.radius if fillet else math.inf


def _does_not_fit(ring: Ring, radii: Mapping[str, float], name: str) -> Refusal:
    """Return the refusal of a radius: its limit is what would fit all the corners that have it."""

    def works(radius: float) -> bool:
        tried = {each: radius if r == radii[name] else r for each, r in radii.items()}
        return _overlong(ring, _fillets(ring, tried)) is None

    fits, fails = halved(0.0, radii[name], works, HALVINGS)
    above, below = (math.floor(each / FINE) * FINE for each in (fails, fits))
    return Refusal(
        name, "{value} is more than the corner has room for ({limit})", value=radii[name],
        limit=above if works(above) else below, show=LENGTH.show,
        mend="make the radius smaller, or its sides longer",
    )  # fmt: skip


def _joined(ring: Ring, fillets: Mapping[str, _Fillet | None]) -> Ring:
    """Return the ring with each corner between two places replaced by its arc."""
    struck = {name: fillet for name, fillet in fillets.items() if fillet}
    if not struck:
        return ring
    count = len(ring.segments)
    sharp = [[name for name, at in ring.joints.items() if at == edge and name not in struck]
             for edge in range(count)]  # fmt: skip
    segments: list[Segment] = []
    joints: dict[str, int] = {}
    items = list(struck.items())
    for (name, fillet), (_, after) in zip(items, [*items[1:], items[0]], strict=True):
        joints[f"{name} begins"] = len(segments)
        joints[name] = len(segments) + 1
        joints[f"{name} ends"] = len(segments) + 2
        half = fillet.arc.length / 2
        segments += [fillet.arc.cut(0.0, half), fillet.arc.cut(half, fillet.arc.length)]
        last = _Place(after.begin.edge + (count if after is items[0][1] else 0), after.begin.along)
        for edge, part in _between(ring.segments, fillet.end, last):
            joints |= {kept: len(segments) for kept in sharp[edge % count]}
            segments += part
    return Ring(tuple(segments), {name: at % len(segments) for name, at in joints.items()})


def _between(
    segments: Sequence[Segment], begin: _Place, end: _Place
) -> Iterator[tuple[int, list[Segment]]]:
    """Yield the edges from one place to another, each with the part of it that lies between."""
    for edge in range(begin.edge, end.edge + 1):
        segment = segments[edge % len(segments)]
        start = begin.along if edge == begin.edge else 0.0
        stop = end.along if edge == end.edge else segment.length
        whole = start == 0.0 and stop == segment.length
        part = segment if whole else segment.cut(start, stop)
        yield edge, [part] if stop - start > TOUCH else []
