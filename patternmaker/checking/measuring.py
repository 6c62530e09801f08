"""How far every drawn line lies from the model, on each sheet that shows a part of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from numpy.typing import NDArray

    from patternmaker.checking.finding import Drawn, Found, Pair, Placing
    from patternmaker.checking.plane import Distances, Points
    from patternmaker.checking.sheets import Plate, Sheet
    from patternmaker.pattern.piece import LineKind

HIDDEN = 0.5  # mm of a line that may be hidden where two sheets meet before it is told


@dataclass(frozen=True)
class Spot:
    """A place on a sheet, mm from its left and lower edges."""

    sheet: int
    at: complex


@dataclass(frozen=True)
class Measured:
    """A line of a piece as it was measured on paper.

    Args:
        seat: of the piece.
        piece: its name.
        kind: of the line.
        length: in the model, mm.
        drawn: its length on paper, mm; None where it isn't there.
        off: how far it lies from the model where it lies furthest, mm.
        spot: where that is.
        hidden: how much of it no sheet shows, mm.
    """

    seat: str
    piece: str
    kind: LineKind
    length: float
    drawn: float | None = None
    off: float = 0.0
    spot: Spot | None = None
    hidden: float = 0.0

    @property
    def longer(self) -> float:
        """How much longer it is drawn than it is in the model."""
        return (self.drawn or 0.0) - self.length


@dataclass(frozen=True, eq=False)
class Showing:
    """All that the sheets of a plate show, point by point, by stroke.

    Args:
        sheets: of the plate.
        begins: where the points of each stroke begin in what follows, and past the last.
        indices: of each point in the ink of its sheet.
        places: on the plate, joined at the crosses.
        spots: on its sheet.
        shown: by which of the sheets.
    """

    sheets: Sequence[Sheet]
    begins: NDArray[np.int64]
    indices: NDArray[np.int64]
    places: Points
    spots: Points
    shown: NDArray[np.int64]

    @classmethod
    def of(cls, plate: Plate) -> Showing:
        """Return what a plate shows."""
        parts = [_shown(plate, i, sheet) for i, sheet in enumerate(plate.sheets)]
        owners, indices, places, spots, shown = (
            np.concatenate(each) for each in zip(*parts, strict=True)
        )
        order = np.argsort(owners, kind="stable")
        count = len(plate.first.pattern.ink.strokes)
        begins = np.searchsorted(owners[order], np.arange(count + 1))
        return cls(plate.sheets, begins.astype(np.int64), indices[order], places[order],
                   spots[order], shown[order])  # fmt: skip

    def part(self, stroke: int) -> slice:
        """Return where the points of a stroke stand."""
        return slice(int(self.begins[stroke]), int(self.begins[stroke + 1]))


def _shown(plate: Plate, index: int, sheet: Sheet) -> tuple[NDArray[np.generic], ...]:
    layer = sheet.pattern
    points = layer.points
    seen = np.flatnonzero(sheet.leaf.seen(layer, points))
    spots = points[seen]
    return (
        layer.ink.owners[seen], seen, spots + plate.shifts[sheet.number], spots,
        np.full(len(seen), index),
    )  # fmt: skip


def measured(found: Found, plates: Sequence[Plate], showings: Sequence[Showing]) -> list[Measured]:
    """Return every line of a body as it was measured."""
    if found.placing is None:
        return [_missing(found, pair) for pair in found.pairs]
    plate, showing = plates[found.placing.plate], showings[found.placing.plate]
    return [_measured(found, pair, found.placing, plate, showing) for pair in found.pairs]


def _missing(found: Found, pair: Pair) -> Measured:
    line = pair.line
    return Measured(found.body.seat, found.body.piece, line.kind, line.shape.length)


def _measured(
    found: Found, pair: Pair, placing: Placing, plate: Plate, showing: Showing
) -> Measured:
    line, drawn = pair.line, pair.drawn
    if drawn is None:
        return _missing(found, pair)
    begin = int(plate.first.pattern.ink.begins[drawn.stroke])
    part = showing.part(drawn.stroke)
    own = showing.indices[part] - begin
    alongs = _alongs(pair, drawn)
    offs = line.shape.distances(placing.back(showing.places[part]), alongs[own])
    off, spot = 0.0, None
    if len(offs):
        worst = int(np.argmax(offs))
        number = showing.sheets[int(showing.shown[part][worst])].number
        off, spot = float(offs[worst]), Spot(number, complex(showing.spots[part][worst]))
    return Measured(
        found.body.seat, found.body.piece, line.kind, line.shape.length, drawn.length,
        max(off, _at_the_ends(pair, drawn, placing)), spot, _hidden(drawn, own),
    )  # fmt: skip


def _alongs(pair: Pair, drawn: Drawn) -> Distances:
    return 1 - drawn.alongs if pair.backward else drawn.alongs


def _at_the_ends(pair: Pair, drawn: Drawn, placing: Placing) -> float:
    """Return how far the ends of a line lie from those of the model."""
    here = placing.back(np.array([drawn.start, drawn.end]))
    shape = pair.line.shape
    ways = ((shape.start, shape.end), (shape.end, shape.start))
    return float(min(max(abs(here[0] - a), abs(here[1] - b)) for a, b in ways))


def _hidden(drawn: Drawn, own: NDArray[np.int64]) -> float:
    """Return how much of a stroke no sheet shows: the steps with neither end of them seen."""
    seen = np.zeros(len(drawn.points), np.bool_)
    seen[own] = True
    steps = np.diff(drawn.stops)
    lost = ~seen[:-1] & ~seen[1:]
    return float(steps[lost].sum()) if seen.any() else drawn.length


def strays(free: Sequence[Drawn], plates: Sequence[Plate]) -> Iterator[tuple[LineKind, int, int]]:
    """Yield the kinds of strokes that no piece has, the first sheet of their plate, how many."""
    from collections import Counter

    counts = Counter((drawn.kind, plates[drawn.plate].first.number) for drawn in free)
    for (kind, sheet), count in sorted(counts.items()):
        yield kind, sheet, count
