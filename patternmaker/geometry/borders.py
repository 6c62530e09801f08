"""Edges moved outward, each by an allowance of its own: the cut line round a piece of many sides.

Every edge is moved by its own distance and stays what it is, a line or an arc. At a corner the two
moved edges are lengthened along their tangents to where these meet, or shortened to where they
cross; a sharp corner's tip is squared off. Where a smooth edge changes its allowance the cut line
takes a step square to it.
"""

from __future__ import annotations

import cmath
import math
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH
from patternmaker.geometry.contour import MEETS, MITRE_LIMIT, SMOOTH, Contour, Path
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Arc, Line, Segment

if TYPE_CHECKING:
    from collections.abc import Sequence

NOTHING = 1e-9  # mm; a shorter edge is left out
REACH = 3.0  # allowances; edges that vanish beside one corner reach no further


def parallel(path: Path, by: float) -> Path:
    """Return the open path ``by`` mm to the right of another (negative: to the left).

    An arc too tight for it vanishes, as in `bordered`.

    Raises:
        Refusal: if an edge of it turns too tightly and cannot vanish.
    """
    chain = _Chain()
    for each in path.segments:
        chain.add_or_skip(each, by)
    chain.settled()
    return Path(tuple(chain.edges))


def bordered(sides: Sequence[tuple[Path, float]]) -> Contour:
    """Return the line round a piece, each side moved out by its own allowance.

    An arc too tight for its allowance, or an edge too short for it beside a corner that turns
    inward, vanishes where the edges on either side run into each other, as they do in the parallel
    of a contour.

    Args:
        sides: the chains of a closed anticlockwise outline in order, each with its allowance.

    Raises:
        Refusal: if an allowance is too wide for an edge to be followed, naming the most that fits.
    """
    edges = [(each, allowance) for path, allowance in sides for each in path.segments]
    try:
        return _closed(edges)
    except Refusal as mistake:  # it may begin among edges that vanish beside an inner corner
        longest = max(range(len(edges)), key=lambda i: edges[i][0].length)
        try:
            return _closed([*edges[longest:], *edges[:longest]])
        except Refusal:
            raise mistake from None


def _closed(edges: Sequence[tuple[Segment, float]]) -> Contour:
    chain = _Chain()
    for each, allowance in edges:
        chain.add_or_skip(each, allowance)
    return chain.closed()


class _Chain:
    """Moved edges, joined as they are added."""

    def __init__(self) -> None:
        self.edges: list[Segment] = []
        self._first: tuple[Segment, float] | None = None
        self._last: tuple[Segment, float] | None = None
        self._skipped: Refusal | None = None

    def add_or_skip(self, edge: Segment, by: float) -> None:
        """Add an edge, or leave it out if it is too tight and not the first."""
        try:
            moved = _moved(edge, by)
        except Refusal as tight:
            if self._last is None:
                raise
            self._skipped = tight
        else:
            self._put(edge, by, moved)

    def _put(self, edge: Segment, by: float, moved: Segment) -> None:
        if self._last is None:
            self._first = edge, by
            self.edges.append(moved)
        else:
            self._join((edge, by), moved)
        self._last = edge, by

    def closed(self) -> Contour:
        """Return the ring, its last edge joined to its first."""
        assert self._first is not None
        self._join(self._first, self.edges.pop(0))
        self.settled()
        *edges, end = self.edges
        return Contour((end, *edges))

    def settled(self) -> None:
        """Raise what an edge was left out for, if none after it bridged the gap."""
        if self._skipped:
            raise self._skipped

    def _join(self, added: tuple[Segment, float], moved: Segment) -> None:
        assert self._last is not None
        (before, a), (after, b) = self._last, added
        if self._skipped is None:
            last = self.edges[-1]
            turn = cmath.phase(after.tangent() / before.tangent(before.length))
            try:
                joined = _joined(last, moved, turn, a, b)
            except Refusal as short:
                self._skipped = short
            else:
                self.edges.pop()
                self._extend(*joined)
                return
        self._bridge(moved, REACH * max(abs(a), abs(b)))

    def _bridge(self, moved: Segment, reach: float) -> None:
        """Join an edge to the latest one that it crosses, or leave it out until another does.

        Beside a corner that turns inward several short edges may vanish, before it and after it.
        """
        gone = 0.0
        for i in reversed(range(len(self.edges))):
            edge = self.edges[i]
            for tip in sorted(crossings(edge, moved), key=lambda point: abs(point - edge.end)):
                parts = edge.cut(0.0, edge.along(tip)), moved.cut(moved.along(tip), moved.length)
                if moved.along(tip) <= reach and all(part.length > NOTHING for part in parts):
                    self.edges[i:] = parts
                    self._skipped = None
                    return
            gone += edge.length
            if gone > reach:
                return

    def _extend(self, *edges: Segment) -> None:
        self.edges += [each for each in edges if each.length > NOTHING]


def _moved(edge: Segment, by: float) -> Segment:
    if isinstance(edge, Arc) and edge.sweep * by < 0 and edge.radius <= abs(by) + MEETS:
        raise Refusal(
            "", "an allowance of {value} is too wide for a curve of radius {limit}",
            value=abs(by), limit=edge.radius, show=LENGTH.show, mend="make the allowance narrower",
        )  # fmt: skip
    return edge.grown(by)


def _between(start: complex, end: complex) -> tuple[Segment, ...]:
    return (Line(start, end),) if abs(end - start) > MEETS else ()


def _joined(
    before: Segment, after: Segment, turn: float, a: float, b: float
) -> tuple[Segment, ...]:
    """Return two moved edges with what joins them."""
    if abs(turn) < SMOOTH:
        return (before, *_between(before.end, after.start), after)
    return _cornered(before, after, turn, a, b)


def _cornered(
    before: Segment, after: Segment, turn: float, a: float, b: float
) -> tuple[Segment, ...]:
    """Return two moved edges with what joins them at a corner.

    Along its tangent the first reaches (b - a cos t) / sin t past its end to the tip, and the
    second (a - b cos t) / sin t before its start, for allowances a and b and a turn t.
    """
    on, back = ((q - p * math.cos(turn)) / math.sin(turn) for p, q in ((a, b), (b, a)))
    if on < 0 or back < 0:
        return _crossed(before, after, on, back)
    reach = math.tan(abs(turn) / 4)
    if math.hypot(on, a) > MITRE_LIMIT * max(abs(a), abs(b)):
        return (
            *_longer(before, a * reach),
            Line(_past(before, a * reach), _ahead(after, b * reach)),
            *_sooner(after, b * reach),
        )
    return (*_longer(before, on), *_sooner(after, back))


def _past(edge: Segment, by: float) -> complex:
    return edge.end + by * edge.tangent(edge.length)


def _ahead(edge: Segment, by: float) -> complex:
    return edge.start - by * edge.tangent()


def _longer(edge: Segment, by: float) -> tuple[Segment, ...]:
    """Return an edge lengthened along its tangent."""
    tip = _past(edge, by)
    return (Line(edge.start, tip),) if isinstance(edge, Line) else (edge, Line(edge.end, tip))


def _sooner(edge: Segment, by: float) -> tuple[Segment, ...]:
    """Return an edge that begins sooner, along its tangent."""
    tip = _ahead(edge, by)
    return (Line(tip, edge.end),) if isinstance(edge, Line) else (Line(tip, edge.start), edge)


def _crossed(before: Segment, after: Segment, on: float, back: float) -> tuple[Segment, ...]:
    """Return two moved edges cut where they cross, each lengthened first if it falls short."""
    ones = _longer(before, on) if on > 0 else (before,)
    twos = _sooner(after, back) if back > 0 else (after,)
    for i, one in reversed(list(enumerate(ones))):
        for j, two in enumerate(twos):
            if points := list(crossings(one, two)):
                tip = min(points, key=lambda point: abs(point - before.end))
                return (
                    *ones[:i], one.cut(0.0, one.along(tip)),
                    two.cut(two.along(tip), two.length), *twos[j + 1 :],
                )  # fmt: skip
    raise Refusal("", "the allowances of two edges run past each other",
                  mend="make them narrower")  # fmt: skip
