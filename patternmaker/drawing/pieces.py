"""A whole piece as it is printed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.drawing.labels import Context, arrow, block, rows
from patternmaker.drawing.looks import PENS
from patternmaker.drawing.surface import Drawing, Letters, Mark, Stroke
from patternmaker.geometry.contour import Path
from patternmaker.pattern.piece import LineKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.pattern.piece import Guide, Notch, Piece

STATION_SIZE = 2.6  # mm; type of the names at notches
CLEAR_OF_CROSS = 13.0  # mm from the middle of a panel
NAMED = (LineKind.STAPLE, LineKind.SEWING)


def lines_of(piece: Piece) -> Iterator[tuple[LineKind, Path]]:
    """Yield every line of a piece and what it is for, the cut line last so that it lies on top."""
    for guide in piece.guides:
        yield guide.kind, guide.path
    for notch in piece.notches:
        for foot, tip in notch.slits:
            yield LineKind.NOTCH, Path.through(foot, tip)
    yield LineKind.CUT, piece.cut


def piece_drawing(piece: Piece, context: Context) -> Drawing:
    """Return a piece at full size with its lines, marks, names and label."""
    marks: list[Mark] = [Stroke(path, PENS[kind]) for kind, path in lines_of(piece)]
    marks += (_station(piece, notch) for notch in piece.notches)
    marks += (_name(guide) for guide in piece.guides if guide.kind in NAMED)
    label = _strip_label(piece, context) if piece.is_strip else _panel_label(piece, context)
    return Drawing(tuple(marks)) + label


def _station(piece: Piece, notch: Notch) -> Letters:
    """Return the name of a notch, inside the sew line."""
    foot = sum(notch.feet) / len(notch.feet)
    depth = 16.0 if not piece.is_strip else piece.cut.bounds[3] + 9.0
    at = foot + notch.inward * depth - 1j * STATION_SIZE * 0.35
    return Letters(at, notch.name, STATION_SIZE, anchor="middle")


def _name(guide: Guide) -> Letters:
    """Return the name of a mark, at its inner end."""
    last = guide.path.segments[-1]
    at = last.end + last.tangent(last.length) * STATION_SIZE * 1.6 - 1j * STATION_SIZE * 0.35
    colour = PENS[guide.kind].colour
    return Letters(at, guide.name, STATION_SIZE, anchor="middle", colour=colour)


def _panel_label(piece: Piece, context: Context) -> Drawing:
    """Return the label above the middle of a panel, and below it the arrow to the front."""
    left, bottom, right, top = piece.cut.bounds
    middle = complex((left + right) / 2, (bottom + top) / 2)
    height = max(0.0, 0.36 * piece.cut.height - CLEAR_OF_CROSS)
    text = block(
        list(rows(piece, context)),
        middle + 1j * (CLEAR_OF_CROSS + height / 2),
        0.62 * piece.cut.width,
        height,
    )
    length = min(25.0, 0.12 * piece.cut.height)
    way, word = piece.arrow
    return text + arrow(middle + way * CLEAR_OF_CROSS, way, length, word)


def _strip_label(piece: Piece, context: Context) -> Drawing:
    """Return the label near the start of a strip, between its topstitch and its fold."""
    left, bottom, right, _ = piece.cut.bounds
    room = min(160.0, (right - left) * 0.8)
    upper, lower = -14.0, bottom * 0.9
    middle = complex(left + 30 + room / 2 if right - left > 260 else (left + right) / 2,
                     (upper + lower) / 2)  # fmt: skip
    return block(list(rows(piece, context)), middle, room, max(0.0, upper - lower))
