"""A page as it comes out of a printer: its strokes where they lie, as far as they are seen."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from patternmaker.checking.content import Words
from patternmaker.checking.ink import FURTHEST, Ink
from patternmaker.checking.plane import (
    MM,
    Box,
    Matrix,
    inside,
    moved,
    moved_box,
    shared,
    size_of,
    times,
)
from patternmaker.checking.tokens import Unreadable

if TYPE_CHECKING:
    from patternmaker.checking.file import File, Form, Page
    from patternmaker.checking.plane import Points

DEEPEST = 8  # forms within forms
MOST_FORMS = 2000  # on one page
EDGE = 0.01  # mm; a line along the edge of a window is seen
Seen = NDArray[np.bool_]


@dataclass(frozen=True)
class Layer:
    """A form, or the page's own stream, as it lies on a page.

    Args:
        key: which it is: the same on every page that shows it.
        ink: its strokes, in its own units.
        matrix: to mm on the page.
        clip: what is seen of it, mm on the page.
        order: when it is drawn.
    """

    key: int
    ink: Ink
    matrix: Matrix
    clip: Box | None
    order: tuple[int, ...]

    @property
    def points(self) -> Points:
        """Its points, mm on the page."""
        return moved(self.ink.points, self.matrix)


@dataclass
class Leaf:
    """A page, in mm from the corner of what is printed of it.

    Args:
        number: of the page.
        paper: its width and height in the file.
        size: the same as it comes out.
        layers: its forms, and its own stream first.
        words: on it, each with the key of its layer.
        blanks: white boxes, each with when it is drawn.
    """

    number: int
    paper: tuple[float, float]
    size: tuple[float, float]
    layers: list[Layer] = field(default_factory=list)
    words: list[tuple[Words, int]] = field(default_factory=list)
    blanks: list[tuple[Box, tuple[int, ...]]] = field(default_factory=list)

    def seen(self, layer: Layer, points: Points) -> Seen:
        """Return which points of a layer can be seen."""
        window = shared(layer.clip, (0.0, 0.0, *self.size))
        assert window
        seen = inside(points, window, EDGE) & layer.ink.within
        depth = len(layer.order)
        for box, order in self.blanks:
            if order[:depth] > layer.order:
                seen &= ~inside(points, box, -EDGE)
            elif order[:depth] == layer.order and len(order) > depth:
                later = layer.ink.orders < order[depth]
                seen &= ~(later & inside(points, box, -EDGE))
        return seen


class Press:
    """Lays pages out, each form being spread into points once for all of them.

    Pages that were drawn larger or smaller for a printer that prints short or long, so much across
    the paper and so much up it, are laid out as they come out of that.
    """

    def __init__(self, file: File, drawn: tuple[float, float] | None) -> None:
        self.file, self.drawn = file, drawn or (1.0, 1.0)
        self._inks: dict[int, Ink] = {}

    def leaf(self, page: Page) -> Leaf:
        """Return a page as it comes out."""
        box = page.form.box or (0.0, 0.0, 0.0, 0.0)
        width, height = ((box[i + 2] - box[i]) * MM * page.unit for i in (0, 1))
        across, up = self.drawn if width <= height else self.drawn[::-1]
        x, y = MM * page.unit / across, MM * page.unit / up
        corner: Matrix = (x, 0.0, 0.0, y, -box[0] * x, -box[1] * y)
        leaf = Leaf(page.number, (width, height), (width / across, height / up))
        self._lay(leaf, page.form, corner, None, ())
        return leaf

    def _lay(
        self, leaf: Leaf, form: Form, matrix: Matrix, clip: Box | None, order: tuple[int, ...]
    ) -> None:
        if len(order) > DEEPEST or len(leaf.layers) > MOST_FORMS:
            raise Unreadable(f"page {leaf.number} holds forms within forms without end")
        if not 1e-6 < size_of(matrix) < 1e6 or max(map(abs, matrix)) > FURTHEST:
            raise Unreadable(f"page {leaf.number} shows a form of no size that paper has")
        if form.key not in self._inks:
            self._inks[form.key] = Ink.of(form.content)
        ink = self._inks[form.key] if form.key > 0 else self._inks.pop(form.key)
        leaf.layers.append(Layer(form.key, ink, matrix, clip, order))
        for words in form.content.words:
            at, size = moved(words.at, matrix), words.size * size_of(matrix)
            leaf.words.append((Words(words.text, at, size), form.key))
        for blank in form.content.blanks:
            box = shared(moved_box(blank.box, matrix), clip)
            assert box
            leaf.blanks.append((box, (*order, blank.order)))
        for use in form.content.uses:
            inner = self.file.form(form.resources, use.name)
            if inner is None:
                continue
            whole = times(inner.matrix, times(use.matrix, matrix))
            window = shared(clip, moved_box(use.clip, matrix) if use.clip else None)
            bounds = moved_box(inner.box, whole) if inner.box else None
            self._lay(leaf, inner, whole, shared(window, bounds), (*order, use.order))
