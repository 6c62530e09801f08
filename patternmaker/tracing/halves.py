"""The mean of the two halves of an outline: a seat alike left and right.

The halves are run side by side from the back to the front, each at its own even pace from one
corner to the next; the mean of the two points is a point of the result.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.errors import Refusal
from patternmaker.facts import COUNT, HAIR
from patternmaker.geometry.contour import SMOOTH, Contour, Path
from patternmaker.geometry.framing import Ring, framed, mirrored
from patternmaker.tracing.spans import SPOT, Span, mended, part_of

if TYPE_CHECKING:
    from collections.abc import Iterator

ON_AXIS = 0.03  # of the width: a corner so close to the middle line is meant to stand on it
CORNER = 0.2  # radians; what turns less need have no partner on the other side
LEVEL = 1e-8  # radians; halves that cross the middle line so squarely join smoothly


class Half(NamedTuple):
    """A half of an outline, from the back to the front over the left side.

    Args:
        path: its lines and arcs.
        corners: the lengths at its corners, in order.
        kinks: the lengths at vertices that turn, but are no corners.
        pointed: whether the outline has a corner at its beginning, and at its end.
    """

    path: Path
    corners: tuple[float, ...]
    kinks: tuple[float, ...]
    pointed: tuple[bool, bool]


class Evened(NamedTuple):
    """An outline alike left and right.

    Args:
        contour: framed.
        largest: mm; how far its halves lay apart at the most.
        mean: mm; how far in the mean.
    """

    contour: Contour
    largest: float
    mean: float


def evened(contour: Contour) -> Evened:
    """Return the mean of a framed contour and its mirror image.

    Raises:
        Refusal: if one half has more corners than the other.
    """
    begin, end = _axis_vertex(contour, "back"), _axis_vertex(contour, "front")
    ring = Ring(contour.segments, {"back": begin, "front": end})
    left, right = _half(ring), _half(mirrored(ring))
    if len(left.corners) != len(right.corners):
        raise Refusal(
            "symmetrical", "the left half has {value} corners, the right one {limit}",
            value=len(left.corners), limit=len(right.corners), show=COUNT.show,
            mend="trace it again, or take it as it is",
        )  # fmt: skip
    spans = list(_spans(left, right))
    apart = [each for span in spans for each in span.apart()]
    largest, mean = max(apart), math.fsum(apart) / len(apart)
    if largest <= HAIR and _is_level(left):
        half = left.path.segments
    else:
        half = tuple(each for span in spans for each in span.mean())
    segments = (*half, *mirrored(Ring(half, {})).segments)
    return Evened(framed(segments, {}), largest, mean)


def _axis_vertex(contour: Contour, joint: str) -> int:
    """Return the vertex at which the halves part: a corner close by, or that on the middle line."""
    index = contour.joints[joint]
    place, reach = contour.segments[index].start, ON_AXIS * contour.width
    near = [
        (abs(each.start - place), i)
        for i, each in enumerate(contour.segments)
        if abs(contour.corners[i]) > CORNER and abs(each.start - place) <= reach
    ]
    return min(near)[1] if near else index


def _half(ring: Ring) -> Half:
    contour = Contour(ring.segments, ring.joints)
    begin, end, count = ring.joints["back"], ring.joints["front"], len(ring.segments)
    picks = [i % count for i in range(begin, end if end > begin else end + count)]
    whole = Path(tuple(contour.segments[i] for i in picks))
    turns = [(along, abs(contour.corners[i])) for along, i in zip(whole.stops, picks, strict=False)]
    return Half(
        Path(tuple(mended(whole.segments))),
        tuple(along for along, turn in turns[1:] if turn > CORNER),
        tuple(along for along, turn in turns[1:] if SMOOTH < turn <= CORNER),
        (abs(contour.corners[begin]) > CORNER, abs(contour.corners[end]) > CORNER),
    )


def _is_level(half: Half) -> bool:
    """Return whether a half meets its mirror image, and smoothly but where there is a corner."""
    path = half.path
    if max(abs(path.segments[0].start.real), abs(path.segments[-1].end.real)) > SPOT:
        return False
    ways = path.tangent_at(0.0), path.segments[-1].tangent(path.segments[-1].length)
    return all(
        pointed or abs(way.imag) < LEVEL for pointed, way in zip(half.pointed, ways, strict=True)
    )


def _apart(shares: list[float], least: float) -> list[float]:
    """Return shares in order, without those that lie closer to the one before or to an end."""
    kept = [0.0]
    for share in sorted(shares):
        if kept[-1] + least < share < 1.0 - least:
            kept.append(share)
    return kept[1:]


def _spans(left: Half, right: Half) -> Iterator[Span]:
    """Yield the spans from corner to corner, and from kink to kink of either half."""
    ends = [
        (0.0, *left.corners, left.path.length),
        (0.0, *right.corners, right.path.length),
    ]
    cuts: list[tuple[float, float]] = [(0.0, 0.0)]
    for (a, b), (c, d) in zip(*map(pairwise, ends), strict=True):
        shares = [(kink - a) / (b - a) for kink in left.kinks if a < kink < b]
        shares += [(kink - c) / (d - c) for kink in right.kinks if c < kink < d]
        apart = _apart(shares, HAIR / min(b - a, d - c))
        cuts += [(a + share * (b - a), c + share * (d - c)) for share in apart]
        cuts.append((b, d))
    last = len(cuts) - 2
    for i, ((a, c), (b, d)) in enumerate(pairwise(cuts)):
        yield Span(
            part_of(left.path, a, b),
            part_of(right.path, c, d),
            -1 + 0j if i == 0 and not left.pointed[0] else None,
            1 + 0j if i == last and not left.pointed[1] else None,
        )
