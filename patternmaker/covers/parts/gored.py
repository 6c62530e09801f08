"""Domed tops sewn from gores: flat pieces from the seam to the crown, side to side."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.covers.parts.caps import Cap, Run
from patternmaker.covers.parts.sides import Side, sewn_piece
from patternmaker.covers.parts.tops import FOR_THE_PAPER
from patternmaker.geometry.contour import joined_bounds
from patternmaker.geometry.gores import Gore, gore
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Piece, Seam
from patternmaker.pattern.stations import Station

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.caps import Domed
    from patternmaker.pattern.piece import Edge

GORE_SEAM = "gore seam"
BASE, LEFT, RIGHT = "base", "left side", "right side"
CROWN = "crown"
SIDE = "side"  # what notches on the sides are called where all gores are cut from one


def gored(domed: Domed) -> Cap:
    """Return the top as gores: cut from one where they are alike, else each a piece of its own."""
    drafts = list(_drafts(domed))
    own = drafts[:1] if domed.are_alike else drafts
    runs = tuple(draft.run for draft in drafts)
    return Cap(tuple(draft.piece for draft in own), runs, tuple(_seams(drafts)))


def _drafts(domed: Domed) -> Iterator[_Draft]:
    """Yield each gore while it is drafted; alike ones have the same outline, its middle down."""
    sections = list(domed.sections())
    flat: Gore | None = None
    for number, ((first, places), (name, _), (after, _)) in enumerate(
        zip(sections, domed.parts, (*domed.parts[1:], domed.parts[0]), strict=True), 1
    ):
        if flat is None or not domed.are_alike:
            begin, end = places[0].at, places[-1].at
            flat = gore(domed.dome, begin, end)
            if domed.are_alike:
                flat = flat.mapped(-1j / domed.dome.bearing((begin + end) / 2))
        yield _Draft(domed, number, flat, first, places, (name, after))


def _seams(drafts: list[_Draft]) -> Iterator[Seam]:
    """Yield the seam of each gore with the next, from the base to the crown; alike ones once."""
    pairs = list(pairwise((*drafts, drafts[0])))
    for here, after in pairs[:1] if drafts[0].domed.are_alike else pairs:
        yield Seam(here.edge(RIGHT), after.edge(LEFT).backward, GORE_SEAM)


@dataclass(frozen=True)
class _Draft:
    """One gore while it is drafted.

    Args:
        domed: the seat.
        number: which gore it is.
        flat: its sew lines.
        first: which of the seam's stations it begins at.
        places: its stations along the seam.
        ends: the names of the gore seams on its left and on its right.
    """

    domed: Domed
    number: int
    flat: Gore
    first: int
    places: tuple[Station, ...]
    ends: tuple[str, str]

    @property
    def name(self) -> str:
        return "gore" if self.domed.are_alike else f"gore {self.number}"

    @property
    def run(self) -> Run:
        ats = tuple(station.at for station in self.sides[0].stations)
        return Run(self.name, self.flat.base, self.first, ats, BASE)

    def edge(self, side: str) -> Edge:
        (found,) = (each for each in self.sides if each.name == side)
        return found.edge(self.name)

    @cached_property
    def sides(self) -> tuple[Side, Side, Side]:
        """Base, right side and left side, anticlockwise."""
        seam, (left, right) = self.domed.seam, self.ends
        start, whole = self.places[0].at, self.places[-1].at - self.places[0].at
        longer = self.flat.base.length / whole
        base = (Station(p.name, (p.at - start) * longer, p.double) for p in self.places)
        up = tuple(self._upward(right, self.flat.right.length))
        down = self.flat.left.length
        back = reversed(tuple(self._upward(left, down)))
        return (
            Side(BASE, self.flat.base, seam, tuple(base)),
            Side(RIGHT, self.flat.right, seam, up),
            Side(LEFT, self.flat.left, seam, tuple(Station(s.name, down - s.at) for s in back)),
        )

    def _upward(self, name: str, length: float) -> Iterator[Station]:
        """Yield the stations of a side from the base to the crown."""
        name = SIDE if self.domed.are_alike else name
        count = math.ceil(length / self.domed.brief.allowances.notch_spacing - 1e-9)
        for i in range(count):
            yield Station(f"{name}·{i}" if i else name, length * i / count)
        yield Station(CROWN, length)

    @property
    def piece(self) -> Piece:
        alike = self.domed.are_alike
        left, bottom, right, top = joined_bounds(side.path.bounds for side in self.sides)
        kept = self.domed.kept
        return sewn_piece(
            self.name, "top", self.domed.material, self.sides, self.domed.depth,
            finished=((right - left) / kept, (top - bottom) / kept),
            lay=self.domed.material.lay_flat,
            notes=tuple(self._notes()),
            arrow=(-1j, "SEAM" if alike else "FRONT"),
            count=self.domed.count if alike else 1,
        )  # fmt: skip

    def _notes(self) -> Iterator[Note]:
        yield Note("Seam allowance {} all round", (self.domed.seam,))
        yield Note(f"One of {self.domed.count} gores: the sharp corner is at the crown")
        if not self.domed.are_alike:
            yield Note("It lies on the sheet as on the seat; keep the arrow's way")
        yield FOR_THE_PAPER
