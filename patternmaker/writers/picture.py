"""The drawing surface on svgwrite: an SVG picture to look at, with its lettering as text.

For cutters there is `writers.svg`, which writes lines alone. Clauses are those of SVG 1.1 (second
edition).
"""

from __future__ import annotations

import math
from io import StringIO
from typing import TYPE_CHECKING, Any

from patternmaker.drawing.looks import PAPER
from patternmaker.errors import printable  # XML 1.0 allows no control characters: 2.2
from patternmaker.writers.svg import hex_of, number, path_data

if TYPE_CHECKING:
    from patternmaker.drawing.looks import Pen
    from patternmaker.drawing.surface import Colour, Drawing, Letters
    from patternmaker.geometry.contour import Path

FACES = 'Roboto, "Helvetica Neue", Helvetica, Arial, sans-serif'  # the first that is there: 10.10
ANCHORS = {"left": "start", "middle": "middle", "right": "end"}  # 10.9.1


class SvgPicture:
    """A picture in millimetres from its lower left corner, on white.

    Args:
        title: what it shows.
        size: its width and height, mm.
    """

    def __init__(self, title: str, size: tuple[float, float]) -> None:
        import svgwrite

        width, self._height = size
        self._svg: Any = svgwrite.Drawing(
            size=(f"{number(width)}mm", f"{number(self._height)}mm"),
            viewBox=f"0 0 {number(width)} {number(self._height)}",
            profile="full",
        )
        self._svg.set_desc(title=printable(title))
        self._svg.add(self._svg.rect((0, 0), (number(width), number(self._height)),
                                     fill=hex_of(PAPER)))  # fmt: skip

    def stroke(self, path: Path, pen: Pen) -> None:
        """Draw along ``path``."""
        more = {"stroke_dasharray": ",".join(map(number, pen.dashes))} if pen.dashes else {}
        self._svg.add(
            self._svg.path(
                d=path_data(path, self._height), fill="none", stroke=hex_of(pen.colour),
                stroke_width=number(pen.width), stroke_linejoin="round", **more,
            )
        )  # fmt: skip

    def fill(self, path: Path, colour: Colour) -> None:
        """Fill inside ``path``."""
        self._svg.add(self._svg.path(d=path_data(path, self._height), fill=hex_of(colour)))

    def letter(self, letters: Letters) -> None:
        """Write a line of text."""
        x, y = number(letters.at.real), number(self._height - letters.at.imag)
        more: dict[str, str] = {"font_weight": "bold"} if letters.bold else {}
        if letters.way != 1:
            angle = -math.degrees(math.atan2(letters.way.imag, letters.way.real))
            more["transform"] = f"rotate({number(angle)} {x} {y})"
        self._svg.add(
            self._svg.text(
                printable(letters.text), insert=(x, y), font_family=FACES,
                font_size=number(letters.size), fill=hex_of(letters.colour),
                text_anchor=ANCHORS[letters.anchor], **more,
            )
        )  # fmt: skip

    def finished(self) -> bytes:
        """Return the whole file."""
        text = StringIO()
        self._svg.write(text)
        return text.getvalue().encode()


def picture_file(title: str, size: tuple[float, float], drawing: Drawing) -> bytes:
    """Return a drawing as an SVG file."""
    picture = SvgPicture(title, size)
    drawing.onto(picture)
    return picture.finished()
