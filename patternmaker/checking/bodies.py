"""What must be on paper: the lines of every piece, as the model has them."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.checking.shapes import Shape
from patternmaker.cutlist.sharing import shared
from patternmaker.drawing.ends import StripEnds
from patternmaker.drawing.labels import Context
from patternmaker.geometry.contour import Path
from patternmaker.geometry.segments import Line
from patternmaker.pattern.piece import LineKind

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

    from patternmaker.cutlist.rows import Drafted
    from patternmaker.pattern.piece import Piece

SHARES = (0.25, 0.5, 0.75)  # of the way along a line, where it is looked at to tell it from others


@dataclass(frozen=True, eq=False)
class ModelLine:
    """A line of a piece, and what it is for."""

    kind: LineKind
    shape: Shape

    @cached_property
    def marks(self) -> tuple[complex, ...]:
        """Where it begins, three places along it, and where it ends."""
        inner = (self.shape.point(share) for share in SHARES)
        return self.shape.start, *inner, self.shape.end


@dataclass(frozen=True, eq=False)
class Body:
    """Lines that lie together on paper: those of a piece, or of one end of a strip."""

    seat: str
    piece: str
    lines: tuple[ModelLine, ...]


@dataclass(frozen=True, eq=False)
class Wanted:
    """A piece that must be on paper: whole, or, of a strip, as its ends."""

    whole: Body
    ends: tuple[Body, ...]


def bodies_of(drafted: Drafted, only: Collection[str] = ()) -> Iterator[Wanted]:
    """Yield what must be on paper of a job: all of it, or the pieces asked for by a name."""
    asked = {_plain(name) for name in only}
    job = drafted.job
    for each in shared(drafted):
        piece, context = each.piece, Context(job.name, each.called, each.tally, job.unit)
        names = (piece.name, piece.role, *(f"{seat}: {piece.name}" for seat in each.names))
        if asked and asked.isdisjoint(map(_plain, names)):
            continue
        parts = _ends(piece, context) if piece.is_strip else ()
        whole, *ends = (Body(each.called, piece.name, tuple(lines))
                        for lines in (_lines(piece), *parts))  # fmt: skip
        yield Wanted(whole, tuple(ends))


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())


def _ends(piece: Piece, context: Context) -> Iterator[Iterator[ModelLine]]:
    """Yield the lines of each end of a strip, as far as they are printed where it is not whole."""
    ends, run = StripEnds(piece, context), piece.run[-1][1]
    if ends.near < run - ends.far:
        left, _, right, _ = piece.cut.bounds
        yield _cut(piece, left, ends.near)
        yield _cut(piece, run - ends.far, right)


def _paths(piece: Piece) -> Iterator[tuple[LineKind, Path]]:
    yield LineKind.CUT, piece.cut
    for guide in piece.guides:
        yield guide.kind, guide.path
    for notch in piece.notches:
        for foot, tip in notch.slits:
            yield LineKind.NOTCH, Path.through(foot, tip)


def _lines(piece: Piece) -> Iterator[ModelLine]:
    for kind, path in _paths(piece):
        yield ModelLine(kind, Shape.of(path))


def _cut(piece: Piece, begin: float, end: float) -> Iterator[ModelLine]:
    """Yield the straight edges of a strip as far as they lie between two uprights."""
    for kind, path in _paths(piece):
        for edge in path.segments:
            if isinstance(edge, Line) and (part := _between(edge, begin, end)):
                yield ModelLine(kind, Shape.of(Path((part,))))


def _between(edge: Line, begin: float, end: float) -> Line | None:
    """Return the part of an edge between two uprights, cut where it passes them; or None."""
    a, b = edge.start, edge.end
    step = b.real - a.real
    if step == 0:
        return edge if begin <= a.real <= end else None
    low, high = sorted(((begin - a.real) / step, (end - a.real) / step))
    low, high = max(0.0, low), min(1.0, high)
    return Line(a + low * (b - a), a + high * (b - a)) if low < high else None
