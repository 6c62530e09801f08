"""The pieces of a job side by side in one SVG at true size, fit to cut from."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import Drafted, seats_of, tally_of
from patternmaker.drawing.looks import PENS
from patternmaker.drawing.pieces import lines_of
from patternmaker.pattern.piece import LineKind
from patternmaker.writers.svg import svg_file

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.contour import Path
    from patternmaker.pattern.piece import Piece

BETWEEN = 10.0  # mm between two pieces, and round them all


def svg_of(drafted: Drafted) -> bytes:
    """Return every piece once, one above the other, with all its lines; no lettering.

    A piece's title says whose it is and how many to cut.
    """
    y, width = BETWEEN, 0.0
    placed: list[tuple[str, Piece, complex]] = []
    for title, piece in _titled(drafted):
        left, bottom, right, top = piece.cut.bounds
        placed.append((title, piece, complex(BETWEEN - left, y - bottom)))
        y += top - bottom + BETWEEN
        width = max(width, right - left)
    groups: dict[str, list[tuple[str, Path]]] = {kind.value: [] for kind in LineKind}
    for title, piece, shift in placed:
        for kind, path in lines_of(piece):
            groups[kind.value].append((f"{title}: {kind.value}", path.mapped(1, shift)))
    return svg_file(
        drafted.job.name,
        (width + 2 * BETWEEN, y),
        {kind: (PENS[LineKind(kind)].colour, lines) for kind, lines in groups.items() if lines},
    )


def _titled(drafted: Drafted) -> Iterator[tuple[str, Piece]]:
    for seat, pattern in drafted.seats:
        for piece in pattern.pieces:
            count = tally_of(piece, seats_of(seat))
            yield f"{seat.name}, {piece.name} (cut {count}, {piece.material.title})", piece
