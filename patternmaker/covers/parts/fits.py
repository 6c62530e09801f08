"""The fit report of a boxed seat: what was measured, what is taken up, how far edges stretch."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.covers.parts.tops import TakeUp, take_ups
from patternmaker.covers.parts.walls import fullness
from patternmaker.facts import HAIR
from patternmaker.pattern.brief import TAKEN
from patternmaker.pattern.notes import UNTOLD, Note, Share
from patternmaker.pattern.piece import Fit
from patternmaker.units import MM_PER_INCH, show_rate

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.covers.parts.forms import Form
    from patternmaker.covers.parts.walls import Wall
    from patternmaker.geometry.contour import Contour
    from patternmaker.materials import Material
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Piece, Seam

TAPE = 0.01  # of a length; a smaller difference is the tape; common practice, no source

USED = "; {} of that is taken up ({}), the rest is left for whoever sits on it"
USUAL = " (common practice; use sets another share)"
FAR_INSIDE = MM_PER_INCH  # of a base; common practice, no source
LEAST_WRAP = MM_PER_INCH / 2  # that a row of staples holds; common practice, no source


def fit(
    brief: Brief,
    sew: Contour,
    seams: tuple[Seam, ...],
    taken: tuple[TakeUp, TakeUp] | None = None,
    form: Form | None = None,
    wall: Wall | None = None,
) -> Fit:
    """Return the report of a seat whose top is sewn along ``sew``.

    Args:
        brief: the seat.
        sew: the sew line of its top.
        seams: every seam, walked.
        taken: its take-up across and along, where it is not that of a flat top.
        form: how the top slopes and bends, where it does.
        wall: the wall that its boxing covers.
    """
    ups = taken or (form.take_ups if form else take_ups(brief))
    stretch_round = (form.seam if form else brief.outline.length) / sew.length
    stretches = tuple(_stretches(brief, ups, stretch_round))
    says = (
        *brief.remarks,
        Note(TAKEN[brief.taken]),
        *_tested(brief, "top", "boxing"),
        *_taken_up(brief, ups),
        *(stretch.note for stretch in stretches if stretch.needed > 5e-5),
        *_tape_agrees(brief),
        *(_walls(brief, form, wall) if form and wall else ()),
        _walked(seams),
    )
    warnings = (
        *_tape(brief),
        *(_base(brief) if wall is None or wall.below is None else ()),
        *_wrap(brief),
        *_unused_take_up(brief),
        *_long_strip(brief, seams),
        *_rounded_loose(ups),
        *(stretch.warning for stretch in stretches if stretch.is_too_far),
    )
    return Fit(stretch_round, says, warnings)


def _tested(brief: Brief, *roles: str) -> Iterator[Note]:
    """Yield what each stretch test found, and the share of it that the first role takes up."""
    top, *others = (brief.material(role) for role in roles)
    for material in dict.fromkeys((top, *others)):
        for way, test in material.tests:
            says = "Stretch test of {}: a mark of {} pulled to {}{} gives {}"
            found = (material.title, test.mark, test.pulled_to, way, show_rate(test.give))
            if material is not top or brief.taken == "old cover":
                yield Note(says, found)
            else:
                taken = show_rate(material.used), show_rate(test.give * material.used)
                usual = "" if material.use is not None else USUAL
                yield Note(says + USED + usual, (*found, *taken))


def measured(brief: Brief, role: str, flat: str = TAKEN["flat"]) -> Iterator[Note]:
    """Yield how the seat and the stretch of its pulled piece were measured.

    Args:
        brief: the seat.
        role: the role of the piece that is pulled.
        flat: what a flat measure implies.
    """
    yield from brief.remarks
    yield Note(flat if brief.taken == "flat" else TAKEN[brief.taken])
    yield from _tested(brief, role)
    yield from _tape_agrees(brief)


def cautions(brief: Brief, role: str) -> Iterator[Note]:
    """Yield what looks wrong with the measurements, whatever ``role`` the pulled piece has."""
    yield from _tape(brief)
    yield from _base(brief)
    yield from _unused_take_up(brief, role)


def stretches(
    brief: Brief, piece: str, role: str, across: float, along: float
) -> Iterator[tuple[Note, bool]]:
    """Yield how far a piece must stretch each way, and whether its material gives less.

    Args:
        brief: the seat.
        piece: what to call the piece.
        role: the role that it plays.
        across: what it is cut to from left to right, as a share of its width on the seat.
        along: the same from front to back.
    """
    material = brief.material(role)
    for way, scale, gives in (
        ("from left to right", across, material.gives_across),
        ("from front to back", along, material.gives_along),
    ):
        each = _Stretch(f"{piece}, {way},", material, 1 / scale - 1, gives)
        if each.is_too_far:
            yield each.warning, True
        elif each.needed > 5e-5:
            yield each.note, False


def _taken_up(brief: Brief, ups: tuple[TakeUp, TakeUp]) -> Iterator[Note]:
    across, along = ups
    title = brief.material("top").title
    if across.rate == along.rate == 0:
        yield Note("No take-up in the top ({})", (title,))
    elif across == along:
        yield from _taken_one_way("Top", across)
    else:
        yield from (*_taken_one_way("Top across", across), *_taken_one_way("Top along", along))
    if across.step:
        yield Note("Cut sizes rounded to the nearest {}: the take-up comes to {} across, {} along",
                   (across.step, Share(across.on_cut), Share(along.on_cut)))  # fmt: skip


def _taken_one_way(which: str, each: TakeUp) -> Iterator[Note]:
    yield Note(
        "{}: take-up {}, cut {} instead of {}; {} of the finished width",
        (which, Share(each.rate), each.cut, each.finished + 2 * each.allowance,
         Share(each.on_finished)),
    )  # fmt: skip


@dataclass(frozen=True)
class _Stretch:
    """How far an edge must stretch to go on, against what its material gives that way."""

    edge: str
    material: Material
    needed: float
    gives: float

    @property
    def is_too_far(self) -> bool:
        return self.needed > self.gives + 1e-9

    @property
    def note(self) -> Note:
        return Note("{} stretches {} to go on; {} gives {} that way", self._values)

    @property
    def warning(self) -> Note:
        return Note(
            "{} must stretch {} to go on, but {} gives only {} that way: "
            "take up less, or cover it in what gives more", self._values
        )  # fmt: skip

    @property
    def _values(self) -> tuple[str, Share, str, Share]:
        return self.edge, Share(self.needed), self.material.title, Share(self.gives)


def _stretches(
    brief: Brief, ups: tuple[TakeUp, TakeUp], stretch_round: float
) -> Iterator[_Stretch]:
    across, along = ups
    top, boxing = brief.material("top"), brief.material("boxing")
    yield _Stretch("Top, from left to right,", top, 1 / across.scale - 1, top.gives_across)
    yield _Stretch("Top, from front to back,", top, 1 / along.scale - 1, top.gives_along)
    runs_along = boxing.known.boxing_runs_along
    gives = boxing.gives_along if runs_along else boxing.gives_across
    yield _Stretch("Boxing, round the seat,", boxing, stretch_round - 1, gives)


def _rounded_loose(ups: tuple[TakeUp, TakeUp]) -> Iterator[Note]:
    """Yield that rounding the cut size has left the top with little of its take-up."""
    for way, each in zip(("across", "along"), ups, strict=True):
        if each.step and each.on_cut < each.rate / 2 - 1e-9:
            yield Note(
                "Rounded to the nearest {}, the top is taken up by {} {} instead of {}: it may lie "
                "loose", (each.step, Share(each.on_cut), way, Share(each.rate))
            )  # fmt: skip


def _differs(brief: Brief) -> float:
    """Return by how much a tape round the seam passes what the measured width gives."""
    return 0.0 if brief.measured_round is None else brief.measured_round / brief.taped.length - 1


def _tape_agrees(brief: Brief) -> Iterator[Note]:
    """Yield what came of the tape round the seam, where no warning says it."""
    differs = abs(_differs(brief))
    if brief.measured_round is None or differs >= TAPE:
        return
    if not brief.trusts_round:
        yield Note("The tape round the seam ({}) agrees with the measured width within {}",
                   (brief.measured_round, Share(differs)))  # fmt: skip
    else:
        yield Note("The tape round the seam ({}) sets the width: {} instead of {}",
                   (brief.measured_round, brief.outline.width, brief.taped.width))  # fmt: skip


def _unused_take_up(brief: Brief, role: str = "top") -> Iterator[Note]:
    """Yield that a take-up which the job gives is not used, since an old cover has had its own."""
    top = brief.material("top")
    given = any((top.take_up, top.take_up_across, top.take_up_along)) or top.tests
    if brief.taken == "old cover" and given:
        yield Note("Measured on the old cover, the {} gets none of the take-up that you give",
                   (role,))  # fmt: skip


def _wrap(brief: Brief) -> Iterator[Note]:
    """Yield that little is left to be stapled."""
    if brief.allowances.wrap < LEAST_WRAP:
        yield Note("A wrap-under of {} leaves little to staple", (brief.allowances.wrap,))


def _long_strip(brief: Brief, seams: tuple[Seam, ...]) -> Iterator[Note]:
    """Yield that the boxing is longer than its material usually gives in one strip."""
    allowances, material = brief.allowances, brief.material("boxing")
    sewn = [seam.b for seam in seams if seam.name == "top seam"]
    panels = {edge.piece for edge in sewn}
    longest = max(
        (sum(edge.length for edge in sewn if edge.piece == panel) for panel in panels), default=0.0
    )
    strip = longest + 2 * allowances.join + allowances.boxing_spare
    if allowances.boxing_longest is None and strip > material.longest_strip:
        yield Note("The boxing takes a strip of {}, and {} seldom gives more than {}: say what "
                   "it gives (boxing_longest), to have it in panels",
                   (strip, material.title, material.longest_strip))  # fmt: skip


def _base(brief: Brief) -> Iterator[Note]:
    """Yield that the base is too large for the boxing that is pulled down round it."""
    if brief.base.length > brief.outline.length + HAIR:
        yield Note("The base is {} round, more than the seat at its seam ({}): check both",
                   (brief.base.length, brief.outline.length))  # fmt: skip
    elif brief.base.width > brief.outline.width + HAIR or brief.base.height > (
        brief.outline.height + HAIR
    ):
        yield Note("The base is {} by {}, larger one way than the seat at its seam: check both",
                   (brief.base.width, brief.base.height))  # fmt: skip
    inside = (brief.outline.width - brief.base.width) / 2
    if inside > FAR_INSIDE:
        yield Note("The base stands {} inside the seam: check its measurements", (inside,))


def _tape(brief: Brief) -> Iterator[Note]:
    """Yield what a tape round the seam says against the measured width, if it says anything."""
    differs = _differs(brief)
    if brief.measured_round is None or abs(differs) < TAPE:
        return
    implied = brief.taped.width * (1 + differs)
    won = (
        "that width was used"
        if brief.trusts_round
        else "the measured width was used; measure both again, "
        'or let the tape win (trust = "round")'
    )
    yield Note(
        "The tape round the seam ({}) disagrees with the measured width ({}) by {}: it implies a "
        "width of {}; " + won,
        (brief.measured_round, brief.taped.width, Share(abs(differs)), implied),
    )  # fmt: skip


def _walls(brief: Brief, form: Form, wall: Wall) -> Iterator[Note]:
    """Yield how the top and the wall run, and how the wall's lower edge goes round the base."""
    least, most = wall.drops
    if not form.bend.is_level:
        yield Note("The top is laid flat along its slope or bend: drop {} to {} round the seam",
                   (least, most))  # fmt: skip
    if wall.below is not None and not form.bend.is_level:
        yield Note("The boxing flares under a top that is not level: both its edges keep their "
                   "lengths, the leather between them gives a little")  # fmt: skip
    yield from _lower_edge(brief, wall)
    if full := fullness(brief.base, brief.allowances.wrap):
        yield Note("Turned under, the wrap is {} fuller round the base's bends than the line it "
                   "comes to: pleat it there, or cut notches out of it", (full,))  # fmt: skip


def _lower_edge(brief: Brief, wall: Wall) -> Iterator[Note]:
    edge = wall.lower_length
    if edge < brief.base.length - HAIR:
        yield Note("The boxing's lower edge is {}, the base {} round: it stretches {} to go on",
                   (edge, brief.base.length, Share(brief.base.length / edge - 1)))  # fmt: skip
    elif edge > brief.base.length + UNTOLD:
        yield Note("The boxing's lower edge is {}, the base {} round: {} to be worked in",
                   (edge, brief.base.length, max(0.0, edge - brief.base.length)))  # fmt: skip


def _walked(seams: tuple[Seam, ...]) -> Note:
    spans = sum(len(seam.spans) for seam in seams)
    worst = max(HAIR, *(seam.worst for seam in seams))
    return Note("Seams walked: each of {} spans meets within {} mm", (str(spans), f"{worst:.3f}"))


def loose(
    brief: Brief,
    seams: tuple[Seam, ...],
    says: Iterable[Note] = (),
    warnings: Iterable[Note] = (),
) -> Fit:
    """Return the report of a loose cover, which nothing stretches; its own lines come first."""
    report = (
        *brief.remarks,
        Note(TAKEN[brief.taken]),
        *says,
        Note("No take-up: a loose cover is not pulled down"),
        *_tape_agrees(brief),
        _walked(seams),
    )
    return Fit(1.0, report, (*warnings, *_tape(brief)))


def long_strips(brief: Brief, strips: Iterable[Piece]) -> Iterator[Note]:
    """Yield each straight strip that is longer than its material usually gives."""
    if brief.allowances.boxing_longest is not None:
        return
    for strip in strips:
        known = strip.material.known
        if strip.cut.width > known.longest_strip:
            yield Note("The {} takes a strip of {}, and {} seldom gives more than {}: say what it "
                       "gives (boxing_longest), to have it in panels",
                       (strip.name, strip.cut.width, strip.material.title,
                        known.longest_strip))  # fmt: skip
