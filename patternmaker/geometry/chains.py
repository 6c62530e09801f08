"""Chains of edges as few as they can be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.geometry.segments import Line

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.geometry.segments import Segment

STRAIGHT = 1e-12  # radians; a turn that is all rounding


def plain(chain: Iterable[Segment]) -> Iterator[Segment]:
    """Yield a chain, its lines that run on straight made one."""
    held: Segment | None = None
    for each in chain:
        joined = _one(held, each) if held is not None else None
        if joined is None and held is not None:
            yield held
        held = joined or each
    if held is not None:
        yield held


def _one(before: Segment, after: Segment) -> Segment | None:
    """Return two lines as one, if they run on straight."""
    if not (isinstance(before, Line) and isinstance(after, Line)):
        return None
    one, two = before.tangent(), after.tangent()
    return Line(before.start, after.end) if abs(one - two) < STRAIGHT else None
