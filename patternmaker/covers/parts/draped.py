"""A cover laid over a seat in one piece: its top, its sides and what turns under, flat.

The top and the sides are the tight part. It is the outline and a border as wide as the side is
high, all of it scaled by the take-up, so that every length of it comes out right once the material
is pulled: a tight width of W + 2s is cut (W + 2s)(1 - r). Nothing is taken off the wrap, which is
added to the scaled border: cut width = (W + 2s)(1 - r) + 2w. Exact, but that the sides are taken
to stand upright, and the padding's edge to be sharp.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.covers.parts.tops import take_ups
from patternmaker.errors import Refusal
from patternmaker.facts import HAIR
from patternmaker.geometry.crossings import crossings
from patternmaker.geometry.segments import Line
from patternmaker.pattern.stations import foot

if TYPE_CHECKING:
    from patternmaker.covers.parts.bends import Place
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.brief import Brief

ROLE = "top cover"
ON_IT = 1e-5  # mm; a point this close to a line lies on it


@dataclass(frozen=True)
class Tight:
    """What is taken off the tight part one way, exactly.

    For a finished width W, a side s, a wrap w and a rate r it is cut (W + 2s)(1 - r) + 2w wide, or
    the nearest whole number of ``step`` to it.

    >>> Tight(finished=400, side=60, wrap=25, rate=0.025).cut
    557.0
    """

    finished: float
    side: float
    wrap: float
    rate: float
    step: float | None = None

    @property
    def tight(self) -> float:
        """From the board's lower edge over the top to the same edge opposite."""
        return self.finished + 2 * self.side

    @property
    def cut(self) -> float:
        """The cut width."""
        exact = self.tight * (1 - self.rate) + 2 * self.wrap
        return exact if self.step is None else math.floor(exact / self.step + 0.5) * self.step

    @property
    def scale(self) -> float:
        """The tight width as cut, over what it is on the seat."""
        return (self.cut - 2 * self.wrap) / self.tight


@dataclass(frozen=True)
class Draped:
    """The lines of a cover in one piece, from the top's edge outward.

    Args:
        outline: the seat's top edge, as measured.
        side: how far the sides come down.
        wrap: what turns under.
        across: the take-up from left to right.
        along: the take-up from front to back.
    """

    outline: Contour
    side: float
    wrap: float
    across: Tight
    along: Tight

    @classmethod
    def over(cls, brief: Brief, side: float) -> Draped:
        """Return the cover of a seat whose sides are ``side`` high."""
        outline, allowances = brief.outline, brief.allowances
        rates = (each.rate for each in take_ups(brief, ROLE))
        across, along = (
            Tight(finished, side, allowances.wrap, rate, allowances.round_cut_to)
            for finished, rate in zip((outline.width, outline.height), rates, strict=True)
        )
        return cls(outline, side, allowances.wrap, across, along)

    @cached_property
    def fold(self) -> Contour:
        """The line that lies on the top's edge."""
        return self.outline.scaled(self.across.scale, self.along.scale)

    @cached_property
    def unscaled(self) -> Contour:
        """The line that lies on the board's lower edge, before anything is taken up."""
        return self.outline.grown(self.side)

    @cached_property
    def board(self) -> Contour:
        """The line that lies on the board's lower edge, where the wrap begins."""
        return self.unscaled.scaled(self.across.scale, self.along.scale)

    @cached_property
    def cut(self) -> Contour:
        """The cut line, before anything is cut out of its corners."""
        return self.board.grown(self.wrap) if self.wrap > HAIR else self.board

    def pulled(self, point: complex) -> complex:
        """Return where a point of the seat's tight part is drawn."""
        return complex(point.real * self.across.scale, point.imag * self.along.scale)

    def below(self, place: Place) -> float:
        """Return the length along ``unscaled`` at the foot of a place of the outline.

        Between the sides of a kink that is the nearest place of the tip where they meet.
        """
        return along_at(self.unscaled, self._square(place))

    def _square(self, place: Place) -> complex:
        return self.outline.point_at(place.along) + self.side * place.outward

    def is_clear(self, place: Place, slack: float = ON_IT) -> bool:
        """Return whether the side hangs down from a place, clear of all others laid flat."""
        square = self._square(place)
        return self.unscaled.segments[self.unscaled.nearest(square)].distance(square) < slack

    def edge_of(self, along: float) -> tuple[complex, complex, complex]:
        """Return the place of each line at a length along the outline: fold, board and cut line."""
        low = foot(self.outline, self.unscaled, along, self.side)
        board = self.pulled(low)
        cut = foot(self.board, self.cut, along_at(self.board, board), self.wrap)
        return self.pulled(self.outline.point_at(along)), board, cut


def along_at(contour: Contour, point: complex) -> float:
    """Return the length along a contour at a point on it."""
    index = contour.nearest(point)
    return contour.stops[index] + contour.segments[index].along(point)


def met(contour: Contour, start: complex, way: complex) -> complex:
    """Return where a straight line from a place inside a contour first meets it."""
    ray = Line(start, start + contour.length * way / abs(way))
    left, bottom, right, top = ray.bounds
    return min((
        point
        for each, (west, south, east, north) in ((e, e.bounds) for e in contour.segments)
        if west <= right + ON_IT and left <= east + ON_IT
        and south <= top + ON_IT and bottom <= north + ON_IT
        for point in crossings(ray, each)
    ), key=lambda point: abs(point - start))  # fmt: skip


def no_room(corner: str) -> Refusal:
    """Return the refusal of a corner that another part of the cover runs into."""
    says = f"another part of the cover, laid flat, is in the way of {corner}"
    return Refusal("", says, mend="make the sides lower or the wrap narrower")
