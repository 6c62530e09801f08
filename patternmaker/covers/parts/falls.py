"""A top that runs on over a straight front edge and falls, and the boxing that it meets."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.covers.parts import strips, tops
from patternmaker.covers.parts.fronts import Front
from patternmaker.covers.parts.sides import Side, cut_round, notches_of
from patternmaker.errors import Refusal
from patternmaker.facts import HAIR, LENGTH
from patternmaker.geometry.contour import Path
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Line
from patternmaker.geometry.validity import crossing
from patternmaker.pattern.allowances import CLEAR
from patternmaker.pattern.clips import SHORT_OF_SEAM
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Edge, Guide, LineKind, Notch, Piece, Seam
from patternmaker.pattern.stations import Station, from_other_end, notches_round, stations

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.joining import Joins
    from patternmaker.covers.parts.tops import TakeUp
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.brief import Brief

FOLD = "fold"  # the station at the base's lower edge
LEFT, RIGHT = "left join", "right join"  # where the boxing meets the fall


@dataclass(frozen=True)
class Fall:
    """A seat while the top and the boxing of its waterfall are drafted."""

    brief: Brief
    drop: float

    @cached_property
    def take_ups(self) -> tuple[TakeUp, TakeUp]:
        """The take-up across, and along from the back's seam over the front to the lower edge.

        Along, one seam allowance lies in the tight part instead of two, so half of it stands for
        each: cut (D + drop + a)(1 - r), and then the wrap-under, of which nothing is taken.
        """
        across, along = tops.take_ups(self.brief)
        tight = along.finished + self.drop
        return across, replace(along, finished=tight, allowance=along.allowance / 2)

    @cached_property
    def sew(self) -> Contour:
        """The sew line of the top as if it ended at the front edge."""
        across, along = self.take_ups
        return self.brief.outline.scaled(across.scale, along.scale)

    @property
    def fall(self) -> float:
        """How long the fall is cut, from the front edge to the base's lower edge."""
        return self.drop * self.take_ups[1].scale

    @cached_property
    def front(self) -> Front:
        """The front edge, over which it falls."""
        return Front.of(self.sew)

    @property
    def _a_side(self) -> int:
        """How many strips of boxing go from the fall to the back."""
        allowances, front = self.brief.allowances, self.front
        half = max(front.left_at, self.sew.length - front.right_at)
        bears = (allowances.boxing_longest or math.inf) - _ends(allowances)
        return max(1, math.ceil(half / bears - 1e-9))

    @cached_property
    def joins(self) -> Joins:
        """Where the boxing is joined: at the back, at both ends of the fall, evenly between."""
        count, left, right = self._a_side, self.front.left_at, self.front.right_at
        rest = self.sew.length - right
        lefts = [(f"back join {i}", left * i / count) for i in range(1, count)]
        rights = [(f"back join {count + i - 1}", right + rest * i / count) for i in range(1, count)]
        return ("back", 0.0), *lefts, (LEFT, left), (RIGHT, right), *rights

    @cached_property
    def places(self) -> tuple[Station, ...]:
        """The stations round the whole sew line."""
        return stations(self.sew, self.brief.allowances.notch_spacing, self.joins)

    def objections(self) -> Iterator[Refusal]:
        """Yield what keeps the fall from being cut with the top, or the boxing from its strips."""
        allowances = self.brief.allowances
        least = _ends(allowances) + strips.SHORTEST_SEAM
        if allowances.boxing_longest is not None and allowances.boxing_longest < least:
            yield Refusal(
                "allowances.boxing_longest",
                "{value} leaves too little beside its joins and its spare ({limit})",
                value=allowances.boxing_longest, limit=least, show=LENGTH.show,
                mend="find a longer strip",
            )  # fmt: skip
        try:
            lies_over = crossing(self.cut) is not None
        except Refusal as mistake:
            yield mistake.at("allowances.seam")
            return
        if lies_over:
            yield Refusal(
                "allowances.seam", "{value} runs into the fall beside it",
                value=allowances.seam, show=LENGTH.show,
                mend="make the allowances narrower, or choose another cover",
            )  # fmt: skip

    @cached_property
    def sides(self) -> tuple[Side, ...]:
        """The sides of the top: its edge, and the fall's left end, lower edge and right end.

        The ends run on to the cut edge of the wrap-under.
        """
        allowances, front = self.brief.allowances, self.front
        down = -1j * (self.fall + allowances.wrap)
        marks = (Station(LEFT, 0.0), Station(FOLD, self.fall), Station("end", abs(down)))
        turned = from_other_end(marks, abs(down))
        left, right = front.left, front.right
        return (
            Side("edge", front.way_round, allowances.seam),
            Side("left end", Path.through(left, left + down), allowances.join, marks),
            Side("lower edge", Path.through(left + down, right + down), 0.0, line=None),
            Side("right end", Path.through(right + down, right), allowances.join,
                 (turned[0], turned[1], Station(RIGHT, abs(down)))),
        )  # fmt: skip

    @cached_property
    def cut(self) -> Contour:
        """The cut line of the top."""
        return cut_round(self.sides)

    @cached_property
    def _notched_ends(self) -> list[Side]:
        """The ends of the fall that bear a notch at the fold.

        In the bay beside a pointed front corner the allowance is cut away there.
        """
        return [
            end
            for end in self.sides[1::2]
            for notch in end.notches(SHORT_OF_SEAM)
            if self.cut.segments[self.cut.nearest(notch.feet[0])].distance(notch.feet[0]) < HAIR
        ]

    def top(self) -> Piece:
        """Return the top with the fall."""
        brief, material, cut = self.brief, self.brief.material("top"), self.cut
        depth = brief.allowances.notch_depth(material.known.notch)
        return Piece(
            "top",
            "top",
            material,
            cut,
            guides=tuple(self._guides(cut)),
            notches=(
                *notches_round(self.sew, self._round_the_edge, brief.allowances.seam, depth, cut),
                *notches_of(self._notched_ends, depth),
            ),
            edges={edge.name: edge for edge in self._edges()},
            finished=(brief.outline.width, self.take_ups[1].finished),
            lay=material.lay_flat,
            notes=tuple(self._notes()),
        )

    @property
    def _round_the_edge(self) -> list[Station]:
        """The stations on the edge between its ends."""
        left, right = self.front.left_at, self.front.right_at
        return [place for place in self.places if not left - 1e-9 <= place.at <= right + 1e-9]

    def _guides(self, cut: Contour) -> Iterator[Guide]:
        allowances, front, fold = self.brief.allowances, self.front, -1j * self.fall
        for side in self.sides:
            if side.line:
                yield Guide(side.line, side.path, side.name)
        yield Guide(LineKind.FOLD, Path.through(front.left, front.right), "front edge")
        if allowances.wrap:
            lower = Path.through(front.left + fold, front.right + fold)
            yield Guide(LineKind.FOLD, lower, "lower edge")
        yield from tops.centre_cross(self.sew)
        yield from tops.clips_of(self.sew, cut, allowances.seam)
        yield from self._clips_beside_the_fall(cut)
        yield from tops.sewing_marks(self.sew, cut, self.joins, allowances)

    def _clips_beside_the_fall(self, cut: Contour) -> Iterator[Guide]:
        """Yield the clip at each end of the front edge, where the boxing turns down the fall.

        On a square seat it is all that marks the place where the top seam becomes a corner seam.
        """
        round_the_back = self.front.way_round
        for end, out, at in (
            (self.front.left, -1, round_the_back.length),
            (self.front.right, 1, 0.0),
        ):
            way = out + round_the_back.outward(at)
            yield Guide(LineKind.CLIP, self._clip(cut, end, way / abs(way)), "clip")

    def _clip(self, cut: Contour, end: complex, way: complex) -> Path:
        """Return a clip from the cut line toward a corner, which lies against ``way``."""
        reach = 3 * max(self.brief.allowances.seam, self.brief.allowances.join)
        ray = Line(end, end + reach * way)
        met = (point for each in cut.segments for point in crossings(each, ray))
        begin = min(met, key=lambda point: abs(point - end))
        return Path.through(begin, end + SHORT_OF_SEAM * way)

    def _edges(self) -> Iterator[Edge]:
        yield tops.part_of_edge(self.sew, self.places, RIGHT, LEFT)
        for side in self.sides[1::2]:
            yield side.edge("top")

    def _notes(self) -> Iterator[Note]:
        allowances, (across, along) = self.brief.allowances, self.take_ups
        yield Note("Seam allowance {}, at the ends of the fall {}",
                   (allowances.seam, allowances.join))  # fmt: skip
        yield Note("No seam at the front: it bends over the edge and falls {}", (self.drop,))
        yield Note("Wrap-under {} below the fall", (allowances.wrap,))
        if across.rate != along.rate:
            yield Note("Keep the arrow's way: the take-up differs by direction")
        yield tops.FOR_THE_PAPER

    @cached_property
    def boxing(self) -> tuple[list[Piece], list[Piece]]:
        """The strips from the back to the fall at the left, and from the fall to the back."""
        count = self._a_side
        panels = strips.boxing(self.brief, self.sew, self.places, self.joins, self.drop)
        left, right = list(panels[:count]), list(panels[count + 1 :])
        left = [_called(panel, _numbered("left", i, count)) for i, panel in enumerate(left, 1)]
        right = [_called(panel, _numbered("right", i, count)) for i, panel in enumerate(right, 1)]
        if self.sides[1] in self._notched_ends:
            left[-1] = self._notched(left[-1], left[-1].run[-1][1], 1)
        if self.sides[3] in self._notched_ends:
            right[0] = self._notched(right[0], 0.0, -1)
        return left, right

    def _notched(self, panel: Piece, x: float, way: int) -> Piece:
        """Return a strip with a notch at the fold, in the end that is sewn to the fall."""
        join = self.brief.allowances.join
        depth = min(self.brief.allowances.notch_depth(panel.material.known.notch),
                    join - CLEAR)  # fmt: skip
        notch = Notch(FOLD, (complex(x + way * join, -self.drop),), complex(-way), depth, join)
        return replace(panel, notches=(*panel.notches, notch))

    def seams(self) -> Iterator[Seam]:
        """Yield every seam in the order of sewing: joins, top, ends of the fall."""
        left, right = self.boxing
        ring = [*right, *left]
        for one, after in pairwise(ring):
            yield Seam(one.edges["far end"], after.edges["near end"], "join")
        for panel in ring:
            edge = panel.edges["upper edge"]
            part = tops.part_of_edge(self.sew, self.places, *_ends_of(edge))
            yield Seam(part, edge, "top seam")
        yield from self._corner(left[-1].name, left[-1].run[-1][1], self.sides[1].edge("top"))
        yield from self._corner(right[0].name, 0.0, self.sides[3].edge("top").backward)

    def _corner(self, panel: str, x: float, end: Edge) -> Iterator[Seam]:
        """Yield the seam of an end of the fall with its strip, down to the fold and past it.

        Down to the fold the strip is longer by what the fall is taken up; below it, alike.
        """
        (begin, _), (_, fall), (_, bottom) = end.stations
        wrap = bottom - fall
        path = Path.through(complex(x, 0), complex(x, -self.drop - wrap))
        strip = Edge(panel, "front end", path, ((begin, 0.0), (FOLD, self.drop)))
        yield Seam(strip, replace(end, stations=end.stations[:2]), "corner seam",
                   self.drop - fall)  # fmt: skip
        if wrap:
            under = ((FOLD, self.drop), ("end", self.drop + wrap))
            yield Seam(replace(strip, stations=under), replace(end, stations=end.stations[1:]),
                       "corner seam")  # fmt: skip


def _ends(allowances: Allowances) -> float:
    return 2 * allowances.join + allowances.boxing_spare


def _ends_of(edge: Edge) -> tuple[str, str]:
    return edge.stations[0][0], edge.stations[-1][0]


def _numbered(side: str, number: int, count: int) -> str:
    return f"boxing {side}" if count == 1 else f"boxing {side} {number}"


def _called(panel: Piece, name: str) -> Piece:
    """Return a strip under another name."""
    edges = {key: replace(edge, piece=name) for key, edge in panel.edges.items()}
    return replace(panel, name=name, edges=edges)
