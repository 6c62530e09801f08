"""One panel of a fluted top, widened in its middle to round over its padding."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.facts import HAIR
from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.segments import radius_over
from patternmaker.geometry.slicing import Chain, Link
from patternmaker.pattern.piece import Edge
from patternmaker.pattern.stations import Station

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.geometry.slicing import Slice

ALONG, ACROSS = "front to back", "across"
TURNED = {ALONG: 1 + 0j, ACROSS: -1j}  # what turns the panels upright, the first to the left
ENDS = {ALONG: ("back", "front"), ACROSS: ("left", "right")}  # of a seam, its upper one first
Mark = tuple[str, float]
"""A notch of a seam between panels: name, and length from its upper end."""

SAME = 5e-4  # mm, half a hair; places on a seam that lie closer are the same


def arc_over(chord: float, rise: float) -> float:
    """Return the length of the arc that rises over a chord.

    It is its radius times its angle (Machinery's Handbook, p. 79).

    >>> round(arc_over(21, 6), 4)
    25.3084
    """
    if rise < HAIR:
        return chord
    return radius_over(chord / 2, rise) * 4 * math.atan2(2 * rise, chord)


@dataclass(frozen=True)
class Flute:
    """One panel: its number from the left (or from the front), and its place in the top.

    Args:
        name: what it is called.
        slice_: its flat piece of the top, turned upright.
        seams: the number of the seam at each of its links, in their order.
        bulge: how far it stands out over each of those, in the middle.
        run: which way it runs.
    """

    name: str
    slice_: Slice
    seams: tuple[int, ...]
    bulge: float
    run: str

    @property
    def turned(self) -> complex:
        """What turned the top so that the panels stand upright, the first to the left."""
        return TURNED[self.run]

    @cached_property
    def paths(self) -> tuple[Path, ...]:
        """Its sides as they are sewn, in the order of its slice's."""
        rise, back = self.bulge, self.turned.conjugate()
        return tuple(
            (side.bulged(rise) if isinstance(side, Link) else side.path).mapped(back)
            for side in self.slice_.sides
        )

    @cached_property
    def sew(self) -> Contour:
        """Its sew line."""
        return Contour(tuple(each for path in self.paths for each in path.segments))

    @cached_property
    def begins(self) -> tuple[float, ...]:
        """How far round its sew line each side begins."""
        lengths = [path.length for path in self.paths]
        return tuple(math.fsum(lengths[:i]) for i in range(len(lengths)))

    @property
    def chains(self) -> tuple[tuple[Chain, float], ...]:
        """Its parts of the top's edge, each with its place on its own sew line."""
        sides = zip(self.slice_.sides, self.begins, strict=True)
        return tuple((side, at) for side, at in sides if isinstance(side, Chain))

    @property
    def links(self) -> tuple[tuple[int, Path], ...]:
        """Its sides in the seams with its neighbours, each with the number of its seam."""
        sides = zip(self.slice_.sides, self.paths, strict=True)
        found = (path for side, path in sides if isinstance(side, Link))
        return tuple(zip(self.seams, found, strict=True))

    def placed(self, along: float, whole: float) -> float | None:
        """Return where on its sew line a place on the top's edge lies, inside one of its chains."""
        for chain, begin in self.chains:
            x = (along - chain.begin) % whole
            if SAME < x < chain.path.length - SAME:
                return begin + x
        return None

    def edge(self, number: int, path: Path, marks: Iterable[Mark]) -> Edge:
        """Return its side in a seam, walked from the back (or from the left)."""
        upper, lower = ENDS[self.run]
        walked = path if self._is_walked(path) else path.reversed()
        return Edge(self.name, f"seam {number}", walked,
                    ((upper, 0.0), *marks, (lower, path.length)))  # fmt: skip

    def on_link(self, number: int, marks: Iterable[Mark]) -> Iterator[Station]:
        """Yield the notches of one of its seams as they lie on its own sew line."""
        sides = zip(self.slice_.sides, self.paths, self.begins, strict=True)
        links = [(path, begin) for side, path, begin in sides if isinstance(side, Link)]
        path, begin = links[self.seams.index(number)]
        for name, at in marks:
            yield Station(name, begin + (at if self._is_walked(path) else path.length - at))

    def _is_walked(self, path: Path) -> bool:
        """Return whether a side runs down, seen with the panels upright."""
        begin, end = path.segments[0].start, path.segments[-1].end
        return ((end - begin) * self.turned).imag < 0
