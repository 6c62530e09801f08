"""A whole piece as it is printed."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from typing import TYPE_CHECKING

from patternmaker.drawing.labels import arrow
from patternmaker.drawing.looks import PENS
from patternmaker.drawing.surface import BLACK, Drawing, Letters, Mark, Stroke
from patternmaker.geometry.contour import Path
from patternmaker.geometry.roominess import roomiest
from patternmaker.geometry.touching import enters, overlap
from patternmaker.pattern.cloth import match_line
from patternmaker.pattern.piece import LineKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.drawing.surface import Anchor, Colour
    from patternmaker.geometry.segments import Box
    from patternmaker.pattern.piece import Guide, Notch, Piece

STATION_SIZE = 3.0  # mm; type of the names at notches
CLEAR = 1.8  # mm between a line and a name beside it
CLEAR_OF_CROSS = 13.0  # mm from the middle of a panel
ABOUT_AS_ROOMY = 0.7  # of the distance from the roomiest place of a panel to its edge
LEAST_LABEL = 28.0  # mm; a label of a strip lower than this is set in columns
IN_FROM_JOIN = 30.0  # mm from a strip's join
BESIDE_LABEL = 26.0  # mm from the heart of a bent strip to its arrow; its label begins half as far
MOST_OF_STRIP = 160.0  # mm; a bent strip's label needs no higher room
LESS = sorted(product([0.1 * i for i in range(10, 2, -1)], repeat=2), key=lambda s: -s[0] * s[1])
"""Shares of the width and the height that a label would like, the largest room first."""
FAR_OFF = 25.0  # mm; a topstitch further from a notch belongs to another seam
NAMED = (LineKind.STAPLE, LineKind.SEWING)
NAP = "NAP"


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
    marks += _names(piece)
    return Drawing(tuple(marks)) + _arrow(piece)


def topstitch_depth(piece: Piece) -> float:
    """Return how far inside the seam the topstitch of a piece runs, zero if it has none."""
    guides = [g.path for g in piece.guides if g.kind is LineKind.TOPSTITCH]
    return max((-path.bounds[1] for path in guides), default=0.0)


def topstitch_at(piece: Piece, seam: complex) -> float:
    """Return how far inside a place of the seam the topstitch runs, zero if none runs there."""
    paths = [g.path for g in piece.guides if g.kind is LineKind.TOPSTITCH]
    off = (each.distance(seam) for path in paths for each in path.segments)
    return min((far for far in off if far < FAR_OFF), default=0.0)


def _names(piece: Piece) -> Iterator[Letters]:
    """Yield the names of a piece's notches and marks."""
    yield from (_station(piece, notch) for notch in piece.notches)
    yield from (_name(guide) for guide in piece.guides if guide.kind in NAMED)
    if match := match_line(piece):
        yield _beside(match)


def _station(piece: Piece, notch: Notch) -> Letters:
    """Return the name of a notch, inside its sew line and topstitch."""
    foot = sum(notch.feet) / len(notch.feet)
    depth = notch.to_seam + topstitch_at(piece, foot + notch.to_seam * notch.inward)
    name = name_inside(foot + notch.inward * depth, notch.inward, notch.name)
    if any(enters(guide.path, name.box) for guide in piece.guides if guide.kind is LineKind.MATCH):
        return replace(name, at=name.at + CLEAR, anchor="left")
    return name


def _beside(match: Path) -> Letters:
    """Return the name of a match line, to the left of its inner part."""
    (stroke,) = match.segments
    at = stroke.point(0.6 * stroke.length) - CLEAR - 0.35j * STATION_SIZE
    colour = PENS[LineKind.MATCH].colour
    return Letters(at, LineKind.MATCH.value, STATION_SIZE, anchor="right", colour=colour)


def _name(guide: Guide) -> Letters:
    """Return the name of a mark, past its inner end and the names of notches there."""
    last = guide.path.segments[-1]
    inward = last.tangent(last.length)
    past = 0.0 if _is_level(inward) else STATION_SIZE * 1.4
    colour = PENS[guide.kind].colour
    return name_inside(last.end + inward * past, inward, guide.name, colour=colour)


def _is_level(inward: complex) -> bool:
    return abs(inward.real) > 0.5


def name_inside(
    point: complex, inward: complex, text: str, size: float = STATION_SIZE, colour: Colour = BLACK
) -> Letters:
    """Return a name that stands clear of the line at ``point``, on the side of ``inward``."""
    drop, clear = 1j * size * 0.35, CLEAR * size / STATION_SIZE
    if _is_level(inward):
        anchor: Anchor = "left" if inward.real > 0 else "right"
        return Letters(point + inward * clear - drop, text, size, anchor=anchor, colour=colour)
    at = point + inward * (clear + size * 0.6) - drop
    return Letters(at, text, size, anchor="middle", colour=colour)


def _arrow(piece: Piece) -> Drawing:
    """Return the arrow to the front of the seat, below the middle of a panel or near a join."""
    way, word = arrow_of(piece)
    if piece.is_strip:
        return strip_arrows(piece, IN_FROM_JOIN / 2, min(14.0, -0.3 * piece.cut.bounds[1]))
    if piece.heart is not None:
        return _arrows(piece, piece.heart.real - BESIDE_LABEL, piece.heart.imag - 7.0, 14.0)
    heart = _heart(piece)
    return arrow(heart + way * CLEAR_OF_CROSS, way, min(25.0, 0.12 * piece.cut.height), word)


def _heart(piece: Piece) -> complex:
    """Return the place about which a panel's label and arrow stand.

    It is the middle of its cross, where there is about as much room as anywhere, so that neither
    is struck through: the cross of a top with a fall stands behind the middle of the paper.
    """
    roomy = roomiest(piece.cut)
    crosses = [guide.path.bounds for guide in piece.guides if guide.kind is LineKind.CENTRE]
    if not crosses:
        return roomy
    left, bottom, right, top = crosses[0]
    middle = complex((left + right) / 2, (bottom + top) / 2)
    free, most = (min(each.distance(at) for each in piece.cut.segments) for at in (middle, roomy))
    return middle if free > ABOUT_AS_ROOMY * most else roomy


def arrow_of(piece: Piece) -> tuple[complex, str]:
    """Return the way of a piece's arrow and its word, with that of the nap where it runs so."""
    way, word = piece.arrow
    return way, f"{word}, {NAP}" if piece.nap == way else word


def strip_arrows(piece: Piece, x: float, length: float) -> Drawing:
    """Return the arrow of a strip about ``x``, and one for a nap that runs against it."""
    return _arrows(piece, x, 0.7 * piece.cut.bounds[1], length)


def _arrows(piece: Piece, x: float, tail: float, length: float) -> Drawing:
    way, word = arrow_of(piece)
    if piece.nap is None or piece.nap == way:
        return arrow(complex(x, tail), way, length, word)
    up = arrow(complex(x - 7.0, tail), way, length, word)
    return up + arrow(complex(x + 7.0, tail) + 1.5 * way * length, piece.nap, length, NAP)


def label_room(piece: Piece) -> Box:
    """Return the box in which a piece's label may stand clear of its lines."""
    _, bottom, right, _ = piece.cut.bounds
    if piece.is_strip:
        seam, fold = (_lowest(piece, kind) for kind in (LineKind.SEW, LineKind.FOLD))
        below_names = -topstitch_depth(piece) - STATION_SIZE * 3.5
        left, right = _beside_match(piece, IN_FROM_JOIN, max(IN_FROM_JOIN, right - IN_FROM_JOIN))
        if piece.role == "welt":
            return _between_folds(piece)
        if seam < 0:  # sewn at its lower edge too
            return left, seam + STATION_SIZE * 3.5, right, below_names
        if below_names - fold < LEAST_LABEL:  # too shallow: the label crosses the fold
            return left, bottom + CLEAR, right, -topstitch_depth(piece) - CLEAR
        return left, fold + CLEAR, right, below_names
    return _inner_room(piece)


def _between_folds(piece: Piece) -> Box:
    """Return the room between the ends of a welt, where no line is drawn."""
    _, bottom, _, top = piece.cut.bounds
    folds = sorted(g.path.bounds for g in piece.guides if g.kind is LineKind.FOLD)
    left, right = (folds[0][2], folds[-1][0]) if len(folds) > 1 else (folds[0][0], folds[0][2])
    return left + CLEAR, bottom + CLEAR, right - CLEAR, top - CLEAR


def _lowest(piece: Piece, kind: LineKind) -> float:
    """Return the height of the lowest level line of a kind; of the cut edge, if there is none."""
    level = (g.path for g in piece.guides if g.kind is kind and not g.path.height)
    return min((path.bounds[1] for path in level), default=piece.cut.bounds[1])


def _beside_match(piece: Piece, left: float, right: float) -> tuple[float, float]:
    """Return the larger part of a strip that its match line leaves, or the whole."""
    match = match_line(piece)
    if match is None:
        return left, right
    x, (name, _, _, _) = match.bounds[0], _beside(match).box
    return (left, name - CLEAR) if x - left > right - x else (x + CLEAR, right)


def _below(piece: Piece) -> float:
    """Return how far above the roomiest place of a panel its label begins.

    Below it where no cross is struck in the middle, down to the arrow.
    """
    crossed = any(guide.kind is LineKind.CENTRE for guide in piece.guides)
    return CLEAR_OF_CROSS if crossed or piece.arrow[0].imag >= 0 else -CLEAR_OF_CROSS / 2


def _inner_room(piece: Piece) -> Box:
    """Return the room above the roomiest place of a panel that its lines and names leave free.

    Where no arrow stands below that place, it is the room about it.
    """
    lines = [path for _, path in lines_of(piece)]
    words = [name.box for name in _names(piece)]
    room = (0.0, 0.0, 0.0, 0.0)
    for room in _rooms(piece):
        if room[3] <= room[1]:  # no label fits so low a piece
            break
        crossed = any(enters(line, room) for line in lines)
        if not crossed and not any(overlap(box, room) for box in words):
            break
    return room


def _rooms(piece: Piece) -> Iterator[Box]:
    """Yield boxes in which a label might stand, the largest first."""
    if piece.heart is not None:
        x, y = piece.heart.real, piece.heart.imag
        for wide, tall in LESS:
            half = 0.5 * tall * min(piece.cut.height, MOST_OF_STRIP)
            yield x - BESIDE_LABEL / 2, y - half, x + wide * 0.31 * piece.cut.width, y + half
        return
    heart = _heart(piece)
    aside, high = 0.31 * piece.cut.width, max(CLEAR_OF_CROSS, 0.36 * piece.cut.height)
    for wide, tall in LESS:
        above = max(CLEAR_OF_CROSS, tall * high)
        about = min(above, 0.45 * piece.cut.height)
        below, above = (_below(piece), above) if piece.arrow[1] else (-about, about)
        x, y = wide * aside, heart.imag
        yield heart.real - x, y + below, heart.real + x, y + above
