"""One plate: prints laid out at full size, and the grid of sheets that shows them."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING, Literal

from patternmaker.geometry.touching import touches

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from patternmaker.drawing.prints import Print
    from patternmaker.geometry.segments import Box
    from patternmaker.sheets.papers import Stock

Place = tuple[int, int]
"""column and row of a sheet in its plate, counted from the lower left"""

Side = Literal["left", "right", "top", "bottom"]
SIDES: dict[tuple[int, int], Side] = {
    (-1, 0): "left", (1, 0): "right", (0, 1): "top", (0, -1): "bottom",
}  # fmt: skip
"""The side on which a neighbour lies, by how many columns and rows it is away."""

SLIVER = 1e-6  # mm; a part of a piece this thin needs no sheet of its own


def sheets_along(length: float, usable: float, overlap: float) -> int:
    """Return how many sheets show a length, each overlapping the one before it.

    n = ceil((L - o) / (u - o)).

    >>> sheets_along(524, 190, 10), sheets_along(474, 277, 10)
    (3, 2)
    """
    return max(1, math.ceil((length - overlap - SLIVER) / (usable - overlap)))


@dataclass(frozen=True)
class Grid:
    """Overlapping sheets in columns and rows, their lower left corner at the origin."""

    stock: Stock
    landscape: bool
    columns: int
    rows: int

    @classmethod
    def over(cls, stock: Stock, width: float, height: float, *, landscape: bool) -> Grid:
        """Return the smallest grid that shows a width and height."""
        across, up = stock.window(landscape=landscape)
        return cls(
            stock,
            landscape,
            sheets_along(width, across, stock.overlap),
            sheets_along(height, up, stock.overlap),
        )

    @property
    def count(self) -> int:
        """How many sheets it has at most."""
        return self.columns * self.rows

    @cached_property
    def window_size(self) -> tuple[float, float]:
        """Width and height of what one sheet shows."""
        return self.stock.window(landscape=self.landscape)

    @cached_property
    def size(self) -> tuple[float, float]:
        """Width and height of what all of them show together."""
        (across, up), lap = self.window_size, self.stock.overlap
        return self.columns * (across - lap) + lap, self.rows * (up - lap) + lap

    def window(self, place: Place) -> Box:
        """Return what the sheet at a place shows."""
        (across, up), lap = self.window_size, self.stock.overlap
        left, bottom = place[0] * (across - lap), place[1] * (up - lap)
        return left, bottom, left + across, bottom + up

    def cell(self, place: Place) -> Box:
        """Return what only that sheet must show: its window, less half of each overlap."""
        left, bottom, right, top = self.window(place)
        half = self.stock.overlap / 2
        return (
            left + half * (place[0] > 0),
            bottom + half * (place[1] > 0),
            right - half * (place[0] < self.columns - 1),
            top - half * (place[1] < self.rows - 1),
        )

    def own(self, place: Place, beside: Iterable[Side]) -> Box:
        """Return what a sheet shows that those on some sides of it do not."""
        left, bottom, right, top = self.window(place)
        lap, beside = self.stock.overlap, set(beside)
        return (
            left + lap * ("left" in beside),
            bottom + lap * ("bottom" in beside),
            right - lap * ("right" in beside),
            top - lap * ("top" in beside),
        )

    def places(self) -> Iterator[Place]:
        """Yield every place, in the order in which they are joined: row by row from the top."""
        for row in reversed(range(self.rows)):
            for column in range(self.columns):
                yield column, row

    def reached(self, box: Box) -> set[Place]:
        """Return the places whose cells a box reaches into."""
        columns = [
            i for i in range(self.columns) if _meet(self.cell((i, 0))[::2], (box[0], box[2]))
        ]
        rows = [i for i in range(self.rows) if _meet(self.cell((0, i))[1::2], (box[1], box[3]))]
        return {(column, row) for column in columns for row in rows}

    def grown(self, columns: int, rows: int) -> Grid:
        """Return it with more columns and rows, to the right and upward."""
        return replace(self, columns=self.columns + columns, rows=self.rows + rows)

    def needed(self, each: Print) -> list[Place]:
        """Return the places whose sheets show something of a print that no other sheet must."""
        reached = self.reached(each.shape.bounds)
        return [place for place in reached if touches(each.shape, self.cell(place))]


def _meet(one: tuple[float, ...], two: tuple[float, ...]) -> bool:
    return one[0] < two[1] - SLIVER and two[0] < one[1] - SLIVER


@dataclass(frozen=True)
class Join:
    """Where two sheets of a plate meet: the later one is laid to the earlier one."""

    number: int
    first: Place
    second: Place

    def side_of(self, place: Place) -> Side:
        """Return the side of the sheet at ``place`` on which it is made."""
        other = self.second if place == self.first else self.first
        return SIDES[other[0] - place[0], other[1] - place[1]]


@dataclass(frozen=True)
class Plate:
    """Prints in their places, and the sheets that show them.

    Args:
        grid: the sheets that there are room for.
        prints: the prints, placed.
        sheets: the places of those that are printed, in the order of joining.
        shows: the titles of the prints that each of them shows.
    """

    grid: Grid
    prints: tuple[Print, ...]
    sheets: tuple[Place, ...]
    shows: Mapping[Place, tuple[str, ...]]

    @property
    def title(self) -> str:
        """What it shows."""
        return "; ".join(each.title for each in self.prints)

    def joins(self, first_number: int) -> tuple[Join, ...]:
        """Return its joins, numbered in the order in which they are made."""
        joined: list[Join] = []
        done: set[Place] = set()
        for place in self.sheets:
            for neighbour in neighbours(place).values():
                if neighbour in done:
                    joined.append(Join(first_number + len(joined), neighbour, place))
            done.add(place)
        return tuple(joined)


def neighbours(place: Place) -> dict[Side, Place]:
    """Return the place on each side of a place."""
    column, row = place
    return {side: (column + across, row + up) for (across, up), side in SIDES.items()}


def in_joining_order(places: Iterable[Place]) -> tuple[Place, ...]:
    """Return places so that each meets one that comes before it, where they hang together."""
    left = list(places)
    ordered: dict[Place, None] = {}
    while left:
        meeting = (
            place for place in left if not ordered.keys().isdisjoint(neighbours(place).values())
        )
        following = next(meeting, left[0])
        left.remove(following)
        ordered[following] = None
    return tuple(ordered)
