"""Strokes as a drawing has them, and the gathering of them into a sketch."""

from __future__ import annotations

from collections import Counter
from itertools import islice
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from patternmaker.errors import Refusal
from patternmaker.geometry.contour import MEETS
from patternmaker.geometry.segments import Line
from patternmaker.tracing.beziers import Bezier
from patternmaker.tracing.curves import Affine, Oval, closeness, extent
from patternmaker.tracing.sketch import Chain, Sketch

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.segments import Segment

STRING = 12  # corners; straight lines with more of them are a string of points, drawn or digitised
MOST = 200_000  # points in a file
MOST_ARCS = 50_000  # true lines and arcs in a file, those that follow its curves counted
FARTHEST = 1e6  # mm, or units of the file; nothing lies farther from its origin
NEAR = 1e-7  # of a line's size; a shorter step is the rounding of the file
LONGEST_NAME = 120  # letters

Piece: TypeAlias = complex | Bezier | Oval
"""one step of a stroke; a complex number is a straight line to that point"""


class Stroke(NamedTuple):
    """A line as it is drawn: where the pen is set down, and each step from there."""

    start: complex
    pieces: tuple[Piece, ...]
    closed: bool = False

    def mapped(self, by: Affine) -> Stroke:
        """Return it mapped."""
        pieces = [by(each) if isinstance(each, complex) else each.mapped(by)
                  for each in self.pieces]  # fmt: skip
        return Stroke(by(self.start), tuple(pieces), self.closed)

    def reach(self) -> Iterator[complex]:
        """Yield points between which it lies."""
        yield self.start
        for each in self.pieces:
            if isinstance(each, complex):
                yield each
            else:
                yield from each.hull

    def chain(self, name: str) -> Chain | None:
        """Return its lines and arcs, or its points if it is a string of them; None if it is a dot.

        Raises:
            ValueError: if one of its curves can't be followed.
        """
        size = extent(self.reach())
        near = min(MEETS / 2, NEAR * size)
        if not size:
            return None
        if len(self.pieces) >= STRING and not any(
            isinstance(p, Bezier | Oval) for p in self.pieces
        ):
            points = tuple(self.reach())
            again = self.closed and abs(points[-1] - points[0]) <= near
            return Chain(name, points=points[:-1] if again else points, closed=self.closed)
        segments = tuple(islice(self._segments(near, closeness(size)), MOST_ARCS + 1))
        return Chain(name, segments=segments, closed=self.closed) if segments else None

    def _segments(self, near: float, close: float) -> Iterator[Segment]:
        at = self.start
        for each in (*self.pieces, self.start) if self.closed else self.pieces:
            if not isinstance(each, complex):
                steps = each.segments(close)
            else:
                steps = (Line(at, each),) if abs(each - at) > near else ()
            yield from steps
            at = steps[-1].end if steps else at


class Gathering:
    """Takes strokes one after another, and refuses what no seat can have."""

    def __init__(self) -> None:
        self._chains: list[Chain] = []
        self._names: Counter[str] = Counter()
        self._points = self._arcs = 0
        self._skipped: Counter[str] = Counter()

    def add(self, name: str, stroke: Stroke) -> None:
        """Take a stroke under a name; a name that is taken gets a number.

        Raises:
            Refusal: if it holds too many points, lies too far out or can't be followed.
        """
        name = self._own(printable(name) or "line")
        self._points += 1 + len(stroke.pieces)
        checked_count(self._points)
        for place in stroke.reach():
            checked_place(place, name)
        try:
            chain = stroke.chain(name)
        except ValueError:
            raise Refusal(
                "",
                "holds a curve that can't be followed, in {value}",
                value=name,
                mend="draw it again there, without turning on the spot",
            ) from None
        if chain:
            self._arcs += len(chain.segments)
            checked_count(self._arcs, MOST_ARCS, "arcs")
            self._chains.append(chain)

    def skip(self, kind: str) -> None:
        """Note that something of a kind was passed over."""
        self._skipped[printable(kind)] += 1

    def sketch(self, unit: float | None, *notes: str) -> Sketch:
        """Return all of it, with a note on what was passed over."""
        kinds = ", ".join(f"{count} {kind}" for kind, count in sorted(self._skipped.items()))
        passed = (f"passed over in the drawing, as no lines to follow: {kinds}",) if kinds else ()
        return Sketch(tuple(self._chains), unit, notes=(*notes, *passed))

    def _own(self, name: str) -> str:
        self._names[name] += 1
        while self._names[name] > 1:
            name = f"{name} ({self._names[name]})"
            self._names[name] += 1
        return name


def printable(text: str) -> str:
    """Return a text on one line, and not too long, without control characters."""
    shown = "".join(sign if sign.isprintable() else " " for sign in text[: 2 * LONGEST_NAME])
    return " ".join(shown.split())[:LONGEST_NAME]


def checked_count(count: int, most: int = MOST, what: str = "points") -> None:
    """Refuse a drawing with too many points, or arcs."""
    if count > most:
        raise Refusal(
            "",
            f"holds {{value}} {what} or more, where at most {{limit}} are read",
            value=f"{count:,}",
            limit=f"{most:,}",
            mend="save the seat alone, or with fewer points",
        )


def checked_place(place: complex, where: str) -> None:
    """Refuse a point that is not a number, or lies outside any drawing."""
    if not (abs(place.real) <= FARTHEST and abs(place.imag) <= FARTHEST):
        raise Refusal(
            "",
            "holds a point farther out than {limit}, or no number, in {value}",
            value=where,
            limit=f"{FARTHEST:,.0f}",
            mend="mend that point, and check the unit",
        )
