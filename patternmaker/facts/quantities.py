"""The kinds of value that a field can hold: how each is read and shown."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Protocol

from patternmaker.errors import Refusal, brief
from patternmaker.units import read_length, read_rate, show_length_exactly, show_rate

if TYPE_CHECKING:
    from patternmaker.units import Unit


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


LENGTH, RATE, COUNT, TEXT, SWITCH = Length(), Rate(), Count(), Text(), Switch()
