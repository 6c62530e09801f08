"""The bookmarks of a file: each piece and the sheets that show it, so that it is printed alone.

The labels of pages are the numbers that stand on them, so that a print dialog takes those.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from patternmaker.sheets.map import NumberedPlate
    from patternmaker.writers.pdf import PdfBook, Place

OVERVIEW, CARD = "Overview ", "Card "  # before the number in the label of such a page
SHEET = "Sheet"


def sheets_of(plates: Sequence[NumberedPlate]) -> Mapping[str, tuple[int, ...]]:
    """Return the numbers of the sheets that show each piece of each seat, by its title."""
    found: dict[str, list[int]] = {}
    for plate in plates:
        titles = {each.title: each.titles for each in plate.plate.prints}
        for number, place in enumerate(plate.plate.sheets, plate.first_sheet):
            for shown in plate.plate.shows[place]:
                for title in titles[shown]:
                    found.setdefault(title, []).append(number)
    return {title: tuple(numbers) for title, numbers in found.items()}


def enter_pieces(
    book: PdfBook, titles: Iterable[str], shown: Mapping[str, Sequence[int]], pages: Sequence[Place]
) -> None:
    """Enter each piece in the file's outline, and below it its sheets where there are several.

    Args:
        book: the file.
        titles: of the pieces, in the order of the cut list.
        shown: the numbers of the sheets that show each.
        pages: the page of each sheet.
    """
    for title in titles:
        if title in shown:
            each = [(f"{SHEET} {number}", pages[number - 1]) for number in shown[title]]
            book.bookmark(title, each[0][1], each if len(each) > 1 else ())
