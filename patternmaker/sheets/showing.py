"""Which sheets of a grid show the prints on it, and which of them can be left out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.geometry.touching import touches
from patternmaker.sheets.tiling import SIDES, Plate, in_joining_order, neighbours

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from patternmaker.drawing.prints import Print
    from patternmaker.sheets.tiling import Grid, Place

BETWEEN = 4.0  # mm between two prints on one sheet
STROKE = 0.5  # mm kept so that no line is cut off along the edge of the last sheet
OFF_THE_EDGE = 8.0  # mm kept, where there is room, for the sheet's own bars and words
MANY = 100  # sheets in a plate; one in the middle of so many is hardly ever left out


def finished_plate(
    grid: Grid, prints: Sequence[Print], shows: Mapping[Place, Sequence[str]]
) -> Plate:
    """Return a plate as it will be printed, without the sheets that those beside show all of.

    Args:
        grid: the sheets that there are room for.
        prints: the prints, placed.
        shows: the titles of the prints that reach into the cell of each sheet.
    """
    kept = {place: tuple(titles) for place, titles in shows.items()}
    for place in shows:
        if _is_shown_beside(place, grid, prints, kept):
            del kept[place]
    ordered = [place for place in grid.places() if place in kept]
    return Plate(grid, tuple(prints), in_joining_order(ordered), kept)


def _is_shown_beside(
    place: Place, grid: Grid, prints: Sequence[Print], kept: Mapping[Place, object]
) -> bool:
    """Return whether the sheets beside a sheet show all that it does, in their overlaps."""
    beside = [side for side, n in neighbours(place).items() if n in kept]
    if len(beside) == len(SIDES) and len(kept) > MANY:
        return False
    own = grid.own(place, beside)
    return not any(touches(each.shape, own) for each in prints)
