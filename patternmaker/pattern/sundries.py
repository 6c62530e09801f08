"""What a seat takes beside its covering: zips, cord, foam, board."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.pattern.notes import Gauge, Note

if TYPE_CHECKING:
    from patternmaker.geometry.contour import Path


@dataclass(frozen=True)
class Sundry:
    """One thing to buy, alike in every seat of a set.

    Args:
        what: what it is, with its size.
        length: how much of it a seat takes, mm, where it is sold by the length.
        count: how many of it a seat takes, where it is not.
    """

    what: Note
    length: float = 0.0
    count: int = 1


def zip_of(length: float) -> Sundry:
    """Return a zip, cut from the roll with what its ends are caught by."""
    return Sundry(Note("Zip {} long", (length,)))


def cord_of(thickness: float, length: float) -> Sundry:
    """Return cord for a welt."""
    return Sundry(Note("Cord {} thick", (Gauge(thickness),)), length)


def foam_of(thickness: float, cut: Path) -> Sundry:
    """Return a piece of foam, by the box round its cut."""
    return Sundry(Note("Foam {} thick, {} by {}", (Gauge(thickness), cut.width, cut.height)))


def board_of(thickness: float, base: Path) -> Sundry:
    """Return a board, by the box round it."""
    return Sundry(Note("Board {} thick, {} by {}", (Gauge(thickness), base.width, base.height)))


def wadding_of(thickness: float, cut: Path) -> Sundry:
    """Return a piece of wadding, by the box round its cut."""
    return Sundry(Note("Wadding {} thick, {} by {}", (Gauge(thickness), cut.width, cut.height)))
