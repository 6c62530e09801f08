"""What is done to the pattern of any cover: welts, padding, pieces left out, stitches counted."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

from patternmaker.covers.parts import padding, welts
from patternmaker.covers.parts.runs import seam_beside
from patternmaker.covers.parts.stitches import label, stitches
from patternmaker.errors import Refusal
from patternmaker.errors import brief as shortly
from patternmaker.facts import unknown
from patternmaker.pattern.notes import GAUGES, PREPARING, TOPSTITCH, Note
from patternmaker.pattern.piece import LineKind
from patternmaker.pattern.sundries import cord_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Guide, Pattern, Piece
    from patternmaker.pattern.stitching import Stitching
    from patternmaker.pattern.sundries import Sundry

ROLES = (welts.ROLE,)  # a job may give them a material of their own
TEMPLATES = (padding.FOAM, padding.WADDING)
GAUGE = Note("The sew line is a gauge: do not trace it on the show side")
STANDS = Note("Turn the allowance down, the welt standing along the seam: it is not topstitched")


def objections(pattern: Pattern, brief: Brief) -> Iterator[Refusal]:
    """Yield whatever keeps a pattern from being finished as its job asks."""
    yield from _welts(pattern, brief)
    if asked := brief.finishing.padding:
        if any(piece.role == padding.FOAM for piece in pattern.pieces):
            yield Refusal("padding", "this cover has a foam template of its own",
                          mend="leave the padding away")  # fmt: skip
        yield from padding.objections(asked, pattern.outline)
    yield from _left_out(pattern, brief)


def _welts(pattern: Pattern, brief: Brief) -> Iterator[Refusal]:
    seams = Counter(wish.seam for wish in brief.finishing.welts)
    for number, wish in enumerate(brief.finishing.welts, 1):
        if not pattern.seams:
            yield Refusal(f"welt {number}.seam", "this cover has no seam to sew it into",
                          mend="leave the welt away")  # fmt: skip
        elif wish.seam not in pattern.seam_names:
            yield unknown(f"welt {number}.seam", wish.seam, pattern.seam_names)
        elif seams[wish.seam] > 1:
            yield Refusal(f"welt {number}.seam", "{value} has a welt already",
                          value=shortly(wish.seam), mend="give each seam one")  # fmt: skip
            seams[wish.seam] = 1
    for number, wish in enumerate(brief.finishing.welts, 1):
        found = (welt for welt in welts.asked(pattern, brief) if welt.wish is wish)
        for mistake in (mistake for welt in found for mistake in welt.objections()):
            yield mistake.at(f"welt {number}")
            break


def _left_out(pattern: Pattern, brief: Brief) -> Iterator[Refusal]:
    sewn = {edge.piece for seam in pattern.seams for edge in (seam.a, seam.b)}
    asked = brief.finishing.padding
    pieces = [*(piece.name for piece in pattern.pieces), *(padding.names(asked) if asked else ())]
    loose = [name for name in pieces if name not in sewn]
    for name in brief.finishing.without:
        if name in sewn:
            yield Refusal("without", "{value} is sewn to others: the cover needs it",
                          value=shortly(name),
                          mend=f"what may be left out is {', '.join(loose)}")  # fmt: skip
        elif name not in loose:
            yield unknown("without", name, loose)


def _padding(pattern: Pattern, brief: Brief) -> Iterator[Piece]:
    if asked := brief.finishing.padding:
        yield from padding.templates(asked, pattern.outline)


def finished(pattern: Pattern, brief: Brief) -> Pattern:
    """Return a pattern with what its job asks for besides the cover; it must meet no objection."""
    welted = _welted(pattern, brief)
    pieces = (*welted.pieces, *_padding(pattern, brief))
    without = brief.finishing.without
    rows = tuple(stitches(welted, brief))
    return replace(
        welted,
        pieces=tuple(_labelled(piece, rows) for piece in pieces if piece.name not in without),
        steps=tuple(_steps_without(welted.steps, without)),
        stitches=rows,
        sundries=(*pattern.sundries, *_sundries(pattern, brief)),
    )


def _sundries(pattern: Pattern, brief: Brief) -> Iterator[Sundry]:
    """Yield the cord of each welt, and what the padding is cut from."""
    for welt in welts.asked(pattern, brief):
        yield cord_of(welt.wish.cord, welt.run.length * welt.times)
    if asked := brief.finishing.padding:
        yield from padding.sundries(asked, pattern.outline)


def _labelled(piece: Piece, rows: tuple[Stitching, ...]) -> Piece:
    return replace(piece, notes=(*piece.notes, *label(piece, rows)))


def _steps_without(steps: tuple[Note, ...], names: tuple[str, ...]) -> Iterator[Note]:
    """Yield the order of work without what is done to pieces left out."""
    return (step for step in steps if set(names).isdisjoint(step.about))


def _welted(pattern: Pattern, brief: Brief) -> Pattern:
    """Return a pattern with its welts among its pieces, their seams without a topstitch."""
    asked = list(welts.asked(pattern, brief))
    if not asked:
        return pattern
    pieces = tuple(_untopstitched(piece, pattern, brief) for piece in pattern.pieces)
    sewn = max(i for i, piece in enumerate(pieces, 1) if piece.edges)
    strips = tuple(welt.piece() for welt in asked)
    says = (note for welt in asked for note in welt.says())
    warnings = (note for welt in asked for note in welt.warnings())
    fit = replace(
        pattern.fit,
        says=(*pattern.fit.says, *says),
        warnings=(*pattern.fit.warnings, *warnings),
    )
    return replace(
        pattern,
        pieces=(*pieces[:sewn], *strips, *pieces[sewn:]),
        fit=fit,
        steps=tuple(_steps(pattern, pieces, asked)),
    )


def _untopstitched(piece: Piece, pattern: Pattern, brief: Brief) -> Piece:
    """Return a piece without the topstitches of welted seams, nor its notes on them."""
    bare = {wish.seam for wish in brief.finishing.welts if not wish.topstitch}

    def goes(guide: Guide) -> bool:
        is_one = guide.kind is LineKind.TOPSTITCH
        return is_one and seam_beside(guide, piece, pattern.seams) in bare

    guides = tuple(guide for guide in piece.guides if not goes(guide))
    if len(guides) == len(piece.guides):
        return piece
    if _is_topstitched(guides):
        return replace(piece, guides=guides)
    return replace(piece, guides=guides, notes=tuple(_plain(piece.notes)))


def _is_topstitched(guides: tuple[Guide, ...]) -> bool:
    return any(guide.kind is LineKind.TOPSTITCH for guide in guides)


def _plain(notes: tuple[Note, ...]) -> Iterator[Note]:
    """Yield notes that do not speak of a topstitch."""
    for note in notes:
        if GAUGES in note.about:
            yield GAUGE
        elif TOPSTITCH not in note.about:
            yield note


def _steps(pattern: Pattern, pieces: tuple[Piece, ...], asked: list[welts.Welt]) -> Iterator[Note]:
    """Yield the order of work with the welts made up ahead of all sewing."""
    steps = list(pattern.steps)
    ready = next((i for i, note in enumerate(steps) if PREPARING not in note.about), 0)
    bare = {
        name
        for before, after in zip(pattern.pieces, pieces, strict=True)
        if before.guides != after.guides and not _is_topstitched(after.guides)
        for name in (before.name, before.role)
    }
    made = [note for welt in asked for note in welt.steps()] if steps else []
    for note in (*steps[:ready], *made, *steps[ready:]):
        goes = TOPSTITCH in note.about and not bare.isdisjoint(note.about)
        yield STANDS if goes else note
