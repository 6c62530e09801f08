"""Equal sheets in columns and rows, each overlapping the ones beside it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple


class Line(NamedTuple):
    """Sheets along one axis: how much one of them shows, and how far two overlap."""

    shows: float
    lap: float

    @property
    def pitch(self) -> float:
        """From one sheet to the next."""
        return self.shows - self.lap

    def most(self, extent: float) -> int:
        """Return how many sheets in a row an extent can reach, wherever it lies."""
        return math.floor((extent + self.lap) / self.pitch) + 2


@dataclass(frozen=True)
class Sheeting:
    """Sheets that show so much across and up, overlapping by ``lap`` both ways.

    A point of the plane lies on one sheet, on two where these overlap, or on four in a corner. What
    lies on one sheet only, off its overlaps, needs that sheet.
    """

    across: float
    up: float
    lap: float

    @property
    def columns(self) -> Line:
        """The sheets of a row."""
        return Line(self.across, self.lap)

    @property
    def rows(self) -> Line:
        """The sheets of a column."""
        return Line(self.up, self.lap)

    @property
    def area(self) -> float:
        """What one sheet shows."""
        return self.across * self.up
