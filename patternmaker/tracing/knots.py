"""A ring of knots: from one to the next leads a line, or two tangent arcs (a biarc).

At a knot the ring is smooth, or has a corner. Where a smooth knot ends a line, the direction there
is that of the line. So whatever the knots are moved to, the ring stays smooth where it is smooth.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from patternmaker.geometry.biarcs import biarc
from patternmaker.geometry.segments import Line
from patternmaker.tracing.curve import strays

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from patternmaker.geometry.segments import Segment
    from patternmaker.tracing.thinning import Floats, Points, Whole

    Flags = NDArray[np.bool_]

ASIDE = 0.02  # cosine; a piece that leaves almost square to the way to its end is wild
NOTHING = 1e-9  # mm; a shorter piece is none
PARALLEL = 1e-14  # as geometry.biarcs tells parallel directions


class Knots(NamedTuple):
    """A ring of knots; each array has one entry for each.

    Args:
        at: where they lie.
        leave: radians; the direction in which the ring leaves each, where no line says it.
        arrive: the direction in which it arrives; the same, but at corners.
        straight: whether a line leads to the next.
        sharp: whether there is a corner.
        held: whether the knot must stay where it is.
    """

    at: Points
    leave: Floats
    arrive: Floats
    straight: Flags
    sharp: Flags
    held: Flags

    def ways(self) -> tuple[Points, Points]:
        """Return the directions at the beginning and at the end of each piece."""
        import numpy as np

        chords = np.roll(self.at, -1) - self.at
        chords = chords / np.maximum(np.abs(chords), 1e-300)
        tied = ~self.sharp & np.roll(self.straight, 1)
        leave = np.where(tied, np.roll(chords, 1), np.exp(1j * self.leave))
        tied = ~np.roll(self.sharp, -1) & np.roll(self.straight, -1)
        arrive = np.where(tied, np.roll(chords, -1), np.exp(1j * np.roll(self.arrive, -1)))
        straight = self.straight
        return np.where(straight, chords, leave), np.where(straight, chords, arrive)

    def wild(self) -> Flags:
        """Return which pieces leave or arrive aside of the way to go, and would make loops."""
        import numpy as np

        chords = np.roll(self.at, -1) - self.at
        leave, arrive = self.ways()
        aside = np.minimum((leave * np.conj(chords)).real, (arrive * np.conj(chords)).real)
        found: Flags = (aside <= ASIDE * np.abs(chords)) | (np.abs(chords) < NOTHING)
        return found

    def spots(self) -> Points:
        """Return a few points on each piece: (piece, spot)."""
        import numpy as np

        leave, arrive = self.ways()
        ends = np.roll(self.at, -1)
        meet, way, *_ = _biarcs(self.at, leave, ends, arrive)
        return np.stack([_middle(self.at, leave, meet), meet, _middle(meet, way, ends)], axis=1)

    def straightened(self, lost: Flags, places: Points) -> Knots:
        """Return them with lines for some pieces, whose ends are corners at given places."""
        import numpy as np

        ends = lost | np.roll(lost, 1)
        sharp = self.sharp | ends
        leave, arrive = self.ways()
        return self._replace(
            leave=np.angle(leave), arrive=np.angle(np.roll(arrive, 1)),
            straight=self.straight | lost, sharp=sharp, at=np.where(ends, places, self.at),
        )  # fmt: skip

    def calmed(self) -> Knots:
        """Return them with directions set anew, along their neighbours, about wild pieces."""
        import numpy as np

        wild = self.wild()
        chords = np.roll(self.at, -1) - self.at
        ways = chords / np.maximum(np.abs(chords), NOTHING)
        along = np.angle(ways + np.roll(ways, 1))
        here, before = wild, np.roll(wild, 1)
        smooth = (here | before) & ~self.sharp
        leave = np.where(smooth, along, np.where(self.sharp & here, np.angle(ways), self.leave))
        back = np.angle(np.roll(ways, 1))
        arrive = np.where(smooth, along, np.where(self.sharp & before, back, self.arrive))
        return self._replace(leave=leave, arrive=arrive)

    def strays(self, points: Points, piece: Whole) -> Floats:
        """Return how far points lie to the left of the pieces that they belong to."""
        import numpy as np

        leave, arrive = self.ways()
        ends = np.roll(self.at, -1)
        meet, way, one, two = _biarcs(self.at, leave, ends, arrive)
        second = ((points - meet[piece]) * np.conj(way[piece])).real > 0
        return strays(
            points,
            np.where(second, ends[piece], self.at[piece]),
            np.where(second, arrive[piece], leave[piece]),
            np.where(second, two[piece], one[piece]),
        )

    def segments(self) -> tuple[tuple[Segment, ...], ...]:
        """Return the line or arcs of each piece; none where two knots have come together."""
        import numpy as np

        ends = zip(self.at.tolist(), np.roll(self.at, -1).tolist(), strict=True)
        ways = zip(*(each.tolist() for each in self.ways()), strict=True)
        return tuple(
            _piece(start, leave, end, arrive, straight=straight)
            for (start, end), (leave, arrive), straight in zip(
                ends, ways, self.straight.tolist(), strict=True
            )
        )


def _piece(
    start: complex, leave: complex, end: complex, arrive: complex, *, straight: bool
) -> tuple[Segment, ...]:
    if straight:
        return (Line(start, end),) if abs(end - start) > NOTHING else ()
    return tuple(each for each in biarc(start, leave, end, arrive) if each.length > NOTHING)


def _biarcs(
    start: Points, leave: Points, end: Points, arrive: Points
) -> tuple[Points, Points, Floats, Floats]:
    """Return where the two arcs of each piece meet, the direction there, and how they bend."""
    import numpy as np

    chord, both = end - start, leave + arrive
    a = 2 * (1 - (leave * np.conj(arrive)).real)
    b = 2 * (chord * np.conj(both)).real
    c = -(np.abs(chord) ** 2)
    root = np.sqrt(np.maximum(0.0, b * b - 4 * a * c))
    ahead = np.where(b + root > 0, b + root, 1e-300)
    reach = np.where(b >= 0, -2 * c / ahead, (root - b) / np.maximum(2 * a, PARALLEL))
    meet = (start + reach * leave + end - reach * arrive) / 2
    way = (meet - start) ** 2 * np.conj(leave)
    way /= np.maximum(np.abs(way), 1e-300)
    return meet, way, _bend(start, leave, meet), -_bend(end, -arrive, meet)


def _middle(start: Points, way: Points, end: Points) -> Points:
    """Return the middle of arcs that leave in a direction and reach a point."""
    import numpy as np

    chord = end - start
    half = np.angle(chord * np.conj(way))
    return start + chord / 2 * (1 - 1j * np.tan(half / 2))


def _bend(start: Points, way: Points, end: Points) -> Floats:
    """Return how sharply arcs bend that leave in a direction and reach a point."""
    import numpy as np

    chord = end - start
    found: Floats = 2 * (chord * np.conj(way)).imag / np.maximum(np.abs(chord) ** 2, 1e-300)
    return found
