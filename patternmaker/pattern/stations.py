"""Where the notches of a seam stand: at its joints, its corners, and evenly between them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import count, pairwise
from typing import TYPE_CHECKING

from patternmaker.pattern.piece import Notch

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.geometry.contour import Contour

CARDINALS = ("back", "left", "front", "right")
LONG_CORNER = 75.0  # mm of arc; a longer one is notched at both ends; common practice, no source
CROWDED = 15.0  # mm; a lesser station this close to a greater one is left out
DOUBLE_NOTCH_GAP = 6.0  # mm between the slits of a double notch; common practice, no source


@dataclass(frozen=True)
class Station:
    """A named place on a seam."""

    name: str
    at: float
    double: bool = False


def corner_names(contour: Contour) -> list[str]:
    """Return the names of its corners, in order."""
    return [
        name
        for name in contour.joints
        if name not in CARDINALS and not name.endswith((" begins", " ends"))
    ]


def stations(
    contour: Contour, spacing: float, joins: Iterable[tuple[str, float]] = ()
) -> tuple[Station, ...]:
    """Return the stations of a closed seam in order, from ``back`` to just before it again.

    The back is double. Joins of the boxing come before corners, corners before the spacing
    notches, which divide every gap evenly so that none is wider than ``spacing``; these are
    numbered round the seat.
    """
    greater = [Station(name, contour.station(name), name == "back") for name in CARDINALS]
    greater[1:1] = [Station(name, at) for name, at in joins if at > 0]
    greater += [Station(name, contour.station(name)) for name in _corner_joints(contour)]
    kept: list[Station] = []
    for station in greater:
        if all(_apart(station, other, contour.length) > CROWDED for other in kept):
            kept.append(station)
    kept.sort(key=lambda station: station.at)
    return tuple(_filled(kept, contour.length, spacing))


def _corner_joints(contour: Contour) -> Iterator[str]:
    for name in corner_names(contour):
        begins, ends = f"{name} begins", f"{name} ends"
        if begins in contour.joints:
            arc = (contour.station(ends) - contour.station(begins)) % contour.length
            if arc > LONG_CORNER:
                yield from (begins, ends)
                continue
        yield name


def _apart(one: Station, two: Station, whole: float) -> float:
    gap = abs(one.at - two.at)
    return min(gap, whole - gap)


def _filled(kept: list[Station], whole: float, spacing: float) -> Iterator[Station]:
    numbers = count(1)
    for here, there in pairwise([*kept, Station(kept[0].name, kept[0].at + whole)]):
        yield here
        gap = there.at - here.at
        parts = math.ceil(gap / spacing - 1e-9)
        for i in range(1, parts):
            yield Station(str(next(numbers)), here.at + gap * i / parts)


def notches_round(
    contour: Contour, places: Iterable[Station], allowance: float, depth: float
) -> tuple[Notch, ...]:
    """Return the notches of a closed piece, their feet on its cut line."""
    return tuple(_notch(contour, place, allowance, depth) for place in places)


def _notch(contour: Contour, place: Station, allowance: float, depth: float) -> Notch:
    sides = (-DOUBLE_NOTCH_GAP / 2, DOUBLE_NOTCH_GAP / 2) if place.double else (0.0,)
    out = contour.outward(place.at)
    feet = tuple(_foot(contour, place.at + side, allowance) for side in sides)
    return Notch(place.name, feet, -out / abs(out), depth)


def _foot(contour: Contour, along: float, allowance: float) -> complex:
    along %= contour.length
    return contour.point_at(along) + allowance * contour.outward(along)
