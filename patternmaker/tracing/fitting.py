"""A ring of knots that lies close to all points of a line.

Knots are tied where the longest arcs and lines meet, and settled to where their ring lies closest
to the points. Where a piece still strays too far a line is bent, and a biarc is made two.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.tracing.closeness import CLOSEST, STRAYS, Closeness
from patternmaker.tracing.curve import curve_along
from patternmaker.tracing.knots import Knots
from patternmaker.tracing.settling import settled
from patternmaker.tracing.strands import strand
from patternmaker.tracing.tying import Fit, natural_start, tied

if TYPE_CHECKING:
    from patternmaker.tracing.strands import Flags, Strand, Trail
    from patternmaker.tracing.thinning import Whole

ROUNDS = 12  # of halving
STRAYING = 0.8  # of the longest step between nodes: a piece that leaves them by more is lost
SHORT = 8  # nodes of a piece of which all may come to lie beside the next
PLENTY = 1000  # clean nodes
SETTLING, LAST = 8, 12  # moves in each round, and in the last
ENOUGH, FEWEST = 4, 2  # nodes of a piece that is made two readily, or for want of any other


def fitted_to(line: Trail, smooth: float) -> tuple[Fit, Strand]:
    """Return knots whose ring follows a line, and the nodes that it was fitted to.

    Args:
        line: with its stops.
        smooth: mm; the most by which a node may lie off the ring.
    """
    import numpy as np

    nodes = strand(line)
    close = Closeness.of(line.stray, float(np.median(np.diff(nodes.along))), smooth)
    if not len(nodes.stops):
        nodes = nodes.begun_at(natural_start(nodes.at, close), line.length)
    fit = tied(nodes, close, closed=line.closed)
    return _halved(fit, nodes, close.loosened()), nodes


def _halved(fit: Fit, nodes: Strand, close: Closeness) -> Fit:
    counted = nodes.counted.nonzero()[0]
    spare = STRAYS * close.size < CLOSEST
    for _ in range(ROUNDS):
        fit = _settled(fit, nodes, _spared(fit, counted) if spare else counted, SETTLING)
        far = _strays(fit, nodes, counted, close)
        if not far:
            break
        better = _mended(fit, nodes, far, ENOUGH) or _mended(fit, nodes, far, FEWEST)
        if not better:
            break
        fit = better._replace(knots=better.knots.calmed())
    fit = _settled(fit, nodes, _spared(fit, counted) if spare else counted, LAST)
    return _found_again(fit, nodes, close)


def _found_again(fit: Fit, nodes: Strand, close: Closeness) -> Fit:
    """Return the fit with lines from node to node for pieces that were lost for want of nodes."""
    places = nodes.at[fit.begin % len(nodes.at)]
    while True:
        lost = (fit.knots.wild() | _rambles(fit, nodes, close)) & ~fit.knots.straight
        if not lost.any():
            return fit
        fit = fit._replace(knots=fit.knots.straightened(lost, places))


def _spared(fit: Fit, counted: Whole) -> Whole:
    """Return every second, third ... of many clean nodes: they all say the same."""
    import numpy as np

    fewest = int(np.diff(fit.begin).min(initial=len(counted)))
    return counted[:: max(1, min(len(counted) // PLENTY, fewest // ENOUGH))]


def _mended(fit: Fit, nodes: Strand, far: list[int], fewest: int) -> Fit | None:
    """Return the fit with the pieces that stray bent or made two, or None if none can be."""
    sizes = [b - a for a, b in pairwise([*fit.begin.tolist(), len(nodes.at)])]
    able = [k for k in far if fit.knots.straight[k] or sizes[k] >= fewest]
    for k in reversed(able):
        fit = _bent(fit, k) if fit.knots.straight[k] else _split(fit, nodes, k)
    return fit if able else None


def _strays(fit: Fit, nodes: Strand, counted: Whole, close: Closeness) -> list[int]:
    """Return the pieces that do not lie close enough to their nodes."""
    import numpy as np

    piece = pieces(fit, len(nodes.at))[counted]
    rest = fit.knots.strays(nodes.at[counted], piece)
    begins = np.searchsorted(piece, np.arange(len(fit.begin) + 1))
    parts = [rest[begin:end] for begin, end in pairwise(begins)]
    astray = fit.knots.wild() | _rambles(fit, nodes, close)
    return [k for k, part in enumerate(parts) if astray[k] or not close.holds(part)]


def _rambles(fit: Fit, nodes: Strand, close: Closeness) -> Flags:
    """Return which pieces go where no node is near."""
    import numpy as np

    ring = np.append(nodes.at, nodes.at[0])
    steps = np.abs(np.diff(ring))
    found = np.zeros(len(fit.begin), dtype=bool)
    spots = fit.knots.spots()
    for k, (begin, end) in enumerate(pairwise([*fit.begin.tolist(), len(nodes.at)])):
        if end > begin:
            near = np.abs(spots[k][:, None] - ring[begin : end + 1]).min(axis=1).max()
            found[k] = near > close.most + STRAYING * steps[begin:end].max()
    return found


def pieces(fit: Fit, count: int) -> Whole:
    """Return the piece that each node belongs to."""
    import numpy as np

    found: Whole = np.searchsorted(fit.begin, np.arange(count), side="right") - 1
    return found


def _settled(fit: Fit, nodes: Strand, counted: Whole, rounds: int) -> Fit:
    piece = pieces(fit, len(nodes.at))[counted]
    knots = settled(fit.knots, nodes.at[counted], piece, rounds)
    return _owned(fit._replace(knots=knots), nodes)


def _owned(fit: Fit, nodes: Strand) -> Fit:
    """Return the fit with each node given to the piece beside which it lies now."""
    import numpy as np

    begin = fit.begin.copy()
    ends = [*fit.begin.tolist(), len(nodes.at)]
    ways, _ = fit.knots.ways()
    for k in range(1, len(begin)):
        if fit.knots.sharp[k]:
            continue
        before, here, after = int(begin[k - 1]), ends[k], ends[k + 1]
        low = before + 1 if here - before <= SHORT else (before + here + 1) // 2
        high = after - 1 if after - here <= SHORT else (here + after) // 2
        if high < low:
            continue
        ahead = (nodes.at[low:high] - fit.knots.at[k]) * np.conj(ways[k])
        begin[k] = low + int((ahead.real < 0).sum())
    return fit._replace(begin=begin)


def _bent(fit: Fit, k: int) -> Fit:
    """Return the fit with the line from a knot made a biarc."""
    import numpy as np

    knots, there = fit.knots, (k + 1) % len(fit.begin)
    leave, arrive = (np.angle(each) for each in knots.ways())
    out, into = knots.leave.copy(), knots.arrive.copy()
    straight, sharp, blunt = knots.straight.copy(), knots.sharp.copy(), fit.blunt.copy()
    straight[k] = False
    for knot, angle in ((k, leave[k]), (there, arrive[k])):
        sharp[knot] &= not blunt[knot]
        blunt[knot] = False
        if not sharp[knot]:
            out[knot] = into[knot] = angle
    out[k], into[there] = leave[k], arrive[k]
    knots = knots._replace(leave=out, arrive=into, straight=straight, sharp=sharp)
    return fit._replace(knots=knots, blunt=blunt)


def _split(fit: Fit, nodes: Strand, k: int) -> Fit:
    """Return the fit with a biarc made two."""
    import numpy as np

    begin, end = [*fit.begin.tolist(), len(nodes.at)][k : k + 2]
    middle, reach = (begin + end) // 2, max(1, (end - begin) // 4)
    curve = curve_along(np.append(nodes.at, nodes.at[0])[middle - reach : middle + reach + 1])
    at, way = curve.nearest(complex(nodes.at[middle]))
    angle = float(np.angle(way))
    new = (at, angle, angle, False, False, False)
    knots = Knots(*(
        np.insert(old, k + 1, value) for old, value in zip(fit.knots, new, strict=True)
    ))  # fmt: skip
    begins, blunt = np.insert(fit.begin, k + 1, middle), np.insert(fit.blunt, k + 1, 0)
    return Fit(knots, begins, blunt)
