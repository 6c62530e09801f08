"""The joins of boxing, and the sewing on either side of the one that is closed last."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from patternmaker.pattern.allowances import Allowances

Joins = tuple[tuple[str, float], ...]
"""Name and place on the seam of each join, in order round it."""


def sewing_places(whole: float, joined: Joins, allowances: Allowances) -> Joins:
    """Return where sewing starts and stops on either side of the join that is closed last."""
    unsewn, last = allowances.open_at(whole), joined[0][1]
    if not unsewn:
        return ()
    return (
        ("start sewing", (last + unsewn) % whole),
        ("stop sewing", (last - unsewn) % whole),
    )
