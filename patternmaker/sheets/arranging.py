"""Which print goes on which sheets: large ones on grids of their own, small ones together.

A print that fits on one sheet goes into a gap that a plate has left, or opens a sheet that others
then share. Gaps are kept as the largest free rectangles of a plate, overlapping one another.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal, Refusals
from patternmaker.sheets.tiling import Grid, Plate, in_joining_order

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.drawing.prints import Print
    from patternmaker.geometry.segments import Box
    from patternmaker.sheets.papers import Stock

BETWEEN = 4.0  # mm between two prints on one sheet
OFF_THE_EDGE = 8.0  # mm kept, where there is room, for the sheet's own bars and words


@dataclass
class _Plate:
    """A plate while prints are still added to it."""

    grid: Grid
    prints: list[Print] = field(default_factory=list)
    sheets: set[tuple[int, int]] = field(default_factory=set)
    gaps: list[Box] = field(default_factory=list)

    @classmethod
    def opened(cls, grid: Grid, first: Print, *, turned: bool = False) -> _Plate:
        """Return a plate with its first print on it, off the edge where there is room."""
        width, height = grid.size
        plate = cls(grid, gaps=[(0.0, 0.0, width, height)])
        size = _size(first, turned=turned)
        spare = (width - size[0], height - size[1])
        corner = [min(max(0.0, room) / 2, OFF_THE_EDGE) for room in spare]
        plate._put(first.placed(*corner, turned=turned))
        plate.sheets = set(grid.needed(plate.prints))
        return plate

    def takes(self, small: Print) -> bool:
        """Put a print into a gap, and return whether there was one for it."""
        for turned in (False, True):
            width, height = _size(small, turned=turned)
            for left, bottom, right, top in sorted(self.gaps, key=_smallness):
                if right - left >= width and top - bottom >= height:
                    placed = small.placed(left, bottom, turned=turned)
                    if self.sheets.issuperset(self.grid.needed([placed])):
                        self._put(placed)
                        return True
        return False

    def _put(self, placed: Print) -> None:
        self.prints.append(placed)
        left, bottom, right, top = placed.shape.bounds
        taken = (left - BETWEEN, bottom - BETWEEN, right + BETWEEN, top + BETWEEN)
        self.gaps = list(_without(self.gaps, taken))

    def finished(self) -> Plate:
        """Return the plate as it will be printed."""
        ordered = [place for place in self.grid.places() if place in self.sheets]
        return Plate(self.grid, tuple(self.prints), in_joining_order(ordered))


def arranged(prints: Sequence[Print], stock: Stock, most_sheets: int) -> tuple[Plate, ...]:
    """Return plates that show every print, on as few sheets as this simple way finds.

    Raises:
        Refusals: if it takes more than ``most_sheets``; far too many are not even counted.
    """
    grids = {id(each): _best_grid(each, stock) for each in prints}
    _refuse_too_many(sum(grid.count for grid in grids.values()) / 4, most_sheets, "about ")
    plates: list[_Plate] = []
    for each in sorted(prints, key=lambda p: (-grids[id(p)].count, -p.width * p.height)):
        if grids[id(each)].count > 1 or not any(plate.takes(each) for plate in plates):
            plates.append(_Plate.opened(grids[id(each)], each))
    finished = tuple(plate.finished() for plate in plates)
    _refuse_too_many(sum(len(plate.sheets) for plate in finished), most_sheets)
    return finished


def _refuse_too_many(count: float, most: int, about: str = "") -> None:
    if count > most:
        raise Refusals([
            Refusal(
                "sheets", f"it takes {about}{{value}} of them, more than {{limit}}",
                value=f"{math.ceil(count):,}", limit=f"{most:,}",
                mend=f"choose a larger paper, or allow it with --most-sheets {math.ceil(count)}",
            )
        ])  # fmt: skip


def _best_grid(each: Print, stock: Stock) -> Grid:
    """Return the grid that shows a print on the fewest sheets, upright where that is as good."""
    grids = [Grid.over(stock, each.width, each.height, landscape=way) for way in (False, True)]
    return min(grids, key=lambda grid: grid.count)


def _size(each: Print, *, turned: bool) -> tuple[float, float]:
    return (each.height, each.width) if turned else (each.width, each.height)


def _smallness(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])


def _without(gaps: Iterable[Box], taken: Box) -> Iterator[Box]:
    """Yield the largest free rectangles once a box is taken from them."""
    parts: list[Box] = []
    for gap in gaps:
        parts += _parts(gap, taken)
    for i, part in enumerate(parts):
        rest = (*parts[:i], *(p for p in parts[i + 1 :] if p != part))
        if not any(_within(part, other) for other in rest):
            yield part


def _parts(gap: Box, taken: Box) -> list[Box]:
    left, bottom, right, top = gap
    if taken[0] >= right or taken[2] <= left or taken[1] >= top or taken[3] <= bottom:
        return [gap]
    beside = (
        (left, bottom, taken[0], top),
        (taken[2], bottom, right, top),
        (left, bottom, right, taken[1]),
        (left, taken[3], right, top),
    )
    return [part for part in beside if part[2] - part[0] > BETWEEN and part[3] - part[1] > BETWEEN]


def _within(one: Box, two: Box) -> bool:
    return two[0] <= one[0] and two[1] <= one[1] and two[2] >= one[2] and two[3] >= one[3]


def fewest_possible(prints: Sequence[Print], stock: Stock) -> int:
    """Return a number of sheets that no arrangement can beat.

    The area of all the prints over the area that a sheet can show; and for each print alone its
    longest extent over the diagonal of a sheet, less the overlaps.
    """
    area = sum(each.shape.area for each in prints)
    diagonal = max(math.hypot(*stock.window(landscape=way)) for way in (False, True))
    longest = max(max(each.width, each.height) for each in prints)
    spans = math.ceil((longest - stock.overlap) / (diagonal - stock.overlap) - 1e-9)
    return max(1, math.ceil(area / stock.usable_area - 1e-9), spans)
