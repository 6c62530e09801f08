"""The measurements of a shape as lettered lines."""

from __future__ import annotations

from dataclasses import dataclass, replace
from string import ascii_uppercase
from typing import TYPE_CHECKING

from patternmaker.facts import HAIR, LONGEST, Rows, facts_of
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Arc, Line

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from patternmaker.geometry.contour import Contour
    from patternmaker.geometry.segments import Box
    from patternmaker.outlines import Outline, Taken
    from patternmaker.units import Unit

ALONG_THE_EDGE = (0.3, 0.5, 0.7)  # of a line that runs along the edge, whatever its ends do
ON_THE_EDGE = 0.002  # of the seat's width; no picture shows a smaller distance
FAR = 2 * LONGEST  # mm; past any seat


def usual(kind: type[Outline], unit: Unit) -> Outline | None:
    """Return the seat that the defaults of a shape give, or None where a field has none."""
    facts = facts_of(kind)
    values = {field: fact.default.in_(unit) for field, fact in facts.items()}
    if any(fact.required and values[field] is None for field, fact in facts.items()):
        return None
    return kind(**values)


def letters_of(kind: type[Outline], outline: Outline | None) -> Mapping[str, str]:
    """Return the letter of each field that is taken somewhere on a seat, in the fields' order."""
    taken = {each.field for each in outline.dimensions()} if outline else set()
    fields = [field for field in facts_of(kind) if field in taken]
    return dict(zip(fields, ascii_uppercase, strict=False))


@dataclass(frozen=True)
class Measure:
    """A measurement as a line on a picture.

    Args:
        letter: by which the list beside the picture calls it.
        field: which measurement it is.
        begin: where it is taken from.
        end: where it is taken to.
        is_radius: whether it runs from the middle of an arc to the arc.
    """

    letter: str
    field: str
    begin: complex
    end: complex
    is_radius: bool

    @property
    def length(self) -> float:
        """How long it is, mm."""
        return abs(self.end - self.begin)

    @property
    def way(self) -> complex:
        """Its direction; to the right where it has no length."""
        step = self.end - self.begin
        return step / abs(step) if abs(step) > HAIR else 1 + 0j

    def point(self, share: float) -> complex:
        """Return the point at a share of its length."""
        return self.begin + share * (self.end - self.begin)

    def mapped(self, factor: complex, shift: complex) -> Measure:
        """Return it turned and scaled by ``factor``, then moved by ``shift``."""
        return replace(self, begin=self.begin * factor + shift, end=self.end * factor + shift)


def measures(outline: Outline, contour: Contour) -> tuple[Measure, ...]:
    """Return where the measurements of a seat are taken, each with its letter."""
    letters = letters_of(type(outline), outline)
    return tuple(
        Measure(letters.get(each.field, ""), each.field, each.begin, each.end,
                _is_radius(each, contour))
        for each in outline.dimensions()
    )  # fmt: skip


def set_off(lines: Sequence[Measure], contour: Contour, by: float) -> tuple[Measure, ...]:
    """Return the lines, each one that runs along the edge moved ``by`` outward, to be seen."""
    return tuple(
        replace(line, begin=line.begin + step, end=line.end + step)
        for line in lines
        for step in [_outward(line, contour) * by]
    )


def _outward(line: Measure, contour: Contour) -> complex:
    """Return the direction away from the seat for a line along its edge; else zero."""
    places = [line.point(share) for share in ALONG_THE_EDGE]
    if line.length <= HAIR or any(
        min(edge.distance(place) for edge in contour.segments) > contour.width * ON_THE_EDGE
        for place in places
    ):
        return 0
    edge = min(contour.segments, key=lambda each: each.distance(places[0]))
    return -1j * edge.tangent(edge.along(places[0]))


def _is_radius(taken: Taken, contour: Contour) -> bool:
    return any(
        isinstance(edge, Arc)
        and abs(edge.centre - taken.begin) < HAIR
        and edge.distance(taken.end) < HAIR
        for edge in contour.segments
    )


def box_round(contour: Contour, lines: Sequence[Measure]) -> Box:
    """Return the box round a seat and the lines on which it is measured."""
    left, bottom, right, top = contour.bounds
    ends = [point for line in lines for point in (line.begin, line.end)]
    xs, ys = [left, *(point.real for point in ends)], [bottom, *(point.imag for point in ends)]
    return min(xs), min(ys), max(right, *xs), max(top, *ys)


def witnesses(contour: Contour, lines: Sequence[Measure]) -> Iterator[tuple[complex, complex]]:
    """Yield the lines that lead from an end off the edge square across to the edge.

    An end that nothing lies square across from (the corner that a rounding took) has none.
    """
    for line in lines:
        for end in () if line.is_radius or line.length <= HAIR else (line.begin, line.end):
            if min(edge.distance(end) for edge in contour.segments) > ON_THE_EDGE * contour.width:
                square = Line(end - 1j * line.way * FAR, end + 1j * line.way * FAR)
                met = [point for edge in contour.segments for point in crossings(edge, square)]
                if met:
                    yield end, min(met, key=lambda point: abs(point - end))


def numbered(outline: Outline, contour: Contour) -> Iterator[tuple[str, complex, complex]]:
    """Yield the corners that the rows of a shape are counted by: number, place, the way inward."""
    if not any(isinstance(fact.quantity, Rows) for fact in facts_of(type(outline)).values()):
        return
    for name in contour.joints:
        if (number := name.split(" ")[-1]).isdigit():
            along = contour.station(name)
            away = contour.outward(along)
            yield number, contour.point_at(along), -away / abs(away)
