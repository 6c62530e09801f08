"""Two paths run side by side, each at its own even pace, and the path midway between them."""

from __future__ import annotations

from bisect import bisect_right
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.contour import Path
from patternmaker.geometry.segments import Arc, Line, cross, dot

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.geometry.segments import Segment

CLOSE = 0.001  # mm; as close as arcs follow the mean
SHORT = 1.0  # mm; a shorter line is followed as a curve is
PLACES = 50  # at which the two are compared
SPECK = 1e-5  # mm; a shorter rest between two lines is a slip of their last digits
SPOT = 1e-9  # mm; arcs whose centres lie closer are parts of one, and shorter parts are none
LEVEL = 1e-8  # radians; lines that turn less go on as one


class Span(NamedTuple):
    """Parts of two halves that are run side by side.

    Args:
        one: a part of the left half.
        two: a part of the other.
        leave: the direction in which their mean begins, if it is not for them to say.
        arrive: the direction in which it ends.
    """

    one: Path
    two: Path
    leave: complex | None
    arrive: complex | None

    def at(self, share: float) -> tuple[complex, complex]:
        """Return the mean point and direction at a share of their way."""
        if share <= 0 and self.leave is not None:
            return (self.one.point_at(0.0) + self.two.point_at(0.0)) / 2, self.leave
        along, other = share * self.one.length, share * self.two.length
        way = self.one.length * self.one.tangent_at(along)
        way += self.two.length * self.two.tangent_at(other)
        if share >= 1 and self.arrive is not None:
            way = self.arrive
        return (self.one.point_at(along) + self.two.point_at(other)) / 2, way / abs(way)

    def apart(self) -> Iterator[float]:
        """Yield how far the two lie apart, square to their mean."""
        for i in range(PLACES + 1):
            share = i / PLACES
            one = self.one.point_at(share * self.one.length)
            two = self.two.point_at(share * self.two.length)
            yield abs(cross(self.at(share)[1], one - two))

    def mean(self) -> Iterator[Segment]:
        """Yield the lines and arcs of their mean."""
        shares = [0.0, *(share for line in self._lines() for share in line), 1.0]
        lines = set(self._lines())
        for begin, end in pairwise(shares):
            if (begin, end) in lines:
                yield Line(self.at(begin)[0], self.at(end)[0])
            elif (end - begin) * self.one.length > SPECK:
                yield from fitted(self.at, begin, end, CLOSE)

    def _lines(self) -> list[tuple[float, float]]:
        """Return the shares between which both run straight."""
        cuts = sorted({stop / path.length for path in self[:2] for stop in path.stops})
        return [
            (begin, end)
            for begin, end in pairwise(cuts)
            if (end - begin) * self.one.length > SHORT
            and _is_straight(self.one, (begin + end) / 2)
            and _is_straight(self.two, (begin + end) / 2)
        ]


def _is_straight(path: Path, share: float) -> bool:
    index = bisect_right(path.stops, share * path.length) - 1
    return isinstance(path.segments[index], Line)


def part_of(path: Path, begin: float, end: float) -> Path:
    """Return the part of a path between two lengths."""
    parts = []
    for each, start in zip(path.segments, path.stops, strict=False):
        low, high = max(begin - start, 0.0), min(end - start, each.length)
        if high - low > SPOT:
            whole = low == 0.0 and high == each.length
            parts.append(each if whole else each.cut(low, high))
    if not parts:
        place, way = path.point_at(begin), path.tangent_at(begin)
        return Path((Line(place, place + SPOT * way),))
    return Path(tuple(parts))


def mended(segments: Sequence[Segment]) -> Iterator[Segment]:
    """Yield lines and arcs with those made one that go on as the one before them."""
    last = segments[0]
    for each in segments[1:]:
        if isinstance(last, Line) and isinstance(each, Line) and _goes_on(last, each):
            last = Line(last.start, each.end)
        elif isinstance(last, Arc) and isinstance(each, Arc) and _same(last, each):
            last = Arc(last.centre, last.start, last.sweep + each.sweep)
        else:
            yield last
            last = each
    yield last


def _goes_on(one: Line, two: Line) -> bool:
    return (
        abs(cross(one.tangent(), two.tangent())) < LEVEL and dot(one.tangent(), two.tangent()) > 0
    )


def _same(one: Arc, two: Arc) -> bool:
    return abs(one.centre - two.centre) < SPOT and one.sweep * two.sweep > 0
