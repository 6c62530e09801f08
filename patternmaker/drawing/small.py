"""A piece drawn small: its lines to scale, its notches and marks named where there is room."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from typing import TYPE_CHECKING

from patternmaker.drawing.labels import arrow
from patternmaker.drawing.looks import PENS, Pen
from patternmaker.drawing.pieces import NAMED, arrow_of, name_inside, topstitch_at
from patternmaker.drawing.surface import Drawing, Fill, Letters, Stroke, rectangle
from patternmaker.geometry.contour import Path, joined_bounds
from patternmaker.geometry.roominess import roomiest
from patternmaker.geometry.touching import enters, overlap
from patternmaker.pattern.piece import LineKind

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Iterator, Sequence

    from patternmaker.drawing.surface import Anchor, Colour
    from patternmaker.geometry.contour import Contour
    from patternmaker.geometry.segments import Box
    from patternmaker.pattern.piece import Guide, Piece

NAME = 2.4  # mm; type of the names at notches
SLIT = 1.6  # mm; the shortest line that a notch or a mark is drawn as
APART = 0.5  # mm between two names
ASTRIDE = 0.3  # of its size, that a name moved aside still reaches past its notch
HALO = 0.25  # mm round a name, in which lines give way to it
ROOM = 0.9  # mm round the arrow
FINER = 0.6  # of the full-scale pens, lines and dashes alike
ARROWS = (7.0, 5.5, 4.4)  # mm; lengths of the arrow, the first that there is room for
ASIDE = (0.0, 0.15, -0.15, 0.3)  # of a piece's size, from its middle, where the arrow may stand
CREAM: Colour = (0.975, 0.965, 0.94)
LEFT_OUT = (LineKind.CENTRE, LineKind.CLIP, LineKind.TOPSTITCH)  # a blur so small
SMALL_PENS = {
    kind: Pen(pen.width * FINER, tuple(dash * FINER for dash in pen.dashes), pen.colour)
    for kind, pen in PENS.items()
}
KEPT_CLEAR = (SMALL_PENS[LineKind.SEW], SMALL_PENS[LineKind.NOTCH])


def small_drawing(piece: Piece, factor: float, middle: complex) -> Drawing:
    """Return a piece ``factor`` times its size, the box round it centred on ``middle``."""
    shift = middle - factor * piece.cut.middle
    cut = piece.cut.mapped(factor, shift)
    lines = [Stroke(path, SMALL_PENS[kind]) for kind, path in _lines(piece, factor, shift)]
    names = _kept(_names(piece, factor, shift), cut)
    whole = Stroke(cut, SMALL_PENS[LineKind.CUT])
    heart = roomiest(piece.cut) * factor + shift
    clear = [cut, *(line.path for line in lines if line.pen in KEPT_CLEAR)]
    arrowed = _arrow(arrow_of(piece), heart, clear, names.values())
    if not (arrowed.marks or piece.is_strip):  # on a panel it matters more than a name
        arrowed = _arrow(arrow_of(piece), heart, clear, ())
        names = _without(names, arrowed)
    cleared = [Fill(rectangle(_roomy(box, HALO)), CREAM) for box in names.values()]
    return Drawing((Fill(cut, CREAM), *lines, *cleared, whole, *names)) + arrowed


def _lines(piece: Piece, factor: float, shift: complex) -> Iterator[tuple[LineKind, Path]]:
    """Yield what is drawn inside the cut line."""
    for guide in piece.guides:
        if guide.kind not in LEFT_OUT and guide.path.length:
            path = guide.path.mapped(factor, shift)
            yield guide.kind, _at_least(path) if guide.kind in NAMED else path
    for notch in piece.notches:
        for foot, tip in notch.slits:
            slit = Path.through(foot * factor + shift, tip * factor + shift)
            yield LineKind.NOTCH, _at_least(slit)


def _at_least(path: Path) -> Path:
    """Return a short line, lengthened inward until it can be seen."""
    start, end = path.segments[0].start, path.segments[-1].end
    long = abs(end - start)
    return path if long >= SLIT else Path.through(start, start + (end - start) * SLIT / long)


def _names(piece: Piece, factor: float, shift: complex) -> Iterator[Letters]:
    """Yield the names of joins, notches and marks, those that matter most first."""
    yield from _joins(piece, factor, shift)
    counted = [notch for notch in piece.notches if notch.name.isdigit()]
    for notch in (*(each for each in piece.notches if each not in counted), *counted):
        foot = sum(notch.feet) / len(notch.feet)
        below = topstitch_at(piece, foot + notch.to_seam * notch.inward)
        deep = max(SLIT, factor * (notch.to_seam + below))
        yield name_inside(foot * factor + shift + notch.inward * deep, notch.inward, notch.name,
                          NAME)  # fmt: skip
    for guide in piece.guides:
        if guide.kind in NAMED and guide.path.length:
            last = _at_least(guide.path.mapped(factor, shift)).segments[-1]
            yield name_inside(last.end, last.tangent(last.length), _in_short(guide), NAME,
                              PENS[guide.kind].colour)  # fmt: skip


def _in_short(guide: Guide) -> str:
    """Return what tells a mark from its like: where stapling begins, or whether sewing does."""
    if guide.kind is LineKind.STAPLE:
        return guide.name.rpartition(": ")[2]
    return guide.name.partition(" ")[0]


def _joins(piece: Piece, factor: float, shift: complex) -> Iterator[Letters]:
    """Yield the names of both ends of a strip's main edge, beside their lines."""
    edge = next(iter(piece.edges.values()), None)
    if edge is None or abs(edge.path.segments[0].start - edge.path.segments[-1].end) < SLIT:
        return
    for name, along in (edge.stations[0], edge.stations[-1]):
        place = edge.path.point_at(along)
        toward = piece.cut.middle - place
        down = 1.6 * NAME if toward.imag < 0 else -NAME
        anchor: Anchor = "left" if toward.real > 0 else "right"
        aside = 0.8 if toward.real > 0 else -0.8
        at = place * factor + shift + complex(aside, -down)
        letters = Letters(at, name, NAME, anchor=anchor)
        if not any(enters(path, letters.box) for _, path in _lines(piece, factor, shift)):
            yield letters


def _kept(names: Iterable[Letters], cut: Contour) -> dict[Letters, Box]:
    """Return the names that stand inside a piece and clear of those before them, with their boxes.

    One that its notch puts across the cut line, as beside a corner, is moved aside.
    """
    kept: dict[Letters, Box] = {}
    for name in names:
        for spot in _spots(name):
            own = spot.box
            roomy = _roomy(own, APART)
            if any(overlap(roomy, other) for other in kept.values()):
                continue
            if _holds(cut.bounds, own) and not enters(cut, roomy):
                kept[spot] = own
                break
    return kept


def _without(names: dict[Letters, Box], arrowed: Drawing) -> dict[Letters, Box]:
    """Return the names that an arrow leaves room for."""
    if not arrowed.marks:
        return names
    taken = _box_of(arrowed)
    return {name: box for name, box in names.items() if not overlap(_roomy(box, APART), taken)}


def _spots(name: Letters) -> Iterator[Letters]:
    """Yield a name where it should stand, then to either side if it stands over its notch."""
    yield name
    if name.anchor == "middle":
        yield replace(name, anchor="left", at=name.at - ASTRIDE * name.size)
        yield replace(name, anchor="right", at=name.at + ASTRIDE * name.size)


def _holds(box: Box, other: Box) -> bool:
    return box[0] <= other[0] and box[1] <= other[1] and other[2] <= box[2] and other[3] <= box[3]


def _roomy(box: Box, by: float) -> Box:
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def _arrow(
    says: tuple[complex, str], heart: complex, clear: Sequence[Path], names: Collection[Box]
) -> Drawing:
    """Return the arrow to the front of the seat, where its piece, drawn first, has room for it.

    It stands clear of lines and names: in the middle, or else as near to it as it can.
    """
    (way, word), cut = says, clear[0]
    if not word:
        return Drawing(())
    left, bottom, right, top = cut.bounds
    free = min(each.distance(heart) for line in clear for each in line.segments)
    for length, down, aside in product(ARROWS, ASIDE, ASIDE):
        at = heart + complex(aside * (right - left), -abs(down) * (top - bottom))
        drawn = arrow(at - way * length * 0.75, way, length, word)
        box = _roomy(_box_of(drawn), ROOM)
        if any(overlap(box, name) for name in names) or not _holds(cut.bounds, box):
            continue
        if _reach(box, heart) < free or not any(enters(line, box) for line in clear):
            return drawn
    return Drawing(())


def _reach(box: Box, place: complex) -> float:
    """Return how far the furthest corner of a box lies from a place."""
    return max(abs(complex(x, y) - place) for x in box[::2] for y in box[1::2])


def _box_of(drawing: Drawing) -> Box:
    return joined_bounds(
        mark.box if isinstance(mark, Letters) else mark.path.bounds for mark in drawing.marks
    )
