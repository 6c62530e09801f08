"""Lines as SVG at true size, on svgwrite: one group for each kind of line, nothing filled.

Clauses are those of SVG 1.1 (second edition).
"""

from __future__ import annotations

from io import StringIO
from typing import TYPE_CHECKING, Any

from patternmaker.geometry.contour import Contour
from patternmaker.geometry.plain import as_circle
from patternmaker.geometry.segments import Arc

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from patternmaker.drawing.surface import Colour
    from patternmaker.geometry.contour import Path

DIGITS = 6  # after the point; a millionth of a millimetre
HAIRLINE = 0.1  # mm; width of every line: a cutter follows its middle


def svg_file(
    title: str,
    size: tuple[float, float],
    groups: Mapping[str, tuple[Colour, Iterable[tuple[str, Path]]]],
) -> bytes:
    """Return an SVG file in millimetres (7.2, 7.7: one user unit is 1 mm), y downward.

    Args:
        title: the title of the whole drawing.
        size: its width and height, mm.
        groups: for each kind of line its colour, and its lines with their titles.
    """
    import svgwrite

    width, height = size
    drawing = svgwrite.Drawing(
        size=(f"{number(width)}mm", f"{number(height)}mm"),
        viewBox=f"0 0 {number(width)} {number(height)}",
        profile="full",
    )
    drawing.set_desc(title=title)
    for kind, (colour, lines) in groups.items():
        group = drawing.g(
            id=kind.replace(" ", "-"), fill="none", stroke=hex_of(colour), stroke_width=HAIRLINE
        )
        group.set_desc(title=kind)
        for name, path in lines:
            element = _element(drawing, path, height)
            element.set_desc(title=name)
            group.add(element)
        drawing.add(group)
    text = StringIO()
    drawing.write(text)
    return text.getvalue().encode()


def _element(drawing: Any, path: Path, height: float) -> Any:
    circle = as_circle(path) if isinstance(path, Contour) else None
    if circle:
        centre = number(circle.centre.real), number(height - circle.centre.imag)
        return drawing.circle(center=centre, r=number(circle.radius))
    return drawing.path(d=path_data(path, height))


def path_data(path: Path, height: float) -> str:
    """Return a path in absolute commands M, L, A and Z (8.3), turned over to run y downward."""

    def spot(point: complex) -> str:
        return f"{number(point.real)},{number(height - point.imag)}"

    data = [f"M{spot(path.segments[0].start)}"]
    for segment in path.segments:
        if isinstance(segment, Arc):
            radius, large = number(segment.radius), int(abs(segment.sweep) > 3.141592653589793)
            data.append(f"A{radius},{radius} 0 {large} {int(segment.sweep < 0)} "
                        f"{spot(segment.end)}")  # fmt: skip
        else:
            data.append(f"L{spot(segment.end)}")
    return " ".join([*data, "Z"] if isinstance(path, Contour) else data)


def number(value: float) -> str:
    """Return a number as it is written: without an exponent, nor a minus before nought."""
    text = f"{value:.{DIGITS}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def hex_of(colour: Colour) -> str:
    """Return a colour as it is written (4.2)."""
    return "#" + "".join(f"{round(share * 255):02x}" for share in colour)
