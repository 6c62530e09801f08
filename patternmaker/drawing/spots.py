"""Where the letters of a picture stand, so that none covers another, nor a line without need."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.geometry.segments import dot

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from patternmaker.drawing.measures import Measure
    from patternmaker.geometry.contour import Contour
    from patternmaker.geometry.segments import Box

ALONG = 12  # parts of a line, between which its letter may stand
BESIDE = (0.9, 1.4, 2.0, 2.7)  # letters off the line, for a letter that finds no place on it

# What a place costs, in letters off the middle: whatever is dearer is shunned for what is cheaper.
OUTSIDE, ON_A_LETTER, ON_THE_EDGE, ON_A_LINE, HIDES_ITS_LINE, OFF_ITS_LINE = (
    1000,
    300,
    30,
    12,
    20,
    4,
)


def spots(
    contour: Contour,
    lines: Sequence[Measure],
    room: complex,
    limits: Box,
    avoid: Sequence[complex] = (),
) -> Mapping[int, complex]:
    """Return where the middle of each line's letter stands, by the index of the line.

    It is the line's middle where nothing lies there, else elsewhere along the line, or beside it.

    Args:
        contour: the seat's edge.
        lines: the measurements.
        room: width and height that a letter takes, mm, as x and y.
        limits: the box in which letters must stand.
        avoid: points on which no letter should stand.
    """
    step = min(room.real, room.imag) / 3
    edge = [bead for pair in pairwise(contour.chords(step / 4)) for bead in _beads(*pair, step)]
    beads = [_beads(line.begin, line.end, step) for line in lines]
    placed: dict[int, complex] = {}
    for index in sorted(range(len(lines)), key=lambda i: lines[i].length):
        others = [bead for i, each in enumerate(beads) if i != index for bead in each] + [*avoid]
        place = _Place(
            lines[index], beads[index], edge, others, tuple(placed.values()), room, limits
        )
        placed[index] = min(place.choices(), key=place.cost)
    return placed


def _beads(begin: complex, end: complex, step: float) -> list[complex]:
    """Return points along a line, about ``step`` apart."""
    count = max(1, round(abs(end - begin) / step))
    return [begin + (end - begin) * i / count for i in range(count + 1)]


@dataclass(frozen=True)
class _Place:
    """Weighs the places where the letter of one line might stand."""

    line: Measure
    own: Sequence[complex]
    edge: Sequence[complex]
    others: Sequence[complex]
    letters: Sequence[complex]
    room: complex
    limits: Box

    def choices(self) -> Iterator[complex]:
        for i in range(1, ALONG):
            yield self.line.point(i / ALONG)
        across = 1j * self.line.way
        reach = abs(complex(across.real * self.room.real, across.imag * self.room.imag))
        for far in BESIDE:
            for share in (0.5, 0.35, 0.65, 0.0, 1.0):
                yield self.line.point(share) + far * reach * across
                yield self.line.point(share) - far * reach * across
            yield self.line.begin - far * reach * self.line.way
            yield self.line.end + far * reach * self.line.way

    def cost(self, spot: complex) -> float:
        size = abs(self.room)
        hidden = sum(self._covers(spot, bead) for bead in self.own) / len(self.own)
        return (
            OUTSIDE * self._is_outside(spot)
            + ON_A_LETTER * any(self._covers(spot, each, 2.0) for each in self.letters)
            + ON_THE_EDGE * any(self._covers(spot, bead, 1.2) for bead in self.edge)
            + ON_A_LINE * any(self._covers(spot, bead, 1.2) for bead in self.others)
            + (HIDES_ITS_LINE * hidden if hidden > 0.5 else 0.0)
            + OFF_ITS_LINE * abs(dot(spot - self.line.begin, 1j * self.line.way)) / size
            + abs(spot - self.line.point(0.5)) / (self.line.length + size)
        )

    def _is_outside(self, spot: complex) -> bool:
        left, bottom, right, top = self.limits
        wide, high = self.room.real / 2, self.room.imag / 2
        across = left + wide <= spot.real <= right - wide
        return not (across and bottom + high <= spot.imag <= top - high)

    def _covers(self, spot: complex, point: complex, share: float = 1.0) -> bool:
        """Return whether a letter at a spot, ``share`` times as large, lies on a point."""
        away = point - spot
        across = abs(away.real) < share * self.room.real / 2
        return across and abs(away.imag) < share * self.room.imag / 2
