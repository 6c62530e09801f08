"""One family of errors; each carries its facts.

::

    PatternmakerError        everything this package raises on purpose
    ├── Refusal              one mistake in what was given: field, value, limit, mend
    ├── Refusals             all the mistakes of one job, to be mended in one go
    └── OutputFault          the disk or the folder did not take the files
"""

from __future__ import annotations

from datetime import date, time
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator


class PatternmakerError(Exception):
    """The root: catch this to catch all that the package raises on purpose."""


def brief(value: object) -> str:
    """Return a value for a message: as a job file writes it, and never longer than a line.

    >>> brief("oak"), brief(True), brief("o" * 80)[-4:]
    ("'oak'", 'true', 'ooo…')
    """
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, date | time):
        return value.isoformat()
    try:
        shown = repr(value)
    except ValueError:  # Python writes no whole number of more than 4,300 digits
        return "a number of thousands of digits"
    return shown if len(shown) <= 60 else shown[:57] + "…"


def printable(text: str) -> str:
    r"""Return a text with a question mark for each sign that can't be shown.

    >>> printable("seat\x07.toml")
    'seat?.toml'
    """
    return "".join(sign if sign.isprintable() else "?" for sign in text)


def _plain(value: object, unit: object) -> str:
    del unit
    return str(value)


class Refusal(PatternmakerError):
    """One mistake: the field, what is wrong with its value, and how to mend it.

    Args:
        field: where the mistake stands, such as ``outline.corner``.
        says: the problem; ``{value}`` and ``{limit}`` are filled in when it is told.
        value: what was given.
        limit: the bound that it passed, if there is one.
        mend: what to do about it.
        show: turns a value or limit and a unit into text; lengths are held in millimetres.
    """

    def __init__(
        self,
        field: str,
        says: str,
        *,
        value: object = None,
        limit: object = None,
        mend: str = "",
        show: Callable[[Any, Any], str] = _plain,
    ) -> None:
        super().__init__(field, says)
        self.field = field
        self.says = says
        self.value = value
        self.limit = limit
        self.mend = mend
        self.show = show

    def at(self, place: str) -> Refusal:
        """Return the same mistake, seen from one step further out."""
        field = f"{place}{self.field}" if place.endswith((".", ", ")) else f"{place}.{self.field}"
        return self.about(field.rstrip("., "))

    def about(self, field: str) -> Refusal:
        """Return the same mistake, told of another field."""
        return Refusal(
            field,
            self.says,
            value=self.value,
            limit=self.limit,
            mend=self.mend,
            show=self.show,
        )

    def told(self, unit: object = None) -> str:
        """Return the whole message, its lengths in ``unit`` (millimetres if none is given)."""
        value, limit = (
            "" if fact is None else self.show(fact, unit) for fact in (self.value, self.limit)
        )
        problem = self.says.format(value=value, limit=limit)
        parts = (f"{self.field}: {problem}" if self.field else problem, self.mend)
        return "; ".join(part for part in parts if part)

    def __str__(self) -> str:
        return self.told()


class Refusals(PatternmakerError):
    """Every mistake of one job, table by table; ``outcome`` is what came of it."""

    outcome = "nothing was written"

    def __init__(self, mistakes: Iterable[Refusal], unit: object = None) -> None:
        self.mistakes = tuple(mistakes)
        self.unit = unit
        super().__init__(self.mistakes)

    def __iter__(self) -> Iterator[Refusal]:
        return iter(self.mistakes)

    def __str__(self) -> str:
        return "\n".join(mistake.told(self.unit) for mistake in self.mistakes)


class OutputFault(PatternmakerError):
    """The files could not be written; the earlier ones are as they were."""
