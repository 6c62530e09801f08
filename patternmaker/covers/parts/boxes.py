"""Straight boxing between two faces: panels that are sewn to the top and to the bottom.

Show side up, top edge up, a panel reads from left to right as one walks round the seat
anticlockwise: x runs along the seam from its near join, y up from the top's seam.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from patternmaker.covers.parts.cushions import part_of_face, seen_below, turned_over
from patternmaker.covers.parts.sides import Side, cut_round, edges_of, lines_of, notches_of
from patternmaker.geometry.contour import Path
from patternmaker.pattern.clips import NEAREST, SHORT_OF_SEAM, clips
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Guide, LineKind, Piece, Seam
from patternmaker.pattern.stations import Station

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.covers.parts.cushions import Marks
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Edge

SAME = 1e-6  # mm; places on a seam that lie closer are the same
UPPER, LOWER, NEAR, FAR = "upper edge", "lower edge", "near end", "far end"


@dataclass(frozen=True)
class Ring:
    """The seam round both faces of a box, seen from above.

    Args:
        brief: the seat.
        sew: the sew line of the top.
        places: the stations round it.
        height: from the top's seam to the bottom's.
        marks: where sewing starts and stops on the top.
    """

    brief: Brief
    sew: Contour
    places: tuple[Station, ...]
    height: float
    marks: Marks = ()

    @property
    def allowances(self) -> Allowances:
        """The seat's allowances."""
        return self.brief.allowances

    def stretch(self, begin: str, end: str) -> Stretch:
        """Return the stretch of it between two stations: all round, if they are the same."""
        at = {place.name: place.at for place in self.places}
        length = (at[end] - at[begin]) % self.sew.length or self.sew.length
        return Stretch(self, (begin, at[begin]), end, length)


@dataclass(frozen=True)
class Stretch:
    """A stretch of a ring that one panel covers."""

    ring: Ring
    begins: tuple[str, float]
    end: str
    length: float

    @property
    def begin(self) -> str:
        """The station at which it begins."""
        return self.begins[0]

    @property
    def stations(self) -> tuple[Station, ...]:
        """Its stations, their lengths from its begin, both ends among them."""
        inner = (replace(place, at=x) for place in self.ring.places for x in self.on_it(place.at))
        between = sorted(inner, key=lambda place: place.at)
        return Station(self.begin, 0.0), *between, Station(self.end, self.length)

    def on_it(self, *places: float) -> Iterator[float]:
        """Yield the places round the ring that fall on it, as lengths from its begin."""
        for at in places:
            along = (at - self.begins[1]) % self.ring.sew.length
            if SAME < along < self.length - SAME:
                yield along

    @property
    def clips(self) -> Iterator[float]:
        """Where an allowance is clipped to follow a corner, unless a join gives way there."""
        allowance = self.ring.allowances.seam
        for x in self.on_it(*clips(self.ring.sew, allowance, convex=True)):
            if NEAREST < x < self.length - NEAREST:
                yield x

    @property
    def marks(self) -> Iterator[tuple[str, float]]:
        """The marks on it, their lengths from its begin."""
        for name, at in self.ring.marks:
            yield from ((name, x) for x in self.on_it(at))


@dataclass(frozen=True)
class Box:
    """A panel of boxing as high as the cushion.

    Args:
        stretch: the stretch of the seam that it covers.
        name: what it is called.
        lap: folded back upon itself at its far end, to lap over the zip, mm; zero for none.
        spare: left long at its far end.
        zips: which of its ends meet the zip.
    """

    stretch: Stretch
    name: str
    lap: float = 0.0
    spare: float = 0.0
    zips: tuple[str, ...] = ()

    @property
    def height(self) -> float:
        """From the top's seam to the bottom's."""
        return self.stretch.ring.height

    @property
    def reach(self) -> float:
        """From its near join to its far one, the lap's fold laid flat."""
        return self.stretch.length + 2 * self.lap

    @property
    def sides(self) -> tuple[Side, ...]:
        """Its sides, the upper one first."""
        allowances, far, low = self.stretch.ring.allowances, self.reach, -1j * self.height
        stops = self.stretch.stations
        upper = tuple(replace(stop, at=far - stop.at) for stop in reversed(stops))
        join = allowances.join
        return (
            Side(UPPER, Path.through(far, 0), allowances.seam, upper),
            Side(NEAR, Path.through(0, low), join, self._end(NEAR), LineKind.JOIN),
            Side(LOWER, Path.through(low, far + low), allowances.seam, stops),
            Side(FAR, Path.through(far + low, far), join + self.spare, self._end(FAR),
                 LineKind.JOIN),
        )  # fmt: skip

    def _end(self, which: str) -> tuple[Station, ...]:
        """Return the stations of an end, walked anticlockwise round the panel."""
        first, last = ("top", "bottom") if which == NEAR else ("bottom", "top")
        middle = (Station("zip", self.height / 2),) if which in self.zips else ()
        return Station(first, 0.0), *middle, Station(last, self.height)

    def piece(self) -> Piece:
        """Return it as a piece."""
        ring, sides = self.stretch.ring, self.sides
        material = ring.brief.material("boxing")
        depth = ring.allowances.notch_depth(material.known.notch)
        return Piece(
            self.name,
            "boxing",
            material,
            cut_round(sides),
            guides=tuple(self._guides(sides)),
            notches=notches_of(sides, depth),
            edges=edges_of(self.name, sides),
            finished=(self.stretch.length, self.height),
            lay=material.lay_boxing,
            notes=tuple(self._notes()),
            arrow=(1j, "TOP"),
            run=tuple(self._run()),
        )

    def _guides(self, sides: Sequence[Side]) -> Iterator[Guide]:
        yield from lines_of(sides)
        top, bottom = self.stretch.ring.allowances.seam, -self.height
        yield from clip_guides(self.stretch, 0.0, top)
        yield from clip_guides(self.stretch, bottom, -top)
        yield from mark_guides(self.stretch)
        if self.lap:
            for x in (self.stretch.length, self.stretch.length + self.lap):
                yield Guide(LineKind.FOLD, Path.through(complex(x, top), complex(x, bottom - top)))

    def _run(self) -> Iterator[tuple[str, float]]:
        yield from ((stop.name, stop.at) for stop in self.stretch.stations)
        if self.lap:
            yield "lap fold", self.stretch.length + self.lap
            yield "join line", self.reach

    def _notes(self) -> Iterator[Note]:
        allowances = self.stretch.ring.allowances
        yield Note("Seam allowance {} at both edges, at the joins {}",
                   (allowances.seam, allowances.join))  # fmt: skip
        yield Note("The lower edge is notched as the upper one; its seam lies {} below",
                   (self.height,))  # fmt: skip
        if self.lap:
            yield Note("Fold the right end over by {}, then back: it laps over the end of the zip",
                       (self.lap,))  # fmt: skip
        if self.spare:
            yield Note("{} spare at the right end: trim at the join line", (self.spare,))


def clip_guides(stretch: Stretch, seam: float, allowance: float) -> Iterator[Guide]:
    """Yield the clips of the edge whose seam lies at a height; its allowance is signed."""
    short = math.copysign(SHORT_OF_SEAM, allowance)
    for x in stretch.clips:
        stroke = Path.through(complex(x, seam + allowance), complex(x, seam + short))
        yield Guide(LineKind.CLIP, stroke, "clip")


def mark_guides(stretch: Stretch) -> Iterator[Guide]:
    """Yield where sewing starts and stops along the upper seam."""
    top = stretch.ring.allowances.seam
    for name, x in stretch.marks:
        yield Guide(LineKind.SEWING, Path.through(complex(x, top), x), name)


def between(edge: Edge, begin: str, end: str) -> Edge:
    """Return the part of an edge from one of its stations to another."""
    names = [name for name, _ in edge.stations]
    return replace(edge, stations=edge.stations[names.index(begin) : names.index(end) + 1])


def top_seam(stretch: Stretch, upper: Edge) -> Seam:
    """Return the seam of a panel's upper edge with its part of the top."""
    ring = stretch.ring
    part = part_of_face("top", ring.sew, ring.places, stretch.begin, stretch.end)
    return Seam(part, upper.backward, "top seam")


def bottom_seam(stretch: Stretch, lower: Edge) -> Seam:
    """Return the seam of a panel's lower edge, run from its end, with its part of the bottom."""
    ring = stretch.ring
    places = seen_below(ring.places, ring.sew.length)
    part = part_of_face("bottom", turned_over(ring.sew), places, stretch.end, stretch.begin)
    return Seam(part, lower, "bottom seam")
