"""Where an SVG puts things: lengths, transformations and viewports.

Clauses are those of SVG 2; SVG 1.1 says the same of all that is read here.
"""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.errors import Refusal, brief
from patternmaker.geometry.segments import turned
from patternmaker.tracing.curves import Affine

if TYPE_CHECKING:
    from patternmaker.tracing.markup import Element

PX = 25.4 / 96  # mm (CSS Values and Units 3, 6.2)
UNITS = {"": 1.0, "px": 1.0, "in": 96.0, "mm": 1 / PX, "cm": 10 / PX, "q": 0.25 / PX,
         "pt": 96 / 72, "pc": 16.0}  # fmt: skip
NUMBER = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?", re.ASCII)
HUGE = 1e9  # user units; beyond it there is no drawing, only a mistake
_LENGTH = re.compile(rf"({NUMBER.pattern})\s*([a-zA-Z]*|%)", re.ASCII)
_PHYSICAL = re.compile(r"(in|mm|cm|q|pt|pc)$", re.IGNORECASE)
_STYLED = re.compile(r"(?:^|;)\s*transform(?:-origin)?\s*:")
_COUNTS = {"matrix": (6,), "translate": (1, 2), "scale": (1, 2), "rotate": (1, 3),
           "skewX": (1,), "skewY": (1,)}  # fmt: skip
_STEP = re.compile(r"[\s,]*([a-zA-Z]+)\s*\(([^()]*)\)[\s,]*")
_ALIGN = re.compile(r"\s*(?:defer\s+)?(none|x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?\s*")
_SHARE = {"Min": 0.0, "Mid": 0.5, "Max": 1.0}


class View(NamedTuple):
    """A viewport: what percentages are of, in user units."""

    width: float
    height: float

    @property
    def diagonal(self) -> float:
        """What percentages of a length in no certain direction are of (8.9)."""
        return math.hypot(self.width, self.height) / math.sqrt(2)


def unreadable(element: Element, name: str, where: str = "") -> Refusal:
    """Return the refusal of an attribute: what it holds, or where in it the mistake is."""
    return Refusal(
        "",
        "can't be read in line {limit}: {value}",
        value=f"{name} of {element.tag}, {where or brief(element.get(name)[:60])}",
        limit=element.line,
        mend="mend it there, or save the drawing again",
    )


def numbers(text: str) -> tuple[float, ...] | None:
    """Return the numbers of a list, parted by commas, spaces or nothing; None if there is more."""
    if NUMBER.sub("", text).strip(" ,\t\r\n\f"):
        return None
    found = tuple(map(float, NUMBER.findall(text)))
    return found if all(abs(each) <= HUGE for each in found) else None


def length(element: Element, name: str, whole: float, default: float = 0.0) -> float:
    """Return a length in user units (8.9); percentages are of ``whole``."""
    text = element.get(name).strip()
    if text in {"", "auto"}:
        return default
    found = _LENGTH.fullmatch(text)
    unit = found[2].lower() if found else ""
    if not found or (unit != "%" and unit not in UNITS) or abs(float(found[1])) > HUGE:
        raise unreadable(element, name)
    return float(found[1]) * (whole / 100 if unit == "%" else UNITS[unit])


def transform(element: Element) -> Affine:
    """Return the map of an element's ``transform`` (SVG 1.1, 7.6); that of a style is refused."""
    if _STYLED.search(element.get("style")):
        raise unreadable(element, "style")
    text, at, whole = element.get("transform").strip(), 0, Affine()
    while at < len(text):
        step = _STEP.match(text, at)
        values = numbers(step[2]) if step else None
        if not step or values is None or len(values) not in _COUNTS.get(step[1], ()):
            raise unreadable(element, "transform")
        whole, at = whole.after(_map(step[1], *values)), step.end()
    return whole


def _map(kind: str, *values: float) -> Affine:
    first, last = values[0], values[-1]
    if kind == "matrix":
        return Affine.matrix(*values)
    if kind == "translate":
        return Affine(shift=complex(first, last if len(values) > 1 else 0.0))
    if kind == "scale":
        return Affine.matrix(first, 0, 0, last, 0, 0)
    slant = math.radians(math.remainder(first, 360))
    if kind == "rotate":
        centre = complex(*values[1:]) if len(values) > 1 else 0j
        return Affine(turned(slant), 0, centre - turned(slant) * centre)
    if kind == "skewX":
        return Affine.matrix(1, 0, math.tan(slant), 1, 0, 0)
    return Affine.matrix(1, math.tan(slant), 0, 1, 0, 0)


def fit(element: Element, width: float, height: float) -> tuple[Affine, View]:
    """Return how a viewport of that size shows what is in it, and the view inside (8.6, 8.7)."""
    if not element.get("viewBox"):
        return Affine(), View(width, height)
    box, ratio = _box(element), element.get("preserveAspectRatio", "xMidYMid")
    align = _ALIGN.fullmatch(ratio)
    if not align:
        raise unreadable(element, "preserveAspectRatio")
    left, top, wide, high = box
    across, down = width / wide, height / high
    if align[1] != "none":
        across = down = (max if align[4] == "slice" else min)(across, down)
    x = _SHARE.get(align[2], 0.0) * (width - wide * across) - left * across
    y = _SHARE.get(align[3], 0.0) * (height - high * down) - top * down
    return Affine.matrix(across, 0, 0, down, x, y), View(wide, high)


def _box(element: Element) -> tuple[float, ...]:
    box = numbers(element.get("viewBox"))
    if box is None or len(box) != 4 or min(box[2:]) <= 0:
        raise unreadable(element, "viewBox")
    return box


def outermost(element: Element) -> tuple[Affine, View, bool]:
    """Return the map from a drawing to mm, y upward; its viewport; and whether it says its size.

    A user unit is 1/96 in (a CSS px) where it does not.
    """
    sides = {name: element.get(name).strip() for name in ("width", "height")}
    says = element.get("viewBox") != "" and any(_PHYSICAL.search(each) for each in sides.values())
    width, height = (
        None if text in {"", "auto"} or text.endswith("%") else length(element, name, 0.0)
        for name, text in sides.items()
    )
    wide, high = _box(element)[2:] if element.get("viewBox") else (300.0, 150.0)
    if width is None:
        width = wide if height is None else height * wide / high
    height = width * high / wide if height is None else height
    if min(width, height) <= 0:
        raise unreadable(element, "height" if sides["height"] and height <= 0 else "width")
    inside, view = fit(element, width, height)
    return Affine(0, PX).after(inside), view, says
