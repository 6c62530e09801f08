"""The one reader: it checks the tables of a job by the facts of their fields."""

from __future__ import annotations

import difflib
from typing import TYPE_CHECKING, Any, TypeVar

from patternmaker.errors import Refusal
from patternmaker.facts.fields import Measured, facts_of, mistakes
from patternmaker.facts.quantities import brief

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from patternmaker.facts.fields import Fact
    from patternmaker.units import Unit

M = TypeVar("M", bound=Measured)


class Reading:
    """Gathers the mistakes of a whole job while its tables are read."""

    def __init__(self, unit: Unit) -> None:
        self.unit = unit
        self.mistakes: list[Refusal] = []

    def note(self, mistake: Refusal, place: str = "") -> None:
        """Keep a mistake, with the place where it was found."""
        self.mistakes.append(mistake.at(place) if place else mistake)

    def table(self, raw: object, place: str) -> Mapping[str, object]:
        """Return ``raw`` if it is a table; else note that it is none and return an empty one."""
        if isinstance(raw, dict):
            return raw
        self.note(Refusal(place, "{value} is not a table", value=brief(raw),
                          mend="write it as { name = value, ... }"))  # fmt: skip
        return {}

    def unknown_keys(self, table: Mapping[str, object], known: Iterable[str], place: str) -> None:
        """Note each key of ``table`` that is not known, with the nearest one that is."""
        known = list(known)
        for key in table:
            if key not in known:
                near = difflib.get_close_matches(key[:60], known, n=1, cutoff=0.5)
                mend = f"did you mean {near[0]!r}?" if near else f"known: {', '.join(known)}"
                self.note(Refusal(brief(key)[1:-1], "is not a field here", mend=mend), place)

    def read(
        self, kind: type[M], table: Mapping[str, object], place: str, *, beside: Iterable[str] = ()
    ) -> M | None:
        """Return a ``kind`` read from ``table``, or None once its mistakes have been noted.

        ``beside`` names the keys of the table that somebody else reads.
        """
        facts = facts_of(kind)
        self.unknown_keys(table, [*facts, *beside], place)
        before = len(self.mistakes)
        values = dict(self._values(facts, table, place))
        for mistake in mistakes(kind, values):
            self.note(mistake, place)
        return kind(**values) if len(self.mistakes) == before else None

    def _values(
        self, facts: Mapping[str, Fact], table: Mapping[str, object], place: str
    ) -> Iterator[tuple[str, Any]]:
        for name, fact in facts.items():
            if name in table:
                try:
                    yield name, fact.quantity.read(table[name], self.unit)
                except Refusal as mistake:
                    self.note(mistake.at(name), place)
            elif fact.required:
                self.note(Refusal(name, "is missing", mend=f"give {fact.words}"), place)
            else:
                yield name, fact.default.in_(self.unit)
