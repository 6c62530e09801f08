"""What a page or a form draws: an interpreter of the operators for lines, areas, forms and type.

ISO 32000-1:2008: 8.4 graphics state, 8.5 paths, 8.10 forms, 9.4 text. What is drawn is kept in
units of user space, each with its place in the order of drawing.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from patternmaker.checking.plane import UPRIGHT, Box, Matrix, box_of, moved, shared, size_of, times
from patternmaker.checking.tokens import Unreadable, operations

if TYPE_CHECKING:
    from collections.abc import Mapping

WHITE = (1.0, 1.0, 1.0)
TRACES = {"m": 2, "l": 2, "c": 6, "v": 4, "y": 4, "re": 4, "h": 0}
STROKES = frozenset({"S", "s", "B", "B*", "b", "b*"})
FILLS = frozenset({"f", "F", "f*", "B", "B*", "b", "b*"})
PAINTS = STROKES | FILLS | {"n"}
CLOSING = frozenset({"s", "b", "b*"})
STRAIGHT = 1e-6  # of a unit; sides that stray less are level or upright


@dataclass(frozen=True)
class Pen:
    """Line width and dashes, and colour."""

    width: float
    dashes: tuple[float, ...]
    colour: tuple[float, ...]


@dataclass(frozen=True)
class Stroke:
    """A chain of lines and cubic Bezier curves, by their 2 or 4 control points."""

    pieces: tuple[tuple[complex, ...], ...]
    pen: Pen
    clip: Box | None
    order: int


@dataclass(frozen=True)
class Blank:
    """A white box, which hides what was drawn before it."""

    box: Box
    order: int


@dataclass(frozen=True)
class Words:
    """A string of type: where its baseline begins, and how large it is."""

    text: str
    at: complex
    size: float


@dataclass(frozen=True)
class Use:
    """A form, by its name among the resources, as it is drawn."""

    name: str
    matrix: Matrix
    clip: Box | None
    order: int


@dataclass
class Content:
    """All that a stream draws."""

    strokes: list[Stroke] = field(default_factory=list)
    blanks: list[Blank] = field(default_factory=list)
    words: list[Words] = field(default_factory=list)
    uses: list[Use] = field(default_factory=list)


@dataclass(frozen=True)
class _State:
    matrix: Matrix = UPRIGHT
    width: float = 1.0
    dashes: tuple[float, ...] = ()
    stroke: tuple[float, ...] = (0.0, 0.0, 0.0)
    fill: tuple[float, ...] = (0.0, 0.0, 0.0)
    clip: Box | None = None
    letters: Mapping[int, str] = field(default_factory=dict)
    size: float = 1.0
    leading: float = 0.0


def content_of_stream(stream: bytes, fonts: Mapping[str, Mapping[int, str]]) -> Content:
    """Return what a stream draws.

    Args:
        stream: decoded.
        fonts: what each code of each font stands for.

    Raises:
        Unreadable: if it is damaged.
    """
    run = _Run(fonts)
    for name, operands in operations(stream):
        try:
            run.do(name, operands)
        except (IndexError, TypeError, ValueError, AttributeError):
            raise Unreadable(f"its drawing gives {name} what it can't take") from None
    return run.content


class _Run:
    """One pass over the operators of a stream."""

    def __init__(self, fonts: Mapping[str, Mapping[int, str]]) -> None:
        self.content = Content()
        self.fonts = fonts
        self.state = _State()
        self.saved: list[_State] = []
        self.paths: list[list[tuple[complex, ...]]] = []
        self.begin = self.here = 0j
        self.clips = False
        self.order = 0
        self.line = self.text = UPRIGHT

    def do(self, name: str, operands: list[Any]) -> None:
        self.order += 1
        if name in TRACES:
            self._trace(name, [float(each) for each in operands[-TRACES[name] or len(operands) :]])
        elif name in PAINTS:
            self._paint(name)
        elif name in {"W", "W*"}:
            self.clips = True
        elif name == "q":
            self.saved.append(self.state)
        elif name == "Q":
            self.state = self.saved.pop()
        elif name == "Do":
            use = Use(operands[0], self.state.matrix, self.state.clip, self.order)
            self.content.uses.append(use)
        elif name.startswith("T") or name in {"BT", "'", '"'}:
            self._type(name, operands)
        else:
            self.state = _changed(self.state, name, operands)

    def _trace(self, name: str, numbers: list[float]) -> None:
        matrix = self.state.matrix
        if name == "re":
            x, y, width, height = numbers
            corners = (x + 1j * y, x + width + 1j * y, x + width + 1j * (y + height),
                       x + 1j * (y + height), x + 1j * y)  # fmt: skip
            self.paths.append(list(pairwise(moved(each, matrix) for each in corners)))
            self.begin = self.here = moved(corners[0], matrix)
            return
        flat = iter(numbers)
        ends = [moved(complex(x, y), matrix) for x, y in zip(flat, flat, strict=True)]
        if name == "m":
            self.paths.append([])
            self.begin = self.here = ends[0]
            return
        if not self.paths:
            raise Unreadable("its drawing goes on with a line that it never began")
        self._go(name, ends)

    def _go(self, name: str, ends: list[complex]) -> None:
        if name == "h":
            ends = [self.begin] if abs(self.begin - self.here) > STRAIGHT else []
        elif name == "v":
            ends = [self.here, *ends]
        elif name == "y":
            ends = [*ends, ends[-1]]
        if ends:
            self.paths[-1].append((self.here, *ends))
            self.here = ends[-1]

    def _paint(self, name: str) -> None:
        state = self.state
        if name in CLOSING and self.paths:
            self._go("h", [])
        if name in STROKES:
            width = state.width * size_of(state.matrix)
            pen = Pen(width, state.dashes, state.stroke)
            self.content.strokes += [
                Stroke(tuple(path), pen, state.clip, self.order) for path in self.paths if path
            ]
        if name in FILLS and state.fill == WHITE:
            boxes = [shared(state.clip, box) for path in self.paths if (box := _box(path))]
            self.content.blanks += [Blank(box, self.order) for box in boxes if box]
        if self.clips and self.paths:
            window = box_of([point for path in self.paths for each in path for point in each])
            self.state = replace(state, clip=shared(state.clip, window))
        self.paths, self.clips = [], False

    def _type(self, name: str, operands: list[Any]) -> None:
        if name == "BT":
            self.line = self.text = UPRIGHT
        elif name == "Tf":
            letters = self.fonts.get(operands[0], {})
            self.state = replace(self.state, letters=letters, size=float(operands[1]))
        elif name == "TL":
            self.state = replace(self.state, leading=float(operands[0]))
        elif name == "Tm":
            self.line = self.text = _six(operands)
        elif name in {"Td", "TD"}:
            self._next_line(*operands)
        elif name in {"T*", "'", '"'}:
            self._next_line(0.0, -self.state.leading)
        if name in {"Tj", "TJ", "'", '"'}:
            self._say(operands[-1])

    def _next_line(self, x: float, y: float) -> None:
        self.line = self.text = times((1.0, 0.0, 0.0, 1.0, x, y), self.line)

    def _say(self, shown: Any) -> None:
        parts = [each for each in shown if isinstance(each, bytes)] if isinstance(
            shown, list) else [shown]  # fmt: skip
        codes = b"".join(parts)
        text = "".join(self.state.letters.get(code, "\ufffd") for code in codes)
        matrix = times(self.text, self.state.matrix)
        size = self.state.size * size_of(matrix)
        self.content.words.append(Words(text, moved(0j, matrix), size))


def _changed(state: _State, name: str, operands: list[Any]) -> _State:
    if name == "cm":
        return replace(state, matrix=times(_six(operands), state.matrix))
    if name == "w":
        return replace(state, width=float(operands[0]))
    if name == "d":
        dashes = (float(each) * size_of(state.matrix) for each in operands[0])
        return replace(state, dashes=tuple(dashes))
    if name in {"RG", "G", "K", "SC", "SCN"}:
        return replace(state, stroke=_colour(operands))
    if name in {"rg", "g", "k", "sc", "scn"}:
        return replace(state, fill=_colour(operands))
    return state


def _six(operands: list[Any]) -> Matrix:
    a, b, c, d, e, f = (float(each) for each in operands)
    return a, b, c, d, e, f


def _colour(operands: list[Any]) -> tuple[float, ...]:
    """Return a colour as red, green and blue; grey is three alike, others are left as they are."""
    parts = tuple(each for each in operands if isinstance(each, float))
    return parts * 3 if len(parts) == 1 else parts


def _box(path: list[tuple[complex, ...]]) -> Box | None:
    """Return the box that a path is, or None if it is no upright rectangle."""
    sides = [each[-1] - each[0] for each in path]
    level = all(min(abs(side.real), abs(side.imag)) < STRAIGHT for side in sides)
    if len(path) not in {3, 4} or not level or any(len(each) > 2 for each in path):
        return None
    return box_of([point for each in path for point in each])
