"""Which pieces are printed: all of them, or those that are asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.drawing.prints import title_of
from patternmaker.errors import Refusals
from patternmaker.facts import unknown

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from patternmaker.cutlist.rows import Drafted
    from patternmaker.pattern.piece import Piece


def names_of(seat: str, piece: Piece) -> tuple[str, ...]:
    """Return what a piece may be asked for by: its name, what it does in the cover, its title."""
    return piece.name, piece.role, title_of(seat, piece.name)


def chosen(drafted: Drafted, only: Sequence[str]) -> frozenset[str]:
    """Return the titles of the pieces to print: those asked for by a name, or all of them.

    Raises:
        Refusals: of each name that no piece has.
    """
    pieces = [(seat.name, piece) for seat, pattern in drafted.seats for piece in pattern.pieces]
    known = list(dict.fromkeys(name for each in pieces for name in names_of(*each)[:2]))
    asked = {_plain(name) for name in only}
    every = {_plain(name) for each in pieces for name in names_of(*each)}
    if wrong := [name for name in only if _plain(name) not in every]:
        raise Refusals([unknown("only", name, known) for name in wrong])
    return frozenset(
        title_of(seat, piece.name)
        for seat, piece in pieces
        if not only or not asked.isdisjoint(map(_plain, names_of(seat, piece)))
    )


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())


def told(only: Iterable[str]) -> str:
    """Return what the overview says of pieces that are left out, if any are."""
    names = ", ".join(only)
    return f"Only these are printed here: {names}. " if names else ""
