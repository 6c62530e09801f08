"""The waterfall cover: the top runs on over the front edge, without a seam, and hangs down."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, ClassVar

from patternmaker.covers.parts import bases, steps, strips, tops
from patternmaker.covers.parts.checks import seat_objections
from patternmaker.covers.parts.falls import Fall
from patternmaker.covers.parts.fits import fit
from patternmaker.covers.parts.fronts import Front
from patternmaker.covers.registry import Cover, cover
from patternmaker.facts import both, length
from patternmaker.pattern.notes import UNTOLD, Note
from patternmaker.pattern.piece import Pattern

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.errors import Refusal
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Piece, Seam


@cover("waterfall")
class Waterfall(Cover):
    """A flat top that runs on over a straight front edge in one piece with the front boxing.

    The front is bent over a sharp edge and hangs straight down; where it rolls round a half-round
    nose and back underneath, it is a bull-nose. Side and back boxing are sewn to the other edges
    of the top, and to both ends of the fall.
    """

    drop: float = length(
        "from the top's seam down to the lower edge of the base, at the front too",
        default=both(in_=3, mm=75), least=10, most=600,
    )  # fmt: skip

    roles: ClassVar[tuple[str, ...]] = ("top", "boxing", "dust cover", "base template")

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this seat from getting a waterfall front."""
        if wrong := list(seat_objections(brief, self.drop)):
            yield from wrong
            return
        fall = Fall(brief, self.drop)
        for front in (Front.of(brief.outline), fall.front):
            if wrong := list(front.objections("a waterfall")):
                yield from wrong
                return
        yield from tops.closing("allowances.seam", fall.sew, brief.allowances.seam)
        yield from bases.objections(brief)
        yield from strips.objections(fall.sew, replace(brief.allowances, boxing_longest=None))
        yield from fall.objections()

    def pattern(self, brief: Brief) -> Pattern:
        """Return top with fall, boxing, base template and dust cover, their seams walked."""
        fall = Fall(brief, self.drop)
        left, right = fall.boxing
        seams = tuple(fall.seams())
        pieces = (fall.top(), *left, *right, bases.template(brief), bases.dust_cover(brief))
        report = fit(brief, fall.sew, seams, fall.take_ups)
        report = replace(report, says=(*report.says, *_says(fall)))
        return Pattern(brief.outline, pieces, seams, report, tuple(_steps(fall, pieces, seams)))


def _says(fall: Fall) -> Iterator[Note]:
    """Yield what the fit report tells besides."""
    depth, drop = fall.brief.outline.height, fall.drop
    yield Note("Along, the tight part is depth and fall, {} + {} = {}: nothing is taken up of the "
               "wrap-under", (depth, drop, depth + drop))  # fmt: skip
    if (eased := drop - fall.fall) > UNTOLD:
        yield Note("The boxing is plain: the fall is stretched by {} along each corner seam",
                   (eased,))  # fmt: skip


def _steps(fall: Fall, pieces: Sequence[Piece], seams: Sequence[Seam]) -> Iterator[Note]:
    """Yield the order of work: the join at the back is closed last, as on any boxing."""
    brief, allowances = fall.brief, fall.brief.allowances
    last = fall.boxing[1][-1].name
    joins = [seam for seam in seams if seam.name == "join"]
    yield from steps.marking(pieces)
    yield from steps.clipping(pieces)
    yield from steps.sewing([s for s in joins if s.a.piece != last], allowances.join)
    yield from steps.sewing([s for s in seams if s.name == "top seam"], allowances.seam)
    yield from _closing(fall, [s for s in joins if s.a.piece == last])
    yield Note("Begin each corner seam exactly at the corner of the top, needle down; end it on "
               "the lower edge of the wrap-under")  # fmt: skip
    yield from steps.sewing([s for s in seams if s.name == "corner seam"], allowances.join)
    yield from steps.topstitching("boxing", allowances)
    yield from steps.stapling_on(brief)


def _closing(fall: Fall, joins: Sequence[Seam]) -> Iterator[Note]:
    """Yield how the join at the back is closed, and the top seam sewn home beside it."""
    allowances = fall.brief.allowances
    unsewn = allowances.open_at(fall.sew.length)
    if unsewn:
        yield Note("Both of these end {} short of the back join, at the start and the stop mark",
                   (unsewn,))  # fmt: skip
    yield from steps.Round("boxing", joins[0].a, ("back",), allowances).trimmed()
    yield from steps.sewing(joins, allowances.join)
    if unsewn:
        yield Note("Sew home the {} of the top seam left open at the back", (2 * unsewn,))
