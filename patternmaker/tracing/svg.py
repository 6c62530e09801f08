"""The lines of an SVG drawing, at true size.

Clauses are those of SVG 2. Whatever is drawn counts, filled or not; what only serves other
elements, or is not shown, does not.
"""

from __future__ import annotations

import re
from collections import Counter
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.errors import Refusal
from patternmaker.tracing.curves import Affine
from patternmaker.tracing.gathering import Gathering, printable
from patternmaker.tracing.markup import parsed
from patternmaker.tracing.svg_shapes import SHAPES, strokes
from patternmaker.tracing.svg_views import View, fit, length, outermost, transform, unreadable

if TYPE_CHECKING:
    from patternmaker.tracing.markup import Element
    from patternmaker.tracing.sketch import Sketch

GROUPS = {"g", "a", "switch"}  # draw what is in them
TOLD = {"text", "foreignObject"}  # would be drawn, but hold no lines
MOST = 100_000  # elements drawn, those that are used again counted each time
DEEPEST = 100  # elements drawn within elements, used ones too
PX_NOTE = (
    "the drawing does not give its size in mm or inches; "
    "its px were taken as 1/96 in: check the width"
)
_RULE = re.compile(r"([^{}]+)\{([^{}]*)\}")
_DISPLAY = re.compile(r"(?:^|;)\s*display\s*:\s*([a-z-]+)", re.IGNORECASE)
_VISIBILITY = re.compile(r"(?:^|;)\s*visibility\s*:\s*([a-z]+)", re.IGNORECASE)


def read_svg(content: bytes) -> Sketch:
    """Return the lines that an SVG draws.

    Raises:
        Refusal: if it is broken, refers to other files, or holds what can't be read.
    """
    root = parsed(content)
    if root.tag != "svg":
        raise Refusal("", "is XML, but not a drawing", mend="save it as plain SVG")
    place, view, says = outermost(root)
    walk = _Walk(root)
    for each in root.inner:
        walk.draw(each, _Spot(place, view))
    return walk.gathered.sketch(place.scale, *([] if says else [PX_NOTE]))


class _Spot(NamedTuple):
    """Where an element is drawn, and what holds for it.

    Args:
        place: the map from its user units to mm.
        view: the viewport that it is in.
        shown: whether it is visible, unless it says otherwise itself.
        deep: how many elements it is drawn in.
        used: the ids of those that are being used.
    """

    place: Affine
    view: View
    shown: bool = True
    deep: int = 1
    used: tuple[str, ...] = ()

    def put(self, place: Affine) -> _Spot:
        """Return it mapped further."""
        return self._replace(place=self.place.after(place))


class _Walk:
    """Goes through the elements in the order of the drawing, and gathers their lines."""

    def __init__(self, root: Element) -> None:
        self.gathered = Gathering()
        self._by_id: dict[str, Element] = {}
        self._hidden: set[str] = set()
        self._kinds: Counter[str] = Counter()
        self._count = 0
        for each in root.all():
            self._by_id.setdefault(each.get("id"), each)
            if each.tag == "style":
                self._hidden |= _hidden_by(each.text)

    def draw(self, element: Element, spot: _Spot) -> None:
        """Draw an element and what is in it."""
        self._count += 1
        if self._count > MOST or spot.deep > DEEPEST:
            says = "draws more than {limit} elements, or the same over and over"
            raise Refusal("", says, limit=f"{MOST:,}", mend="save the seat alone, as plain SVG")
        if self._is_left_out(element):
            return
        spot = spot._replace(shown=_is_shown(element, spot.shown), deep=spot.deep + 1)
        if element.tag in TOLD and spot.shown:
            self.gathered.skip(element.tag)
        elif element.tag == "svg":
            self._framed(element, element, spot.put(transform(element)))
        elif element.tag == "use":
            self._used(element, spot.put(transform(element)))
        elif element.tag in GROUPS:
            self._group(element, spot.put(transform(element)))
        elif element.tag in SHAPES:
            self._shape(element, spot.put(transform(element)))

    def _group(self, element: Element, spot: _Spot) -> None:
        for each in element.inner:
            self.draw(each, spot)

    def _framed(self, element: Element, sized: Element, spot: _Spot) -> None:
        """Draw what is in a viewport of its own (8.5), whose size another element may give."""
        width, height = (
            length(sized if sized.get(name) else element, name, whole, whole)
            for name, whole in zip(("width", "height"), spot.view, strict=True)
        )
        if min(width, height) > 0:
            inside, view = fit(element, width, height)
            corner = _corner(element, spot.view)
            self._group(element, spot.put(corner).put(inside)._replace(view=view))

    def _used(self, element: Element, spot: _Spot) -> None:
        """Draw another element here (5.6)."""
        name = element.get("href").strip()[1:]
        target = self._by_id.get(name) if name else None
        if target is None:
            self.gathered.skip("use of nothing")
            return
        if name in spot.used:
            raise unreadable(element, "href", f"{printable(name)} uses itself")
        spot = spot.put(_corner(element, spot.view))._replace(used=(*spot.used, name))
        if target.tag in {"svg", "symbol"} and not self._is_left_out(target):
            spot = spot._replace(deep=spot.deep + 1)
            self._framed(target, element, spot.put(transform(target)))
        else:
            self.draw(target, spot)

    def _shape(self, element: Element, spot: _Spot) -> None:
        self._kinds[element.tag] += 1
        if not spot.shown or spot.place.is_flat:
            return
        name = element.get("id") or _title(element) or f"{element.tag} {self._kinds[element.tag]}"
        for part, stroke in enumerate(strokes(element, spot.view), 1):
            part_name = f"{name} part {part}" if part > 1 else name
            self.gathered.add(part_name, stroke.mapped(spot.place))

    def _is_left_out(self, element: Element) -> bool:
        own = {f".{each}" for each in element.get("class").split()} | {"#" + element.get("id")}
        styled = _DISPLAY.search(element.get("style"))
        display = styled[1] if styled else element.get("display")
        return display.lower() == "none" or not own.isdisjoint(self._hidden)


def _corner(element: Element, view: View) -> Affine:
    x, y = length(element, "x", view.width), length(element, "y", view.height)
    return Affine(shift=complex(x, y))


def _title(element: Element) -> str:
    return next((printable(each.text) for each in element.inner if each.tag == "title"), "")


def _is_shown(element: Element, before: bool) -> bool:  # noqa: FBT001  # what it inherits
    styled = _VISIBILITY.search(element.get("style"))
    said = (styled[1] if styled else element.get("visibility")).lower()
    return before if said in {"", "inherit"} else said == "visible"


def _hidden_by(sheet: str) -> set[str]:
    """Return the classes and ids, such as ".layer" and "#sheet", that a style sheet hides."""
    return {
        selector.strip()
        for selectors, rules in _RULE.findall(sheet)
        for selector in selectors.split(",")
        if (display := _DISPLAY.search(rules)) and display[1].lower() == "none"
    }
