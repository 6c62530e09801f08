"""What any cover with boxing asks of a seat before it is drafted."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.pattern.brief import Brief


def seat_objections(brief: Brief, drop: float) -> Iterator[Refusal]:
    """Yield a topstitch below the boxing, and an allowance too wide for the seat."""
    yield from below_the_drop(brief, drop)
    yield from wider_than_half(brief)


def below_the_drop(brief: Brief, drop: float) -> Iterator[Refusal]:
    """Yield a topstitch that lies below boxing so high."""
    if brief.allowances.topstitch_at >= drop:
        yield Refusal(
            "allowances.topstitch", "{value} lies below the drop ({limit})",
            value=brief.allowances.topstitch_at, limit=drop, show=LENGTH.show,
            mend="bring the topstitch nearer the seam",
        )  # fmt: skip


def wider_than_half(brief: Brief) -> Iterator[Refusal]:
    """Yield a seam allowance wider than half the seat."""
    half = min(brief.outline.width, brief.outline.height) / 2
    if brief.allowances.seam > half:
        yield Refusal(
            "allowances.seam", "{value} is more than half the seat ({limit})",
            value=brief.allowances.seam, limit=half, show=LENGTH.show,
            mend="make the allowance smaller or check the seat's measurements",
        )  # fmt: skip
