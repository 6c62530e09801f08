"""The drawing surface on reportlab: PDF pages at true size, with forms, bookmarks and an index.

Clauses are those of ISO 32000-1:2008.
"""

from __future__ import annotations

from io import BytesIO
from typing import TYPE_CHECKING, Any

import patternmaker
from patternmaker.drawing.typeface import font_file
from patternmaker.geometry.segments import Line

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from reportlab.pdfgen.canvas import Canvas
    from reportlab.pdfgen.pathobject import PDFPathObject

    from patternmaker.drawing.looks import Pen
    from patternmaker.drawing.surface import Colour, Drawing, Letters, Mark
    from patternmaker.geometry.contour import Path
    from patternmaker.geometry.segments import Box
    from patternmaker.writers.bookmarks import Entry

Place = Any  # a page of a file, as bookmarks lead to it
POINTS_PER_INCH = 72  # default user space unit: 8.3.2.3
POINTS_PER_MM = POINTS_PER_INCH / 25.4
VERSION = (1, 7)
FACES = {False: "Lettering", True: "Lettering-Bold"}


class PdfSurface:
    """A page, or a form, in millimetres from its lower left corner."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._pen: Pen | None = None
        self._colour: Colour | None = None

    def stroke(self, path: Path, pen: Pen) -> None:
        """Draw along ``path``."""
        self._take(pen)
        self._canvas.drawPath(self._traced(path), stroke=1, fill=0)

    def fill(self, path: Path, colour: Colour) -> None:
        """Fill inside ``path``."""
        self._ink(colour)
        self._canvas.drawPath(self._traced(path), stroke=0, fill=1)

    def letter(self, letters: Letters) -> None:
        """Write a line of text."""
        face, size = FACES[letters.bold], letters.size * POINTS_PER_MM
        self._ink(letters.colour)
        text = self._canvas.beginText()
        text.setFont(face, size)
        way, at = letters.way, letters.at * POINTS_PER_MM
        if letters.anchor != "left":
            width = self._canvas.stringWidth(letters.text, face, size)
            at -= way * width * {"middle": 0.5, "right": 1.0}[letters.anchor]
        if way == 1:  # the same matrix, less arithmetic to write down
            text.setTextOrigin(at.real, at.imag)
        else:
            text.setTextTransform(way.real, way.imag, -way.imag, way.real, at.real, at.imag)
        text.textOut(letters.text)
        self._canvas.drawText(text)

    def _take(self, pen: Pen) -> None:
        if pen == self._pen:
            return
        self._pen = pen
        self._canvas.setLineWidth(pen.width * POINTS_PER_MM)
        self._canvas.setDash([dash * POINTS_PER_MM for dash in pen.dashes])
        self._canvas.setStrokeColorRGB(*pen.colour)

    def _ink(self, colour: Colour) -> None:
        if colour != self._colour:
            self._colour = colour
            self._canvas.setFillColorRGB(*colour)

    def _traced(self, path: Path) -> PDFPathObject:
        """Return a path as lines and Bezier curves of 45 degrees at most."""
        traced = self._canvas.beginPath()
        first, last = path.segments[0].start, path.segments[-1].end
        traced.moveTo(*_xy(first))
        for segment in path.segments:
            if isinstance(segment, Line):
                traced.lineTo(*_xy(segment.end))
                continue
            for one, two, end in segment.beziers():
                traced.curveTo(*_xy(one), *_xy(two), *_xy(end))
        if len(path.segments) > 1 and abs(first - last) < 1e-6:
            traced.close()
        return traced


def _xy(point: complex) -> tuple[float, float]:
    return point.real * POINTS_PER_MM, point.imag * POINTS_PER_MM


class PdfPage(PdfSurface):
    """A page, on which forms can be placed."""

    def place(self, form: str, clip: Box | None = None, shift: complex = 0) -> None:
        """Draw a form, moved by ``shift``, as far as it lies inside ``clip`` on the page."""
        canvas = self._canvas
        canvas.saveState()
        if clip:
            left, bottom, right, top = (side * POINTS_PER_MM for side in clip)
            window = canvas.beginPath()
            window.rect(left, bottom, right - left, top - bottom)
            canvas.clipPath(window, stroke=0, fill=0)
        if shift:
            canvas.translate(*_xy(shift))
        canvas.doForm(form)
        canvas.restoreState()


class PdfBook:
    """A PDF file while it is written; in memory, so that nothing is left half done.

    The same calls give the same bytes: no clock, no chance (``invariant``). The viewer is asked
    not to scale (ViewerPreferences, PrintScaling, 12.2).
    """

    def __init__(self, title: str, subject: str) -> None:
        from reportlab import rl_config
        from reportlab.pdfbase import pdfmetrics
        from reportlab.pdfbase.ttfonts import TTFont
        from reportlab.pdfgen.canvas import Canvas

        from patternmaker.writers.layers import Layers

        rl_config.useA85 = 0  # streams stay binary: a fifth smaller
        for bold, face in FACES.items():
            pdfmetrics.registerFont(TTFont(face, str(font_file(bold=bold))))
        self._file = BytesIO()
        self._canvas = Canvas(
            self._file, pdfVersion=VERSION, invariant=1, pageCompression=1,
            initialFontName=FACES[False],  # type: ignore[arg-type]
        )  # fmt: skip
        self._canvas.setTitle(title)
        self._canvas.setSubject(subject)
        self._canvas.setCreator(f"patternmaker {patternmaker.__version__}")
        self._canvas.setAuthor("patternmaker")
        self._canvas.setViewerPreference("PrintScaling", "None")
        self._forms = 0
        self._layers = Layers(self._canvas)
        self._entries: list[Entry] = []

    def form(
        self,
        drawing: Drawing,
        width: float,
        height: float,
        layer_of: Callable[[Mark], str] | None = None,
    ) -> str:
        """Keep a drawing that pages can place, its marks on layers if asked; return its name.

        The box is passed on: a form's own default is the page's, which would clip a large pattern.
        """
        name = f"f{self._forms}"
        self._forms += 1
        self._canvas.beginForm(name, 0, 0, width * POINTS_PER_MM, height * POINTS_PER_MM)
        surface = PdfSurface(self._canvas)
        if layer_of is None:
            drawing.onto(surface)
            self._canvas.endForm()
            return name
        for mark in self._layers.runs(drawing, layer_of):
            mark.onto(surface)
        self._canvas.endForm(Resources=self._layers.resources())
        return name

    def page(
        self, width: float, height: float, fitted: tuple[float, float, complex] | None = None
    ) -> PdfPage:
        """Begin a page of a size; all on it is ``fitted``: scaled each way, then moved."""
        self._canvas.setPageSize((width * POINTS_PER_MM, height * POINTS_PER_MM))
        if fitted:
            x, y, shift = fitted
            self._canvas.transform(x, 0, 0, y, *_xy(shift))
        return PdfPage(self._canvas)

    def end_page(self) -> None:
        """End the page that was begun last."""
        self._canvas.showPage()

    def place(self) -> Place:
        """Return the page that was begun last, for bookmarks to lead to."""
        return self._canvas._doc.thisPageRef()  # type: ignore[attr-defined]  # noqa: SLF001

    def bookmark(self, title: str, place: Place, below: Iterable[tuple[str, Place]] = ()) -> None:
        """Enter a page in the file's outline, and others folded away below it."""
        from patternmaker.writers.bookmarks import Entry

        self._entries.append(Entry(title, place, [Entry(*each) for each in below]))

    def label(self, before: str = "") -> None:
        """Label the page that was begun last, and those after it, 1, 2, 3 (12.4.2)."""
        self._canvas.addPageLabel(self._canvas.getPageNumber() - 1, "ARABIC", 1, before or None)

    def enclose(self, name: str, says: str, content: bytes) -> None:
        """Put a file into the file, as viewers show it among the attachments."""
        from patternmaker.writers.enclosing import enclose

        enclose(self._canvas, name, says, content)

    def finished(self) -> bytes:
        """Return the whole file."""
        self._layers.enter()
        if self._entries:
            from patternmaker.writers.bookmarks import enter

            enter(self._canvas, self._entries)
            self._canvas.showOutline()
        self._canvas.save()
        return self._file.getvalue()
