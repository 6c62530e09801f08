"""The circles that touch two others from outside and pass through a point (after Apollonius)."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterator

Triple = tuple[float, float, float]


class Disc(NamedTuple):
    """A circle by its middle and radius."""

    middle: complex
    radius: float


def touching(one: Disc, two: Disc, through: complex) -> Iterator[Disc]:
    """Yield the circles that touch both from outside and pass through a point.

    With the point as origin, |c| = s taken from |c - p| = s + r leaves p . c + r s =
    (|p|^2 - r^2) / 2 for each of the two: a line in the space of (c, s), which meets the cone
    |c| = s twice at most.
    """
    planes = [_plane(each, through) for each in (one, two)]
    (a, d), (b, e) = planes
    along = _cross(a, b)
    square = sum(each * each for each in along)
    foot = [
        (d * p + e * q) / square for p, q in zip(_cross(b, along), _cross(along, a), strict=True)
    ]
    for share in _roots(_on_cone(along, along), _on_cone(foot, along), _on_cone(foot, foot)):
        x, y, radius = (at + share * step for at, step in zip(foot, along, strict=True))
        if radius > 0:
            yield Disc(through + complex(x, y), radius)


def _plane(disc: Disc, through: complex) -> tuple[Triple, float]:
    at = disc.middle - through
    return (at.real, at.imag, disc.radius), (abs(at) ** 2 - disc.radius**2) / 2


def _cross(a: Triple, b: Triple) -> Triple:
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def _on_cone(a: Triple | list[float], b: Triple | list[float]) -> float:
    return a[0] * b[0] + a[1] * b[1] - a[2] * b[2]


def _roots(a: float, b: float, c: float) -> Iterator[float]:
    """Yield the real roots of a x^2 + 2 b x + c, the one that is larger in size first."""
    larger = -b - math.copysign(math.sqrt(max(0.0, b * b - a * c)), b)
    if a:
        yield larger / a
    if larger:
        yield c / larger
