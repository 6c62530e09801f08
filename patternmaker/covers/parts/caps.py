"""What every domed top is drafted from, and how it is sewn to the boxing below."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.covers.parts.tops import CROSS
from patternmaker.facts import HAIR
from patternmaker.geometry.contour import Path
from patternmaker.geometry.plain import as_circle
from patternmaker.pattern.piece import Edge, Guide, LineKind, Seam
from patternmaker.pattern.stations import CARDINALS, CROWDED, Station, corner_names, stations

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.covers.parts.joining import Joins
    from patternmaker.geometry.domes import Dome
    from patternmaker.materials import Material
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Piece

TOP_SEAM = "top seam"
DARTS, GORES = "darts", "gores"


@dataclass(frozen=True)
class Domed:
    """A seat whose domed top is drafted.

    Args:
        brief: the seat, its outline in plan.
        dome: the dome as it is sewn.
        joins: where the boxing below is joined.
        made: whether its edge is eased in, or it has darts or gores.
        count: how many of these.
        kept: what the take-up leaves of a finished length, the mean both ways.
        finished: the finished size over the crown, across and along.
    """

    brief: Brief
    dome: Dome
    joins: Joins
    made: str
    count: int
    kept: float
    finished: tuple[float, float]

    @property
    def seam(self) -> float:
        """The seam allowance."""
        return self.brief.allowances.seam

    @property
    def material(self) -> Material:
        """What the top is cut from."""
        return self.brief.material("top")

    @property
    def depth(self) -> float:
        """How deep its notches are."""
        return self.brief.allowances.notch_depth(self.material.known.notch)

    @cached_property
    def parts(self) -> Joins:
        """Name and place of each dart or gore seam, evenly round the seat from the back.

        Where gores need not be alike, one that would fall close to a join, a side or a corner is
        moved there.
        """
        if self.made not in {DARTS, GORES}:
            return ()
        sew, near = self.dome.seam, HAIR if self.are_alike else CROWDED
        known = dict(self.joins)
        known |= {name: sew.station(name) for name in (*CARDINALS, *corner_names(sew))}
        evenly = [sew.length * i / self.count for i in range(self.count)]
        found = [
            next(((name, x) for name, x in known.items() if _apart(x, at, sew.length) < near),
                 (f"{self.made[:-1]} {number}", at))
            for number, at in enumerate(evenly, 1)
        ]  # fmt: skip
        return tuple(sorted(found, key=lambda part: part[1]))

    @cached_property
    def are_alike(self) -> bool:
        """Whether all gores are cut from one."""
        lies_one_way = self.material.has_nap or self.material.is_matched
        only_join = self.made == GORES and self.joins == (("back", 0.0),)
        return only_join and not lies_one_way and as_circle(self.dome.seam) is not None

    @cached_property
    def places(self) -> tuple[Station, ...]:
        """The stations of the seam, each dart and gore seam among them."""
        spacing = self.brief.allowances.notch_spacing
        if not self.are_alike:
            kept = dict((*self.joins, *self.parts))
            return stations(self.dome.seam, spacing, kept.items())
        between = self.dome.seam.length / self.count
        inner = math.ceil(between / spacing - 1e-9)
        return tuple(
            Station(name if i == 0 else str(number * (inner - 1) + i), at + between * i / inner,
                    double=name == "back" and i == 0)
            for number, (name, at) in enumerate(self.parts)
            for i in range(inner)
        )  # fmt: skip

    @property
    def ring(self) -> Edge:
        """The seam all the way round, in plan."""
        first, whole = self.places[0].name, self.dome.seam.length
        run = (*((place.name, place.at) for place in self.places), (first, whole))
        return Edge("top", "edge", self.dome.seam, run)

    def sections(self) -> Iterator[tuple[int, tuple[Station, ...]]]:
        """Yield the stations between one dart or gore seam and the next, and the first's number."""
        whole, count = self.dome.seam.length, len(self.places)
        names = [place.name for place in self.places]
        firsts = [names.index(name) for name, _ in self.parts]
        again = [*self.places, *(replace(place, at=place.at + whole) for place in self.places)]
        for here, there in zip(firsts, [*firsts[1:], firsts[0] + count], strict=True):
            yield here, tuple(again[here : there + 1])

    def cross(self) -> Iterator[Guide]:
        """Yield the cross on a blank where the crown is."""
        for way in (1, 1j):
            stroke = Path.through(self.dome.crown - CROSS * way, self.dome.crown + CROSS * way)
            yield Guide(LineKind.CENTRE, stroke, "centre")


def _apart(one: float, two: float, whole: float) -> float:
    gap = abs(one - two) % whole
    return min(gap, whole - gap)


@dataclass(frozen=True)
class Run:
    """A part of a top's edge that is in one piece.

    Args:
        piece: the name of its piece.
        path: its sew line, or the whole edge of which it is a part.
        first: which of the seam's stations it begins at.
        ats: the length along ``path`` at each of its stations, both ends included.
        edge: what that edge is called.
        is_eased: whether it is meant to be longer than what it is sewn to.
    """

    piece: str
    path: Path
    first: int
    ats: tuple[float, ...]
    edge: str = "edge"
    is_eased: bool = False


@dataclass(frozen=True)
class Cap:
    """A domed top.

    Args:
        pieces: what it is sewn from.
        runs: the parts of its edge.
        seams: those within it.
    """

    pieces: tuple[Piece, ...]
    runs: tuple[Run, ...]
    seams: tuple[Seam, ...] = ()

    def round_it(self, places: Sequence[Station], boxing: Sequence[Piece]) -> Iterator[Seam]:
        """Yield the seams of its edge with the boxing, each within one piece on either side."""
        names, count = [place.name for place in places], len(places)
        for panel in boxing:
            edge = panel.edges["upper edge"]
            begin = names.index(edge.stations[0][0])
            end = begin + len(edge.stations) - 1
            met = ((run, run.first + turn) for turn in (-count, 0, count) for run in self.runs)
            for run, first in sorted(met, key=lambda each: each[1]):
                low, high = max(begin, first), min(end, first + len(run.ats) - 1)
                if low < high:
                    below = replace(edge, stations=edge.stations[low - begin : high - begin + 1])
                    yield _seam(run, run.ats[low - first : high - first + 1], below)


def _seam(run: Run, ats: Sequence[float], below: Edge) -> Seam:
    names = (name for name, _ in below.stations)
    above = Edge(run.piece, run.edge, run.path, tuple(zip(names, ats, strict=True)))
    eased = above.length - below.length
    return Seam(above, below, TOP_SEAM, eased if run.is_eased else 0.0)
