"""Where a join's number stands beside it: clear of what the pieces say there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.drawing.surface import Letters, Mark
from patternmaker.geometry.contour import Path
from patternmaker.geometry.touching import overlap
from patternmaker.sheets.furniture import edge_word, join_number

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from patternmaker.geometry.segments import Box
    from patternmaker.sheets.tiling import Grid, Join, Place

SHARES = (0.36, 0.27, 0.64, 0.73, 0.18, 0.8, 0.31, 0.42, 0.58, 0.68, 0.23, 0.5, 0.12, 0.86)
"""Of the way along a join, the first that is free: off the middle, where a piece has its label."""


def words_in(marks: Iterable[Mark]) -> Iterator[Box]:
    """Yield the box round each of the words, level or turned."""
    for mark in marks:
        if isinstance(mark, Letters):
            left, bottom, right, top = mark.box
            corners = complex(left, bottom), complex(right, top)
            yield Path.through(*(mark.at + mark.way * (each - mark.at) for each in corners)).bounds


def number_shares(joins: Iterable[Join], grid: Grid, words: Sequence[Box]) -> Mapping[Join, float]:
    """Return how far along each join its number stands on both sheets, clear of a plate's words."""
    return {join: _share(join, grid, words) for join in joins}


def _share(join: Join, grid: Grid, words: Sequence[Box]) -> float:
    for share in SHARES:
        boxes = tuple(_boxes(join, grid, share))
        if not any(overlap(box, word) for box in boxes for word in words):
            return share
    return SHARES[0]


def _boxes(join: Join, grid: Grid, share: float) -> Iterator[Box]:
    """Yield the boxes on the plate round what is written beside a join on either sheet."""
    for place in (join.first, join.second):
        corner = complex(*grid.window(place)[:2])
        yield from (word.mapped(1, corner).box for word in beside(join, grid, place, share))


def beside(join: Join, grid: Grid, place: Place, share: float) -> Iterator[Letters]:
    """Yield what one sheet says beside a join: its number, and what is done to it there."""
    side = join.side_of(place)
    yield join_number(grid, side, join.number, share)
    if done := grid.stock.joining.done(new=place == join.second):
        yield edge_word(grid, side, done, share)
