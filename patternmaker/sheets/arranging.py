"""Which print goes on which sheets: a first arrangement, and a search for fewer sheets.

In the first arrangement the largest comes first. Each print goes where it adds the fewest sheets:
into a gap of a plate that is already there, onto a few more sheets joined to one, or onto a plate
of its own. Gaps are kept as the largest free rectangles of a plate, overlapping one another.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal, Refusals
from patternmaker.sheets.islands import hanging_together
from patternmaker.sheets.showing import BETWEEN, OFF_THE_EDGE, STROKE, finished_plate
from patternmaker.sheets.tiling import SLIVER, Grid

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Sequence

    from patternmaker.drawing.prints import Print
    from patternmaker.geometry.segments import Box
    from patternmaker.sheets.papers import Stock
    from patternmaker.sheets.tiling import Place, Plate

MOST_GAPS = 24  # of a plate that are kept, the largest first
MOST_OPEN = 16  # plates to which a print may still be added, the latest ones
MOST_JOINED = 24  # sheets in one plate, unless one print alone takes more


@dataclass(frozen=True)
class _Placing:
    """One way of putting a print on a plate: the grid that it takes, and the sheets it adds."""

    grid: Grid
    corner: tuple[float, float]
    turned: bool
    added: int
    spread: int

    @property
    def cost(self) -> tuple[int, int, bool, int]:
        """What makes one placing better than another.

        Fewer sheets; then fewer joins through it; then standing clear of the bars at the edge.
        """
        return self.added, self.spread, min(self.corner) < OFF_THE_EDGE, self.grid.count


@dataclass
class _Plate:
    """A plate while prints are still added to it."""

    grid: Grid
    prints: list[Print] = field(default_factory=list)
    gaps: list[Box] = field(default_factory=list)
    shows: dict[Place, list[str]] = field(default_factory=dict)

    @classmethod
    def opened(cls, grid: Grid, first: Print) -> _Plate:
        """Return a plate with its first print on it, off the edge where there is room."""
        width, height = grid.size
        spare = width - first.width, height - first.height
        corner = [min(max(0.0, room) / 2, OFF_THE_EDGE) for room in spare]
        plate = cls(grid)
        plate._put(first, (corner[0], corner[1]), turned=False)
        return plate

    def put(self, each: Print, placing: _Placing) -> None:
        """Add a print in the way chosen for it."""
        self.grid = placing.grid
        self._put(each, placing.corner, turned=placing.turned)

    def _put(self, each: Print, corner: tuple[float, float], *, turned: bool) -> None:
        cells = [self.grid.cell(place) for place in self.grid.places()]
        placed = each.placed(*corner, turned=turned, cells=cells)
        self.prints.append(placed)
        self.gaps = _gaps(self.grid, self.prints)
        for place in self.grid.needed(placed):
            self.shows.setdefault(place, []).append(each.title)

    def placings(self, each: Print, own: Grid) -> Iterator[_Placing]:
        """Yield the ways in which a print fits in, the plate growing by a few sheets if need be."""
        growths = [(0, 0)]
        if own.count > 1:
            growths += [(more, 0) for more in range(1, max(own.columns, own.rows) + 1)]
            growths += [(0, more) for more in range(1, max(own.columns, own.rows) + 1)]
        for growth in growths:
            grid = self.grid.grown(*growth)
            if growth == (0, 0) or grid.count <= MOST_JOINED:
                yield from self._placings_on(grid, each)

    def _placings_on(self, grid: Grid, each: Print) -> Iterator[_Placing]:
        gaps = self.gaps if grid == self.grid else _gaps(grid, self.prints)
        for turned in (False, True):
            width, height = (each.height, each.width) if turned else (each.width, each.height)
            for gap in gaps:
                for left, bottom in _corners(grid, gap, width, height):
                    reached = grid.reached((left, bottom, left + width, bottom + height))
                    added = len(reached - self.shows.keys())
                    yield _Placing(grid, (left, bottom), turned, added, len(reached))

    def finished(self) -> Iterator[Plate]:
        """Return the plate as it will be printed, in parts if some of it shares no sheet."""
        return hanging_together(finished_plate(self.grid, self.prints, self.shows))


def _gaps(grid: Grid, prints: Iterable[Print]) -> list[Box]:
    """Return the largest free rectangles of a grid, some way off every print on it."""
    width, height = grid.size
    gaps: list[Box] = [(STROKE, STROKE, width - STROKE, height - STROKE)]
    for each in prints:
        left, bottom, right, top = each.shape.bounds
        taken = (left - BETWEEN, bottom - BETWEEN, right + BETWEEN, top + BETWEEN)
        gaps = sorted(_without(gaps, taken), key=_area, reverse=True)[:MOST_GAPS]
    return gaps


def _area(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])


def _corners(grid: Grid, gap: Box, width: float, height: float) -> Iterator[tuple[float, float]]:
    """Yield places for a print in a gap: its corner, off the edge, and where sheets begin."""
    left, bottom, right, top = gap
    windows = [grid.window((i, i)) for i in range(max(grid.columns, grid.rows))]
    lefts = {x for x in (left, OFF_THE_EDGE, *(w[0] for w in windows)) if x >= left}
    bottoms = {y for y in (bottom, OFF_THE_EDGE, *(w[1] for w in windows)) if y >= bottom}
    for x in sorted(lefts):
        for y in sorted(bottoms):
            if x + width <= right + SLIVER and y + height <= top + SLIVER:
                yield x, y


@dataclass(frozen=True)
class Arrangement:
    """Plates that show every print, and a number of sheets that none can beat."""

    plates: tuple[Plate, ...]
    fewest: int

    @property
    def count(self) -> int:
        """How many sheets it takes."""
        return sum(len(plate.sheets) for plate in self.plates)


def _silent(share: float, count: int) -> None:
    del share, count


def arranged(
    prints: Sequence[Print],
    stock: Stock,
    most_sheets: int,
    effort: int = 0,
    told: Callable[[float, int], None] = _silent,
) -> Arrangement:
    """Return plates that show every print, on as few sheets as are found.

    Args:
        prints: what is to be shown.
        stock: what is printed on.
        most_sheets: more are refused.
        effort: how long to search for fewer; not at all if zero, or if there can be no fewer.
        told: hears the share of the search that is done, and the fewest sheets so far.

    Raises:
        Refusals: if it takes more than ``most_sheets``; far too many are not even counted.
    """
    grids = [(each, _best_grid(each, stock)) for each in prints]
    at_most = sum(grid.count for _, grid in grids)
    if at_most / 4 > most_sheets:
        raise _too_many(at_most, most_sheets, "up to ")
    found = Arrangement(_first(grids), fewest_possible(prints, stock))
    if effort and found.count > found.fewest:
        found = _sought(found, prints, stock, effort, told)
    if found.count > most_sheets:
        raise _too_many(found.count, most_sheets)
    return found


def _first(grids: Sequence[tuple[Print, Grid]]) -> tuple[Plate, ...]:
    """Return the first arrangement of prints, each with its best grid."""
    plates: list[_Plate] = []
    for each, grid in sorted(grids, key=lambda pair: (-pair[1].count, -pair[0].shape.area)):
        ways = [(way, plate) for plate in plates[-MOST_OPEN:] for way in plate.placings(each, grid)]
        best = min(ways, key=lambda pair: pair[0].cost, default=None)
        if best and best[0].added < grid.count:
            best[1].put(each, best[0])
        else:
            plates.append(_Plate.opened(grid, each))
    return tuple(part for plate in plates for part in plate.finished())


def alone(prints: Sequence[Print], stock: Stock) -> tuple[Plate, ...]:
    """Return each print on a plate of its own."""
    plates = (_Plate.opened(_best_grid(each, stock), each) for each in prints)
    return tuple(part for plate in plates for part in plate.finished())


def _sought(
    first: Arrangement,
    prints: Sequence[Print],
    stock: Stock,
    effort: int,
    told: Callable[[float, int], None],
) -> Arrangement:
    """Return the better of the first arrangement, each print alone, and what a search finds."""
    from patternmaker.sheets.searching import fewest_by_need, searched

    fewest = max(first.fewest, fewest_by_need(prints, stock))
    known = [Arrangement(plates, fewest) for plates in (first.plates, alone(prints, stock))]
    best = min(known, key=lambda each: each.count)
    if best.count == fewest:
        return best
    plates = searched(prints, stock, effort, (fewest, best.count), told)
    return min((best, Arrangement(plates or first.plates, fewest)), key=lambda each: each.count)


def _too_many(count: int, most: int, about: str = "") -> Refusals:
    """Return the refusal, naming a number that is enough."""
    return Refusals([
        Refusal(
            "sheets", f"it takes {about}{{value}} of them, more than {{limit}}",
            value=f"{count:,}", limit=f"{most:,}",
            mend=f"choose a larger paper, or allow it with --most-sheets {count}",
        )
    ])  # fmt: skip


def _best_grid(each: Print, stock: Stock) -> Grid:
    """Return the grid that shows a print on the fewest sheets, upright where that is as good."""
    grids = [Grid.over(stock, each.width, each.height, landscape=way) for way in (False, True)]
    return min(grids, key=lambda grid: grid.count)


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
    """Return a number of sheets that no arrangement can beat, found at once.

    The area of all the prints over the area that a sheet can show; and for each print alone its
    longest extent over the diagonal of a sheet, less the overlaps.
    """
    area = sum(each.shape.area for each in prints)
    diagonal = max(math.hypot(*stock.window(landscape=way)) for way in (False, True))
    longest = max(max(each.width, each.height) for each in prints)
    spans = math.ceil((longest - stock.overlap) / (diagonal - stock.overlap) - 1e-9)
    return max(1, math.ceil(area / stock.usable_area - 1e-9), spans)
