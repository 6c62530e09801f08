"""Places that a drawing names, cut into the outline as vertices."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.errors import Refusal, brief
from patternmaker.geometry.framing import WAYS

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from patternmaker.geometry.segments import Segment

AT_VERTEX = 1e-3  # mm; a place so close to a vertex is there
_CORNER = re.compile(r"corner \d+")


class _Place(NamedTuple):
    """A place on a ring: an edge, and the length along it."""

    edge: int
    along: float


def is_corner(name: str) -> bool:
    """Return whether a name is one that corners are given."""
    return bool(_CORNER.fullmatch(name))


def cut_at(
    segments: Sequence[Segment], marks: Mapping[str, complex]
) -> tuple[tuple[Segment, ...], dict[str, int]]:
    """Return a ring with a vertex at its point nearest to each mark, and their indices.

    Raises:
        Refusal: if a mark has a name that means another place.
    """
    for name in marks:
        if name in WAYS or is_corner(name):
            raise Refusal(
                "file", "names a place {value}, as one on every seat is named", value=brief(name),
                mend="give it another name",
            )  # fmt: skip
    places = {name: _nearest(segments, mark) for name, mark in marks.items()}
    cuts = sorted({*places.values(), *(_Place(i, 0.0) for i in range(len(segments)))})
    ends = [*cuts[1:], cuts[0]]
    parts = tuple(_part(segments, *pair) for pair in zip(cuts, ends, strict=True))
    index = {place: i for i, place in enumerate(cuts)}
    return parts, {name: index[place] for name, place in places.items()}


def _nearest(segments: Sequence[Segment], mark: complex) -> _Place:
    edge = min(range(len(segments)), key=lambda i: segments[i].distance(mark))
    along = segments[edge].along(mark)
    if along < AT_VERTEX:
        return _Place(edge, 0.0)
    if along > segments[edge].length - AT_VERTEX:
        return _Place((edge + 1) % len(segments), 0.0)
    return _Place(edge, along)


def _part(segments: Sequence[Segment], begin: _Place, end: _Place) -> Segment:
    segment = segments[begin.edge]
    stop = end.along if end.edge == begin.edge and end.along > begin.along else segment.length
    if begin.along == 0.0 and stop == segment.length:
        return segment
    return segment.cut(begin.along, stop)
