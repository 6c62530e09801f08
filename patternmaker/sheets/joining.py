"""Ways of joining two sheets: what becomes of their edges, and how far they must overlap."""

from __future__ import annotations

from dataclasses import dataclass

from patternmaker.errors import Refusals
from patternmaker.facts import unknown
from patternmaker.units import MM_PER_INCH, Unit

TRIM, FOLD_BACK = "TRIM", "FOLD BACK"


@dataclass(frozen=True)
class Joining:
    """How sheets are joined.

    Args:
        name: what it is called.
        new: what is done along the line of the sheet that is added.
        there: what was done along that of the sheet already there, if anything.
        overlap: how far sheets overlap unless asked otherwise, in a metric and in an inch job, mm.
        says: what to do with a sheet, once they are in order.
    """

    name: str
    new: str
    there: str
    overlap: tuple[float, float]
    says: str

    def done(self, *, new: bool) -> str:
        """Return what is done along the line of a sheet, the one that is added or the other."""
        return self.new if new else self.there

    def usual_overlap(self, unit: Unit) -> float:
        """Return how far sheets overlap unless asked otherwise."""
        return self.overlap[unit is Unit.IN]


# Edge to edge and folded sheets would do without an overlap; what they have keeps the bars and the
# words of a sheet out of the pattern.
LITTLE = (8.0, 5 / 16 * MM_PER_INCH)
LAP = Joining(
    "lap", TRIM, "", (10.0, 3 / 8 * MM_PER_INCH),
    "Cut each new sheet along its dashed line where that says TRIM, lay it to the same line of the "
    "sheet already there, like number beside like number, cross to cross, and tape. Cut off a "
    "blank margin that would cover a line.",
)  # fmt: skip
BUTT = Joining(
    "butt", TRIM, TRIM, LITTLE,
    "Cut every sheet along its dashed lines, which all say TRIM, lay each new one edge to edge "
    "with those already there, like number beside like number, the halves of each cross together, "
    "and tape. Cut off a blank margin that would cover a line.",
)  # fmt: skip
FOLD = Joining(
    "fold", FOLD_BACK, "", LITTLE,
    "Fold the edge of each new sheet back along its line where that says FOLD BACK, lay the fold "
    "to the same line of the sheet already there, like number beside like number, the halves of "
    "each cross together, and tape. Fold back a blank margin that would cover a line, too. Nothing "
    "is cut.",
)  # fmt: skip
JOININGS = {each.name: each for each in (LAP, BUTT, FOLD)}


def read_joining(raw: str) -> Joining:
    """Return the way of joining of a name.

    Raises:
        Refusals: if there is none.
    """
    if found := JOININGS.get(raw.strip().lower()):
        return found
    raise Refusals([unknown("join", raw, JOININGS)])
