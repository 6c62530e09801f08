"""The first knots along a line: where the longest arcs and lines that follow it meet."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.tracing.knots import Knots
from patternmaker.tracing.runs import Run, runs

if TYPE_CHECKING:
    from patternmaker.tracing.closeness import Closeness
    from patternmaker.tracing.strands import Strand
    from patternmaker.tracing.thinning import Points, Whole

LONG_STEP = 3.0  # times the usual: a step so long is a side drawn by its ends


class Fit(NamedTuple):
    """Knots along a strand.

    Args:
        knots: of the ring.
        begin: the node at which each piece begins.
        blunt: whether each knot stands between two lines but is no corner.
    """

    knots: Knots
    begin: Whole
    blunt: Whole


class _Tie(NamedTuple):
    """A knot: its place, the directions in which the ring leaves it and arrives, and its kind."""

    at: complex
    leave: complex
    arrive: complex
    straight: bool
    sharp: bool
    blunt: bool


def tied(nodes: Strand, close: Closeness, *, closed: bool) -> Fit:
    """Return a knot at the beginning of each arc or line along a strand."""
    import numpy as np

    found = _runs(nodes, close, closed=closed)
    if not closed:
        last = found[-1].end
        found.append(Run(last, last, found[-1].curve, straight=True))
    stops = set(nodes.stops.tolist())
    ties = [
        _tie(before, run, complex(nodes.at[run.begin]), sharp=run.begin in stops)
        for before, run in pairwise([found[-1], *found])
    ]
    at, leave, arrive, straight, sharp, blunt = (np.array(each) for each in zip(*ties, strict=True))
    begins = np.array([each.begin for each in found])
    held = sharp & nodes.counted[begins.clip(max=len(nodes.at) - 1)]
    knots = Knots(at, np.angle(leave), np.angle(arrive), straight, sharp | blunt, held)
    return Fit(knots.calmed(), begins, blunt)


def _tie(before: Run, run: Run, node: complex, *, sharp: bool) -> _Tie:
    """Return the knot between two runs, near a node."""
    (one, arrive), (two, leave) = before.curve.nearest(node), run.curve.nearest(node)
    blunt = not sharp and before.straight and run.straight
    if sharp or blunt:
        return _Tie(node, leave, arrive, run.straight, sharp, blunt)
    if run.straight or before.straight:
        return _Tie(two if run.straight else one, leave, arrive, run.straight, sharp, blunt)
    way = leave + arrive
    return _Tie((one + two) / 2, way, way, run.straight, sharp, blunt)


def _runs(nodes: Strand, close: Closeness, *, closed: bool) -> list[Run]:
    """Return the runs along a strand, from stop to stop.

    A stop that was not drawn is part of the last run before it, wherever it lies.
    """
    import numpy as np

    ring, counted = np.append(nodes.at, nodes.at[0]), np.append(nodes.counted, nodes.counted[0])
    ends = [*nodes.stops.tolist(), len(nodes.at)] if len(nodes.stops) else [0, len(nodes.at)]
    found: list[Run] = []
    for begin, end in pairwise(ends if closed else ends[:-1]):
        first, last = begin + (not counted[begin]), end - (not counted[end])
        if last - first < 2:
            first, last = begin, end
        part = runs(ring[first : last + 1], close)
        part = [each._replace(begin=each.begin + first, end=each.end + first) for each in part]
        part[0] = part[0]._replace(begin=begin)
        part[-1] = part[-1]._replace(end=end)
        found += part
    return found


def natural_start(at: Points, close: Closeness) -> int:
    """Return a node of a closed strand without corners at which a run begins of itself."""
    import numpy as np

    steps = np.abs(np.roll(at, -1) - at)
    if steps.max() > LONG_STEP * np.median(steps):
        return int(steps.argmax())
    return runs(np.append(at, at[0]), close)[0].end % len(at)
