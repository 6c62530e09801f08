"""Moving knots until their ring lies closest to its points, by least squares.

Levenberg's and Marquardt's way (D. W. Marquardt, "An algorithm for least-squares estimation of
nonlinear parameters", Journal of the Society for Industrial and Applied Mathematics 11 (1963)).
A knot moves only the pieces about it, so knots far apart are tried at the same time.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from patternmaker.tracing.blocks import chunks, normal

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from patternmaker.tracing.knots import Knots
    from patternmaker.tracing.thinning import Floats, Points, Whole

TRIED = 1e-5  # mm, and radians: the step by which slopes are told
SETTLED = 1e-3  # of the sum of squares: a step that gains less is the last
TRIES = 6  # with more and more damping
DAMPING = 1e-3  # to begin with
BLOCK = 5  # knots; more than those apart move no piece both
EXACT = 1e-7  # mm; points this close are met
APART = 4  # knots; a knot moves its own two pieces, and through a line one more on either side
_KINDS = 4  # ways in which a knot can move: x, y, direction, and at a corner the one on arriving


class Moves(NamedTuple):
    """Which knots can move in which way: their columns, -1 where they can't."""

    column: Whole  # (kind, knot)
    owner: Whole  # (colour, piece): the knot of that colour that moves the piece, or -1
    colour: Whole  # (knot)


def settled(knots: Knots, points: Points, piece: Whole, rounds: int) -> Knots:
    """Return the knots moved to where their ring lies closest to its points.

    Args:
        knots: near their place.
        points: what the ring is to follow.
        piece: the piece that each point belongs to.
        rounds: how often to move them at the most.
    """
    import numpy as np

    moves = _moves(knots)
    count = int(moves.column.max()) + 1
    if not count or not len(points):
        return knots
    blocks, places = chunks(moves.column, BLOCK)
    rows = [_rows(piece, each, len(knots.at)) for each in places]
    wild = knots.wild()
    rest, damping = knots.strays(points, piece), DAMPING
    for _ in range(rounds):
        if np.abs(rest).max() < EXACT:
            break
        slopes = _slopes(knots, points, piece, rest, moves)
        equations = normal(slopes, rest, blocks, rows)
        before = float(np.square(rest).sum())
        for _ in range(TRIES):
            moved = _moved(knots, moves.column, -equations.solved(damping))
            there = moved.strays(points, piece)
            after = float(np.square(there).sum())
            if after < before and not (moved.wild() & ~wild).any():
                break
            damping *= 10
        else:
            break
        knots, rest, damping = moved, there, damping / 10
        if before - after < SETTLED * before:
            break
    return knots


def _rows(piece: Whole, knots: range, count: int) -> NDArray[np.intp]:
    """Return the points that belong to pieces which knots move."""
    import numpy as np

    near = np.zeros(count, dtype=bool)
    near[np.arange(knots.start - 2, knots.stop + 1) % count] = True
    return np.flatnonzero(near[piece])


def _moves(knots: Knots) -> Moves:
    import numpy as np

    count = len(knots.at)
    tied = knots.straight | np.roll(knots.straight, 1)
    free = np.array([
        ~knots.held,
        ~knots.held,
        np.where(knots.sharp, ~knots.straight, ~tied),
        knots.sharp & ~np.roll(knots.straight, 1),
    ])  # fmt: skip
    column = np.where(free, np.cumsum(free.T).reshape(free.T.shape).T - 1, -1)
    if count < 2 * APART:
        colour = np.arange(count)
    else:
        rest = count % APART
        colour = np.arange(count) % APART
        colour[count - rest :] = APART + np.arange(rest)
    owner = np.full((int(colour.max()) + 1, count), -1)
    pieces = np.arange(count)
    for off in (2, -1, 1, 0):
        near = (pieces + off) % count
        owner[colour[near], pieces] = near
    return Moves(column, owner, colour)


def _slopes(knots: Knots, points: Points, piece: Whole, rest: Floats, moves: Moves) -> Floats:
    """Return how the distance of each point changes with each move."""
    import numpy as np

    slopes = np.zeros((len(points), int(moves.column.max()) + 1))
    for kind in range(_KINDS):
        for colour, owner in enumerate(moves.owner):
            chosen = (moves.colour == colour) & (moves.column[kind] >= 0)
            if not chosen.any():
                continue
            step = np.where(chosen, TRIED, 0.0)
            there = _shifted(knots, kind, step).strays(points, piece)
            knot = owner[piece]
            hit = np.flatnonzero((knot >= 0) & chosen[knot])
            slopes[hit, moves.column[kind][knot[hit]]] = (there - rest)[hit] / TRIED
    return slopes


def _shifted(knots: Knots, kind: int, step: Floats) -> Knots:
    import numpy as np

    if kind < 2:
        return knots._replace(at=knots.at + step * (1, 1j)[kind])
    if kind == 2:
        smooth = np.where(knots.sharp, 0.0, step)
        return knots._replace(leave=knots.leave + step, arrive=knots.arrive + smooth)
    return knots._replace(arrive=knots.arrive + step)


def _moved(knots: Knots, column: Whole, step: NDArray[np.floating[Any]]) -> Knots:
    import numpy as np

    for kind in range(_KINDS):
        by = np.where(column[kind] >= 0, step[column[kind]], 0.0)
        knots = _shifted(knots, kind, by)
    return knots
