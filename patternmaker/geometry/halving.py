"""Closing in on the place where something ceases to hold, by halves."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

TO_ROUNDING = 60  # halvings


def halved(
    holds: float, fails: float, is_so: Callable[[float], bool], times: int = TO_ROUNDING
) -> tuple[float, float]:
    """Return two places halved nearer to each other: something holds at the one, not at the other.

    Args:
        holds: a place at which it holds.
        fails: a place at which it does not, on either side.
        is_so: whether it holds at a place between.
        times: how often to halve; to rounding, unless given.

    >>> halved(0.0, 2.0, lambda x: x * x <= 2, 20)[0]
    1.4142131805419922
    """
    for _ in range(times):
        middle = (holds + fails) / 2
        holds, fails = (middle, fails) if is_so(middle) else (holds, middle)
    return holds, fails
