"""Tops that slope or are bent one way, from what a tape says of them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.facts import HAIR, LENGTH
from patternmaker.geometry.bending import Bend, Bow, Straight, Tabled
from patternmaker.geometry.monotone import Monotone

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.geometry.contour import Contour

NOT, ALONG, ACROSS = "not", "front to back", "left to right"
DISH, CROWN = "dish", "crown"
DEEPEST = 0.3  # of the seat that way; a deeper bend stands too steep at its ends to be one sheet
STEEPEST = 0.7  # of the depth; the same for a slope

Rows = tuple[tuple[float, ...], ...]


@dataclass(frozen=True)
class Bending:
    """How a top is bent, as it was measured.

    Args:
        way: `NOT`, `ALONG` or `ACROSS`.
        sense: `DISH` or `CROWN`.
        depth: from its ends to its middle.
        radius: of the bend, where that was measured instead.
        drops: distance from the back, or from the left, and the drop there, where these were.
        drop: from the seam down to the base's lower edge, at the front and the ends of the bend.
        drop_back: the same at the back.
    """

    way: str
    sense: str
    depth: float | None
    radius: float | None
    drops: Rows
    drop: float
    drop_back: float

    def over(self, outline: Contour) -> Bend:
        """Return the top over a seat's outline, its middle at the origin."""
        slope = (self.drop_back - self.drop) / outline.height
        level = (self.drop_back + self.drop) / 2
        if self.way == NOT:
            return Bend(level, along=Straight(slope))
        if self.drops:
            return self._tabled(outline, slope)
        rise = self._rise(outline)
        if self.way == ALONG:
            return Bend(level, along=Bow(outline.height, rise, slope) if rise else Straight(slope))
        across = Bow(outline.width, rise) if rise else Straight()
        return Bend(level, along=Straight(slope), across=across)

    def _extent(self, outline: Contour) -> float:
        return outline.height if self.way == ALONG else outline.width

    def depth_over(self, outline: Contour) -> float:
        """Return how deep the bend is: as given, or as its radius makes it."""
        if self.radius is None:
            return self.depth or 0.0
        half = self._extent(outline) / 2
        return self.radius - math.sqrt(max(0.0, self.radius**2 - half**2))

    def _rise(self, outline: Contour) -> float:
        """Return how high the middle of the bend stands, 0 where that is too little to cut."""
        depth = self.depth_over(outline)
        return math.copysign(depth, 1 if self.sense == CROWN else -1) if depth > HAIR else 0.0

    def _tabled(self, outline: Contour, slope: float) -> Bend:
        half = self._extent(outline) / 2
        if self.way == ALONG:
            return Bend(0.0, along=_table((half - at, drop) for at, drop in reversed(self.drops)))
        across = _table((at - half, drop) for at, drop in self.drops)
        return Bend((self.drop_back - self.drop) / 2, along=Straight(slope), across=across)

    def misfits(self) -> Iterator[Refusal]:
        """Yield which of the measurements do not go together."""
        given = [name for name, value in (("bend_depth", self.depth), ("bend_radius", self.radius),
                                          ("drops", self.drops)) if value]  # fmt: skip
        if self.way == NOT:
            for name in given:
                yield Refusal(name, "is given, but the top is not bent",
                              mend=f'say which way: bent = "{ALONG}" or "{ACROSS}"')  # fmt: skip
        elif not given:
            yield Refusal("bent", "says the way, but nothing says how far",
                          mend="give bend_depth, bend_radius or drops")  # fmt: skip
        for name in given[1:]:
            yield Refusal(name, f"is given beside {given[0]}", mend="give one of the two")
        yield from self._disorder()

    def _disorder(self) -> Iterator[Refusal]:
        places = [row[0] for row in self.drops]
        for number, (before, place) in enumerate(pairwise(places), 2):
            if place <= before:
                yield Refusal(
                    f"drops, row {number}", "{value} is no further than {limit} before it",
                    value=place, limit=before, show=LENGTH.show,
                    mend="put the rows in order, each place once",
                )  # fmt: skip

    def objections(self, outline: Contour) -> Iterator[Refusal]:
        """Yield what a seat's outline has no room for."""
        steep = abs(self.drop_back - self.drop)
        if steep > STEEPEST * outline.height:
            yield Refusal(
                "cover.drop_back", "differs from the drop at the front by {value}, more than "
                "seven tenths of the depth ({limit})", value=steep,
                limit=STEEPEST * outline.height, show=LENGTH.show, mend="measure both again",
            )  # fmt: skip
        if self.way == NOT:
            return
        extent = self._extent(outline)
        if self.radius is not None and self.radius < _least_radius(extent):
            yield Refusal(
                "cover.bend_radius",
                "{value} is less than the bend of this seat can have ({limit})",
                value=self.radius, limit=_least_radius(extent), show=LENGTH.show,
                mend="measure it again",
            )  # fmt: skip
        elif self.depth_over(outline) > DEEPEST * extent:
            yield Refusal(
                "cover.bend_depth", "{value} is more than three tenths of the seat that way "
                "({limit})", value=self.depth_over(outline), limit=DEEPEST * extent,
                show=LENGTH.show, mend="measure it again, or make the top of pieces",
            )  # fmt: skip
        if self.drops and not (self.drops[0][0] <= 0.0 and self.drops[-1][0] >= extent - 1e-6):
            last = self.drops[-1][0]
            yield Refusal(
                "cover.drops", "the rows run to {value} of the {limit} that the seat has that way",
                value=last, limit=extent, show=LENGTH.show,
                mend="begin at 0 and measure to the far edge",
            )  # fmt: skip


def _table(rows: Iterable[tuple[float, float]]) -> Tabled:
    places, drops = zip(*rows, strict=True)
    return Tabled(Monotone(places, drops))


def _least_radius(extent: float) -> float:
    """Return the radius of the deepest bend over an extent."""
    return extent * (1 / 8 / DEEPEST + DEEPEST / 2)
