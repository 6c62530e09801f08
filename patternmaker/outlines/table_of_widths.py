"""The seat that is measured by its widths."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH, both, both_rows, rows
from patternmaker.geometry.biarcs import fitted
from patternmaker.geometry.framing import Ring, flipped
from patternmaker.geometry.monotone import Monotone
from patternmaker.geometry.rounding import rounded
from patternmaker.geometry.segments import Line
from patternmaker.outlines.registry import Outline, Taken, corner_radius, shape

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from patternmaker.geometry.segments import Segment

Row = tuple[float, ...]

CLOSEST = 2.0  # mm; rows that lie closer say the same thing twice
NARROWEST = 20.0  # mm; a seat that is narrower between its ends is two
SMALLEST = 50.0  # mm each way
SAME = 0.5  # mm; a corner is at the row that lies closer
EXAMPLE = both_rows(
    mm=((0, 300), (90, 380), (200, 390), (300, 350), (370, 250)),
    in_=((0, 12), (3.5, 15), (8, 15.5), (12, 13.75), (14.5, 10)),
)  # fmt: skip


@shape("table of widths")
class TableOfWidths(Outline):
    """A seat given by how wide it is at some distances from its back edge.

    A smooth curve joins the widths and never passes them (Steffen's monotone cubics, followed by
    tangent arcs). The first row is the back edge itself, the last one the front; one that is 0
    wide closes there in a round end, half an ellipse where the row beside it is the widest. A seat
    that is not alike left and right has two figures to a row: what lies to the left of a line from
    back to front, and what lies to the right of it.
    """

    widths: tuple[Row, ...] = rows(
        "distances from the back edge, and how wide the seat is there",
        ("from the back", "width, or left of the line", "right of the line"),
        needed=2, default=EXAMPLE, least=2, most=100,
    )  # fmt: skip
    corners_at: tuple[Row, ...] = rows(
        "distances from the back at which the sides turn sharply", ("from the back",), default=None
    )
    back_corner: float = corner_radius("the back corners", default=both(in_=1.5, mm=40))
    front_corner: float = corner_radius("the front corners", default=both(in_=1.5, mm=40))

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        """Yield what keeps the rows from being those of a seat."""
        found = [*_disorder(values["widths"]), *_size(values["widths"])]
        found = found or list(_stray(values["widths"], values["corners_at"]))
        yield from found or _no_room(values)

    def struck(self) -> Ring:
        """Return the outline, the middle of its back edge at the origin."""
        return _struck(self.widths, self.corners_at, self.back_corner, self.front_corner)

    def taken(self) -> Iterator[Taken]:
        """Yield where each width is taken, or both parts of it."""
        for row in self.widths:
            left, right = _parts(row)
            y = -1j * row[0]
            if len(row) == 2 and left:
                yield Taken("widths", y - left, y + right)
            elif left and right:
                yield Taken("widths", y - left, y)
                yield Taken("widths", y, y + right)
        corners = _corners(self.back_corner, self.front_corner)
        ring = self.struck()
        for name, radius in corners.items():
            if name in ring.joints and name.endswith("left"):
                field = name.replace("left", "corner").replace(" ", "_")
                yield Taken.in_corner(field, ring, name, radius)

    def partner(self) -> Outline:
        """Return it with left and right exchanged."""
        exchanged = tuple((row[0], *reversed(row[1:])) for row in self.widths)
        return replace(self, widths=exchanged)


def _parts(row: Row) -> tuple[float, float]:
    """Return what lies left and right of the line in a row."""
    return (row[1] / 2, row[1] / 2) if len(row) == 2 else (row[1], row[2])


def _corners(back: float, front: float) -> dict[str, float]:
    return {"back left": back, "front left": front, "front right": front, "back right": back}


def _struck(widths: Sequence[Row], at: Sequence[Row], back: float, front: float) -> Ring:
    """Return the ring down the left side, across the front, up the right side, and home."""
    sharp = {_row_at(widths, corner[0]) for corner in at}
    left, right = (_side(widths, [_parts(row)[i] for row in widths], sharp) for i in (0, 1))
    segments: list[Segment] = []
    joints: dict[str, int] = {}
    begin, end = left[0][0].start, left[-1][-1].end
    other = [[flipped(each).reversed() for each in reversed(run)] for run in reversed(right)]
    if abs(begin - other[-1][-1].end) > 1e-6:
        joints["back right"] = len(segments)
        segments.append(Line(other[-1][-1].end, begin))
        joints["back left"] = len(segments)
    _run_down(left, "left", segments, joints, range(1, len(left)))
    if abs(end - other[0][0].start) > 1e-6:
        joints["front left"] = len(segments)
        segments.append(Line(end, other[0][0].start))
        joints["front right"] = len(segments)
    _run_down(other, "right", segments, joints, range(len(other) - 1, 0, -1))
    ring = Ring(tuple(segments), joints)
    radii = {name: r for name, r in _corners(back, front).items() if name in joints}
    return rounded(ring, radii)


def _run_down(
    runs: Sequence[Sequence[Segment]], side: str, segments: list[Segment],
    joints: dict[str, int], numbers: range,
) -> None:  # fmt: skip
    """Append the runs of a side, and name the corners between them."""
    for i, run in enumerate(runs):
        if i:
            joints[f"{side} corner {numbers[i - 1]}"] = len(segments)
        segments += run


def _side(widths: Sequence[Row], halves: Sequence[float], sharp: set[int]) -> list[list[Segment]]:
    """Return the left side from back to front, in runs from corner to corner."""
    last = len(widths) - 1
    closed = {i for i in (0, last) if sum(_parts(widths[i])) == 0.0}
    ends = [0, *sorted(sharp - {0, last}), last]
    return [
        _run([row[0] for row in widths[a : b + 1]], halves[a : b + 1],
             opens=a in closed, closes=b in closed)
        for a, b in pairwise(ends)
    ]  # fmt: skip


def _run(
    places: Sequence[float], halves: Sequence[float], *, opens: bool, closes: bool
) -> list[Segment]:
    """Return a smooth run of the left side, which may open or close the seat in a round end.

    Beside a round end the side is no flatter than a parabola is there: half its chord's slope.
    """
    last = len(halves) - 1
    chords = Monotone(places, halves).secants
    beside = [(1, chords[0])] * opens + [(last - 1, chords[-1])] * closes
    curve = Monotone(places, halves, {i: abs(chord) / 2 for i, chord in beside})
    segments: list[Segment] = []
    for i, step in enumerate(curve.steps):
        if opens and i == 0:
            segments += _round_end(_at(curve, i, 0.0)[0], *_at(curve, i, step))
        elif closes and i == last - 1:
            end = _round_end(_at(curve, i, step)[0], *_at(curve, i, 0.0))
            segments += (each.reversed() for each in reversed(end))
        else:
            segments += fitted(lambda along, i=i: _at(curve, i, along), 0.0, step)  # type: ignore[misc]
    return segments


def _at(curve: Monotone, index: int, along: float) -> tuple[complex, complex]:
    half, slope = curve.on(index, along)
    way = complex(-slope, -1.0)
    return complex(-half, -curve.places[index] - along), way / abs(way)


def _round_end(tip: complex, beside: complex, way: complex) -> tuple[Segment, ...]:
    """Return a quarter of an ellipse, maybe askew, from the tip of a round end to the row beside.

    At the tip it runs square to the line; at the row, in the direction of the side.
    """
    rest = way * ((beside - tip).imag / way.imag)
    across = beside - tip - rest

    def quarter(angle: float) -> tuple[complex, complex]:
        ahead = across * math.cos(angle) + rest * math.sin(angle)
        place = tip + across * math.sin(angle) + rest * (1 - math.cos(angle))
        return place, ahead / abs(ahead)

    return fitted(quarter, 0.0, math.pi / 2)


def _row_at(widths: Sequence[Row], at: float) -> int:
    """Return the index of the row at a distance from the back."""
    return min(range(len(widths)), key=lambda i: abs(widths[i][0] - at))


def _disorder(widths: Sequence[Row]) -> Iterator[Refusal]:
    """Yield the first thing that is wrong with the order or the form of the rows."""
    if widths[0][0] != 0.0:
        yield Refusal("widths, row 1, from the back", "{value} is not the back edge",
                      value=widths[0][0], show=LENGTH.show,
                      mend="begin with the row [0, width at the back]")  # fmt: skip
    for number, (one, two) in enumerate(pairwise(widths), 2):
        if two[0] - one[0] < CLOSEST:
            yield Refusal(f"widths, row {number}, from the back",
                          "{value} does not come after the row before it ({limit})",
                          value=two[0], limit=one[0], show=LENGTH.show,
                          mend="give the rows in order from back to front")  # fmt: skip
        if len(two) != len(widths[0]):
            yield Refusal(
                f"widths, row {number}",
                "has not as many figures as the first row",
                mend="give the width in every row, or left and right in every row",
            )
    for number, row in enumerate(widths[1:-1], 2):
        if sum(_parts(row)) < NARROWEST:
            yield Refusal(f"widths, row {number}", "the seat is {value} wide there, less than "
                          "{limit}", value=sum(_parts(row)), limit=NARROWEST, show=LENGTH.show,
                          mend="only its ends may be narrower")  # fmt: skip


def _size(widths: Sequence[Row]) -> Iterator[Refusal]:
    widest = max(sum(_parts(row)) for row in widths)
    for says, value in (("wide", widest), ("deep", widths[-1][0])):
        if value < SMALLEST:
            yield Refusal("widths", f"the seat is {{value}} {says}, less than {{limit}}",
                          value=value, limit=SMALLEST, show=LENGTH.show,
                          mend="check the unit")  # fmt: skip


def _stray(widths: Sequence[Row], at: Sequence[Row]) -> Iterator[Refusal]:
    """Yield each corner that stands at no row."""
    for number, (where,) in enumerate(at, 1):
        if abs(widths[_row_at(widths, where)][0] - where) > SAME:
            yield Refusal(
                f"corners_at, row {number}",
                "there is no width at {value}",
                value=where,
                show=LENGTH.show,
                mend="measure the width at the corner too",
            )


def _no_room(values: Mapping[str, Any]) -> Iterator[Refusal]:
    """Yield the refusal of a corner's radius that its sides have no room for."""
    try:
        _struck(values["widths"], values["corners_at"], values["back_corner"],
                values["front_corner"])  # fmt: skip
    except Refusal as mistake:
        which = "back_corner" if mistake.field.startswith("back") else "front_corner"
        yield mistake.about(which)
