"""A stretch test: a mark made on a material, and how long it is while a hand pulls it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from patternmaker.errors import Refusal, brief
from patternmaker.facts.quantities import LENGTH, RATE
from patternmaker.units import read_length, show_length_exactly

if TYPE_CHECKING:
    from patternmaker.units import Unit

# Common practice, no source.
LEAST_MARK = 50.0  # mm; on a shorter one the tape is too coarse for the stretch
MOST_GIVE = 0.5  # more is rubber, or a figure in another unit


@dataclass(frozen=True)
class Pull:
    """One test, mm.

    >>> round(Pull(mark=254.0, pulled_to=263.525).give, 6)
    0.0375
    """

    mark: float
    pulled_to: float

    @property
    def give(self) -> float:
        """The share of the mark by which it was stretched."""
        return (self.pulled_to - self.mark) / self.mark

    def mistake(self, name: str) -> Refusal | None:
        """Return what is wrong with a test that stands in the field ``name``, or None."""
        if not self.mark >= LEAST_MARK:
            return Refusal(f"{name}, mark", "{value} is less than {limit}", value=self.mark,
                           limit=LEAST_MARK, show=LENGTH.show,
                           mend="a mark so short tells little: make a longer one")  # fmt: skip
        if not self.pulled_to >= self.mark:
            return Refusal(f"{name}, pulled_to", "{value} is less than the mark ({limit})",
                           value=self.pulled_to, limit=self.mark, show=LENGTH.show,
                           mend="measure the mark at rest, then pulled")  # fmt: skip
        if self.give > MOST_GIVE:
            return Refusal(name, "gives {value}, more than {limit}", value=self.give,
                           limit=MOST_GIVE, show=RATE.show,
                           mend="measure both again, in one unit")  # fmt: skip
        return None


class StretchTest:
    """A stretch test as a job writes it: ``{ mark = 10, pulled_to = "10 3/8" }``."""

    unit = "mm, in a table"
    doubt = ""

    def read(self, raw: object, unit: Unit) -> Pull:
        """Read both lengths."""
        mend = "write it as { mark = 10, pulled_to = 10.4 }"
        if not isinstance(raw, dict) or raw.keys() != {"mark", "pulled_to"}:
            says = "{value} does not hold a mark and what it was pulled to"
            raise Refusal("", says, value=brief(raw), mend=mend)
        return Pull(*(_length(raw[name], name, unit) for name in ("mark", "pulled_to")))

    def show(self, value: Any, unit: Unit | None) -> str:
        """Show as a job file would write it."""
        mark, pulled = (show_length_exactly(each, unit) for each in (value.mark, value.pulled_to))
        return f"{{ mark = {mark}, pulled_to = {pulled} }}"


def _length(raw: object, name: str, unit: Unit) -> float:
    try:
        return read_length(raw, unit)
    except Refusal as mistake:
        raise mistake.at(name) from None


STRETCH_TEST = StretchTest()
