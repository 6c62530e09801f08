"""Straight boxing between two faces: panels that are sewn to the top and to the bottom.

Show side up, top edge up, a panel reads from left to right as one walks round the seat
anticlockwise: x runs along the seam from its near join, y up from the top's seam.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.covers.parts.cushions import part_of_face, seen_below, turned_over
from patternmaker.covers.parts.rings import clip_guides, mark_guides
from patternmaker.covers.parts.sides import Side, lines_of, sewn_piece
from patternmaker.geometry.contour import Path
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Guide, LineKind, Piece, Seam
from patternmaker.pattern.stations import Station, from_other_end
from patternmaker.units import MM_PER_INCH

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.covers.parts.cushions import Marks
    from patternmaker.covers.parts.rings import Ring, Stretch
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.piece import Edge

SHORTEST = MM_PER_INCH * 4  # of seam that a panel covers; common practice, no source
UPPER, LOWER, NEAR, FAR = "upper edge", "lower edge", "near end", "far end"


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
        upper = from_other_end(stops, far)
        join = allowances.join
        return (
            Side(UPPER, Path.through(far, 0), allowances.upper_edge, upper),
            Side(NEAR, Path.through(0, low), join, self._end(NEAR), LineKind.JOIN),
            Side(LOWER, Path.through(low, far + low), allowances.upper_edge, stops),
            Side(FAR, Path.through(far + low, far), join + self.spare, self._end(FAR),
                 LineKind.JOIN),
        )  # fmt: skip

    def _end(self, which: str) -> tuple[Station, ...]:
        """Return the stations of an end, walked anticlockwise round the panel."""
        first, last = ("top", "bottom") if which == NEAR else ("bottom", "top")
        middle = (Station("zip", self.height / 2),) if which in self.zips else ()
        return Station(first, 0.0), *middle, Station(last, self.height)

    @cached_property
    def piece(self) -> Piece:
        """It as a piece."""
        ring, sides = self.stretch.ring, self.sides
        material = ring.brief.material("boxing")
        depth = ring.allowances.notch_depth(material.known.notch)
        return sewn_piece(
            self.name,
            "boxing",
            material,
            sides,
            depth,
            guides=tuple(self._guides(sides)),
            finished=(self.stretch.length, self.height),
            lay=material.lay_boxing,
            notes=tuple(self._notes()),
            arrow=(1j, "TOP"),
            run=tuple(self._run()),
        )

    def _guides(self, sides: Sequence[Side]) -> Iterator[Guide]:
        yield from lines_of(sides)
        top, bottom = self.stretch.ring.allowances.upper_edge, -self.height
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
                   (allowances.upper_edge, allowances.join))  # fmt: skip
        yield Note("The lower edge is notched as the upper one; its seam lies {} below",
                   (self.height,))  # fmt: skip
        if self.lap:
            yield Note("Fold the right end over by {}, then back: it laps over the end of the zip",
                       (self.lap,))  # fmt: skip
        if self.spare:
            yield Note("{} spare at the right end: trim at the join line", (self.spare,))


def beside(allowances: Allowances, lap: float = 0.0) -> float:
    """Return how much longer the last panel of boxing is cut than its seam."""
    return 2 * allowances.join + 2 * lap + allowances.boxing_spare


def joins_between(
    begin: tuple[str, float], end: tuple[str, float], allowances: Allowances, lap: float = 0.0
) -> Marks:
    """Return the joins of boxing from one place to another, both among them, as places on the seam.

    Equal panels go between them, an odd number, so that the one at the front is whole.
    """
    length, longest = end[1] - begin[1], allowances.boxing_longest
    panels = 1
    if longest is not None:
        panels = math.ceil(length / (longest - beside(allowances, lap)) - 1e-9)
        panels += 1 - panels % 2
    inner = ((f"join {i}", begin[1] + length * i / panels) for i in range(1, panels))
    return begin, *inner, end


def row(ring: Ring, joins: Sequence[str], lap: float = 0.0) -> tuple[Box, ...]:
    """Return the panels of boxing from join to join; the last has the lap and the spare."""
    names = ["boxing"] if len(joins) == 2 else [f"boxing {i}" for i in range(1, len(joins))]
    panels = [Box(ring.stretch(*ends), name)
              for name, ends in zip(names, pairwise(joins), strict=True)]  # fmt: skip
    return (*panels[:-1], replace(panels[-1], lap=lap, spare=ring.allowances.boxing_spare))


def joined(panels: Sequence[Box]) -> Iterator[Seam]:
    """Yield the seam of each panel's far end with the near end of the next."""
    for panel, after in pairwise(panels):
        far, near = panel.piece.edges[FAR], after.piece.edges[NEAR]
        yield Seam(far.backward, near, "join")


def round_both(panels: Sequence[Box]) -> tuple[tuple[Seam, ...], tuple[Seam, ...]]:
    """Return the seams of the panels with the top, and those with the bottom."""
    edges = [(panel.stretch, panel.piece.edges) for panel in panels]
    return (
        tuple(top_seam(stretch, each[UPPER]) for stretch, each in edges),
        tuple(bottom_seam(stretch, each[LOWER].backward) for stretch, each in edges),
    )


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
