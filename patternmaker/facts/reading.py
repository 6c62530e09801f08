"""The one reader: it checks the tables of a job by the facts of their fields."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, TypeVar

from patternmaker.errors import Refusal, brief
from patternmaker.facts.fields import Measured, facts_of, mistakes, nearest
from patternmaker.facts.quantities import File
from patternmaker.units import Unit

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Iterator, Mapping
    from pathlib import Path

    from patternmaker.facts.fields import Fact
    from patternmaker.facts.quantities import Found

M = TypeVar("M", bound=Measured)


class Reading:
    """Gathers the mistakes of a whole job while its tables are read.

    Args:
        unit: of bare numbers. Where it is not known nothing is made, and only those mistakes are
            noted that stand in any unit.
        folder: in which the files lie that a job names, or those files themselves, by name.
    """

    def __init__(self, unit: Unit | None, folder: Path | Mapping[str, bytes] | None = None) -> None:
        self.unit = unit
        self.folder = folder
        self.mistakes: list[Refusal] = []
        self.opened: dict[str, Found] = {}

    def note(self, mistake: Refusal, place: str = "") -> None:
        """Keep a mistake, with the place where it was found."""
        self.mistakes.append(mistake.at(place) if place else mistake)

    def told(self, place: str) -> frozenset[str]:
        """Return the fields of the table at a place in which mistakes have been noted."""
        within = f"{place}."
        fields = (mistake.field for mistake in self.mistakes)
        return frozenset(f.removeprefix(within) for f in fields if f.startswith(within))

    def table(self, raw: object, place: str) -> Mapping[str, object]:
        """Return ``raw`` if it is a table; else note that it is none and return an empty one."""
        if isinstance(raw, dict):
            return raw
        self.note(Refusal(place, "{value} is not a table", value=brief(raw),
                          mend="write it as { name = value, ... }"))  # fmt: skip
        return {}

    def read(
        self,
        kind: type[M],
        table: Mapping[str, object],
        place: str,
        *,
        beside: Iterable[str] = (),
        told: Collection[str] = (),
    ) -> M | None:
        """Return a ``kind`` read from ``table``, or None once its mistakes have been noted.

        Args:
            kind: whose facts the fields are checked by.
            table: the fields as they were given.
            place: where the table stands in the job.
            beside: keys of the table that somebody else reads.
            told: fields whose mistakes have been noted already, in another table that gave them.
        """
        facts = facts_of(kind)
        wrong = list(_unknown_keys(table, [*facts, *beside]))
        values = dict(self._values(facts, table, wrong))
        wrong += _rivals(facts, table)
        wrong += mistakes(kind, values)
        for mistake in wrong:
            if mistake.field not in told:
                self.note(mistake, place)
        return None if wrong or self.unit is None else kind(**values)

    def _values(
        self, facts: Mapping[str, Fact], table: Mapping[str, object], wrong: list[Refusal]
    ) -> Iterator[tuple[str, Any]]:
        """Yield each field with its value; where no unit is known, only if it stands in any."""
        for name, fact in facts.items():
            try:
                found = [
                    self._value(fact, name, table, unit)
                    for unit in ([self.unit] if self.unit else Unit)
                ]
            except Refusal as mistake:
                wrong.append(mistake.at(f"{name}, "))
                continue
            if all(each == found[0] for each in found[1:]):
                yield name, found[0]

    def _value(self, fact: Fact, name: str, table: Mapping[str, object], unit: Unit) -> Any:
        if name not in table:
            return _default(fact, unit, stood_in=any(other in table for other in fact.unless))
        value = fact.quantity.read(table[name], unit)
        if isinstance(fact.quantity, File):
            self.opened[value] = fact.quantity.opened(value, self.folder)
            return self.opened[value]
        return value


def _default(fact: Fact, unit: Unit, *, stood_in: bool) -> Any:
    if fact.required and not stood_in:
        choices = f": {', '.join(fact.choices)}" if fact.choices else ""
        others = f" (or {' or '.join(fact.unless)})" if fact.unless else ""
        raise Refusal("", "is missing", mend=f"give {fact.words}{choices}{others}")
    return fact.default.in_(unit)


def _rivals(facts: Mapping[str, Fact], table: Mapping[str, object]) -> Iterator[Refusal]:
    """Yield each field that is given beside the one in whose place it may be given."""
    for name, fact in facts.items():
        for other in fact.unless:
            if name in table and other in table:
                yield Refusal(other, f"is given beside {name}", mend="give one of the two")


def _unknown_keys(table: Mapping[str, object], known: Iterable[str]) -> Iterator[Refusal]:
    """Yield the refusal of each key that is not known, with the nearest one that is."""
    known = list(known)
    for key in table:
        if key not in known:
            near = nearest(key, known)
            mend = f"did you mean {near!r}?" if near else f"known: {', '.join(known)}"
            yield Refusal(brief(key)[1:-1], "is not a field here", mend=mend)
