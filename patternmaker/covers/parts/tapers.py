"""Corners drawn in, so that a cushion without boxing does not dog-ear when it is filled.

The tip of a corner is moved inward, and each of its sides follows: not at all where the taper
begins, wholly at the tip, in proportion between. So a straight side stays straight, exactly; a
curved one is followed by tangent arcs.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING

from patternmaker.covers.parts.facing import straight
from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH, both
from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.segments import Arc, Line, turned
from patternmaker.pattern.stations import corner_names

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.geometry.segments import Segment

# All common practice, no source.
BLUNT = math.radians(40)  # a corner that turns less makes no dog-ear
ENDS_A_SIDE = math.radians(5)  # what turns less is part of a curve
ROUND_ENOUGH = both(in_=1, mm=25)  # a corner with a smaller radius may dog-ear
USUAL = 1 / 4  # of a side is tapered toward each corner
NOTHING = 1e-9  # mm


@dataclass(frozen=True)
class Corner:
    """A sharp corner, and how far its tapers reach along the contour.

    Args:
        at: its place on the contour.
        turn: how far the direction turns there.
        way: the direction before it.
        before: from where its taper begins to the corner.
        after: from the corner to where its taper ends.
        sides: the lengths of its two sides.
        straight: how far each of them goes on without turning by more than a quarter of its angle.
    """

    at: float
    turn: float
    way: complex
    before: float
    after: float
    sides: tuple[float, float]
    straight: tuple[float, float]

    def drawn(self, by: float) -> complex:
        """Return the move that takes its tip ``by`` mm inward from both sides."""
        return 1j * self.way * turned(self.turn / 2) * by / math.cos(self.turn / 2)

    @property
    def room(self) -> float:
        """How far it may be drawn in: both tapers keep half their length, and slant no more."""
        return min(self.before, self.after) / 2 / max(1.0, math.tan(self.turn / 2))


def sharp_corners(contour: Contour, over: float | None) -> tuple[Corner, ...]:
    """Return the corners that are drawn in, each tapered ``over`` mm or a quarter of the side.

    A side that curves is tapered no further than it goes nearly straight, unless told. A corner
    that is rounded, turns inward or turns by less than 40 degrees is left as it is.
    """
    whole = contour.length
    ends = [i for i, turn in enumerate(contour.corners) if abs(turn) > ENDS_A_SIDE]
    found = []
    for last, index, following in zip(ends[-1:] + ends, ends, ends[1:] + ends[:1], strict=False):
        if contour.corners[index] < BLUNT:
            continue
        at = contour.stops[index]
        before = (at - contour.stops[last]) % whole or whole
        after = (contour.stops[following] - at) % whole or whole
        found.append(_corner(contour, index, (before, after), over))
    return tuple(found)


def _corner(contour: Contour, index: int, sides: tuple[float, float], over: float | None) -> Corner:
    """Return a corner with its tapers."""
    turn, last = contour.corners[index], contour.segments[index - 1]
    nearly = _straight(contour, index, (math.pi - turn) / 4)
    before, after = (
        min(USUAL * side, far) if over is None else over
        for side, far in zip(sides, nearly, strict=True)
    )
    way = last.tangent(last.length)
    return Corner(contour.stops[index], turn, way, before, after, sides, nearly)


def _straight(contour: Contour, index: int, slant: float) -> tuple[float, float]:
    """Return how far both sides of a corner go on without slanting by more."""
    ahead = (*contour.segments[index:], *contour.segments[:index])
    behind = [each.reversed() for each in reversed(ahead)]
    before, after = (straight(side, side[0].tangent().conjugate(), slant)
                     for side in (behind, ahead))  # fmt: skip
    return before, after


def objections(contour: Contour, by: float, over: float | None) -> Iterator[Refusal]:
    """Yield what keeps the corners from being drawn in."""
    corners = sharp_corners(contour, over)
    if not corners or not by:
        return
    half = min(min(corner.sides) for corner in corners) / 2
    nearly = min(min(corner.straight) for corner in corners)
    for limit, says in ((half, "half of a side"), (nearly, "a side goes nearly straight")):
        if over is not None and over > limit + NOTHING:
            yield Refusal(
                "cover.taper_over", f"{{value}} is more than {says} ({{limit}})", value=over,
                limit=limit, show=LENGTH.show, mend="let the taper begin nearer the corner",
            )  # fmt: skip
            return
    room = min(corner.room for corner in corners)
    if by > room + NOTHING:
        yield Refusal(
            "cover.taper", "{value} is more than a corner has room for ({limit})",
            value=by, limit=room, show=LENGTH.show,
            mend="draw the corners in less, or from further away (taper_over)",
        )  # fmt: skip


def drawn_in(contour: Contour, by: float, over: float | None) -> Contour:
    """Return a contour with its sharp corners drawn in; every joint keeps its name."""
    corners = sharp_corners(contour, over) if by else ()
    pulls = [pull for corner in corners for pull in _pulls(corner, by, contour.length)]
    pieces = [
        tuple(_pulled(segment, begin, pulls))
        for segment, begin in zip(contour.segments, contour.stops, strict=False)
    ]
    begins = list(accumulate((len(piece) for piece in pieces), initial=0))
    joints = {name: begins[index] for name, index in contour.joints.items()}
    return Contour(tuple(each for piece in pieces for each in piece), joints)


@dataclass(frozen=True)
class _Pull:
    """A stretch of the contour that is pulled by a move: more and more, or less and less."""

    begin: float
    end: float
    move: complex
    grows: bool

    def share(self, along: float) -> float:
        """Return the share of the move at a length along the contour."""
        part = (along - self.begin) / (self.end - self.begin)
        return part if self.grows else 1 - part


def _pulls(corner: Corner, by: float, whole: float) -> Iterator[_Pull]:
    """Yield the pulls on both sides of a corner, again where they pass the contour's beginning."""
    move = corner.drawn(by)
    for at in (corner.at, corner.at + whole):
        yield _Pull(at - corner.before, at, move, grows=True)
        yield _Pull(at, at + corner.after, move, grows=False)


def _pulled(segment: Segment, start: float, pulls: Sequence[_Pull]) -> Iterator[Segment]:
    """Yield a segment that begins at ``start``, cut where a pull begins or ends, and pulled."""
    cuts = {0.0, segment.length}
    for pull in pulls:
        cuts |= {at - start for at in (pull.begin, pull.end)}
    kept = sorted(cut for cut in cuts if 0 <= cut <= segment.length)
    for begin, end in pairwise(kept):
        if end - begin < NOTHING:
            continue
        part = segment.cut(begin, end)
        middle = start + (begin + end) / 2
        found = [pull for pull in pulls if pull.begin < middle < pull.end]
        for pull in found:
            yield from _moved(part, pull.move, pull.share(start + begin), pull.share(start + end))
        if not found:
            yield part


def _moved(segment: Segment, move: complex, first: float, last: float) -> tuple[Segment, ...]:
    """Return a segment moved by a share of a move that grows evenly along it."""
    if isinstance(segment, Line):
        return (Line(segment.start + first * move, segment.end + last * move),)

    def curve(share: float) -> tuple[complex, complex]:
        along, moved = share * segment.length, first + (last - first) * share
        way = segment.tangent(along) * segment.length + (last - first) * move
        return segment.point(along) + moved * move, way / abs(way)

    return fitted(curve, 0.0, 1.0)


def hardly_rounded(contour: Contour) -> Iterator[str]:
    """Yield the name of each rounded corner whose radius is so small that it may dog-ear."""
    for name in corner_names(contour):
        edge = contour.segments[contour.joints[name]]
        if f"{name} begins" not in contour.joints or not isinstance(edge, Arc):
            continue
        if edge.sweep > 0 and edge.radius < ROUND_ENOUGH.metric - NOTHING:
            yield name
