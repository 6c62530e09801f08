"""Tables of plain text."""

from __future__ import annotations

import unicodedata
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence


def table(head: Sequence[str], rows: Sequence[Sequence[str]], indent: str = "  ") -> str:
    """Return rows under their heads, each column as wide as its widest cell.

    >>> print(table(("piece", "cut"), [("top", "6"), ("boxing", "6")]))
      piece   cut
      top     6
      boxing  6
    """
    lines = [head, *rows]
    widths = [max(columns(line[i]) for line in lines) for i in range(len(head))]
    joined = (
        "  ".join(_padded(cell, width) for cell, width in zip(line, widths, strict=True))
        for line in lines
    )
    return "\n".join((indent + line).rstrip() for line in joined)


def _padded(cell: str, width: int) -> str:
    return cell + " " * (width - columns(cell))


def plain(text: str) -> str:
    r"""Return a text without what a terminal obeys, or can't show: a question mark instead.

    >>> plain("a\x1b[2J\nb")
    'a?[2J\nb'
    """
    return "".join(
        "?" if unicodedata.category(sign).startswith("C") and sign != "\n" else sign
        for sign in text
    )


def columns(text: str) -> int:
    """Return how many columns of a terminal a text takes: wide signs two, joined ones none."""
    return sum(
        0 if unicodedata.combining(sign) else 2 if unicodedata.east_asian_width(sign) in "WF" else 1
        for sign in text
    )
