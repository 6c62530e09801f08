"""Prints and papers that several tests of the sheets share."""

from patternmaker.drawing.prints import Print
from patternmaker.drawing.surface import Drawing, rectangle
from patternmaker.geometry.contour import Contour
from patternmaker.outlines.circle import Circle
from patternmaker.sheets.papers import PAPERS, Margins, Stock

A4 = Stock(PAPERS["a4"], Margins(10, 10, 10, 13), overlap=10)  # shows 190 by 274


def board(width: float, height: float, name: str = "board") -> Print:
    """Return the print of a rectangle."""
    return Print(name, "Seat", Drawing(()), Contour(rectangle((0, 0, width, height)).segments))


def disc(diameter: float, name: str = "disc") -> Print:
    """Return the print of a circle."""
    return Print(name, "Seat", Drawing(()), Circle(diameter=diameter).contour())


def shaped(contour: Contour, size: float = 1.0, name: str = "shape") -> Print:
    """Return the print of a contour, so many times as large."""
    return Print(name, "Seat", Drawing(()), contour.mapped(size))
