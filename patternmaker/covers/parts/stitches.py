"""The rows of stitches of a cover, and the thread that they take."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.covers.parts import welts
from patternmaker.covers.parts.runs import length_of, runs, topstitches
from patternmaker.pattern.notes import Note, Stitch
from patternmaker.pattern.stitching import BY_HAND, PIPED, PLAIN, TOPSTITCHED, Stitching

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Guide, Pattern, Piece, Seam

MADE_UP = "welt made up"  # the one row that closes a strip round its cord


def stitches(pattern: Pattern, brief: Brief) -> Iterator[Stitching]:
    """Yield each row of stitches by machine in the order of sewing; seams of one name are one."""
    shown = list(topstitches(pattern))
    for name in pattern.seam_names:
        if name == BY_HAND:
            continue
        yield from _welt(pattern, brief, name)
        yield _seam(pattern, brief, name)
        beside = [(piece, guide) for seam, piece, guide in shown if seam == name]
        if beside:
            yield _topstitch(pattern, brief, name, beside)


def _welt(pattern: Pattern, brief: Brief, name: str) -> Iterator[Stitching]:
    for welt in welts.asked(pattern, brief):
        if welt.wish.seam == name:
            rules = brief.finishing.stitches
            run, layers = welt.run.length * welt.times, 2 * welt.material.thick
            yield Stitching(welt.name, MADE_UP, rules.seams, run, layers, rules.spare,
                            (welt.name,))  # fmt: skip


def _seam(pattern: Pattern, brief: Brief, name: str) -> Stitching:
    """Return the seam; the layers are its thickest, both pieces and a welt between them."""
    rules = brief.finishing.stitches
    welted = any(wish.seam == name for wish in brief.finishing.welts)
    welt = 2 * brief.material(welts.ROLE).thick if welted else 0.0
    named = [seam for seam in pattern.seams if seam.name == name]
    layers = max(sum(_thick(pattern, seam)) for seam in named) + welt
    run = length_of(runs(pattern, name))
    kind = PIPED if welted else PLAIN
    return Stitching(name, kind, rules.seams, run, layers, rules.spare, _pieces(named))


def _topstitch(
    pattern: Pattern, brief: Brief, name: str, found: Sequence[tuple[Piece, Guide]]
) -> Stitching:
    """Return the topstitch of a seam: through its piece and both allowances, turned to it."""
    rules = brief.finishing.stitches
    run = sum(guide.path.length * piece.count for piece, guide in found)
    turned = max(sum(_thick(pattern, seam)) for seam in pattern.seams if seam.name == name)
    layers = max(piece.material.thick for piece, _ in found) + turned
    pieces = tuple(dict.fromkeys(piece.name for piece, _ in found))
    return Stitching(name, TOPSTITCHED, rules.topstitch, run, layers, rules.spare, pieces)


def _thick(pattern: Pattern, seam: Seam) -> tuple[float, float]:
    """Return the thickness of the two pieces of a seam."""
    by_name = {piece.name: piece.material.thick for piece in pattern.pieces}
    return by_name[seam.a.piece], by_name[seam.b.piece]


def _pieces(seams: Sequence[Seam]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(e.piece for seam in seams for e in (seam.a, seam.b)))


def label(piece: Piece, rows: Sequence[Stitching]) -> Iterator[Note]:
    """Yield the one line that a piece says of its stitches."""
    own = [row for row in rows if piece.name in row.pieces]
    if not own:
        return
    seams = [row.stitch for row in own if not row.shows]
    tops = [row.stitch for row in own if row.shows]
    says = [("stitches {}", seams[:1]), ("topstitch {}", tops[:1])]
    told = ", ".join(words for words, lengths in says if lengths)
    yield Note(told[0].upper() + told[1:],
               tuple(Stitch(mm) for _, lengths in says for mm in lengths))  # fmt: skip
