"""The fluted cover: a top of parallel panels, each round over its padding, and boxing."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING, ClassVar

from patternmaker.covers.parts import bases, steps, strips, tops
from patternmaker.covers.parts.checks import seat_objections
from patternmaker.covers.parts.fits import fit
from patternmaker.covers.parts.flute import ACROSS, ALONG, arc_over
from patternmaker.covers.parts.flutes import Flutes
from patternmaker.covers.registry import Cover, cover
from patternmaker.errors import Refusal
from patternmaker.facts import COUNT, LENGTH, both, choice, count, length
from patternmaker.pattern.notes import UNTOLD, Note
from patternmaker.pattern.piece import Pattern, Seam
from patternmaker.pattern.stations import stations

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Piece

AREA_KEPT = 1e-6  # of the top; slices that have less or more between them have missed a crossing
STEEPEST = 1 / 4  # of a seam's length, by which it may stand out


@cover("fluted")
class Fluted(Cover):
    """A top of panels sewn side by side, padded so that each rises between its seams, and boxing.

    Each panel is widened by what its arc is longer than its chord. The model: in the middle of a
    seam both panels stand out by half of that each, along an arc that comes back to the flat width
    at both ends, as the gores of a ball do; so the edge of the whole top is as long as a flat
    one's, and nothing is eased into the boxing. The first and the last panel have a seam, and so a
    half of it, on one side only. To taper the panels is common practice, no source; the lengths
    that follow are exact.
    """

    drop: float = length(
        "from the top's seam down to the lower edge of the base",
        default=both(in_=3, mm=75), least=10, most=600,
    )  # fmt: skip
    panels: int = count("how many panels from side to side", default=5, least=2, most=40)
    roll: float = length(
        "how far each panel rises in the middle, over its seams",
        default=both(in_=1 / 4, mm=6), most=100,
    )  # fmt: skip
    run: str = choice("which way the panels run", (ALONG, ACROSS), default=ALONG)

    roles: ClassVar[tuple[str, ...]] = ("top", "boxing", "dust cover", "base template")

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this seat from being fluted."""
        flutes = self._flutes(brief)
        wrong = [*seat_objections(brief, self.drop), *self._too_narrow(brief, flutes)]
        wrong = wrong or [*tops.closing("allowances.seam", flutes.sew, brief.allowances.seam)]
        wrong = wrong or [*self._badly_cut(brief, flutes)]
        if wrong:
            yield from wrong
            return
        yield from bases.objections(brief)
        yield from strips.objections(flutes.sew, brief.allowances)

    def _flutes(self, brief: Brief) -> Flutes:
        return Flutes(brief, self.panels, self.roll, self.run)

    def _too_narrow(self, brief: Brief, flutes: Flutes) -> Iterator[Refusal]:
        """Yield that the panels have no room for their allowances, or for their roll."""
        whole, seam = flutes.chord * self.panels, brief.allowances.seam
        if flutes.chord < 2 * seam:
            yield Refusal(
                "cover.panels", "{value} would each be narrower than its two seam allowances; "
                "there is room for {limit}",
                value=self.panels, limit=math.floor(whole / (2 * seam)), show=COUNT.show,
                mend="make fewer, or the seam allowance narrower",
            )  # fmt: skip
        if self.roll > flutes.chord / 2:
            yield Refusal(
                "cover.roll", "{value} is more than half the width of a panel ({limit})",
                value=self.roll, limit=flutes.chord / 2, show=LENGTH.show,
                mend="roll less, or make fewer panels",
            )  # fmt: skip

    def _badly_cut(self, brief: Brief, flutes: Flutes) -> Iterator[Refusal]:
        """Yield a panel that is a sliver, that its allowance closes up, or whose seam is short."""
        area, seam = flutes.sew.area, brief.allowances.seam
        narrow = min(min(c.width, c.height) for c in (each.contour for each in flutes.slices))
        kept = math.fsum(each.contour.area for each in flutes.slices)
        if abs(kept - area) > AREA_KEPT * area or narrow < seam:
            yield Refusal(
                "cover.panels", "{value} leave a sliver narrower than the seam allowance ({limit})",
                value=f"{self.panels} panels", limit=seam,
                show=lambda fact, unit: fact if isinstance(fact, str) else LENGTH.show(fact, unit),
                mend="choose another number of panels",
            )  # fmt: skip
            return
        shortest = min(link.path.length for each in flutes.slices for link in each.links)
        if flutes.bulge > STEEPEST * shortest:
            yield Refusal(
                "cover.roll", "it widens a panel by {value} at a seam that is only {limit} long",
                value=flutes.bulge, limit=shortest, show=LENGTH.show,
                mend="roll less, or make fewer panels",
            )  # fmt: skip
            return
        for panel in flutes.panels:
            yield from tops.closing("allowances.seam", panel.sew, seam)

    def pattern(self, brief: Brief) -> Pattern:
        """Return panels, boxing, base template and dust cover, their seams walked."""
        flutes = self._flutes(brief)
        sew = flutes.sew
        joins = strips.joins(sew, brief.allowances)
        places = stations(sew, brief.allowances.notch_spacing, flutes.kept(joins))
        panels = flutes.pieces(places, joins)
        boxing = strips.boxing(brief, sew, places, joins, self.drop)
        edges = [strip.edges["upper edge"] for strip in boxing]
        inner = tuple(flutes.seams())
        seams = (*inner, *flutes.edge_seams(places, edges), *_joined_ends(boxing))
        pieces = (*panels, *boxing, bases.template(brief), bases.dust_cover(brief))
        report = fit(brief, sew, seams)
        report = replace(report, says=(*report.says, *_says(flutes)))
        ring = tops.part_of_edge(sew, places, places[0].name, places[0].name)
        round_ = steps.Round("boxing", ring, [name for name, _ in joins], brief.allowances)
        order = _steps(brief, pieces, inner, round_)
        return Pattern(brief.outline, pieces, seams, report, tuple(order))


def _joined_ends(boxing: Sequence[Piece]) -> Iterator[Seam]:
    """Yield the seam of each strip's far end with the near end of the next."""
    for strip, after in zip(boxing, (*boxing[1:], boxing[0]), strict=True):
        yield Seam(strip.edges["far end"], after.edges["near end"], "join")


def _says(flutes: Flutes) -> Iterator[Note]:
    """Yield what the fit report tells besides."""
    chord, roll = flutes.chord, flutes.roll
    if not roll:
        yield Note("{} panels of {}, flat", (str(flutes.count), chord))
        return
    if 2 * flutes.bulge < UNTOLD:
        yield Note("{} panels of {} from seam to seam: over a roll of {} they are as good as flat",
                   (str(flutes.count), chord, roll))  # fmt: skip
        return
    yield Note("{} panels of {} from seam to seam, {} over a roll of {}: each is {} wider in its "
               "middle, half of it at each seam, and tapers to the flat width at its ends",
               (str(flutes.count), chord, arc_over(chord, roll), roll, 2 * flutes.bulge),
               )  # fmt: skip
    yield Note("The first and the last panel are widened at their one seam only; nothing is eased "
               "into the boxing")  # fmt: skip


def _steps(
    brief: Brief, pieces: Sequence[Piece], inner: Sequence[Seam], ring: steps.Round
) -> Iterator[Note]:
    """Yield the order of work: the panels into a top, and then as any boxed seat."""
    yield from steps.marking(pieces)
    yield from steps.clipping(pieces)
    turned = Note("Turn the allowances of every panel seam the same way")
    yield from steps.ahead((*steps.sewing(inner, brief.allowances.seam), turned))
    yield from ring.joined()
    yield from ring.sewn()
    yield from ring.closed()
    yield from steps.topstitching("boxing", brief.allowances)
    yield from steps.stapling_on(brief)
