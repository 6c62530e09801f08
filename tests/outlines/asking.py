"""What the tests of shapes ask of them."""

from typing import Any

import pytest

from patternmaker.errors import Refusals
from patternmaker.outlines import Outline

SIDES = ("back", "left", "front", "right")


def refused(kind: type[Outline], **values: Any) -> str:
    """Return the message with which measurements are refused, the others being the usual ones."""
    with pytest.raises(Refusals) as refusals:
        kind(**values)
    return str(refusals.value)


def corners(outline: Outline) -> list[str]:
    """Return the names of the joints that are not one of the four sides."""
    return [name for name in outline.contour().joints if name not in SIDES]


def place(outline: Outline, joint: str) -> complex:
    """Return where a joint stands."""
    contour = outline.contour()
    return contour.point_at(contour.station(joint))


def turns(outline: Outline) -> list[float]:
    """Return how far the outline turns at each of its corners."""
    return [turn for turn in outline.contour().corners if turn]


def touches(outline: Outline, point: complex) -> bool:
    """Return whether the outline passes through a point."""
    contour = outline.contour()
    return contour.segments[contour.nearest(point)].distance(point) < 1e-6


def taken(outline: Outline) -> dict[str, float]:
    """Return the length of each measurement as the picture shows it taken."""
    return {each.field: abs(each.end - each.begin) for each in outline.dimensions()}


def bound(kind: type[Outline], field: str, *, upper: bool = True, **values: Any) -> float:
    """Return the bound that other measurements set to a field."""
    (limit,) = (each for each in kind.limits if each.field == field and each.upper is upper)
    value = limit.value(values)
    assert value is not None
    return value
