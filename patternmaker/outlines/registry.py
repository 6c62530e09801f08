"""How a shape makes itself known: by the decorator `shape`, in a file of this folder."""

from __future__ import annotations

import math
from abc import abstractmethod
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, TypeVar, dataclass_transform

from patternmaker.facts import (
    Measured,
    Registry,
    angle,
    choice,
    count,
    file,
    length,
    rate,
    rows,
    switch,
)
from patternmaker.geometry.framing import framed, middle_of, mirrored

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from patternmaker.facts import Default
    from patternmaker.geometry.contour import Contour
    from patternmaker.geometry.framing import Ring
    from patternmaker.tracing.said import Said


@dataclass(frozen=True)
class Taken:
    """Where on a seat a measurement is taken: from one point straight to another.

    A radius is taken from the middle of its arc to the arc.
    """

    field: str
    begin: complex
    end: complex

    @classmethod
    def in_corner(cls, field: str, ring: Ring, corner: str, radius: float) -> Taken:
        """Return where the radius of a rounded corner is taken: to the middle of its arc.

        The middle of the arc lies inside, or outside if the corner turns in.
        """
        arc = ring.segments[ring.joints[corner]]
        inward = 1j * math.copysign(radius, arc.sweep) * arc.tangent()
        return cls(field, arc.start + inward, arc.start)


class Outline(Measured):
    """A seat's shape from above, in the measurements by which a person takes it.

    Plan view on the show side: x to the right, y to the back, anticlockwise. A corner is one
    joint; a rounded one is three: its middle, and its two ends, named with ``begins`` and
    ``ends``. Whatever the origin in which a shape is struck, `contour` moves its middle there and
    names the joints ``back``, ``left``, ``front`` and ``right``, where the middle lines cross it.
    """

    @abstractmethod
    def struck(self) -> Ring:
        """Return the outline through the seam, as measured, with its corners named."""

    @abstractmethod
    def taken(self) -> Iterable[Taken]:
        """Yield where its lengths are taken, in the coordinates of `struck`."""

    def partner(self) -> Outline:
        """Return the seat that is its mirror image: itself, where left and right are alike."""
        return self

    def remarks(self) -> tuple[Said, ...]:
        """Return what the fit report should say of how the outline came about."""
        return ()

    def contour(self) -> Contour:
        """Return the outline with its middle at the origin, from the joint ``back``."""
        return framed(*self.struck())

    def dimensions(self) -> tuple[Taken, ...]:
        """Return where its lengths are taken, in the coordinates of `contour`."""
        middle = middle_of(self.struck().segments)
        return tuple(
            replace(each, begin=each.begin - middle, end=each.end - middle) for each in self.taken()
        )


class Handed(Outline):
    """A shape that comes as a pair, told apart by its field ``hand``, "left" or "right"."""

    hand: str

    @abstractmethod
    def struck_left(self) -> Ring:
        """Return the outline of the left-handed one."""

    @abstractmethod
    def taken_left(self) -> Iterable[Taken]:
        """Yield where the lengths of the left-handed one are taken."""

    def struck(self) -> Ring:
        """Return the outline of the one or the other."""
        ring = self.struck_left()
        return ring if self.hand == "left" else mirrored(ring)

    def taken(self) -> Iterable[Taken]:
        """Yield where its lengths are taken."""
        for each in self.taken_left():
            yield each if self.hand == "left" else seen_in_mirror(each)

    def partner(self) -> Outline:
        """Return the other of the pair."""
        return replace(self, hand="right" if self.hand == "left" else "left")  # type: ignore[type-var]


def seen_in_mirror(taken: Taken) -> Taken:
    """Return where a measurement is taken on the mirror image."""
    return replace(taken, begin=-taken.begin.conjugate(), end=-taken.end.conjugate())


def corner_radius(which: str, *, default: Default) -> Any:
    """Make a field that holds the radius of some corners, which 0 leaves sharp."""
    return length(f"radius of {which}; 0 for sharp ones", default=default, required=False)


SHAPES: Registry[Outline] = Registry("patternmaker.outlines")
S = TypeVar("S", bound=Outline)


@dataclass_transform(
    frozen_default=True,
    kw_only_default=True,
    field_specifiers=(length, corner_radius, count, rate, angle, choice, switch, rows, file),
)
def shape(name: str) -> Callable[[type[S]], type[S]]:
    """Make a class of facts a known shape, called ``name`` in a job file."""
    return SHAPES.known_as(name)  # type: ignore[return-value]
