"""The sheets of a printed job, found by what is drawn on them: windows, crosses, numbers, lines."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from typing import TYPE_CHECKING

from tests.paper.reader import Box, Line, Page, Paper, Pen, Placed, Words

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tests.paper.curves import Curve

LARGEST_CROSS = 25.0  # mm


@dataclass(frozen=True)
class Sheet:
    """A page that shows a part of a plate."""

    page: Page
    placed: Placed
    number: int
    of: int

    @property
    def window(self) -> Box:
        """What it shows of its plate, in the plate's coordinates."""
        assert self.placed.clip
        left, bottom, right, top = self.placed.clip
        x, y = self.placed.origin.real, self.placed.origin.imag
        return left - x, bottom - y, right - x, top - y

    @property
    def page_clip(self) -> Box:
        """The window in which it shows its plate, on the page."""
        assert self.placed.clip
        return self.placed.clip

    @cached_property
    def _lines(self) -> list[Curve]:
        """The dashed lines of its joins, on the page."""
        return [
            line.curve
            for line in lone_lines(self.page)
            if line.pen.dashes and line.curve.length > LARGEST_CROSS
        ]

    @cached_property
    def edges(self) -> list[tuple[Curve, str]]:
        """The lines along which something is done to it, each with the word beside it."""
        return [
            (min(self._lines, key=lambda line: _off(line, word.middle)), word.text)
            for word in lone_words(self.page)
            if word.text.isupper()
        ]

    @cached_property
    def joins(self) -> dict[int, list[complex]]:
        """The crosses of each join, by the number beside its dashed line, on the page."""
        marks = crosses(self.page)
        found: dict[int, list[complex]] = {}
        for word in self.page.words:
            if word.placed is None and re.fullmatch(r"\d+", word.text):
                line = min(self._lines, key=lambda line: _off(line, word.middle))
                on_it = [cross for cross in marks if _off(line, cross) < 0.02]
                found.setdefault(int(word.text), []).extend(on_it)
        return {number: _once(places) for number, places in found.items()}


def _off(line: Curve, point: complex) -> float:
    """Return how far a point lies from a straight line, or from its nearer end."""
    along = (point - line.start) / (line.end - line.start)
    nearest = line.start + min(1.0, max(0.0, along.real)) * (line.end - line.start)
    return abs(point - nearest)


def _once(points: list[complex]) -> list[complex]:
    """Return points in order, those that coincide once."""
    kept: list[complex] = []
    for point in points:
        if all(abs(point - other) > 0.01 for other in kept):
            kept.append(point)
    return sorted(kept, key=lambda point: (round(point.real, 1), round(point.imag, 1)))


def crosses(page: Page) -> list[complex]:
    """Return the middles of the crosses: two strokes of one length that halve each other."""
    strokes = [
        line.curve
        for line in lone_lines(page)
        if len(line.curve.pieces) == 1 and line.curve.length < LARGEST_CROSS and not line.pen.dashes
    ]
    return [
        (one.middle + two.middle) / 2
        for one, two in combinations(strokes, 2)
        if abs(one.middle - two.middle) < 0.01
        and abs(one.length - two.length) < 0.01
        and abs(((one.end - one.start) / (two.end - two.start)).real) < 1e-6
    ]


class Print:
    """A printed job."""

    def __init__(self, content: bytes) -> None:
        self.paper = Paper(content)

    @cached_property
    def sheets(self) -> list[Sheet]:
        return [sheet for page in self.paper.pages if (sheet := _sheet(page))]

    @property
    def overview(self) -> list[Page]:
        """The pages that come before the sheets."""
        first = self.sheets[0].page.number
        return self.paper.pages[:first]

    @cached_property
    def plates(self) -> dict[str, list[Sheet]]:
        """The sheets of each plate, in order."""
        found: dict[str, list[Sheet]] = {}
        for sheet in self.sheets:
            found.setdefault(sheet.placed.form, []).append(sheet)
        return found

    @cached_property
    def pens(self) -> dict[Pen, str]:
        """What each pen means, by the key that the overview prints."""
        found: dict[Pen, str] = {}
        for page in self.overview:
            heads = [word for word in page.words if word.text == "Lines"]
            for head in heads:
                found |= _key(page, head)
        return found

    @cached_property
    def lines(self) -> list[tuple[str, str, Curve]]:
        """Each line of each plate: plate, kind, and where it runs in the plate."""
        found = []
        for form, sheets in self.plates.items():
            page, origin = sheets[0].page, sheets[0].placed.origin
            for line in page.lines:
                if line.placed and line.placed.form == form:
                    kind = self.pens.get(rounded(line.pen), "")
                    found.append((form, kind, line.curve.moved(1, -origin)))
        return found

    def words(self, form: str) -> list[tuple[str, complex]]:
        """Return what is lettered on a plate, and about where the middle of each string stands."""
        page, origin = self.plates[form][0].page, self.plates[form][0].placed.origin
        lettered = (word for word in page.words if word.placed and word.placed.form == form)
        return [(word.text, word.middle - origin) for word in lettered]

    def drawn(self, kind: str) -> list[tuple[str, Curve]]:
        """Return the lines of one kind, with their plates."""
        return [(form, curve) for form, each, curve in self.lines if each == kind]


def _sheet(page: Page) -> Sheet | None:
    windows = {line.placed for line in page.lines if line.placed and line.placed.clip}
    if not windows:
        return None
    (placed,) = windows
    says = [re.search(r"(\d+) of (\d+)", w.text) for w in page.words if w.placed is None]
    (found,) = [each for each in says if each]
    return Sheet(page, placed, int(found[1]), int(found[2]))


def _key(page: Page, head: Words) -> dict[Pen, str]:
    """Return the pens of the samples below a heading, each with the word to its right."""
    found: dict[Pen, str] = {}
    for line in page.lines:
        left, bottom, right, top = line.curve.box
        if top - bottom > 4 or right - left > 40 or top > head.at.imag:
            continue
        middle = (top + bottom) / 2
        beside = [
            word
            for word in page.words
            if abs(word.at.imag + word.size * 0.35 - middle) < 1.5 and 0 < word.at.real - right < 8
        ]
        if beside:
            found[rounded(line.pen)] = min(beside, key=lambda word: word.at.real).text
    return found


def rounded(pen: Pen) -> Pen:
    """Return a pen that two drawings of it agree on."""
    return Pen(
        round(pen.width, 3), tuple(round(dash, 3) for dash in pen.dashes),
        tuple(round(share, 2) for share in pen.colour),
    )  # fmt: skip


def plain(words: Iterable[Words]) -> str:
    """Return what words say in one line, set fractions written as 1/2."""
    joined = " ".join(word.text for word in words)
    apart = re.sub(r"(?<=\d)\s*([⁰¹²³⁴-⁹]+⁄)", r" \1", joined)
    return " ".join(unicodedata.normalize("NFKC", apart).replace("⁄", "/").split())


def lone_lines(page: Page) -> list[Line]:
    """Return what a page draws outside of its plate."""
    return [line for line in page.lines if not (line.placed and line.placed.clip)]


def lone_words(page: Page) -> list[Words]:
    """Return what a page says outside of its plate."""
    return [word for word in page.words if not (word.placed and word.placed.clip)]
