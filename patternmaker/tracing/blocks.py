"""Least squares in which each unknown has to do with its neighbours on a ring only.

The normal equations are then blocks along the diagonal and beside it, with two more in the corners
where the ring closes. They are solved block by block (G. H. Golub and C. F. Van Loan, "Matrix
Computations", on block tridiagonal systems), the last block of the ring last of all. That takes
time in proportion to the ring, and never a matrix large enough to be shared out among processors,
which on a busy machine takes a hundred times as long.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy as np
    from numpy.typing import NDArray

    from patternmaker.tracing.thinning import Whole

    Floats = NDArray[np.floating[Any]]

    Slices = Sequence[slice]
    Rows = Sequence[NDArray[np.intp]]

FLOOR = 1e-3  # added to the diagonal, so that what moves no point stays where it is


class Normal(NamedTuple):
    """Normal equations of unknowns in blocks along a ring.

    Args:
        own: the square of each block.
        next: the product of each block and the next; of a single block nothing.
        pull: the right side, block by block.
    """

    own: list[Floats]
    next: list[Floats]
    pull: list[Floats]

    def solved(self, damping: float) -> Floats:
        """Return the unknowns, with the diagonal made ``damping`` times larger."""
        import numpy as np

        own = [each + np.diag(damping * (np.diag(each) + FLOOR)) for each in self.own]
        if not self.next:
            return np.linalg.solve(own[0], self.pull[0])
        last = len(own) - 1
        sides = [np.zeros((len(each), len(own[last]))) for each in own[:last]]
        sides[0] = sides[0] + self.next[last].T
        sides[-1] = sides[-1] + self.next[last - 1]
        right = [np.column_stack(pair) for pair in zip(self.pull[:last], sides, strict=True)]
        parts = _chain_solved(own[:last], self.next[: last - 1], right)
        rest, pull = own[last], self.pull[last]
        for side, part in zip(sides, parts, strict=True):
            rest, pull = rest - side.T @ part[:, 1:], pull - side.T @ part[:, 0]
        closing = np.linalg.solve(rest, pull)
        return np.concatenate([*(each[:, 0] - each[:, 1:] @ closing for each in parts), closing])


def normal(slopes: Floats, rest: Floats, blocks: Slices, rows: Rows) -> Normal:
    """Return the normal equations of rows of slopes.

    Args:
        slopes: how each row changes with each unknown.
        rest: what is left in each row.
        blocks: the unknowns of each block: one block, or three at the least.
        rows: the rows that change with each block.
    """
    parts = [slopes[:, block][row] for row, block in zip(rows, blocks, strict=True)]
    there = [
        slopes[:, block][row] for row, block in zip(rows, (*blocks[1:], blocks[0]), strict=True)
    ]
    return Normal(
        [part.T @ part for part in parts],
        [part.T @ other for part, other in zip(parts, there, strict=True)]
        if len(blocks) > 1
        else [],
        [part.T @ rest[row] for part, row in zip(parts, rows, strict=True)],
    )


def _chain_solved(own: list[Floats], after: list[Floats], right: list[Floats]) -> list[Floats]:
    """Return the solution of blocks in an open chain, for several right sides at once."""
    import numpy as np

    lead: list[Floats] = []
    found: list[Floats] = []
    for i, block in enumerate(own):
        side = right[i]
        if i:
            block = block - after[i - 1].T @ lead[-1]  # noqa: PLW2901
            side = side - after[i - 1].T @ found[-1]
        if i < len(after):
            both = np.linalg.solve(block, np.column_stack([after[i], side]))
            lead.append(both[:, : after[i].shape[1]])
            found.append(both[:, after[i].shape[1] :])
        else:
            found.append(np.linalg.solve(block, side))
    for i in range(len(own) - 2, -1, -1):
        found[i] = found[i] - lead[i] @ found[i + 1]
    return found


def chunks(column: Whole, size: int) -> tuple[list[slice], list[range]]:
    """Return the unknowns and the places on the ring of each block.

    Args:
        column: (kind, place) the unknowns, in order of places; -1 where there is none.
        size: of places in a block, about.
    """
    count = column.shape[1]
    parts = count // size if count >= 3 * size else 1
    ends = [count * i // parts for i in range(parts + 1)]
    places = [range(a, b) for a, b in pairwise(ends)]
    before = [int((column[:, :end] >= 0).sum()) for end in ends]
    return [slice(a, b) for a, b in pairwise(before)], places
