"""A cushion whose top rolls round a half-round nose into its bottom, between round-ended gussets.

The top is drawn in plan; the nose is unrolled below it, pi h / 2 long for foam h thick, and below
that lies the bottom, the mirror image of the top. All is exact.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.covers.parts.fronts import Front
from patternmaker.covers.parts.rings import Ring
from patternmaker.covers.parts.sides import Side, sewn_piece
from patternmaker.covers.parts.tops import FOR_THE_PAPER, centre_cross, clips_of
from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.framing import flipped
from patternmaker.geometry.segments import Arc, Line
from patternmaker.pattern.clips import SHORT_OF_SEAM, clips
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Edge, Guide, LineKind, Piece, Seam
from patternmaker.pattern.stations import Station, from_other_end, notches_round, stations

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.rings import Stretch
    from patternmaker.pattern.brief import Brief

LEFT, RIGHT = "left join", "right join"  # of the boxing behind with the gussets
CLOCK = ("12 o'clock", "3 o'clock", "6 o'clock")  # Casey, chapter on marine upholstery
HALF_TURN = math.pi


@dataclass(frozen=True)
class Nose:
    """A cushion while it is drafted.

    Args:
        brief: the seat.
        height: the thickness of its foam.
        zips: whether a zip is sewn into the gussets' back ends.
    """

    brief: Brief
    height: float
    zips: bool = True

    @cached_property
    def front(self) -> Front:
        """The front of the outline."""
        return Front.of(self.brief.outline)

    @property
    def nose(self) -> float:
        """How long the nose is, unrolled."""
        return HALF_TURN * self.height / 2

    @property
    def flats(self) -> tuple[float, float]:
        """How long the left and the right side run straight, behind the nose."""
        left, right = self.front.sides
        return left - self.height / 2, right - self.height / 2

    @cached_property
    def back(self) -> Stretch:
        """The stretch of the outline that the boxing behind covers, from right to left."""
        outline, (left, right) = self.brief.outline, self.front.sides
        joins = (LEFT, self.front.left_at - left), (RIGHT, self.front.right_at + right)
        places = stations(outline, self.brief.allowances.notch_spacing, joins)
        return Ring(self.brief, outline, places, self.height).stretch(RIGHT, LEFT)

    @cached_property
    def paths(self) -> tuple[Path, Path, Path, Path]:
        """The sides of the piece in one: back edge, left side, bottom's back edge, right side."""
        left, right = self.front.sides
        round_ = self.front.way_round
        back = round_.part(right, round_.length - left)
        low = self.front.left.imag + self.height / 2 - self.nose / 2
        under = Path(tuple(_mirrored(each, low) for each in reversed(back.segments)))
        return (
            back,
            Path.through(back.segments[-1].end, under.segments[0].start),
            under,
            Path.through(under.segments[-1].end, back.segments[0].start),
        )

    @cached_property
    def sew(self) -> Contour:
        """The sew line of the piece in one."""
        return Contour(tuple(each for path in self.paths for each in path.segments))

    def marks(self, flat: float) -> tuple[Station, ...]:
        """Return the notches of a side from the top's back to the bottom's: even, and the clock."""
        nose, whole = self.nose, 2 * flat + self.nose
        parts = math.ceil(flat / self.brief.allowances.notch_spacing - 1e-9)
        even = [Station(str(i), flat * i / parts) for i in range(1, parts)]
        under = [Station(str(parts - 1 + i), whole - flat + flat * i / parts)
                 for i in range(1, parts)]  # fmt: skip
        clock = [Station(name, flat + nose * i / 2) for i, name in enumerate(CLOCK)]
        return Station("top", 0.0), *even, *clock, *under, Station("bottom", whole)

    def edges(self) -> dict[str, Edge]:
        """Return the edges of the piece in one, each walked from the top, or from the right."""
        back, left, under, right = self.paths
        stops = tuple((stop.name, stop.at) for stop in self.back.stations)
        flat = [tuple((m.name, m.at) for m in self.marks(each)) for each in self.flats]
        return {
            "back edge": Edge("top", "back edge", back, stops),
            "left side": Edge("top", "left side", left, flat[0]),
            "bottom edge": Edge("top", "bottom edge", under.reversed(), stops),
            "right side": Edge("top", "right side", right.reversed(), flat[1]),
        }

    @property
    def _stations(self) -> Iterator[Station]:
        """Yield the notches round the piece in one, those of its four back corners among them."""
        back, left, under, right = (path.length for path in self.paths)
        begins = (0.0, back, back + left, back + left + under)
        whole = begins[-1] + right
        for stop in self.back.stations:
            yield stop
            yield replace(stop, at=begins[3] - stop.at)
        for mark in self.marks(self.flats[0])[1:-1]:
            yield replace(mark, at=begins[1] + mark.at)
        for mark in self.marks(self.flats[1])[1:-1]:
            yield replace(mark, at=whole - mark.at)

    def top(self) -> Piece:
        """Return top, nose and bottom in one piece."""
        brief, sew, material = self.brief, self.sew, self.brief.material("top")
        allowance = brief.allowances.seam
        cut, depth = sew.grown(allowance), brief.allowances.notch_depth(material.known.notch)
        return Piece(
            "top",
            "top",
            material,
            cut,
            guides=(
                Guide(LineKind.SEW, sew),
                *centre_cross(sew),
                *clips_of(sew, cut, allowance),
                *self._clips_at_the_nose(),
            ),
            notches=notches_round(sew, self._stations, allowance, depth, cut),
            edges=self.edges(),
            finished=(brief.outline.width, sew.height),
            lay=material.known.lay,
            notes=(
                Note("Top, nose and bottom in one: {} of it roll round the front", (self.nose,)),
                Note("Seam allowance {}", (allowance,)),
                FOR_THE_PAPER,
            ),
        )

    def _clips_at_the_nose(self) -> Iterator[Guide]:
        """Yield the clips by which the straight sides follow the gussets round the nose."""
        allowance = self.brief.allowances.seam
        for path, flat in zip(self.paths[1::2], self.flats, strict=True):
            for along in clips(self._gusset_ring(flat), allowance, convex=True):
                if flat < along < flat + self.nose:
                    seam, out = path.point_at(along), path.outward(along)
                    stroke = Path.through(seam + allowance * out, seam + SHORT_OF_SEAM * out)
                    yield Guide(LineKind.CLIP, stroke, "clip")

    def _gusset_ring(self, flat: float) -> Contour:
        edge, end = self._gusset_paths(flat, right=False)
        return Contour((*edge.segments, *end.segments))

    def _gusset_paths(self, flat: float, *, right: bool) -> tuple[Path, Path]:
        """Return the sewn edge and the back end of a gusset, anticlockwise.

        Its own coordinates: its upper seam at 0, its nose at the right on the left gusset, at the
        left on the right one, as one looks at it from outside.
        """
        low = -1j * self.height
        if right:
            arc = Arc(low / 2, 0j, HALF_TURN)
            edge = (Line(flat + 0j, 0j), arc, Line(low, flat + low))
        else:
            arc = Arc(flat + low / 2, flat + low, HALF_TURN)
            edge = (Line(low, flat + low), arc, Line(flat + 0j, 0j))
        return Path(edge), Path.through(edge[-1].end, edge[0].start)

    def _gusset_sides(self, flat: float, *, right: bool) -> tuple[Side, Side]:
        edge, end = self._gusset_paths(flat, right=right)
        allowances, marks, whole = self.brief.allowances, self.marks(flat), edge.length
        middle = (Station("zip", self.height / 2),) if self.zips else ()
        ends = (Station("top", 0.0), *middle, Station("bottom", self.height))
        if right:
            ends = from_other_end(ends, self.height)
        else:
            marks = from_other_end(marks, whole)
        return (
            Side("edge", edge, allowances.seam, marks),
            Side("back end", end, allowances.join, ends, LineKind.JOIN),
        )

    def gusset(self, *, right: bool) -> Piece:
        """Return the gusset of a side."""
        flat, name = self.flats[right], "gusset right" if right else "gusset left"
        sides, material = self._gusset_sides(flat, right=right), self.brief.material("gusset")
        allowances = self.brief.allowances
        return sewn_piece(
            name,
            "gusset",
            material,
            sides,
            allowances.notch_depth(material.known.notch),
            finished=(flat + self.height / 2, self.height),
            lay=material.lay_boxing,
            notes=(
                Note("Seam allowance {}, at the back end {}", (allowances.seam, allowances.join)),
                Note("The round end is the front; radius {}", (self.height / 2,)),
            ),
            arrow=(-1j, "BOTTOM"),
        )

    def gusset_seams(self) -> Iterator[Seam]:
        """Yield the seam of each gusset with its side, from the top's back round the nose."""
        edges = self.edges()
        left, right = (self.gusset(right=right).edges["edge"] for right in (False, True))
        yield Seam(edges["left side"], left.backward, "gusset seam")
        yield Seam(edges["right side"], right, "gusset seam")

    def ends(self) -> tuple[Edge, Edge]:
        """Return the back ends of the left and the right gusset, each as it is run round it."""
        left, right = (self.gusset(right=right).edges["back end"] for right in (False, True))
        return left, right


def _mirrored(segment: Line | Arc, level: float) -> Line | Arc:
    """Return the mirror image of a segment below a level, run the other way."""
    return flipped(segment.mapped(1j, 0)).mapped(-1j, 2j * level).reversed()
