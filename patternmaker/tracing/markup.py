"""XML read with care: nothing is fetched, nothing expanded, and nothing can grow.

expat alone is asked, event by event. A document type with declarations of its own is refused
before any entity can be used (so no "billion laughs", no outside entity), and so is whatever
refers to another file.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING
from xml.parsers import expat

from patternmaker.errors import Refusal

if TYPE_CHECKING:
    from collections.abc import Iterator

DEEPEST = 100  # elements within elements; a drawing program's take a dozen
MOST = 100_000  # elements
MOST_EQUALS = 500_000  # signs "=", so of attributes
LONGEST_TEXT = 100_000  # letters of a style sheet that are looked at
SVG = "http://www.w3.org/2000/svg"
_OUTSIDE = re.compile(r"@import|url\(\s*(?!['\"]?#)", re.IGNORECASE)
_SPLIT = " "


@dataclass(slots=True)
class Element:
    """An element of a drawing.

    Args:
        tag: its name if it belongs to SVG (or to no namespace), else empty.
        line: where it stands in the file.
        attributes: those of no namespace; and ``href``, of any.
        inner: the elements in it.
        text: what stands in it, if it is a title or a style sheet.
    """

    tag: str
    line: int
    attributes: dict[str, str]
    inner: list[Element] = field(default_factory=list)
    text: str = ""

    def get(self, name: str, default: str = "") -> str:
        """Return an attribute."""
        return self.attributes.get(name, default)

    def all(self) -> Iterator[Element]:
        """Yield it and every element in it, in the order of the file."""
        yield self
        for each in self.inner:
            yield from each.all()


def parsed(content: bytes) -> Element:
    """Return the outermost element of an XML file.

    Raises:
        Refusal: if it is broken, holds declarations, refers to other files, or is too large.
    """
    if content.count(b"=") > MOST_EQUALS:
        raise _refused("holds more than {value} attributes", f"{MOST_EQUALS:,}")
    builder = _Builder()
    try:
        builder.parser.Parse(content, True)  # noqa: FBT003  # expat takes no names
    except expat.ExpatError as fault:
        raise _refused("is broken XML: {value}", str(fault), "save it again") from None
    except (LookupError, ValueError):
        raise _refused(
            "is in an encoding that is not known here", None, "save it as UTF-8"
        ) from None
    return builder.root


def _refused(
    says: str, value: str | None, mend: str = "save the seat alone, as plain SVG"
) -> Refusal:
    return Refusal("", says, value=value, mend=mend)


class _Builder:
    """Takes expat's events, and refuses at once what is not to be read."""

    root: Element

    def __init__(self) -> None:
        self._open: list[Element] = []
        self._count = 0
        self.parser = expat.ParserCreate(namespace_separator=_SPLIT)
        self.parser.buffer_text = True
        self.parser.StartElementHandler = self._start
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = self._text
        self.parser.StartDoctypeDeclHandler = self._doctype
        self.parser.EntityDeclHandler = self._entity
        self.parser.ExternalEntityRefHandler = self._entity
        self.parser.SkippedEntityHandler = self._entity
        self.parser.ProcessingInstructionHandler = self._instruction

    def _start(self, name: str, given: dict[str, str]) -> None:
        self._count += 1
        if len(self._open) >= DEEPEST:
            raise _refused("is nested more than {value} deep", str(DEEPEST))
        if self._count > MOST:
            raise _refused("holds more than {value} elements", f"{MOST:,}")
        space, _, tag = name.rpartition(_SPLIT)
        attributes = {_local(key): value for key, value in given.items()}
        attributes.pop("", None)
        element = Element(
            tag if space in {SVG, ""} else "", self.parser.CurrentLineNumber, attributes
        )
        self._check(tag, element)
        if self._open:
            self._open[-1].inner.append(element)
        else:
            self.root = element
        self._open.append(element)

    def _check(self, tag: str, element: Element) -> None:
        href = element.get("href", "#")
        if element.tag == "image" or not href.strip().startswith("#"):
            raise self._outside(f"{tag}")
        for name, value in element.attributes.items():
            if "(" in value and _OUTSIDE.search(value):
                raise self._outside(f"{tag}, in its {name}")

    def _end(self, name: str) -> None:
        del name
        element = self._open.pop()
        if _OUTSIDE.search(element.text):
            raise self._outside(element.tag)

    def _text(self, text: str) -> None:
        if self._open[-1].tag in {"style", "title"} and len(self._open[-1].text) < LONGEST_TEXT:
            self._open[-1].text += text

    def _doctype(self, *told: object) -> None:
        if told[-1]:
            raise _refused("declares things of its own in its DOCTYPE", None)

    def _entity(self, *told: object) -> int:
        del told
        raise _refused("refers to something that is declared elsewhere", None)

    def _instruction(self, target: str, data: str) -> None:
        del data
        if target == "xml-stylesheet":
            raise self._outside(target)

    def _outside(self, what: str) -> Refusal:
        return Refusal(
            "",
            "refers to another file or holds a picture in line {limit}: {value}",
            value=what,
            limit=self.parser.CurrentLineNumber,
            mend="take that out: only the lines of the drawing itself are read",
        )


def _local(name: str) -> str:
    """Return the name of an attribute that is used here: of no namespace, or a reference."""
    space, _, local = name.rpartition(_SPLIT)
    return local if not space or local == "href" else ""
