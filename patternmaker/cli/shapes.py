"""The list of shapes and covers, driven by the facts of their fields."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from patternmaker.cli.tables import table
from patternmaker.covers import COVERS
from patternmaker.facts import Fact, Measured, facts_of
from patternmaker.outlines import SHAPES

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternmaker.units import Unit


def _all() -> Iterator[tuple[str, str, type[Measured]]]:
    known: tuple[tuple[str, Mapping[str, type[Measured]]], ...] = (
        ("shape", SHAPES.all), ("cover", COVERS.all),
    )  # fmt: skip
    for kind, by_name in known:
        for name, each in by_name.items():
            yield kind, name, each


def as_data() -> list[dict[str, Any]]:
    """Return the list as plain data; default lengths in mm."""
    return [
        {
            "name": name,
            "kind": kind,
            "measurements": [
                {
                    "name": field,
                    "unit": fact.quantity.unit,
                    "default": fact.default.metric,
                    "required": fact.required,
                }
                for field, fact in facts_of(each).items()
            ],
        }
        for kind, name, each in _all()
    ]


def as_text(unit: Unit) -> str:
    """Return the list to be read, defaults in ``unit``."""
    parts = []
    for kind, name, each in _all():
        purpose = (each.__doc__ or "").splitlines()[0]
        rows = [_row(field, fact, unit) for field, fact in facts_of(each).items()]
        parts.append(f"{name} ({kind})\n  {purpose}\n{table(HEAD, rows)}")
    return "\n\n".join(parts)


HEAD = ("measurement", "what to measure", "must be given", "such as")


def _row(field: str, fact: Fact, unit: Unit) -> tuple[str, ...]:
    default = fact.default.in_(unit)
    shown = "" if default is None else fact.quantity.show(default, unit)
    return field, fact.words, "yes" if fact.required else "no", shown
