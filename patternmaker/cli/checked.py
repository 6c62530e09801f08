"""What a check of a print says, in words and as data."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from patternmaker.checking.check import LIMIT, NotAsDrafted
from patternmaker.checking.proof import ACROSS, SLOPE, UP
from patternmaker.cli.tables import plain, table
from patternmaker.errors import Refusal
from patternmaker.units import show_length

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from patternmaker.checking.check import Checked
    from patternmaker.checking.measuring import Measured


def told(checked: Checked) -> str:
    """Return the report of a check: its proofs of scale, and how far its lines are off."""
    return plain("\n".join(_lines(checked)))


def _lines(checked: Checked) -> Iterator[str]:
    printed = checked.printed
    yield checked.job.name
    sheets, pages = _many(checked.sheets, "sheet"), _many(checked.pages, "page")
    yield f"{sheets} of {printed.paper} among {pages}, drafted by version {checked.version}"
    if printed.drawn:
        across, up = (f"{scale:.3%}" for scale in printed.drawn)
        yield f"drawn at {across} across the paper and {up} up it, to come out true on one printer"
    yield ""
    yield (f"Scale: {_scale(checked, ACROSS)} across, {_scale(checked, UP)} up, "
           f"{_scale(checked, SLOPE)} on the slope")  # fmt: skip
    yield f"Joins: {checked.joins}, crosses at most {checked.apart:.4f} mm apart"
    if checked.lines:
        yield from ("", "By piece")
        yield table(("seat", "piece", "lines", "in all", "furthest off"), _rows(checked, by_piece))
        yield from ("", "By kind of line")
        yield table(("line", "lines", "in all", "furthest off"), _rows(checked, by_kind))
    if not checked.faults:
        yield ""
        yield (f"Every line is there, and within {LIMIT:g} mm of the model: "
               f"{checked.off:.4f} mm at most.")  # fmt: skip


def _many(count: int, word: str) -> str:
    return f"1 {word}" if count == 1 else f"{count} {word}s"


def _scale(checked: Checked, way: str) -> str:
    return f"{checked.scale(way):.3%}"


def by_piece(line: Measured) -> tuple[str, ...]:
    """Return what the lines of one piece have alike."""
    return line.seat, line.piece


def by_kind(line: Measured) -> tuple[str, ...]:
    """Return what the lines of one kind have alike."""
    return (line.kind.value,)


def _groups(lines: Sequence[Measured], alike: Any) -> dict[tuple[str, ...], list[Measured]]:
    found: dict[tuple[str, ...], list[Measured]] = {}
    for line in lines:
        found.setdefault(alike(line), []).append(line)
    return found


def _rows(checked: Checked, alike: Any) -> list[tuple[str, ...]]:
    return [
        (*names, str(len(group)), show_length(sum(each.length for each in group), checked.job.unit),
         f"{max(each.off for each in group):.4f} mm")
        for names, group in _groups(checked.lines, alike).items()
    ]  # fmt: skip


def as_data(checked: Checked, path: Path) -> dict[str, Any]:
    """Return the report as plain data: the contract of ``check --json``. Lengths in mm."""
    pieces = _groups(checked.lines, by_piece)
    return {
        "file": str(path),
        "job": checked.job.name,
        "version": checked.version,
        "as_drafted": not checked.faults,
        "limit_mm": LIMIT,
        "largest_mm": checked.off,
        "paper": checked.printed.paper,
        "pages": checked.pages,
        "sheets": checked.sheets,
        "joins": {"count": checked.joins, "largest_mm": checked.apart},
        "scale": {"across": checked.scale(ACROSS), "up": checked.scale(UP),
                  "slope": checked.scale(SLOPE)},
        "pieces": [
            {"seat": seat, "piece": piece, "lines": [_kind(*each) for each in
                                                     _groups(lines, by_kind).items()]}
            for (seat, piece), lines in pieces.items()
        ],
        "faults": list(checked.faults),
    }  # fmt: skip


def _kind(names: tuple[str, ...], lines: list[Measured]) -> dict[str, Any]:
    return {
        "kind": names[0],
        "count": len(lines),
        "length_mm": sum(line.length for line in lines),
        "drawn_mm": sum(line.drawn or 0.0 for line in lines),
        "largest_mm": max(line.off for line in lines),
        "missing": sum(line.drawn is None for line in lines),
    }


def refuse(checked: Checked) -> None:
    """Refuse a print that isn't as it was drafted.

    Raises:
        NotAsDrafted: naming every fault.
    """
    if checked.faults:
        faults = (fault.replace("{", "{{").replace("}", "}}") for fault in checked.faults)
        raise NotAsDrafted([Refusal("", fault) for fault in faults])
