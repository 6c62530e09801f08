"""Prints laid by the engine: sheets shared, prints turned, and the grid shifted under each."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.sheets.islands import hanging_together
from patternmaker.sheets.showing import BETWEEN, OFF_THE_EDGE, STROKE, finished_plate
from patternmaker.sheets.tiling import Grid

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from patternmaker.drawing.prints import Print
    from patternmaker.laying.search import Laid
    from patternmaker.laying.sheeting import Sheeting
    from patternmaker.sheets.papers import Stock
    from patternmaker.sheets.tiling import Place, Plate

STEP, STEPS = 4.0, 45  # mm from place to place at least, and how many there are to a sheet at most
FINE = 0.002  # mm; chords for the bound stay this close
LOOSE = 1.3  # times the sheets of the first arrangement are there to be laid on


@dataclass(frozen=True)
class _Lying:
    """A print, how it is turned, and where the lower left corner of its box is to be."""

    print: Print
    turns: int
    corner: complex
    sheets: frozenset[Place]

    @property
    def size(self) -> complex:
        """Width and height, as it lies."""
        width, height = self.print.width, self.print.height
        return complex(height, width) if self.turns % 2 else complex(width, height)

    def moved(self, by: complex) -> _Lying:
        """Return it moved."""
        return _Lying(self.print, self.turns, self.corner + by, self.sheets)

    def turned(self, quarters: int, plate: complex) -> _Lying:
        """Return it turned to the left with a plate of some width and height."""
        x, y = self.corner.real, self.corner.imag
        beyond = plate - self.corner - self.size
        right, top = beyond.real, beyond.imag
        corners = (x, y), (top, x), (right, top), (y, right)
        corner = complex(*corners[quarters])
        return _Lying(self.print, (self.turns + quarters) % 4, corner, self.sheets)


def searched(
    prints: Sequence[Print],
    stock: Stock,
    effort: int,
    bounds: tuple[int, int],
    told: Callable[[float, int], None],
) -> tuple[Plate, ...]:
    """Return plates that show every print, laid by the engine; none where it has no room.

    Args:
        prints: what is to be shown.
        stock: what is printed on.
        effort: how long to search.
        bounds: the number of sheets that is enough, and one for which an arrangement is known.
        told: hears the share of the search that is done, and the fewest sheets so far.
    """
    from patternmaker.laying.footing import Lattice
    from patternmaker.laying.rings import ring_of, simpler
    from patternmaker.laying.search import Search
    from patternmaker.laying.ways import ways_of

    sheeting = sheeting_of(stock, landscape=False)
    step = max(STEP, min(sheeting.columns.pitch, sheeting.rows.pitch) / STEPS)
    lattice = Lattice.over(sheeting, step, STROKE)
    ways = ways_of((simpler(ring_of(each.shape)) for each in prints), lattice)
    longest = max(max(way.footing.reach) for each in ways for way in each)
    side = max(math.ceil(math.sqrt(LOOSE * bounds[1])), longest) + 1
    laid = Search(ways, lattice, BETWEEN, side).run(effort, bounds[0], told)
    return tuple(_plates(prints, laid, stock))


def fewest_by_need(prints: Sequence[Print], stock: Stock) -> int:
    """Return a number of sheets that no arrangement can beat; see ``laying.least``."""
    from patternmaker.laying.least import least, need
    from patternmaker.laying.rings import ring_of

    ways = (False,) if _lies_as_it_stands(stock) else (False, True)
    sheetings = [sheeting_of(stock, landscape=way) for way in ways]
    rings = ((ring_of(each.shape, FINE), each.shape.area) for each in prints)
    needs = [need(ring, area, sheetings, BETWEEN) for ring, area in rings]
    return least(needs, stock.usable_area)


def sheeting_of(stock: Stock, *, landscape: bool) -> Sheeting:
    """Return the sheets of a stock, as the engine knows them."""
    from patternmaker.laying.sheeting import Sheeting

    return Sheeting(*stock.window(landscape=landscape), stock.overlap)


def _lies_as_it_stands(stock: Stock) -> bool:
    """Return whether a landscape sheet shows as much as an upright one turned.

    It does not where the margins at head and foot are others than those at the sides.
    """
    lying, standing = (stock.window(landscape=way) for way in (True, False))
    return all(math.isclose(a, b, abs_tol=1e-9) for a, b in zip(lying, standing[::-1], strict=True))


def _plates(prints: Sequence[Print], laid: Sequence[Laid], stock: Stock) -> Iterator[Plate]:
    lying = [
        _Lying(each, one.turns, one.corner, one.sheets)
        for each, one in zip(prints, laid, strict=bool(laid))
    ]
    groups = sorted(_groups(lying), key=lambda group: -_largest(group).print.shape.area)
    for group in groups:
        shifted, still = (_plate(group, stock, off=off) for off in (OFF_THE_EDGE, 0.0))
        yield from min((shifted, still), key=lambda plates: sum(len(p.sheets) for p in plates))


def _groups(lying: Sequence[_Lying]) -> list[list[_Lying]]:
    """Return prints that share sheets, or share them with one that does, together."""
    groups: list[tuple[set[Place], list[_Lying]]] = []
    for each in lying:
        met = [group for group in groups if not group[0].isdisjoint(each.sheets)]
        groups = [group for group in groups if group[0].isdisjoint(each.sheets)]
        sheets = set(each.sheets).union(*(group[0] for group in met))
        groups.append((sheets, [one for group in met for one in group[1]] + [each]))
    return [group[1] for group in groups]


def _largest(group: Sequence[_Lying]) -> _Lying:
    return max(group, key=lambda each: each.print.shape.area)


def _plate(group: Sequence[_Lying], stock: Stock, *, off: float) -> list[Plate]:
    """Return a group as a plate, in parts if some of it shares no sheet.

    It is turned so that its largest print stands upright, as far as the margins let it. Its prints
    stand ``off`` the left and lower edge, or in the middle where there is less room.
    """
    places = [place for each in group for place in each.sheets]
    columns, rows = ([place[axis] for place in places] for axis in (0, 1))
    grid = Grid(stock, False, max(columns) - min(columns) + 1, max(rows) - min(rows) + 1)  # noqa: FBT003
    left, bottom, *_ = grid.window((min(columns), min(rows)))
    quarters = -_largest(group).turns % 4
    if not _lies_as_it_stands(stock):
        quarters -= quarters % 2
    size = complex(*grid.size)
    lying = [each.moved(-complex(left, bottom)).turned(quarters, size) for each in group]
    if quarters % 2:
        grid = Grid(stock, True, grid.rows, grid.columns)  # noqa: FBT003
    shift = _to_stand_off(lying, grid, off)
    return list(hanging_together(_shown(grid, [each.moved(shift) for each in lying])))


def _to_stand_off(lying: Sequence[_Lying], grid: Grid, off: float) -> complex:
    """Return how far to move prints so that they stand off the edges by so much, if not zero."""
    if not off:
        return 0j
    ends = [each.corner + each.size for each in lying]
    low = min(each.corner.real for each in lying), min(each.corner.imag for each in lying)
    high = max(end.real for end in ends), max(end.imag for end in ends)
    spare = [whole - (b - a) for whole, a, b in zip(grid.size, low, high, strict=True)]
    across, up = (min(max(0.0, room) / 2, off) for room in spare)
    return complex(across - low[0], up - low[1])


def _shown(grid: Grid, lying: Sequence[_Lying]) -> Plate:
    cells = [grid.cell(place) for place in grid.places()]
    prints = [
        each.print.placed(each.corner.real, each.corner.imag, turned=each.turns, cells=cells)
        for each in lying
    ]
    shows: dict[Place, list[str]] = {}
    for each in prints:
        for place in grid.needed(each):
            shows.setdefault(place, []).append(each.title)
    return finished_plate(grid, prints, shows)
