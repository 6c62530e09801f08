"""What each stroke is for, by the pen that it is drawn with."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from patternmaker.checking.plane import MM
from patternmaker.drawing.looks import PENS

if TYPE_CHECKING:
    from patternmaker.checking.content import Pen
    from patternmaker.checking.ink import Ink
    from patternmaker.pattern.piece import LineKind

ALIKE = 0.006  # mm, or of a colour's brightness; pens differ by more


@lru_cache(maxsize=4096)
def kind_of(pen: Pen) -> LineKind | None:
    """Return what a pen draws, or None if it draws no line of a piece."""
    width, dashes = pen.width * MM, tuple(dash * MM for dash in pen.dashes)
    for kind, other in PENS.items():
        if (
            _alike((width,), (other.width,))
            and _alike(dashes, other.dashes)
            and _alike(pen.colour, other.colour)
        ):
            return kind
    return None


def _alike(one: tuple[float, ...], two: tuple[float, ...]) -> bool:
    return len(one) == len(two) and all(abs(a - b) < ALIKE for a, b in zip(one, two, strict=True))


@lru_cache(maxsize=4096)
def kinds_of(ink: Ink) -> dict[int, LineKind]:
    """Return the kind of each stroke that draws a line of a piece, by its index."""
    found = ((i, kind_of(stroke.pen)) for i, stroke in enumerate(ink.strokes))
    return {i: kind for i, kind in found if kind}
