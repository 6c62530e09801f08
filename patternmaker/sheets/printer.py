"""A printer that prints a little long or short, and what is drawn so that it comes out true.

Its two ways are those of the paper: across the short side, and up the long one. A page that lies is
turned by the driver and goes through the printer as an upright one does, so that the two change
places on it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal, Refusals
from patternmaker.facts import LENGTH
from patternmaker.units import MM_PER_INCH, Unit, show_finely, show_length_exactly

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.sheets.papers import Margins, Paper, Stock

MOST = 0.03  # of a side; what is further off is a page that was scaled, or a slip of the pen
ROUNDING = 1e-9  # of a side; 3 % itself is allowed however its figures round
LONGEST_NAME = 40  # letters; it stands at the head of every sheet
SAME = 0.05  # mm; papers and margins nearer than this are the same
READING = {Unit.MM: 0.25, Unit.CM: 0.25, Unit.IN: MM_PER_INCH / 64}
"""mm; how far a side may lie from what is read: half the finest mark of a good rule, 0.5 mm
or 1/32 in (common practice, no source)"""


@dataclass(frozen=True)
class Sides:
    """The sides of a proof triangle: across the paper, up it, and the long one if it is known."""

    across: float
    up: float
    long: float | None

    @property
    def named(self) -> dict[str, float]:
        """Those that are known, as the command calls them."""
        long = {} if self.long is None else {"long-side": self.long}
        return {"across": self.across, "up": self.up} | long


@dataclass(frozen=True)
class Printer:
    """A printer as its proof triangle shows it.

    Args:
        name: what its user calls it.
        paper: on which it was measured.
        margins: with which the page was drawn.
        unit: in which the sides were read.
        stated: the sides that were drawn.
        measured: what they really are on the paper.

    Raises:
        Refusals: if a side is further off than a printer can be, or the name can't be used.
    """

    name: str
    paper: Paper
    margins: Margins
    unit: Unit
    stated: Sides
    measured: Sides

    def __post_init__(self) -> None:
        if wrong := [*self._misnamed(), *beyond(self.stated, self.measured), *self._lopsided()]:
            raise Refusals(wrong, self.unit)

    def _misnamed(self) -> Iterator[Refusal]:
        if not self.name.strip() or not self.name.isprintable():
            yield Refusal("printer", "its name can't be read", mend="call it by plain letters")
        elif len(self.name) > LONGEST_NAME:
            yield Refusal(
                "printer", "its name has {value} letters, more than {limit}",
                value=len(self.name), limit=LONGEST_NAME, mend="make it shorter",
            )  # fmt: skip

    def _lopsided(self) -> Iterator[Refusal]:
        if abs(self.lean or 0) > MOST:
            yield Refusal(
                "long-side", "{value} goes with short sides of {limit} only if the printer leaned "
                f"by {abs(self.lean or 0) * 100:.1f} mm in 100", value=self.measured.long,
                limit=(self.measured.across, self.measured.up), mend="measure all three again",
                show=_show_sides,
            )  # fmt: skip

    @property
    def errors(self) -> tuple[float, float]:
        """How much too long it prints across the paper and up it: 0.006 is 0.6 %."""
        return (
            self.measured.across / self.stated.across - 1,
            self.measured.up / self.stated.up - 1,
        )

    @property
    def reading_errors(self) -> tuple[float, float]:
        """How far off either of them may be, for a rule is not read more finely."""
        reading = READING[self.unit]
        return reading / self.stated.across, reading / self.stated.up

    @property
    def is_true(self) -> bool:
        """Whether a rule can't tell it from one that prints true, square or not."""
        pairs = zip(self.errors, self.reading_errors, strict=True)
        return all(abs(error) <= reading for error, reading in pairs)

    @property
    def lean(self) -> float | None:
        """How far what should be upright leans to the left, as a share of its height.

        By the law of cosines; the long side tells it, so it is None where that was not measured.
        """
        a, b, c = self.measured.across, self.measured.up, self.measured.long
        if c is None:
            return None
        cosine = (a * a + b * b - c * c) / (2 * a * b)
        return math.inf if abs(cosine) >= 1 else -cosine / math.sqrt(1 - cosine**2)

    @property
    def reading_lean(self) -> float:
        """How far off the lean may be: with all three sides misread at once, the worst way.

        The law of cosines at a right angle: ab times the turn is c dc - a da - b db.
        """
        a, b = self.stated.across, self.stated.up
        return READING[self.unit] * (a + b + math.hypot(a, b)) / (a * b)

    @property
    def is_askew(self) -> bool:
        """Whether it surely prints askew, the reading of the sides allowed for."""
        return abs(self.lean or 0) > self.reading_lean

    def errors_on(self, *, landscape: bool) -> tuple[float, float]:
        """Return how much too long it prints each way of a page as it is read."""
        return self.errors[::-1] if landscape else self.errors

    def scale(self, *, landscape: bool) -> tuple[float, float]:
        """Return by how much what is drawn must be larger than what it is to come out as."""
        x, y = self.errors_on(landscape=landscape)
        return 1 / (1 + x), 1 / (1 + y)

    def room(self, size: tuple[float, float], *, landscape: bool) -> tuple[float, float]:
        """Return how much of a size it can be asked for, in what comes out.

        Neither what is drawn nor what comes out is larger than the size: the margins stay white.
        """
        x, y = self.errors_on(landscape=landscape)
        return size[0] * min(1.0, 1 + x), size[1] * min(1.0, 1 + y)

    @property
    def drawn(self) -> tuple[str, str]:
        """How much larger than life a sheet is drawn across the paper and up it, or smaller."""
        across, up = ((1 / (1 + error) - 1) * 100 for error in self.errors)
        return _signed(across), _signed(up)

    @property
    def mended(self) -> str:
        """What is done to a sheet, in short."""
        return "{} across, {} up".format(*self.drawn)

    @property
    def set_mended(self) -> str:
        """The same, set for print."""
        return self.mended.replace("-", "−")

    def squareness(self) -> str:
        """Return what the long side says."""
        if self.lean is None:
            return "whether it prints square was not measured"
        told = f"{self.reading_lean * 100:.2f} mm in 100"
        if not self.is_askew:
            return f"square, as finely as the sides were read (to {told})"
        way = "left" if self.lean > 0 else "right"
        return (
            f"not square: what should be upright leans {abs(self.lean) * 100:.2f} mm in 100 to the "
            f"{way} (read to {told}); no correction mends that: see that the paper goes in straight"
        )

    def doubts(self, stock: Stock) -> Iterator[str]:
        """Yield what makes its correction doubtful on a stock, or sheets of it at all."""
        name = f"printer {self.name!r}"
        if not _alike((self.paper.width, self.paper.height), _size(stock.paper)):
            yield (f"{name} was measured on {self.paper.name}, and this is {stock.paper.name}: it "
                   "may print otherwise on that; measure the triangle before you cut")  # fmt: skip
        mine, its = (tuple(vars(margins).values()) for margins in (self.margins, stock.margins))
        if not _alike(mine, its):
            yield (
                f"{name} was measured with other margins ({self._margins_say(self.margins)}; "
                f"these are {self._margins_say(stock.margins)}): a driver that fits pages to "
                "its own would scale these otherwise; measure the triangle before you cut"
            )
        if self.is_askew:
            yield f"{name} is {self.squareness()}"

    def _margins_say(self, margins: Margins) -> str:
        sides = (show_length_exactly(side, self.unit) for side in vars(margins).values())
        return ", ".join(sides)

    def report(self) -> Iterator[str]:
        """Yield what was found, a sentence each."""
        fine = show_finely(READING[self.unit], self.unit)
        for way, error, reading in zip(("across the paper", "up the paper"), self.errors,
                                       self.reading_errors, strict=True):  # fmt: skip
            how = f"prints {abs(error) * 100:.2f} % {'long' if error > 0 else 'short'}"
            doubt = (
                ""
                if not error or abs(error) > reading
                else ", no more than the reading itself may be off"
            )
            known = f"known to {reading * 100:.2f} %, sides read to {fine}"
            yield f"{way}: {how if error else 'prints true'} ({known}{doubt})"
        yield self.squareness()


def _size(paper: Paper) -> tuple[float, float]:
    return paper.width, paper.height


def _alike(one: tuple[float, ...], two: tuple[float, ...]) -> bool:
    return all(abs(a - b) < SAME for a, b in zip(one, two, strict=True))


def _signed(share: float) -> str:
    sign = "" if abs(share) < 0.005 else "-" if share < 0 else "+"
    return f"{sign}{abs(share):.2f} %"


def _show_sides(value: float | tuple[float, ...], unit: Unit | None) -> str:
    sides = value if isinstance(value, tuple) else (value,)
    return " and ".join(LENGTH.show(side, unit) for side in sides)


def beyond(stated: Sides, measured: Sides) -> Iterator[Refusal]:
    """Yield the sides that are further off than a printer can be."""
    drawn = stated.named
    for name, side in measured.named.items():
        off = side / drawn[name] - 1
        if not abs(off) <= MOST + ROUNDING:
            yield Refusal(
                name, f"{{value}} is {abs(off) * 100:.3g} % {'more' if off > 0 else 'less'} than "
                f"{{limit}}: more than {MOST * 100:g} %", value=side, limit=drawn[name],
                mend="measure again; see that the page was printed at actual size (100 %), and say "
                "the paper and margins that it was printed with", show=LENGTH.show,
            )  # fmt: skip
