"""The list of shapes and covers, driven by the facts of their fields."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from patternmaker.cli.tables import columns
from patternmaker.covers import COVERS
from patternmaker.drawing.shapes import purpose
from patternmaker.errors import Refusals
from patternmaker.facts import facts_of, unknown
from patternmaker.outlines import SHAPES

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from patternmaker.facts import Measured

MORE = (
    "\npatternmaker shapes NAME shows what to measure, and where; start SHAPE begins a job,"
    "\nboxed, or with the cover that --cover names."
)


class Known(NamedTuple):
    """A shape or a cover."""

    kind: str
    name: str
    made: type[Measured]


def everything() -> Iterator[Known]:
    """Yield every shape, then every cover."""
    known: tuple[tuple[str, Mapping[str, type[Measured]]], ...] = (
        ("shape", SHAPES.all), ("cover", COVERS.all),
    )  # fmt: skip
    for kind, by_name in known:
        for name, each in by_name.items():
            yield Known(kind, name, each)


def found(words: Sequence[str], *, kind: str = "") -> Known:
    """Return what is meant by a name, written with blanks or hyphens, in small letters or large.

    Args:
        words: the words of the name.
        kind: "shape" or "cover", if only one of them will do.

    Raises:
        Refusals: if there is none of that name, with the nearest.
    """
    name = " ".join(words)
    known = [each for each in everything() if kind in {"", each.kind}]
    for each in known:
        if _plain(each.name) == _plain(name):
            return each
    names = sorted((each.name for each in known), key=len)  # of names alike, the plainest
    raise Refusals([unknown(kind or "name", name, names)])


def _plain(name: str) -> str:
    return " ".join(name.replace("-", " ").replace("_", " ").split()).casefold()


def as_data() -> list[dict[str, Any]]:
    """Return the list as plain data; default lengths in mm."""
    return [listed(each) for each in everything()]


def listed(known: Known) -> dict[str, Any]:
    """Return one of the list as plain data."""
    return {
        "name": known.name,
        "kind": known.kind,
        "measurements": [
            {
                "name": field,
                "unit": fact.quantity.unit,
                "default": fact.default.metric,
                "required": fact.required,
            }
            for field, fact in facts_of(known.made).items()
        ],
    }


def as_text() -> str:
    """Return the list to be read: a line for each."""
    known = [*everything()]
    wide = max(columns(each.name) for each in known)
    parts = []
    for kind, heading in (("shape", "Shapes"), ("cover", "\nCovers")):
        parts.append(heading)
        for each in known:
            if each.kind == kind:
                gap = " " * (wide - columns(each.name) + 2)
                parts.append(f"  {each.name}{gap}{purpose(each.made)}")
    return "\n".join([*parts, MORE])
