"""Talking with whoever sits at a terminal, or with a file that answers for them."""

from __future__ import annotations

import io
from typing import TextIO

from patternmaker.cli.braille import takes_braille
from patternmaker.cli.tables import plain


class Terminal:
    """Says things on one stream and reads answers, a line each, from another.

    Args:
        answers: from which they are read; none come if it is closed.
        says: on which questions are put.
    """

    def __init__(self, answers: TextIO | None, says: TextIO) -> None:
        self._answers, self._says = answers, says
        self.braille = takes_braille(says.encoding)
        if isinstance(answers, io.TextIOWrapper):
            answers.reconfigure(errors="replace")  # a bad byte makes a bad answer, not a fault

    @property
    def is_one(self) -> bool:
        """Whether somebody sits there, on both ends."""
        return bool(self._answers and self._answers.isatty() and self._says.isatty())

    def say(self, text: str) -> None:
        """Tell a line or more."""
        self._says.write(plain(text) + "\n")

    def ask(self, prompt: str) -> str:
        """Return the answer to a question.

        Raises:
            EOFError: if there is none to come.
        """
        self._says.write(plain(prompt))
        self._says.flush()
        line = self._answers.readline() if self._answers else ""
        if not line.endswith("\n"):  # cut off in its midst, it is no answer
            self._says.write("\n")
            raise EOFError
        if self._answers and not self._answers.isatty():
            self._says.write(plain(line.rstrip("\n")) + "\n")
        return line.rstrip("\r\n")
