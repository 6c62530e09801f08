"""The domed cover: a top that rises to a crown, and an upright strip sewn round it."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any, ClassVar

from patternmaker.covers.parts import bases, crowns, steps, strips, tops
from patternmaker.covers.parts.blanks import darted, eased, reach, shortest, surplus
from patternmaker.covers.parts.caps import DARTS, GORES, Domed
from patternmaker.covers.parts.checks import seat_objections
from patternmaker.covers.parts.fits import fit
from patternmaker.covers.parts.gored import gored
from patternmaker.covers.registry import Cover, cover
from patternmaker.errors import Refusal
from patternmaker.facts import COUNT, LENGTH, both, choice, count, length
from patternmaker.pattern.notes import Note, Share
from patternmaker.pattern.piece import Fit, Pattern, Seam

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternmaker.covers.parts.caps import Cap
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Piece

EASED = "eased"
LEAST_PART = 40.0  # mm of seam from one dart or gore seam to the next; common practice, no source
AT_BACK = {EASED: "the double notch at the back", DARTS: "the dart at the back",
           GORES: "the gore seam at the back"}  # fmt: skip
APART = 10.0  # mm between the tips of darts; common practice, no source


@cover("domed")
class DomedTop(Cover):
    """A top that rises to a crown over the middle, sewn to boxing.

    Over a circle it is a part of a ball. It is cut as one flat blank, whose edge is longer than
    the seam and is eased in or taken out by darts, or from gores that meet at the crown.
    """

    crown: float = length(
        "how high the middle stands over the seam", default=both(in_=1, mm=25), least=3, most=250
    )
    drop: float = length(
        "from the top's seam down to the lower edge of the base",
        default=both(in_=3, mm=75), least=10, most=600,
    )  # fmt: skip
    made: str = choice("how the top gets its shape", (EASED, DARTS, GORES), default=EASED)
    count: int = count("how many darts or gores", default=8, least=3, most=36)
    dart: float | None = length(
        "from the seam in to the tip of a dart; two thirds of the way unless given",
        default=None, least=20, required=False,
    )  # fmt: skip

    roles: ClassVar[tuple[str, ...]] = ("top", "boxing", "dust cover", "base template")

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        """Yield a dart's depth for a top that has none."""
        if values["dart"] is not None and values["made"] != DARTS:
            yield Refusal("dart", "is given, but the top is not made with darts",
                          mend=f'leave it away, or say made = "{DARTS}"')  # fmt: skip

    def plan(self, taped: Contour, taken: str) -> Contour:
        """Return the outline in plan: narrower than measured, if that was over the crown."""
        return crowns.flat(taped, self.crown) if taken == crowns.OVER else taped

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this seat from getting a domed top."""
        over = brief.taken == crowns.OVER
        seat = crowns.in_plan(brief, self.crown)
        if wrong := [
            *seat_objections(seat, self.drop),
            *(crowns.too_high_for_tape(brief.taped, self.crown) if over else ()),
            *crowns.objections(seat.outline, self.crown, brief.allowances.seam),
            *bases.objections(brief),
        ]:
            yield from wrong
            return
        domed = self._domed(seat)
        yield from strips.objections(domed.dome.seam, brief.allowances)
        yield from tops.closing("allowances.seam", domed.dome.seam, brief.allowances.seam)
        yield from self._objections(domed)

    def _objections(self, domed: Domed) -> Iterator[Refusal]:
        """Yield whatever keeps darts or gores from being cut."""
        whole, made = domed.dome.seam.length, self.made
        if made != EASED and self.count > whole / LEAST_PART:
            yield Refusal(
                "cover.count", f"{{value}} {made} stand less than 40 mm apart (at most {{limit}})",
                value=self.count, limit=math.floor(whole / LEAST_PART), show=COUNT.show,
                mend="make fewer",
            )  # fmt: skip
            return
        if made == DARTS and (wrong := list(self._run_past(domed))):
            yield from wrong
            return
        try:
            self._cap(domed)
        except Refusal as mistake:
            yield mistake.about("cover.count" if made == GORES else "cover.made")

    def _run_past(self, domed: Domed) -> Iterator[Refusal]:
        """Yield that darts would run past each other, or past the crown."""
        limit = shortest(domed) - APART * self.count / math.tau
        if reach(domed, self.dart) > limit:
            yield Refusal(
                "cover.dart", "{value} lets the darts run past each other ({limit} at most)",
                value=reach(domed, self.dart), limit=limit, show=LENGTH.show,
                mend="make them shorter, or fewer",
            )  # fmt: skip

    def pattern(self, brief: Brief) -> Pattern:
        """Return the top's pieces, boxing, base template and dust cover, their seams walked."""
        seat = crowns.in_plan(brief, self.crown)
        domed = self._domed(seat)
        cap = self._cap(domed)
        boxing = strips.boxing(seat, domed.dome.seam, domed.places, domed.joins, self.drop)
        seams = (*cap.seams, *cap.round_it(domed.places, boxing), *_joined_ends(boxing))
        pieces = (*cap.pieces, *boxing, bases.template(seat), bases.dust_cover(seat))
        report = self._fit(brief, domed, seams)
        return Pattern(seat.outline, pieces, seams, report, tuple(_steps(domed, pieces, cap)))

    def _domed(self, seat: Brief) -> Domed:
        across, along = crowns.take_ups(seat, self.crown)
        dome = crowns.sewn(seat, self.crown)
        return Domed(
            seat, dome, strips.joins(dome.seam, seat.allowances), self.made, self.count,
            math.sqrt(across.scale * along.scale), (across.finished, along.finished),
        )  # fmt: skip

    def _cap(self, domed: Domed) -> Cap:
        if self.made == GORES:
            return gored(domed)
        return darted(domed, self.dart) if self.made == DARTS else eased(domed)

    def _fit(self, brief: Brief, domed: Domed, seams: tuple[Seam, ...]) -> Fit:
        """Return the report of a flat top, with what a dome has besides."""
        ups = crowns.take_ups(domed.brief, self.crown)
        report = fit(domed.brief, domed.dome.seam, seams, ups)
        says = (*crowns.says(brief, domed.brief, self.crown), *crowns.retold(report.says))
        return Fit(
            report.stretch_round,
            (*says, *_surplus(domed)),
            (*report.warnings, *_too_much(domed)),
        )


def _surplus(domed: Domed) -> Iterator[Note]:
    """Yield what the blank's edge has too much, and where it goes."""
    more, share = surplus(domed)
    if domed.made == GORES:
        yield Note(f"{domed.count} gores: sides, bases and the line down the middle of each are as "
                   "long as on the dome; between them the cloth shears")  # fmt: skip
        return
    goes = "worked in" if domed.made == EASED else f"taken out by {domed.count} darts"
    yield Note(f"The flat blank's edge has {{}} ({{}}) more than its seam: {goes}",
               (more, Share(share)))  # fmt: skip


def _too_much(domed: Domed) -> Iterator[Note]:
    """Yield that more is to be worked in than the material bears."""
    more, share = surplus(domed)
    takes = domed.material.known.takes_in
    if domed.made == EASED and share > takes:
        yield Note(
            "{} ({}) is to be worked in round the top, and {} takes in no more than {}: have it "
            'made with darts or gores (made = "gores"), or the crown lower',
            (more, Share(share), domed.material.title, Share(takes)),
        )


def _joined_ends(boxing: tuple[Piece, ...]) -> Iterator[Seam]:
    """Yield the seam of each panel's far end with the near end of the next."""
    for panel, after in zip(boxing, (*boxing[1:], boxing[0]), strict=True):
        yield Seam(panel.edges["far end"], after.edges["near end"], "join")


def _steps(domed: Domed, pieces: tuple[Piece, ...], cap: Cap) -> Iterator[Note]:
    """Yield the order of work: the dome first, then the boxing round it."""
    allowances = domed.brief.allowances
    names = [name for name, _ in domed.joins]
    seam = steps.Round("boxing", domed.ring, names, allowances, AT_BACK[domed.made])
    yield from steps.marking(pieces)
    yield from steps.ahead(_shaping(domed, cap))
    yield from steps.clipping(pieces)
    yield from seam.joined()
    yield from seam.sewn()
    if domed.made == EASED:
        yield Note("Work in the {} that the top has more, evenly from notch to notch",
                   (surplus(domed)[0],))  # fmt: skip
    yield from seam.closed()
    yield from steps.topstitching("boxing", allowances)
    yield from steps.stapling_on(domed.brief)


def _shaping(domed: Domed, cap: Cap) -> Iterator[Note]:
    """Yield how darts are sewn, or gores."""
    if domed.made == DARTS:
        yield Note(
            "Fold each dart show sides together, slit on slit, leg on leg. Sew from the edge "
            "to the tip and run out there; trim to {} where it is wider",
            (domed.seam,),
        )
    if domed.made == GORES:
        longest = max(seam.a.length for seam in cap.seams)
        halves = "in two halves, then both halves in one seam over the crown"
        order = halves if domed.count % 2 == 0 else "one to the next, the last to the first"
        yield Note(f"Gore seams: {{}} long at most, at {{}}, from the base to the crown, show "
                   f"sides together, notch to notch: {order}", (longest, domed.seam))  # fmt: skip
        yield Note("Press each gore seam open; where all meet, trim the points, and cover the "
                   "crown with a button if you like")  # fmt: skip
