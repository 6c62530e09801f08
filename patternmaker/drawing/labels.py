"""What a piece says on paper, set in lines that fit the room there is."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from patternmaker.cutlist.rows import Tally, tally_of
from patternmaker.drawing.looks import RULE
from patternmaker.drawing.surface import Drawing, Fill, Letters, Mark, Stroke
from patternmaker.drawing.typeface import LINE, wrapped
from patternmaker.geometry.contour import Path
from patternmaker.units import show_length, with_set_fractions

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.pattern.piece import Piece
    from patternmaker.units import Unit

TITLE, BODY = 6.0, 3.6  # mm; sizes of type: read at arm's length, and at the bench
SCALES = (1.0, 0.85, 0.7, 0.6, 0.5)  # smaller type than half size is left out instead
LEAST_ROOM = 12.0  # mm; a narrower room takes no label


@dataclass(frozen=True)
class Context:
    """What a piece's label says of the job that it belongs to."""

    job: str
    seat: str
    seats: Tally
    unit: Unit


@dataclass(frozen=True)
class Row:
    """A line of a label before it is wrapped."""

    text: str
    size: float = BODY
    bold: bool = False


def show(value: float, unit: Unit, *, bare: bool = False) -> str:
    """Return a length as it is printed, its fractions set."""
    return with_set_fractions(show_length(value, unit, bare=bare))


def by(width: float, height: float, unit: Unit) -> str:
    """Return a size as it is printed: width by height."""
    return f"{show(width, unit, bare=True)} × {show(height, unit)}"


def rows(piece: Piece, context: Context) -> Iterator[Row]:
    """Yield everything that a piece must say, the weightiest first."""
    unit = context.unit
    cut = tally_of(piece, context.seats)
    yield Row(f"{piece.name.capitalize()}: cut {cut}", TITLE, bold=True)
    yield Row(f"{context.seat} · {context.job}")
    side = "TEMPLATE: NOT TO BE CUT FROM THE COVERING" if piece.is_template else "SHOW SIDE UP"
    yield Row(side, bold=True)
    if cut.reversed:
        yield from _turned_over(piece)
    known = piece.material
    named = f"{known.name} ({known.kind})" if known.name else known.kind
    yield Row(f"{named.capitalize()}: {piece.lay}")
    finished = f"Finished {by(*piece.finished, unit)}, cut " if piece.finished else "Size "
    yield Row(finished + by(piece.cut.width, piece.cut.height, unit))
    for note in piece.notes:
        yield Row(with_set_fractions(note.told(unit)))


def _turned_over(piece: Piece) -> Iterator[Row]:
    """Yield how the mirror image is cut from the same paper, and which way the material lies."""
    yield Row("For the reversed ones turn this paper over", bold=True)
    if piece.nap is not None:
        yield Row("Their arrow goes with the nap too: fold the cloth along its length to cut "
                  "pairs, never across")  # fmt: skip


def _set(lines: Sequence[Row], room: float, scale: float) -> list[Row]:
    return [
        Row(part, row.size * scale, row.bold)
        for row in lines
        for part in wrapped(row.text, row.size * scale, room, bold=row.bold)
    ]


def _height(lines: Sequence[Row]) -> float:
    return sum(row.size * LINE for row in lines)


def fitted(lines: Sequence[Row], room: float, height: float) -> list[Row]:
    """Return rows wrapped and, where they must be, made smaller to fit; the last ones go first."""
    if room < LEAST_ROOM:
        return []
    for scale in SCALES:
        placed = _set(lines, room, scale)
        if _height(placed) <= height:
            return placed
    while placed and _height(placed) > height:
        placed.pop()
    return placed


def fits(lines: Sequence[Row], room: float, height: float) -> bool:
    """Return whether a room holds every row of a label, be they set small."""
    return any(_height(_set(lines, room, scale)) <= height for scale in SCALES)


def block(lines: Sequence[Row], middle: complex, room: float, height: float) -> Drawing:
    """Return a label, its lines centred on ``middle`` within a room."""
    placed = fitted(lines, room, height)
    y = middle.imag + _height(placed) / 2
    marks: list[Mark] = []
    for row in placed:
        y -= row.size * LINE
        at = complex(middle.real, y + row.size * 0.3)
        marks.append(Letters(at, row.text, row.size, row.bold, "middle"))
    return Drawing(tuple(marks))


def columns(lines: Sequence[Row], left: float, top: float, room: float, height: float) -> Drawing:
    """Return rows set from the top in as many columns ``room`` wide as they take."""
    marks: list[Mark] = []
    x, y = left, top
    for row in _set(lines, room, 1.0):
        if y - row.size * LINE < top - height:
            x, y = x + room + COLUMN_GAP, top
        y -= row.size * LINE
        marks.append(Letters(complex(x, y + row.size * 0.3), row.text, row.size, row.bold))
    return Drawing(tuple(marks))


COLUMN_GAP = 4.0  # mm between two columns


def column_count(lines: Sequence[Row], room: float, height: float) -> int:
    """Return how many columns `columns` takes."""
    drawn = columns(lines, 0, 0, room, height).marks
    return len({mark.at.real for mark in drawn if isinstance(mark, Letters)})


def smaller(lines: Sequence[Row], scale: float) -> list[Row]:
    """Return rows in smaller type."""
    return [replace(row, size=row.size * scale) for row in lines]


def arrow(tail: complex, way: complex, length: float, word: str) -> Drawing:
    """Return an arrow and, past its head, the word for what it points to; without one, neither."""
    if not word:
        return Drawing(())
    head = tail + way * length
    barb, half = min(5.0, length / 2), min(5.0, length / 2) * 0.35
    tip = Path.through(
        head, head - way * barb + 1j * way * half, head - way * barb - 1j * way * half, head
    )
    size = min(TITLE * 0.8, length / 2)
    past = head + way * (1.5 if way.imag > 0 else 1.5 + size * 0.75)
    return Drawing((
        Stroke(Path.through(tail, head - way * barb / 2), RULE),
        Fill(tip, (0.0, 0.0, 0.0)),
        Letters(past, word, size, bold=True, anchor="middle"),
    ))  # fmt: skip
