"""How a drawing comes to its true size."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from patternmaker.errors import Refusal, brief
from patternmaker.facts import LONGEST
from patternmaker.facts.fields import nearest
from patternmaker.geometry.contour import joined_bounds
from patternmaker.tracing.closing import bounds_of, ends_of
from patternmaker.tracing.said import Said, shown

if TYPE_CHECKING:
    from patternmaker.geometry.segments import Box
    from patternmaker.tracing.sketch import Chain, Sketch
    from patternmaker.tracing.wishes import Wishes

SMALLEST = 50.0  # mm; no seat is smaller
MOST_NAMES = 12  # that a message lists
BENT = 0.01  # of its length: what a ruler may lie off the straight line between its ends


class Scale(NamedTuple):
    """How a sketch comes to its true size.

    Args:
        factor: mm of one of its units as it is held.
        field: the wish that says so; empty if the file does.
        said: what to tell of it.
    """

    factor: float
    field: str
    said: tuple[Said, ...] = ()


def scale_of(sketch: Sketch, wishes: Wishes) -> Scale:
    """Return how a sketch comes to its true size; by a width or depth only about so.

    Raises:
        Refusal: if nothing says how large it is, or several wishes do.
    """
    _checked_scales(wishes)
    if wishes.ruler is not None:
        return _by_ruler(sketch, wishes)
    if wishes.width is not None or wishes.depth is not None:
        field = "width" if wishes.width is not None else "depth"
        return Scale(measured_factor(_about(sketch, wishes), wishes), field)
    if wishes.unit is not None:
        factor = wishes.unit / (sketch.unit or 1.0)
        overruled = sketch.unit is not None and abs(factor - 1) > 1e-9
        says = f"taken {factor:.6g} times as large as the file says" if overruled else ""
        return Scale(factor, "unit", (Said(says),) if says else ())
    if sketch.unit is not None:
        return Scale(1.0, "")
    raise Refusal(
        "unit", "the file does not say its unit",
        mend="give it, or the width or depth of the seat, or the length of a ruler drawn beside it",
    )  # fmt: skip


def _checked_scales(wishes: Wishes) -> None:
    given = [
        name for name in ("unit", "width", "depth", "ruler") if getattr(wishes, name) is not None
    ]
    if len(given) > 1:
        raise Refusal(
            given[-1], "the size is given by {value}", value=" and by ".join(given),
            mend="give one of them only",
        )  # fmt: skip
    if (wishes.ruler is None) != (wishes.ruler_length is None):
        missing = "ruler_length" if wishes.ruler_length is None else "ruler"
        raise Refusal(missing, "is missing", mend="a ruler needs both its name and its length")


def measured_factor(box: Box, wishes: Wishes) -> float:
    """Return by what a seat in a box is enlarged to be as wide, or as deep, as wished."""
    wide, deep = box[2] - box[0], box[3] - box[1]
    wished, found = (wishes.width, wide) if wishes.width is not None else (wishes.depth, deep)
    if wished is None:
        return 1.0
    if found <= 0:
        field = "width" if wishes.width is not None else "depth"
        raise Refusal(field, "the line has none", mend="check which line it is")
    return wished / found


def _about(sketch: Sketch, wishes: Wishes) -> Box:
    """Return the box round the line that is wanted, or round all that may be it."""
    named = [chain for chain in sketch.chains if chain.name == wishes.line]
    return joined_bounds(bounds_of(chain) for chain in named or drawn_in(sketch))


def drawn_in(sketch: Sketch) -> tuple[Chain, ...]:
    """Return the lines of a sketch; refuse one that has none."""
    if not sketch.chains:
        raise Refusal("line", "the file draws no line", mend="draw the seat's outline")
    return sketch.chains


def _by_ruler(sketch: Sketch, wishes: Wishes) -> Scale:
    chain = next((each for each in sketch.chains if each.name == wishes.ruler), None)
    if chain is None:
        raise unknown_line("ruler", str(wishes.ruler), [each.name for each in sketch.chains])
    start, end = ends_of(chain)
    length = abs(end - start)
    if chain.closed or length == 0 or chain.path.length > (1 + BENT) * length:
        raise Refusal(
            "ruler", "{value} is not a straight line", value=brief(chain.name),
            mend="name a line whose ends are a known length apart",
        )  # fmt: skip
    factor = (wishes.ruler_length or 0.0) / length
    says = f"scaled by {factor:.6g}, so that the ruler is {{}} long"
    return Scale(factor, "ruler", (Said(says, (wishes.ruler_length or 0.0,)),))


def checked_size(box: Box, scale: Scale) -> None:
    """Refuse a seat that is no seat by its size."""
    wide, deep = box[2] - box[0], box[3] - box[1]
    narrow, broad = sorted((wide, deep))
    for wrong, size, says, limit in (
        (narrow < SMALLEST, narrow, "less", SMALLEST),
        (broad > LONGEST, broad, "more", LONGEST),
    ):
        if wrong:
            raise Refusal(
                scale.field or "unit",
                f"the line is {{value}} across, {says} than any seat ({{limit}})",
                value=size, limit=limit, show=shown,
                mend="check the unit, which may be wrong, and which line it is",
            )  # fmt: skip


def unknown_line(field: str, name: str, known: list[str]) -> Refusal:
    """Return the refusal of the name of a line that the file does not have."""
    like = nearest(name, known)
    listed = ", ".join(brief(each) for each in known[:MOST_NAMES])
    more = f" and {len(known) - MOST_NAMES} more" if len(known) > MOST_NAMES else ""
    mend = f"did you mean {brief(like)}?" if like else f"it has {listed}{more}"
    return Refusal(field, "the file has no line named {value}", value=brief(name), mend=mend)
