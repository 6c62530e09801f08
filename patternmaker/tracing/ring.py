"""A closed row of lines as one ring: true lines and arcs as they are, drawn ones smoothed."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from patternmaker.errors import Refusal
from patternmaker.facts import COUNT, HAIR
from patternmaker.geometry.segments import Line
from patternmaker.tracing.said import Said
from patternmaker.tracing.smoothing import smoothed

if TYPE_CHECKING:
    from collections.abc import Iterable

    from patternmaker.geometry.segments import Segment
    from patternmaker.tracing.closing import Link, Row
    from patternmaker.tracing.thinning import Points
    from patternmaker.tracing.wishes import Wishes

MOST_KEPT = 5000  # points of a line of which every point is kept
DOUBLED = 1e-6  # mm; points that lie closer are one
APART = 1e-5  # mm; ends of true lines that lie farther apart are brought together

Segments: TypeAlias = "tuple[Segment, ...]"


class Part(NamedTuple):
    """Part of a ring: drawn points, or true lines and arcs."""

    points: Points | None
    segments: Segments


class Ring(NamedTuple):
    """A closed ring.

    Args:
        segments: its lines and arcs; the last ends where the first begins.
        said: what to tell of it.
    """

    segments: Segments
    said: tuple[Said, ...]


class _Drawn(NamedTuple):
    """Drawn points that were smoothed, and how far they lay off."""

    segments: Segments
    largest: float
    usual: float
    doubled: int


def ring_of(row: Row, wishes: Wishes) -> Ring:
    """Return a closed row of lines as a ring.

    Raises:
        Refusal: if it holds too few points, or they can't be followed as wished.
    """
    parts = _parts(row)
    if all(part.points is not None for part in parts):
        string = _string(part.points for part in parts)
        done = _smoothed(string, wishes, closed=True)
        return Ring(done.segments, _said([done]))
    pieces: list[Segment] = []
    drawn = []
    for part in _joined(parts):
        if part.points is None:
            pieces += part.segments
        else:
            drawn.append(_smoothed(part.points, wishes, closed=False))
            pieces += drawn[-1].segments
    return Ring(_closed(pieces), _said(drawn))


def _said(drawn: list[_Drawn]) -> tuple[Said, ...]:
    said = []
    if doubled := sum(each.doubled for each in drawn):
        said.append(Said(f"left out {doubled} doubled point{'s' if doubled > 1 else ''}"))
    if any(each.largest > HAIR for each in drawn):
        largest, usual = max(each.largest for each in drawn), max(each.usual for each in drawn)
        says = "smoothed: the points lie up to {} off the line, {} in the mean"
        said.append(Said(says, (largest, usual)))
    return tuple(said)


def _parts(row: Row) -> list[Part]:
    """Return the lines of a row as they are run, each beginning where the one before it ends."""
    import numpy as np

    found = []
    for link in row.links:
        if link.chain.drawn:
            points = np.array(link.chain.points, dtype=np.complex128)
            found.append(Part(points[::-1] if link.backwards else points, ()))
        else:
            found.append(Part(None, _run(link)))
    return _brought_together(found) if len(found) > 1 else found


def _run(link: Link) -> Segments:
    if not link.backwards:
        return link.chain.segments
    return tuple(each.reversed() for each in reversed(link.chain.segments))


def _brought_together(parts: list[Part]) -> list[Part]:
    """Return parts whose true lines meet: each turned and stretched by a hair from end to end."""
    count = len(parts)
    meets = [_meet(parts[i - 1], parts[i]) for i in range(count)]
    found = []
    for i, part in enumerate(parts):
        start, end = meets[i], meets[(i + 1) % count]
        found.append(part if part.points is not None else Part(None, _moved(part, start, end)))
    return found


def _meet(before: Part, after: Part) -> complex | None:
    """Return where two true lines are to meet; None where they stay as they are."""
    if before.points is not None or after.points is not None:
        return None
    one, two = before.segments[-1].end, after.segments[0].start
    return (one + two) / 2 if abs(one - two) > APART else None


def _moved(part: Part, start: complex | None, end: complex | None) -> Segments:
    """Return true lines that begin and end at given places, or where they did."""
    one, two = part.segments[0].start, part.segments[-1].end
    if start is None and end is None:
        return part.segments
    start, end = one if start is None else start, two if end is None else end
    if abs(two - one) <= 2 * (abs(start - one) + abs(end - two)):
        lines = (Line(start, one), *part.segments, Line(two, end))
        return tuple(each for each in lines if each.length > APART)
    factor = (end - start) / (two - one)
    return tuple(each.mapped(factor, start - factor * one) for each in part.segments)


def _joined(parts: list[Part]) -> list[Part]:
    """Return parts with drawn ones that follow each other joined, and drawn up to true ones."""
    import numpy as np

    first = next(i for i, part in enumerate(parts) if part.points is None)
    parts = [*parts[first:], *parts[:first]]
    found: list[Part] = []
    for part in parts:
        if part.points is not None and found[-1].points is not None:
            found[-1] = Part(np.concatenate([found[-1].points, part.points]), ())
        else:
            found.append(part)
    for i, part in enumerate(found):
        if part.points is not None:
            before, after = found[i - 1].segments[-1].end, found[(i + 1) % len(found)].segments[0]
            inner = part.points[np.abs(part.points - before) > DOUBLED]
            inner = inner[np.abs(inner - after.start) > DOUBLED]
            found[i] = Part(np.array([before, *inner, after.start]), ())
    return found


def _closed(pieces: list[Segment]) -> Segments:
    """Return a chain closed by a line, if it is open."""
    start, end = pieces[0].start, pieces[-1].end
    return (*pieces, Line(end, start)) if abs(end - start) > APART else tuple(pieces)


def _string(parts: Iterable[Points | None]) -> Points:
    import numpy as np

    return np.concatenate([points for points in parts if points is not None])


def _smoothed(points: Points, wishes: Wishes, *, closed: bool) -> _Drawn:
    import numpy as np

    count = len(points)
    steps = np.abs(np.diff(points, append=points[:1] if closed else np.inf))
    points = points[steps > DOUBLED]
    doubled = count - len(points)
    if closed and len(points) < 3:
        raise Refusal("line", "has {value} points only", value=len(points),
                      mend="a seat takes three at the least")  # fmt: skip
    if wishes.smooth == 0 or len(points) < 3:
        return _Drawn(_kept(points, closed=closed), 0.0, 0.0, doubled)
    done = smoothed(points, wishes.smooth, wishes.corner, closed=closed)
    return _Drawn(done.segments, done.largest, done.usual, doubled)


def _kept(points: Points, *, closed: bool) -> Segments:
    """Return straight lines from point to point."""
    if len(points) > MOST_KEPT:
        raise Refusal(
            "smooth", "keeps every point of a line of {value}, more than {limit}",
            value=len(points), limit=MOST_KEPT, show=COUNT.show, mend="allow some smoothing",
        )  # fmt: skip
    spots = points.tolist()
    ends = [*spots[1:], spots[0]] if closed else spots[1:]
    return tuple(Line(a, b) for a, b in zip(spots, ends, strict=False))
