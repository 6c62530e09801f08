"""Pieces put together from their sides, each with its own allowance and stations."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from patternmaker.geometry.borders import bordered
from patternmaker.geometry.contour import turn_between
from patternmaker.pattern.allowances import CLEAR
from patternmaker.pattern.piece import Edge, Guide, LineKind, Notch, Piece
from patternmaker.pattern.stations import slits_at

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.geometry.contour import Contour, Path
    from patternmaker.materials import Material
    from patternmaker.pattern.stations import Station


@dataclass(frozen=True)
class Side:
    """One side of a piece, from corner to corner.

    Args:
        name: what the edge is called on its piece.
        path: its sew line (or fold, or cut edge), run anticlockwise round the piece.
        allowance: what is cut beyond it, mm.
        stations: the places along ``path`` that meet a partner, its ends among them; those
            between the ends are notched.
        line: what kind of line ``path`` is; None where nothing is drawn, as on a raw edge.
    """

    name: str
    path: Path
    allowance: float
    stations: tuple[Station, ...] = ()
    line: LineKind | None = LineKind.SEW

    def edge(self, piece: str) -> Edge:
        """Return it as an edge of a piece, walked from its beginning."""
        places = tuple((station.name, station.at) for station in self.stations)
        return Edge(piece, self.name, self.path, places or self._ends)

    @property
    def _ends(self) -> tuple[tuple[str, float], ...]:
        return ("begin", 0.0), ("end", self.path.length)

    @property
    def turns_inward(self) -> bool:
        """Whether it has a corner that turns inward."""
        return any(turn_between(*pair) < 0 for pair in pairwise(self.path.segments))

    def notches(self, depth: float) -> Iterator[Notch]:
        """Yield the notches at its stations between its ends, as deep as given or as it bears."""
        depth = min(depth, self.allowance - CLEAR)
        for station in self.stations[1:-1]:
            places = slits_at(station.at, double=station.double)
            feet = tuple(self._foot(at) for at in places)
            out = self.path.outward(station.at)
            to_seam = self.allowance * abs(out)
            yield Notch(station.name, feet, -out / abs(out), depth, to_seam)

    def _foot(self, along: float) -> complex:
        return self.path.point_at(along) + self.allowance * self.path.outward(along)


def cut_round(sides: Sequence[Side]) -> Contour:
    """Return the cut line round a piece.

    Raises:
        Refusal: if an allowance is too wide for its side.
    """
    return bordered([(side.path, side.allowance) for side in sides])


def lines_of(sides: Iterable[Side]) -> Iterator[Guide]:
    """Yield the line that each side is drawn as."""
    for side in sides:
        if side.line is not None:
            yield Guide(side.line, side.path, side.name)


def notches_of(sides: Sequence[Side], depth: float) -> tuple[Notch, ...]:
    """Return the notches of all sides, their feet on the cut line.

    At a corner that turns inward between curves the cut line's own corner lies a hair beside the
    tip of the mitre.
    """
    notches = tuple(notch for side in sides for notch in side.notches(depth))
    if not any(side.turns_inward for side in sides):
        return notches
    cut = cut_round(sides)
    return tuple(replace(each, feet=tuple(on(cut, foot) for foot in each.feet))
                 for each in notches)  # fmt: skip


def on(cut: Contour, foot: complex) -> complex:
    """Return the place of a cut line nearest to a foot."""
    edge = cut.segments[cut.nearest(foot)]
    return edge.point(edge.along(foot))


def sewn_piece(
    name: str, role: str, material: Material, sides: Sequence[Side], depth: float, **more: Any
) -> Piece:
    """Return a piece put together from its sides: its cut line, notches and edges are theirs.

    Args:
        name: what it is called.
        role: what it does in the cover.
        material: what it is cut from.
        sides: anticlockwise, the main edge first.
        depth: how deep its notches may be, mm.
        more: what else it has, as a `Piece` does; its lines are those of its sides unless given.
    """
    more.setdefault("guides", tuple(lines_of(sides)))
    return Piece(
        name, role, material, cut_round(sides),
        notches=notches_of(sides, depth), edges=edges_of(name, sides), **more,
    )  # fmt: skip


def edges_of(piece: str, sides: Iterable[Side]) -> dict[str, Edge]:
    """Return the edges of a piece by name, the main one first as the sides are given."""
    return {side.name: side.edge(piece) for side in sides}
