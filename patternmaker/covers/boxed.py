"""The boxed cover: a top, and a side wall sewn round it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, ClassVar

from patternmaker.covers.parts import bases, checks, sloping, steps, strips, tops
from patternmaker.covers.parts.fits import fit
from patternmaker.covers.parts.forms import Form
from patternmaker.covers.parts.sloping import Bending
from patternmaker.covers.parts.walls import Wall
from patternmaker.covers.registry import Cover, cover
from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH, both, choice, length, rows
from patternmaker.pattern.piece import Pattern, Seam
from patternmaker.pattern.stations import stations
from patternmaker.pattern.sundries import board_of, foam_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Piece
    from patternmaker.pattern.stations import Station
    from patternmaker.pattern.sundries import Sundry

LEAST = 10.0  # mm of drop
UPRIGHT, TO_BASE = "upright", "to the base"


@cover("boxed")
class Boxed(Cover):
    """A top sewn to boxing that is pulled down and stapled under the base.

    The top may slope from front to back and be bent one way. It and the side wall are laid flat
    exactly; only a wall that flares under a top that is not level is the strip which sews to both
    of its edges.
    """

    drop: float = length(
        "from the top's seam down to the lower edge of the base; at the front, if the top slopes",
        default=both(in_=3, mm=75), least=LEAST, most=600, unless=("foam", "drops"),
    )  # fmt: skip
    drop_back: float | None = length(
        "the same at the back, if the top slopes", default=None, least=LEAST, most=600,
        required=False,
    )  # fmt: skip
    foam: float | None = length(
        "height of the padding; with board it gives the drop", default=None,
        least=5, most=500, required=False,
    )  # fmt: skip
    board: float | None = length(
        "thickness of the base", default=None, least=1, most=100, required=False
    )
    bent: str = choice("which way the top is bent", (sloping.NOT, sloping.ALONG, sloping.ACROSS),
                       default=sloping.NOT)  # fmt: skip
    bend: str = choice("whether its middle lies low or stands high", (sloping.DISH, sloping.CROWN),
                       default=sloping.DISH)  # fmt: skip
    bend_depth: float | None = length(
        "from the ends of the bend down, or up, to its middle", default=None, most=400,
        required=False,
    )  # fmt: skip
    bend_radius: float | None = length(
        "radius of the bend, if that is what was measured", default=None, above=0, most=20_000,
        required=False,
    )  # fmt: skip
    drops: sloping.Rows = rows(
        "or the drop at some distances: from the back, or from the left, each with the drop there",
        ("distance", "drop"), default=None,
    )  # fmt: skip
    walls: str = choice("how the boxing runs down", (UPRIGHT, TO_BASE), default=UPRIGHT)

    roles: ClassVar[tuple[str, ...]] = ("top", "boxing", "dust cover", "base template")

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        """Yield which measurements do not go together."""
        for one, other in (("foam", "board"), ("board", "foam")):
            if values[one] is not None and values[other] is None:
                yield Refusal(one, f"is given without {other}", mend=f"give {other} too")
        if values["drops"] and values["foam"] is not None:
            yield Refusal("foam", "is given beside drops", mend="give one of the two")
        if values["drops"] and values["bent"] == sloping.ALONG and values["drop_back"] is not None:
            yield Refusal("drop_back", "is given beside drops, of which the first is the one at "
                          "the back", mend="give one of the two")  # fmt: skip
        yield from _bending(values).misfits()

    @property
    def bending(self) -> Bending:
        """How the top slopes and bends."""
        return _bending(vars(self))

    def form(self, brief: Brief) -> Form:
        """Return the form of a seat's top."""
        return Form(brief, self.bending.over(brief.outline))

    def wall(self, form: Form) -> Wall:
        """Return the side wall under a top.

        Raises:
            Refusal: if the base does not follow the seam.
        """
        if self.walls == UPRIGHT and form.bend.is_level:
            return Wall.upright(form.sew, form.bend.level)
        return Wall.under(form, form.brief.base if self.walls == TO_BASE else None)

    def objections(self, brief: Brief) -> Iterator[Refusal]:
        """Yield whatever keeps this seat from being boxed."""
        first = [*checks.wider_than_half(brief), *self.bending.objections(brief.outline)]
        yield from first
        yield from bases.objections(brief)
        if not first:
            yield from self._of_the_wall(self.form(brief))

    def _of_the_wall(self, form: Form) -> Iterator[Refusal]:
        """Yield what keeps the top and the wall under it from being drafted."""
        if form.is_too_steep:
            yield Refusal("cover.drop_back", "the top is too steep for its take-up",
                          mend="take up less, or measure the drops again")  # fmt: skip
            return
        allowances = form.brief.allowances
        try:
            wall = self.wall(form)
            least, _ = wall.drops
            yield from _too_low(least)
            yield from checks.below_the_drop(form.brief, max(least, LEAST))
            yield from tops.closing("allowances.seam", form.sew, allowances.seam)
            in_the_way = list(strips.objections(form.sew, allowances))
            yield from in_the_way
            is_bent = self.walls == TO_BASE or not form.bend.is_level
            if is_bent and least > 0 and not in_the_way:
                strips.boxing(form.brief, form.sew, (), strips.joins(form.sew, allowances), wall)
        except Refusal as mistake:
            yield mistake if mistake.field else mistake.about(_too_wide(mistake, allowances))

    def pattern(self, brief: Brief) -> Pattern:
        """Return top, boxing, base template and dust cover, their seams walked."""
        form = self.form(brief)
        wall, sew = self.wall(form), form.sew
        joins = strips.joins(sew, brief.allowances)
        places = stations(sew, brief.allowances.notch_spacing, joins)
        top = tops.top(brief, sew, places, joins, form.take_ups)
        boxing = strips.boxing(brief, sew, places, joins, wall)
        seams = (*_round_the_top(sew, places, boxing), *_joined_ends(boxing))
        pieces = (top, *boxing, bases.template(brief), bases.dust_cover(brief))
        return Pattern(
            brief.outline, pieces, seams, fit(brief, sew, seams, form=form, wall=wall),
            steps=tuple(steps.boxed(brief, pieces, joins)), sundries=tuple(self._sundries(brief)),
        )  # fmt: skip

    def _sundries(self, brief: Brief) -> Iterator[Sundry]:
        if self.foam is not None and self.board is not None:
            yield foam_of(self.foam, brief.outline)
            yield board_of(self.board, brief.base)


def _bending(values: Mapping[str, Any]) -> Bending:
    """Return how the top of a boxed cover slopes and bends; foam and board set its drop, or drops.

    Drops from left to right are taken at the front, where the first of them is the drop.
    """
    foam, board, drops = values["foam"], values["board"], values["drops"]
    drop = values["drop"] if foam is None or board is None else foam + board
    drop = drops[0][1] if drops else drop
    back = drop if values["drop_back"] is None else values["drop_back"]
    return Bending(values["bent"], values["bend"], values["bend_depth"], values["bend_radius"],
                   drops, drop, back)  # fmt: skip


def _too_low(least: float) -> Iterator[Refusal]:
    """Yield that the wall is too low somewhere."""
    if least < LEAST - 1e-9:
        yield Refusal(
            "cover.drop", "the top comes within {value} of the base's lower edge, nearer than "
            "{limit}", value=max(0.0, least), limit=LEAST, show=LENGTH.show,
            mend="make the bend shallower or the drop larger",
        )  # fmt: skip


def _too_wide(mistake: Refusal, allowances: Allowances) -> str:
    """Return which allowance a bent panel has no room for, by its width: the wrap, if none."""
    widths = (("topstitch", allowances.topstitch_at), ("seam", allowances.upper_edge))
    named = next((name for name, width in widths if mistake.value == width), "wrap")
    return f"allowances.{named}"


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
