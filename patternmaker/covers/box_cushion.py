"""The box cushion: two faces with boxing between them, closed by a zip round the back."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, ClassVar

from patternmaker.covers.parts import boxes, cushions, fits, joining, padding, steps, zips
from patternmaker.covers.parts.boxes import FAR, NEAR, Box
from patternmaker.covers.parts.facing import Run, facing
from patternmaker.covers.parts.rings import Ring
from patternmaker.covers.parts.zips import ZipStrip
from patternmaker.covers.registry import Cover, cover
from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH, both, length
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Pattern
from patternmaker.pattern.stations import stations
from patternmaker.pattern.sundries import foam_of, zip_of
from patternmaker.units import MM_PER_INCH

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Fit, Piece, Seam

LEAST_BACK = MM_PER_INCH * 3  # of a back edge that takes a zip; common practice, no source
BEGINS, ENDS = "right zip join", "left zip join"  # of the zip boxing, anticlockwise


@cover("box cushion")
class BoxCushion(Cover):
    """A loose cushion: top, bottom, boxing as high as its foam, and a zip round the back.

    Nothing is taken up; the foam is cut larger instead. The zip runs along the back edge and on
    round both its ends. The back edge is the run of the seam that faces back, as far as it slants
    by no more than 45 degrees: to a sharp corner, to the middle of a rounded one, round a quarter
    of a circle. All is exact.
    """

    height: float = length(
        "thickness of the foam, which is the height of the finished boxing",
        default=both(in_=4, mm=100), least=25, most=300,
    )  # fmt: skip
    zip_return: float = length(  # "back edge + 8 in", cushion instructions
        "how far the zip runs on along each side, past the back edge",
        default=both(in_=4, mm=100), most=400, required=False,
    )  # fmt: skip
    zip_turning: float = length(  # "half the cut boxing width + 3/4 in", cushion instructions
        "turned under along the zip, on each of its two strips",
        default=both(in_=3 / 4, mm=20), least=6, most=50, required=False,
    )  # fmt: skip
    zip_lap: float = length(  # common practice, no source
        "how far the boxing laps over the end of the zip",
        default=both(in_=1, mm=25), most=100, required=False,
    )  # fmt: skip
    foam_oversize: float = length(  # "1/4 each side", Good Old Boat
        "how far the foam is cut beyond the cover on each side",
        default=both(in_=1 / 4, mm=6), most=50, required=False,
    )  # fmt: skip

    roles: ClassVar[tuple[str, ...]] = ("top", "bottom", "boxing", "zip boxing", "foam template")

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this cushion from being drafted."""
        sew, allowances = brief.outline, brief.allowances
        yield from cushions.objections(brief, sew)
        yield from joining.left_open(allowances, sew.length)
        yield from cushions.foam_objections(sew, self.foam_oversize)
        room = self.height / 2 + allowances.upper_edge
        if self.zip_turning > room:
            yield Refusal(
                "cover.zip_turning", "{value} is more than half the height with its seam "
                "allowance ({limit})", value=self.zip_turning, limit=room, show=LENGTH.show,
                mend="turn less under",
            )  # fmt: skip
        yield from self._of_the_zip(brief)

    def _of_the_zip(self, brief: Brief) -> Iterator[Refusal]:
        """Yield what keeps the zip boxing and the boxing from sharing the seam."""
        back = facing(brief.outline, "back").length
        if back < LEAST_BACK:
            yield Refusal(
                "outline", "faces back for only {value}, and a zip needs a back edge of {limit}",
                value=back, limit=LEAST_BACK, show=LENGTH.show,
                mend="turn the shape, so that a side of it lies at the back",
            )  # fmt: skip
            return
        most = (brief.outline.length - back - boxes.SHORTEST) / 2
        if self.zip_return > most:
            yield Refusal(
                "cover.zip_return", "{value} makes the zip longer than the boxing has room for "
                "({limit})", value=self.zip_return, limit=max(0.0, most), show=LENGTH.show,
                mend="let the zip run less far along the sides",
            )  # fmt: skip
            return
        yield from self._too_short_a_strip(brief, back + 2 * self.zip_return)

    def _too_short_a_strip(self, brief: Brief, zipped: float) -> Iterator[Refusal]:
        """Yield that the longest strip that the material gives is too short."""
        allowances = brief.allowances
        if (longest := allowances.boxing_longest) is None:
            return
        least = max(
            zipped + 2 * allowances.join, boxes.beside(allowances, self.zip_lap) + boxes.SHORTEST
        )
        if longest < least - 1e-9:
            yield Refusal(
                "allowances.boxing_longest", "{value} is less than the zip boxing takes, which is "
                "whole ({limit})", value=longest, limit=least, show=LENGTH.show,
                mend="find a longer strip, or let the zip run less far along the sides",
            )  # fmt: skip

    def zipped(self, brief: Brief) -> Run:
        """Return the run of the seam that the zip boxing covers."""
        return facing(brief.outline, "back").longer(self.zip_return)

    def pattern(self, brief: Brief) -> Pattern:
        """Return top, bottom, boxing, zip boxing and foam template, their seams walked."""
        ring, joins = self._ring(brief)
        flat = cushions.faces(brief, ring.sew, ring.places, ring.marks)
        boxing = self._boxing(ring, joins)
        zipped = ring.stretch(BEGINS, ENDS)
        strips = [ZipStrip(zipped, face, self.zip_turning) for face in ("top", "bottom")]
        seams = tuple(_walked(boxing, *strips))
        foam = padding.foam_template(brief.outline, self.foam_oversize, self.height)
        walls = (*(panel.piece for panel in boxing), *(strip.piece for strip in strips))
        pieces = (*flat, *walls, foam)
        order = tuple(self._steps(ring, pieces, joins))
        zip_ = zip_of(zipped.length + 2 * brief.allowances.join)
        return Pattern(brief.outline, pieces, seams, self._fit(brief, walls, seams), order,
                       sundries=(zip_, foam_of(self.height, foam.cut)))  # fmt: skip

    def _ring(self, brief: Brief) -> tuple[Ring, Sequence[str]]:
        """Return the seam with its stations, and the names of the boxing's joins in order."""
        sew, allowances, zipped = brief.outline, brief.allowances, self.zipped(brief)
        begin = zipped.begin + sew.length
        joins = boxes.joins_between((ENDS, zipped.end), (BEGINS, begin), allowances, self.zip_lap)
        places = stations(sew, allowances.notch_spacing, joins)
        marks = joining.sewing_places(sew.length, ((BEGINS, begin),), allowances)
        return Ring(brief, sew, places, self.height, marks), [name for name, _ in joins]

    def _boxing(self, ring: Ring, joins: Sequence[str]) -> tuple[Box, ...]:
        """Return the panels of the boxing from the zip's left end round the front."""
        row = list(boxes.row(ring, joins, self.zip_lap))
        row[0] = replace(row[0], zips=(NEAR,))
        row[-1] = replace(row[-1], zips=(*row[-1].zips, FAR))
        return tuple(row)

    def _steps(self, ring: Ring, pieces: Sequence[Piece], joins: Sequence[str]) -> Iterator[Note]:
        """Yield the whole order of work."""
        last = (joins[-1], *joins[:-1])
        allowances = ring.allowances
        top = steps.Round("boxing", pieces[0].edges["edge"], last, allowances)
        sewn = replace(allowances, sewing_open=0.0)
        bottom = steps.Round("boxing", pieces[1].edges["edge"], last, sewn)
        yield from steps.marking(pieces)
        yield from steps.clipping(pieces)
        yield Note("Turn {} under along the zip edge of each zip strip, and sew the folds to the "
                   "tape so that they meet on the middle of the zip, back to back",
                   (self.zip_turning,))  # fmt: skip
        if self.zip_lap:
            yield Note("Fold the right end of the boxing at its lap fold and back at the "
                       "{}: {} of it lies double over the end of the zip",
                       (BEGINS, self.zip_lap))  # fmt: skip
        yield from top.joined()
        yield from top.sewn()
        yield from top.closed()
        yield Note("Open the zip by a hand's width")
        yield from bottom.sewn()
        yield from _filling(self.foam_oversize)

    def _fit(self, brief: Brief, walls: Sequence[Piece], seams: tuple[Seam, ...]) -> Fit:
        """Return the report: the sizes, the zip to buy, the foam."""
        zipped, join = self.zipped(brief).length, brief.allowances.join
        outline, over = brief.outline, 2 * self.foam_oversize
        says = (
            Note("Finished {} by {} by {}", (outline.width, outline.height, self.height)),
            Note("Zip: back edge {}, and {} on each side: {} from join to join; from the roll cut "
                 "{}, both ends caught in the joins",
                 (zipped - 2 * self.zip_return, self.zip_return, zipped, zipped + 2 * join)),
            Note("Foam {} by {} by {}: {} larger on every side",
                 (outline.width + over, outline.height + over, self.height, self.foam_oversize)),
        )  # fmt: skip
        warnings = []
        if zipped < outline.width - 1e-9:
            warnings.append(Note("The zip ({}) is shorter than the cushion is wide ({}): the foam "
                                 "must be folded to go in", (zipped, outline.width)))  # fmt: skip
        return fits.loose(brief, seams, says, (*warnings, *fits.long_strips(brief, walls)))


def _walked(boxing: Sequence[Box], top: ZipStrip, bottom: ZipStrip) -> Iterator[Seam]:
    """Yield every seam in the order of sewing: the ring of the boxing, then round both faces."""
    yield zips.zip_seam(top, bottom)
    yield from boxes.joined(boxing)
    near, far = boxing[0].piece.edges[NEAR], boxing[-1].piece.edges[FAR]
    yield from zips.end_seams(top, bottom, near, far)
    upper, lower = boxes.round_both(boxing)
    yield from (*upper, top.sewn(), *lower, bottom.sewn())


def _filling(oversize: float) -> Iterator[Note]:
    yield Note("Turn the cover through the zip, corners out. Cut the foam {} larger on every side, "
               "by the foam template; fold it in, its edges into the seams, and close the zip",
               (oversize,))  # fmt: skip
