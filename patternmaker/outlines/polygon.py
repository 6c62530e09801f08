"""The seat with straight sides and no name."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH, both_rows, rows
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.framing import Ring, sharp
from patternmaker.geometry.rounding import rounded
from patternmaker.geometry.validity import crossing
from patternmaker.outlines.registry import Outline, Taken, shape

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

Row = tuple[float, ...]

SMALLEST = 50.0  # mm each way
SHORTEST = 1.0  # mm; corners that lie closer are the same one
THINNEST = 500.0  # mm2
EXAMPLE = both_rows(
    mm=((20, 0, 40), (430, 0, 40), (500, 230, 50), (350, 400, 60), (80, 400, 60), (0, 200, 50)),
    in_=((1, 0, 1.5), (17, 0, 1.5), (20, 9, 2), (14, 16, 2.5), (3, 16, 2.5), (0, 8, 2)),
)  # fmt: skip


@shape("polygon")
class Polygon(Outline):
    """A seat with any straight sides, each corner with a radius of its own.

    Lay a rule along the left side of the seat and one behind it, and measure to each corner from
    both. The radius rounds the corner; 0, or none, leaves it sharp.
    """

    corners: tuple[Row, ...] = rows(
        "each corner in turn, round the seat",
        ("from the left", "from the back", "radius"),
        needed=2, default=EXAMPLE, least=3, most=60,
    )  # fmt: skip

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        """Yield what keeps the corners from being those of a seat."""
        corners = values["corners"]
        if near := _same_place(corners):
            yield Refusal(
                f"corners, row {near[1]}", f"is the same place as row {near[0]}",
                mend="leave one of them out",
            )  # fmt: skip
            return
        yield from _no_seat(corners) or _no_room(corners)

    def struck(self) -> Ring:
        """Return the outline, from the rule at its left and the one behind it."""
        return rounded(_sharp(self.corners), _radii(self.corners))

    def taken(self) -> Iterator[Taken]:
        """Yield nothing: its corners are measured, not its lengths."""
        return iter(())

    def partner(self) -> Outline:
        """Return its mirror image, measured from the other side."""
        both = [row[0] for row in self.corners]
        ends = min(both) + max(both)
        return replace(self, corners=tuple((ends - row[0], *row[1:]) for row in self.corners))


def _points(corners: Sequence[Row]) -> list[complex]:
    return [complex(row[0], -row[1]) for row in corners]


def _radii(corners: Sequence[Row]) -> dict[str, float]:
    return {_name(i): row[2] for i, row in enumerate(corners) if len(row) > 2}


def _name(index: int) -> str:
    return f"corner {index + 1}"


def _sharp(corners: Sequence[Row]) -> Ring:
    """Return the polygon anticlockwise, its corners numbered as its rows are."""
    named = {_name(i): point for i, point in enumerate(_points(corners))}
    ring = sharp(named)
    if _area(ring) > 0:
        return ring
    return sharp(dict(reversed(named.items())))


def _area(ring: Ring) -> float:
    return sum(each.moment for each in ring.segments)


def _same_place(corners: Sequence[Row]) -> tuple[int, int] | None:
    """Return the numbers of two rows that follow each other at one place."""
    points = _points(corners)
    for i, point in enumerate(points):
        if abs(point - points[i - 1]) < SHORTEST:
            return (i if i else len(points)), i + 1
    return None


def _no_seat(corners: Sequence[Row]) -> list[Refusal]:
    """Return what is wrong with the polygon as a whole."""
    ring = _sharp(corners)
    contour = Contour(*ring)
    if min(contour.width, contour.height) < SMALLEST:
        return [Refusal("corners", "the seat is {value} at its narrowest, less than {limit}",
                        value=min(contour.width, contour.height), limit=SMALLEST,
                        show=LENGTH.show, mend="check the unit")]  # fmt: skip
    if (where := crossing(contour)) is not None:
        return [Refusal("corners", "the edge crosses itself {value}", value=where, show=_place,
                        mend="give the corners in the order in which one meets them round the "
                        "seat")]  # fmt: skip
    if _area(ring) < THINNEST:
        return [Refusal("corners", "there is no room between the sides",
                        mend="check the measurements")]  # fmt: skip
    return []


def _place(where: complex, unit: Any) -> str:
    left, back = (LENGTH.show(each, unit) for each in (where.real, -where.imag))
    return f"{left} from the left, {back} from the back"


def _no_room(corners: Sequence[Row]) -> list[Refusal]:
    """Return the refusal of a radius that the sides of its corner have no room for."""
    try:
        ring = rounded(_sharp(corners), _radii(corners))
    except Refusal as mistake:
        row = mistake.field.removeprefix("corner ")
        return [mistake.about(f"corners, row {row}, radius")]
    if (where := crossing(Contour(*ring))) is not None:
        return [Refusal("corners", "the rounded edge crosses itself {value}", value=where,
                        show=_place, mend="make the radii there smaller")]  # fmt: skip
    return []
