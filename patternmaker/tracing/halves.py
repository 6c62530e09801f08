"""The mean of the two halves of an outline: a seat alike left and right.

The halves are run side by side from the back to the front, each at its own even pace from one
corner to the next; the mean of the two points is a point of the result.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.errors import Refusal
from patternmaker.facts import COUNT, HAIR
from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.contour import SMOOTH, Contour, Path
from patternmaker.geometry.framing import Ring, framed, mirrored
from patternmaker.geometry.segments import Arc, Line, cross, dot

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.geometry.segments import Segment

CLOSE = 0.001  # mm; as close as arcs follow the mean of two halves
ON_AXIS = 0.03  # of the width: a corner so close to the middle line is meant to stand on it
CORNER = 0.2  # radians; what turns less need have no partner on the other side
SHORT = 1.0  # mm; a shorter line is followed as a curve is
PLACES = 50  # from corner to corner, at which the halves are compared
SPOT = 1e-9  # mm; arcs whose centres lie closer are parts of one
LEVEL = 1e-8  # radians; halves that cross the middle line so squarely join smoothly


class Half(NamedTuple):
    """A half of an outline, from the back to the front over the left side.

    Args:
        path: its lines and arcs.
        corners: the lengths at its corners, in order.
        kinks: the lengths at vertices that turn, but are no corners.
        pointed: whether the outline has a corner at its beginning, and at its end.
    """

    path: Path
    corners: tuple[float, ...]
    kinks: tuple[float, ...]
    pointed: tuple[bool, bool]


class Evened(NamedTuple):
    """An outline alike left and right.

    Args:
        contour: framed.
        largest: mm; how far its halves lay apart at the most.
        mean: mm; how far in the mean.
    """

    contour: Contour
    largest: float
    mean: float


def evened(contour: Contour) -> Evened:
    """Return the mean of a framed contour and its mirror image.

    Raises:
        Refusal: if one half has more corners than the other.
    """
    begin, end = _axis_vertex(contour, "back"), _axis_vertex(contour, "front")
    ring = Ring(contour.segments, {"back": begin, "front": end})
    left, right = _half(ring), _half(mirrored(ring))
    if len(left.corners) != len(right.corners):
        raise Refusal(
            "symmetrical", "the left half has {value} corners, the right one {limit}",
            value=len(left.corners), limit=len(right.corners), show=COUNT.show,
            mend="trace it again, or take it as it is",
        )  # fmt: skip
    spans = list(_spans(left, right))
    apart = [each for span in spans for each in span.apart()]
    largest, mean = max(apart), math.fsum(apart) / len(apart)
    if largest <= HAIR and _is_level(left):
        half = left.path.segments
    else:
        half = tuple(each for span in spans for each in span.mean())
    segments = (*half, *mirrored(Ring(half, {})).segments)
    return Evened(framed(segments, {}), largest, mean)


def _axis_vertex(contour: Contour, joint: str) -> int:
    """Return the vertex at which the halves part: a corner close by, or that on the middle line."""
    index = contour.joints[joint]
    place, reach = contour.segments[index].start, ON_AXIS * contour.width
    near = [
        (abs(each.start - place), i)
        for i, each in enumerate(contour.segments)
        if abs(contour.corners[i]) > CORNER and abs(each.start - place) <= reach
    ]
    return min(near)[1] if near else index


def _half(ring: Ring) -> Half:
    contour = Contour(ring.segments, ring.joints)
    begin, end, count = ring.joints["back"], ring.joints["front"], len(ring.segments)
    picks = [i % count for i in range(begin, end if end > begin else end + count)]
    whole = Path(tuple(contour.segments[i] for i in picks))
    turns = [(along, abs(contour.corners[i])) for along, i in zip(whole.stops, picks, strict=False)]
    return Half(
        Path(tuple(_mended(whole.segments))),
        tuple(along for along, turn in turns[1:] if turn > CORNER),
        tuple(along for along, turn in turns[1:] if SMOOTH < turn <= CORNER),
        (abs(contour.corners[begin]) > CORNER, abs(contour.corners[end]) > CORNER),
    )


def _mended(segments: Sequence[Segment]) -> Iterator[Segment]:
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


def _is_level(half: Half) -> bool:
    """Return whether a half joins its mirror image smoothly, but where there is a corner."""
    path = half.path
    ways = path.tangent_at(0.0), path.segments[-1].tangent(path.segments[-1].length)
    return all(
        pointed or abs(way.imag) < LEVEL for pointed, way in zip(half.pointed, ways, strict=True)
    )


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
            elif end > begin:
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


def _spans(left: Half, right: Half) -> Iterator[Span]:
    """Yield the spans from corner to corner, and from kink to kink of either half."""
    ends = [
        (0.0, *left.corners, left.path.length),
        (0.0, *right.corners, right.path.length),
    ]
    cuts: list[tuple[float, float]] = [(0.0, 0.0)]
    for (a, b), (c, d) in zip(*map(pairwise, ends), strict=True):
        shares = {(kink - a) / (b - a) for kink in left.kinks if a < kink < b}
        shares |= {(kink - c) / (d - c) for kink in right.kinks if c < kink < d}
        cuts += [(a + share * (b - a), c + share * (d - c)) for share in sorted(shares)]
        cuts.append((b, d))
    last = len(cuts) - 2
    for i, ((a, c), (b, d)) in enumerate(pairwise(cuts)):
        yield Span(
            _part(left.path, a, b),
            _part(right.path, c, d),
            -1 + 0j if i == 0 and not left.pointed[0] else None,
            1 + 0j if i == last and not left.pointed[1] else None,
        )


def _part(path: Path, begin: float, end: float) -> Path:
    """Return the part of a path between two lengths."""
    parts = []
    for each, start in zip(path.segments, path.stops, strict=False):
        low, high = max(begin - start, 0.0), min(end - start, each.length)
        if high - low > HAIR / 1000:
            whole = low == 0.0 and high == each.length
            parts.append(each if whole else each.cut(low, high))
    return Path(tuple(parts))
