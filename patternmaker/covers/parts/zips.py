"""The zip boxing: two strips, each turned under along the zip, between the ends of the boxing."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.covers.parts.boxes import (
    FAR,
    NEAR,
    between,
    bottom_seam,
    top_seam,
)
from patternmaker.covers.parts.rings import clip_guides, mark_guides
from patternmaker.covers.parts.sides import Side, lines_of, sewn_piece
from patternmaker.geometry.contour import Path
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import LineKind, Piece, Seam
from patternmaker.pattern.stations import Station, from_other_end

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.covers.parts.rings import Stretch
    from patternmaker.pattern.piece import Edge, Guide

SEAM_EDGE, ZIP_EDGE = "seam edge", "zip edge"


@dataclass(frozen=True)
class ZipStrip:
    """One of the two strips of a zip boxing; both read from left to right as the boxing does.

    Args:
        stretch: the stretch of the seam that the zip boxing covers.
        face: the face that it is sewn to, ``top`` or ``bottom``.
        turning: turned under along the zip, mm.
    """

    stretch: Stretch
    face: str
    turning: float

    @property
    def name(self) -> str:
        """What it is called."""
        return f"zip strip {self.face}"

    @property
    def height(self) -> float:
        """From its seam to the middle of the zip."""
        return self.stretch.ring.height / 2

    @property
    def sides(self) -> tuple[Side, ...]:
        """Its sides, the seam edge first, on from there anticlockwise."""
        allowances, far, low = self.stretch.ring.allowances, self.stretch.length, -1j * self.height
        stops = self.stretch.stations
        upper, lower = Path.through(far, 0), Path.through(low, far + low)
        marks = (stops[0], *(stop for stop in stops if stop.name == "back"), stops[-1])
        near = Side(NEAR, Path.through(0, low), allowances.join, self._end, LineKind.JOIN)
        end = from_other_end(self._end, self.height)
        far_end = Side(FAR, Path.through(far + low, far), allowances.join, end, LineKind.JOIN)
        if self.face == "top":
            seam = Side(SEAM_EDGE, upper, allowances.upper_edge, from_other_end(stops, far))
            return seam, near, Side(ZIP_EDGE, lower, self.turning, marks, LineKind.FOLD), far_end
        seam = Side(SEAM_EDGE, lower, allowances.upper_edge, stops)
        turned = Side(ZIP_EDGE, upper, self.turning, from_other_end(marks, far), LineKind.FOLD)
        return seam, far_end, turned, near

    @property
    def _end(self) -> tuple[Station, ...]:
        """The stations of an end, downward."""
        names = ("top", "zip") if self.face == "top" else ("zip", "bottom")
        return Station(names[0], 0.0), Station(names[1], self.height)

    @cached_property
    def piece(self) -> Piece:
        """It as a piece; its material is the boxing's unless it has one of its own."""
        brief, sides = self.stretch.ring.brief, self.sides
        material = brief.materials.get("zip boxing", brief.material("boxing"))
        depth = brief.allowances.notch_depth(material.known.notch)
        return sewn_piece(
            self.name,
            "zip boxing",
            material,
            sides,
            depth,
            guides=tuple(self._guides(sides)),
            finished=(self.stretch.length, self.height),
            lay=material.lay_boxing,
            notes=tuple(self._notes()),
            arrow=(1j, "TOP"),
            run=tuple((stop.name, stop.at) for stop in self.stretch.stations),
        )

    def _guides(self, sides: Sequence[Side]) -> Iterator[Guide]:
        yield from lines_of(sides)
        allowance = self.stretch.ring.allowances.upper_edge
        if self.face == "top":
            yield from clip_guides(self.stretch, 0.0, allowance)
            yield from mark_guides(self.stretch)
        else:
            yield from clip_guides(self.stretch, -self.height, -allowance)

    def _notes(self) -> Iterator[Note]:
        allowances = self.stretch.ring.allowances
        yield Note("Seam allowance {}, at the joins {}", (allowances.upper_edge, allowances.join))
        yield Note("Turn {} under along the fold line, which lies on the middle of the zip",
                   (self.turning,))  # fmt: skip
        if self.face == "bottom":
            yield Note("Its lower edge is sewn to the bottom: mark along that")

    def sewn(self) -> Seam:
        """Return its seam with the top or the bottom."""
        edge = self.piece.edges[SEAM_EDGE]
        if self.face == "top":
            return top_seam(self.stretch, edge)
        return bottom_seam(self.stretch, edge.backward)


def zip_seam(top: ZipStrip, bottom: ZipStrip) -> Seam:
    """Return the seam of both strips along the zip."""
    one, two = (strip.piece.edges[ZIP_EDGE] for strip in (top, bottom))
    return Seam(one, two.backward, "zip seam")


def end_seams(top: ZipStrip, bottom: ZipStrip, near: Edge, far: Edge) -> Iterator[Seam]:
    """Yield the seams of both ends of the zip boxing with what follows it, ``near`` after it."""
    upper, lower = top.piece.edges, bottom.piece.edges
    yield Seam(between(near, "top", "zip"), upper[FAR].backward, "join")
    yield Seam(between(near, "zip", "bottom"), lower[FAR].backward, "join")
    yield Seam(between(far, "bottom", "zip"), lower[NEAR].backward, "join")
    yield Seam(between(far, "zip", "top"), upper[NEAR].backward, "join")
