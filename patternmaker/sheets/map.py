"""The map of sheets and joins: every plate in small, with the numbers that are on the sheets."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.drawing.looks import INDIGO, MIST, PAPER, SLATE, Pen
from patternmaker.drawing.surface import Drawing, Fill, Letters, Mark, Stroke, rectangle
from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.segments import Arc
from patternmaker.sheets.flow import Block

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from patternmaker.geometry.segments import Box
    from patternmaker.sheets.tiling import Grid, Join, Place, Plate

SCALE = 1 / 14  # A4 comes out 15 by 21 mm
TALLEST = 110.0  # mm of map for one plate
BETWEEN = 6.0  # mm between two plates
SHEET_SIZE = 4.2  # mm; type of a sheet's number
JOIN_SIZE = 2.3  # mm; type of a join's number
LEAST_FOR_JOINS, LEAST_FOR_NUMBERS = 9.0, 7.0  # mm of a sheet in the map
CELL = Pen(0.2, (), SLATE)
FAINT = Pen(0.1, (), MIST)
SHAPE = Pen(0.25, (), INDIGO)


@dataclass(frozen=True)
class NumberedPlate:
    """A plate with the numbers of its sheets and joins."""

    plate: Plate
    first_sheet: int
    joins: tuple[Join, ...]

    @cached_property
    def joins_at(self) -> Mapping[Place, tuple[Join, ...]]:
        """The joins that the sheet at each place takes part in."""
        found: dict[Place, tuple[Join, ...]] = dict.fromkeys(self.plate.sheets, ())
        for join in self.joins:
            for place in (join.first, join.second):
                found[place] += (join,)
        return found


def numbered(plates: Sequence[Plate]) -> tuple[NumberedPlate, ...]:
    """Return plates with their sheets and joins numbered through."""
    found: list[NumberedPlate] = []
    sheet = join = 1
    for plate in plates:
        joins = plate.joins(join)
        found.append(NumberedPlate(plate, sheet, joins))
        sheet, join = sheet + len(plate.sheets), join + len(joins)
    return tuple(found)


def map_blocks(plates: Sequence[NumberedPlate], width: float) -> Iterator[Block]:
    """Yield rows of plates in small, as many side by side as fit."""
    scale = min(
        SCALE,
        *(width / each.plate.grid.size[0] for each in plates),
        *(TALLEST / each.plate.grid.size[1] for each in plates),
    )
    line: list[NumberedPlate] = []
    x = 0.0
    for each in plates:
        needs = each.plate.grid.size[0] * scale
        if line and x + needs > width:
            yield _line(line, scale)
            line, x = [], 0.0
        line.append(each)
        x += needs + BETWEEN
    yield _line(line, scale)


def _line(plates: Sequence[NumberedPlate], scale: float) -> Block:
    height = max(each.plate.grid.size[1] for each in plates) * scale
    marks: list[Mark] = []
    x = 0.0
    for each in plates:
        corner = complex(x, -each.plate.grid.size[1] * scale - 1)
        marks += Drawing(tuple(_plate(each, scale))).mapped(1, corner).marks
        x += each.plate.grid.size[0] * scale + BETWEEN
    return Block(height + 4, Drawing(tuple(marks)))


def _plate(each: NumberedPlate, scale: float) -> Iterator[Mark]:
    grid = each.plate.grid
    sheet = min(grid.window_size) * scale
    size = min(SHEET_SIZE, sheet * 0.4)
    if sheet >= LEAST_FOR_NUMBERS:
        for place in each.plate.sheets:
            yield Stroke(rectangle(_small(grid.cell(place), scale)), CELL)
    else:
        yield from _mesh(grid, scale)
    for shape in each.plate.prints:
        yield Stroke(_light(shape.shape.mapped(scale)), SHAPE)
    if sheet >= LEAST_FOR_NUMBERS:
        for i, place in enumerate(each.plate.sheets):
            at = _middle(_small(grid.cell(place), scale)) - 1j * size * 0.35
            yield Letters(at, str(each.first_sheet + i), size, bold=True, anchor="middle")
    if sheet >= LEAST_FOR_JOINS:
        for join in each.joins:
            yield from _join(join, each, scale)


def _mesh(grid: Grid, scale: float) -> Iterator[Mark]:
    """Yield the lines of a grid whose sheets are too small in the map to be numbered."""
    width, height = (side * scale for side in grid.size)
    for column in range(grid.columns):
        x = grid.cell((column, 0))[2] * scale
        yield Stroke(Path.through(complex(x, 0), complex(x, height)), FAINT)
    for row in range(grid.rows):
        y = grid.cell((0, row))[3] * scale
        yield Stroke(Path.through(complex(0, y), complex(width, y)), FAINT)
    yield Stroke(rectangle((0, 0, width, height)), CELL)


def _join(join: Join, each: NumberedPlate, scale: float) -> Iterator[Mark]:
    first, second = (each.plate.grid.cell(place) for place in (join.first, join.second))
    shared = (max(first[0], second[0]), max(first[1], second[1]),
              min(first[2], second[2]), min(first[3], second[3]))  # fmt: skip
    at, half = _middle(_small(shared, scale)), JOIN_SIZE * 0.75
    box = (at.real - half, at.imag - half, at.real + half, at.imag + half)
    yield Fill(rectangle(box), PAPER)
    yield Stroke(rectangle(box), Pen(0.1, (), MIST))
    yield Letters(at - 1j * JOIN_SIZE * 0.35, str(join.number), JOIN_SIZE, anchor="middle",
                  colour=SLATE)  # fmt: skip


def _light(shape: Contour) -> Contour:
    """Return a shape in few enough segments for a small drawing."""
    arcs = sum(isinstance(segment, Arc) for segment in shape.segments)
    if arcs < 30:
        return shape
    points = shape.chords(0.02)
    return Contour(Path.through(*points[:-1], points[0]).segments)


def _small(box: Box, scale: float) -> Box:
    left, bottom, right, top = box
    return left * scale, bottom * scale, right * scale, top * scale


def _middle(box: Box) -> complex:
    return complex((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
