"""The joins of boxing, and the sewing on either side of the one that is closed last."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.pattern.allowances import Allowances

FRONT_LEFT, FRONT_RIGHT = "front left join", "front right join"

Joins = tuple[tuple[str, float], ...]
"""Name and place on the seam of each join, in order round it."""


def left_open(allowances: Allowances, whole: float) -> Iterator[Refusal]:
    """Yield that too much is left unsewn beside the join of the boxing that is closed last."""
    unsewn = allowances.open_at(whole)
    if unsewn > whole / 4:
        yield Refusal(
            "allowances.sewing_open", "{value} is more than a quarter of the seam ({limit})",
            value=unsewn, limit=whole / 4, show=LENGTH.show, mend="leave less unsewn",
        )  # fmt: skip


def sewing_places(whole: float, joined: Joins, allowances: Allowances) -> Joins:
    """Return where sewing starts and stops on either side of the join that is closed last."""
    unsewn, last = allowances.open_at(whole), joined[0][1]
    if not unsewn:
        return ()
    return (
        ("start sewing", (last + unsewn) % whole),
        ("stop sewing", (last - unsewn) % whole),
    )


def panel_names(joined: Joins) -> list[str]:
    """Return what each panel of boxing is called, from the join at which it begins."""
    if len(joined) == 1:
        return ["boxing"]
    begins = [name for name, _ in joined]
    sides = FRONT_LEFT in begins
    fronts = [FRONT_LEFT if sides else "left join"]
    lefts = [name for name in begins if sides and name.startswith("left join")]
    rights = [name for name in begins if name in {FRONT_RIGHT} or name.startswith("right join ")]
    backs = [name for name in begins if name not in {*fronts, *lefts, *rights}]
    return [
        next(
            f"boxing {side}{f' {group.index(name) + 1}' if len(group) > 1 else ''}"
            for side, group in (
                ("front", fronts), ("left", lefts), ("right", rights), ("back", backs)
            ) if name in group
        )
        for name in begins
    ]  # fmt: skip
