"""A whole piece as it is printed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.drawing.labels import arrow
from patternmaker.drawing.looks import PENS
from patternmaker.drawing.surface import Drawing, Letters, Mark, Stroke
from patternmaker.geometry.contour import Path
from patternmaker.pattern.piece import LineKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.segments import Box
    from patternmaker.pattern.piece import Guide, Notch, Piece

STATION_SIZE = 3.0  # mm; type of the names at notches
CLEAR_OF_CROSS = 13.0  # mm from the middle of a panel
IN_FROM_JOIN = 30.0  # mm from a strip's join
NAMED = (LineKind.STAPLE, LineKind.SEWING)


def lines_of(piece: Piece) -> Iterator[tuple[LineKind, Path]]:
    """Yield every line of a piece and what it is for, the cut line last so that it lies on top."""
    for guide in piece.guides:
        yield guide.kind, guide.path
    for notch in piece.notches:
        for foot, tip in notch.slits:
            yield LineKind.NOTCH, Path.through(foot, tip)
    yield LineKind.CUT, piece.cut


def piece_drawing(piece: Piece) -> Drawing:
    """Return a piece at full size with its lines, its marks and their names; not its label."""
    marks: list[Mark] = [Stroke(path, PENS[kind]) for kind, path in lines_of(piece)]
    marks += (_station(piece, notch) for notch in piece.notches)
    marks += (_name(guide) for guide in piece.guides if guide.kind in NAMED)
    return Drawing(tuple(marks)) + _arrow(piece)


def station_depth(piece: Piece) -> float:
    """Return how far inside the seam the names of stations stand, clear of the topstitch."""
    guides = [g.path for g in piece.guides if g.kind is LineKind.TOPSTITCH]
    stitch = max((-path.bounds[1] for path in guides), default=0.0)
    return stitch + STATION_SIZE * 1.5


def _station(piece: Piece, notch: Notch) -> Letters:
    """Return the name of a notch, inside the sew line."""
    foot = sum(notch.feet) / len(notch.feet)
    sew = next(g.path for g in piece.guides if g.kind is LineKind.SEW)
    allowance = piece.cut.bounds[3] - sew.bounds[3]
    at = foot + notch.inward * (allowance + station_depth(piece)) - 1j * STATION_SIZE * 0.35
    return Letters(at, notch.name, STATION_SIZE, anchor="middle")


def _name(guide: Guide) -> Letters:
    """Return the name of a mark, at its inner end."""
    last = guide.path.segments[-1]
    at = last.end + last.tangent(last.length) * STATION_SIZE * 1.6 - 1j * STATION_SIZE * 0.35
    colour = PENS[guide.kind].colour
    return Letters(at, guide.name, STATION_SIZE, anchor="middle", colour=colour)


def _arrow(piece: Piece) -> Drawing:
    """Return the arrow to the front of the seat, below the middle of a panel or near a join."""
    left, bottom, right, top = piece.cut.bounds
    way, word = piece.arrow
    if piece.is_strip:
        return arrow(complex(IN_FROM_JOIN / 2, 0.7 * bottom), way, min(14.0, -0.3 * bottom), word)
    middle = complex((left + right) / 2, (bottom + top) / 2)
    return arrow(middle + way * CLEAR_OF_CROSS, way, min(25.0, 0.12 * piece.cut.height), word)


def label_room(piece: Piece) -> Box:
    """Return the box in which a piece's label may stand clear of its lines."""
    left, bottom, right, top = piece.cut.bounds
    if piece.is_strip:
        return IN_FROM_JOIN, 0.85 * bottom, max(IN_FROM_JOIN, right - IN_FROM_JOIN), -16.0
    middle = complex((left + right) / 2, (bottom + top) / 2)
    aside = 0.31 * piece.cut.width
    return (
        middle.real - aside,
        middle.imag + CLEAR_OF_CROSS,
        middle.real + aside,
        middle.imag + max(CLEAR_OF_CROSS, 0.36 * piece.cut.height),
    )
