"""Which place of one contour faces which of another: where both run in the same direction.

The straight lines that join such places, one contour lying level above the other, make up a
surface that can be laid flat: along each line the planes that touch it at both ends are the same
(G. Monge, "Géométrie descriptive", 1799; from memory). Between parallel contours they stand square
to both.
"""

from __future__ import annotations

import cmath
import math
from collections import deque
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

from patternmaker.errors import Refusal
from patternmaker.geometry.segments import Arc, Line, Segment

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.geometry.contour import Contour

SAME = 1e-7  # radians; directions this close are the same


@dataclass(frozen=True)
class Corner:
    """A place at which the direction turns at once."""

    at: complex
    sweep: float

    @property
    def start(self) -> complex:
        """The place."""
        return self.at

    @property
    def end(self) -> complex:
        """The place."""
        return self.at


Run: TypeAlias = Segment | complex
"""A part of an edge, or the one place at which it stays."""
Pair: TypeAlias = tuple[Run, Run]
_Part: TypeAlias = Line | Arc | Corner


def paired(one: Contour, two: Contour) -> list[Pair]:
    """Return the parts of two contours that face each other, from the beginning of the first.

    Raises:
        Refusal: if they turn differently, so that some part of one faces none of the other.
    """
    ours, theirs = deque(_parts(one)), deque(_parts(two))
    ahead = cmath.phase(one.segments[0].tangent() / two.segments[0].tangent())
    _turned_to(theirs, ahead)
    return list(_lockstep(ours, theirs))


def _parts(contour: Contour) -> Iterator[_Part]:
    """Yield the parts of a contour; a corner at its beginning is shared by its end."""
    first = contour.corners[0]
    if first:
        yield Corner(contour.segments[0].start, first / 2)
    yield from _joined(_inner(contour))
    if first:
        yield Corner(contour.segments[0].start, first / 2)


def _inner(contour: Contour) -> Iterator[_Part]:
    for index, (segment, turn) in enumerate(zip(contour.segments, contour.corners, strict=True)):
        if turn and index:
            yield Corner(segment.start, turn)
        yield segment


def _joined(parts: Iterable[_Part]) -> Iterator[_Part]:
    """Yield parts, lines that run on straight made one."""
    parts = iter(parts)
    held = next(parts)
    for part in parts:
        if isinstance(held, Line) and isinstance(part, Line):
            held = Line(held.start, part.end)
            continue
        yield held
        held = part
    yield held


def _turned_to(parts: deque[_Part], ahead: float) -> None:
    """Turn the parts of a ring so that they begin ``ahead`` radians further round."""
    while ahead > SAME:
        part = parts.popleft()
        first, rest = _split(part, ahead)
        ahead -= _sweep(first)
        parts.append(first)
        if rest is not None:
            parts.appendleft(rest)
    while ahead < -SAME:
        part = parts.pop()
        rest, last = _split(part, _sweep(part) + ahead) if _sweep(part) > -ahead else (None, part)
        ahead += _sweep(part if last is None else last)
        parts.appendleft(part if last is None else last)
        if rest is not None:
            parts.append(rest)


def _sweep(part: _Part) -> float:
    return part.sweep


def _split(part: _Part, turn: float) -> tuple[_Part, _Part | None]:
    """Return a part up to where it has turned so far, and the rest of it if there is any."""
    share = turn / part.sweep if part.sweep else math.inf
    if share >= 1 - SAME / max(SAME, abs(part.sweep)):
        return part, None
    if isinstance(part, Corner):
        return Corner(part.at, turn), Corner(part.at, part.sweep - turn)
    at = share * part.length
    return part.cut(0.0, at), part.cut(at, part.length)


def _lockstep(ours: deque[_Part], theirs: deque[_Part]) -> Iterator[Pair]:
    here, there = _start(ours, theirs)
    while ours or theirs:
        one, two = (parts[0] if parts else None for parts in (ours, theirs))
        if isinstance(one, Line) or isinstance(two, Line):
            yield (
                ours.popleft() if isinstance(one, Line) else here,  # type: ignore[misc]
                theirs.popleft() if isinstance(two, Line) else there,
            )
            here, there = _ends(one, here), _ends(two, there)
            continue
        turn = _shared_turn(one, two)
        if turn is None:  # what is left of either is rounding
            (ours if one else theirs).popleft()
            continue
        (first, rest), (second, remaining) = _split(ours.popleft(), turn), _split(
            theirs.popleft(), turn
        )  # fmt: skip
        if rest is not None:
            ours.appendleft(rest)
        if remaining is not None:
            theirs.appendleft(remaining)
        here, there = first.end, second.end
        if not (isinstance(first, Corner) and isinstance(second, Corner)):
            yield _run(first), _run(second)


def _start(ours: deque[_Part], theirs: deque[_Part]) -> tuple[complex, complex]:
    return ours[0].start, theirs[0].start


def _ends(part: _Part | None, at: complex) -> complex:
    return part.end if isinstance(part, Line) else at


def _run(part: _Part) -> Run:
    return part.at if isinstance(part, Corner) else part


def _shared_turn(one: _Part | None, two: _Part | None) -> float | None:
    """Return the turn that two parts have in common, or None where one of them has none left."""
    if one is None or two is None:
        left = one or two
        if left is not None and abs(left.sweep) > 1e-5:
            raise _unlike(left)
        return None
    if one.sweep * two.sweep < 0:
        raise _unlike(one)
    return min(one.sweep, two.sweep, key=abs)


def _unlike(part: _Part) -> Refusal:
    at = part.start
    return Refusal(
        "base", f"its edge does not follow the seam near x {at.real:.0f}, y {at.imag:.0f} mm: one "
        "turns there where the other does not",
        mend="give a smaller inset or outset, or a base of the seat's own shape",
    )  # fmt: skip
