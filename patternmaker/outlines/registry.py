"""How a shape makes itself known: by the decorator `shape`, in a file of this folder."""

from __future__ import annotations

import importlib
import pkgutil
from abc import abstractmethod
from functools import cache
from typing import TYPE_CHECKING, ClassVar, TypeVar

from patternmaker.facts import Measured, measured

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from patternmaker.geometry.contour import Contour

_SHAPES: dict[str, type[Outline]] = {}


class Outline(Measured):
    """A seat's shape from above, in the measurements by which a person takes it.

    Plan view on the show side: x to the right, y to the back, the origin in the middle of the
    seat, the ring anticlockwise from the joint ``back``. The widest points of the seat are the
    joints ``back``, ``left``, ``front`` and ``right``. A corner is one joint; a rounded one is
    three: its middle, and its two ends, named with ``begins`` and ``ends``.
    """

    shape_name: ClassVar[str]

    @abstractmethod
    def contour(self) -> Contour:
        """Return the outline through the seam, as measured."""


S = TypeVar("S", bound=Outline)


def shape(name: str) -> Callable[[type[S]], type[S]]:
    """Make a class of facts a known shape, called ``name`` in a job file."""

    def known(kind: type[S]) -> type[S]:
        made = measured(kind)
        made.shape_name = name
        _SHAPES[name] = made
        return made

    return known


@cache
def shapes() -> Mapping[str, type[Outline]]:
    """Return every shape by name, in alphabetical order."""
    package = importlib.import_module("patternmaker.outlines")
    for module in pkgutil.iter_modules(package.__path__):
        importlib.import_module(f"patternmaker.outlines.{module.name}")
    return dict(sorted(_SHAPES.items()))
