"""How far the points of a trace stray from a smooth line, told from the points themselves.

In windows of growing length the points are held against the best curve of the fourth degree. What
is left of a smooth outline grows with the fifth power of the window; wobble stays the same once a
window holds a few of its waves. Its size is taken where growing stops.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from patternmaker.tracing.thinning import Floats, Points

LONGEST = 60.0  # mm; the waves of a hand that traces are shorter
SHARE = 1 / 16  # of the outline: a longer window holds more shape than wobble
FEWEST, MOST = 9, 48  # points that are held against a curve of five coefficients
WINDOWS = 400
LARGER = 1.5  # each window than the one before it
STEADY = 1.3  # times what was left before: smooth outlines leave 7.6 times as much, corners 1.5
BENT = math.radians(60)  # a window in which the line turns more tells nothing
FEW = 48  # points of an outline; fewer tell nothing of wobble
KINK = math.radians(25)  # at one point: where windows are a large part of the outline, a corner
QUIET = 0.15  # of the windows; the quiet ones hold no corners, but wobble all the same


class Wobble(NamedTuple):
    """How far points stray: ``size`` mm (root mean square), alike within ``reach`` mm."""

    size: float
    reach: float


def wobble(at: Points, along: Floats, *, closed: bool) -> Wobble:
    """Return how far a string of points strays from a smooth line."""
    import numpy as np

    step = float(np.median(np.diff(along)))
    found = Wobble(0.0, step)
    before = math.inf
    if len(at) < FEW:
        return found
    longest = min(LONGEST, SHARE * float(along[-1])) / step
    count = float(FEWEST)
    while count <= max(longest, FEWEST):
        left = _left_over(at, round(count), closed=closed, kinks=count <= longest)
        if left is not None:
            quiet, usual = left
            if math.isinf(before):
                found = Wobble(usual, step)
            elif quiet < STEADY * before and usual > found.size:
                reach = step if usual < 2 * found.size and found.reach == step else count * step / 2
                found = Wobble(usual, reach)
            before = quiet
        count *= LARGER
    return found


def _left_over(at: Points, count: int, *, closed: bool, kinks: bool) -> tuple[float, float] | None:
    """Return what quiet windows of ``count`` points leave, and what usual ones leave, in mm.

    Args:
        at: the points.
        count: of points in a window.
        closed: whether the last point is followed by the first.
        kinks: whether windows count in which the line turns sharply at a single point.
    """
    import numpy as np

    size = len(at)
    begins = np.linspace(0, size if closed else size - count, WINDOWS, endpoint=not closed)
    begins = np.unique(begins.astype(np.int64))
    picks = np.unique(np.linspace(0, count - 1, min(count, MOST)).round().astype(np.int64))
    windows = at[(begins[:, None] + picks) % size]
    windows = windows[_gentle(windows)]
    if not kinks:
        steps = np.diff(windows, axis=1)
        windows = windows[(np.abs(np.angle(steps[:, 1:] / steps[:, :-1])) < KINK).all(axis=1)]
    if len(windows) < 0.2 * len(begins):
        return None
    rest = _strays(windows)
    quiet = float(np.quantile(rest, QUIET))
    return quiet, min(float(np.median(rest)), 2 * quiet)


def _gentle(windows: Points) -> NDArray[np.bool_]:
    """Return which windows turn by so little that a curve over their chord can follow them."""
    import numpy as np

    third = windows.shape[1] // 3
    before = windows[:, third] - windows[:, 0]
    after = windows[:, -1] - windows[:, -1 - third]
    turn = np.where((before != 0) & (after != 0), np.angle(after * before.conj()), np.pi)
    gentle: NDArray[np.bool_] = np.abs(turn) < BENT
    return gentle


def _strays(windows: Points) -> Floats:
    """Return the root mean square distance from the best curve in each window."""
    import numpy as np

    chords = windows[:, -1:] - windows[:, :1]
    turned = (windows - windows.mean(axis=1, keepdims=True)) * np.exp(-1j * np.angle(chords))
    x = turned.real / np.abs(turned.real).max(axis=1, keepdims=True)
    basis, _ = np.linalg.qr(x[:, :, None] ** np.arange(5))
    y = turned.imag[:, :, None]
    rest = y - basis @ (basis.transpose(0, 2, 1) @ y)
    strays: Floats = np.sqrt((rest**2).sum(axis=(1, 2)) / (windows.shape[1] - 5))
    return strays
