"""A top cut into panels by parallel lines, each widened in its middle to round over its padding."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import groupby, pairwise
from typing import TYPE_CHECKING

from patternmaker.covers.parts import tops
from patternmaker.covers.parts.flute import ALONG, ENDS, SAME, TURNED, Flute, Mark, arc_over
from patternmaker.covers.parts.joining import sewing_places
from patternmaker.facts import HAIR
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.slicing import Chain, Link, sliced
from patternmaker.pattern.clips import SHORT_OF_SEAM
from patternmaker.pattern.notes import UNTOLD, Note
from patternmaker.pattern.piece import Edge, Guide, LineKind, Piece, Seam
from patternmaker.pattern.stations import CARDINALS, Station, notches_round

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.covers.parts.joining import Joins
    from patternmaker.geometry.contour import Contour, Path
    from patternmaker.geometry.slicing import Slice
    from patternmaker.pattern.brief import Brief


@dataclass(frozen=True)
class Flutes:
    """The panels of a top, and the seams between them.

    Args:
        brief: the seat.
        count: how many panels there are from side to side.
        roll: how far each rises over its padding.
        run: which way they run.
    """

    brief: Brief
    count: int
    roll: float
    run: str

    @cached_property
    def sew(self) -> Contour:
        """The sew line of the whole top."""
        return tops.sew_line(self.brief)

    @property
    def chord(self) -> float:
        """How wide a finished panel is from seam to seam."""
        outline = self.brief.outline
        return (outline.width if self.run == ALONG else outline.height) / self.count

    @property
    def bulge(self) -> float:
        """How far a seam stands out to either side, in its middle: half of what the roll takes."""
        return (arc_over(self.chord, self.roll) - self.chord) / 2

    @cached_property
    def slices(self) -> tuple[Slice, ...]:
        """The flat pieces, turned upright."""
        upright = self.sew.mapped(TURNED[self.run])
        left, _, right, _ = upright.bounds
        lines = [left + (right - left) * i / self.count for i in range(1, self.count)]
        return sliced(upright, lines)

    @property
    def _seams(self) -> Iterator[tuple[tuple[int, int], tuple[int, int]]]:
        """Yield each seam by the slice and the side of its two links, left one first."""
        for line in range(self.count - 1):
            found: tuple[list[tuple[float, int, int]], ...] = ([], [])
            for i, each in enumerate(self.slices):
                for j, side in enumerate(each.sides):
                    if isinstance(side, Link) and side.line == line:
                        found[each.number - line].append((-side.lowest, i, j))
            for one, two in zip(*map(sorted, found), strict=True):
                yield one[1:], two[1:]

    @cached_property
    def _numbers(self) -> dict[tuple[int, int], int]:
        """The number of the seam at each link, by its slice and side."""
        return {link: n for n, links in enumerate(self._seams, 1) for link in links}

    @cached_property
    def panels(self) -> tuple[Flute, ...]:
        """The panels from the left, or from the front."""
        return tuple(
            Flute(self._called(i), each, tuple(self._numbers[i, j] for j in range(len(each.sides))
                  if (i, j) in self._numbers), self.bulge, self.run)
            for i, each in enumerate(self.slices)
        )  # fmt: skip

    def _called(self, index: int) -> str:
        number = self.slices[index].number
        alike = [i for i, each in enumerate(self.slices) if each.number == number]
        letter = "" if len(alike) == 1 else chr(ord("a") + alike.index(index))
        return f"panel {number + 1}{letter}"

    @property
    def ends(self) -> Iterator[tuple[str, float]]:
        """Yield the ends of each seam: name, and place on the top's edge."""
        upper, lower = ENDS[self.run]
        for number, ((i, j), _) in enumerate(self._seams, 1):
            sides = self.slices[i].sides
            before, after = sides[j - 1], sides[(j + 1) % len(sides)]
            assert isinstance(before, Chain)
            assert isinstance(after, Chain)
            yield self._end(f"seam {number} {upper}", after.begin)
            yield self._end(f"seam {number} {lower}", before.begin + before.path.length)

    def _end(self, name: str, along: float) -> tuple[str, float]:
        """Return a place on the top's edge under its name, or that of the side which it is."""
        at = along % self.sew.length
        sides = (side for side in CARDINALS if self._same(at, self.sew.station(side)))
        return next(sides, name), at

    def kept(self, joins: Joins) -> Joins:
        """Return the places that are always notched: the joins, and the ends of seams elsewhere."""
        others = [("back", 0.0), *joins]
        ends = (end for end in self.ends if not any(self._same(end[1], at) for _, at in others))
        return (*joins, *ends)

    def _same(self, one: float, two: float) -> bool:
        gap = abs(one - two) % self.sew.length
        return min(gap, self.sew.length - gap) < SAME

    def marks(self, number: int, length: float) -> tuple[Mark, ...]:
        """Return the notches of a seam between its ends."""
        parts = math.ceil(length / self.brief.allowances.notch_spacing - 1e-9)
        return tuple((f"{number}·{i}", length * i / parts) for i in range(1, parts))

    def pieces(self, places: tuple[Station, ...], joins: Joins) -> tuple[Piece, ...]:
        """Return every panel as a piece."""
        return tuple(self._piece(panel, places, joins) for panel in self.panels)

    def _piece(self, panel: Flute, places: tuple[Station, ...], joins: Joins) -> Piece:
        brief, material = self.brief, self.brief.material("top")
        allowances, whole = brief.allowances, self.sew.length
        sew, cut = panel.sew, panel.sew.grown(allowances.seam)
        stops = [replace(place, at=x) for place in places
                 if (x := panel.placed(place.at, whole)) is not None]  # fmt: skip
        for number, path in panel.links:
            stops += panel.on_link(number, self.marks(number, path.length))
        depth = allowances.notch_depth(material.known.notch)
        return Piece(
            panel.name,
            "top",
            material,
            cut,
            guides=(
                Guide(LineKind.SEW, sew),
                *tops.centre_cross(sew),
                *(
                    clip
                    for clip in tops.clips_of(sew, cut, allowances.seam)
                    if _is_sound(clip.path, sew, cut)
                ),
                *self._sewing_marks(panel, cut, joins),
            ),
            notches=notches_round(sew, stops, allowances.seam, depth, cut),
            edges=dict(self._edges(panel, places)),
            finished=self._finished(panel),
            lay=material.lay_flat,
            notes=tuple(self._notes()),
        )

    def _sewing_marks(self, panel: Flute, cut: Contour, joins: Joins) -> Iterator[Guide]:
        allowances, whole = self.brief.allowances, self.sew.length
        marks = (
            (name, x)
            for name, at in sewing_places(whole, joins, allowances)
            if (x := panel.placed(at, whole)) is not None
        )
        return tops.sewing_strokes(panel.sew, cut, marks, allowances.seam)

    def _finished(self, panel: Flute) -> tuple[float, float]:
        """Return how wide and deep a panel is in the finished top."""
        across, along = tops.take_ups(self.brief)
        flat = panel.slice_.contour.mapped(panel.turned.conjugate())
        return flat.width / across.scale, flat.height / along.scale

    def _edges(self, panel: Flute, places: tuple[Station, ...]) -> Iterator[tuple[str, Edge]]:
        for i in range(len(panel.chains)):
            edge = self.edge_of(panel, i, places)
            yield edge.name, edge
        for number, path in panel.links:
            yield f"seam {number}", panel.edge(number, path, self.marks(number, path.length))

    def edge_of(self, panel: Flute, index: int, places: tuple[Station, ...]) -> Edge:
        """Return one of a panel's parts of the top's edge, with all its stations."""
        chain, begin = panel.chains[index]
        whole, length = self.sew.length, chain.path.length
        inside = ((place.name, (place.at - chain.begin + SAME) % whole - SAME) for place in places)
        stops = sorted((x, name) for name, x in inside if x < length + SAME)
        name = "edge" if len(panel.chains) == 1 else f"edge {index + 1}"
        return Edge(panel.name, name, panel.sew, tuple((name, begin + x) for x, name in stops))

    def seams(self) -> Iterator[Seam]:
        """Yield the seams between the panels, from the left or from the front."""
        edges: dict[int, list[Edge]] = {}
        for panel in self.panels:
            for number, path in panel.links:
                edge = panel.edge(number, path, self.marks(number, path.length))
                edges.setdefault(number, []).append(edge)
        for number in sorted(edges):
            one, two = edges[number]
            yield Seam(one, two, "panel seam")

    def edge_seams(self, places: tuple[Station, ...], strips: Iterable[Edge]) -> Iterator[Seam]:
        """Yield the seams of strips of boxing with the panels along them, in order."""
        spans: dict[tuple[str, str], tuple[Edge, int]] = {}
        for panel in self.panels:
            for i in range(len(panel.chains)):
                edge = self.edge_of(panel, i, places)
                names = (name for name, _ in edge.stations)
                spans |= {pair: (edge, k) for k, pair in enumerate(pairwise(names))}
        for strip in strips:
            met = [spans[pair] for pair in pairwise(name for name, _ in strip.stations)]
            for _, group in groupby(enumerate(met), key=lambda each: str(each[1][0])):
                (first, (edge, begin)), *more = group
                end = 2 + len(more)
                part = replace(strip, stations=strip.stations[first : first + end])
                yield Seam(replace(edge, stations=edge.stations[begin : begin + end]), part,
                           "top seam")  # fmt: skip

    def _notes(self) -> Iterator[Note]:
        across, along = tops.take_ups(self.brief)
        yield Note("Seam allowance {}", (self.brief.allowances.seam,))
        if self.bulge > UNTOLD:
            yield Note("Widened by {} in the middle of each seam, by nothing at its ends",
                       (self.bulge,))  # fmt: skip
        if across.rate != along.rate:
            yield Note("Keep the arrow's way: the take-up differs by direction")
        yield tops.FOR_THE_PAPER


def _is_sound(clip: Path, sew: Contour, cut: Contour) -> bool:
    """Return whether a clip begins at the cut edge and ends short of every seam.

    Where a narrow tongue of a panel turns inward beside its seam, the allowance is gone there.
    """
    (stroke,) = clip.segments
    if any(point for each in sew.segments for point in crossings(each, stroke)):
        return False
    starts_there = cut.segments[cut.nearest(stroke.start)].distance(stroke.start) < HAIR
    nearest = sew.segments[sew.nearest(stroke.end)]
    return starts_there and nearest.distance(stroke.end) > SHORT_OF_SEAM / 2
