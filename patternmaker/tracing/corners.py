"""Where a drawn line turns on the spot.

Directions are taken along windows that are long enough to be sure of them in spite of wobble. On
clean points a corner may still stand between two points: where they are evenly spaced, it is
where the lines before and after it meet.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from patternmaker.tracing.closeness import CLOSEST, STRAYS
from patternmaker.tracing.curve import curve_along
from patternmaker.tracing.wobble import SHARE

if TYPE_CHECKING:
    from patternmaker.tracing.thinning import Floats, Nodes, Points
    from patternmaker.tracing.wobble import Wobble

SURE = 0.05  # radians (root mean square); how well the direction in a window is known
SLOPE = 12**0.5  # times size / length / root of the number of points: how well a slope is known
GAP = 1  # node on either side of a corner that may lie across it
SIDE = 4  # points on either side of a clean corner that tell how the line runs there
FAR = 2.0  # times as far apart as the windows are: lines that meet farther off do not meet
EVEN = 1.5  # times the shortest step: the longest where points are evenly spaced


class Corner(NamedTuple):
    """A corner: the node nearest to it, where it lies, and whether it lies at that node."""

    node: int
    at: complex
    exact: bool


class _Turns(NamedTuple):
    """How sharply a line turns at each node, told from a window on either side.

    Args:
        at: its nodes; of a closed line three times round, so that windows may run on.
        first: the index of the first node told of.
        turn: radians, node by node.
        ways: the direction of each window, by the index at which it begins.
        reach: of a window, in steps.
        gap: steps between a node and its windows.
    """

    at: Points
    first: int
    turn: Floats
    ways: Points
    reach: int
    gap: int

    def peaks(self, sharpest: float, apart: int) -> list[int]:
        """Return the indices at which the turn peaks, no two within ``apart``."""
        import numpy as np

        turns = np.abs(self.turn)
        count, taken = len(turns), np.zeros(len(turns), dtype=bool)
        found = []
        for i in sorted(np.flatnonzero(turns > sharpest).tolist(), key=lambda i: (-turns[i], i)):
            if not taken[i]:
                found.append(self.first + i)
                taken[np.arange(i - apart, i + apart + 1) % count] = True
        return sorted(found)

    def met(self, index: int) -> complex:
        """Return where the lines through the windows before and after a node meet."""
        begin, after, size = index - self.gap - self.reach, index + self.gap, self.reach + 1
        one, two = complex(self.at[begin : begin + size].mean()), complex(self.ways[begin])
        far, way = complex(self.at[after : after + size].mean()), complex(self.ways[after])
        slant = (two.conjugate() * way).imag
        spot = one + ((far - one).conjugate() * way).imag / (slant or 1e-300) * two
        here, wide = complex(self.at[index]), abs(far - one)
        return spot if abs(spot - here) <= FAR * wide else here


def corners(nodes: Nodes, stray: Wobble, sharpest: float, *, closed: bool) -> list[Corner]:
    """Return the corners of a line, in order.

    Args:
        nodes: of the line.
        stray: how far they stray from it.
        sharpest: radians; where the line turns more at once is a corner.
        closed: whether the last node is followed by the first.
    """
    count, thin = len(nodes.at), nodes.first[-1] >= len(nodes.at)
    reach = _window(nodes, stray)
    found: list[tuple[int, complex, bool]] = []
    if STRAYS * stray.size < CLOSEST and not thin:
        found = _clean(nodes.at, sharpest, closed=closed)
    elif count > 4 * (reach + GAP):
        turns = _turns(nodes.at, reach, GAP, closed=closed)
        found = [(i, turns.met(i), False) for i in turns.peaks(sharpest, reach + GAP)]
    return sorted(Corner(i % count, at, exact) for i, at, exact in found)


def _window(nodes: Nodes, stray: Wobble) -> int:
    """Return over how many steps a direction is taken so that it is known well enough."""
    import numpy as np

    step = float(np.median(np.diff(nodes.along)))
    needed = (stray.size * SLOPE * stray.reach**0.5 / SURE) ** (2 / 3)
    longest = max(1, int(SHARE * len(nodes.at)))
    return max(1, min(int(np.ceil(needed / step)), longest))


def _turns(at: Points, reach: int, gap: int, *, closed: bool) -> _Turns:
    import numpy as np

    ring = np.concatenate([at, at, at]) if closed else at
    ways = np.correlate(ring, np.arange(reach + 1) - reach / 2, mode="valid")
    ways /= np.maximum(np.abs(ways), 1e-300)
    side = reach + gap
    turn = np.angle(ways[side + gap :] * np.conj(ways[: len(ways) - side - gap]))
    if closed:
        turn = turn[len(at) - side :][: len(at)]
    return _Turns(ring, len(at) if closed else side, turn, ways, reach, gap)


def _clean(at: Points, sharpest: float, *, closed: bool) -> list[tuple[int, complex, bool]]:
    """Return the corners of clean points: at points, or between points evenly spaced."""
    near = _turns(at, 1, 0, closed=closed)
    exact = near.peaks(sharpest, 0)
    found: list[tuple[int, complex, bool]] = []
    if len(at) > 2 * SIDE:
        far = _turns(at, 1, GAP, closed=closed)
        peaks = far.peaks(sharpest, 1 + GAP)
        found = [(i, far.met(i), False) for i in peaks if _stands_between(near.at, i)]
    taken = {(i + off) % len(at) for i, _, _ in found for off in (-1, 0, 1)}
    return [*found, *((i, complex(near.at[i]), True) for i in exact if i % len(at) not in taken)]


def _stands_between(at: Points, index: int) -> bool:
    """Return whether smooth lines of evenly spaced points meet at a corner near a point."""
    import numpy as np

    before, after = at[max(0, index - SIDE) : index], at[index + 1 : index + 1 + SIDE]
    if len(before) < SIDE or len(after) < SIDE:
        return False
    steps = np.abs(np.diff(at[index - SIDE : index + SIDE + 1]))
    if steps.max() > EVEN * steps[[*range(SIDE - 1), *range(SIDE + 1, 2 * SIDE)]].min():
        return False
    sides = [curve_along(side) for side in (before, after)]
    fits = all(
        np.abs(curve.strays(side)).max() <= CLOSEST
        for curve, side in zip(sides, (before, after), strict=True)
    )
    return fits and min(abs(curve.strays(at[index : index + 1])[0]) for curve in sides) <= CLOSEST
