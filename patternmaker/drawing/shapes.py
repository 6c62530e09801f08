"""A shape as a picture: its edge, the lines on which it is measured, and the list of them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.drawing.labels import arrow, by, show
from patternmaker.drawing.looks import INDIGO, MADDER, PAPER, SLATE, Pen
from patternmaker.drawing.measures import (
    box_round,
    letters_of,
    measures,
    set_off,
    witnesses,
)
from patternmaker.drawing.names import disc, names
from patternmaker.drawing.spots import spots
from patternmaker.drawing.surface import BLACK, Colour, Drawing, Fill, Letters, Mark, Stroke
from patternmaker.drawing.typeface import LINE, wrapped
from patternmaker.facts import FILE, HAIR, LENGTH, Rows, facts_of
from patternmaker.facts.telling import words_of
from patternmaker.geometry.contour import Path
from patternmaker.units import show_area

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.drawing.measures import Measure
    from patternmaker.facts import Fact, Measured
    from patternmaker.geometry.contour import Contour
    from patternmaker.geometry.segments import Box
    from patternmaker.outlines import Outline
    from patternmaker.units import Unit

PALE: Colour = (0.96, 0.94, 0.89)
EDGE = Pen(0.6, (), INDIGO)
MEASURED = Pen(0.25, (), MADDER)
WITNESS = Pen(0.15, (1, 1), SLATE)

PAGE, MARGIN = 190.0, 12.0  # mm
ROOM = 140 + 110j  # mm; the most that a seat and its measurement lines may take
ROUND = 12.0  # mm left round them for letters and names
OFF = 9.0  # mm from the edge to the line of a measurement that runs along it
TITLE, BODY = 8.0, 3.8  # mm; sizes of type
DISC, BARB = 2.7, 3.2  # mm; radius of the disc behind a letter, and length of an arrow's head
COLUMNS = (0.0, 8.0, 40.0, PAGE - 2 * MARGIN)  # mm; letter, field, words, and the end of figures
WORDS = 90.0  # mm; room for what to measure


@dataclass(frozen=True)
class Picture:
    """A drawing with a title, and the size of the page that it fills, mm."""

    title: str
    size: tuple[float, float]
    drawing: Drawing


def shape_picture(kind: type[Outline], outline: Outline | None, unit: Unit) -> Picture:
    """Return a shape by its name: its purpose, a seat of it, and a list of its measurements.

    Args:
        kind: the shape.
        outline: a seat of it, or None where it has no usual one.
        unit: in which its lengths are shown.
    """
    marks: list[Mark] = []
    y = _heading(kind, marks)
    y = _seat(outline, y, marks) if outline else _in_words(kind, y, marks)
    for field, fact in facts_of(kind).items():
        letter = letters_of(kind, outline).get(field, "")
        y = _listed(letter, field, fact, getattr(outline, field, None), unit, y, marks)
    if outline:
        y -= 2.6 * BODY
        marks.append(
            Letters(complex(MARGIN, y), f"This seat: {sizes(outline.contour(), unit)}", BODY)
        )
    height = MARGIN - y
    return Picture(kind.called, (PAGE, height), Drawing(tuple(marks)).mapped(1, 1j * height))


def without_seat(kind: type[Measured]) -> str:
    """Return where a shape comes from that has no usual measurements."""
    needs_file = any(fact.quantity is FILE and fact.required for fact in facts_of(kind).values())
    return "drawn from a file" if needs_file else "drawn from your measurements"


def sizes(contour: Contour, unit: Unit) -> str:
    """Return the sizes of a seat in a line."""
    size, round_ = by(contour.width, contour.height, unit), show(contour.length, unit)
    return f"{size}, {round_} round, {show_area(contour.area, unit)}"


def _heading(kind: type[Outline], marks: list[Mark]) -> float:
    """Write name and purpose, and return how far down they reach."""
    y = -MARGIN - TITLE * 0.75
    name = f"{kind.called[:1].upper()}{kind.called[1:]}"
    marks.append(Letters(complex(MARGIN, y), name, TITLE, bold=True, colour=INDIGO))
    y -= 2.0
    for line in wrapped(purpose(kind), BODY, PAGE - 2 * MARGIN):
        y -= BODY * LINE
        marks.append(Letters(complex(MARGIN, y), line, BODY, colour=SLATE))
    return y


def purpose(kind: type[Measured]) -> str:
    """Return what a shape or a cover is for: the first line of its docstring."""
    return (kind.__doc__ or "").strip().splitlines()[0]


def _in_words(kind: type[Outline], y: float, marks: list[Mark]) -> float:
    y -= 30.0
    marks.append(Letters(complex(PAGE / 2, y), without_seat(kind), BODY, anchor="middle"))
    return y - 20.0


def _seat(outline: Outline, top: float, marks: list[Mark]) -> float:
    """Draw a seat below ``top``, and return how far down it reaches."""
    contour, lines = _placed(outline, complex(PAGE / 2, top - ROUND))
    rise = box_round(contour, set_off(lines, contour, OFF))[3] - (top - ROUND)
    contour = contour.mapped(1, -1j * rise)
    lines = tuple(line.mapped(1, -1j * rise) for line in lines)
    offset = set_off(lines, contour, OFF)
    low = box_round(contour, offset)[1] - ROUND
    marks += seat_marks(contour)
    named = [*names(contour, offset)]
    marks += (mark for name in named for mark in name.marks)
    marks += (Stroke(Path.through(*line), WITNESS) for line in _leaders(contour, lines, offset))
    for line in offset:
        marks += _measured(line)
    taken = [point for name in named for point in name.points]
    marks += _letters(contour, offset, (MARGIN, low, PAGE - MARGIN, top), taken)
    marks += arrow(complex(sum(contour.bounds[::2]) / 2, low), -1j, 9.0, "FRONT").marks
    return low - 20.0


def _placed(outline: Outline, at: complex) -> tuple[Contour, tuple[Measure, ...]]:
    """Return a seat and its measurement lines to a scale that fits, hung from a place."""
    contour = outline.contour()
    lines = measures(outline, contour)
    left, bottom, right, back = box_round(contour, lines)
    factor = min(ROOM.real / (right - left), ROOM.imag / (back - bottom))
    shift = at - complex((left + right) / 2, back) * factor
    return contour.mapped(factor, shift), tuple(line.mapped(factor, shift) for line in lines)


def _leaders(
    contour: Contour, lines: tuple[Measure, ...], offset: tuple[Measure, ...]
) -> Iterator[tuple[complex, complex]]:
    """Yield the fine lines from the ends of measurements to where they are taken."""
    yield from witnesses(contour, lines)
    for true, moved in zip(lines, offset, strict=True):
        if true != moved:
            yield true.begin, moved.begin
            yield true.end, moved.end


def seat_marks(contour: Contour) -> Iterator[Mark]:
    """Yield a seat as an area within its sew line."""
    yield Fill(contour, PALE)
    yield Stroke(contour, EDGE)


def _measured(line: Measure) -> Iterator[Mark]:
    """Yield a measurement line, with a head at each end; a radius has a dot in its middle."""
    if line.length <= HAIR:
        return
    yield Stroke(Path.through(line.begin, line.end), MEASURED)
    yield Fill(_head(line.end, line.way, line.length), MADDER)
    if line.is_radius:
        yield Fill(disc(line.begin, 0.7), MADDER)
    else:
        yield Fill(_head(line.begin, -line.way, line.length), MADDER)


def _head(tip: complex, way: complex, length: float) -> Path:
    barb = min(BARB, length / 2.5)
    foot = tip - way * barb
    return Path.through(tip, foot + 0.22j * way * barb, foot - 0.22j * way * barb, tip)


def _letters(
    contour: Contour, lines: tuple[Measure, ...], limits: Box, avoid: list[complex]
) -> Iterator[Mark]:
    room = complex(2.2 * DISC, 2.2 * DISC)
    for index, at in spots(contour, lines, room, limits, avoid).items():
        yield Fill(disc(at, DISC), PAPER)
        yield Stroke(disc(at, DISC), MEASURED)
        yield _lettered(at, lines[index].letter)


def _lettered(at: complex, letter: str) -> Letters:
    return Letters(at - 1.35j, letter, BODY, bold=True, anchor="middle", colour=MADDER)


def _listed(
    letter: str, field: str, fact: Fact, value: object, unit: Unit, top: float, marks: list[Mark]
) -> float:
    """Write a row of the list, and return how far down it reaches."""
    lines = wrapped(words_of(fact), BODY, WORDS)
    y = top - 1.6 * BODY * LINE
    at = [complex(MARGIN + column, y) for column in COLUMNS]
    if letter:
        marks.append(Stroke(disc(at[0] + DISC + 1.35j, DISC), MEASURED))
        marks.append(_lettered(at[0] + DISC + 1.35j, letter))
    marks.append(Letters(at[1], field, BODY, bold=True))
    marks.append(Letters(at[3], figure(fact, value, unit), BODY, anchor="right"))
    for number, line in enumerate(lines):
        marks.append(Letters(at[2] - 1j * number * BODY * LINE, line, BODY, colour=BLACK))
    return y - (len(lines) - 1) * BODY * LINE


def figure(fact: Fact, value: object, unit: Unit) -> str:
    """Return a value as the list shows it, its fractions set; how many rows, not each of them."""
    if value is None or value == ():
        return ""
    if isinstance(fact.quantity, Rows):
        return f"{len(value)} rows"  # type: ignore[arg-type]
    if fact.quantity is LENGTH:
        return show(value, unit)  # type: ignore[arg-type]
    return fact.quantity.show(value, unit).strip("'")
