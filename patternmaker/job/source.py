"""Getting a job file off the disk, whatever may lie there under its name."""

from __future__ import annotations

import tomllib
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal, Refusals, printable
from patternmaker.facts.files import content_of
from patternmaker.job.reading import read_job

if TYPE_CHECKING:
    from pathlib import Path

    from patternmaker.job.model import Job

LARGEST = 1_000_000  # bytes; a job of two hundred seats takes a tenth of it
LONGEST_LINE = 20_000  # letters; a parser slows down with the square of a key's length
DEEPEST = 10  # tables within tables; a job takes five
MEND_TOML = 'mend it at that place; a length with a space or a fraction stands in quotes: "12 1/2"'
BYTE_ORDER_MARKS = (b"\xef\xbb\xbf", b"\xff\xfe", b"\xfe\xff")


def load_job(path: Path) -> Job:
    """Return the job in the TOML file at ``path``.

    Raises:
        Refusals: if it can't be read, or holds mistakes: every one of them.
    """
    return read_job(_parsed(_text(path), path.name), path.parent)


def _refused(name: str, says: str, mend: str) -> Refusals:
    return Refusals([Refusal(_printable(name), says, mend=mend)])


def _printable(name: str) -> str:
    return printable(name).replace("{", "(").replace("}", ")")[-80:]


def _text(path: Path) -> str:
    name = path.name or str(path)
    try:
        return _decoded(content_of(path, LARGEST, "job file"), name)
    except Refusal as mistake:
        raise Refusals([mistake.at(_printable(name))]) from None


def _decoded(raw: bytes, name: str) -> str:
    if raw.startswith(BYTE_ORDER_MARKS):
        raise _refused(name, "begins with a byte order mark", "save it as plain UTF-8, without BOM")
    try:
        return raw.decode()
    except UnicodeDecodeError as fault:
        line = raw[: fault.start].count(b"\n") + 1
        says = f"is not UTF-8 text (line {line}, byte {fault.start})"
        raise _refused(name, says, "save it as plain UTF-8") from None


def _parsed(text: str, name: str) -> dict[str, object]:
    for number, line in enumerate(text.split("\n"), 1):
        if len(line) > LONGEST_LINE:
            says = f"is too long in line {number}: {len(line):,} letters"
            raise _refused(name, says, f"keep each line under {LONGEST_LINE:,}")
    try:
        return _shallow(tomllib.loads(text))
    except tomllib.TOMLDecodeError as fault:
        says = str(fault).replace("{", "(").replace("}", ")")
        raise _refused(name, f"is broken TOML: {says}", MEND_TOML) from None
    except RecursionError:
        raise _refused(name, "is nested too deep", "write each table once, plainly") from None
    except ValueError:
        says = "holds a number of thousands of digits"
        raise _refused(name, says, "write the measurement") from None


def _shallow(tables: dict[str, object]) -> dict[str, object]:
    """Return the tables unless they are nested too deep, which dotted keys do without brackets."""
    level: list[object] = [tables]
    for _ in range(DEEPEST):
        level = [inner for each in level for inner in _within(each)]
    if level:
        raise RecursionError
    return tables


def _within(each: object) -> list[object]:
    if isinstance(each, dict):
        return list(each.values())
    return each if isinstance(each, list) else []
