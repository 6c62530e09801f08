"""Where an allowance must be clipped to follow its seam.

An allowance that turns outward round a seam of radius R is (R + a) / R times as long at its edge.
A clip opens by its share of that: spaced w apart, by w a / R. All figures are common practice,
no source; the arithmetic is plain.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from patternmaker.geometry.segments import Arc
from patternmaker.units import MM_PER_INCH

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.contour import Contour

FOLLOWS = 6.0  # allowances; a wider radius is followed without a clip
OPENS = MM_PER_INCH / 8  # as far as each clip may open
NEAREST, FURTHEST = MM_PER_INCH / 4, MM_PER_INCH  # between clips
SHORT_OF_SEAM = MM_PER_INCH / 8  # where a clip ends


def clips(contour: Contour, allowance: float, *, convex: bool) -> tuple[float, ...]:
    """Return the places along a seam at which the allowance is clipped.

    Args:
        contour: the sew line of the panel.
        allowance: the seam allowance, mm.
        convex: clips for the partner's allowance where the panel turns outward (True), or for the
            panel's own where it turns inward.
    """
    sign = 1 if convex else -1
    return tuple(
        at
        for begin, end, radius in _tight_runs(contour, allowance, sign)
        for at in _spaced(begin, end, radius, allowance)
    )


def _tight_runs(
    contour: Contour, allowance: float, sign: int
) -> Iterator[tuple[float, float, float]]:
    """Yield begin, end and least radius of each run that turns too tightly; corners as points."""
    run: tuple[float, float, float] | None = None
    for i, segment in enumerate(contour.segments):
        begin, end = contour.stops[i], contour.stops[i + 1]
        if contour.corners[i] * sign > 0:
            yield begin, begin, 0.0
        if isinstance(segment, Arc) and segment.sweep * sign > 0 and (
            segment.radius < FOLLOWS * allowance
        ):  # fmt: skip
            start, _, radius = run or (begin, begin, math.inf)
            run = start, end, min(radius, segment.radius)
        elif run:
            yield run
            run = None
    if run:
        yield run


def _spaced(begin: float, end: float, radius: float, allowance: float) -> Iterator[float]:
    """Yield places in a run: an even number, so that none falls on its middle where a notch stands.

    A run too short for two clips takes one, as a corner does.
    """
    length = end - begin
    spacing = min(FURTHEST, max(NEAREST, OPENS * radius / allowance))
    wanted = math.ceil(length / (2 * spacing))
    count = 2 * min(wanted, math.floor(length / (2 * NEAREST))) or 1
    for i in range(count):
        yield begin + length * (i + 0.5) / count
