"""The bull-nose cushion: its top rolls round a half-round front edge, and is its bottom too."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar, TypeAlias

from patternmaker.covers.parts import cushions, fits, padding, steps, tops, zips
from patternmaker.covers.parts.boxes import FAR, LOWER, NEAR, UPPER, Box
from patternmaker.covers.parts.noses import Nose
from patternmaker.covers.parts.zips import SEAM_EDGE, ZipStrip
from patternmaker.covers.registry import Cover, cover
from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH, both, length, switch
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Pattern, Seam
from patternmaker.pattern.sundries import foam_of, zip_of
from patternmaker.units import MM_PER_INCH

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Edge, Fit, Piece
    from patternmaker.pattern.sundries import Sundry

LEAST_FLAT = MM_PER_INCH  # of a side behind the nose; common practice, no source
LEAST_BACK = MM_PER_INCH * 3  # of a back that is opened to fill it; common practice, no source
OPEN = 3 / 4  # of the bottom seam, where there is no zip; common practice, no source

Sewn: TypeAlias = "tuple[tuple[Seam, ...], tuple[Seam, ...]]"
"""The seams of the ends of the boxing behind, and those of its edges."""


@cover("bull-nose")
class BullNose(Cover):
    """A loose cushion whose front edge is half round: one piece rolls round it from top to bottom.

    A gusset with a round end closes each side; a waterfall, in contrast, bends over a sharp front
    edge and hangs straight down, to be stapled. Behind, the boxing takes a zip, or is closed by
    hand. Nothing is taken up; the foam is cut larger instead.
    """

    height: float = length(
        "thickness of the foam, whose front edge is rounded over half of it",
        default=both(in_=3, mm=75), least=20, most=300,
    )  # fmt: skip
    zip: bool = switch("a zip across the back", default=True)
    zip_turning: float = length(  # "half the cut boxing width + 3/4 in", cushion instructions
        "turned under along the zip, on each of its two strips",
        default=both(in_=3 / 4, mm=20), least=6, most=50, required=False,
    )  # fmt: skip
    foam_oversize: float = length(  # "1/4 each side", Good Old Boat
        "how far the foam is cut beyond the cover on each side",
        default=both(in_=1 / 4, mm=6), most=50, required=False,
    )  # fmt: skip

    roles: ClassVar[tuple[str, ...]] = ("top", "gusset", "boxing", "zip boxing", "foam template")

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this cushion from having a bull-nose."""
        nose, allowances = Nose(brief, self.height, self.zip), brief.allowances
        wrong = [*cushions.objections(brief, brief.outline)]
        wrong += [*cushions.foam_objections(brief.outline, self.foam_oversize)]
        wrong = wrong or [*nose.front.objections("a bull-nose")] or [*self._sides(nose)]
        if wrong:
            yield from wrong
            return
        yield from tops.closing("allowances.seam", nose.sew, allowances.seam)
        room = self.height / 2 + allowances.seam
        if self.zip and self.zip_turning > room:
            yield Refusal(
                "cover.zip_turning", "{value} is more than half the height with its seam "
                "allowance ({limit})", value=self.zip_turning, limit=room, show=LENGTH.show,
                mend="turn less under",
            )  # fmt: skip
        least = nose.back.length + 2 * allowances.join
        if (longest := allowances.boxing_longest) is not None and longest < least - 1e-9:
            yield Refusal(
                "allowances.boxing_longest", "{value} is less than the boxing across the back "
                "takes, which is whole ({limit})", value=longest, limit=least, show=LENGTH.show,
                mend="find a longer strip",
            )  # fmt: skip

    def _sides(self, nose: Nose) -> Iterator[Refusal]:
        """Yield that the gussets have no straight sides, or the boxing no back."""
        least = self.height / 2 + LEAST_FLAT
        if (straight := min(nose.front.sides)) < least:
            yield Refusal(
                "outline", "its sides run straight back, square from sharp front corners, over "
                "{value} only; a bull-nose of this height takes {limit}",
                value=straight, limit=least, show=LENGTH.show,
                mend="make the front corners sharp and square or the cushion thinner, or choose "
                "another cover",
            )  # fmt: skip
        elif nose.back.length < LEAST_BACK:
            yield Refusal(
                "outline", "its back is only {value} long between the sides, and a cushion needs "
                "{limit} to be filled by",
                value=nose.back.length, limit=LEAST_BACK, show=LENGTH.show,
                mend="choose another cover",
            )  # fmt: skip

    def pattern(self, brief: Brief) -> Pattern:
        """Return the piece in one, gussets, boxing and foam template, their seams walked."""
        nose = Nose(brief, self.height, self.zip)
        gussets = nose.gusset(right=False), nose.gusset(right=True)
        walls, (ends, edges) = self._zipped(nose) if self.zip else self._plain(nose)
        seams = (*ends, *nose.gusset_seams(), *edges)
        foam = padding.foam_template(brief.outline, self.foam_oversize, self.height)
        pieces = (nose.top(), *gussets, *walls, foam)
        return Pattern(brief.outline, pieces, seams, self._fit(nose, walls, seams),
                       tuple(self._steps(brief, pieces, seams)),
                       sundries=tuple(self._sundries(nose, foam)))  # fmt: skip

    def _sundries(self, nose: Nose, foam: Piece) -> Iterator[Sundry]:
        if self.zip:
            yield zip_of(nose.back.length + 2 * nose.brief.allowances.join)
        yield foam_of(self.height, foam.cut)

    def _zipped(self, nose: Nose) -> tuple[tuple[Piece, ...], Sewn]:
        """Return the two strips of the zip boxing, and the seams of its ends and of its edges."""
        top, bottom = (ZipStrip(nose.back, face, self.zip_turning) for face in ("top", "bottom"))
        upper, lower = top.piece, bottom.piece
        ends = (zips.zip_seam(top, bottom), *zips.end_seams(top, bottom, *nose.ends()))
        edges = upper.edges[SEAM_EDGE].backward, lower.edges[SEAM_EDGE]
        return (upper, lower), (ends, tuple(_back_seams(nose, *edges)))

    def _plain(self, nose: Nose) -> tuple[tuple[Piece, ...], Sewn]:
        """Return the boxing across the back, and the seams of its ends and of its edges."""
        piece = Box(nose.back, "boxing").piece
        left, right = nose.ends()
        ends = (
            Seam(piece.edges[FAR].backward, left, "join"),
            Seam(right.backward, piece.edges[NEAR], "join"),
        )
        edges = piece.edges[UPPER].backward, piece.edges[LOWER]
        return (piece,), (ends, tuple(_back_seams(nose, *edges)))

    def _fit(self, nose: Nose, walls: Sequence[Piece], seams: tuple[Seam, ...]) -> Fit:
        """Return the report: the sizes, the zip, the foam."""
        brief, over = nose.brief, 2 * self.foam_oversize
        outline, back = brief.outline, nose.back.length
        says = [
            Note("Finished {} by {} by {}", (outline.width, outline.height, self.height)),
            Note("The nose is half round, radius {}: {} of the top roll round it",
                 (self.height / 2, nose.nose)),
            Note("Foam {} by {} by {}, its front edge rounded to a radius of {}",
                 (outline.width + over, outline.height + over, self.height, self.height / 2)),
        ]  # fmt: skip
        if self.zip:
            says.append(Note("Zip across the back: {} from join to join; from the roll cut {}",
                             (back, back + 2 * brief.allowances.join)))  # fmt: skip
        return fits.loose(brief, seams, says, fits.long_strips(brief, walls))

    def _steps(
        self, brief: Brief, pieces: Sequence[Piece], seams: Sequence[Seam]
    ) -> Iterator[Note]:
        """Yield the whole order of work."""
        allowances = brief.allowances
        by_name = {name: [s for s in seams if s.name == name] for name in dict.fromkeys(
                   seam.name for seam in seams)}  # fmt: skip
        yield from steps.marking(pieces)
        yield from steps.clipping(pieces)
        if self.zip:
            yield Note("Turn {} under along the zip edge of each zip strip, and sew the folds to "
                       "the tape so that they meet on the middle of the zip",
                       (self.zip_turning,))  # fmt: skip
        yield from steps.sewing(by_name["join"], allowances.join)
        yield Note("Pin each gusset to its side at 3 o'clock first, then at 12 and 6; sew from 3 "
                   "o'clock both ways")  # fmt: skip
        for name in ("gusset seam", "back seam"):
            yield from steps.sewing(by_name[name], allowances.seam)
        if self.zip:
            yield Note("Open the zip by a hand's width")
        yield from steps.sewing(by_name["bottom seam"], allowances.seam)
        if not self.zip:
            yield Note("Of the bottom seam leave {} open in its middle, and lock both ends",
                       (OPEN * by_name["bottom seam"][0].a.length,))  # fmt: skip
        opening = "the zip" if self.zip else "the opening"
        yield Note(f"Turn the cover through {opening}. Round the front edge of the foam over half "
                   "its thickness, {} larger on every side, and fill the cover nose first",
                   (self.foam_oversize,))  # fmt: skip
        if not self.zip:
            yield Note("Close the opening by hand")


def _back_seams(nose: Nose, upper: Edge, lower: Edge) -> Iterator[Seam]:
    """Yield the seams of the boxing behind with the top and the bottom, from right to left."""
    edges = nose.edges()
    yield Seam(edges["back edge"], upper, "back seam")
    yield Seam(edges["bottom edge"], lower, "bottom seam")
