"""An interpreter of the few operators of a PDF page that draw lines and set type.

ISO 32000-1:2008: 8.4 graphics state, 8.5 paths, 8.10 forms, 9.4 text. Shares no code with
patternmaker. Lengths in mm (1 unit = 1/72 in: 8.3.2.3), points as complex numbers.
"""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass, field, replace
from functools import cached_property
from io import BytesIO
from typing import Any

import pypdf
from pypdf.generic import ContentStream

from tests.paper.curves import Curve, Piece

MM = 25.4 / 72
Matrix = tuple[float, float, float, float, float, float]
Box = tuple[float, float, float, float]
UPRIGHT: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


@dataclass(frozen=True)
class Pen:
    """Line width and dashes in mm, and colour."""

    width: float
    dashes: tuple[float, ...]
    colour: tuple[float, ...]


@dataclass(frozen=True)
class Placed:
    """A form as a page shows it: which, where its origin lies, and inside what it is clipped."""

    form: str
    origin: complex
    clip: Box | None


@dataclass(frozen=True)
class Line:
    """A stroked path in page coordinates, and the form that it stands in, if any."""

    curve: Curve
    pen: Pen
    placed: Placed | None


@dataclass(frozen=True)
class Words:
    """A string of type: where its baseline begins, and the form that it stands in, if any."""

    text: str
    at: complex
    size: float
    placed: Placed | None
    upward: bool = False

    @property
    def middle(self) -> complex:
        """About where its middle stands, if it is level: figures are half as wide as high."""
        return self.at + self.size * complex(0.28 * len(self.text), 0.35)


@dataclass
class Page:
    """Everything that a page draws."""

    number: int
    size: tuple[float, float]
    lines: list[Line] = field(default_factory=list)
    words: list[Words] = field(default_factory=list)


@dataclass(frozen=True)
class _State:
    matrix: Matrix = UPRIGHT
    width: float = 1.0
    dashes: tuple[float, ...] = ()
    stroke: tuple[float, ...] = (0.0,)
    clip: Box | None = None


class Paper:
    """A PDF file."""

    def __init__(self, content: bytes) -> None:
        self.content = content
        self.pdf = pypdf.PdfReader(BytesIO(content))
        self._streams: dict[int, list[Any]] = {}
        self._letters: dict[int, dict[int, str]] = {}

    @cached_property
    def pages(self) -> list[Page]:
        return [self._page(i) for i in range(len(self.pdf.pages))]

    def _page(self, index: int) -> Page:
        page = self.pdf.pages[index]
        box = page.mediabox
        found = Page(index, (float(box.width) * MM, float(box.height) * MM))
        operations = ContentStream(page.get_contents(), self.pdf).operations
        _Run(self, found, page["/Resources"], None).run(operations, _State())
        return found

    def operations(self, form: Any) -> list[Any]:
        key = form.indirect_reference.idnum
        if key not in self._streams:
            self._streams[key] = ContentStream(form, self.pdf).operations
        return self._streams[key]

    def letters(self, font: Any) -> dict[int, str]:
        """Return what each code of a font stands for, by its ToUnicode map (9.10.3)."""
        key = font.indirect_reference.idnum
        if key not in self._letters:
            self._letters[key] = _unicode_map(font["/ToUnicode"].get_data().decode("latin1"))
        return self._letters[key]


def _unicode_map(text: str) -> dict[int, str]:
    found: dict[int, str] = {}
    for block in re.findall(r"beginbfchar(.*?)endbfchar", text, re.DOTALL):
        for code, value in re.findall(r"<(\w+)>\s*<(\w+)>", block):
            found[int(code, 16)] = bytes.fromhex(value).decode("utf-16-be")
    for block in re.findall(r"beginbfrange(.*?)endbfrange", text, re.DOTALL):
        for low, _, values in re.findall(r"<(\w+)>\s*<(\w+)>\s*\[(.*?)\]", block, re.DOTALL):
            for i, value in enumerate(re.findall(r"<(\w+)>", values)):
                found[int(low, 16) + i] = bytes.fromhex(value).decode("utf-16-be")
        for low, high, value in re.findall(r"<(\w+)>\s*<(\w+)>\s*<(\w+)>", block):
            first = int(value, 16)
            for code in range(int(low, 16), int(high, 16) + 1):
                found[code] = chr(first + code - int(low, 16))
    return found


def times(a: Matrix, b: Matrix) -> Matrix:
    """Return the transformation that does ``a``, then ``b`` (8.3.4)."""
    return (
        a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4], a[4] * b[1] + a[5] * b[3] + b[5],
    )  # fmt: skip


def _point(x: float, y: float, m: Matrix) -> complex:
    return complex(x * m[0] + y * m[2] + m[4], x * m[1] + y * m[3] + m[5]) * MM


class _Run:
    """One pass over the operators of a page or a form."""

    def __init__(self, paper: Paper, page: Page, resources: Any, placed: Placed | None) -> None:
        self.paper, self.page, self.placed = paper, page, placed
        self.resources = resources.get_object()
        self.path: list[tuple[list[Piece], complex]] = []
        self.here = 0j
        self.text: tuple[Matrix, dict[int, str], float] = (UPRIGHT, {}, 0.0)
        self.clips = False

    def run(self, operations: list[Any], state: _State) -> None:
        saved: list[_State] = []
        for operands, operator in operations:
            name = operator.decode("latin1")
            if name == "q":
                saved.append(state)
            elif name == "Q":
                state = saved.pop()
            elif name in ("cm", "w", "d", "RG", "G"):
                state = _changed(state, name, operands)
            elif name in ("m", "l", "c", "h", "re"):
                self._trace(name, [float(each) for each in operands], state.matrix)
            elif name in ("W", "W*"):
                self.clips = True
            elif name in ("S", "s", "n", "f", "f*", "B"):
                state = self._painted(name, state)
            elif name == "Do":
                self._form(operands[0], state)
            else:
                self._type(name, operands, state)

    def _trace(self, name: str, numbers: list[float], matrix: Matrix) -> None:
        points = [_point(numbers[i], numbers[i + 1], matrix) for i in range(0, len(numbers) - 1, 2)]
        if name == "re":
            x, y, width, height = numbers
            corners = [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]
            ends = [_point(*corner, matrix) for corner in [*corners, corners[0]]]
            sides = [Piece((a, b)) for a, b in itertools.pairwise(ends)]
            self.path.append((sides, ends[0]))
        elif name == "m":
            self.path.append(([], points[0]))
            self.here = points[0]
        else:
            pieces, first = self.path[-1]
            ends = [self.here, *(points or [first])]
            if abs(ends[-1] - ends[0]) > 1e-9 or len(ends) > 2:
                pieces.append(Piece(tuple(ends)))
            self.here = ends[-1]

    def _painted(self, name: str, state: _State) -> _State:
        if name in ("S", "s", "B"):
            pen = Pen(state.width * MM, tuple(each * MM for each in state.dashes), state.stroke)
            for pieces, _ in self.path:
                if pieces:
                    curve = Curve(tuple(pieces))
                    self.page.lines.append(Line(curve, pen, self.placed))
        if self.clips and self.path:
            state = replace(state, clip=_within(state.clip, Curve(tuple(self.path[0][0])).box))
        self.path, self.clips = [], False
        return state

    def _form(self, name: str, state: _State) -> None:
        form = self.resources["/XObject"][name].get_object()
        inner = tuple(float(each) for each in form.get("/Matrix", UPRIGHT))
        matrix = times(inner, state.matrix)  # type: ignore[arg-type]
        left, bottom, right, top = (float(each) for each in form["/BBox"])
        a, b = _point(left, bottom, matrix), _point(right, top, matrix)
        bounds = _within(state.clip, (a.real, a.imag, b.real, b.imag))
        key = f"{name} {form.indirect_reference.idnum}"
        placed = Placed(key, _point(0, 0, matrix), None if state.clip is None else bounds)
        run = _Run(self.paper, self.page, form["/Resources"], self.placed or placed)
        run.run(self.paper.operations(form), replace(state, matrix=matrix, clip=bounds))

    def _type(self, name: str, operands: Any, state: _State) -> None:
        matrix, letters, size = self.text
        if name == "Tm":
            matrix = tuple(float(each) for each in operands)  # type: ignore[assignment]
        elif name == "Tf":
            letters = self.paper.letters(self.resources["/Font"][operands[0]])
            size = float(operands[1])
        elif name == "Tj":
            raw = operands[0]
            codes = raw.original_bytes if hasattr(raw, "original_bytes") else bytes(raw)
            text = "".join(letters[code] for code in codes)
            turned = times(matrix, state.matrix)
            words = Words(text, _point(0, 0, turned), size * MM, self.placed, turned[1] > 0.5)
            self.page.words.append(words)
        self.text = matrix, letters, size


def _changed(state: _State, name: str, operands: Any) -> _State:
    if name == "cm":
        matrix: Matrix = tuple(float(each) for each in operands)  # type: ignore[assignment]
        return replace(state, matrix=times(matrix, state.matrix))
    if name == "w":
        return replace(state, width=float(operands[0]))
    if name == "d":
        return replace(state, dashes=tuple(float(each) for each in operands[0]))
    return replace(state, stroke=tuple(float(each) for each in operands))


def _within(one: Box | None, two: Box) -> Box:
    if one is None:
        return two
    return (max(one[0], two[0]), max(one[1], two[1]), min(one[2], two[2]), min(one[3], two[3]))
