"""The kinds of value that a field can hold: how each is read and shown."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

from patternmaker.errors import Refusal, brief
from patternmaker.facts.files import content_of
from patternmaker.units import (
    Unit,
    read_length,
    read_rate,
    read_stitch,
    show_length_exactly,
    show_rate,
    show_stitch,
)


class Quantity(Protocol):
    """A kind of value: how it is read and shown, and its unit inside the program."""

    unit: str
    doubt: str
    """What may be behind a value that is far too large."""

    def read(self, raw: object, unit: Unit) -> Any:
        """Return the value inside, or raise a `Refusal` that says what would be read."""

    def show(self, value: Any, unit: Unit | None) -> str:
        """Return the value as the job's reader sees it."""


class Length:
    """A length; millimetres inside."""

    unit = "mm"
    doubt = "; check the unit"

    def read(self, raw: object, unit: Unit) -> float:
        """Read tape notation."""
        return read_length(raw, unit)

    def show(self, value: float, unit: Unit | None) -> str:
        """Show in the job's unit."""
        return show_length_exactly(value, unit)


class Stitch:
    """The length of a stitch; millimetres inside."""

    unit = "mm"
    doubt = '; write it as in "8 per inch" or "3 mm"'

    def read(self, raw: object, unit: Unit) -> float:
        """Read a length, or how many stitches go on one."""
        return read_stitch(raw, unit)

    def show(self, value: float, unit: Unit | None) -> str:
        """Show its length, with how many go on an inch in an inch job."""
        length = show_length_exactly(value, unit)
        return f"{length} ({show_stitch(value, unit)})" if unit is Unit.IN and value else length


class Rate:
    """A share of one, such as a take-up."""

    unit = "fraction"
    doubt = '; write per cent as in "2.5%"'

    def read(self, raw: object, unit: Unit) -> float:
        """Read ``2.5%``, ``1/4 per 10`` or ``0.025``."""
        return read_rate(raw, unit)

    def show(self, value: float, unit: Unit | None) -> str:
        """Show in per cent."""
        return show_rate(value, unit)


class Count:
    """A whole number."""

    unit = "count"
    doubt = ""

    def read(self, raw: object, unit: Unit) -> int:
        """Read a whole number."""
        del unit
        if isinstance(raw, bool) or not isinstance(raw, int):
            raise Refusal(
                "", "{value} is not a whole number", value=brief(raw), mend="write it like 6"
            )
        return raw

    def show(self, value: int, unit: Unit | None) -> str:
        """Show in figures, huge ones in short."""
        del unit
        return f"{value:,}" if -1e15 < value < 1e15 else "a number of more than 15 digits"


class Text:
    """A line of text."""

    unit = "text"
    doubt = ""

    def read(self, raw: object, unit: Unit) -> str:
        """Read a line of printable text."""
        del unit
        if not isinstance(raw, str):
            raise Refusal("", "{value} is not text", value=brief(raw), mend="put it in quotes")
        text = " ".join(raw.split(" "))
        if odd := next((sign for sign in text if not sign.isprintable()), None):
            raise Refusal(
                "", "holds a control character ({value})", value=f"U+{ord(odd):04X}",
                mend="leave it out",
            )  # fmt: skip
        return text.strip()

    def show(self, value: str, unit: Unit | None) -> str:
        """Show as it is."""
        del unit
        return brief(value)


class Names(Text):
    """Some names, in a list."""

    unit = "names"

    def read(self, raw: object, unit: Unit) -> tuple[str, ...]:  # type: ignore[override]
        """Read a list of lines of text."""
        if not isinstance(raw, list | tuple):
            mend = f"write it as [{brief(raw)}]" if isinstance(raw, str) else "write it as [...]"
            raise Refusal("", "{value} is not a list of names", value=brief(raw), mend=mend)
        return tuple(super(Names, self).read(each, unit) for each in raw)

    def show(self, value: Any, unit: Unit | None) -> str:
        """Show as the job file writes it."""
        return f"[{', '.join(super(Names, self).show(each, unit) for each in value)}]"


class Switch:
    """Yes or no."""

    unit = "yes or no"
    doubt = ""

    def read(self, raw: object, unit: Unit) -> bool:
        """Read true or false."""
        del unit
        if not isinstance(raw, bool):
            raise Refusal("", "{value} is not true or false", value=brief(raw), mend="write true")
        return raw

    def show(self, value: bool, unit: Unit | None) -> str:  # noqa: FBT001
        """Show as the job file writes it."""
        del unit
        return str(value).lower()


class Angle:
    """An angle, in degrees inside as well as out."""

    unit = "degrees"
    doubt = ""

    def read(self, raw: object, unit: Unit) -> float:
        """Read a number of degrees."""
        del unit
        text = raw.strip().removesuffix("°").strip() if isinstance(raw, str) else raw
        try:
            value = float(text) if isinstance(text, str | int | float) else math.nan
        except (ValueError, OverflowError):
            value = math.nan
        if isinstance(raw, bool) or not math.isfinite(value):
            raise Refusal("", "{value} is not an angle", value=brief(raw), mend="write it like 90")
        return value

    def show(self, value: float, unit: Unit | None) -> str:
        """Show in degrees."""
        del unit
        return f"{value:.6g}°"


LENGTH, RATE, COUNT, TEXT, SWITCH, ANGLE = Length(), Rate(), Count(), Text(), Switch(), Angle()
STITCH, NAMES = Stitch(), Names()


@dataclass(frozen=True)
class Rows:
    """Rows of lengths, as a table of them is written down; millimetres inside.

    Args:
        columns: what each column holds, in a word or two.
        needed: how many of them every row must have; the others may be left away.
    """

    columns: tuple[str, ...]
    needed: int
    unit = "mm, in rows"
    doubt = ""

    def read(self, raw: object, unit: Unit) -> tuple[tuple[float, ...], ...]:
        """Read a list of rows; a row of one figure may stand without its brackets."""
        if not isinstance(raw, list | tuple):
            raise Refusal("", "{value} is not a list of rows", value=brief(raw), mend=self._mend)
        return tuple(self._row(row, number, unit) for number, row in enumerate(raw, 1))

    def _row(self, raw: object, number: int, unit: Unit) -> tuple[float, ...]:
        cells = raw if isinstance(raw, list | tuple) else [raw]
        if not self.needed <= len(cells) <= len(self.columns):
            figures = "one figure" if len(cells) == 1 else f"{len(cells)} figures"
            raise Refusal(f"row {number}", f"holds {figures}", mend=self._mend)
        return tuple(
            self._cell(cell, f"row {number}, {name}", unit)
            for cell, name in zip(cells, self.columns, strict=False)
        )

    def _cell(self, raw: object, place: str, unit: Unit) -> float:
        try:
            return read_length(raw, unit)
        except Refusal as mistake:
            raise mistake.at(place) from None

    @property
    def _mend(self) -> str:
        must, may = self.columns[: self.needed], self.columns[self.needed :]
        extra = f", and {' and '.join(may)} where you like" if may else ""
        return f"write each row as [{', '.join(must)}]{extra}"

    def show(self, value: tuple[tuple[float, ...], ...], unit: Unit | None) -> str:
        """Show as a job file would write it."""
        rows = (", ".join(show_length_exactly(cell, unit) for cell in row) for row in value)
        return f"[{', '.join(f'[{row}]' for row in rows)}]"


@dataclass(frozen=True, repr=False)
class Found:
    """A file that a job names, as it was found: its name and what is in it."""

    name: str
    content: bytes

    def __repr__(self) -> str:
        """Tell its name; what is in it would be too much."""
        return f"Found({self.name!r})"


class File(Text):
    """A file beside the job; its name outside, what is in it inside."""

    unit = "file"

    def opened(self, name: str, folder: Path | Mapping[str, bytes] | None) -> Found:
        """Return the file of that name, from the job's folder where the name is relative.

        A job that came without a folder brings its files along, by name; no other is opened then.

        Raises:
            Refusal: if it isn't there or can't be read.
        """
        if isinstance(folder, Mapping):
            if name not in folder:
                raise Refusal("", "did not come with the job", mend="check the job file itself")
            return Found(name, folder[name])
        path = (folder or Path()) / name
        return Found(name, content_of(path, LARGEST_FILE, "drawing"))

    def show(self, value: Any, unit: Unit | None) -> str:
        """Show its name."""
        del unit
        return brief(getattr(value, "name", value))


LARGEST_FILE = 25_000_000  # bytes; a trace of 200,000 points takes a quarter of it
FILE = File()
