"""What a sheet carries besides the pattern: bars to prove its scale, joins, and what it is.

All of it stands in the band along the window's edge, where sheets overlap, so that a joined
pattern shows none of it but the crosses.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.drawing.looks import MIST, PAPER, SLATE, Pen
from patternmaker.drawing.surface import Drawing, Fill, Letters, Mark, Stroke, rectangle
from patternmaker.drawing.typeface import width
from patternmaker.geometry.contour import Path
from patternmaker.sheets.joining import FOLD_BACK
from patternmaker.units import MM_PER_INCH, Unit

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.drawing.surface import Anchor
    from patternmaker.sheets.tiling import Grid, Side

FROM_EDGE = 2.4  # mm, of bars and words: outside the line that a join runs along
BEGINS = 14.0  # mm from the corner, clear of the cross there
TICK = 1.4  # mm; half the tick at the end of a bar
SMALL = 2.8  # mm; size of type in the band
NUMBER = 5.0  # mm; size of a join's number
ASIDE = 1.6  # mm between a join's line and its number
CLEAR_OF_NUMBER = 8.0  # mm along the join, from the middle of its number to the word beside it
CROSS = 4.0  # mm; half a registration cross
NARROW = 3.0  # mm of half an overlap; crosses in the corners of a narrower one leave the sheet
CROSS_FROM_END = 8.0  # mm from either end of a join whose overlap is so narrow
OFF_THE_LINE = 0.3  # mm; half the broadest stroke: one that runs along a join stays whole
BAR = Pen(0.3)
CROSS_PEN = Pen(0.18)
JOIN_PEN = Pen(0.15, (3, 2), SLATE)
FOLD_PEN = Pen(0.15, (8, 1.5, 1, 1.5), SLATE)
FRAME = Pen(0.1, (), MIST)


def bar_length(unit: Unit) -> float:
    """Return how long the scale bars are: 4 in in an inch job, else 100 mm."""
    return 4 * MM_PER_INCH if unit is Unit.IN else 100.0


def bar_says(unit: Unit) -> str:
    """Return what the scale bars say of themselves."""
    return {Unit.IN: "4 in", Unit.CM: "10 cm", Unit.MM: "100 mm"}[unit]


def blanks(grid: Grid, sides: Iterable[Side]) -> Drawing:
    """Return white under the bars and words of a sheet, where the one beside it shows the same.

    Past the line of a join a sheet only repeats its neighbour, so no line of the pattern is lost.
    """
    (across, up), half = grid.window_size, grid.stock.overlap / 2
    if half < FROM_EDGE + TICK:
        return Drawing(())
    deep = half - OFF_THE_LINE
    edges = {
        "left": (0, BEGINS - 1, deep, up - BEGINS),
        "bottom": (BEGINS - 1, 0, across - BEGINS + 1, deep),
        "top": (BEGINS - 1, up - deep, across - BEGINS + 1, up),
    }
    return Drawing(
        tuple(Fill(rectangle(box), PAPER) for side, box in edges.items() if side in set(sides))
    )


def frame(grid: Grid, unit: Unit) -> Drawing:
    """Return what every sheet of a grid has alike: its edge and a scale bar each way."""
    across, up = grid.window_size
    size = bar_length(unit)
    says = f"{bar_says(unit)}: measure before you cut"
    room = across - 2 * BEGINS - size - 3
    beside = says if width(says, SMALL) < room else bar_says(unit)
    drop = SMALL * 0.35
    return Drawing((
        Stroke(rectangle((0, 0, across, up)), FRAME),
        Stroke(_bar(complex(BEGINS, FROM_EDGE), 1, size), BAR),
        Stroke(_bar(complex(FROM_EDGE, BEGINS), 1j, size), BAR),
        Letters(complex(BEGINS + size + 3, FROM_EDGE - drop), beside, SMALL, colour=SLATE),
        Letters(complex(FROM_EDGE + drop, BEGINS + size + 3), bar_says(unit), SMALL, way=1j,
                colour=SLATE),
    ))  # fmt: skip


def _bar(begin: complex, way: complex, length: float) -> Path:
    """Return a bar with its end ticks, in one stroke."""
    end, tick = begin + way * length, 1j * way * TICK
    return Path.through(begin + tick, begin - tick, begin, end, end + tick, end - tick)


def heading(left: str, right: str, grid: Grid) -> Iterator[Mark]:
    """Yield the words at the head of a sheet, the left ones shortened to leave room.

    Between them stands what a sheet drawn for one printer must say.
    """
    across, up = grid.window_size
    y = up - FROM_EDGE - SMALL * 0.35
    room = across - 2 * BEGINS - width(right, SMALL, bold=True) - 4
    if printer := grid.stock.printer:
        says = shortened(f"drawn {printer.set_mended}, for {printer.name}", SMALL, room)
        at = across - BEGINS - width(right, SMALL, bold=True) - 4
        yield Letters(complex(at, y), says, SMALL, anchor="right", colour=SLATE)
        room = max(0.0, room - width(says, SMALL) - 4)
    yield Letters(complex(BEGINS, y), shortened(left, SMALL, room), SMALL, colour=SLATE)
    yield Letters(complex(across - BEGINS, y), right, SMALL, bold=True, anchor="right")


def shortened(text: str, size: float, room: float) -> str:
    """Return as much of ``text`` as there is room for."""
    if width(text, size) <= room:
        return text
    while text and width(text + "…", size) > room:
        text = text[:-1]
    return text.rstrip() + "…"


def join_lines(grid: Grid, sides: Iterable[Side], new: Iterable[Side] = ()) -> Drawing:
    """Return the lines and crosses of the joins on some sides of a sheet.

    On those where it is ``new`` it is laid to a sheet that is already there.

    The line runs in the middle of the overlap, a cross near either end, where four sheets share it.
    Crosses of two joins that meet there are the same or stand well apart: never nearly the same.
    """
    marks: list[Mark] = []
    half = grid.stock.overlap / 2
    from_end = half if half >= NARROW else CROSS_FROM_END
    new, joining = set(new), grid.stock.joining
    for side in sides:
        low, high = _join_line(grid, side)
        pen = FOLD_PEN if joining.done(new=side in new) == FOLD_BACK else JOIN_PEN
        marks.append(Stroke(Path.through(low, high), pen))
        inward = (high - low) / abs(high - low) * from_end
        for middle in (low + inward, high - inward):
            marks += (
                Stroke(Path.through(middle - CROSS * way, middle + CROSS * way), CROSS_PEN)
                for way in (1, 1j)
            )
    return Drawing(tuple(marks))


def _join_line(grid: Grid, side: Side) -> tuple[complex, complex]:
    """Return the ends of the line along which the sheet on one side is joined."""
    (across, up), half = grid.window_size, grid.stock.overlap / 2
    return {
        "left": (complex(half, 0), complex(half, up)),
        "right": (complex(across - half, 0), complex(across - half, up)),
        "bottom": (complex(0, half), complex(across, half)),
        "top": (complex(0, up - half), complex(across, up - half)),
    }[side]


def join_number(grid: Grid, side: Side, number: int, share: float) -> Letters:
    """Return a join's number, on the sheet's own side of the line, a share of the way along it.

    So like number stands beside like number once the two sheets are laid together.
    """
    return _beside(grid, side, str(number), NUMBER, share)


def edge_word(grid: Grid, side: Side, word: str, share: float) -> Letters:
    """Return the word beside the number of a join that says what is done to the sheet there."""
    low, high = _join_line(grid, side)
    along = CLEAR_OF_NUMBER + width(word, SMALL, bold=True) / 2
    return _beside(grid, side, word, SMALL, share + along / abs(high - low))


def _beside(grid: Grid, side: Side, text: str, size: float, share: float) -> Letters:
    """Return words beside a join's line, on the sheet's own side, a share of the way along it."""
    low, high = _join_line(grid, side)
    ways: dict[Side, tuple[Anchor, complex]] = {
        "left": ("left", complex(ASIDE, -size * 0.35)),
        "right": ("right", complex(-ASIDE, -size * 0.35)),
        "bottom": ("middle", 1j * ASIDE),
        "top": ("middle", -1j * (ASIDE + size * 0.72)),
    }
    anchor, aside = ways[side]
    at = low + share * (high - low) + aside
    return Letters(at, text, size, bold=True, anchor=anchor, colour=SLATE)


def proof_triangle(unit: Unit) -> tuple[float, float]:
    """Return the upright and the level side of the proof triangle; the long one is 5 to their 4."""
    return (3 * MM_PER_INCH, 4 * MM_PER_INCH) if unit is Unit.IN else (90.0, 120.0)
