"""The basic shapes of an SVG (SVG 1.1, 9; SVG 2, 10), drawn as their paths are."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.tracing.curves import ellipse
from patternmaker.tracing.svg_paths import Pen, draw
from patternmaker.tracing.svg_views import length, numbers, unreadable

if TYPE_CHECKING:
    from collections.abc import Callable

    from patternmaker.tracing.gathering import Stroke
    from patternmaker.tracing.markup import Element
    from patternmaker.tracing.svg_views import View


def strokes(element: Element, view: View) -> tuple[Stroke, ...]:
    """Return what a shape draws, in its own user units.

    Raises:
        Refusal: if one of its attributes can't be read.
    """
    pen = Pen()
    SHAPES[element.tag](pen, element, view)
    return pen.strokes()


def _path(pen: Pen, element: Element, view: View) -> None:
    del view
    data = element.get("d").strip()
    if data in {"", "none"}:
        return
    try:
        draw(pen, data)
    except ValueError as fault:
        raise unreadable(element, "d", str(fault)) from None


def _rect(pen: Pen, element: Element, view: View) -> None:
    x, y = length(element, "x", view.width), length(element, "y", view.height)
    width, height = length(element, "width", view.width), length(element, "height", view.height)
    if min(width, height) <= 0:
        return
    rx, ry = _radii(element, view)
    rx, ry = min(rx, width / 2), min(ry, height / 2)
    right, bottom = x + width, y + height
    pen.move(complex(x + rx, y))
    for begin, end in (
        (complex(right - rx, y), complex(right, y + ry)),
        (complex(right, bottom - ry), complex(right - rx, bottom)),
        (complex(x + rx, bottom), complex(x, bottom - ry)),
        (complex(x, y + ry), complex(x + rx, y)),
    ):
        pen.line(begin)
        pen.arc(complex(rx, ry), 0, end, large=False, left=True)
    pen.close()


def _radii(element: Element, view: View) -> tuple[float, float]:
    """Return rx and ry; one that is not given (or negative) is like the other."""
    across = length(element, "rx", view.width, -1.0)
    down = length(element, "ry", view.height, -1.0)
    if across < 0 and down < 0:
        return 0.0, 0.0
    return (across if across >= 0 else down), (down if down >= 0 else across)


def _ellipse(pen: Pen, element: Element, view: View) -> None:
    if element.tag == "circle":
        across = down = length(element, "r", view.diagonal)
    else:
        across, down = _radii(element, view)
    centre = complex(length(element, "cx", view.width), length(element, "cy", view.height))
    if min(across, down) > 0:
        pen.oval(ellipse(centre, across, down))


def _line(pen: Pen, element: Element, view: View) -> None:
    ends = (
        complex(length(element, x, view.width), length(element, y, view.height))
        for x, y in (("x1", "y1"), ("x2", "y2"))
    )
    pen.move(next(ends))
    pen.line(next(ends))


def _polygon(pen: Pen, element: Element, view: View) -> None:
    del view
    values = numbers(element.get("points"))
    if values is None or len(values) % 2:
        raise unreadable(element, "points")
    points = [complex(x, y) for x, y in zip(values[::2], values[1::2], strict=True)]
    if points:
        pen.move(points[0])
        for point in points[1:]:
            pen.line(point)
    if element.tag == "polygon":
        pen.close()


SHAPES: dict[str, Callable[[Pen, Element, View], None]] = {
    "path": _path,
    "rect": _rect,
    "circle": _ellipse,
    "ellipse": _ellipse,
    "line": _line,
    "polyline": _polygon,
    "polygon": _polygon,
}
