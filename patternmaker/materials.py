"""What is known of each kind of material; a job may override the figures that matter.

The take-up rates are the house's defaults; the gives, thicknesses and notches are common practice,
no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from patternmaker.facts import Measured, choice, length, measured, rate, text
from patternmaker.units import MM_PER_INCH

SLIT_IN_LEATHER = MM_PER_INCH / 8  # deepest slit that leather bears; common practice, no source
MOST_TAKE_UP = 0.15  # more is a mistyped rate, not a stretchy hide


@dataclass(frozen=True)
class Kind:
    """A kind of material.

    Args:
        name: as a job file writes it.
        take_up: share taken off a cut width, so that the panel is pulled tight.
        give_across: most that an edge may be stretched by across the warp, roll or backbone.
        give_along: the same along it.
        notch: deepest notch, mm.
        lay: how a flat panel lies on the material.
        lay_boxing: how a boxing strip lies on it.
        longest_strip: what it usually gives for boxing in one strip, mm: the width of a roll (54
            in cloth, as upholsterers' suppliers count it), or a hide along the backbone.
        thickness: of one layer, mm.
        boxing_runs_along: whether a strip's length lies along the warp, roll or backbone.
        sold_by_area: as hides are.
        wrong_side: what its other side is called, on which it is marked.
        frays: whether a clipped edge must be stay-stitched; a welt of it is cut on the bias.
    """

    name: str
    take_up: float
    give_across: float
    give_along: float
    notch: float
    lay: str
    lay_boxing: str
    longest_strip: float = MM_PER_INCH * 54
    thickness: float = 1.0
    boxing_runs_along: bool = False
    sold_by_area: bool = False
    wrong_side: str = "wrong side"
    frays: bool = False


KINDS = {
    kind.name: kind
    for kind in (
        Kind("upholstery leather", 0.025, 0.05, 0.04, SLIT_IN_LEATHER,
             "arrow along the backbone", "length along the backbone",
             longest_strip=2000.0, thickness=1.2, boxing_runs_along=True, sold_by_area=True,
             wrong_side="flesh side"),
        Kind("vinyl", 0.015, 0.04, 0.03, SLIT_IN_LEATHER,
             "arrow along the roll", "length across the roll"),
        Kind("woven cloth", 0.0, 0.015, 0.01, MM_PER_INCH * 3 / 16,
             "arrow along the warp", "length across the warp", thickness=0.8,
             frays=True),
        Kind("velour", 0.0, 0.02, 0.015, MM_PER_INCH * 3 / 16,
             "arrow along the warp, nap back to front", "length across the warp, nap downward",
             thickness=1.2, frays=True),
        Kind("cambric", 0.0, 0.01, 0.01, SLIT_IN_LEATHER, "either way", "either way",
             thickness=0.2),
        Kind("card", 0.0, 0.0, 0.0, SLIT_IN_LEATHER, "either way", "either way", thickness=0.5),
    )
}  # fmt: skip


@measured
class Material(Measured):
    """A material as a job gives it: its kind, and what is known better of this hide or roll."""

    kind: str = choice("what it is", KINDS, default="upholstery leather")
    name: str | None = text(
        "its name or colour, as you ask for it", default=None, required=False, most=60
    )
    take_up: float | None = rate(
        "share taken off so that it is pulled tight", default=None, most=MOST_TAKE_UP
    )
    take_up_across: float | None = rate(
        "the same, from left to right only", default=None, most=MOST_TAKE_UP
    )
    take_up_along: float | None = rate(
        "the same, from front to back only", default=None, most=MOST_TAKE_UP
    )
    give: float | None = rate("most that an edge of it may be stretched", default=None, most=0.5)
    thickness: float | None = length(
        "thickness of one layer", default=None, most=15, required=False
    )

    @property
    def known(self) -> Kind:
        """What is known of its kind."""
        return KINDS[self.kind]

    @property
    def title(self) -> str:
        """What to call it in a list."""
        return self.name or self.kind

    @property
    def across(self) -> float:
        """Its take-up from left to right of the seat."""
        return _first(self.take_up_across, self.take_up, self.known.take_up)

    @property
    def along(self) -> float:
        """Its take-up from front to back of the seat."""
        return _first(self.take_up_along, self.take_up, self.known.take_up)

    @property
    def must_lie_one_way(self) -> bool:
        """Whether a piece of it can't be turned, because its take-up differs by direction."""
        return not math.isclose(self.across, self.along)  # 2.5 % and 1/4 in per 10 are the same

    @property
    def gives_across(self) -> float:
        """Most that an edge may be stretched across the warp, roll or backbone."""
        return _first(self.give, self.known.give_across)

    @property
    def gives_along(self) -> float:
        """Most that an edge may be stretched along it."""
        return _first(self.give, self.known.give_along)

    @property
    def thick(self) -> float:
        """The thickness of one layer."""
        return _first(self.thickness, self.known.thickness)


def _first(*values: float | None) -> float:
    """Return the first value that is given."""
    return next(value for value in values if value is not None)
