"""Seams of one name as they are sewn: in runs from end to end, or all the way round."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.pattern.piece import LineKind

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.pattern.piece import Edge, Guide, Pattern, Piece, Seam

BETWEEN = 5.0  # mm between the places at which an edge is compared with a line beside it


@dataclass(frozen=True)
class Run:
    """Seams that are sewn in one go.

    Args:
        seams: in order, each beginning where the one before it ends.
        times: how many such runs a seat has.
    """

    seams: tuple[Seam, ...]
    times: int = 1

    @property
    def length(self) -> float:
        """How long it is, on the longer edge where one is eased."""
        return math.fsum(max(seam.a.length, seam.b.length) for seam in self.seams)

    @property
    def is_closed(self) -> bool:
        """Whether it ends where it begins, on one of the two pieces."""
        first, last = self.seams[0], self.seams[-1]
        return _is_joined(last.a, first.a) or _is_joined(last.b, first.b)

    @property
    def meets(self) -> str:
        """The station at which what goes round it begins and ends: the back if that is on it."""
        stations = [name for seam in self.seams for name, _ in seam.a.stations]
        return "back" if "back" in stations else stations[0]


def runs(pattern: Pattern, name: str) -> tuple[Run, ...]:
    """Return the runs of the seams that are called ``name``."""
    counts = {piece.name: piece.count for piece in pattern.pieces}
    found: list[list[Seam]] = []
    for seam in pattern.seams:
        if seam.name != name:
            continue
        if found and _follows(found[-1][-1], seam):
            found[-1].append(seam)
        else:
            found.append([seam])
    return tuple(Run(tuple(seams), _times(seams[0], counts)) for seams in found)


def _follows(before: Seam, after: Seam) -> bool:
    return _is_joined(before.a, after.a) or _is_joined(before.b, after.b)


def _is_joined(before: Edge, after: Edge) -> bool:
    """Return whether a part of an edge begins where another part of it ends."""
    return str(before) == str(after) and before.stations[-1][0] == after.stations[0][0]


def _times(seam: Seam, counts: dict[str, int]) -> int:
    """Return how many such seams there are where a seat takes several of both pieces."""
    return min(counts.get(edge.piece, 1) for edge in (seam.a, seam.b))


def seam_beside(guide: Guide, piece: Piece, seams: Iterable[Seam]) -> str | None:
    """Return the name of the seam that a line on a piece runs along, if any is sewn to it."""
    middle = guide.path.point_at(guide.path.length / 2)
    edges = ((seam.name, edge) for seam in seams for edge in (seam.a, seam.b))
    on_it = [(name, edge) for name, edge in edges if edge.piece == piece.name]
    if not on_it:
        return None
    return min(on_it, key=lambda each: min(abs(at - middle) for at in _places(each[1])))[0]


def _places(edge: Edge) -> Iterator[complex]:
    begin, length = edge.stations[0][1], edge.length
    count = math.ceil(length / BETWEEN)
    return (edge.path.point_at(begin + i * length / count) for i in range(count + 1))


def topstitches(pattern: Pattern) -> Iterator[tuple[str, Piece, Guide]]:
    """Yield each topstitch with the name of its seam and its piece."""
    for piece in pattern.pieces:
        for guide in piece.guides:
            if guide.kind is LineKind.TOPSTITCH:
                name = seam_beside(guide, piece, pattern.seams)
                if name is not None:
                    yield name, piece, guide


def length_of(found: Sequence[Run]) -> float:
    """Return how long some runs are together."""
    return math.fsum(run.length * run.times for run in found)
