"""The pen that draws an SVG, and the little language of its paths (SVG 1.1, 8.3; SVG 2, 9.3)."""

from __future__ import annotations

import cmath
import math
import re
from typing import TYPE_CHECKING

from patternmaker.geometry.segments import FULL_TURN, turned
from patternmaker.tracing.beziers import Bezier
from patternmaker.tracing.curves import Oval, ellipse
from patternmaker.tracing.gathering import Stroke
from patternmaker.tracing.svg_views import HUGE, NUMBER, numbers

if TYPE_CHECKING:
    from collections.abc import Callable

    from patternmaker.tracing.gathering import Piece

ROUNDING = 1.5e-6  # user units; a half circle whose ends and radius are rounded to six digits
_COMMAND = re.compile(r"([MmZzLlHhVvCcSsQqTtAa])([^MmZzLlHhVvCcSsQqTtAa]*)")
_COUNTS = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7}
_GAP = r"[\s,]*"
_ARC = re.compile(_GAP.join(["", *[f"({NUMBER.pattern})"] * 3, "([01])", "([01])",
                             *[f"({NUMBER.pattern})"] * 2, ""]), re.ASCII)  # fmt: skip


class Pen:
    """Draws strokes; each begins where it is set down."""

    def __init__(self) -> None:
        self.at = 0j
        self._start = 0j
        self._handle: complex | None = None
        self._degree = 0
        self._pieces: list[Piece] = []
        self._strokes: list[Stroke] = []

    def move(self, place: complex) -> None:
        """Lift the pen and set it down."""
        self._lift(closed=False)
        self.at = self._start = place

    def line(self, end: complex) -> None:
        """Draw straight on."""
        self._draw(end, end)

    def curve(self, *points: complex) -> None:
        """Draw a Bezier through its handles to its end."""
        self._draw(Bezier((self.at, *points)), points[-1])
        self._handle, self._degree = points[-2], len(points)

    def on(self, degree: int) -> complex:
        """Return the first handle that goes straight on from a curve of the same degree (8.3.6)."""
        smooth = self._handle is not None and self._degree == degree
        return 2 * self.at - self._handle if smooth and self._handle is not None else self.at

    def arc(self, radii: complex, slant: float, end: complex, *, large: bool, left: bool) -> None:
        """Draw part of an ellipse (SVG 1.1, F.6); ``left`` turns from x toward y."""
        if end == self.at:
            return
        if not radii.real * radii.imag:
            self.line(end)
        else:
            radii = complex(abs(radii.real), abs(radii.imag))
            self._draw(_arc(self.at, radii, slant, end, large=large, left=left), end)

    def oval(self, oval: Oval) -> None:
        """Draw a whole ellipse."""
        self.move(oval.at(oval.begin)[0])
        self._draw(oval, self.at)
        self.close()

    def close(self) -> None:
        """Draw straight back to where the pen was set down."""
        self._lift(closed=True)
        self.at = self._start

    def strokes(self) -> tuple[Stroke, ...]:
        """Return all that was drawn."""
        self._lift(closed=False)
        return tuple(self._strokes)

    def _draw(self, piece: Piece, end: complex) -> None:
        self._pieces.append(piece)
        self._handle, self.at = None, end

    def _lift(self, *, closed: bool) -> None:
        if self._pieces:
            self._strokes.append(Stroke(self._start, tuple(self._pieces), closed))
        self._handle, self._pieces = None, []


def _arc(
    start: complex, radii: complex, slant: float, end: complex, *, large: bool, left: bool
) -> Oval:
    """Return an arc from its ends (F.6.5, F.6.6), as that of a circle of radius 1 is mapped."""
    way = turned(math.radians(math.remainder(slant, 360)))
    step = (end - start) / way
    chord = complex(step.real / radii.real, step.imag / radii.imag)
    half = abs(chord) / 2
    if (1 - half) * min(radii.real, radii.imag) <= ROUNDING:  # too small, or just half round
        radii, chord, half = radii * half, chord / half, 1.0
    side = 1 if large != left else -1
    middle = chord * complex(0.5, side * math.sqrt(1 - half * half) / (2 * half))
    centre = start + way * complex(middle.real * radii.real, middle.imag * radii.imag)
    sweep = 2 * math.asin(half)
    sweep = FULL_TURN - sweep if large else sweep
    return ellipse(centre, radii.real, radii.imag, way)._replace(
        begin=cmath.phase(-middle), sweep=sweep if left else -sweep
    )


def draw(pen: Pen, data: str) -> None:
    """Draw path data.

    Raises:
        ValueError: naming the command that can't be read.
    """
    if not data.lstrip().startswith(("M", "m")):
        raise ValueError(f"it begins with {data.strip()[:1]!r}, not with M")
    for number, command in enumerate(_COMMAND.finditer(data), 1):
        letter, rest = command.groups()
        values = _arcs(rest) if letter in "Aa" else numbers(rest)
        count = _COUNTS.get(letter.upper(), 0)
        if values is None or (not values) != (not count) or (count and len(values) % count):
            raise ValueError(f"command {number}, {letter}")
        if not count:
            pen.close()
        elif letter in "Mm":
            pen.move(_base(pen, letter) + complex(*values[:2]))
            values, letter = values[2:], "l" if letter == "m" else "L"
        for i in range(0, len(values), count or 1):
            _STEPS[letter.upper()](pen, _base(pen, letter), values[i : i + count])


def _base(pen: Pen, letter: str) -> complex:
    return pen.at if letter.islower() else 0j


def _arcs(text: str) -> tuple[float, ...] | None:
    """Return the numbers of arcs; their flags may stand without a space: "a1 1 0 0110 10"."""
    found: list[float] = []
    at = 0
    while at < len(text):
        one = _ARC.match(text, at)
        if not one:
            return None
        found += map(float, one.groups())
        at = one.end()
    return tuple(found) if all(abs(each) <= HUGE for each in found) else None


def _points(base: complex, values: tuple[float, ...]) -> list[complex]:
    return [base + complex(x, y) for x, y in zip(values[::2], values[1::2], strict=True)]


def _across(pen: Pen, base: complex, values: tuple[float, ...]) -> None:
    pen.line(complex(base.real + values[0], pen.at.imag))


def _down(pen: Pen, base: complex, values: tuple[float, ...]) -> None:
    pen.line(complex(pen.at.real, base.imag + values[0]))


def _round(pen: Pen, base: complex, values: tuple[float, ...]) -> None:
    across, down, slant, large, left, x, y = values
    end = base + complex(x, y)
    pen.arc(complex(across, down), slant, end, large=large > 0, left=left > 0)


_STEPS: dict[str, Callable[[Pen, complex, tuple[float, ...]], None]] = {
    "L": lambda pen, base, values: pen.line(base + complex(*values)),
    "H": _across,
    "V": _down,
    "C": lambda pen, base, values: pen.curve(*_points(base, values)),
    "S": lambda pen, base, values: pen.curve(pen.on(3), *_points(base, values)),
    "Q": lambda pen, base, values: pen.curve(*_points(base, values)),
    "T": lambda pen, base, values: pen.curve(pen.on(2), base + complex(*values)),
    "A": _round,
}
