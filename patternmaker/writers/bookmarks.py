"""The outline of a PDF (ISO 32000-1:2008, 12.3.3): several entries may lead to one page.

reportlab's own has one title for each place, and is slow with thousands.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFString

if TYPE_CHECKING:
    from collections.abc import Sequence

    from reportlab.pdfgen.canvas import Canvas


@dataclass
class Entry:
    """A title, the page that it leads to, and what is folded away below it."""

    title: str
    page: Any
    below: list[Entry] = field(default_factory=list)


class _Outline(PDFDictionary):
    """An outline that is ready before reportlab asks it to be."""

    ready = 1

    def prepare(self, document: object, canvas: object) -> None:
        """Do nothing more."""


def enter(canvas: Canvas, entries: Sequence[Entry]) -> None:
    """Give the file that a canvas writes its outline."""
    document = canvas._doc  # type: ignore[attr-defined]  # noqa: SLF001
    outline = _Outline({"Type": PDFName("Outlines"), "Count": len(entries)})
    _link(document, outline, entries)
    document.outline = document.Outlines = document.Catalog.Outlines = outline


def _link(document: Any, above: PDFDictionary, entries: Sequence[Entry]) -> None:
    """Write entries as a chain below another, each with its own below it."""
    parent = document.Reference(above)
    items = [PDFDictionary({"Title": PDFString(each.title), "Parent": parent}) for each in entries]
    chain = [document.Reference(item) for item in items]
    above["First"], above["Last"] = chain[0], chain[-1]
    for each, item, before, after in zip(
        entries, items, [None, *chain], [*chain[1:], None], strict=False
    ):
        item["Dest"] = PDFArray([each.page, PDFName("Fit")])
        if before:
            item["Prev"] = before
        if after:
            item["Next"] = after
        if each.below:
            item["Count"] = -len(each.below)  # folded away
            _link(document, item, each.below)
