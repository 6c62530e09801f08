"""A printed plate put together as a person does: cut or folded where a sheet says so, and taped.

Nothing is looked at but what is printed: the words at the edges, the numbers and the crosses.
Paper is opaque: what is laid on top hides what lies below.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from io import BytesIO
from typing import TYPE_CHECKING, Any

import numpy as np
import pypdf
import pypdfium2
from pypdf.generic import DecodedStreamObject, DictionaryObject, NameObject

from tests.paper.raster import Ink, rendered
from tests.paper.reader import MM

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from tests.paper.samples import Made
    from tests.paper.sheets import Sheet

EDGE = 60.0  # mm kept round a plate, for the margins of its sheets


@dataclass(frozen=True)
class Assembled:
    """The ink of a plate's sheets, and where there is paper, from EDGE below its lower left."""

    ink: Ink
    paper: NDArray[np.bool_]
    dots: int
    offs: tuple[complex, ...]

    @classmethod
    def of(cls, printed: Made, sheets: list[Sheet], dots: int) -> Assembled:
        """Lay each sheet to the ones before it, so many dots to the mm."""
        laid = {sheets[0].number: sheets[0].placed.origin}
        offs: list[complex] = []
        size = np.max([sheet.window[2:] for sheet in sheets], axis=0) + 2 * EDGE
        ink = np.zeros((int(size[1] * dots), int(size[0] * dots)), dtype=np.float32)
        table = cls(ink, np.zeros(ink.shape, dtype=np.bool_), dots, ())
        for sheet in sheets:
            if sheet.number not in laid:
                places = list(_by_crosses(sheet, sheets, laid))
                offs += (place - places[0] for place in places)
                laid[sheet.number] = sum(places) / len(places)
            table._lay(printed, sheet, -laid[sheet.number])
        return replace(table, offs=tuple(offs))

    def _lay(self, printed: Made, sheet: Sheet, corner: complex) -> None:
        """Lay what is left of a page on what lies there, its corner at ``corner``.

        A knife takes no more than what lies past the line; a dot that it halves stays.
        """
        page = rendered(printed.pdf, sheet.page, 25.4 * self.dots).ink[::-1]
        x, y = (round((part + EDGE) * self.dots) for part in (corner.real, corner.imag))
        left, bottom, right, top = (side * self.dots for side in kept(sheet))
        left, bottom = math.floor(left), math.floor(bottom)
        right, top = min(math.ceil(right), page.shape[1]), min(math.ceil(top), page.shape[0])
        here = (slice(y + bottom, y + top), slice(x + left, x + right))
        self.ink[here] = page[bottom:top, left:right]
        self.paper[here] = True

    def at(self, spots: NDArray[Any]) -> Ink:
        """Return the ink at places of the plate."""
        rows, columns = (
            ((part + EDGE) * self.dots).astype(int) for part in (spots.imag, spots.real)
        )
        return np.asarray(self.ink[rows, columns], np.float32)


def _by_crosses(sheet: Sheet, sheets: list[Sheet], laid: dict[int, complex]) -> Any:
    """Yield where the plate's origin lies on a sheet, by each cross that it shares."""
    for other in sheets:
        if other.number in laid:
            for number in sheet.joins.keys() & other.joins.keys():
                pairs = zip(sheet.joins[number], other.joins[number], strict=True)
                yield from (laid[other.number] + here - there for here, there in pairs)


def kept(sheet: Sheet) -> tuple[float, float, float, float]:
    """Return what is left of a page once it is cut or folded where it says so.

    Its blank margins are gone too: the overview says so of those that would cover a line.
    """
    left, bottom, right, top = sheet.page_clip
    for line, _ in sheet.edges:
        x, y = line.middle.real, line.middle.imag
        if line.size[0] < line.size[1]:
            left, right = (x, right) if x < sheet.page.size[0] / 2 else (left, x)
        else:
            bottom, top = (y, top) if y < sheet.page.size[1] / 2 else (bottom, y)
    return left, bottom, right, top


def undivided(printed: Made, sheet: Sheet, dots: int) -> Ink:
    """Return the ink of the whole plate that a sheet shows, as one page rendered at once."""
    source = printed.book.paper.pdf.pages[sheet.page.number]
    name = sheet.placed.form.split()[0]
    form = source["/Resources"]["/XObject"][name]  # type: ignore[index]
    writer = pypdf.PdfWriter()
    width, height = (float(side) for side in form["/BBox"][2:])
    page = writer.add_blank_page(width, height)
    plate = DictionaryObject({NameObject("/Plate"): form.clone(writer).indirect_reference})
    page[NameObject("/Resources")] = DictionaryObject({NameObject("/XObject"): plate})
    stream = DecodedStreamObject()
    stream.set_data(b"/Plate Do")
    page[NameObject("/Contents")] = writer._add_object(stream)
    content = BytesIO()
    writer.write(content)
    with pypdfium2.PdfDocument(content.getvalue()) as document:
        grey = np.array(document[0].render(scale=25.4 * dots / 72, grayscale=True).to_numpy())
    ink = np.float32(1) - grey.reshape(grey.shape[:2])[::-1].astype(np.float32) / np.float32(255)
    assert abs(ink.shape[1] - width * MM * dots) < 2
    return ink
