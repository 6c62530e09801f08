"""The names of a seat's joints, small beside them on a picture."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING

from patternmaker.drawing.looks import INDIGO, SLATE
from patternmaker.drawing.surface import Fill, Letters, Mark
from patternmaker.geometry.contour import Path
from patternmaker.geometry.segments import Arc

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.drawing.measures import Measure
    from patternmaker.drawing.surface import Anchor
    from patternmaker.geometry.contour import Contour

SIZE = 2.4  # mm; of the type
DOT = 0.6  # mm; radius of the dot on a joint
CLEAR = 2.2  # mm from a joint to its name
SAME_PLACE = 4.0  # mm; joints that lie closer share a line of text
PASSED_OVER = (" begins", " ends")  # joints that would only crowd the middle of their corner
STEP = 1.0  # mm; how closely a name and a line are compared


@dataclass(frozen=True)
class Name:
    """The marks of a joint, and points all over the text, so that nothing else is put there."""

    marks: tuple[Mark, ...]
    points: tuple[complex, ...]


def names(contour: Contour, lines: Sequence[Measure]) -> Iterator[Name]:
    """Yield the names of a contour's joints: outside it, or inside where a line is in the way."""
    taken = [
        line.begin + i * STEP * line.way
        for line in lines
        for i in range(int(line.length / STEP) + 1)
    ]
    for called, along in _places(contour):
        at, away = contour.point_at(along), contour.outward(along)
        away /= abs(away)
        choices = [_name(called, at, way) for way in (away, -away)]
        yield min(choices, key=lambda name: _crossed(name, taken))


def _places(contour: Contour) -> Iterator[tuple[str, float]]:
    """Yield where joints are, and what they are called; neighbours are named together."""
    shown = [name for name in contour.joints if not name.endswith(PASSED_OVER)]
    while shown:
        along = contour.station(shown[0])
        at = contour.point_at(along)
        near = [n for n in shown if abs(contour.point_at(contour.station(n)) - at) < SAME_PLACE]
        yield ", ".join(near), along
        shown = [name for name in shown if name not in near]


def _name(called: str, at: complex, way: complex) -> Name:
    level = abs(way.real) >= 0.4
    anchor: Anchor = "middle" if not level else "left" if way.real > 0 else "right"
    past = at + CLEAR * way - 0.35j * SIZE + (0 if level else 0.5j * SIZE * way.imag)
    letters = Letters(past, called, SIZE, anchor=anchor, colour=SLATE)
    return Name((Fill(disc(at, DOT), INDIGO), letters), tuple(_all_over(letters)))


def _all_over(letters: Letters) -> Iterator[complex]:
    left, base, right, _ = letters.box
    for i in range(int((right - left) / STEP) + 1):
        for up in (0.0, 0.35, 0.7):
            yield complex(left + i * STEP, base + up * letters.size)


def _crossed(name: Name, taken: Sequence[complex]) -> bool:
    return any(abs(point - each) < STEP for point in name.points for each in taken)


def disc(centre: complex, radius: float) -> Path:
    """Return a full circle, in two halves: an arc of a whole turn is none (SVG 1.1, F.6.2)."""
    return Path(tuple(Arc(centre, centre + side * radius, pi) for side in (1, -1)))
