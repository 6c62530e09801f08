"""The proof page: a triangle as large as the paper takes, to measure what a printer makes of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.drawing.labels import show
from patternmaker.drawing.surface import Drawing, Letters, Stroke
from patternmaker.geometry.contour import Path
from patternmaker.sheets.flow import TEXT, flowed, paragraph, space
from patternmaker.sheets.furniture import BAR
from patternmaker.sheets.sides import ROOM, proved, quoted
from patternmaker.writers.pdf import PdfBook

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.drawing.surface import Mark
    from patternmaker.sheets.flow import Block
    from patternmaker.sheets.papers import Stock
    from patternmaker.sheets.printer import Sides
    from patternmaker.units import Unit

TITLE = "Proof of the printer"
HEAD = 6.0  # mm; type of the title
BODY = 3.6  # mm; type of the words where there is room
NAME = 3.8  # mm; type of the sides' lengths
CLEAR = 5.0  # mm between the triangle and the words


def proof_page(stock: Stock, unit: Unit, command: str) -> bytes:
    """Return the page as a PDF; ``command`` is what its reader types next, but for the sides."""
    book = PdfBook(TITLE, "Proof triangle: print at actual size")
    page = book.page(*stock.page(landscape=False), stock.fitted(landscape=False))
    drawing = Drawing((*_triangle(proved(unit, stock), unit), *_words(stock, unit, command)))
    drawing.mapped(1, stock.margins.corner).onto(page)
    book.end_page()
    return book.finished()


def _corner() -> complex:
    return complex(ROOM.real - 1.5, ROOM.imag - 1)


def _triangle(sides: Sides, unit: Unit) -> Iterator[Mark]:
    """Yield the triangle in one stroke, its right angle at the lower left, and its lengths."""
    corner, across, up = _corner(), sides.across, 1j * sides.up
    yield Stroke(Path.through(corner, corner + up, corner + across, corner), BAR)
    slope = (across - up) / abs(across - up)
    for at, text, way in (
        (corner + across / 2 - 1j * (NAME + 0.8), f"across: {show(across, unit)}", 1 + 0j),
        (corner + up / 2 - 1.4, f"up: {show(sides.up, unit)}", 1j),
        (corner + (across + up) / 2 + 1j * slope * 1.6,
         f"long side: {show(abs(across - up), unit)}", slope),
    ):  # fmt: skip
        yield Letters(at, text, NAME, bold=True, anchor="middle", way=way)


def _words(stock: Stock, unit: Unit, command: str) -> tuple[Mark, ...]:
    """Return the words: inside of a triangle that stands, above one that lies."""
    sides, (width, height) = proved(unit, stock), stock.window(landscape=False)
    at = _corner() + complex(CLEAR, CLEAR)
    if sides.across < sides.up:
        room, type_size = (sides.across / 2 - CLEAR, sides.up / 2 - CLEAR), BODY
    else:
        at = complex(_corner().real, at.imag + sides.up)
        room, type_size = (width - at.real, height - at.imag), TEXT
    pages = flowed(_blocks(stock, command, room[0], type_size), *room)
    return pages[0].mapped(1, at).marks


def _blocks(stock: Stock, command: str, width: float, size: float) -> Iterator[Block]:
    yield paragraph(TITLE, width, bold=True, size=HEAD, keeps=True)
    yield space(1)
    if stock.printer:
        says = f"Drawn for {stock.printer.name}: {stock.printer.set_mended} the paper."
        yield paragraph(
            f"{says} Printed there at actual size (100 %), all three sides must now be right. They "
            "are not to be told again as measured.", width, size=size,
        )  # fmt: skip
        return
    yield paragraph(
        f"Print at actual size (100 %) on {stock.paper.name}. Measure all three sides, from the "
        "middle of one line to the middle of the next, as finely as your rule tells. Say what "
        "they are:", width, size=size,
    )  # fmt: skip
    yield space(1)
    yield paragraph(command, width, bold=True, size=size)


def command_for(name: str, more: str = "") -> str:
    """Return what a person types to tell the sides."""
    sides = " ".join(f"--{side} …" for side in ("across", "up", "long-side"))
    return f"patternmaker printer {quoted(name or 'NAME')} {sides}{more}"
