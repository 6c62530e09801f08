"""Files enclosed in a PDF (ISO 32000-1:2008, 7.11.4), which reportlab has no verb for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from reportlab.pdfbase.pdfdoc import (
    PDFArray,
    PDFDictionary,
    PDFName,
    PDFStream,
    PDFString,
    PDFZCompress,
)

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

JSON = "application#2Fjson"  # a media type as a name, its slash escaped: 7.3.5


def enclose(canvas: Canvas, name: str, says: str, content: bytes) -> None:
    """Put a JSON file into the file that a canvas writes; it is the only one enclosed."""
    document = canvas._doc  # type: ignore[attr-defined]  # noqa: SLF001
    kind = PDFDictionary({"Type": PDFName("EmbeddedFile"), "Subtype": PDFName(JSON)})
    kept = document.Reference(PDFStream(kind, content, filters=[PDFZCompress]))
    told = {
        "Type": PDFName("Filespec"), "F": PDFString(name), "UF": PDFString(name),
        "Desc": PDFString(says), "EF": PDFDictionary({"F": kept, "UF": kept}),
    }  # fmt: skip
    files = PDFArray([PDFString(name), document.Reference(PDFDictionary(told))])
    document.Catalog.Names = PDFDictionary({"EmbeddedFiles": PDFDictionary({"Names": files})})
