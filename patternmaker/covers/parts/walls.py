"""The side wall of a seat, from the seam of its top down to its base, laid flat part by part."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate
from typing import TYPE_CHECKING

from patternmaker.geometry.bending import Bend
from patternmaker.geometry.contour import MEETS
from patternmaker.geometry.pairing import paired
from patternmaker.geometry.ruled import Span
from patternmaker.geometry.unrolling import Flat, Laid, flat, lay

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.forms import Form
    from patternmaker.geometry.contour import Contour
    from patternmaker.geometry.pairing import Pair

PROBES = 24  # places on each edge at which a height is looked at


@dataclass(frozen=True)
class Wall:
    """A wall all the way round, from the joint ``back``.

    Args:
        sew: the top's sew line, on which places are told.
        spans: its smooth parts in order.
        drops: the least and the greatest height of the seam over the base's lower edge.
        below: the length of the base's edge to which it is drafted; None where it is upright.
    """

    sew: Contour
    spans: tuple[Span, ...]
    drops: tuple[float, float]
    below: float | None = None

    @classmethod
    def upright(cls, sew: Contour, drop: float) -> Wall:
        """Return the plain wall: one height all round, straight down."""
        level = Bend(drop)
        return cls(sew, tuple(Span(each, each, level) for each in sew.segments), (drop, drop))

    @classmethod
    def under(cls, form: Form, base: Contour | None = None) -> Wall:
        """Return the wall under a top: straight down, or out or in to the edge of a base.

        Raises:
            Refusal: if the base does not follow the seam.
        """
        outline = form.brief.outline
        pairs: list[Pair] = [(each, each) for each in outline.segments]
        if base is not None:
            pairs = paired(outline, base)
        spans = tuple(Span(above, below, form.bend, form.scale) for above, below in pairs)
        below = None if base is None else base.length
        return cls(form.sew, spans, drops_over(form.bend, outline), below)

    @cached_property
    def _parts(self) -> tuple[Laid, ...]:
        return tuple(lay(span) for span in self.spans)

    @cached_property
    def _stops(self) -> tuple[float, ...]:
        return tuple(accumulate((part.length for part in self._parts), initial=0.0))

    @cached_property
    def lower_length(self) -> float:
        """The length of its lower edge as it is cut."""
        return sum(each.length for part in self._parts for each in part.lower)

    def drops_between(self, begin: float, end: float) -> tuple[float, float]:
        """Return the least and the greatest height between two places of the seam."""
        if self.drops[0] == self.drops[1]:
            return self.drops
        heights = [
            part.span.height(i / PROBES) for part in self._between(begin, end)
            for i in range(PROBES + 1)
        ]  # fmt: skip
        return min(heights), max(heights)

    def part(self, begin: float, end: float) -> Flat:
        """Return the wall between two places of the seam; ``end`` may lie past its beginning."""
        return flat(self._between(begin, end))

    def _between(self, begin: float, end: float) -> Iterator[Laid]:
        """Yield its parts; a corner's rulings are shared by the panels that are joined there."""
        runs = list(self._runs())
        yield from _half([part for at, part in runs if _is_corner(part, at, begin)], last=True)
        for at, part in runs:
            start, stop = max(at, begin), min(at + part.length, end)
            if not part.length:
                if begin + MEETS < at < end - MEETS:
                    yield part
            elif stop - start > MEETS:
                yield _cut(part, start - at, stop - at)
        yield from _half([part for at, part in runs if _is_corner(part, at, end)], last=False)

    def _runs(self) -> Iterator[tuple[float, Laid]]:
        """Yield its parts with their places on the seam, three times round."""
        for turn in (-1, 0, 1):
            for at, part in zip(self._stops, self._parts, strict=False):
                yield at + turn * self._stops[-1], part


def _is_corner(part: Laid, at: float, place: float) -> bool:
    return not part.length and abs(at - place) <= MEETS


def _half(corner: list[Laid], *, last: bool) -> list[Laid]:
    middle = len(corner) // 2
    return corner[middle:] if last else corner[:middle]


def _cut(part: Laid, begin: float, end: float) -> Laid:
    """Return the part of a span between two lengths of its upper edge."""
    first = 0.0 if begin <= MEETS else part.share_at(begin)
    last = 1.0 if end >= part.length - MEETS else part.share_at(end)
    return part if (first, last) == (0.0, 1.0) else lay(part.span.cut(first, last))


def drops_over(bend: Bend, outline: Contour) -> tuple[float, float]:
    """Return the least and the greatest height of a bent top along an outline."""
    if bend.is_level:
        return bend.level, bend.level
    heights = [
        bend.at(each.point(each.length * i / PROBES))
        for each in outline.segments
        for i in range(PROBES + 1)
    ]
    return min(heights), max(heights)


def fullness(base: Contour, wrap: float) -> float:
    """Return how much longer a wrap's edge is than the line on the underside where it comes to lie.

    Turned under round a bend of radius R and t radians, an edge w inside it loses w t, R t at most;
    round a full circle 2 pi w.
    """
    bends = (each for each in base.segments if each.sweep > 0)
    return sum(min(wrap * each.sweep, each.length) for each in bends)
