"""Lengths along a string of points whose wobble may exceed their spacing, and fewer points.

A string that goes to and fro is longer than the line that it follows; the means of a few points at
a time run along that line.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Points = NDArray[np.complex128]
    Floats = NDArray[np.float64]
    Whole = NDArray[np.int64]

BINS = 4000  # to a string of very many points: on a seat, three to a millimetre
FEWEST = 500  # means that still tell how long a line is
NOTHING = 1e-9  # mm; a shorter step is none
SHRUNK = 0.97  # of its length: what a line keeps if it does not go to and fro


class Nodes(NamedTuple):
    """What a line is fitted to: points, or means of points that follow each other.

    Args:
        at: where they lie.
        along: the length at each.
        first: the index of the first point that is in each.
    """

    at: Points
    along: Floats
    first: Whole


def lengths(points: Points, *, closed: bool) -> Floats:
    """Return the length along the line at each point; of a closed one also at its end.

    Args:
        points: at least two, no two that follow each other the same.
        closed: whether the line comes back from the last point to the first.
    """
    import numpy as np

    count, run = len(points), 1
    while count // (2 * run) >= FEWEST and (
        _length(_means(points, 2 * run)) < SHRUNK * _length(_means(points, run))
    ):
        run *= 2
    means = _means(points, run)
    middles = np.minimum(np.arange(len(means)) * run + (run - 1) / 2, count - 1)
    if closed:
        means = np.concatenate([means[-1:], means, means[:1]])
        middles = np.concatenate([middles[-1:] - count, middles, middles[:1] + count])
    steps = np.concatenate([[0.0], np.cumsum(np.abs(np.diff(means)))])
    at = np.interp(np.arange(count + closed), middles, steps)
    found: Floats = at - at[0]
    return found


def _means(points: Points, run: int) -> Points:
    import numpy as np

    if run == 1:
        return points
    begins = np.arange(0, len(points), run)
    sums: Points = np.add.reduceat(points, begins)
    return sums / np.diff([*begins, len(points)])


def _length(points: Points) -> float:
    import numpy as np

    return float(np.abs(np.diff(points)).sum())


def bin_width(count: int, length: float) -> float:
    """Return how long a bin is for so many points on a line; 0 if every point is taken."""
    return length / BINS if count > 2 * BINS else 0.0


def thinned(points: Points, along: Floats, wide: float) -> Nodes:
    """Return the means of points, bin by bin.

    Args:
        points: in order.
        along: the length at each.
        wide: the length of a bin; 0 keeps every point.
    """
    import numpy as np

    if not wide or len(points) < 3:
        return Nodes(points, along, np.arange(len(points)))
    count = max(1, round(float(along[-1] - along[0]) / wide))
    edges = np.linspace(along[0], along[-1], count, endpoint=False)
    bins = np.searchsorted(edges, along, side="right")
    first = np.flatnonzero(np.diff(bins, prepend=-1))
    counts = np.diff([*first, len(points)])
    sums: Points = np.add.reduceat(points, first)
    mean = np.add.reduceat(along, first) / counts
    return Nodes(sums / counts, mean, first)


def unbent(nodes: Nodes, along: Floats) -> Nodes:
    """Return means freed from the bend of the line within each bin, which pulls them inward.

    Args:
        nodes: means of points on a line without a corner.
        along: the length at each point.
    """
    import numpy as np

    counts = np.diff([*nodes.first, len(along)])
    away = (along - np.repeat(nodes.along, counts)) ** 2
    square = np.add.reduceat(away, nodes.first) / counts
    return nodes._replace(at=nodes.at - _bend(nodes.at, nodes.along) * square / 2)


def _bend(at: Points, along: Floats) -> Points:
    """Return the second derivative by length at each node, from it and its two neighbours."""
    import numpy as np

    if len(at) < 3:
        return np.zeros_like(at)
    steps = np.maximum(np.diff(along), NOTHING)
    slopes = np.diff(at) / steps
    bends = 2 * np.diff(slopes) / (steps[1:] + steps[:-1])
    return np.concatenate([bends[:1], bends, bends[-1:]])
