"""The cut list: every piece, how many in all, its sizes and area; and the material it takes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.job.model import Job, Seat
    from patternmaker.pattern.piece import Pattern, Piece

# Of the hide that ends up in pieces: four leather suppliers say 50 to 70 per cent.
HIDE_YIELD = (0.5, 0.7)


@dataclass(frozen=True)
class Drafted:
    """A job with the pattern of each of its seats."""

    job: Job
    patterns: tuple[Pattern, ...]

    @property
    def seats(self) -> Iterator[tuple[Seat, Pattern]]:
        """Each seat with its pattern."""
        return zip(self.job.seats, self.patterns, strict=True)


@dataclass(frozen=True)
class Tally:
    """How many of a piece to cut, and how many more of its mirror image.

    >>> str(Tally(2, 1)), Tally(2, 1).all
    ('2 + 1 reversed', 3)
    """

    plain: int
    reversed: int = 0

    @property
    def all(self) -> int:
        """How many there are in all."""
        return self.plain + self.reversed

    def __str__(self) -> str:
        return f"{self.plain} + {self.reversed} reversed" if self.reversed else str(self.plain)


@dataclass(frozen=True)
class CutRow:
    """One row of the cut list; sizes in mm, areas in mm2."""

    seat: str
    piece: Piece
    tally: Tally

    @property
    def count(self) -> int:
        """How many are cut in all."""
        return self.tally.all

    @property
    def cut_size(self) -> tuple[float, float]:
        """Width and height of the box round the cut line."""
        return self.piece.cut.width, self.piece.cut.height

    @property
    def area(self) -> float:
        """The area of one."""
        return self.piece.cut.area


@dataclass(frozen=True)
class Need:
    """How much of one material all its pieces take, without waste, mm2."""

    title: str
    kind: str
    area: float
    sold_by_area: bool

    @property
    def hides(self) -> tuple[float, float]:
        """The least and most hide to ask for, at the usual yield."""
        return self.area / HIDE_YIELD[1], self.area / HIDE_YIELD[0]


def tally_of(piece: Piece, seats: Tally) -> Tally:
    """Return how many of a piece a set of seats takes; one template serves them all."""
    if piece.is_template:
        return Tally(piece.count)
    return Tally(piece.count * seats.plain, piece.count * seats.reversed)


def seats_of(seat: Seat) -> Tally:
    """Return how many seats a set holds, and how many of their mirror image."""
    return Tally(seat.make, seat.reversed)


def cut_rows(drafted: Drafted) -> tuple[CutRow, ...]:
    """Return the cut list, seat by seat."""
    return tuple(
        CutRow(seat.name, piece, tally_of(piece, seats_of(seat)))
        for seat, pattern in drafted.seats
        for piece in pattern.pieces
    )


def needs(rows: Iterable[CutRow]) -> tuple[Need, ...]:
    """Return what each material comes to, in the order in which they are met."""
    areas: dict[tuple[str, str, bool], float] = {}
    for row in rows:
        material = row.piece.material
        key = material.title, material.kind, material.known.sold_by_area
        areas[key] = areas.get(key, 0.0) + row.area * row.count
    return tuple(Need(title, kind, area, sold) for (title, kind, sold), area in areas.items())
