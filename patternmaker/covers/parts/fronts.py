"""The straight front edge of a seat, and what runs from its one end round the back to the other."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH
from patternmaker.geometry.contour import MEETS, SMOOTH, Path
from patternmaker.geometry.segments import Line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.contour import Contour
    from patternmaker.geometry.segments import Segment


@dataclass(frozen=True)
class Front:
    """The front of an outline as far as it is straight, by the indices of its edges.

    Args:
        contour: the outline.
        first: its first edge, at the left.
        last: its last edge, at the right; less than ``first`` where there is no straight front.
    """

    contour: Contour
    first: int
    last: int

    @classmethod
    def of(cls, contour: Contour) -> Front:
        """Return the straight run through the joint ``front``, level from left to right."""
        middle = contour.joints["front"]
        return cls(contour, middle - _run(contour, middle - 1, -1, 1 + 0j),
                   middle - 1 + _run(contour, middle, 1, 1 + 0j))  # fmt: skip

    @property
    def left_at(self) -> float:
        """How far round from the back its left end lies."""
        return self.contour.stops[self.first]

    @property
    def right_at(self) -> float:
        """How far round from the back its right end lies."""
        return self.contour.stops[self.last + 1]

    @property
    def left(self) -> complex:
        """Its left end."""
        return self.contour.segments[self.first].start

    @property
    def right(self) -> complex:
        """Its right end."""
        return self.contour.segments[self.last].end

    @property
    def length(self) -> float:
        """From end to end, zero if there is none."""
        return max(0.0, self.right_at - self.left_at)

    @property
    def is_foremost(self) -> bool:
        """Whether no other part of the outline reaches further forward."""
        return self.left.imag - self.contour.bounds[1] < MEETS

    @property
    def sides(self) -> tuple[float, float]:
        """How far the left and the right side run straight back from its ends, square to it."""
        left = _run(self.contour, self.first - 1, -1, -1j)
        right = _run(self.contour, self.last + 1, 1, 1j)
        edges = self.round_the_back
        return (
            sum(each.length for each in edges[len(edges) - left :]),
            sum(each.length for each in edges[:right]),
        )

    @property
    def round_the_back(self) -> tuple[Segment, ...]:
        """The edges from its right end round the back to its left end."""
        edges = self.contour.segments
        return (*edges[self.last + 1 :], *edges[: self.first])

    @property
    def way_round(self) -> Path:
        """The same as a path."""
        return Path(self.round_the_back)

    def objections(self, what: str) -> Iterator[Refusal]:
        """Yield what keeps ``what`` from hanging on this front."""
        half = self.contour.width / 2
        if self.length < half - MEETS:
            yield Refusal(
                "outline", "its front is straight and level over {value} only; "
                f"{what} takes half the width at least ({{limit}})",
                value=self.length, limit=half, show=LENGTH.show,
                mend="make the front straight and its corners small, or choose another cover",
            )  # fmt: skip
        elif not self.is_foremost:
            yield Refusal(
                "outline", f"it reaches further forward than its straight front, by {{value}}; "
                f"{what} hangs from the foremost edge",
                value=self.left.imag - self.contour.bounds[1], show=LENGTH.show,
                mend="choose another cover",
            )  # fmt: skip


def _run(contour: Contour, index: int, step: int, way: complex) -> int:
    """Return how many edges in a row, from one on, are straight in one direction."""
    edges = contour.segments
    ring = (edges[(index + step * i) % len(edges)] for i in range(len(edges)))
    return next(i for i, each in enumerate(ring) if not _leads(each, way))


def _leads(edge: Segment, way: complex) -> bool:
    return isinstance(edge, Line) and abs(edge.tangent() - way) <= SMOOTH
