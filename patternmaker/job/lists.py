"""Lists of tables, such as the panels of a seat."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.errors import Refusal

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping
    from typing import TypeVar

    from patternmaker.facts import Reading

    T = TypeVar("T")

MOST = 60  # panels of one seat, seams between them, or welts


def listing(
    reading: Reading,
    table: Mapping[str, object],
    key: str,
    place: str,
    read: Callable[[Mapping[str, object], str], T | None],
) -> list[T] | None:
    """Return what is read from a list of tables, or None once a mistake in one is noted."""
    raw = table.get(key, [])
    if not isinstance(raw, list) or len(raw) > MOST:
        reading.note(
            Refusal(key, "is not a list of at most {limit} tables", limit=MOST,
                    mend=f"write each under [[seat.{key}]]"),
            place,
        )  # fmt: skip
        return None
    places = (f"{place}{key} {number}" for number in range(1, len(raw) + 1))
    found = [read(reading.table(*each), each[1]) for each in zip(raw, places, strict=True)]
    good = [each for each in found if each]
    return good if len(good) == len(found) else None
