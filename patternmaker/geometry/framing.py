"""From a ring drawn anywhere to a contour that stands as every seat does.

The middle of its box is at the origin, and the joints ``back``, ``left``, ``front`` and ``right``
stand where the two middle lines cross the outline, outermost.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.geometry.contour import Contour, joined_bounds
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Arc, Line, dot

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from patternmaker.geometry.segments import Segment

WAYS = {"back": 1j, "left": -1 + 0j, "front": -1j, "right": 1 + 0j}
AT_VERTEX = 1e-6  # mm; a middle line that passes a vertex this close crosses there
_OTHER = {"left": "right", "right": "left", "begins": "ends", "ends": "begins"}


class Ring(NamedTuple):
    """A closed anticlockwise chain, and the vertices that have names, by index of their edge."""

    segments: tuple[Segment, ...]
    joints: Mapping[str, int]


def sharp(corners: Mapping[str, complex]) -> Ring:
    """Return the polygon with these corners, anticlockwise."""
    points = list(corners.values())
    sides = zip(points, [*points[1:], points[0]], strict=True)
    return Ring(tuple(Line(*side) for side in sides), {name: i for i, name in enumerate(corners)})


class _Cut(NamedTuple):
    """A place on a ring: an edge, and the length along it."""

    edge: int
    along: float


def middle_of(segments: Sequence[Segment]) -> complex:
    """Return the middle of the box round a chain."""
    left, bottom, right, top = joined_bounds(each.bounds for each in segments)
    return complex((left + right) / 2, (bottom + top) / 2)


def framed(segments: Sequence[Segment], joints: Mapping[str, int]) -> Contour:
    """Return a ring as a contour: its middle at the origin, its first joint ``back``.

    Args:
        segments: a closed chain, anticlockwise.
        joints: the named vertices, by the index of the edge that begins there; one of the four
            sides that is among them stays where it is.
    """
    middle = middle_of(segments)
    moved = [each.mapped(1, -middle) for each in segments]
    cuts = _cardinals(moved)
    names = {name: _Cut(index % len(moved), 0.0) for name, index in joints.items()}
    named = {**cuts, **names}
    return _begun_at(named["back"], moved, named)


def _cardinals(segments: Sequence[Segment]) -> dict[str, _Cut]:
    """Return where the joints of the four sides stand.

    A middle line that meets the ring only beyond the middle (one arm of an L does) says nothing of
    its side: if the four are then out of order, its joint stands on the part furthest that way.
    """
    met = {name: _crossed(segments, way) for name, way in WAYS.items()}
    cuts = {name: _at(segments, edge, point) for name, (edge, point) in met.items()}
    if sum(two < one for one, two in pairwise([*cuts.values(), cuts["back"]])) == 1:
        return cuts
    beyond = {name: way for name, way in WAYS.items() if dot(met[name][1], way) <= 0}
    return {**cuts, **{name: _furthest(segments, way) for name, way in beyond.items()}}


def _furthest(segments: Sequence[Segment], way: complex) -> _Cut:
    """Return the middle of the longest part that lies furthest in a direction."""
    tips = [(edge, tip, run) for edge, each in enumerate(segments) for tip, run in _tips(each, way)]
    reach = max(dot(tip, way) for _, tip, _ in tips)
    edge, tip, _ = max(
        (each for each in tips if dot(each[1], way) > reach - AT_VERTEX), key=lambda each: each[2]
    )
    return _at(segments, edge, tip)


def _tips(segment: Segment, way: complex) -> Iterator[tuple[complex, float]]:
    """Yield the places of a segment that may lie furthest, and how long it runs across there."""
    yield segment.start, 0.0
    if isinstance(segment, Arc):
        if segment.faces(way):
            yield segment.centre + segment.radius * way, segment.length
    elif abs(dot(segment.end - segment.start, way)) < AT_VERTEX:
        yield (segment.start + segment.end) / 2, segment.length


def _crossed(segments: Sequence[Segment], way: complex) -> tuple[int, complex]:
    """Return where the line through the origin in direction ``way`` leaves the ring for good."""
    far = 2 * max(abs(each.start) for each in segments)
    line = Line(-far * way, far * way)
    met = [
        (dot(point, way), -index, point)
        for index, each in enumerate(segments)
        for point in crossings(each, line)
    ]
    _, minus, point = max(met, key=lambda place: (round(place[0], 6), place[1]))
    return -minus, point


def _at(segments: Sequence[Segment], index: int, point: complex) -> _Cut:
    along = segments[index].along(point)
    if along < AT_VERTEX:
        return _Cut(index, 0.0)
    if along > segments[index].length - AT_VERTEX:
        return _Cut((index + 1) % len(segments), 0.0)
    return _Cut(index, along)


def _begun_at(first: _Cut, segments: Sequence[Segment], named: Mapping[str, _Cut]) -> Contour:
    """Return the ring cut at its named places, beginning at one of them."""
    places = sorted({*named.values(), *(_Cut(i, 0.0) for i in range(len(segments)))})
    start = places.index(first)
    places = [*places[start:], *places[:start]]
    parts = [_part(segments, *pair) for pair in zip(places, [*places[1:], first], strict=True)]
    index = {place: i for i, place in enumerate(places)}
    joints = {name: index[place] for name, place in named.items()}
    return Contour(tuple(parts), dict(sorted(joints.items(), key=lambda joint: joint[1])))


def _part(segments: Sequence[Segment], begin: _Cut, end: _Cut) -> Segment:
    segment = segments[begin.edge]
    stop = end.along if end.edge == begin.edge and end.along > begin.along else segment.length
    if begin.along == 0.0 and stop == segment.length:
        return segment
    return segment.cut(begin.along, stop)


def mirrored(ring: Ring) -> Ring:
    """Return the mirror image of a ring, left for right, anticlockwise again."""
    count = len(ring.segments)
    segments = tuple(flipped(each).reversed() for each in reversed(ring.segments))
    joints = {_renamed(name): (count - index) % count for name, index in ring.joints.items()}
    return Ring(segments, joints)


def flipped(segment: Segment) -> Segment:
    """Return the mirror image of a segment, left for right, run the same way."""
    if isinstance(segment, Line):
        return Line(-segment.start.conjugate(), -segment.end.conjugate())
    return Arc(-segment.centre.conjugate(), -segment.start.conjugate(), -segment.sweep)


def _renamed(name: str) -> str:
    return " ".join(_OTHER.get(word, word) for word in name.split(" "))
