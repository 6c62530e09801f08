"""The seam round both faces of a box, and the stretches of it that panels of boxing cover."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from patternmaker.geometry.contour import Path
from patternmaker.pattern.clips import NEAREST, SHORT_OF_SEAM, clips
from patternmaker.pattern.piece import Guide, LineKind
from patternmaker.pattern.stations import Station

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.cushions import Marks
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.brief import Brief

SAME = 1e-6  # mm; places on a seam that lie closer are the same


@dataclass(frozen=True)
class Ring:
    """The seam round both faces of a box, seen from above.

    Args:
        brief: the seat.
        sew: the sew line of the top.
        places: the stations round it.
        height: from the top's seam to the bottom's.
        marks: where sewing starts and stops on the top.
    """

    brief: Brief
    sew: Contour
    places: tuple[Station, ...]
    height: float
    marks: Marks = ()

    @property
    def allowances(self) -> Allowances:
        """The seat's allowances."""
        return self.brief.allowances

    def stretch(self, begin: str, end: str) -> Stretch:
        """Return the stretch of it between two stations: all round, if they are the same."""
        at = {place.name: place.at for place in self.places}
        length = (at[end] - at[begin]) % self.sew.length or self.sew.length
        return Stretch(self, (begin, at[begin]), end, length)


@dataclass(frozen=True)
class Stretch:
    """A stretch of a ring that one panel covers."""

    ring: Ring
    begins: tuple[str, float]
    end: str
    length: float

    @property
    def begin(self) -> str:
        """The station at which it begins."""
        return self.begins[0]

    @property
    def stations(self) -> tuple[Station, ...]:
        """Its stations, their lengths from its begin, both ends among them."""
        inner = (replace(place, at=x) for place in self.ring.places for x in self.on_it(place.at))
        between = sorted(inner, key=lambda place: place.at)
        return Station(self.begin, 0.0), *between, Station(self.end, self.length)

    def on_it(self, *places: float) -> Iterator[float]:
        """Yield the places round the ring that fall on it, as lengths from its begin."""
        for at in places:
            along = (at - self.begins[1]) % self.ring.sew.length
            if SAME < along < self.length - SAME:
                yield along

    @property
    def clips(self) -> Iterator[float]:
        """Where an allowance is clipped to follow a corner, unless a join gives way there."""
        allowance = self.ring.allowances.upper_edge
        for x in self.on_it(*clips(self.ring.sew, allowance, convex=True)):
            if NEAREST < x < self.length - NEAREST:
                yield x

    @property
    def marks(self) -> Iterator[tuple[str, float]]:
        """The marks on it, their lengths from its begin."""
        for name, at in self.ring.marks:
            yield from ((name, x) for x in self.on_it(at))


def clip_guides(stretch: Stretch, seam: float, allowance: float) -> Iterator[Guide]:
    """Yield the clips of the edge whose seam lies at a height; its allowance is signed."""
    short = math.copysign(SHORT_OF_SEAM, allowance)
    for x in stretch.clips:
        stroke = Path.through(complex(x, seam + allowance), complex(x, seam + short))
        yield Guide(LineKind.CLIP, stroke, "clip")


def mark_guides(stretch: Stretch) -> Iterator[Guide]:
    """Yield where sewing starts and stops along the upper seam."""
    top = stretch.ring.allowances.upper_edge
    for name, x in stretch.marks:
        yield Guide(LineKind.SEWING, Path.through(complex(x, top), x), name)
