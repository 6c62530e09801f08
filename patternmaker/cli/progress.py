"""A line of progress on a terminal, for work that takes long enough to be watched."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING, TextIO

if TYPE_CHECKING:
    from types import TracebackType

PATIENCE = 0.5  # seconds before anything is shown
OFTEN = 0.1  # seconds between two showings


class Progress:
    """Shows how many sheets of how many are done; silent off a terminal, and when it is quick."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream
        self._next = time.monotonic() + PATIENCE if stream.isatty() else float("inf")
        self._shown = False

    def __call__(self, done: int, whole: int) -> None:
        """Show how far it has come."""
        now = time.monotonic()
        if now >= self._next:
            self._next, self._shown = now + OFTEN, True
            self._stream.write(f"\rsheet {done} of {whole} ")
            self._stream.flush()

    def __enter__(self) -> Progress:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        fault: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._shown:
            self._stream.write("\r" + " " * 40 + "\r")
            self._stream.flush()
