"""The loose pad: two faces, thin or with a narrow boxing, tied to its chair."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any, ClassVar

from patternmaker.covers.parts import boxes, cushions, fits, joining, padding, steps
from patternmaker.covers.parts.facing import facing
from patternmaker.covers.parts.openings import LEFT, RIGHT, Opening
from patternmaker.covers.parts.rings import Ring
from patternmaker.covers.parts.ties import Ties
from patternmaker.covers.registry import Cover, cover
from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH, both, count, length
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Pattern
from patternmaker.pattern.stations import stations
from patternmaker.pattern.stitching import BY_HAND
from patternmaker.pattern.sundries import foam_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from patternmaker.covers.parts.cushions import Marks
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Fit, Piece, Seam

# Common practice, no source.
LEAST_BOXING = 10.0  # mm of height; a lower one is left out
OPEN = 1 / 2  # of the back edge
CLEAR = 20.0  # mm between the opening and a tie


@cover("loose pad")
class LoosePad(Cover):
    """A pad held by ties, turned through an opening in its back seam that is sewn up by hand.

    Of no height, its two faces are sewn to each other; else a narrow boxing goes between them, and
    ties and opening are in the seam of the bottom. Nothing is taken up. All is exact.
    """

    height: float = length(
        "height of the boxing; 0 for two faces sewn to each other",
        default=both(mm=0), most=150, required=False,
    )  # fmt: skip
    pairs: int = count("pairs of ties: 2 at the back, or 4, at the front too",
                       default=2, least=2, most=4)  # fmt: skip
    tie_width: float = length(
        "finished width of a tie", default=both(in_=3 / 4, mm=20), least=6, most=80,
        required=False,
    )  # fmt: skip
    tie_length: float = length(
        "finished length of a tie, from the seam", default=both(in_=10, mm=250), least=50,
        most=1000, required=False,
    )  # fmt: skip
    tie_inset: float = length(
        "from each end of the back edge, or the front, in to the tie",
        default=both(in_=1, mm=25), most=300, required=False,
    )  # fmt: skip
    opening: float | None = length(
        "length of the opening in the back seam; half of the back edge unless given",
        default=None, least=75, required=False,
    )  # fmt: skip
    foam_oversize: float = length(  # "1/4 each side", Good Old Boat
        "how far the foam is cut beyond the cover on each side, if there is boxing",
        default=both(in_=1 / 4, mm=6), most=50, required=False,
    )  # fmt: skip

    roles: ClassVar[tuple[str, ...]] = ("top", "bottom", "boxing", "tie", "foam template")

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        """Yield a boxing too low to be sewn, and pairs that no two edges share."""
        if 0 < values["height"] < LEAST_BOXING:
            yield Refusal(
                "height", "{value} is less than a boxing takes ({limit})",
                value=values["height"], limit=LEAST_BOXING, show=LENGTH.show,
                mend="make it higher, or 0",
            )  # fmt: skip
        if values["pairs"] == 3:
            yield Refusal("pairs", "{value} is neither 2 nor 4", value=3, mend="say 2 or 4")

    @property
    def ties(self) -> Ties:
        """Its ties."""
        return Ties(self.pairs, self.tie_width, self.tie_length, self.tie_inset)

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this pad from being drafted."""
        sew, allowances = brief.outline, brief.allowances
        yield from cushions.objections(brief, sew)
        no_ties = list(self.ties.objections(sew))
        yield from no_ties
        if not no_ties:
            yield from self._reaches_the_ties(brief)
        if not self.height:
            return
        yield from joining.left_open(allowances, sew.length)
        yield from cushions.foam_objections(sew, self.foam_oversize)
        longest, least = allowances.boxing_longest, boxes.beside(allowances) + boxes.SHORTEST
        if longest is not None and longest < least:
            yield Refusal(
                "allowances.boxing_longest", "{value} is less than a panel of boxing takes "
                "({limit})", value=longest, limit=least, show=LENGTH.show,
                mend="find a longer strip",
            )  # fmt: skip

    def _reaches_the_ties(self, brief: Brief) -> Iterator[Refusal]:
        """Yield that the opening is longer than there is room between the ties."""
        most = self._between_ties(brief)
        if self.opening is not None and self.opening > most:
            yield Refusal(
                "cover.opening", "{value} reaches the ties at the back ({limit})",
                value=self.opening, limit=most, show=LENGTH.show,
                mend="leave less open, or set the ties in less",
            )  # fmt: skip

    def _between_ties(self, brief: Brief) -> float:
        """Return the longest opening that stays clear of the ties at the back."""
        return facing(brief.outline, "back").longer(-self.tie_inset - CLEAR).length

    def _opening(self, brief: Brief) -> Opening:
        opening = Opening.of(brief.outline, self.opening, OPEN)
        return replace(opening, length=min(opening.length, self._between_ties(brief)))

    def pattern(self, brief: Brief) -> Pattern:
        """Return both faces, ties, and boxing and the foam's template where it has a height."""
        sew, opening = brief.outline, self._opening(brief)
        joins = _joins(brief) if self.height else ()
        inner = joins[1:-1]  # the first and the last are the back
        marks = (*inner, *opening.marks, *self.ties.marks(sew))
        places = stations(sew, brief.allowances.notch_spacing, marks)
        if not self.height:
            pieces = (*cushions.faces(brief, sew, places), self.ties.piece(brief))
            seams = opening.sewn(places, "seam"), opening.closed(places, BY_HAND)
            order = self._face_to_face(brief, pieces, seams[:1])
            return Pattern(sew, pieces, seams, self._fit(brief, opening, seams), tuple(order))
        marks = joining.sewing_places(sew.length, joins, brief.allowances)
        ring = Ring(brief, sew, places, self.height, marks)
        return self._boxed(ring, opening, [name for name, _ in joins])

    def _boxed(self, ring: Ring, opening: Opening, joins: Sequence[str]) -> Pattern:
        """Return the pattern of a pad with boxing, which is joined at the back."""
        brief = ring.brief
        panels = boxes.row(ring, joins)
        walls = tuple(panel.piece for panel in panels)
        flat = cushions.faces(brief, ring.sew, ring.places, ring.marks)
        foam = padding.foam_template(ring.sew, self.foam_oversize, self.height)
        pieces = (*flat, *walls, self.ties.piece(brief), foam)
        upper, lower = boxes.round_both(panels)
        seams = (*boxes.joined((*panels, panels[0])), *upper, *lower)
        fit = self._fit(brief, opening, seams, fits.long_strips(brief, walls))
        order = tuple(self._round_the_box(ring, opening, pieces, joins))
        foams = (foam_of(self.height, foam.cut),)
        return Pattern(ring.sew, pieces, seams, fit, order, sundries=foams)

    def _face_to_face(
        self, brief: Brief, pieces: Sequence[Piece], seams: Sequence[Seam]
    ) -> Iterator[Note]:
        """Yield the order of work of a pad without boxing."""
        yield from steps.marking(pieces)
        yield from steps.clipping(pieces)
        yield from self.ties.steps(brief.allowances.seam)
        yield from steps.sewing(seams, brief.allowances.seam)
        yield from _turning("the filling")

    def _round_the_box(
        self, ring: Ring, opening: Opening, pieces: Sequence[Piece], joins: Sequence[str]
    ) -> Iterator[Note]:
        """Yield the order of work of a pad with boxing."""
        allowances = ring.allowances
        top = steps.Round("boxing", pieces[0].edges["edge"], joins[:-1], allowances)
        yield from steps.marking(pieces)
        yield from steps.clipping(pieces)
        yield from self.ties.steps(allowances.seam)
        yield from (*top.joined(), *top.sewn(), *top.closed())
        yield Note("Lay the boxing to the bottom, show sides together, each notch to its like; sew "
                   "at {} from {} by left, front and right to {}: {} at the back stays open",
                   (allowances.seam, LEFT, RIGHT, opening.length))  # fmt: skip
        yield Note("Cut the foam {} larger on every side, by the foam template",
                   (self.foam_oversize,))  # fmt: skip
        yield from _turning("the foam")

    def _fit(
        self,
        brief: Brief,
        opening: Opening,
        seams: tuple[Seam, ...],
        warnings: Iterable[Note] = (),
    ) -> Fit:
        """Return the report: the sizes, the ties, the opening."""
        says = (*self._sizes(brief.outline), self.ties.note(brief.allowances.seam),
                Note("Opening {} in the back seam, slip-stitched", (opening.length,)))  # fmt: skip
        return fits.loose(brief, seams, says, warnings)

    def _sizes(self, sew: Contour) -> Iterator[Note]:
        if not self.height:
            yield Note("Finished {} by {}, sewn flat: what fills it makes it smaller",
                       (sew.width, sew.height))  # fmt: skip
            return
        over = 2 * self.foam_oversize
        yield Note("Finished {} by {} by {}", (sew.width, sew.height, self.height))
        yield Note("Foam {} by {} by {}: {} larger on every side",
                   (sew.width + over, sew.height + over, self.height,
                    self.foam_oversize))  # fmt: skip


def _joins(brief: Brief) -> Marks:
    """Return the joins of a boxing that begins and ends at the back."""
    return boxes.joins_between(("back", 0.0), ("back", brief.outline.length), brief.allowances)


def _turning(what: str) -> Iterator[Note]:
    yield Note("Lock both ends of the seam over {}; keep the free ends of the ties out of it",
               (steps.LOCKED,))  # fmt: skip
    yield Note(f"Turn the cover through the opening, push the corners out, put {what} in, and "
               "slip-stitch the opening")  # fmt: skip
