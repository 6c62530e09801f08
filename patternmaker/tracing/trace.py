"""From a drawing to the outline of a seat."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.geometry.contour import Contour, joined_bounds
from patternmaker.geometry.framing import framed, middle_of
from patternmaker.geometry.validity import crossing
from patternmaker.tracing.choosing import chosen
from patternmaker.tracing.halves import evened
from patternmaker.tracing.marking import cut_at, is_corner
from patternmaker.tracing.ring import ring_of
from patternmaker.tracing.said import Said, near, shown
from patternmaker.tracing.scaling import checked_size, measured_factor, scale_of
from patternmaker.tracing.turning import righted
from patternmaker.tracing.wishes import Wishes

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from patternmaker.geometry.segments import Box, Segment
    from patternmaker.tracing.sketch import Sketch

FLAT = 0.01  # of its box: a line that holds less area runs to and fro
SOFTER = 0.8  # of the corner asked for: a vertex that turns less is no corner

__all__ = ["Said", "Trace", "Wishes", "traced"]


@dataclass(frozen=True)
class Trace:
    """A traced outline, and what to tell of it.

    Args:
        contour: the outline, framed; its joints are the four of every seat, its corners, named
            "corner 1", "corner 2" and so on anticlockwise from the back, and the places that the
            drawing names.
        notes: what was done to it.
    """

    contour: Contour
    notes: tuple[Said, ...]


def traced(sketch: Sketch, wishes: Wishes) -> Trace:
    """Return the outline of the seat in a sketch.

    Raises:
        Refusal: naming the wish that would mend it.
    """
    sketch = righted(sketch, wishes)
    scale = scale_of(sketch, wishes)
    row, said = chosen(_scaled(sketch, scale.factor), wishes)
    more = measured_factor(row.bounds, wishes)
    row = row.scaled(more)
    checked_size(row.bounds, scale)
    ring = ring_of(row, wishes)
    last = measured_factor(_bounds(ring.segments), wishes)
    segments = _checked(tuple(each.mapped(last, 0) for each in ring.segments))
    factor = scale.factor * more * last
    marks = {name: place * factor for name, place in sketch.marks.items()}
    notes = (*map(Said.plainly, sketch.notes), *scale.said, *_measured(wishes, factor), *said,
             *ring.said)  # fmt: skip
    return _framed(segments, marks, wishes, notes)


def _scaled(sketch: Sketch, factor: float) -> Sketch:
    return sketch if factor == 1 else sketch.scaled(factor)


def _measured(wishes: Wishes, factor: float) -> Iterable[Said]:
    for wished, what in ((wishes.width, "wide"), (wishes.depth, "deep")):
        if wished is not None:
            yield Said(f"scaled by {factor:.6g}, so that it is {{}} {what}", (wished,))


def _bounds(segments: Sequence[Segment]) -> Box:
    return joined_bounds(each.bounds for each in segments)


def _checked(segments: tuple[Segment, ...]) -> tuple[Segment, ...]:
    """Return a ring anticlockwise.

    Raises:
        Refusal: if it holds no area, or crosses itself.
    """
    contour = Contour(segments)
    if contour.area < 0:
        contour = Contour(tuple(each.reversed() for each in reversed(segments)))
    if (where := crossing(contour)) is not None:
        raise Refusal(
            "line",
            f"the line crosses or touches itself {near(where, contour.bounds)}, at {{value}} from"
            " its middle",
            value=where - contour.middle, show=shown, mend="draw it so that it runs round once",
        )  # fmt: skip
    if contour.area < FLAT * contour.width * contour.height:
        raise Refusal(
            "line", "the line holds no area: it runs to and fro", mend="draw it once round the seat"
        )
    return contour.segments


def _framed(
    segments: tuple[Segment, ...],
    marks: Mapping[str, complex],
    wishes: Wishes,
    notes: tuple[Said, ...],
) -> Trace:
    """Return a ring as a contour with its corners and marks named, evened if that is wished."""
    middle = middle_of(segments)
    marks = {name: place - middle for name, place in marks.items()}
    contour = framed(segments, {})
    if wishes.symmetrical:
        contour, largest, mean = evened(contour)
        says = "made alike left and right: the halves lay up to {} apart, {} in the mean"
        notes = (*notes, Said(says, (largest, mean)))
    ring, places = cut_at(contour.segments, marks)
    corners = _corners(ring, math.radians(SOFTER * wishes.corner))
    contour = framed(ring, {**places, **{f"corner {i + 1}": at for i, at in enumerate(corners)}})
    return Trace(_numbered(contour), notes)


def _corners(segments: Sequence[Segment], sharpest: float) -> list[int]:
    """Return the vertices at which a ring turns on the spot."""
    turns = Contour(tuple(segments)).corners
    return [i for i, turn in enumerate(turns) if abs(turn) > sharpest]


def _numbered(contour: Contour) -> Contour:
    """Return a contour whose corners are numbered anticlockwise from the back."""
    corners = (name for name in contour.joints if is_corner(name))
    order = sorted(corners, key=lambda name: contour.joints[name])
    names = {name: f"corner {i}" for i, name in enumerate(order, 1)}
    joints = {names.get(name, name): index for name, index in contour.joints.items()}
    return Contour(contour.segments, joints)
