"""A drawn line made ready for fitting: cut at its corners, with fewer points, freed of bends."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.tracing.corners import Corner, corners
from patternmaker.tracing.thinning import bin_width, lengths, thinned, unbent
from patternmaker.tracing.wobble import Wobble, wobble

if TYPE_CHECKING:
    from collections.abc import Iterable

    import numpy as np
    from numpy.typing import NDArray

    from patternmaker.tracing.thinning import Floats, Nodes, Points, Whole

    Flags = NDArray[np.bool_]


class Stop(NamedTuple):
    """A place at which a line is cut: a corner, or an end.

    Args:
        place: the index of the point there, or of the nearest.
        at: where it lies.
        exact: whether the point lies there; else it was found between points.
    """

    place: int
    at: complex
    exact: bool


class Trail(NamedTuple):
    """A string of points.

    Args:
        points: in order.
        along: the length of their line at each; of a closed one also at its end.
        closed: whether the last is followed by the first.
        stray: how far they stray from a smooth line, once thinned.
        stops: where the line turns on the spot; of an open one its ends as well.
    """

    points: Points
    along: Floats
    closed: bool
    stray: Wobble
    stops: tuple[Stop, ...]

    @property
    def length(self) -> float:
        """Of its line."""
        return float(self.along[-1])

    def cut_at(self, stops: Iterable[Stop]) -> Trail:
        """Return it with other stops; a closed one begins at the first of them."""
        found = sorted({each.place: each for each in stops}.values())
        if not found or not self.closed:
            return self._replace(stops=tuple(found))
        start = found[0].place
        points, along = _begun_at(self.points, self.along, start)
        moved = tuple(each._replace(place=each.place - start) for each in found)
        return self._replace(points=points, along=along, stops=moved)


class Strand(NamedTuple):
    """What a ring of knots is fitted to; an open line comes back along nothing.

    Args:
        at: nodes in order, from the first stop on.
        along: the length at each.
        counted: whether each was drawn there; a corner found between points was not.
        stops: the nodes at stops, in order.
    """

    at: Points
    along: Floats
    counted: Flags
    stops: Whole

    def begun_at(self, start: int, length: float) -> Strand:
        """Return a closed strand without stops from another node on; ``length`` is its whole."""
        import numpy as np

        at, counted = np.roll(self.at, -start), np.roll(self.counted, -start)
        along = np.concatenate([self.along[start:], self.along[:start] + length])
        return Strand(at, along, counted, self.stops)


def trail(points: Points, sharpest: float, *, closed: bool) -> Trail:
    """Return a string of points with its corners.

    Args:
        points: at least three, no two that follow each other the same.
        sharpest: radians; where the line turns more on the spot is a corner.
        closed: whether the line comes back from the last point to the first.
    """
    along = lengths(points, closed=closed)
    wide = bin_width(len(points), float(along[-1]))
    nodes = thinned(points, along[: len(points)], wide)
    stray = wobble(nodes.at, nodes.along, closed=closed)
    found = corners(nodes, stray, sharpest, closed=closed)
    stops = [Stop(_nearest(points, nodes, each), each.at, each.exact) for each in found]
    if not closed:
        stops += [Stop(i, complex(points[i]), exact=True) for i in (0, len(points) - 1)]
    return Trail(points, along, closed, stray, ()).cut_at(stops)


def _begun_at(points: Points, along: Floats, start: int) -> tuple[Points, Floats]:
    import numpy as np

    rest = np.concatenate([along[start:-1], along[:start] + along[-1], along[start : start + 1]])
    rest = rest - along[start]
    rest[-1] = along[-1]
    return np.roll(points, -start), rest


def _nearest(points: Points, nodes: Nodes, corner: Corner) -> int:
    """Return the index of the point nearest to a corner."""
    import numpy as np

    count = len(points)
    if len(nodes.at) == count:
        return corner.node
    first = int(nodes.first[corner.node])
    reach = 2 * (count // len(nodes.at) + 1)
    near = np.arange(first - reach, first + 2 * reach) % count
    return int(near[np.abs(points[near] - corner.at).argmin()])


def strand(line: Trail) -> Strand:
    """Return the nodes of a line, thinned between its stops."""
    import numpy as np

    wide = bin_width(len(line.points), line.length)
    count = len(line.points)
    if not line.stops:
        along = line.along[:count]
        nodes = unbent(thinned(line.points, along, wide), along)
        counted = np.ones(len(nodes.at), dtype=bool)
        return Strand(nodes.at, nodes.along, counted, np.array([], dtype=np.int64))
    indices = [each.place for each in line.stops]
    parts = [_part(line, begin, end, wide) for begin, end in pairwise([*indices, count])]
    sizes = [len(at) for at, _ in parts]
    stops = np.concatenate([[0], np.cumsum(sizes)])[:-1]
    at = np.concatenate([at for at, _ in parts])
    at[stops] = [each.at for each in line.stops]
    counted = np.ones(len(at), dtype=bool)
    counted[stops] = [each.exact for each in line.stops]
    return Strand(at, np.concatenate([along for _, along in parts]), counted, stops)


def _part(line: Trail, begin: int, end: int, wide: float) -> tuple[Points, Floats]:
    """Return a stop and the nodes from it to the next."""
    import numpy as np

    inner = slice(begin + 1, end)
    nodes = thinned(line.points[inner], line.along[inner], wide)
    if len(nodes.at):
        nodes = unbent(nodes, line.along[inner])
    return (
        np.concatenate([line.points[begin : begin + 1], nodes.at]),
        np.concatenate([line.along[begin : begin + 1], nodes.along]),
    )
