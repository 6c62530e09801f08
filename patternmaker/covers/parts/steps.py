"""The order of work at the bench, in sentences with the seat's own numbers.

Each function yields the steps of one stage. A cover strings together the stages that it has, and
adds its own:

    steps=(
        *steps.marking(pieces), *steps.clipping(pieces), *steps.sewing(seams, allowances),
        *steps.stapling_on(brief),
    )

No stage needs a boxed seat: strip and panel go by whatever names they have.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import groupby
from typing import TYPE_CHECKING

from patternmaker.facts import both
from patternmaker.pattern.clips import SHORT_OF_SEAM
from patternmaker.pattern.notes import PREPARING, TOPSTITCH, UNTOLD, Note
from patternmaker.pattern.piece import LineKind
from patternmaker.pattern.stations import CARDINALS

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.covers.parts.joining import Joins
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Edge, Piece, Seam

TEMPLATE = "base template"
LOCKED = both(in_=1 / 2, mm=13)  # least overlap that locks a lockstitch: TM 10-8415-210-13&P, 5-8
STAY = both(in_=1 / 16, mm=2)  # from the seam to the stay stitch; common practice, no source
STAPLES = both(in_=1, mm=25), both(in_=1 + 1 / 2, mm=40)  # apart; common practice, no source


def marking(pieces: Sequence[Piece]) -> Iterator[Note]:
    """Yield how the pieces are cut and marked, without a prick through the show side."""
    cut = [piece for piece in pieces if piece.edges]
    sides = " or ".join(dict.fromkeys(piece.material.known.wrong_side for piece in cut))
    yield Note("Cut on the cut line. Mark joins and centres on the {} only: no awl, no pen on the "
               "show side", (sides,), (PREPARING,))  # fmt: skip
    depths = sorted({notch.depth for piece in cut for notch in piece.notches})
    doubles = {n.name for piece in cut for n in piece.notches if len(n.feet) > 1} == {"back"}
    if depths:
        deep = "{} deep" if len(depths) == 1 else "{} to {} deep, as drawn"
        twice = "; the double ones mark the back" if doubles else ""
        yield Note(f"Snip the notches {deep}, no deeper{twice}", (depths[0], *depths[1:][-1:]),
                   (PREPARING,))  # fmt: skip


def clipping(pieces: Iterable[Piece]) -> Iterator[Note]:
    """Yield where an allowance is clipped to follow its seam; what frays is stay-stitched first."""
    clipped = [(piece, deep) for piece in pieces if (deep := tuple(_clips(piece)))]
    if fraying := [piece.name for piece, _ in clipped if piece.material.known.frays]:
        yield Note("Stay-stitch the {} {} outside the seam, past the clip marks",
                   (_listed(fraying), STAY), (PREPARING,))  # fmt: skip
    by_depth = sorted(clipped, key=lambda each: min(each[1]))
    for _, alike in groupby(by_depth, lambda each: round(min(each[1]), 3)):
        some = list(alike)
        told = _listed([f"{piece.name} {len(deep)}" for piece, deep in some])
        yield Note("Clip at the clip marks, {} deep, stopping {} short of the seam: {}",
                   (min(some[0][1]), SHORT_OF_SEAM, told), (PREPARING,))  # fmt: skip


def _clips(piece: Piece) -> Iterator[float]:
    """Yield the depth of each clip of a piece."""
    return (guide.path.length for guide in piece.guides if guide.kind is LineKind.CLIP)


@dataclass(frozen=True)
class Round:
    """A strip that is sewn round a panel, from the join that is closed last and back to it.

    Args:
        strip: what the strip is called, whatever panels it has.
        edge: the edge of the panel, all the way round.
        joins: the names of the strip's joins, the one closed last first.
        allowances: the seat's.
        at_back: what a join at the back meets on the panel.
    """

    strip: str
    edge: Edge
    joins: Sequence[str]
    allowances: Allowances
    at_back: str = "the double notch at the back"

    @property
    def _unsewn(self) -> float:
        return self.allowances.open_at(self.edge.length)

    @property
    def _last(self) -> str:
        """The join closed last, as a sentence calls it."""
        return self.joins[0] if "join" in self.joins[0] else f"{self.joins[0]} join"

    @property
    def _mark(self) -> str:
        """What it meets on the panel."""
        return self.at_back if self.joins[0] == "back" else "its notch"

    def joined(self) -> Iterator[Note]:
        """Yield which joins of the strip are sewn before it goes round."""
        join = self.allowances.join
        if not self._unsewn:
            yield from self.trimmed()
            yield Note("Sew the {} of the {} at {}, into a ring",
                       (_listed([*self.joins[1:], self._last]), self.strip, join))  # fmt: skip
            return
        if others := self.joins[1:]:
            yield Note("Sew the {} of the {} first, at {}; leave the {} open: it is closed last",
                       (_listed(others), self.strip, join, self._last))  # fmt: skip
        else:
            yield Note("Leave the {} of the {} open: it is closed last", (self._last, self.strip))

    def sewn(self) -> Iterator[Note]:
        """Yield how the strip is laid to the panel, and where sewing starts and stops."""
        seam, last, unsewn = self.allowances.seam, self._last, self._unsewn
        yield self._laid()
        if unsewn:
            yield Note("Sew at {}: from the start mark, {} past the {}, by {} to the stop mark, as "
                       "far before it; lock both ends over {}",
                       (seam, unsewn, last, self._way, LOCKED))  # fmt: skip
        else:
            yield Note("Sew at {}, all round from the {}; overlap the stitches by {}",
                       (seam, last, LOCKED))  # fmt: skip

    def _laid(self) -> Note:
        """Return which place of the strip meets which of the panel."""
        others = [name for name in self._round if name in {*CARDINALS, *self.joins}]
        meets = ", ".join((f"{self._last} to {self._mark}", *(f"{n} to {n}" for n in others)))
        return Note("Lay the {} to the {}, show sides together: {}; then each notch between to its "
                    "like", (self.strip, self.edge.piece, meets))  # fmt: skip

    @property
    def _way(self) -> str:
        """The sides that sewing passes after the join closed last."""
        return _listed([name for name in self._round if name in CARDINALS] or ["the front"])

    @property
    def _round(self) -> list[str]:
        """The notches of the panel in order, after the join closed last."""
        names = [name for name, _ in self.edge.stations[:-1]]
        first = names.index(self.joins[0])
        return [*names[first + 1 :], *names[:first]]

    def closed(self) -> Iterator[Note]:
        """Yield how the last join is closed, and the seam sewn home where it was left open."""
        if not self._unsewn:
            return
        yield from self.trimmed()
        yield Note("Close the {} of the {} at {}: it must meet {}. Sew home the {} left open",
                   (self._last, self.strip, self.allowances.join, self._mark,
                    2 * self._unsewn))  # fmt: skip

    def trimmed(self) -> Iterator[Note]:
        """Yield that a join's spare is cut away once it is known where the join falls."""
        spare, join = self.allowances.boxing_spare, self.allowances.join
        if spare:
            yield Note("Check the {} against {}; trim its spare ({}) to {} past the join line",
                       (self._last, self._mark, spare, join))  # fmt: skip


def sewing(seams: Sequence[Seam], allowance: float) -> Iterator[Note]:
    """Yield each seam in turn, its pieces and notches; those of one name and pieces as one."""
    for (name, a, b), parts in groupby(seams, lambda s: (s.name, s.a.piece, s.b.piece)):
        seam, *more = parts
        pieces = f"{a} to {b}" if a != b else f"both ends of {a}"
        length = sum(each.a.length for each in (seam, *more))
        begin, end = seam.a.stations[0][0], (more[-1] if more else seam).a.stations[-1][0]
        says = "{}: {}, show sides together, notch {} to {} ({} long), at {}"
        values = name.capitalize(), pieces, begin, end, length, allowance
        if abs(eased := sum(each.eased for each in (seam, *more))) > UNTOLD:
            says += "; work in the {} that the {} has more, evenly from notch to notch"
            yield Note(says, (*values, abs(eased), a if eased > 0 else b))
        else:
            yield Note(says, values)


def ahead(notes: Iterable[Note]) -> Iterator[Note]:
    """Yield steps by which a top is made up of its parts: only then has it an edge for a welt."""
    return (replace(note, about=(*note.about, PREPARING)) for note in notes)


def topstitching(strip: str, allowances: Allowances) -> Iterator[Note]:
    """Yield how the allowance is turned and caught by the visible stitch."""
    yield Note(
        "Turn the allowance to the {0}. Topstitch on the {0}, {1} from the seam, so that it "
        "catches {2} of the allowance",
        (strip, allowances.topstitch_at, allowances.narrower - allowances.topstitch_at),
        (TOPSTITCH, strip),
    )


def reference(brief: Brief) -> Iterator[Note]:
    """Yield how the line is drawn on the base to which the cover's edge is pulled."""
    at = brief.allowances.reference_at
    by = "" if TEMPLATE in brief.finishing.without else f", by the {TEMPLATE}"
    if at:
        yield Note(f"Underside of the base: draw the reference line {{}} from the edge{by}", (at,))


def placing(over: str = "foam", seam: str = "top seam") -> Iterator[Note]:
    """Yield how the cover goes over its padding; ``seam`` is what lies on the edge, if any."""
    lies = f"the {seam} on the edge, its allowance flat" if seam else "centred both ways"
    yield Note(f"Fit the cover over the {{}}, front to the front, {lies}", (over,))


def stapling(allowances: Allowances) -> Iterator[Note]:
    """Yield the order of stapling: four places first, then outward in pairs."""
    pull = "Pull its edge to the line" if allowances.reference_at > UNTOLD else "Pull it down"
    yield Note(f"{pull} and staple back, front, left, right. Then outward from these, opposite "
               "pairs in turn, a staple every {} to {}; corners last", STAPLES)  # fmt: skip


def checking(outline: Contour, seam: str = "top seam") -> Iterator[Note]:
    """Yield what is looked at before the last staples make it lasting."""
    what = f"the {seam}" if seam else "the top's edge"
    yield Note(f"Look from above before you finish: {what} {{}} by {{}}, sides alike, no ripple. "
               "Pull again what is off; then fill in the staples",
               (outline.width, outline.height))  # fmt: skip


def dust_cover(allowances: Allowances) -> Iterator[Note]:
    """Yield how the underside is closed."""
    yield Note("Turn in {} round the dust cover and staple it {} inside the base's edge",
               (allowances.dust_cover_turning, allowances.dust_cover_inset),
               ("dust cover",))  # fmt: skip


def stapling_on(brief: Brief, over: str = "foam", seam: str = "top seam") -> Iterator[Note]:
    """Yield every stage from the sewn cover to the closed underside of a seat on a base."""
    yield from reference(brief)
    yield from placing(over, seam)
    yield from stapling(brief.allowances)
    yield from checking(brief.outline, seam)
    yield from dust_cover(brief.allowances)


def boxed(brief: Brief, pieces: Sequence[Piece], joins: Joins) -> Iterator[Note]:
    """Yield the whole order of work of a top, the first of ``pieces``, and boxing round it."""
    names = [name for name, _ in joins]
    seam = Round("boxing", pieces[0].edges["edge"], names, brief.allowances)
    yield from marking(pieces)
    yield from clipping(pieces)
    yield from seam.joined()
    yield from seam.sewn()
    yield from seam.closed()
    yield from topstitching("boxing", brief.allowances)
    yield from stapling_on(brief)


def _listed(names: Sequence[str]) -> str:
    """Return names as a sentence lists them.

    >>> _listed(["left", "front", "right"])
    'left, front and right'
    """
    *most, last = names
    return f"{', '.join(most)} and {last}" if most else last
