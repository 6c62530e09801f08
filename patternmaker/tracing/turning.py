"""A drawing turned so that the seat's back is up, and mirrored if it was traced from below."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from patternmaker.geometry.framing import flipped

if TYPE_CHECKING:
    from patternmaker.geometry.segments import Segment
    from patternmaker.tracing.sketch import Chain, Sketch
    from patternmaker.tracing.wishes import Wishes

UP = {"up": 1 + 0j, "down": -1 + 0j, "left": -1j, "right": 1j}  # the turn that brings it up


def righted(sketch: Sketch, wishes: Wishes) -> Sketch:
    """Return a sketch as the seat stands: its back up, its show side towards the reader."""
    turn, over = UP[wishes.back], wishes.turned_over
    if turn == 1 and not over:
        return sketch
    return replace(
        sketch,
        chains=tuple(_righted(chain, turn, over=over) for chain in sketch.chains),
        marks={name: _moved(place, turn, over=over) for name, place in sketch.marks.items()},
    )


def _righted(chain: Chain, turn: complex, *, over: bool) -> Chain:
    return replace(
        chain,
        segments=tuple(_turned(each, turn, over=over) for each in chain.segments),
        points=tuple([_moved(point, turn, over=over) for point in chain.points]),
    )


def _moved(place: complex, turn: complex, *, over: bool) -> complex:
    return -(place * turn).conjugate() if over else place * turn


def _turned(segment: Segment, turn: complex, *, over: bool) -> Segment:
    turned = segment.mapped(turn, 0)
    return flipped(turned) if over else turned
