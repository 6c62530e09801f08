"""A drawn line as lines and tangent arcs, its wobble averaged and its corners kept."""

from __future__ import annotations

import cmath
import math
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.errors import Refusal
from patternmaker.geometry.biarcs import arc_between
from patternmaker.geometry.segments import Line
from patternmaker.tracing.closeness import CLOSEST, STRAYS
from patternmaker.tracing.fitting import fitted_to, pieces
from patternmaker.tracing.said import shown
from patternmaker.tracing.strands import Stop, trail

if TYPE_CHECKING:
    from patternmaker.geometry.segments import Segment
    from patternmaker.tracing.strands import Flags, Strand, Trail
    from patternmaker.tracing.thinning import Floats, Points
    from patternmaker.tracing.tying import Fit

SPECK = 1e-7  # mm; a shorter segment has no direction
TRIES = 12  # fits, each with other corners than the one before it
MOST_CLOSELY = 3000  # points: so many are each measured to the lines and arcs themselves
MOST_FAR = 100  # stretches of points too far off that are mended; more is wobble
SOFTER = 0.8  # of the corner asked for: a corner that comes out less sharp is none
NEAR = 3.0  # nodes about a corner that must fit it
FARTHEST = 6.0  # times the usual distance of a point: as far as the farthest of thousands strays
LEAST_ROUNDED, SHARPEST_ROUNDED = 1e-9, 2.7  # radians; less is straight, more has no room
MOST_ROUNDED = 0.45  # of a line: as much as the rounding of a blunt end may take


class Smoothed(NamedTuple):
    """A smoothed line.

    Args:
        segments: its lines and arcs; a closed line's last ends where the first begins.
        largest: mm; how far the farthest point lies from it.
        usual: mm; root mean square of the distances.
    """

    segments: tuple[Segment, ...]
    largest: float
    usual: float


def smoothed(points: Points, smooth: float, corner: float, *, closed: bool = True) -> Smoothed:
    """Return lines and tangent arcs along a string of points.

    Args:
        points: at least three if closed, two if open; no two that follow each other the same.
        smooth: mm; the most by which a point may lie off the result.
        corner: degrees; where the line turns more on the spot is a corner and is kept.
        closed: whether it comes back from the last point to the first; an open one keeps its ends.

    Raises:
        Refusal: if some points can't be followed as close as that.
    """
    sharpest = math.radians(corner)
    line = trail(points, sharpest, closed=closed)
    for _ in range(TRIES):
        fit, nodes = fitted_to(line, smooth)
        segments = _segments(fit, nodes, smooth, closed=closed)
        rest = _distances(line, fit, nodes, segments, smooth)
        held = _held(line, fit, nodes, rest, sharpest)
        if len(held) < len(line.stops):
            line = line.cut_at(held)
        elif far := _farthest(line, rest, smooth):
            if len(far) > MOST_FAR or {*far} <= {*line.stops}:
                break
            line = line.cut_at([*line.stops, *far])
        else:
            flat = tuple(each for part in segments for each in part)
            return Smoothed(flat, float(rest.max()), float((rest**2).mean() ** 0.5))
    worst = int(rest.argmax())
    raise Refusal(
        "smooth", "the point at {value} stands farther than {limit} off the smoothed line",
        value=complex(line.points[worst]), limit=float(smooth), show=shown,
        mend="allow more, or take stray points out of the file",
    )  # fmt: skip


def _distances(
    line: Trail, fit: Fit, nodes: Strand, segments: list[tuple[Segment, ...]], smooth: float
) -> Floats:
    """Return how far each point lies from the pieces about it."""
    import numpy as np

    along = line.along[: len(line.points)]
    along = np.where(along < nodes.along[0] - 1e-9, along + line.length, along)
    piece = (np.searchsorted(nodes.along, along, side="right") - 1).clip(0)
    piece = pieces(fit, len(nodes.at))[piece]
    found = np.abs(fit.knots.strays(line.points, piece))
    closely = (found > smooth / 2) | (len(found) <= MOST_CLOSELY)
    for stop in line.stops:
        closely |= _near(line, nodes, stop)
    count = len(segments)
    for i in closely.nonzero()[0].tolist():
        point, k = complex(line.points[i]), int(piece[i])
        near = (each for j in (k - 1, k, k + 1) for each in segments[j % count])
        found[i] = min((each.distance(point) for each in near), default=found[i])
    return found


def _near(line: Trail, nodes: Strand, stop: Stop) -> Flags:
    """Return which points lie near a stop."""
    import numpy as np

    wide = NEAR * float(np.median(np.diff(nodes.along)))
    away = np.abs(line.along[: len(line.points)] - line.along[stop.place])
    near: Flags = np.minimum(away, line.length - away if line.closed else away) < wide
    return near


def _held(line: Trail, fit: Fit, nodes: Strand, rest: Floats, sharpest: float) -> list[Stop]:
    """Return the stops but those corners between points that turn out to be none."""
    import numpy as np

    leave, arrive = fit.knots.ways()
    turn = np.abs(np.angle(leave * np.conj(np.roll(arrive, 1))))
    knots = np.flatnonzero(np.isin(fit.begin, nodes.stops))
    most = max(CLOSEST, STRAYS * line.stray.size) + FARTHEST * float(np.median(rest))
    return [
        stop
        for stop, knot in zip(line.stops, knots, strict=True)
        if stop.exact
        or (turn[knot] >= SOFTER * sharpest and rest[_near(line, nodes, stop)].max() <= most)
    ]


def _segments(fit: Fit, nodes: Strand, smooth: float, *, closed: bool) -> list[tuple[Segment, ...]]:
    """Return the lines and arcs of each piece, with blunt ends of lines rounded."""
    found = fit.knots.segments()
    segments = [tuple(each for each in piece if each.length > SPECK) for piece in found]
    counts = [*(fit.begin[1:] - fit.begin[:-1]).tolist(), len(nodes.at) - int(fit.begin[-1])]
    for k in fit.blunt.nonzero()[0].tolist():
        dense = counts[k - 1] > 1 and counts[k] > 1
        off = min(smooth, CLOSEST) if dense else smooth
        if segments[k - 1] and segments[k]:
            segments[k - 1], segments[k] = _rounded(segments[k - 1], segments[k], off)
    return segments if closed else segments[:-1]


def _rounded(
    before: tuple[Segment, ...], after: tuple[Segment, ...], off: float
) -> tuple[tuple[Segment, ...], tuple[Segment, ...]]:
    """Return two lines with an arc between them that stays within ``off`` mm of where they meet."""
    one, two = before[-1], after[0]
    way, on = one.tangent(), two.tangent()
    turn = abs(cmath.phase(on / way))
    if not LEAST_ROUNDED < turn < SHARPEST_ROUNDED:
        return before, after
    reach = off / math.tan(turn / 4)
    reach = min(reach, MOST_ROUNDED * one.length, MOST_ROUNDED * two.length)
    begin, end = one.end - reach * way, two.start + reach * on
    arc = arc_between(begin, way, end)
    return (*before[:-1], Line(one.start, begin), arc), (Line(end, two.end), *after[1:])


def _farthest(line: Trail, rest: Floats, smooth: float) -> list[Stop]:
    """Return a stop at the farthest point of each stretch that lies too far off."""
    import numpy as np

    far = rest > smooth + CLOSEST
    bounds = np.flatnonzero(np.diff(far.astype(np.int8), prepend=0, append=0))
    peaks = [b + int(rest[b:e].argmax()) for b, e in zip(bounds[::2], bounds[1::2], strict=True)]
    return [Stop(int(i), complex(line.points[i]), exact=True) for i in peaks]
