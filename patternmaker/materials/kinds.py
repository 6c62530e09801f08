"""What is known of each kind of material; a job may override the figures that matter.

The take-up rates are the house's defaults; the gives, thicknesses, notches and what is taken in are
common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from patternmaker.units import MM_PER_INCH

SLIT_IN_LEATHER = MM_PER_INCH / 8  # deepest slit that leather bears; common practice, no source

ONE_WAY, NO_NAP = "one way", "none"
EITHER_WAY = "either way"


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
        nap: whether its pile lies one way.
        patterned: whether it may have a repeat to be matched.
        takes_in: most of a length that can be eased into a shorter seam without a pucker.
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
    nap: str = NO_NAP
    patterned: bool = True
    takes_in: float = 0.02


KINDS = {
    kind.name: kind
    for kind in (
        Kind("upholstery leather", 0.025, 0.05, 0.04, SLIT_IN_LEATHER,
             "arrow along the backbone", "length along the backbone",
             longest_strip=2000.0, thickness=1.2, boxing_runs_along=True, sold_by_area=True,
             patterned=False, wrong_side="flesh side", takes_in=0.03),
        Kind("vinyl", 0.015, 0.04, 0.03, SLIT_IN_LEATHER,
             "arrow along the roll", "length across the roll", takes_in=0.015),
        Kind("woven cloth", 0.0, 0.015, 0.01, MM_PER_INCH * 3 / 16,
             "arrow along the warp", "length across the warp", thickness=0.8,
             frays=True, takes_in=0.03),
        Kind("velour", 0.0, 0.02, 0.015, MM_PER_INCH * 3 / 16,
             "arrow along the warp", "length across the warp", thickness=1.2,
             nap=ONE_WAY, frays=True, takes_in=0.03),
        Kind("cambric", 0.0, 0.01, 0.01, SLIT_IN_LEATHER, EITHER_WAY, EITHER_WAY,
             thickness=0.2, patterned=False),
        Kind("card", 0.0, 0.0, 0.0, SLIT_IN_LEATHER, EITHER_WAY, EITHER_WAY,
             thickness=0.5, patterned=False, takes_in=0.0),
    )
}  # fmt: skip
