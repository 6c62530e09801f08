"""Points as text: x and y on each line, as a digitiser or a spreadsheet writes them."""

from __future__ import annotations

import io
import re
from itertools import islice
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal, brief
from patternmaker.tracing.gathering import MOST, checked_count, checked_place, printable
from patternmaker.tracing.kinds import MARKS
from patternmaker.tracing.sketch import Chain, Sketch

if TYPE_CHECKING:
    from collections.abc import Iterator

UNITS = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "inch": 25.4, "inches": 25.4}
LONGEST = 500  # letters of a line
_UNIT = re.compile(r"[(\[]([^)\]]*)[)\]]")
_FIGURES = re.compile(r"[-+.,\d\s]+")
_NUMERIC = re.compile(r'"?[-+]?(?:[.,]?\d|(?:nan|inf|infinity)\b)', re.IGNORECASE)


def _line_of(separator: str, point: str) -> re.Pattern[str]:
    number = rf"([-+]?(?:\d+(?:{point}\d*)?|{point}\d+)(?:[eE][-+]?\d+)?)"
    return re.compile(rf"{number}{separator}{number}(?:{separator}(.*))?", re.ASCII)


_LINES = {  # the first of these signs that a line holds parts it
    ";": _line_of(" *; *", "[.,]"),
    "\t": _line_of(" *\t *", "[.,]"),
    ",": _line_of(" *, *", r"\."),
    " ": _line_of(" +", r"\."),
}


def read_csv(content: bytes) -> Sketch:
    """Return the points of a file as one open string, and the places that it names.

    Raises:
        Refusal: naming the first line that is no point.
    """
    said = _lines(content)
    lines = list(islice(said, MOST + 1))
    unit = None
    if lines and not _NUMERIC.match(lines[0][1]):
        unit = _unit(lines.pop(0)[1])
    if not lines:
        raise Refusal("", "holds no points", mend="write x and y of a point on each line")
    checked_count(len(lines) + sum(1 for _ in said))
    points, marks = _points(lines, unit or 1.0)
    return Sketch((Chain("points", points=tuple(points)),), unit, marks)


def _lines(content: bytes) -> Iterator[tuple[int, str]]:
    """Yield the lines that say something, with their numbers."""
    code = next((code for mark, code in MARKS if content.startswith(mark)), "utf-8")
    try:
        text = content.decode(code)
    except UnicodeDecodeError as fault:
        number = content[: fault.start].count(b"\n") + 1
        says = "is not UTF-8 text in line {value}"
        raise Refusal("", says, value=number, mend="save it as plain UTF-8") from None
    for number, line in enumerate(io.StringIO(text, newline=None), 1):
        if said := line.partition("#")[0].strip():
            yield number, said


def _unit(header: str) -> float | None:
    """Return the mm in the unit that a header gives in brackets, or None."""
    found = {each.strip().lower() for each in _UNIT.findall(header)}
    if not found:
        return None
    if len(found) > 1 or not found <= UNITS.keys():
        raise Refusal(
            "",
            "gives its unit as {value}",
            value=brief(" and ".join(sorted(found))),
            mend="give one for both columns: mm, cm, m, in",
        )
    return UNITS[found.pop()]


def _points(lines: list[tuple[int, str]], unit: float) -> tuple[list[complex], dict[str, complex]]:
    points: list[complex] = []
    marks: dict[str, complex] = {}
    separator = next((sign for sign in _LINES if sign in lines[0][1]), " ")
    matched = _LINES[separator].fullmatch
    for number, line in lines:
        found = matched(line) if len(line) <= LONGEST else None
        if not found:
            raise _wrong("is no point in line {limit}: {value}", line, number)
        x, y, name = found.groups()
        if separator != "," and "," in line:
            x, y = x.replace(",", "."), y.replace(",", ".")
        place = unit * complex(float(x), float(y))
        checked_place(place, f"line {number}")
        points.append(place)
        if name and (known := printable(name.strip(" ;,\t\"'"))):
            if known in marks or _FIGURES.fullmatch(known):
                raise _wrong("names no place of its own in line {limit}: {value}", known, number)
            marks[known] = place
    return points, marks


def _wrong(says: str, value: str, number: int) -> Refusal:
    mend = "give x and y there, and behind them nothing but the name of the place"
    return Refusal("", says, value=brief(value[:LONGEST]), limit=number, mend=mend)
