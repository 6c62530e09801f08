"""The boxed cover: a flat top, and an upright strip sewn round it."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from patternmaker.covers.parts import bases, steps, strips, tops
from patternmaker.covers.parts.fits import fit
from patternmaker.covers.registry import Cover, cover
from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH, both, length
from patternmaker.pattern.piece import Pattern, Seam
from patternmaker.pattern.stations import stations

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Piece
    from patternmaker.pattern.stations import Station


@cover("boxed")
class Boxed(Cover):
    """A flat top sewn to boxing that is pulled down and stapled under the base."""

    drop: float = length(
        "from the top's seam down to the lower edge of the base",
        default=both(in_=3, mm=75), least=10, most=600,
    )  # fmt: skip

    roles: ClassVar[tuple[str, ...]] = ("top", "boxing", "dust cover", "base template")

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this seat from being boxed."""
        if brief.allowances.topstitch_at >= self.drop:
            yield Refusal(
                "allowances.topstitch", "{value} lies below the drop ({limit})",
                value=brief.allowances.topstitch_at, limit=self.drop, show=LENGTH.show,
                mend="bring the topstitch nearer the seam",
            )  # fmt: skip
        half = min(brief.outline.width, brief.outline.height) / 2
        if brief.allowances.seam > half:
            yield Refusal(
                "allowances.seam", "{value} is more than half the seat ({limit})",
                value=brief.allowances.seam, limit=half, show=LENGTH.show,
                mend="make the allowance smaller or check the seat's measurements",
            )  # fmt: skip
            return
        sew = tops.sew_line(brief)
        yield from tops.closing("allowances.seam", sew, brief.allowances.seam)
        yield from bases.objections(brief)
        yield from strips.objections(sew, brief.allowances)

    def pattern(self, brief: Brief) -> Pattern:
        """Return top, boxing, base template and dust cover, their seams walked."""
        sew = tops.sew_line(brief)
        joins = strips.joins(sew, brief.allowances)
        places = stations(sew, brief.allowances.notch_spacing, joins)
        top = tops.top(brief, sew, places, joins)
        boxing = strips.boxing(brief, sew, places, joins, self.drop)
        seams = (*_round_the_top(sew, places, boxing), *_joined_ends(boxing))
        pieces = (top, *boxing, bases.template(brief), bases.dust_cover(brief))
        order = tuple(steps.boxed(brief, pieces, joins))
        return Pattern(brief.outline, pieces, seams, fit(brief, sew, seams), order)


def _round_the_top(
    sew: Contour, places: tuple[Station, ...], boxing: tuple[Piece, ...]
) -> Iterator[Seam]:
    """Yield the seam of each panel of boxing with its part of the top."""
    for panel in boxing:
        edge = panel.edges["upper edge"]
        part = tops.part_of_edge(sew, places, edge.stations[0][0], edge.stations[-1][0])
        yield Seam(part, edge, "top seam")


def _joined_ends(boxing: tuple[Piece, ...]) -> Iterator[Seam]:
    """Yield the seam of each panel's far end with the near end of the next."""
    for panel, after in zip(boxing, (*boxing[1:], boxing[0]), strict=True):
        yield Seam(panel.edges["far end"], after.edges["near end"], "join")
