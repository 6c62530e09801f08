"""The form of a seat's top: how it slopes and bends, its take-up, and its sew line laid flat."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.covers.parts.tops import TakeUp, rates
from patternmaker.geometry.bending import Spread, Straight, scale_for

if TYPE_CHECKING:
    from collections.abc import Callable

    from patternmaker.geometry.bending import Bend
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.brief import Brief


@dataclass(frozen=True)
class Form:
    """The top of a seat over its plan.

    The plan is drafted smaller by a scale each way, its heights as they are, such that the top laid
    flat is cut to its own length each way less the take-up, exactly. The wall below has the same
    plan, so that its upper edge and the top's sew line are of one length from place to place.

    Args:
        brief: the seat.
        bend: how high the top lies over the base's lower edge.
    """

    brief: Brief
    bend: Bend

    @cached_property
    def take_ups(self) -> tuple[TakeUp, TakeUp]:
        """The take-up across the seat, and along it, on the top's own lengths."""
        across, along = rates(self.brief)
        return self._taken(across, across=True), self._taken(along, across=False)

    def _taken(self, rate: float, *, across: bool) -> TakeUp:
        allowances = self.brief.allowances
        finished = self._extent(Spread(self.bend, 1.0, 1.0), across=across)
        return TakeUp(finished, allowances.seam, rate, allowances.round_cut_to)

    def _extent(self, spread: Spread, *, across: bool) -> float:
        left, bottom, right, top = self.brief.outline.bounds
        begin, end = (left, right) if across else (bottom, top)
        return spread.extent(begin, end, across=across)

    @cached_property
    def scale(self) -> tuple[float, float]:
        """How much of the plan is drafted, across and along.

        Raises:
            ValueError: if the top is too steep for its take-up.
        """
        across, along = self.take_ups
        if self.bend.is_level:
            return across.scale, along.scale
        back = self._scale(lambda v: Spread(self.bend, 1.0, v), along, across=False)
        right = self._scale(lambda u: Spread(self.bend, u, back), across, across=True)
        return right, back

    def _scale(self, spread: Callable[[float], Spread], taken: TakeUp, *, across: bool) -> float:
        profile = self.bend.across if across else self.bend.along
        if profile == Straight():
            return taken.scale
        wanted = taken.cut - 2 * taken.allowance
        return scale_for(lambda scale: self._extent(spread(scale), across=across), wanted)

    @cached_property
    def is_too_steep(self) -> bool:
        """Whether no plan is small enough for its take-up."""
        try:
            return min(self.scale) <= 0
        except ValueError:
            return True

    @cached_property
    def sew(self) -> Contour:
        """The top's sew line, flat."""
        return Spread(self.bend, *self.scale).laid(self.brief.outline)

    @cached_property
    def seam(self) -> float:
        """The length of the seam on the finished seat."""
        if self.bend.is_level:
            return self.brief.outline.length
        return Spread(self.bend, 1.0, 1.0).laid(self.brief.outline).length
