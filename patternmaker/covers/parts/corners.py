"""How the corners of a cover in one piece are dealt with: cut out, sewn to a dart, or pleated.

Which of them suits a corner is a matter of its radius. The bounds are common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.covers.parts.bends import bends, is_left
from patternmaker.covers.parts.draped import along_at, no_room
from patternmaker.covers.parts.wedges import clear_part, wedges
from patternmaker.errors import Refusal
from patternmaker.facts import HAIR, LENGTH
from patternmaker.pattern.stations import CARDINALS
from patternmaker.units import MM_PER_INCH

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.covers.parts.bends import Bend
    from patternmaker.covers.parts.draped import Draped
    from patternmaker.covers.parts.wedges import Wedge
    from patternmaker.geometry.contour import Contour

BY_RADIUS, CUT_OUT, DART, PLEATS, EASED = "by radius", "cut-out", "dart", "pleats", "eased"
WAYS = (BY_RADIUS, CUT_OUT, DART, PLEATS)

# All common practice, no source.
SHARP = MM_PER_INCH / 4  # a corner of this radius or less is cut out
TIGHT = MM_PER_INCH  # one of this radius or less takes a dart
FOLLOWS = 10.0  # sides; a bend of a wider radius is eased in
LITTLE = MM_PER_INCH / 4  # this much is eased in wherever it is
MOST_IN_ONE = math.radians(130)  # that one dart or pleat takes up
CLEAR = 0.3  # of the spacing of pleats, between one and a centre mark
SLACK = 1e-6  # mm
FINE = 0.1  # mm; the room for a pleat is told to this, rounded down


@dataclass(frozen=True)
class Wish:
    """What is asked for of the corners.

    Args:
        how: one of `WAYS`.
        pleats: how many in each corner, zero to go by their depth.
        depth: the deepest that a pleat may be, mm.
        seam: the seam allowance.
    """

    how: str
    pleats: int
    depth: float
    seam: float


@dataclass(frozen=True)
class Corner:
    """A bend, how it is dealt with, and the wedges that take up what it has too much."""

    bend: Bend
    how: str
    wedges: tuple[Wedge, ...]

    @property
    def taken(self) -> float:
        """The length that it takes up along the board's lower edge."""
        return math.fsum(wedge.taken for wedge in self.wedges)

    @property
    def is_sewn(self) -> bool:
        """Whether its wedges are sewn."""
        return self.how in {CUT_OUT, DART}

    @property
    def named(self) -> Iterator[tuple[str, Wedge]]:
        """Each wedge with its name."""
        for i, wedge in enumerate(self.wedges, 1):
            yield (f"{self.bend.name}, {i}" if len(self.wedges) > 1 else self.bend.name), wedge


def corners(draped: Draped, wish: Wish) -> tuple[Corner, ...]:
    """Return every corner and bend of a cover, in order round it.

    Raises:
        Refusal: if one can't be dealt with as asked, with its limit.
    """
    found = [_corner(draped, bend, wish) for bend in bends(draped.outline, FOLLOWS * draped.side)]
    if wish.how == BY_RADIUS:
        unfit = [_too_deep(draped, corner, found) for corner in found]
        found = [
            _made(draped, corner.bend, DART, wish) if deep else corner
            for corner, deep in zip(found, unfit, strict=True)
        ]
    _keep_clear(draped, found)
    for corner in found:
        _bears(draped, corner, wish, found)
    return tuple(found)


def _corner(draped: Draped, bend: Bend, wish: Wish) -> Corner:
    """Return a corner dealt with as asked, or as its radius suits."""
    corner = _made(draped, bend, _by_radius(draped, bend) if wish.how == BY_RADIUS else wish.how,
                   wish)  # fmt: skip
    if wish.how == BY_RADIUS and corner.how == CUT_OUT and _most_seam(corner) < wish.seam:
        return replace(corner, how=DART)
    return corner


def _by_radius(draped: Draped, bend: Bend) -> str:
    if bend.radius <= SHARP + HAIR:
        return CUT_OUT
    return DART if bend.radius <= max(TIGHT, draped.side / 2) + HAIR else PLEATS


def _made(draped: Draped, bend: Bend, how: str, wish: Wish) -> Corner:
    if bend.angle * draped.side < LITTLE:
        return Corner(bend, EASED, ())
    part = clear_part(draped, bend)
    turn = bend.angle * (part[1] - part[0])
    count = 1 if bend.is_sharp else math.ceil(turn / MOST_IN_ONE)
    if how == PLEATS and not bend.is_sharp:
        count = max(count, wish.pleats or _pleats(draped, bend, turn, wish.depth))
    if count > 1 and not wish.pleats:
        count = max(range(count, count + 4), key=lambda n: (_off_centres(draped, bend, n), -n))
    return Corner(bend, how, tuple(wedges(draped, bend, part, count)))


def _pleats(draped: Draped, bend: Bend, turn: float, depth: float) -> int:
    """Return how many pleats a turn takes; in a tight bend several would lie over each other."""
    return (
        math.ceil(turn * draped.side / (2 * depth)) if bend.radius >= draped.side / 2 - HAIR else 1
    )


def _off_centres(draped: Draped, bend: Bend, count: int) -> float:
    """Return how far the centre marks in a bend stand off its wedges, as a share of their spacing.

    What is far enough counts as `CLEAR`.
    """
    outline, spacing = draped.outline, bend.length / count
    tips = [bend.at((i + 0.5) / count).along for i in range(count)]
    inside = [outline.station(name) for name in CARDINALS if _is_inside(outline, bend, name)]
    offs = (
        abs((tip - at + outline.length / 2) % outline.length - outline.length / 2) / spacing
        for at in inside for tip in tips
    )  # fmt: skip
    return min((CLEAR, *offs))


def _is_inside(outline: Contour, bend: Bend, joint: str) -> bool:
    past = (outline.station(joint) - bend.begin) % outline.length
    return LITTLE < past < bend.length - LITTLE


def _keep_clear(draped: Draped, found: Sequence[Corner]) -> None:
    """Refuse corners whose wedges run into each other at the cut line."""
    whole = draped.cut.length
    ends = []
    for corner in found:
        for wedge in corner.wedges:
            begin, end = (along_at(draped.cut, tip) for tip in wedge.tips)
            ends.append((begin, begin + (end - begin) % whole, corner.bend.name))
    ends.sort()
    ends += [(begin + whole, end + whole, name) for begin, end, name in ends[:1]]
    for (_, end, name), (begin, _, _) in pairwise(ends):
        if end > begin + SLACK:
            raise no_room(name)


def _bears(draped: Draped, corner: Corner, wish: Wish, found: Sequence[Corner]) -> None:
    """Refuse a corner that can't be dealt with as asked, naming the limit."""
    if corner.how == CUT_OUT and _most_seam(corner) < wish.seam:
        raise Refusal(
            "allowances.seam", f"{{value}} leaves nothing to cut out at {corner.bend.name} "
            "(at most {limit})",
            value=wish.seam, limit=_most_seam(corner), show=LENGTH.show,
            mend='sew a dart there (corner = "dart"), or make the allowance narrower',
        )  # fmt: skip
    if deep := _too_deep(draped, corner, found):
        raise Refusal(
            "cover.pleats" if wish.pleats else "cover.corner",
            f"a pleat {{value}} deep is deeper than {corner.bend.name} has room for ({{limit}})",
            value=deep[0], limit=deep[1], show=LENGTH.show,
            mend='sew a dart there (corner = "dart"), take fewer pleats, or lower the sides',
        )  # fmt: skip


def _too_deep(
    draped: Draped, corner: Corner, found: Sequence[Corner]
) -> tuple[float, float] | None:
    """Return the depth of a corner's pleats and the room that there is, if it is less."""
    if corner.how != PLEATS:
        return None
    depth = max(wedge.taken for wedge in corner.wedges) / 2
    room = min(_room(draped, wedge, found) for wedge in corner.wedges)
    return (depth, max(0.0, math.floor(room / FINE) * FINE)) if depth > room else None


def _most_seam(corner: Corner) -> float:
    """Return the widest allowance that leaves something to cut out above the board's edge."""
    return min(abs(wedge.middle - wedge.apex) * wedge.sine for wedge in corner.wedges)


def _room(draped: Draped, wedge: Wedge, found: Sequence[Corner]) -> float:
    """Return how far the next wedge is, on the side under which a pleat lies: toward the front."""
    sign = 1 if is_left(draped.outline, wedge.at) else -1
    gaps = (
        sign * (other.at - wedge.at) % draped.outline.length
        for corner in found for other in corner.wedges if other != wedge
    )  # fmt: skip
    return min(gaps, default=draped.outline.length / 2)
