"""One panel of boxing: the part of a wall between two joins, cut from the flat."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.covers.parts.joining import panel_names, sewing_places
from patternmaker.covers.parts.sides import Side, cut_round, notches_of, on
from patternmaker.facts import HAIR
from patternmaker.geometry.borders import parallel
from patternmaker.geometry.chains import plain
from patternmaker.geometry.contour import Path
from patternmaker.geometry.segments import Line, cross
from patternmaker.pattern.clips import NEAREST, SHORT_OF_SEAM, clips
from patternmaker.pattern.notes import GAUGES, TOPSTITCH, Note
from patternmaker.pattern.piece import Edge, Guide, LineKind, Piece
from patternmaker.pattern.stations import Station, from_other_end

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.joining import Joins
    from patternmaker.covers.parts.walls import Wall
    from patternmaker.geometry.contour import Contour
    from patternmaker.geometry.unrolling import Flat
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Notch

SAME = 1e-6  # mm; places on a seam that lie closer are the same


@dataclass(frozen=True)
class BoxingPanel:
    """One panel while it is drafted.

    Show side up, seam up, it reads from left to right as one walks round the seat anticlockwise;
    its seam begins at the origin. An upright wall of one height makes a rectangle.
    """

    brief: Brief
    wall: Wall
    places: tuple[Station, ...]
    joined: Joins
    index: int

    @property
    def name(self) -> str:
        """What it is called."""
        return panel_names(self.joined)[self.index]

    @property
    def begin(self) -> tuple[str, float]:
        """Name and place of its near join."""
        return self.joined[self.index]

    @property
    def end(self) -> tuple[str, float]:
        """Name and place of its far join."""
        name, at = (*self.joined, self.joined[0])[self.index + 1]
        return name, at + (self.wall.sew.length if self.is_last else 0.0)

    @property
    def is_last(self) -> bool:
        """Whether its far join is the one that is closed last."""
        return self.index == len(self.joined) - 1

    @property
    def allowances(self) -> Allowances:
        """The seat's allowances."""
        return self.brief.allowances

    @property
    def spare(self) -> float:
        """What is left long past its far join."""
        return self.allowances.boxing_spare if self.is_last else 0.0

    @cached_property
    def flat(self) -> Flat:
        """The wall between its joins."""
        return self.wall.part(self.begin[1], self.end[1])

    @cached_property
    def _drops(self) -> tuple[float, float]:
        """The least and the greatest height of it."""
        return self.wall.drops_between(self.begin[1], self.end[1])

    @property
    def length(self) -> float:
        """The length of its seam."""
        return self.flat.upper.length

    @property
    def is_straight(self) -> bool:
        """Whether it is a straight strip of one height, which a rule strikes too."""
        edges = (*self.flat.upper.segments, *self.flat.lower.segments)
        return len(edges) == 2 and all(
            isinstance(each, Line) and each.start.imag == each.end.imag for each in edges
        )

    @cached_property
    def stops(self) -> tuple[Station, ...]:
        """The stations between the joins, their lengths from the near join."""
        inner = (replace(place, at=x) for place in self.places for x in self._on_it(place.at))
        return tuple(sorted(inner, key=lambda stop: stop.at))

    @cached_property
    def run(self) -> tuple[Station, ...]:
        """The same with both joins."""
        ends = Station(self.begin[0], 0.0), Station(self.end[0], self.length)
        return ends[0], *self.stops, ends[1]

    def _on_it(self, *places: float) -> Iterator[float]:
        """Yield the places that fall between the joins, as lengths from the near one."""
        whole = self.end[1] - self.begin[1]
        for at in places:
            along = (at - self.begin[1]) % self.wall.sew.length
            if SAME < along < whole - SAME:
                yield self._at_vertex(along)

    def _at_vertex(self, along: float) -> float:
        """Return a place on the seam, or the vertex that it is, within what arcs leave open."""
        nearest = min(self.flat.upper.stops, key=lambda stop: abs(stop - along))
        return nearest if abs(nearest - along) < HAIR else along

    def piece(self) -> Piece:
        """Return the panel as a piece."""
        material = self.brief.material("boxing")
        depth = self.allowances.notch_depth(material.known.notch)
        run = tuple((stop.name, stop.at) for stop in self.run)
        return Piece(
            self.name,
            "boxing",
            material,
            self.cut,
            guides=tuple(self._guides()),
            notches=tuple(self._notches(depth)),
            edges={edge.name: edge for edge in self._edges()},
            finished=(self.length * self.brief.outline.length / self.wall.sew.length,
                      self._drops[1]),
            lay=material.lay_boxing,
            notes=tuple(self._notes()),
            arrow=(1j, "SEAT"),
            run=run if self.is_straight else (),
            heart=None if self.is_straight else self._heart,
        )  # fmt: skip

    @property
    def _heart(self) -> complex:
        """The place half way along, below the topstitch and above the fold."""
        above = self.flat.upper.point_at(self.length / 2)
        below = self.flat.lower.point_at(self.flat.lower.length / 2)
        return (above + below) / 2 - 1j * self.allowances.topstitch_at / 2

    def _notches(self, depth: float) -> Iterator[Notch]:
        """Yield the notches from left to right, as the seam is walked."""
        for notch in reversed(notches_of(self.sides, depth)):
            yield replace(notch, feet=notch.feet[::-1])

    @cached_property
    def sides(self) -> tuple[Side, ...]:
        """Its sides, anticlockwise from the lower edge."""
        (above, below), (far_above, far_below) = self.flat.ends
        allowances = self.allowances
        return (
            Side("lower edge", self.flat.lower, allowances.wrap),
            Side("far end", Path.through(far_below, far_above), allowances.join + self.spare),
            Side(
                "upper edge", self.flat.upper.reversed(), allowances.upper_edge, self._turned_back
            ),
            Side("near end", Path.through(above, below), allowances.join),
        )

    @property
    def _turned_back(self) -> tuple[Station, ...]:
        """The stations as they are met from the far join."""
        return from_other_end(self.run, self.length)

    @cached_property
    def cut(self) -> Contour:
        """The cut line."""
        return cut_round(self.sides)

    def _guides(self) -> Iterator[Guide]:
        upper = self.flat.upper
        yield Guide(LineKind.SEW, upper)
        yield Guide(LineKind.TOPSTITCH, parallel(upper, self.allowances.topstitch_at))
        yield Guide(LineKind.FOLD, self._fold())
        for edge in self._ends():
            yield Guide(LineKind.JOIN, edge)
        for x in self._on_it(*clips(self.wall.sew, self.allowances.upper_edge, convex=True)):
            if NEAREST < x < self.length - NEAREST:  # elsewhere the join gives way by itself
                yield Guide(LineKind.CLIP, self._stroke(x, SHORT_OF_SEAM), "clip")
        for name, at in sewing_places(self.wall.sew.length, self.joined, self.allowances):
            for x in self._on_it(at):
                yield Guide(LineKind.SEWING, self._stroke(x, 0.0), name)

    def _stroke(self, along: float, short: float) -> Path:
        """Return a stroke from the upper cut edge to so far short of the seam."""
        point, out = self.flat.upper.point_at(along), -self.flat.upper.outward(along)
        foot = on(self.cut, point + self.allowances.upper_edge * out)
        return Path.through(foot, point + short * out / abs(out))

    def _fold(self) -> Path:
        """Return the lower edge, run on to the cut ends."""
        lower = self.flat.lower
        first, last = lower.segments[0], lower.segments[-1]
        near = first.start - self.allowances.join * first.tangent()
        far = last.end + (self.allowances.join + self.spare) * last.tangent(last.length)
        chain = (*_line(near, first.start), *lower.segments, *_line(last.end, far))
        return Path(tuple(plain(chain)))

    def _ends(self) -> Iterator[Path]:
        """Yield the join lines, from cut edge to cut edge."""
        for (above, below), tail, foot in zip(
            self.flat.ends, self._ways(self.flat.upper), self._ways(self.flat.lower), strict=True
        ):
            way = (below - above) / abs(below - above)
            up = self.allowances.upper_edge / abs(cross(tail, way))
            down = self.allowances.wrap / abs(cross(foot, way))
            yield Path.through(above - up * way, below + down * way)

    @staticmethod
    def _ways(edge: Path) -> tuple[complex, complex]:
        """Return the directions at the two ends of an edge."""
        return edge.segments[0].tangent(), edge.tangent_at(edge.length)

    def _edges(self) -> Iterator[Edge]:
        yield Edge(self.name, "upper edge", self.flat.upper,
                   tuple((stop.name, stop.at) for stop in self.run))  # fmt: skip
        for name, ruling in zip(("near end", "far end"), self.flat.ends, strict=True):
            yield self._join(name, *ruling)

    def _join(self, name: str, above: complex, below: complex) -> Edge:
        """Return a join, sewn through the allowance above the seam and the wrap below the fold."""
        seam, wrap, down = self.allowances.upper_edge, self.allowances.wrap, abs(below - above)
        way = (below - above) / down
        path = Path.through(above - seam * way, below + wrap * way)
        places = [("top", 0.0), ("seam", seam), ("fold", seam + down)]
        if wrap > HAIR:
            places.append(("bottom", path.length))
        return Edge(self.name, name, path, tuple(places))

    def _notes(self) -> Iterator[Note]:
        allowances = self.allowances
        yield Note("Seam allowance {}, at the joins {}", (allowances.upper_edge, allowances.join))
        yield Note("Topstitch {} below the seam", (allowances.topstitch_at,), (TOPSTITCH,))
        yield Note("Sew and topstitch lines are gauges: trace neither on the show side",
                   about=(GAUGES,))  # fmt: skip
        least, most = self._drops
        if most - least < SAME:
            yield Note("Drop {}, wrap-under {}", (most, allowances.wrap))
        else:
            yield Note("Drop {} to {}, wrap-under {}", (least, most, allowances.wrap))
        if self.is_last and allowances.open_at(self.wall.sew.length):
            yield Note("Close the join at the right end last: leave {} unsewn on each side",
                       (allowances.open_at(self.wall.sew.length),))  # fmt: skip
        if self.spare:
            yield Note("{} spare at the right end: trim at the join line", (self.spare,))


def _line(start: complex, end: complex) -> tuple[Line, ...]:
    return (Line(start, end),) if start != end else ()
