"""Whether a curve lies close enough to points that stray from it at random.

One point may stray far, but the mean of many that follow each other must not: then the curve runs
beside the line that was drawn.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from patternmaker.tracing.thinning import Floats
    from patternmaker.tracing.wobble import Wobble

CLOSEST = 0.002  # mm; clean points are followed as close as this
STRAYS = 4.0  # times the root mean square: as far as the farthest of thousands strays
LOOSER = 1.25  # times: what a found curve may stray where it was sought more closely
LONGER = 4  # times: each run of points whose mean is taken, than the one before it
ALIKE = 1 / 8  # of the reach of a wobble: points farther apart stray each on its own


class Closeness(NamedTuple):
    """How close to points a curve must lie.

    Args:
        most: mm; as far as any point may lie from it.
        size: mm; how far points stray, root mean square.
        alike: how many points that follow each other stray alike.
    """

    most: float
    size: float
    alike: float

    @classmethod
    def of(cls, stray: Wobble, step: float, smooth: float) -> Closeness:
        """Return what the wobble of points allows; loosened, never more than ``smooth``."""
        most = min(smooth / LOOSER, max(CLOSEST, STRAYS * stray.size))
        return cls(most, stray.size, max(1.0, ALIKE * stray.reach / step))

    def loosened(self) -> Closeness:
        """Return what is close enough for a curve that has been found, not sought."""
        return self._replace(most=LOOSER * self.most, size=LOOSER * self.size)

    def holds(self, rest: Floats) -> bool:
        """Return whether points that follow each other lie close enough, by their distances."""
        import numpy as np

        if len(rest) == 0:
            return True
        if np.abs(rest).max() > self.most:
            return False
        run = math.ceil(LONGER * self.alike)
        sums = np.cumsum(rest)
        while run < len(rest):
            means = np.abs(sums[run:] - sums[:-run]) / run
            if means.max() > max(CLOSEST, STRAYS * self.size * math.sqrt(self.alike / run)):
                return False
            run *= LONGER
        return True
