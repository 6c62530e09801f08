"""A strip of boxing as it is drawn, seen from its own seam; and how its notches divide it."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.paper.curves import Curve
    from tests.paper.sheets import Print


@dataclass(frozen=True)
class Strip:
    """Its lines by kind: x along the seam from its near end, y up from the seam."""

    cut: Curve
    lines: dict[str, list[Curve]]

    @property
    def seam(self) -> Curve:
        (seam,) = self.lines["sew line"]
        return seam

    @property
    def stops(self) -> list[float]:
        """Where the seam begins, is notched (between the slits of a double notch), and ends."""
        slits = sorted(slit.start.real for slit in self.lines["notch"])
        pairs = [(a, b) for a, b in itertools.pairwise(slits) if b - a < 7.0]
        single = set(slits) - {slit for pair in pairs for slit in pair}
        return [0.0, *sorted([*single, *(sum(pair) / 2 for pair in pairs)]), self.seam.length]

    def levels(self, kind: str) -> list[tuple[float, float, float]]:
        """Return left, right and height of each level line of a kind."""
        return [(c.box[0], c.box[2], c.middle.imag) for c in self.lines.get(kind, ())]

    def uprights(self, kind: str) -> list[tuple[float, float, float]]:
        """Return x, bottom and top of each upright line of a kind."""
        return sorted((c.middle.real, c.box[1], c.box[3]) for c in self.lines.get(kind, ()))


def strip(book: Print, length: float, height: float) -> Strip:
    """Return the strip whose cut line is so long and high."""
    ((plate, cut),) = [
        (plate, curve)
        for plate, curve in book.drawn("cut line")
        if curve.is_closed
        and abs(max(curve.size) - length) < 0.05
        and abs(min(curve.size) - height) < 0.05
    ]
    within = [
        (kind, curve)
        for form, kind, curve in book.lines
        if form == plate and kind != "cut line" and _holds(cut, curve)
    ]
    (seam,) = [curve for kind, curve in within if kind == "sew line"]
    way = (seam.end - seam.start) / abs(seam.end - seam.start)
    off = ((cut.middle - seam.middle) / way).imag
    way = way if off < 0 else -way  # the seam runs along the upper edge
    begins = min((seam.start, seam.end), key=lambda end: (end / way).real)
    lines: dict[str, list[Curve]] = {}
    for kind, curve in within:
        lines.setdefault(kind, []).append(curve.moved(1 / way, -begins / way))
    return Strip(cut.moved(1 / way, -begins / way), lines)


def _holds(cut: Curve, curve: Curve) -> bool:
    left, bottom, right, top = cut.box
    return (
        left - 0.01 < curve.box[0]
        and bottom - 0.01 < curve.box[1]
        and curve.box[2] < right + 0.01
        and curve.box[3] < top + 0.01
    )


def spans(stops: list[float]) -> list[float]:
    """Return the lengths from stop to stop."""
    return [b - a for a, b in itertools.pairwise(stops)]


def top_spans(book: Print, seam: Curve, plate: str, cut: Curve) -> list[float]:
    """Return the spans of a top's seam from its double notch round to it again.

    A slit leads along the normal, so the line through it meets the sew line at its station; the
    two slits of a double notch stand on either side of theirs.
    """
    slits = [slit for form, slit in book.drawn("notch") if form == plate and _holds(cut, slit)]
    places = sorted(seam.met_by(slit.end, slit.end - slit.start) % seam.length for slit in slits)
    first = _double(places, seam.length)
    turned = [(place - first) % seam.length for place in places]
    single = [t for t in turned if 5.0 < t < seam.length - 5.0]
    assert len(single) == len(places) - 2
    found = spans([0.0, *sorted(single), seam.length])
    return found if seam.area > 0 else found[::-1]


def _double(places: list[float], whole: float) -> float:
    """Return the middle of the two places that stand about 6 mm apart."""
    pairs = zip(places, [*places[1:], places[0] + whole], strict=True)
    (pair,) = [(a, b) for a, b in pairs if b - a < 7.0]
    assert abs(pair[1] - pair[0] - 6.0) < 0.6
    return sum(pair) / 2
