"""A PDF file opened: its pages, what it encloses, what it asks of a viewer; the only user of pypdf.

ISO 32000-1:2008: 7.7 document structure, 7.11.4 enclosed files, 9.9 embedded fonts, 9.10.3 what a
code stands for, 12.2 viewer preferences.
"""

from __future__ import annotations

import logging
import re
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING, Any

import pypdf

from patternmaker.checking.content import Content, content_of_stream
from patternmaker.checking.plane import UPRIGHT, Box, Matrix, shared
from patternmaker.checking.tokens import Unreadable

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

OURS = "patternmaker"
FONT_FILES = ("/FontFile", "/FontFile2", "/FontFile3")
MOST_PAGES = 100_000
CHARS = re.compile(r"beginbfchar(.*?)endbfchar", re.DOTALL)
RANGES = re.compile(r"beginbfrange(.*?)endbfrange", re.DOTALL)


@dataclass(frozen=True)
class Form:
    """A form as it is kept in the file: what it draws, its own matrix and box, what it uses."""

    key: int
    content: Content
    matrix: Matrix
    box: Box | None
    resources: Any


@dataclass(frozen=True)
class Page:
    """A page as it is kept in the file, its box in units of 1/72 in."""

    number: int
    form: Form
    unit: float


class File:
    """A PDF file.

    Raises:
        Unreadable: wherever it is damaged.
    """

    def __init__(self, content: bytes) -> None:
        logging.getLogger("pypdf").setLevel(logging.CRITICAL + 1)  # its faults are told by us
        self._pdf = pypdf.PdfReader(BytesIO(content))
        self._forms: dict[int, Form] = {}
        self._letters: dict[int, dict[int, str]] = {}

    @property
    def is_locked(self) -> bool:
        """Whether it can't be read without a password, or is kept as if."""
        return self._pdf.is_encrypted

    @property
    def is_ours(self) -> bool:
        """Whether it says that patternmaker made it."""
        told = self._pdf.metadata
        return bool(told and str(told.creator or "").startswith(OURS))

    @property
    def asks_not_to_scale(self) -> bool:
        """Whether it asks the viewer to print it at its true size."""
        wishes = _found(self._pdf.root_object, "/ViewerPreferences") or {}
        return bool(_found(wishes, "/PrintScaling") == "/None")

    def enclosed(self, name: str) -> bytes | None:
        """Return the file of a name that it encloses, or None."""
        for title, contents in self._pdf.attachments.items():
            if title == name and contents:
                return bytes(contents[0])
        return None

    def pages(self) -> Iterator[Page]:
        """Yield its pages in order."""
        pages = self._pdf.pages
        if len(pages) > MOST_PAGES:
            raise Unreadable(f"it has {len(pages):,} pages")
        for number, page in enumerate(pages, 1):
            yield self._page(number, page)

    def _page(self, number: int, page: Any) -> Page:
        inner, outer = page.cropbox, page.mediabox
        box = shared(_box(inner), _box(outer))
        stream = page.get_contents()
        data = stream.get_data() if stream is not None else b""
        resources = _found(page, "/Resources") or {}
        content = content_of_stream(data, self._fonts(resources))
        return Page(
            number, Form(-number, content, UPRIGHT, box, resources), float(page.user_unit or 1)
        )

    def form(self, resources: Any, name: str) -> Form | None:
        """Return the form of a name, or None if that is an image."""
        found = (_found(resources, "/XObject") or {})[name]
        stream = found.get_object()
        if stream.get("/Subtype") != "/Form":
            return None
        key = stream.indirect_reference.idnum
        if key not in self._forms:
            own = _found(stream, "/Resources") or resources
            content = content_of_stream(stream.get_data(), self._fonts(own))
            matrix = tuple(float(each) for each in stream.get("/Matrix", UPRIGHT))
            box = tuple(float(each) for each in stream["/BBox"])
            self._forms[key] = Form(key, content, matrix, box, own)  # type: ignore[arg-type]
        return self._forms[key]

    def _fonts(self, resources: Any) -> dict[str, Mapping[int, str]]:
        fonts = _found(resources, "/Font") or {}
        return {name: self._font(font.get_object()) for name, font in fonts.items()}

    def _font(self, font: Any) -> Mapping[int, str]:
        key = font.indirect_reference.idnum if font.indirect_reference else id(font)
        if key not in self._letters:
            told = _found(font, "/ToUnicode")
            text = told.get_data().decode("latin-1") if told is not None else ""
            self._letters[key] = dict(_letters(text))
        return self._letters[key]

    def fonts_elsewhere(self) -> list[str]:
        """Return the names of the fonts that it names without bringing them along."""
        found: dict[str, bool] = {}
        for page in self._pdf.pages:
            fonts = _found(_found(page, "/Resources") or {}, "/Font") or {}
            for font in fonts.values():
                each = font.get_object()
                told = _found(each, "/FontDescriptor") or {}
                within = any(file in told for file in FONT_FILES)
                found[str(each.get("/BaseFont", "?"))] = within
        return sorted(name for name, within in found.items() if not within)


def _box(rectangle: Any) -> Box:
    r = rectangle
    return float(r.left), float(r.bottom), float(r.right), float(r.top)


def _found(table: Any, key: str) -> Any:
    value = table.get(key)
    return value.get_object() if value is not None else None


def _letters(text: str) -> Iterator[tuple[int, str]]:
    """Yield each code and what it stands for."""
    for block in CHARS.findall(text):
        for code, value in re.findall(r"<(\w+)>\s*<(\w+)>", block):
            yield int(code, 16), _spelt(value)
    for block in RANGES.findall(text):
        for low, _, values in re.findall(r"<(\w+)>\s*<(\w+)>\s*\[(.*?)\]", block, re.DOTALL):
            for i, value in enumerate(re.findall(r"<(\w+)>", values)):
                yield int(low, 16) + i, _spelt(value)
        for low, high, value in re.findall(r"<(\w+)>\s*<(\w+)>\s*<(\w+)>", block):
            for i in range(min(256, int(high, 16) - int(low, 16) + 1)):
                yield int(low, 16) + i, chr(int(value, 16) + i)


def _spelt(digits: str) -> str:
    return bytes.fromhex(digits).decode("utf-16-be", "replace")
