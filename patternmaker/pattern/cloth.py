"""How pieces lie on a material that has a nap or a repeat: shown by arrows and match lines.

It goes over a finished pattern, so that every cover has it. A nap runs down the paper: to the front
on what lies flat, downward on what stands. A repeat is matched at the front centre: there each
piece has a line, square to the seam on a strip and from front to back on a panel, on which the same
place of the repeat is laid.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.facts import HAIR
from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Line, dot
from patternmaker.geometry.touching import encloses
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Guide, LineKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.pattern.piece import Edge, Pattern, Piece

FRONT = "front"
DOWN = -1j  # the way of a nap on the paper
IN_FROM_FRONT, IN_FROM_BACK = (45.0, 0.2), (25.0, 0.12)  # mm, and share of a panel, of its strokes
ONE_WAY = Note("Nap one way: never turn it end for end")


def laid(pattern: Pattern) -> Pattern:
    """Return a pattern whose pieces show and say how nap and repeat lie on them."""
    pieces = tuple(_matched(_napped(piece)) for piece in pattern.pieces)
    fit = replace(pattern.fit, says=(*pattern.fit.says, *_matches(pieces)))
    return replace(pattern, pieces=pieces, fit=fit)


def follows_its_material(piece: Piece) -> bool:
    """Return whether a piece lies as its material does, not any way, nor on the bias."""
    return piece.lay in {piece.material.lay_flat, piece.material.lay_boxing}


def _napped(piece: Piece) -> Piece:
    if not piece.material.has_nap or not follows_its_material(piece):
        return piece
    return replace(piece, nap=DOWN, notes=(ONE_WAY, *piece.notes))


def _matched(piece: Piece) -> Piece:
    if not piece.material.is_matched or not follows_its_material(piece):
        return piece
    centre = _Centre.of(piece)
    if centre is None:
        return piece
    return replace(
        piece,
        guides=(*piece.guides, *centre.lines(piece)),
        notes=(*centre.notes(piece), *piece.notes),
    )


def _matches(pieces: tuple[Piece, ...]) -> Iterator[Note]:
    """Yield which pieces of each material meet at their match lines."""
    for material in dict.fromkeys(piece.material for piece in pieces):
        names = [p.name for p in pieces if p.material == material and match_line(p)]
        if names:
            yield Note("On the match line of {} lay {} ({})",
                       (" and ".join(names), material.matched_place, material.title))  # fmt: skip


def match_line(piece: Piece) -> Path | None:
    """Return the match line of a piece, from its front inward, or None."""
    return next((g.path for g in piece.guides if g.kind is LineKind.MATCH), None)


@dataclass(frozen=True)
class _Centre:
    """The front centre of a piece.

    Args:
        at: its place on the seam.
        way: along the match line.
        left: the length of an open edge to the left of it; None on one that goes all round.
        right: the same to the right.
    """

    at: complex
    way: complex
    left: float | None = None
    right: float | None = None

    @classmethod
    def of(cls, piece: Piece) -> _Centre | None:
        """Return it, or None for a piece that does not reach the middle of the front."""
        for edge in piece.edges.values():
            if found := cls._on(edge):
                return found
        rings = (guide.path for guide in piece.guides if isinstance(guide.path, Contour))
        for ring in (*rings, piece.cut):
            if FRONT in ring.joints:
                return cls(ring.point_at(ring.station(FRONT)), DOWN)
        return None

    @classmethod
    def _on(cls, edge: Edge) -> _Centre | None:
        if isinstance(edge.path, Contour):
            places = dict(edge.stations)
            if FRONT in edge.path.joints:
                places[FRONT] = edge.path.station(FRONT)
            return cls(edge.path.point_at(places[FRONT]), DOWN) if FRONT in places else None
        for name, along in edge.stations[1:-1]:
            if name == FRONT:
                (_, begin), (_, end) = edge.stations[0], edge.stations[-1]
                out = edge.path.outward(along)
                way = out / abs(out)
                return cls(edge.path.point_at(along), way, along - begin, end - along)
        return None

    def lines(self, piece: Piece) -> Iterator[Guide]:
        """Yield the match line: right across a strip, as a stroke at either end of a panel."""
        ends = self._ends(piece.cut)
        if ends is None:
            return
        near, far = ends
        if piece.is_strip:
            yield _line(near, far)
            return
        whole = abs(far - near)
        for begin, end, (most, share) in ((near, far, IN_FROM_FRONT), (far, near, IN_FROM_BACK)):
            yield _line(begin, begin + (end - begin) / whole * min(most, share * whole))

    def _ends(self, cut: Contour) -> tuple[complex, complex] | None:
        """Return where the line through the centre meets the cut line, the nearer place first."""
        far = self.way * (cut.width + cut.height)
        ray = Line(self.at - far, self.at + far)
        met = sorted(
            dot(point - self.at, self.way)
            for edge in cut.segments
            for point in crossings(edge, ray)
        )
        for low, high in pairwise(met):
            if high - low > HAIR and low <= HAIR and high >= -HAIR:
                ends = [self.at + along * self.way for along in (low, high)]
                if encloses(cut, sum(ends) / 2):
                    near, other = sorted(ends, key=lambda end: abs(end - self.at))
                    return near, other
        return None

    def notes(self, piece: Piece) -> Iterator[Note]:
        """Yield what is laid on the match line, and how far from the joins it is."""
        yield Note("Lay {} on the match line", (piece.material.matched_place,))
        if self.left is not None and self.right is not None:
            yield Note("Front centre {} from the left join line, {} from the right",
                       (self.left, self.right))  # fmt: skip


def _line(begin: complex, end: complex) -> Guide:
    return Guide(LineKind.MATCH, Path.through(begin, end), LineKind.MATCH.value)
