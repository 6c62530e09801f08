"""Seams walked on paper: along the printed sew lines from printed mark to printed mark."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from tests.paper.pieces import AT_MARK, BESIDE

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.pattern.piece import Edge, Seam
    from tests.paper.curves import Curve
    from tests.paper.pieces import Laid

WIDEST = 60.0  # mm; no notch stands further from its sew line


@dataclass(frozen=True)
class Span:
    """A span of a seam as it is printed: its ends by name, its length on both pieces, its ease."""

    begin: str
    end: str
    a: float
    b: float
    eased: float

    @property
    def off(self) -> float:
        """By how much the two lengths differ, beside the span's share of the stated ease."""
        return abs(self.a - self.b - self.eased)


def walked(seam: Seam, laid: dict[str, Laid]) -> list[Span]:
    """Return every span of a seam, measured on paper."""
    a, b = (list(_lengths(edge, laid[edge.piece])) for edge in (seam.a, seam.b))
    names = [name for name, _ in seam.a.stations]
    assert names == [name for name, _ in seam.b.stations], f"{seam.name}: {names}"
    share = seam.eased / sum(b)
    return [
        Span(begin, end, one, two, share * two)
        for (begin, end), one, two in zip(pairwise(names), a, b, strict=True)
    ]


def _lengths(edge: Edge, laid: Laid) -> Iterator[float]:
    """Yield the printed length of each span of an edge."""
    for (one, begin), (two, end) in pairwise(edge.stations):
        first, middle, last = (
            laid.on_paper(edge.path.point_at(at)) for at in (begin, (begin + end) / 2, end)
        )
        i = _line(laid, [first, middle, last], f"{edge}, {one} to {two}")
        here, there = (
            _station(laid, i, place, f"{edge}, {name}")
            for name, place in ((one, first), (two, last))
        )
        line = laid.lines[i][1]
        yield _between(line, here, there, line.nearest(middle)[0])


def _line(laid: Laid, places: list[complex], where: str) -> int:
    """Return which printed line a span lies on."""
    found = [
        (max(line.nearest(place)[1] for place in places), kind != "sew line", i)
        for i, (kind, line) in enumerate(laid.lines)
    ]
    off, _, i = min((round(off, 2), other, i) for off, other, i in found)
    assert off < BESIDE, f"{where}: no line is printed"
    return i


def _between(line: Curve, here: float, there: float, middle: float) -> float:
    """Return the length from place to place; on a closed line the way round over the middle."""
    if not line.is_closed:
        return abs(there - here)
    ahead = (there - here) % line.length
    return ahead if 0 < (middle - here) % line.length < ahead else line.length - ahead


def _station(laid: Laid, i: int, place: complex, where: str) -> float:
    """Return the length along a line at the printed mark of a station.

    A corner, or the end of the line, is a mark in itself; elsewhere it is a notch, or another line
    that crosses it.
    """
    line = laid.lines[i][1]
    for marks in (line.corners, laid.notched[i], _crossed(laid, line, place)):
        near = [at for at in marks if abs(line.at(at) - place) < AT_MARK]
        if near:
            return min(near, key=lambda at: abs(line.at(at) - place))
    raise AssertionError(f"{where}: no mark is printed")


def _crossed(laid: Laid, line: Curve, place: complex) -> Iterator[float]:
    """Yield where other lines cross a line near a place."""
    for _, other in laid.lines:
        at, off = other.nearest(place)
        if other is not line and off < BESIDE:
            yield line.met_by(other.at(at), other.way(at))


def names_inside(edge: Edge, laid: Laid) -> Iterator[tuple[str, list[str]]]:
    """Yield the stations that are notched between the ends of an edge, and what is lettered there.

    A line that crosses stands for a notch where a strip folds.
    """
    for name, along in edge.stations[1:-1]:
        place = laid.on_paper(edge.path.point_at(along))
        near = [notch for notch in laid.notches if notch.aside(place) < AT_MARK]
        near = [notch for notch in near if abs(notch.foot - place) < WIDEST]
        if near:
            notch = min(near, key=lambda notch: abs(notch.foot - place))
            yield name, laid.named_at(notch, place)
