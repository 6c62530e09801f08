"""One small drawing surface, and drawings recorded to be played on any of them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, Protocol, TypeAlias

from patternmaker.drawing.typeface import width

if TYPE_CHECKING:
    from patternmaker.drawing.looks import Pen
    from patternmaker.geometry.contour import Path
    from patternmaker.geometry.segments import Box

Colour: TypeAlias = tuple[float, float, float]
"""red, green, blue, from 0 to 1"""
Anchor: TypeAlias = Literal["left", "middle", "right"]

BLACK: Colour = (0.0, 0.0, 0.0)
HIGH = 0.75  # of the size of type: from the baseline to the top of a letter


class Surface(Protocol):
    """Something to draw on, in millimetres, y upward."""

    def stroke(self, path: Path, pen: Pen) -> None:
        """Draw along ``path``."""

    def fill(self, path: Path, colour: Colour) -> None:
        """Fill inside ``path``."""

    def letter(self, letters: Letters) -> None:
        """Write a line of text."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line that is drawn."""

    path: Path
    pen: Pen

    def onto(self, surface: Surface) -> None:
        """Draw it."""
        surface.stroke(self.path, self.pen)

    def mapped(self, factor: complex, shift: complex) -> Stroke:
        """Return it turned and scaled by ``factor``, then moved by ``shift``."""
        return Stroke(self.path.mapped(factor, shift), self.pen)


@dataclass(frozen=True, slots=True)
class Fill:
    """An area that is filled."""

    path: Path
    colour: Colour

    def onto(self, surface: Surface) -> None:
        """Draw it."""
        surface.fill(self.path, self.colour)

    def mapped(self, factor: complex, shift: complex) -> Fill:
        """Return it turned and scaled by ``factor``, then moved by ``shift``."""
        return Fill(self.path.mapped(factor, shift), self.colour)


@dataclass(frozen=True, slots=True)
class Letters:
    """A line of text.

    Args:
        at: where its baseline begins, or its middle or end stands.
        text: what it says.
        size: of the type, mm from line to line.
        bold: whether it is bold.
        anchor: which part of it stands at ``at``.
        way: the direction in which it reads.
        colour: its colour.
    """

    at: complex
    text: str
    size: float
    bold: bool = False
    anchor: Anchor = "left"
    way: complex = 1
    colour: Colour = BLACK

    @property
    def box(self) -> Box:
        """The box that a level line of text takes, from its baseline to the top of its letters."""
        long = width(self.text, self.size, bold=self.bold)
        left = self.at.real - long * {"left": 0.0, "middle": 0.5, "right": 1.0}[self.anchor]
        return left, self.at.imag, left + long, self.at.imag + HIGH * self.size

    def onto(self, surface: Surface) -> None:
        """Draw it."""
        surface.letter(self)

    def mapped(self, factor: complex, shift: complex) -> Letters:
        """Return it turned and scaled by ``factor``, then moved by ``shift``."""
        return Letters(
            self.at * factor + shift,
            self.text,
            self.size * abs(factor),
            self.bold,
            self.anchor,
            self.way * factor / abs(factor),
            self.colour,
        )


Mark: TypeAlias = Stroke | Fill | Letters


@dataclass(frozen=True)
class Drawing:
    """Marks in the order in which they are drawn."""

    marks: tuple[Mark, ...]

    def onto(self, surface: Surface) -> None:
        """Draw all of it."""
        for mark in self.marks:
            mark.onto(surface)

    def mapped(self, factor: complex = 1, shift: complex = 0) -> Drawing:
        """Return it turned and scaled by ``factor``, then moved by ``shift``."""
        return Drawing(tuple(mark.mapped(factor, shift) for mark in self.marks))

    def __add__(self, other: Drawing) -> Drawing:
        return Drawing(self.marks + other.marks)


def rectangle(box: Box) -> Path:
    """Return the closed path round a box."""
    from patternmaker.geometry.contour import Path

    left, bottom, right, top = box
    corners = (complex(left, bottom), complex(right, bottom), complex(right, top),
               complex(left, top), complex(left, bottom))  # fmt: skip
    return Path.through(*corners)
