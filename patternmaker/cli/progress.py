"""A line of progress on a terminal, for work that takes long enough to be watched."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING, TextIO

if TYPE_CHECKING:
    from types import TracebackType

PATIENCE = 0.5  # seconds before anything is shown
OFTEN = 0.1  # seconds between two showings
WIDEST = 60  # letters that are wiped away at the end


class Progress:
    """Shows how far the work has come; silent off a terminal, and when it is quick."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream
        self._next = time.monotonic() + PATIENCE if stream.isatty() else float("inf")
        self._width = 0

    def __call__(self, done: int, whole: int) -> None:
        """Show how many sheets of how many are done."""
        self._show(f"sheet {done} of {whole}")

    def searching(self, share: float, count: int) -> None:
        """Show how far the search for fewer sheets has come."""
        self._show(f"{count} sheets; looking for fewer: {share:.0%} (Ctrl-C: take these)")

    def _show(self, words: str) -> None:
        now = time.monotonic()
        if now >= self._next:
            wiped = " " * max(0, self._width - len(words))
            self._next, self._width = now + OFTEN, len(words)
            self._stream.write(f"\r{words} {wiped}")
            self._stream.flush()

    def __enter__(self) -> Progress:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        fault: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._width:
            self._stream.write("\r" + " " * WIDEST + "\r")
            self._stream.flush()
