"""Boxing: the wall round a top, in one panel or more, and where these are joined."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from patternmaker.covers.parts.boxing_panels import BoxingPanel
from patternmaker.covers.parts.joining import FRONT_LEFT, FRONT_RIGHT, left_open
from patternmaker.covers.parts.walls import Wall
from patternmaker.errors import Refusal
from patternmaker.facts import HAIR, LENGTH
from patternmaker.pattern.stations import corner_names

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.joining import Joins
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Piece
    from patternmaker.pattern.stations import Station

SHORTEST_PANEL = 150.0  # mm of seam; a shorter one is a patch
SHORTEST_SEAM = 50.0  # mm of seam that a strip must bear beyond its allowances


def joins(sew: Contour, allowances: Allowances) -> Joins:
    """Return where the boxing is joined: at the back, or symmetrically where it takes more panels.

    The front panel is whole, and its joins stand at the back corners, on their side toward the
    back; on a seat without corners they stand as far back as the longest strip lets them. Where
    that is longer than a strip, joins stand at front corners too, or as far round as it reaches.
    """
    whole, longest = sew.length, allowances.boxing_longest
    ends = 2 * allowances.join
    if longest is None or whole + ends + allowances.boxing_spare <= longest:
        return (("back", 0.0),)
    least = max((whole + ends - longest) / 2, SHORTEST_PANEL / 2)
    side = _furthest(sew) if _back_corner(sew) else min(least, _furthest(sew))
    panels = math.ceil(2 * side / (longest - ends - allowances.boxing_spare) - 1e-9)
    fronts = _joins_before(sew, side, longest - ends)
    return tuple(_joins_behind(side, panels, whole, tuple(fronts)))


def _joins_behind(
    side: float, panels: int, whole: float, fronts: Joins
) -> Iterator[tuple[str, float]]:
    """Yield the joins in order where equal panels go round the back, ``side`` to either side."""
    left = [side - i * 2 * side / panels for i in range(1, (panels + 1) // 2)][::-1]
    right = [whole - along for along in reversed(left)]
    if panels % 2 == 0:
        yield "back", 0.0
    for number, along in enumerate(left, 1):
        yield f"back join {number}", along
    yield "left join", side
    yield from fronts
    yield "right join", whole - side
    for number, along in enumerate(right, len(left) + 1):
        yield f"back join {number}", along


def _joins_before(sew: Contour, side: float, room: float) -> Iterator[tuple[str, float]]:
    """Yield the joins between the left one and the right, where one panel can't reach round."""
    whole = sew.length
    if whole - 2 * side <= room + 1e-9:
        return
    least = max((whole - room) / 2, side + SHORTEST_PANEL)
    at = min((c for c in _corner_pairs(sew) if least - 1e-9 <= c <= (whole - SHORTEST_PANEL) / 2),
             default=least)  # fmt: skip
    count = math.ceil((at - side) / room - 1e-9)
    lefts = [(f"left join {i + 1}", side + (at - side) * i / count) for i in range(1, count)]
    yield from lefts
    yield FRONT_LEFT, at
    yield FRONT_RIGHT, whole - at
    for name, along in reversed(lefts):
        yield name.replace("left", "right"), whole - along


def _corner_pairs(sew: Contour) -> Iterator[float]:
    """Yield the places of corners on the left that stand as far round on the right."""
    places = [sew.station(name) for name in corner_names(sew)]
    for place in places:
        if place < sew.length / 2 and any(
            abs(place + other - sew.length) < HAIR for other in places
        ):
            yield place


def _back_corner(sew: Contour) -> str | None:
    """Return the name of the first corner between the back and the left, or None."""
    return next((c for c in corner_names(sew) if 0 < sew.station(c) <= sew.station("left")), None)


def _furthest(sew: Contour) -> float:
    """Return how far round from the back a join may stand."""
    corner = _back_corner(sew)
    if corner is None:
        return sew.station("left")
    middle, begins = sew.station(corner), f"{corner} begins"
    side = sew.station(begins) if begins in sew.joints else middle
    return side if SHORTEST_PANEL / 2 < side <= middle else middle  # it may begin past the back


def objections(sew: Contour, allowances: Allowances) -> Iterator[Refusal]:
    """Yield whatever keeps the boxing from being cut and sewn."""
    yield from left_open(allowances, sew.length)
    if allowances.boxing_longest is None:
        return
    least = _least_strip(sew, allowances)
    if allowances.boxing_longest < least - 1e-9:
        yield Refusal(
            "allowances.boxing_longest",
            "{value} is less than a panel of this boxing takes ({limit})",
            value=allowances.boxing_longest, limit=least, show=LENGTH.show,
            mend="find a longer strip, or sew one up to that length first",
        )  # fmt: skip


def _least_strip(sew: Contour, allowances: Allowances) -> float:
    """Return the shortest strip of which the boxing can be made without a patch."""
    ends, spare = 2 * allowances.join, allowances.boxing_spare
    front = sew.length - 2 * _furthest(sew)
    if front >= 3 * SHORTEST_PANEL:
        return ends + max(SHORTEST_PANEL, spare + SHORTEST_SEAM)
    return ends + max(min(front, sew.length + spare), spare + SHORTEST_SEAM)


def boxing(
    brief: Brief, sew: Contour, places: tuple[Station, ...], joined: Joins, wall: Wall | float
) -> tuple[Piece, ...]:
    """Return the panels of the boxing, in order round the seat.

    Args:
        brief: the seat.
        sew: the top's sew line.
        places: the stations on it.
        joined: where the panels are joined.
        wall: the wall that they cover, or the drop of an upright one.
    """
    if not isinstance(wall, Wall):
        wall = Wall.upright(sew, wall)
    return tuple(
        BoxingPanel(brief, wall, places, joined, index).piece() for index in range(len(joined))
    )
