"""Smooth contours that turn both ways, for tests of parallels."""

import cmath
import itertools
import math
from collections.abc import Callable, Iterator, Sequence

from patternmaker.geometry.biarcs import biarc, fitted
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.segments import Arc, Segment


def wave(radius: float, swing: float, waves: int) -> Callable[[float], tuple[complex, complex]]:
    """Return the curve r = R (1 + e cos k t): its point and direction at an angle t."""

    def at(angle: float) -> tuple[complex, complex]:
        reach = radius * (1 + swing * math.cos(waves * angle))
        rise = -radius * swing * waves * math.sin(waves * angle)
        way = complex(rise, reach) * cmath.rect(1, angle)
        return cmath.rect(reach, angle), way / abs(way)

    return at


def wavy(radius: float, swing: float, waves: int) -> Contour:
    """Return that curve by tangent arcs, a joint at every crest."""
    at = wave(radius, swing, waves)
    crests = [math.tau * i / waves for i in range(waves + 1)]
    runs = [fitted(at, begin, end) for begin, end in itertools.pairwise(crests)]
    begins = itertools.accumulate((len(run) for run in runs[:-1]), initial=0)
    edges = tuple(itertools.chain.from_iterable(runs))
    return Contour(edges, {f"crest {i}": begin for i, begin in enumerate(begins)})


def wavy_by(count: int, radius: float, swing: float, waves: int) -> Contour:
    """Return that curve by so many tangent arcs."""
    at = wave(radius, swing, waves)
    return through([at(math.tau * 2 * i / count) for i in range(count // 2)])


def through(nodes: Sequence[tuple[complex, complex]]) -> Contour:
    """Return tangent arcs through points with given directions."""
    pairs = zip(nodes, [*nodes[1:], nodes[0]], strict=True)
    arcs = (biarc(*here, *there) for here, there in pairs)
    return Contour(tuple(itertools.chain.from_iterable(arcs)))


def rounded_off(points: Sequence[complex], radii: Sequence[float]) -> Contour:
    """Return a polygon with each corner rounded, a joint ``in 0``, ``out 0`` ... at each end."""
    corners = list(_corners(points, radii))
    compass = Compass(corners[0][1])
    for i in [*range(1, len(corners)), 0]:
        begin, _, way, turn = corners[i]
        compass.line(begin).joint(f"in {i}")
        side = 1j * math.copysign(radii[i], turn)
        compass.arc(begin + side * way, turn).joint(f"out {i}")
    return compass.closed()


def _corners(
    points: Sequence[complex], radii: Sequence[float]
) -> Iterator[tuple[complex, complex, complex, float]]:
    """Yield where each arc begins and ends, the direction before it, and its turn."""
    for i, (corner, radius) in enumerate(zip(points, radii, strict=True)):
        after = points[(i + 1) % len(points)]
        way = (corner - points[i - 1]) / abs(corner - points[i - 1])
        leave = (after - corner) / abs(after - corner)
        turn = cmath.phase(leave / way)
        reach = radius * math.tan(abs(turn) / 2)
        yield corner - reach * way, corner + reach * leave, way, turn


def with_bay(width: float, depth: float, inner: float, mouth: float = 0.0) -> Contour:
    """Return a 400 mm square with a bay in its upper side: its inner corners are 4 and 5."""
    half, bottom = width / 2, (200 - depth) * 1j
    bay = (half + 200j, half + bottom, -half + bottom, -half + 200j)
    points = (-200 - 200j, 200 - 200j, 200 + 200j, *bay, -200 + 200j)
    return rounded_off(points, (0, 0, 0, mouth, inner, inner, mouth, 0))


def tightest_inner(contour: Contour) -> float:
    """Return the smallest radius of its arcs that turn right."""
    return min((e.radius for e in contour.segments if e.sweep < 0 and isinstance(e, Arc)),
               default=math.inf)  # fmt: skip


def chopped(contour: Contour, crumb: float) -> Contour:
    """Return the same contour with a crumb cut off at the begin of every edge."""

    def pieces(edge: Segment) -> Iterator[Segment]:
        yield edge.cut(0, crumb)
        yield edge.cut(crumb, edge.length)

    return Contour(tuple(itertools.chain.from_iterable(map(pieces, contour.segments))))
