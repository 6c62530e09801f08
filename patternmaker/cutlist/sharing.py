"""Pieces that several seats of a job have alike: printed once, and cut for all of them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, fields, is_dataclass
from typing import TYPE_CHECKING, Any

from patternmaker.cutlist.rows import Tally, seats_of
from patternmaker.facts import HAIR
from patternmaker.geometry.contour import Path

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.cutlist.rows import Drafted
    from patternmaker.job.model import Seat
    from patternmaker.pattern.piece import Piece

    Named = tuple[str, str, str]


@dataclass(frozen=True)
class Shared:
    """A piece, and every seat that it is a piece of."""

    piece: Piece
    seats: tuple[Seat, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """The names of the seats."""
        return tuple(seat.name for seat in self.seats)

    @property
    def called(self) -> str:
        """The names of the seats as a label tells them."""
        return ", ".join(in_short(self.names))

    @property
    def tally(self) -> Tally:
        """How many seats there are in all, and how many of their mirror image."""
        tallies = [seats_of(seat) for seat in self.seats]
        return Tally(sum(each.plain for each in tallies), sum(each.reversed for each in tallies))


def shared(drafted: Drafted) -> tuple[Shared, ...]:
    """Return every piece of a job once, in the order of the cut list."""
    found: list[tuple[Piece, list[Seat]]] = []
    of_a_name: dict[Named, list[tuple[Piece, list[Seat]]]] = {}
    for seat, pattern in drafted.seats:
        for piece in pattern.pieces:
            known = of_a_name.setdefault((piece.name, piece.role, piece.material.title), [])
            seats = next((seats for one, seats in known if alike(one, piece)), None)
            if seats is None:
                seats = []
                known.append((piece, seats))
                found.append((piece, seats))
            seats.append(seat)
    return tuple(Shared(piece, tuple(seats)) for piece, seats in found)


def alike(one: Any, two: Any) -> bool:
    """Return whether two pieces, or two parts of them, are the same but for a hair's breadth."""
    if type(one) is not type(two):
        return False
    if isinstance(one, Path):
        return _coincide(one, two)
    if isinstance(one, (float, complex)):
        return bool(abs(one - two) <= HAIR)
    parts, others = _parts(one), _parts(two)
    if parts is None or others is None:
        return bool(one == two)
    return parts.keys() == others.keys() and all(alike(parts[key], others[key]) for key in parts)


def _parts(whole: Any) -> Mapping[Any, Any] | None:
    """Return what something consists of, by name or place; None if it is one thing."""
    if isinstance(whole, Mapping):
        return whole
    if isinstance(whole, tuple):
        return dict(enumerate(whole))
    if is_dataclass(whole):
        return {each.name: getattr(whole, each.name) for each in fields(whole) if each.compare}
    return None


def _coincide(one: Path, two: Path) -> bool:
    """Return whether two paths run within a hair of each other, segment by segment."""
    return len(one.segments) == len(two.segments) and all(
        type(a) is type(b)
        and abs(a.start - b.start) <= HAIR
        and abs(a.end - b.end) <= HAIR
        and abs(a.point(a.length / 2) - b.point(b.length / 2)) <= HAIR
        for a, b in zip(one.segments, two.segments, strict=True)
    )


def in_short(names: Iterable[str]) -> Iterator[str]:
    """Yield names, those that differ but in a rising number at their end as one.

    >>> list(in_short(["Cello chair 1", "Cello chair 2", "Cello chair 3", "Organ bench"]))
    ['Cello chair 1–3', 'Organ bench']
    """
    numbered: dict[str, list[int]] = {}
    for name in names:
        found = re.fullmatch(r"(.*\D)([1-9]\d*)", name)
        numbered.setdefault(found[1] if found else name, []).extend(
            [int(found[2])] if found else []
        )
    for stem, numbers in numbered.items():
        yield stem + in_runs(sorted(numbers))


def in_runs(numbers: Sequence[int]) -> str:
    """Return rising numbers, each run of them by its first and last.

    >>> in_runs([1, 2, 3, 7, 9, 10])
    '1–3, 7, 9–10'
    """
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 1 else f"{run[0]}" for run in runs)
