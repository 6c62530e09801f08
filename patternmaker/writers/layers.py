"""Layers that a viewer can switch (ISO 32000-1:2008, 8.11), which reportlab has no verb for."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING, Any

from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFResourceDictionary
from reportlab.pdfbase.pdfdoc import PDFString as PdfText

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from reportlab.pdfgen.canvas import Canvas

    from patternmaker.drawing.surface import Drawing, Mark


class Layers:
    """The layers of a file, in the order in which they are first drawn on."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas: Any = canvas
        self._known: dict[str, tuple[str, Any]] = {}

    def runs(self, drawing: Drawing, layer_of: Callable[[Mark], str]) -> Iterator[Mark]:
        """Yield the marks of a drawing, each run of them set off as content of its layer."""
        for name, marks in groupby(drawing.marks, layer_of):
            self._canvas._code.append(f"/OC /{self._key(name)} BDC")  # noqa: SLF001
            yield from marks
            self._canvas._code.append("EMC")  # noqa: SLF001

    def _key(self, name: str) -> str:
        if name not in self._known:
            group = PDFDictionary({"Type": PDFName("OCG"), "Name": PdfText(name)})
            reference = self._canvas._doc.Reference(group)  # noqa: SLF001
            self._known[name] = f"L{len(self._known)}", reference
        return self._known[name][0]

    def resources(self) -> PDFResourceDictionary:
        """Return the resources of a form that is drawn on them."""
        found = PDFResourceDictionary(Properties=dict(self._known.values()))
        found.basicFonts()
        return found

    def enter(self) -> None:
        """List them in the file, all of them on."""
        if not self._known:
            return
        groups = PDFArray([reference for _, reference in self._known.values()])
        shown = PDFDictionary({"Order": groups})
        catalog = self._canvas._doc.Catalog  # noqa: SLF001
        catalog.OCProperties = PDFDictionary({"OCGs": groups, "D": shown})
        catalog.__NoDefault__ = [*catalog.__NoDefault__, "OCProperties"]
