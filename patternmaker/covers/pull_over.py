"""The pull-over cover: top, sides and wrap in one piece, pulled over foam and board.

It is what slip seats have, that lift out of their chairs.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING, ClassVar

from patternmaker.covers.parts import bases, cornering, pulled, reliefs
from patternmaker.covers.parts.corners import BY_RADIUS, CUT_OUT, DART, PLEATS, WAYS, Wish, corners
from patternmaker.covers.parts.draped import ROLE, Draped, along_at
from patternmaker.covers.parts.fits import LEAST_WRAP
from patternmaker.covers.parts.tops import FOR_THE_PAPER, centre_cross, closing
from patternmaker.covers.registry import Cover, cover
from patternmaker.errors import Refusal
from patternmaker.facts import HAIR, LENGTH, both, choice, count, length
from patternmaker.geometry.halving import halved
from patternmaker.geometry.touching import encloses
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Edge, Guide, LineKind, Pattern, Piece
from patternmaker.pattern.stations import CARDINALS, DOUBLE_NOTCH_GAP, Station, notches_round
from patternmaker.pattern.sundries import board_of, foam_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.covers.parts.corners import Corner
    from patternmaker.covers.parts.reliefs import Inner
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Notch

LOWEST = 3.0  # mm; of a side
HALVINGS = 14  # of the search for the highest side that has room
FINE = 0.1  # mm; that height is told to this, rounded down


@cover("pull-over")
class PullOver(Cover):
    """A slip seat: one piece over foam and board, stapled underneath.

    A corner goes by its radius unless the job says how: to 1/4 in it is cut out and sewn; to 1 in,
    or half the side's height, it takes a dart; wider, pleats. What turns more gently than ten
    times the side's height is eased in. Common practice, no source.
    """

    foam: float = length(
        "height of the padding at its edge", default=both(in_=2, mm=50), least=LOWEST, most=150,
        required=False,
    )  # fmt: skip
    board: float = length(
        "thickness of the board", default=both(in_=1 / 2, mm=12), least=0, most=50, required=False
    )
    drop: float | None = length(
        "height of the side, from the top's edge to the board's lower edge; foam and board "
        "together unless given",
        default=None, least=LOWEST, most=200, required=False, unless=("foam", "board"),
    )  # fmt: skip
    corner: str = choice("what is done with the fullness at the corners", WAYS, default=BY_RADIUS)
    pleats: int = count("pleats in each corner; 0 goes by their depth", default=0, least=0, most=24)
    pleat_depth: float = length(
        "deepest that a pleat may be, where their number is not given",
        default=both(in_=1 / 2, mm=12), least=3, most=100, required=False,
    )  # fmt: skip

    roles: ClassVar[tuple[str, ...]] = (ROLE, "corner patch", "dust cover", "base template")

    @property
    def side(self) -> float:
        """The height of the side."""
        return self.foam + self.board if self.drop is None else self.drop

    @property
    def _height(self) -> str:
        """The field that sets the height of the side."""
        return "cover.foam" if self.drop is None else "cover.drop"

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this seat from being pulled over."""
        found = [*self._of_the_cover(brief), *bases.objections(brief)]
        yield from found
        if not found:
            try:
                yield from _cut_away(self.pattern(brief).pieces[0])
            except Refusal as mistake:
                yield mistake if mistake.field else self._too_high(brief, mistake)

    def _of_the_cover(self, brief: Brief) -> Iterator[Refusal]:
        draped = Draped.over(brief, self.side)
        shut = list(closing(self._height, brief.outline, self.side))
        yield from shut or closing("allowances.wrap", draped.board, draped.wrap)

    def _too_high(self, brief: Brief, mistake: Refusal) -> Refusal:
        """Return the refusal of a side that is too high, with the height that has room.

        The lowest side is eased in round all but the sharpest tips: it is taken to have room.
        """
        fits, _ = halved(LOWEST, self.side, lambda side: self._has_room(brief, side), HALVINGS)
        limit = math.floor(fits / FINE) * FINE
        return Refusal(
            self._height, f"{mistake.says}: the side is {{value}} high, the most that has room is "
            "{limit}",
            value=self.side, limit=limit, show=LENGTH.show, mend=mistake.mend,
        )  # fmt: skip

    def _has_room(self, brief: Brief, side: float) -> bool:
        try:
            replace(self, drop=side).pattern(brief)
        except Refusal:
            return False
        return True

    def pattern(self, brief: Brief) -> Pattern:
        """Return the cover, patches, base template and dust cover, the corner seams walked."""
        draped = Draped.over(brief, self.side)
        seam, material = brief.allowances.seam, brief.material(ROLE)
        found = corners(draped, Wish(self.corner, self.pleats, self.pleat_depth, seam))
        inner = reliefs.inner_bends(draped, min(material.gives_across, material.gives_along))
        seams = tuple(cornering.seams(found, ROLE))
        pieces = (
            self._piece(brief, draped, found, inner),
            *reliefs.patches(inner, draped, brief.material("corner patch")),
            bases.template(brief),
            bases.dust_cover(brief),
        )
        fit = pulled.fit(brief, draped, found, inner, seams)
        order = tuple(pulled.order(brief, pieces, found, inner))
        sundries = () if self.drop is not None else (
            foam_of(self.foam, brief.outline), board_of(self.board, brief.base),
        )  # fmt: skip
        return Pattern(brief.outline, pieces, seams, fit, order, sundries=sundries)

    def _piece(
        self, brief: Brief, draped: Draped, found: Sequence[Corner], inner: Sequence[Inner]
    ) -> Piece:
        allowances, material = brief.allowances, brief.material(ROLE)
        places = _centres(draped)
        notches = tuple(_notches(brief, draped, places, found, inner))
        seams = cornering.seams(found, ROLE)
        return Piece(
            ROLE,
            ROLE,
            material,
            cornering.cut_line(draped, found, allowances.seam),
            guides=(
                Guide(LineKind.FOLD, draped.fold, "top edge"),
                *cornering.board_lines(draped, found),
                *centre_cross(draped.fold),
                *cornering.lines(draped, found),
                *reliefs.lines(inner),
            ),
            notches=notches,
            edges={"edge": _edge(draped, places)}
            | {edge.name: edge for seam in seams for edge in (seam.a, seam.b)},
            finished=(brief.outline.width, brief.outline.height),
            lay=material.lay_flat,
            notes=tuple(self._notes(draped, found, notches, allowances.seam)),
        )

    def _notes(
        self, draped: Draped, found: Iterable[Corner], notches: Iterable[Notch], seam: float
    ) -> Iterator[Note]:
        told = "as measured" if self.drop is not None else "foam and board"
        yield Note("Inner fold line: the top's edge; outer: the board's lower edge, {} down ({})",
                   (self.side, told))  # fmt: skip
        yield Note("Beyond that {} turns under", (draped.wrap,))
        ways = {corner.how for corner in found}
        if CUT_OUT in ways:
            yield Note("Corners cut out with {} to sew", (seam,))
        if PLEATS in ways:
            yield Note("Pleats: fold at the arrow's tail, lay to its head")
        kept = {notch.name for notch in notches}
        if draped.wrap >= LEAST_WRAP and (gone := [name for name in CARDINALS if name not in kept]):
            yield Note("No notch at {}: what stands there marks the middle", (", ".join(gone),))
        if draped.across.rate != draped.along.rate:
            yield Note("Keep the arrow's way: the take-up differs by direction")
        yield FOR_THE_PAPER


def _centres(draped: Draped) -> tuple[Station, ...]:
    """Return the centre marks along the board's lower edge; the back is double."""
    return tuple(
        Station(name, along_at(draped.board, draped.edge_of(draped.outline.station(name))[1]),
                double=name == "back")
        for name in CARDINALS
    )  # fmt: skip


def _edge(draped: Draped, places: Sequence[Station]) -> Edge:
    """Return the line on the board's lower edge, all the way round from the back."""
    first, whole = places[0].at, draped.board.length
    ring = [(place.name, first + (place.at - first) % whole) for place in places]
    return Edge(ROLE, "edge", draped.board, (*ring, (places[0].name, first + whole)))


def _notches(
    brief: Brief, draped: Draped, places: Sequence[Station], found: Sequence[Corner],
    inner: Sequence[Inner],
) -> Iterator[Notch]:  # fmt: skip
    """Yield the centre marks on the cut edge, clear of what is cut or folded there.

    What stands there marks the place itself. A wrap too narrow to be stapled bears none: they
    would show on the side.
    """
    if draped.wrap < LEAST_WRAP:
        return
    depth = brief.allowances.notch_depth(brief.material(ROLE).known.notch)
    spans = [
        tuple(along_at(draped.cut, tip) for tip in wedge.tips)
        for corner in found for wedge in corner.wedges
    ]  # fmt: skip
    starts = (along_at(draped.cut, cut.segments[0].start) for each in inner for cut in each.cuts)
    spans += [(start, start) for start in starts]
    for notch in notches_round(draped.board, places, draped.wrap, depth):
        ats = [along_at(draped.cut, foot) for foot in notch.feet]
        if not any(_is_in(draped.cut.length, at, span) for at in ats for span in spans):
            yield notch


def _is_in(whole: float, at: float, span: tuple[float, ...]) -> bool:
    """Return whether a place on the cut line lies in a part of it, or close by."""
    begin, end = span
    past = (at - begin + DOUBLE_NOTCH_GAP) % whole
    return past <= (end - begin) % whole + 2 * DOUBLE_NOTCH_GAP


def _cut_away(cover: Piece) -> Iterator[Refusal]:
    """Yield that a corner's cut-out takes the wrap away beside a corner that turns inward."""
    cuts = (each for each in cover.guides if each.kind is LineKind.RELIEF)
    for guide in cuts:
        begins = guide.path.segments[0].start
        beside = cover.cut.segments[cover.cut.nearest(begins)].distance(begins)
        if beside > HAIR and not encloses(cover.cut, begins):
            yield Refusal(
                "cover.corner", f"a cut-out takes away the wrap beside {guide.name}, which turns "
                "inward: the side between is too short for it",
                mend=f'say corner = "{DART}" or "{PLEATS}", or make the side lower',
            )  # fmt: skip
            return
