"""A straight strip as it is printed to save paper: both ends at full size, its run as figures."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from patternmaker.cutlist.strike import clip_notes, marks_along
from patternmaker.drawing.labels import (
    COLUMN_GAP,
    Context,
    Row,
    column_count,
    columns,
    rows,
    show,
    smaller,
)
from patternmaker.drawing.looks import DIMENSION, PENS
from patternmaker.drawing.pieces import STATION_SIZE, lines_of, strip_arrows, topstitch_depth
from patternmaker.drawing.surface import Drawing, Letters, Mark, Stroke
from patternmaker.geometry.contour import Path
from patternmaker.geometry.segments import Box, Line
from patternmaker.geometry.touching import enters, overlap
from patternmaker.pattern.piece import LineKind
from patternmaker.units import with_set_fractions

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.pattern.piece import Piece

REACH = 32.0  # mm of seam shown at each end
BESIDE = 1.0  # mm between a line and the name beside it
COLUMN = 54.0  # mm; the width of a column of text between the ends
TYPES = (0.8, 0.7)  # sizes of the type there, to that of a panel's label; the smaller saves paper


class StripEnds:
    """The two ends of a strip drawn close together, with what must be known of the run between."""

    def __init__(self, piece: Piece, context: Context) -> None:
        self.piece, self.context = piece, context
        self.left, self.bottom, self.right, self.top = piece.cut.bounds
        says = list(_text(piece, context))
        settings = [smaller(says, size) for size in TYPES]
        counts = [column_count(lines, COLUMN, self._room) for lines in settings]
        self.lines = settings[counts.index(min(counts))]
        self.gap = min(counts) * (COLUMN + COLUMN_GAP) + COLUMN_GAP

    @property
    def _room(self) -> float:
        return self.top - self.bottom - 12.0

    @property
    def _run(self) -> float:
        return self.piece.run[-1][1]

    @property
    def near(self) -> float:
        """How much of the seam is shown at the near end: past the slant of it, if it has any."""
        return REACH + max([0.0, *(x for x in self._corners if x < self._run / 2)])

    @property
    def far(self) -> float:
        """The same at the far end."""
        return REACH + max([0.0, *(self._run - x for x in self._corners if x > self._run / 2)])

    @property
    def _corners(self) -> list[float]:
        return [each.start.real for each in self.piece.cut.segments]

    @property
    def saves_paper(self) -> bool:
        """Whether the ends take less paper than the whole strip."""
        return self._run > self.near + self.far + self.gap

    @property
    def shift(self) -> float:
        """How far the far end is moved toward the near one."""
        return self._run - self.near - self.far - self.gap

    @property
    def box(self) -> Box:
        """The box round the drawing."""
        return self.left, self.bottom, self.right - self.shift, self.top

    def drawing(self) -> Drawing:
        """Return the drawing; the near join stands at x = 0, the seam at y = 0."""
        near, far = self.near, self._run - self.far
        marks: list[Mark] = [
            *self._window(self.left, near, 0.0),
            *self._window(far, self.right, -self.shift),
            *(Stroke(_zigzag(x, self.bottom, self.top), DIMENSION)
              for x in (near, far - self.shift)),
            *_dimension(near, far - self.shift, self.top - 5.0, self._run_says),
        ]  # fmt: skip
        text = columns(self.lines, near + COLUMN_GAP, self.top - 10.0, COLUMN, self._room)
        up = strip_arrows(self.piece, REACH / 2, 14.0)
        return Drawing(tuple(marks)) + text + up

    @property
    def _below_topstitch(self) -> float:
        """How far below the seam the names of stations stand."""
        return topstitch_depth(self.piece) + STATION_SIZE * 1.4

    @property
    def _run_says(self) -> str:
        joined = any(guide.kind is LineKind.JOIN for guide in self.piece.guides)
        ends = "join line to join line" if joined else "end to end"
        return f"{show(self._run, self.context.unit)} from {ends}"

    def _window(self, begin: float, end: float, shift: float) -> Iterator[Mark]:
        for kind, path in lines_of(self.piece):
            for segment in path.segments:
                if isinstance(segment, Line) and (part := _between(segment, begin, end)):
                    yield Stroke(Path((part.mapped(1, shift),)), PENS[kind])
        if self.piece.is_slanted:  # its ends are all there is to name
            return
        taken: list[Box] = []
        for name, x in (self.piece.run[0], *marks_along(self.piece)):
            if begin < x < end:
                letters = self._named(name, x, (begin, end), taken)
                taken.append(letters.box)
                yield replace(letters, at=letters.at + shift)

    def _named(
        self, name: str, x: float, window: tuple[float, float], taken: Sequence[Box]
    ) -> Letters:
        """Return the name of a mark below its place on the seam, beside a line that runs there."""
        at = complex(x, -self._below_topstitch)
        below = Letters(at, name, STATION_SIZE, anchor="middle")
        after = replace(below, at=at + BESIDE, anchor="left")
        before = replace(below, at=at - BESIDE, anchor="right")
        free = (each for each in (below, after, before) if self._is_free(each.box, window, taken))
        return next(free, below)

    def _is_free(self, box: Box, window: tuple[float, float], taken: Sequence[Box]) -> bool:
        begin, end = window
        if box[0] < begin or box[2] > end or any(overlap(box, other) for other in taken):
            return False
        return not any(enters(path, box) for _, path in lines_of(self.piece))


def _text(piece: Piece, context: Context) -> Iterator[Row]:
    yield from rows(piece, context)
    marks = marks_along(piece)
    if piece.notches or len(marks) > 1:  # else there is only its length to mark off
        yield Row("Mark along the seam, from the left join line:", bold=True)
        for name, x in marks:
            yield Row(f"{show(x, context.unit)}   {name}")
    for note in clip_notes(piece):
        yield Row(with_set_fractions(note.told(context.unit)).capitalize())


def _between(line: Line, begin: float, end: float) -> Line | None:
    """Return the part of a line between two uprights, or None."""
    a, b = line.start, line.end
    if a.real == b.real:
        return line if begin <= a.real <= end else None
    left, right = sorted((a, b), key=lambda z: z.real)
    low, high = max(left.real, begin), min(right.real, end)
    return Line(_at(left, right, low), _at(left, right, high)) if low < high else None


def _at(left: complex, right: complex, x: float) -> complex:
    """Return the point of a line above ``x``."""
    return left + (right - left) * ((x - left.real) / (right.real - left.real))


def _zigzag(x: float, bottom: float, top: float) -> Path:
    """Return the line at which a drawing is broken off."""
    steps = max(4, round((top - bottom) / 6))
    points = [
        complex(x + (0, 1.5, 0, -1.5)[i % 4], bottom + (top - bottom) * i / steps)
        for i in range(steps + 1)
    ]
    return Path.through(*points)


def _dimension(left: float, right: float, y: float, says: str) -> Iterator[Mark]:
    """Yield a dimension line between two breaks, its figure on it."""
    yield Stroke(Path.through(complex(left + 2, y), complex(right - 2, y)), DIMENSION)
    for x, inward in ((left + 2, 1), (right - 2, -1)):
        for side in (0.8, -0.8):
            barb = Path.through(complex(x, y), complex(x + 2.4 * inward, y + side))
            yield Stroke(barb, DIMENSION)
    yield Letters(complex((left + right) / 2, y + 1.2), says, STATION_SIZE, anchor="middle")
