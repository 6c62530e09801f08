"""A shape as a terminal shows it: its edge, and the lines on which it is measured."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.cli.braille import ACROSS, DOWN, Raster
from patternmaker.drawing.measures import box_round, measures, numbered, set_off
from patternmaker.drawing.spots import spots

if TYPE_CHECKING:
    from patternmaker.geometry.segments import Box
    from patternmaker.outlines import Outline

LETTER = complex(3 * ACROSS, 1.5 * DOWN)  # dots that a letter takes, with what keeps it legible
NUMBER = 8  # dots from a corner in to its number
OFF = 5  # dots by which a line along the edge is set off from it
EVERY = 2  # dot of a measurement line that is set


@dataclass(frozen=True)
class Size:
    """How many letters across and lines down a picture may take."""

    columns: int = 60
    rows: int = 24


SMALL = Size(44, 15)


def picture(
    outline: Outline, size: Size = Size(), *, only: str | None = None, braille: bool = True
) -> list[str]:
    """Return a seat in lines of text, with the front below and where it is measured.

    Args:
        outline: the seat.
        size: the most that it may take.
        only: the one field whose line is shown; all of them if not given.
        braille: whether it may be of braille dots; of plain signs otherwise.
    """
    contour = outline.contour()
    lines = [each for each in measures(outline, contour) if only in {None, each.field}]
    step = OFF / _Scale.fitting(box_round(contour, lines), size).factor
    lines = [*set_off(lines, contour, step)]
    scale = _Scale.fitting(box_round(contour, lines), size)
    raster = Raster(scale.columns, scale.rows)
    raster.line([scale.dot(point) for point in contour.chords(0.2 / scale.factor)])
    for line in lines:
        raster.line([scale.dot(line.begin), scale.dot(line.end)], every=EVERY)
    for number, point, inward in numbered(outline, contour):
        raster.letter(scale.dot(point) + NUMBER * inward, number)
    for index, spot in spots(contour, lines, scale.room, scale.limits).items():
        raster.letter(scale.dot(spot), lines[index].letter)
    return [*raster.shown(braille=braille), _front(scale, braille=braille)]


def _front(scale: _Scale, *, braille: bool) -> str:
    return ("↓ FRONT" if braille else "v FRONT").rjust(int(scale.dot(0).real) // ACROSS + 7)


@dataclass(frozen=True)
class _Scale:
    """How millimetres become dots."""

    factor: float
    shift: complex
    columns: int
    rows: int

    @classmethod
    def fitting(cls, box: Box, size: Size) -> _Scale:
        left, bottom, right, top = box
        width, height = right - left, top - bottom
        across, down = size.columns * ACROSS - 1, size.rows * DOWN - 1
        factor = min(across / width, down / height)
        columns = int(factor * width) // ACROSS + 1
        rows = int(factor * height) // DOWN + 1
        return cls(factor, -complex(left, bottom) * factor, columns, rows)

    def dot(self, point: complex) -> complex:
        return point * self.factor + self.shift

    @property
    def room(self) -> complex:
        """What a letter takes, in mm, as x and y."""
        return LETTER / self.factor

    @property
    def limits(self) -> Box:
        """The box in which a letter may stand, in mm: its blanks may lie outside the picture."""
        low = -self.shift / self.factor - self.room / 2
        dots = complex(self.columns * ACROSS - 1, self.rows * DOWN - 1)
        high = (dots - self.shift) / self.factor + self.room / 2
        return low.real, low.imag, high.real, high.imag
