"""Blocks of type set one below the other, in columns and over pages."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.drawing.looks import FINE
from patternmaker.drawing.surface import BLACK, Drawing, Letters, Mark, Stroke
from patternmaker.drawing.typeface import LINE, wrapped
from patternmaker.geometry.contour import Path

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from patternmaker.drawing.surface import Colour

TEXT = 3.0  # mm; type of the overview
HEAD = 4.4
COLUMN = 186.0  # mm; the least width of a column
BETWEEN_COLUMNS = 10.0
CELL_GAP = 2.5  # mm between two cells of a row


@dataclass(frozen=True)
class Block:
    """Something set in a column: its upper left corner is the drawing's origin.

    Args:
        height: how much of the column it takes.
        drawing: what is drawn, downward from y = 0.
        keeps: whether it must not stand last in a column, as a heading must not.
    """

    height: float
    drawing: Drawing
    keeps: bool = False


def flowed(blocks: Iterable[Block], width: float, height: float) -> list[Drawing]:
    """Return pages of a size, the blocks set on them in as many columns as fit."""
    blocks = list(blocks)
    count = max(1, int((width + BETWEEN_COLUMNS) / (COLUMN + BETWEEN_COLUMNS)))
    pages: list[list[Mark]] = [[]]
    column, y = 0, height
    for i, block in enumerate(blocks):
        if y - _needed(blocks[i:]) < 0 and y < height:
            column, y = column + 1, height
            if column == count:
                pages.append([])
                column = 0
        x = column * (column_width(width) + BETWEEN_COLUMNS)
        pages[-1] += block.drawing.mapped(1, complex(x, y)).marks
        y -= block.height
    return [Drawing(tuple(page)) for page in pages]


def column_width(width: float) -> float:
    """Return how wide each column is on a page of a width."""
    count = max(1, int((width + BETWEEN_COLUMNS) / (COLUMN + BETWEEN_COLUMNS)))
    return (width - (count - 1) * BETWEEN_COLUMNS) / count


def _needed(blocks: Sequence[Block]) -> float:
    """Return the height of the first block, with those that it must not be parted from."""
    height = 0.0
    for block in blocks:
        height += block.height
        if not block.keeps:
            break
    return height


def heading(text: str, width: float) -> Block:
    """Return the heading of a section, under a rule."""
    return Block(
        HEAD * 2.1,
        Drawing((
            Stroke(Path.through(-1j * HEAD * 0.5, width - 1j * HEAD * 0.5), FINE),
            Letters(-1j * HEAD * 1.55, text, HEAD, bold=True),
        )),
        keeps=True,
    )  # fmt: skip


def paragraph(
    text: str,
    width: float,
    *,
    bold: bool = False,
    size: float = TEXT,
    indent: float = 0.0,
    colour: Colour = BLACK,
    keeps: bool = False,
) -> Block:
    """Return a paragraph, wrapped to a width."""
    lines = wrapped(text, size, width - indent, bold=bold)
    marks = tuple(
        Letters(complex(indent, -size * (LINE * i + 1)), line, size, bold, colour=colour)
        for i, line in enumerate(lines)
    )
    return Block(size * (LINE * len(lines) + 0.25), Drawing(marks), keeps)


def row(
    cells: Sequence[str],
    shares: Sequence[float],
    width: float,
    *,
    bold: bool = False,
    size: float = TEXT,
    keeps: bool = False,
) -> Block:
    """Return a row of a table, each cell wrapped to its share of a width, under a hairline."""
    x, marks, most = 0.0, list[Mark](), 0
    for cell, share in zip(cells, shares, strict=True):
        lines = wrapped(cell, size, share * width - CELL_GAP, bold=bold)
        marks += (
            Letters(complex(x, -size * (LINE * i + 1.25)), line, size, bold)
            for i, line in enumerate(lines)
        )
        x, most = x + share * width, max(most, len(lines))
    height = size * (LINE * most + 0.6)
    marks.append(Stroke(Path.through(-1j * height, width - 1j * height), FINE))
    return Block(height, Drawing(tuple(marks)), keeps)


def space(height: float) -> Block:
    """Return an empty block."""
    return Block(height, Drawing(()))
