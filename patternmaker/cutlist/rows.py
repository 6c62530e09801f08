"""The cut list: every piece, how many in all, its sizes and area; and the material it takes."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.pattern.cloth import follows_its_material
from patternmaker.pattern.notes import Note

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.job.model import Job, Seat
    from patternmaker.materials import Material
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

    @property
    def matching(self) -> float:
        """What one takes more of a material with a repeat, so that every piece begins it alike.

        The box round it goes up to the next whole repeat each way that the material repeats.
        """
        if not follows_its_material(self.piece):
            return 0.0
        width, height = self.cut_size
        material = self.piece.material
        whole = _up_to(width, material.repeat_across) * _up_to(height, material.repeat)
        return whole - width * height


def _up_to(length: float, repeat: float | None) -> float:
    """Return a length, or the next whole number of repeats.

    >>> _up_to(430.0, 240.0), _up_to(480.0, 240.0), _up_to(430.0, None)
    (480.0, 480.0, 430.0)
    """
    return length if repeat is None else math.ceil(length / repeat - 1e-9) * repeat


@dataclass(frozen=True)
class Need:
    """How much of one material all its pieces take, without waste, mm2.

    Args:
        material: the material, as the first of its pieces has it.
        area: of the pieces.
        matching: what matching its repeats takes more.
        repeats: those repeats, each from back to front and across.
    """

    material: Material
    area: float = 0.0
    matching: float = 0.0
    repeats: tuple[tuple[float | None, float | None], ...] = ()

    def with_(self, row: CutRow) -> Need:
        """Return it with the pieces of one more row."""
        more = row.piece.material
        own = ((more.repeat, more.repeat_across),) if more.is_matched else ()
        return Need(
            self.material,
            self.area + row.area * row.count,
            self.matching + row.matching * row.count,
            tuple(dict.fromkeys((*self.repeats, *own))),
        )

    @property
    def title(self) -> str:
        """What to call the material."""
        return self.material.title

    @property
    def kind(self) -> str:
        """Its kind."""
        return self.material.kind

    @property
    def sold_by_area(self) -> bool:
        """Whether it is sold as hides are."""
        return self.material.known.sold_by_area

    @property
    def hides(self) -> tuple[float, float]:
        """The least and most hide to ask for, at the usual yield."""
        return self.area / HIDE_YIELD[1], self.area / HIDE_YIELD[0]

    @property
    def why(self) -> Note:
        """Why matching takes more."""
        ways = ("{} from back to front", "{} across")
        told = (
            " and ".join(way for way, each in zip(ways, repeat, strict=True) if each is not None)
            for repeat in self.repeats
        )
        values = tuple(each for repeat in self.repeats for each in repeat if each is not None)
        says = "each piece is counted up to the next whole repeat"
        return Note(f"{says}, {' or '.join(told)}", values)


def tally_of(piece: Piece, seats: Tally) -> Tally:
    """Return how many of a piece a set of seats takes; one template serves them all.

    A reversed seat takes the mirror image of each, and that of a mirror image is the piece.
    """
    if piece.is_template:
        return Tally(piece.count)
    plain, mirrored = piece.count, piece.reversed
    return Tally(plain * seats.plain + mirrored * seats.reversed,
                 plain * seats.reversed + mirrored * seats.plain)  # fmt: skip


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
    found: dict[tuple[str, str], Need] = {}
    for row in rows:
        material = row.piece.material
        key = material.title, material.kind
        found[key] = found.get(key, Need(material)).with_(row)
    return tuple(found.values())
