"""What a cover in one piece has too much of where its edge bends, in wedges.

Beside a straight edge the side, laid flat, is as long as the edge. Round a bend that turns by t it
is longer by t s at a depth of s: round an arc of radius R it is t (R + s) long, and comes back to
t R. A wedge has its tip on the top's edge and takes up that length, measured along the board's
lower edge, exactly; its sides are straight.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.covers.parts.draped import ON_IT, along_at, met, no_room
from patternmaker.geometry.contour import Path
from patternmaker.geometry.halving import halved
from patternmaker.geometry.segments import cross

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.bends import Bend
    from patternmaker.covers.parts.draped import Draped
    from patternmaker.geometry.contour import Contour

HALVINGS = 60  # of the search for a tip from which both sides are equally long
EVEN = 1e-9  # mm
KINKED = 0.02  # of the side; the tip of a kink within a bend lies this much further out


@dataclass(frozen=True)
class Wedge:
    """One wedge as it is drawn on the flat piece.

    Args:
        at: the place of its tip, along the outline.
        apex: its tip, on the top's edge.
        feet: where its two sides meet the board's lower edge, in the order of the contour.
        middle: the place halfway between them, on the same line.
        taken: the length between the feet along it.
        cut: the cut line.
    """

    at: float
    apex: complex
    feet: tuple[complex, complex]
    middle: complex
    taken: float
    cut: Contour

    @property
    def ways(self) -> tuple[complex, complex]:
        """The directions of its two sides."""
        first, second = (foot - self.apex for foot in self.feet)
        return first / abs(first), second / abs(second)

    @property
    def legs(self) -> tuple[Path, Path]:
        """Its sides from the top's edge to the board's lower edge: what is sewn together."""
        first, second = self.feet
        return Path.through(self.apex, first), Path.through(self.apex, second)

    @property
    def tips(self) -> tuple[complex, complex]:
        """Where its sides meet the cut line."""
        first, second = self.ways
        return self.met(self.apex, first), self.met(self.apex, second)

    @property
    def sine(self) -> float:
        """The sine of half its angle: how far off a side lies at a length along the other's."""
        first, second = self.ways
        return cross(first, (first + second) / abs(first + second))

    @property
    def axis(self) -> complex:
        """The direction halfway between its sides."""
        first, second = self.ways
        return (first + second) / abs(first + second)

    def met(self, start: complex, way: complex) -> complex:
        """Return where a straight line from ``start`` meets the cut line."""
        return met(self.cut, start, way)


@dataclass(frozen=True)
class _Share:
    """A wedge's share of a bend: what of the board's lower edge belongs to which part of the bend.

    Args:
        draped: the cover.
        bend: the bend.
        begin: the share of its turning at which it begins.
        end: that at which it ends.
    """

    draped: Draped
    bend: Bend
    begin: float
    end: float

    @cached_property
    def _below(self) -> tuple[float, float]:
        begin, end = (self.draped.below(self.bend.at(share)) for share in (self.begin, self.end))
        return begin, end

    def wedge(self, tip: float) -> Wedge:
        """Return the wedge whose tip is at a share of the bend's turning.

        What is left on either side of it is as long along the board as along the top.
        """
        draped, outer = self.draped, self.draped.unscaled
        begin, at, end = (self.bend.at(share).along for share in (self.begin, tip, self.end))
        first, second = self._below[0] + at - begin, self._below[1] - (end - at)
        over = (second - first) % outer.length
        feet = draped.pulled(outer.point_at(first)), draped.pulled(outer.point_at(second))
        one, two = (along_at(draped.board, foot) for foot in feet)
        return Wedge(
            at % draped.outline.length,
            draped.pulled(draped.outline.point_at(at)),
            feet,
            draped.pulled(outer.point_at(first + over / 2)),
            (two - one) % draped.board.length,
            draped.cut,
        )

    def even(self) -> Wedge:
        """Return the wedge whose sides are equally long; its tip is moved along the bend for it.

        At a sharp corner it can't be moved: there the sides are as long as the side is high, each
        less its take-up.
        """
        low, high = self.begin, self.end
        wedge = self.wedge((low + high) / 2)
        for _ in range(HALVINGS):
            uneven = wedge.legs[0].length - wedge.legs[1].length
            if self.bend.is_sharp or abs(uneven) < EVEN:
                break
            middle = (low + high) / 2
            low, high = (low, middle) if uneven > 0 else (middle, high)
            wedge = self.wedge((low + high) / 2)
        return wedge


def clear_part(draped: Draped, bend: Bend) -> tuple[float, float]:
    """Return the shares of a bend's turning between which its side hangs clear, laid flat.

    Beside an inner corner the sides of both its edges would lie over each other: what they have
    in common is no one's, and a bend close by is free of it only further on.

    Raises:
        Refusal: if it isn't clear in its middle, or a sharp one not on both sides.
    """
    slack = KINKED * draped.side if bend.has_kinks and not bend.is_sharp else ON_IT

    def is_clear(share: float) -> bool:
        return draped.is_clear(bend.at(share), slack)

    if not all(is_clear(share) for share in ((0.0, 1.0) if bend.is_sharp else (0.5,))):
        raise no_room(bend.name)
    if bend.is_sharp:
        return 0.0, 1.0
    begin, end = (end if is_clear(end) else halved(0.5, end, is_clear)[0] for end in (0.0, 1.0))
    return begin, end


def wedges(draped: Draped, bend: Bend, part: tuple[float, float], count: int) -> Iterator[Wedge]:
    """Yield the wedges that take up what a part of a bend has too much, equal shares of its turn.

    Raises:
        Refusal: if another part of the cover is in the way.
    """
    begin, end = part
    for i in range(count):
        shares = (begin + (end - begin) * j / count for j in (i, i + 1))
        yield _Share(draped, bend, *shares).even()
