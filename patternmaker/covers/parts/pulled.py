"""What is said of a cover that is pulled over in one piece: its fit, and the order of work."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.covers.parts import steps
from patternmaker.covers.parts.corners import CUT_OUT, DART, EASED, PLEATS
from patternmaker.covers.parts.draped import ROLE
from patternmaker.covers.parts.fits import LEAST_WRAP, cautions, measured, stretches
from patternmaker.facts import HAIR
from patternmaker.pattern.notes import UNTOLD, Note, Share
from patternmaker.pattern.piece import Fit

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.covers.parts.corners import Corner
    from patternmaker.covers.parts.draped import Draped
    from patternmaker.covers.parts.reliefs import Inner
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Piece, Seam

FLAT = "Measured flat, from edge to edge of the top: its edge lies where it was measured."
PLENTY_EASED = 1.0  # mm; less is not worth telling
PLENTY = 0.03  # of a bend's length; more is not eased in unseen; common practice, no source


def fit(
    brief: Brief, draped: Draped, found: Sequence[Corner], inner: Sequence[Inner],
    seams: Sequence[Seam],
) -> Fit:  # fmt: skip
    """Return the report of a cover in one piece."""
    told = list(stretches(brief, ROLE.capitalize(), ROLE, draped.across.scale, draped.along.scale))
    says = (
        *measured(brief, ROLE, FLAT),
        *_taken_up(brief, draped),
        *(note for note, too_far in told if not too_far),
        *_fullness(draped, found),
        *_corners(found),
        *_walked(seams),
    )
    warnings = (
        *cautions(brief, ROLE),
        *_narrow(draped.wrap),
        *(note for note, too_far in told if too_far),
        *_inner(inner, brief),
    )
    return Fit(draped.outline.length / draped.fold.length, says, warnings)


def _taken_up(brief: Brief, draped: Draped) -> Iterator[Note]:
    across, along = draped.across, draped.along
    if across.rate == along.rate == 0:
        yield Note("No take-up in the top cover ({})", (brief.material(ROLE).title,))
    for way, each in (("across", across), ("along", along)):
        yield Note(
            "Tight {}: {} over the top and two sides of {}, take-up {}, then {} to turn under on "
            "each side, which has none: cut {}",
            (way, each.tight, each.side, Share(1 - each.scale), each.wrap, each.cut),
        )
    if across.step:
        yield Note("Cut sizes rounded to the nearest {}, and the take-up with them", (across.step,))


def _fullness(draped: Draped, found: Sequence[Corner]) -> Iterator[Note]:
    """Yield how much longer the flat cover is round than the seat, and where that goes."""
    over = draped.board.length - draped.fold.length
    taken = sum(corner.taken for corner in found)
    rest = "its corners take up {}" if taken > UNTOLD else "its corners take up nothing"
    if not draped.outline.is_convex:
        rest = f"net of what its inner bends lack; {rest}"
    elif over - taken > PLENTY_EASED:
        rest += ", {} is eased in"
    yield Note("Fullness: laid flat, the cover is {} round the board's lower edge, {} more than "
               f"round the top; {rest}",
               (draped.board.length, over, *((taken,) if taken > UNTOLD else ()),
                max(0.0, over - taken)))  # fmt: skip
    yield Note("The wrap's edge, uncut, is {} round, {} more again: under the board it laps or "
               "goes in flat folds, trimmed where they are thick",
               (draped.cut.length, draped.cut.length - draped.board.length))  # fmt: skip


def _corners(found: Iterable[Corner]) -> Iterator[Note]:
    """Yield how each corner is dealt with; those that are alike are told as one."""
    alike: dict[Note, list[str]] = {}
    for corner in found:
        alike.setdefault(_dealt_with(corner), []).append(corner.bend.name)
    for note, names in alike.items():
        yield Note(f"{{}}: {note.says}", (", ".join(names).capitalize(), *note.values))


def _dealt_with(corner: Corner) -> Note:
    count = len(corner.wedges)
    if corner.how == EASED:
        return Note("eased in")
    if corner.how == PLEATS:
        pleats = "one pleat" if count == 1 else f"{count} pleats"
        return Note(f"{pleats}, each {{}} deep at the board's lower edge: {{}} taken up",
                    (round(corner.taken / count / 2, 6), round(corner.taken, 6)))  # fmt: skip
    darts = {CUT_OUT: "cut out and sewn", DART: "dart"}[corner.how]
    times = f" {count} times" if count > 1 else ""
    return Note(f"{darts}{times}, {{}} taken up at the board's lower edge",
                (round(corner.taken, 6),))  # fmt: skip


def _narrow(wrap: float) -> Iterator[Note]:
    if wrap < LEAST_WRAP:
        yield Note("A wrap-under of {} leaves little to staple, and no room for notches", (wrap,))


def _inner(inner: Iterable[Inner], brief: Brief) -> Iterator[Note]:
    material = brief.material(ROLE)
    gives = min(material.gives_across, material.gives_along)
    for each in inner:
        if each.gap:
            yield Note(
                "The seat turns inward at {}: no cover in one piece reaches round there. Its "
                "relief cut runs to the top's edge and opens to {} at the board's lower edge; a "
                "patch goes under it, and shows", (each.bend.name, each.gap)
            )  # fmt: skip
        elif each.needs > PLENTY or each.needs > gives:
            yield Note("The side must stretch {} round the inner bend {}; {} gives {}",
                       (Share(each.needs), each.bend.name, material.title,
                        Share(gives)))  # fmt: skip


def _walked(seams: Sequence[Seam]) -> Iterator[Note]:
    if not seams:
        return
    worst = max(HAIR, *(seam.worst for seam in seams))
    yield Note("Corner seams walked: both legs of each of {} meet within {} mm",
               (str(len(seams)), f"{worst:.3f}"))  # fmt: skip
    eased = max(abs(seam.eased) for seam in seams)
    if eased > HAIR:
        yield Note("Legs differ by up to {} as drawn, as the take-up does across and along",
                   (eased,))  # fmt: skip


def order(
    brief: Brief, pieces: Sequence[Piece], found: Sequence[Corner], inner: Sequence[Inner]
) -> Iterator[Note]:
    """Yield the order of work, from cutting to the closed underside."""
    allowances = brief.allowances
    yield from steps.marking(pieces)
    yield from _sewing(found, allowances.seam)
    yield from steps.reference(brief)
    for piece in pieces:
        if piece.role == "corner patch":
            yield Note("Fix the {} first, its fold line on the top's edge", (piece.name,))
    yield from steps.placing(seam="")
    yield Note("Bring its centre marks to those of the base: back, front, left, right")
    yield from steps.stapling(allowances)
    yield from _at_corners(found, inner)
    yield from steps.checking(brief.outline, "")
    yield from steps.dust_cover(allowances)


def _sewing(found: Sequence[Corner], seam: float) -> Iterator[Note]:
    names = [corner.bend.name for corner in found if corner.how == CUT_OUT]
    darts = [corner.bend.name for corner in found if corner.how == DART]
    if names:
        yield Note("Sew the cut-out corners ({}), show sides together, at {}: from the board's "
                   "lower edge to nothing at the top's edge. Below, the wrap stays open",
                   (", ".join(names), seam))  # fmt: skip
    if darts:
        yield Note("Fold each dart ({}) on its middle line, show sides together; sew leg to leg "
                   "from the board's lower edge to nothing at the top's edge. Try it on, then "
                   "trim to {}; slit the wrap on the fold", (", ".join(darts), seam))  # fmt: skip


def _at_corners(found: Sequence[Corner], inner: Sequence[Inner]) -> Iterator[Note]:
    for each in inner:
        cuts = "the relief cut" if len(each.cuts) == 1 else f"the {len(each.cuts)} relief cuts"
        yield Note("At {}: snip {} only as the cover is pulled, and no further than the stroke at "
                   "the end", (each.bend.name, cuts))  # fmt: skip
    for corner in found:
        if corner.how == PLEATS:
            yield Note("Last, lay the pleats: fold each on the line at the arrow's tail and bring "
                       "it to the line at its head, so that it opens toward the back; from the "
                       "middle of a corner outward, a staple in each")  # fmt: skip
            break
    if any(corner.is_sewn for corner in found):
        yield Note("Lap the two wraps at each sewn corner, the side over the front; trim the lower")
