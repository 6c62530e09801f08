"""Where the notches of a seam stand: at its joints, its corners, and evenly between them."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import count, pairwise
from typing import TYPE_CHECKING

from patternmaker.facts import HAIR
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


def from_other_end(places: Iterable[Station], whole: float) -> tuple[Station, ...]:
    """Return the stations of an edge as long as ``whole``, walked from its other end."""
    return tuple(replace(place, at=whole - place.at) for place in reversed([*places]))


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

    The back is double; it and the joins of the boxing are always kept. The sides and the front
    come before corners, corners before the spacing notches, which divide every gap evenly so that
    none is wider than ``spacing``; these are numbered round the seat.
    """
    kept = [Station("back", contour.station("back"), double=True)]
    kept += [Station(name, at) for name, at in joins if name != "back"]
    for name in (*CARDINALS[1:], *_corner_joints(contour)):
        station = Station(name, contour.station(name))
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


def slits_at(along: float, *, double: bool) -> tuple[float, ...]:
    """Return where along a cut edge the slits of a notch begin: one place, or two round it."""
    half = DOUBLE_NOTCH_GAP / 2
    return (along - half, along + half) if double else (along,)


def notches_round(
    sew: Contour,
    places: Iterable[Station],
    allowance: float,
    depth: float,
    cut: Contour | None = None,
) -> tuple[Notch, ...]:
    """Return the notches of a closed piece, their feet on its cut line.

    Args:
        sew: its sew line.
        places: where they stand on it.
        allowance: the seam allowance there.
        depth: how far the slits reach.
        cut: its cut line, where that is not simply the parallel of the sew line.
    """
    cut = sew.grown(allowance) if cut is None else cut
    return tuple(_notch(sew, cut, place, allowance, depth) for place in places)


def _notch(sew: Contour, cut: Contour, place: Station, allowance: float, depth: float) -> Notch:
    middle = foot(sew, cut, place.at, allowance)
    way = sew.point_at(place.at) - middle
    feet = (cut.point_at(at) for at in slits_at(_along(cut, middle), double=place.double))
    return Notch(place.name, tuple(feet), way / abs(way), depth, abs(way))


def foot(sew: Contour, cut: Contour, along: float, allowance: float) -> complex:
    """Return the place on the cut line that belongs to a place on the sew line.

    It lies square to it, or at the tip of its corner; beside a corner that turns inward, where
    the allowances of both sides run into each other, it is the nearest there is.
    """
    point = sew.point_at(along)
    square = point + allowance * sew.outward(along)
    if cut.segments[cut.nearest(square)].distance(square) < HAIR:
        return square
    edge = cut.segments[cut.nearest(point)]
    return edge.point(edge.along(point))


def _along(cut: Contour, point: complex) -> float:
    """Return the length along the cut line at a point on it."""
    index = cut.nearest(point)
    return cut.stops[index] + cut.segments[index].along(point)
