"""The knife-edge cushion: two equal faces sewn to each other, their corners drawn in."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, ClassVar

from patternmaker.covers.parts import cushions, fits, steps, tapers
from patternmaker.covers.parts.openings import Opening
from patternmaker.covers.registry import Cover, cover
from patternmaker.errors import Refusal
from patternmaker.facts import HAIR, LENGTH, both, choice, length
from patternmaker.geometry.halving import halved
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Pattern
from patternmaker.pattern.stations import stations
from patternmaker.pattern.stitching import BY_HAND
from patternmaker.pattern.sundries import zip_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Fit, Piece, Seam

ZIP, SLIP_STITCH = "zip", "slip stitch"
OPEN = 3 / 4  # of the back edge; common practice, no source


@cover("knife edge")
class KnifeEdge(Cover):
    """A loose cushion of two equal faces, filled to a puff, with an opening in its back seam.

    Only a sharp corner that turns outward, by 40 degrees or more, is drawn in; one that is rounded
    is left as it is, and is warned of if its radius is under 1 in. The cut is exact; the size of
    the filled cushion is a model: each face taken as an arc of a circle across its middle.
    """

    height: float = length(
        "thickness of the filled cushion in its middle",
        default=both(in_=4, mm=100), least=10, most=500,
    )  # fmt: skip
    taper: float = length(  # common practice, no source
        "how far each sharp corner is drawn in from both of its sides",
        default=both(in_=1 / 2, mm=12), most=80, required=False,
    )  # fmt: skip
    taper_over: float | None = length(
        "from which distance from the corner its sides are tapered; a quarter of each side, or as "
        "far as it is nearly straight, unless given", default=None, least=20, required=False,
    )  # fmt: skip
    opening: float | None = length(
        "length of the opening in the back seam; three quarters of the back edge unless given",
        default=None, least=75, required=False,
    )  # fmt: skip
    closed_by: str = choice("what closes the opening", (ZIP, SLIP_STITCH), default=ZIP)

    roles: ClassVar[tuple[str, ...]] = ("top", "bottom")

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this cushion from being drafted."""
        outline = brief.outline
        most = min(outline.width, outline.height) / 2
        if self.height > most:
            yield Refusal(
                "cover.height", "{value} is more than half the width or depth ({limit})",
                value=self.height, limit=most, show=LENGTH.show, mend="fill it less",
            )  # fmt: skip
        narrow = list(tapers.objections(outline, self.taper, self.taper_over))
        yield from narrow
        if narrow:
            return
        try:
            sew = self._sew_line(brief)
        except ValueError:  # the lines drawn in do not meet
            yield Refusal("cover.taper", "the corners lie too near each other to be drawn in so",
                          mend="make taper or taper_over smaller")  # fmt: skip
            return
        yield from cushions.objections(brief, sew)
        yield from self._opening(sew).objections()

    def pattern(self, brief: Brief) -> Pattern:
        """Return both faces, their seam walked."""
        sew = self._sew_line(brief)
        opening = self._opening(sew)
        places = stations(sew, brief.allowances.notch_spacing, opening.marks)
        pieces = cushions.faces(brief, sew, places)
        closing = "zip seam" if self.closed_by == ZIP else BY_HAND
        seams = (opening.sewn(places, "seam"), opening.closed(places, closing))
        order = tuple(self._steps(brief, pieces, seams))
        zips = (zip_of(seams[1].a.length),) if self.closed_by == ZIP else ()
        return Pattern(brief.outline, pieces, seams, self._fit(brief, sew, seams), order,
                       sundries=zips)  # fmt: skip

    def _sew_line(self, brief: Brief) -> Contour:
        return tapers.drawn_in(brief.outline, self.taper, self.taper_over)

    def _opening(self, sew: Contour) -> Opening:
        return Opening.of(sew, self.opening, OPEN)

    def _steps(
        self, brief: Brief, pieces: Sequence[Piece], seams: Sequence[Seam]
    ) -> Iterator[Note]:
        """Yield the whole order of work."""
        seam, opening = brief.allowances.seam, seams[1].a.length
        yield from steps.marking(pieces)
        yield from steps.clipping(pieces)
        if self.closed_by == ZIP:
            yield Note("Zip first: turn {} under on both faces from opening right to opening left, "
                       "sew the folds to the tape, and open the zip", (seam,))  # fmt: skip
        yield from steps.sewing(seams[:1], seam)
        yield Note("Lock both ends of the seam over {}: the opening between is {}",
                   (steps.LOCKED, opening))  # fmt: skip
        if tapers.sharp_corners(brief.outline, self.taper_over):
            yield Note("Trim the allowance across each corner, {} from its tip",
                       (steps.STAY,))  # fmt: skip
        closing = "Close the zip" if self.closed_by == ZIP else "Slip-stitch the opening"
        yield Note("Turn the cover, push the corners out, fill it to {} in the middle, the corners "
                   f"first. {closing}", (self.height,))  # fmt: skip

    def _fit(self, brief: Brief, sew: Contour, seams: tuple[Seam, ...]) -> Fit:
        """Return the report: the flat size, the filled one, the corners, the zip to buy."""
        width, depth = (filled(size, self.height) for size in (sew.width, sew.height))
        opening = seams[1].a.length
        says = (
            Note("Sewn flat {} by {}; filled to {} in the middle it shrinks to about {} by {} "
                 "(each face taken as an arc)",
                 (sew.width, sew.height, self.height, width, depth)),
            self._corners(brief),
            Note("Zip: {}, in the back seam", (opening,)) if self.closed_by == ZIP
            else Note("Opening {} in the back seam, slip-stitched", (opening,)),
        )  # fmt: skip
        return fits.loose(brief, seams, says, _hardly_rounded(brief))

    def _corners(self, brief: Brief) -> Note:
        corners = tapers.sharp_corners(brief.outline, self.taper_over)
        if not corners or not self.taper:
            return Note("No corner is drawn in")
        reaches = sorted(reach for each in corners for reach in (each.before, each.after))
        number = "1 corner" if len(corners) == 1 else f"{len(corners)} corners"
        over = "{}" if reaches[-1] - reaches[0] < HAIR else "{} to {}"
        return Note(f"{{}} drawn in by {{}}, tapered over the last {over} of each side",
                    (number, self.taper, *dict.fromkeys((reaches[0], reaches[-1]))))  # fmt: skip


def _hardly_rounded(brief: Brief) -> Iterator[Note]:
    """Yield which rounded corners are too tight to be left as they are."""
    if names := list(tapers.hardly_rounded(brief.outline)):
        yield Note("Rounded by less than {}, and so not drawn in: {}. They may dog-ear: leave them "
                   "sharp, or round them more",
                   (tapers.ROUND_ENOUGH, ", ".join(names)))  # fmt: skip


def filled(flat: float, height: float) -> float:
    """Return how wide a face that is ``flat`` mm wide lies once it is filled to a height.

    Its middle line is an arc as long as the face is wide, which rises by half the height: of half
    angle t, where (1 - cos t) / t = height / flat, and its chord is flat sin t / t.

    >>> round(filled(14.0564530, 4), 6)
    13.266499
    """
    _, half = halved(0.0, math.pi / 2, lambda half: (1 - math.cos(half)) / half < height / flat)
    return flat * math.sin(half) / half
