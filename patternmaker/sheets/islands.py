"""Plates whose sheets hang together by their sides, so that no gap is bridged while joining.

A print may pass from one sheet to the next through the very corner where four meet, or leave a
sheet out that its neighbours show all of; and prints laid out on one plate may share no sheet.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from patternmaker.sheets.tiling import in_joining_order, neighbours

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Set

    from patternmaker.drawing.prints import Print
    from patternmaker.sheets.tiling import Place, Plate

    Island = frozenset[Place]


def islands(places: Iterable[Place]) -> list[Island]:
    """Return places in groups that hang together by their sides, in the order of their firsts."""
    left = dict.fromkeys(places)
    found: list[Island] = []
    while left:
        first = next(iter(left))
        found.append(_reached_from(first, left.keys()))
        for place in found[-1]:
            del left[place]
    return found


def _reached_from(first: Place, places: Set[Place]) -> Island:
    reached, edge = {first}, [first]
    while edge:
        beside = set(neighbours(edge.pop()).values()) & places - reached
        reached |= beside
        edge += beside
    return frozenset(reached)


def hanging_together(plate: Plate) -> Iterator[Plate]:
    """Yield a plate as it is, or the parts of it that do not hang together as plates of their own.

    A sheet is added where a print would otherwise fall into two.
    """
    if len(islands(plate.sheets)) == 1:
        yield plate
        return
    shows = {place: plate.shows[place] for place in plate.sheets}
    owned = [_shown_at(each, plate, shows) for each in plate.prints]
    for each, places in zip(plate.prints, owned, strict=True):
        for place in _bridges(places, shows):
            shows[place] = (each.title,)
    for island in islands(shows):
        prints = [each for each, own in zip(plate.prints, owned, strict=True) if own & island]
        yield _part(plate, prints, {place: shows[place] for place in shows if place in island})


def _shown_at(each: Print, plate: Plate, shows: Mapping[Place, object]) -> set[Place]:
    """Return the sheets that show a print, or those beside one of its that is left out."""
    needed = plate.grid.needed(each)
    stand_in = {n for place in needed if place not in shows for n in neighbours(place).values()}
    return (stand_in | set(needed)) & shows.keys()


def _bridges(places: Set[Place], shows: Mapping[Place, object]) -> Iterator[Place]:
    """Yield the places of sheets that join those of one print, along the shortest ways."""
    first, *others = (island for island in islands(shows) if island & places)
    for other in others:
        ends = ((one, two) for one in sorted(first) for two in sorted(other))
        one, two = min(ends, key=lambda pair: len(list(_between(*pair))))
        way = [place for place in _between(one, two) if place not in shows]
        yield from way
        first = first | other | frozenset(way)


def _between(one: Place, two: Place) -> Iterator[Place]:
    """Yield the places along a row and then a column, from one place to another."""
    (column, row), (last, top) = one, two
    while (column, row) != two:
        if column != last:
            column += 1 if last > column else -1
        else:
            row += 1 if top > row else -1
        if (column, row) != two:
            yield column, row


def _part(plate: Plate, prints: Iterable[Print], shows: Mapping[Place, tuple[str, ...]]) -> Plate:
    """Return a plate of some sheets of a plate, counted from its own lower left corner."""
    left, bottom = (min(place[axis] for place in shows) for axis in (0, 1))
    columns, rows = (max(place[axis] for place in shows) + 1 for axis in (0, 1))
    x, y, *_ = plate.grid.window((left, bottom))
    moved = {(c - left, r - bottom): titles for (c, r), titles in shows.items()}
    grid = replace(plate.grid, columns=columns - left, rows=rows - bottom)
    ordered = in_joining_order(place for place in grid.places() if place in moved)
    return replace(
        plate, grid=grid, prints=tuple(each.moved(-complex(x, y)) for each in prints),
        sheets=ordered, shows=moved,
    )  # fmt: skip
