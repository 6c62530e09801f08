"""Papers by name or by size, and how much of them can be printed on."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal, Refusals
from patternmaker.facts import LENGTH, unknown
from patternmaker.sheets.joining import LAP, Joining, read_joining
from patternmaker.units import MM_PER_INCH, Unit, read_length

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.sheets.printer import Printer

# ISO 216, series A, in mm.
ISO = {"A4": (210, 297), "A3": (297, 420), "A2": (420, 594), "A1": (594, 841), "A0": (841, 1189)}
# ASME Y14.1 sizes A and B, and Legal, in inches.
AMERICAN = {"Letter": (8.5, 11), "Legal": (8.5, 14), "Tabloid": (11, 17)}

LEAST_SIDE = 50.0  # mm; no printer takes less
LARGEST_SIDE = 5080.0  # mm; 14,400 units of 1/72 in, an implementation limit of PDF viewers
LEAST_SHORT, LEAST_LONG = 125.0, 135.0  # mm to print on: scale bars and proof triangle fit

Fitted = tuple[float, float, complex]
"""by how much a page is drawn larger than life each way, and how far it is moved then, mm"""


@dataclass(frozen=True)
class Paper:
    """A paper size, upright, in mm."""

    name: str
    width: float
    height: float


PAPERS = {name.lower(): Paper(name, *map(float, size)) for name, size in ISO.items()} | {
    name.lower(): Paper(name, *(side * MM_PER_INCH for side in size))
    for name, size in AMERICAN.items()
}


def read_paper(raw: str, unit: Unit) -> Paper:
    """Return the paper of a name, or of a size such as ``600x900mm`` or ``18x24in``.

    Raises:
        Refusals: if it is neither, or no printer could take it.
    """
    if paper := PAPERS.get(raw.strip().lower()):
        return paper
    if not re.search(r"\d\s*(?:mm|cm|in|m|ft|\")?\s*[x×]\s*\d", raw, re.IGNORECASE):
        names = [paper.name for paper in PAPERS.values()]
        mistake = unknown("paper", raw, names)
        mistake.mend += " (or write a size such as 600x900mm or 18x24in)"
        raise Refusals([mistake], unit)
    try:
        width, height = _sides(raw, unit)
    except Refusal as mistake:
        raise Refusals([mistake.at("paper")], unit) from None
    for side in (width, height):
        if not LEAST_SIDE <= side <= LARGEST_SIDE:
            raise Refusals([_wrong_side(side)], unit)
    width, height = sorted((width, height))
    name = " ".join(raw.split())
    return Paper(name if re.search(r"[a-wyz\"]", name) else f"{name} {unit}", width, height)


def _sides(raw: str, unit: Unit) -> tuple[float, float]:
    first, second = re.split(r"[x×]", raw.lower(), maxsplit=1)
    suffix = re.search(r"[a-z\"]+\s*$", second)
    if suffix and not re.search(r"[a-z\"]\s*$", first):
        first += suffix[0]
    return read_length(first.strip(), unit), read_length(second.strip(), unit)


def _wrong_side(side: float) -> Refusal:
    less, limit = ("less", LEAST_SIDE) if side < LEAST_SIDE else ("more", LARGEST_SIDE)
    return Refusal(
        "paper", f"a side of {{value}} is {less} than {{limit}}", value=side, limit=limit,
        mend="check the unit", show=LENGTH.show,
    )  # fmt: skip


@dataclass(frozen=True)
class Margins:
    """What a printer leaves white, on the page as it is read."""

    left: float
    right: float
    top: float
    bottom: float

    @property
    def corner(self) -> complex:
        """The lower left corner of what is printed on, from that of the page."""
        return complex(self.left, self.bottom)


@dataclass(frozen=True)
class Stock:
    """The paper of a job: what is printed on, the margins, and how sheets overlap and are joined.

    A printer that is known to print long or short is named with it.

    Raises:
        Refusals: if too little is left to print on, or the overlap leaves too little of a sheet.
    """

    paper: Paper
    margins: Margins
    overlap: float
    printer: Printer | None = None
    joining: Joining = LAP

    def __post_init__(self) -> None:
        if wrong := list(self._mistakes()):
            raise Refusals(wrong)

    def _mistakes(self) -> Iterator[Refusal]:
        margins = vars(self.margins) | {"overlap": self.overlap}
        for name, value in margins.items():
            if not 0 <= value <= LARGEST_SIDE:
                less, limit = ("less", 0.0) if value < 0 else ("more", LARGEST_SIDE)
                yield Refusal(
                    name if name == "overlap" else f"margin {name}",
                    f"{{value}} is {less} than {{limit}}", value=value, limit=limit,
                    mend="check the unit", show=LENGTH.show,
                )  # fmt: skip
                return
        sizes = [self.window(landscape=False), self.window(landscape=True)]
        short = min(min(size) for size in sizes)
        long = min(max(size) for size in sizes)
        if short <= 0:
            yield Refusal("margins", f"they are larger than {self.paper.name} itself",
                          mend="make them smaller")  # fmt: skip
        elif short < LEAST_SHORT or long < LEAST_LONG:
            yield Refusal(
                "margins", f"{self.paper.name} less its margins leaves {{value}}: the scale bars "
                "and the proof triangle need {limit}", value=(short, long),
                limit=(LEAST_SHORT, LEAST_LONG), mend="make the margins smaller or the paper "
                "larger", show=_show_size,
            )  # fmt: skip
        elif self.overlap > short / 3:
            yield Refusal(
                "overlap", "{value} is more than a third of the usable width ({limit})",
                value=self.overlap, limit=short / 3, mend="make it smaller", show=LENGTH.show,
            )  # fmt: skip

    def page(self, *, landscape: bool) -> tuple[float, float]:
        """Return the width and height of a page."""
        size = self.paper.width, self.paper.height
        return size[::-1] if landscape else size

    def window(self, *, landscape: bool) -> tuple[float, float]:
        """Return the width and height of what can be printed on, as it comes out."""
        size = self._within_margins(landscape=landscape)
        return self.printer.room(size, landscape=landscape) if self.printer else size

    def _within_margins(self, *, landscape: bool) -> tuple[float, float]:
        width, height = self.page(landscape=landscape)
        m = self.margins
        return width - m.left - m.right, height - m.top - m.bottom

    def fitted(self, *, landscape: bool) -> Fitted | None:
        """Return how pages are drawn to come out true, the window in the middle of the margins.

        None for a printer of which no more is known than that it prints true.
        """
        if not self.printer:
            return None
        x, y = self.printer.scale(landscape=landscape)
        inside, window = self._within_margins(landscape=landscape), self.window(landscape=landscape)
        spare = complex(inside[0] - window[0] * x, inside[1] - window[1] * y) / 2
        corner = self.margins.corner
        return x, y, corner + spare - complex(corner.real * x, corner.imag * y)

    @property
    def usable_area(self) -> float:
        """The largest area that one sheet can show, mm2."""
        return max(w * h for w, h in (self.window(landscape=way) for way in (False, True)))


def _show_size(size: tuple[float, float], unit: Unit | None) -> str:
    return " by ".join(LENGTH.show(side, unit) for side in size)


def usual_margins(unit: Unit) -> Margins:
    """Return margins that home printers can keep: 10 mm, 13 at the foot, or 3/8 and 1/2 in."""
    if unit is Unit.IN:
        side = 3 / 8 * MM_PER_INCH
        return Margins(side, side, side, MM_PER_INCH / 2)
    return Margins(10.0, 10.0, 10.0, 13.0)


def stock_of(
    unit: Unit,
    paper: str | None = None,
    margins: str | None = None,
    overlap: str | None = None,
    join: str | None = None,
) -> Stock:
    """Return the stock that a person asks for, what is not said being as usual for the unit.

    Raises:
        Refusals: naming what can't be read or used.
    """
    usual = "Letter" if unit is Unit.IN else "A4"
    read = read_paper(usual if paper is None else paper, unit)
    joining = LAP if join is None else read_joining(join)
    try:
        return Stock(
            read,
            usual_margins(unit) if margins is None else _read_margins(margins, unit),
            joining.usual_overlap(unit)
            if overlap is None
            else _read_side("overlap", overlap, unit),
            joining=joining,
        )
    except Refusals as refusals:
        raise Refusals(refusals.mistakes, unit) from None


def _read_side(name: str, raw: str, unit: Unit) -> float:
    try:
        return read_length(raw.strip(), unit)
    except Refusal as mistake:
        raise Refusals([mistake.at(name)], unit) from None


def _read_margins(raw: str, unit: Unit) -> Margins:
    sides = [_read_side("margins", side, unit) for side in raw.split(",")]
    if len(sides) == 1:
        sides *= 4
    if len(sides) != 4:
        mend = "give one length, or four: left,right,top,bottom"
        raise Refusals([Refusal("margins", "{value} has {limit} lengths", value=repr(raw),
                                limit=len(sides), mend=mend)])  # fmt: skip
    return Margins(*sides)
