"""How a shape makes itself known: by the decorator `shape`, in a file of this folder."""

from __future__ import annotations

from abc import abstractmethod
from typing import TYPE_CHECKING, TypeVar, dataclass_transform

from patternmaker.facts import Measured, Registry, count, length, rate

if TYPE_CHECKING:
    from collections.abc import Callable

    from patternmaker.geometry.contour import Contour


class Outline(Measured):
    """A seat's shape from above, in the measurements by which a person takes it.

    Plan view on the show side: x to the right, y to the back, the origin in the middle of the
    seat, the ring anticlockwise from the joint ``back``. The widest points of the seat are the
    joints ``back``, ``left``, ``front`` and ``right``. A corner is one joint; a rounded one is
    three: its middle, and its two ends, named with ``begins`` and ``ends``.
    """

    @abstractmethod
    def contour(self) -> Contour:
        """Return the outline through the seam, as measured."""


SHAPES: Registry[Outline] = Registry("patternmaker.outlines")
S = TypeVar("S", bound=Outline)


@dataclass_transform(
    frozen_default=True, kw_only_default=True, field_specifiers=(length, count, rate)
)
def shape(name: str) -> Callable[[type[S]], type[S]]:
    """Make a class of facts a known shape, called ``name`` in a job file."""
    return SHAPES.known_as(name)  # type: ignore[return-value]
