"""What a drawing holds, before anybody decides which of its lines is the seat.

A `Chain` holds either ``segments`` (true lines and arcs, kept as they are) or ``points`` (a string
of points, whose wobble may be smoothed), never both: 100,000 points are then 4 MB, not 100,000
lines. Whoever wants lines of a string of points asks for its `path`. The points of a closed string
do not repeat the first one at the end; its path comes back to it.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import cached_property
from types import MappingProxyType
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.geometry.contour import Path

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from patternmaker.geometry.segments import Segment


@dataclass(frozen=True)
class Chain:
    """A line as a file draws it: lines and arcs in order, y upward (to the back of the drawing).

    Lengths are mm if the sketch is at true size, else the file's own unit.

    Args:
        name: its id in the file, or what it can be called by there, such as "path 3".
        segments: its true lines and arcs, each at least somewhat long; empty if it is drawn.
        points: its points, if it is a string of them; doubled points are still in it.
        closed: whether the file says that it is closed. Its segments then end where they begin;
            its points do not come back to the first.
    """

    name: str
    segments: tuple[Segment, ...] = ()
    points: tuple[complex, ...] = ()
    closed: bool = False

    @property
    def drawn(self) -> bool:
        """Whether it is a string of points, whose wobble may be smoothed."""
        return bool(self.points)

    @cached_property
    def path(self) -> Path:
        """Its lines and arcs; those of a closed string of points come back to the first."""
        if not self.points:
            return Path(self.segments)
        ring = (*self.points, self.points[0]) if self.closed else self.points
        return Path.through(*ring)

    def scaled(self, factor: float) -> Chain:
        """Return it enlarged about the origin."""
        return replace(
            self,
            segments=tuple(each.mapped(factor, 0) for each in self.segments),
            points=tuple([factor * point for point in self.points]),
        )


@dataclass(frozen=True)
class Sketch:
    """What a file draws.

    Args:
        chains: its lines, in the order of the file; no two have the same name.
        unit: the mm that one unit of the file is, already applied; None if the file does not say:
            its lengths are then in its own unit.
        marks: places that the file names, at the same scale.
        notes: what the reader of the sketch should know, such as what was skipped.
    """

    chains: tuple[Chain, ...]
    unit: float | None = None
    marks: Mapping[str, complex] = field(default_factory=dict)
    notes: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        object.__setattr__(self, "marks", MappingProxyType(dict(self.marks)))

    def scaled(self, factor: float) -> Sketch:
        """Return it enlarged about the origin: ``unit`` tells it too, if the file told one."""
        return replace(
            self,
            chains=tuple(each.scaled(factor) for each in self.chains),
            unit=None if self.unit is None else self.unit * factor,
            marks={name: place * factor for name, place in self.marks.items()},
        )


def read_sketch(name: str, content: bytes) -> Sketch:
    """Return what a file draws.

    Args:
        name: of the file; its ending says what is in it.
        content: of the file.

    Raises:
        Refusal: if it is not what its ending says, is broken, too large, or refers to other files.
    """
    from patternmaker.tracing.csv import read_csv
    from patternmaker.tracing.dxf import read_dxf
    from patternmaker.tracing.kinds import kind_of
    from patternmaker.tracing.svg import read_svg

    read: dict[str, Callable[[bytes], Sketch]] = {
        "SVG": read_svg, "DXF": read_dxf, "points": read_csv,
    }  # fmt: skip
    try:
        return read[kind_of(name, content)](content)
    except ArithmeticError:
        raise Refusal(
            "", "holds numbers too large", mend="check the units and scales in it"
        ) from None
