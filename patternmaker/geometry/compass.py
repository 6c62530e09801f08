"""Striking a contour as a draughtsman does: from point to point, by rule and compass."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.geometry.contour import Contour
from patternmaker.geometry.framing import Ring
from patternmaker.geometry.segments import Arc, Line

if TYPE_CHECKING:
    from patternmaker.geometry.segments import Segment

NOTHING = 1e-6  # mm; a shorter move draws nothing: its direction would be all rounding


class Compass:
    """Strikes edges one after another and names the stations between them.

    Moves of no length draw nothing, so a corner of radius 0 or a side of length 0 needs no case
    of its own.
    """

    def __init__(self, start: complex) -> None:
        self.at = start
        self._edges: list[Segment] = []
        self._joints: dict[str, int] = {}

    def joint(self, name: str) -> Compass:
        """Name the place reached so far."""
        self._joints[name] = len(self._edges)
        return self

    def line(self, end: complex) -> Compass:
        """Rule a line to ``end``."""
        if abs(end - self.at) > NOTHING:
            self._edges.append(Line(self.at, end))
            self.at = end
        return self

    def arc(self, centre: complex, sweep: float) -> Compass:
        """Strike an arc about ``centre`` through ``sweep`` radians (left is positive)."""
        if abs(self.at - centre) * abs(sweep) > NOTHING:
            self._edges.append(Arc(centre, self.at, sweep))
            self.at = self._edges[-1].end
        return self

    def ring(self) -> Ring:
        """Return what was struck as a ring; it must end where it began."""
        count = len(self._edges)
        joints = {name: index % count for name, index in self._joints.items()}
        return Ring(tuple(self._edges), joints)

    def closed(self) -> Contour:
        """Return the contour; what was struck last must end where the first edge began."""
        return Contour(*self.ring())
