"""The materials of a job: one for everything, and others by role of piece and by seat."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from patternmaker.covers import COVERS, finishing
from patternmaker.facts import facts_of
from patternmaker.materials import RIVALS, Material

if TYPE_CHECKING:
    from collections.abc import Mapping
    from collections.abc import Set as AbstractSet

    from patternmaker.facts import Reading

TEMPLATES = {"base template", *finishing.TEMPLATES}  # of card, whatever a seat is covered with
LINING = "dust cover"  # is cambric unless the job says otherwise


def _roles() -> list[str]:
    """Return the roles that may have a material of their own, under any cover."""
    roles = {role for cover in COVERS.all.values() for role in cover.roles}
    return sorted(roles.union(finishing.ROLES) - TEMPLATES)


def _names_any(tables: Mapping[str, object]) -> bool:
    """Return whether a material table holds more than a material: a role, or a mistake.

    Where none does, no cover but those that are used need be read from disk.
    """
    seats = tables.get("seat")
    owners = [tables, *(seats if isinstance(seats, list) else ())]
    given = [owner.get("material") for owner in owners if isinstance(owner, dict)]
    return any(key not in facts_of(Material) for table in given if isinstance(table, dict)
               for key in table)  # fmt: skip


def _key(role: str) -> str:
    return role.replace(" ", "_")


class Materials:
    """Reads ``[material]`` tables: the job's, and beneath each seat's own."""

    def __init__(self, reading: Reading, tables: Mapping[str, object]) -> None:
        self.reading = reading
        self.roles = _roles() if _names_any(tables) else []
        self.job_table = reading.table(tables.get("material", {}), "material")
        self.of_job = self._read(self.job_table, "material", frozenset())
        self.told = reading.told("material")

    def of_seat(self, table: Mapping[str, object], place: str) -> Mapping[str, Material] | None:
        """Return the materials of a seat by role of piece; ``""`` is for all the others."""
        if "material" not in table:
            return self.of_job
        own = self.reading.table(table["material"], f"{place}material")
        told = {field for field in self.told if re.split("[.,]", field)[0] not in own}
        return self._read(_over(self.job_table, own, self._keys), f"{place}material", told)

    @property
    def _keys(self) -> tuple[str, ...]:
        return tuple(_key(role) for role in self.roles)

    def _read(
        self, table: Mapping[str, object], place: str, told: AbstractSet[str]
    ) -> Mapping[str, Material] | None:
        """Return the materials by role; ``told`` are the fields whose mistakes are known."""
        whole = self.reading.read(Material, table, place, beside=self._keys, told=told)
        found = {"": whole} if whole else {}
        told = told | self.reading.told(place)
        for role in self.roles:
            if (key := _key(role)) in table:
                part = self._part(role, table, f"{place}.{key}", told)
                if part:
                    found[role] = part
        parts = sum(key in table for key in self._keys)
        return found if len(found) == parts + 1 else None

    def _part(
        self, role: str, table: Mapping[str, object], place: str, told: AbstractSet[str]
    ) -> Material | None:
        """Return the material of one role: its own entries over those for all."""
        key = _key(role)
        if key in told:  # it was no table
            return None
        own = self.reading.table(table[key], place)
        common = {} if role == LINING else _without(table, self._keys)
        known = {field for field in told if field not in own}
        known |= {field.removeprefix(f"{key}.") for field in told if field.startswith(f"{key}.")}
        return self.reading.read(Material, _over(common, own, ()), place, told=known)


def _without(table: Mapping[str, object], keys: tuple[str, ...]) -> dict[str, object]:
    return {key: value for key, value in table.items() if key not in keys}


def _over(
    under: Mapping[str, object], own: Mapping[str, object], keys: tuple[str, ...]
) -> dict[str, object]:
    """Return a table's own entries over another's; another kind of material starts afresh."""
    kept = {key: under[key] for key in keys if key in under} if "kind" in own else under
    return {**_unrivalled(kept, own), **own}


def _unrivalled(under: Mapping[str, object], own: Mapping[str, object]) -> dict[str, object]:
    """Return entries without those that a stretch test of one's own replaces, or is replaced by."""
    gone = {rival for pair in RIVALS.items() for given, rival in (pair, pair[::-1]) if given in own}
    kept = {key: value for key, value in under.items() if key not in gone}
    if not {*kept, *own}.intersection(RIVALS.values()):
        kept.pop("use", None)
    return kept
