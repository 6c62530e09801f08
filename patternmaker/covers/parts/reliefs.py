"""Where a seat's edge turns inward, and a cover in one piece has too little.

Beside an inner bend of radius R the side, laid flat, is t (R - s) long at a depth of s and must
reach round t R: it must stretch by s / (R - s), and at a sharp corner no stretch would do. What the
material doesn't give is cut: across the wrap if the side can stretch, else to the top's edge, where
the cut opens and bares the padding, so that a patch is laid under it first.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.covers.parts.bends import bends
from patternmaker.covers.parts.corners import LITTLE
from patternmaker.facts import HAIR
from patternmaker.geometry.contour import Contour, Path
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Guide, LineKind, Piece
from patternmaker.units import MM_PER_INCH

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.covers.parts.bends import Bend
    from patternmaker.covers.parts.draped import Draped
    from patternmaker.materials import Material

# All common practice, no source.
OPENS = MM_PER_INCH  # as far as one cut may open at its edge
SHORT = MM_PER_INCH / 8  # where a cut ends before the line that it runs to
END = 3.0  # mm; half the stroke that marks the end of a cut
LAPS = MM_PER_INCH  # of a patch beyond the gap, on each side
OVER = MM_PER_INCH / 2  # of a patch on top of the padding
WIDEST = math.radians(170)  # a turn for which a gap is still told


@dataclass(frozen=True)
class Inner:
    """A bend that turns inward, and its relief cuts, each from the cut line to its end.

    Args:
        bend: the bend.
        cuts: the relief cuts.
        gap: how far they open at the board's lower edge: none where the side stretches.
        needs: how far the side must stretch there, as a share; infinite at a corner.
    """

    bend: Bend
    cuts: tuple[Path, ...]
    gap: float
    needs: float


def inner_bends(draped: Draped, gives: float) -> tuple[Inner, ...]:
    """Return the bends that turn inward of a cover whose material stretches by ``gives``."""
    found = (_inner(draped, b, gives) for b in bends(draped.outline, math.inf, outward=False))
    return tuple(inner for inner in found if inner.cuts)


def _inner(draped: Draped, bend: Bend, gives: float) -> Inner:
    turn, depth = -bend.angle, draped.side + draped.wrap
    needs = _stretch(bend.tightest, draped.side)
    if turn * (depth + draped.wrap) < LITTLE or _stretch(bend.tightest, depth) <= gives:
        return Inner(bend, (), 0.0, needs)
    stretches = needs <= gives or turn * draped.side < LITTLE
    lacks = turn * (draped.side + 2 * draped.wrap)
    count = math.ceil(lacks / OPENS) if bend.tightest > depth else 1
    shares = ((i + 0.5) / count for i in range(count))
    cuts = (_cut(draped, bend.at(share).along, to_top=not stretches) for share in shares)
    gap = 0.0 if stretches else _gap(bend, turn, draped.side)
    return Inner(bend, tuple(cut for cut in cuts if cut), gap, needs)


def _stretch(radius: float, depth: float) -> float:
    return depth / (radius - depth) if radius > depth else math.inf


def _gap(bend: Bend, turn: float, side: float) -> float:
    """Return what is missing at the board's lower edge.

    The two sides of a corner, moved out by s, lose s tan(t / 2) each; its arc has R tan(t / 2) of
    that to spare.
    """
    if bend.radius >= side:
        return turn * side
    return bend.length + 2 * (side - bend.radius) * math.tan(min(turn, WIDEST) / 2)


def _cut(draped: Draped, along: float, *, to_top: bool) -> Path | None:
    """Return a cut from the cut line to just short of the line that it runs to."""
    fold, board, edge = draped.edge_of(along)
    last, before = (fold, board) if to_top else (board, edge)
    run = [edge, board, fold] if to_top else [edge, board]
    way = before - last
    if abs(way) < 2 * SHORT:
        return None
    run[-1] += SHORT * way / abs(way)
    rest = (there for here, there in pairwise(run) if abs(there - here) > HAIR)
    return Path.through(run[0], *rest)


def lines(found: Iterable[Inner]) -> Iterator[Guide]:
    """Yield each relief cut, and the stroke at its end."""
    for inner in found:
        for cut in inner.cuts:
            yield Guide(LineKind.RELIEF, cut, inner.bend.name)
            end, across = cut.point_at(cut.length), END * cut.outward(cut.length)
            yield Guide(LineKind.RELIEF, Path.through(end - across, end + across), "end of cut")


def patches(found: Sequence[Inner], draped: Draped, material: Material) -> Iterator[Piece]:
    """Yield the patch of each inner corner whose cut bares the padding."""
    height = OVER + draped.side + draped.wrap
    for inner in found:
        if not inner.gap:
            continue
        width = max(inner.gap, inner.bend.length) + 2 * LAPS
        corners = (0j, complex(width, 0), complex(width, height), complex(0, height))
        yield Piece(
            f"patch {inner.bend.name}",
            "corner patch",
            material,
            Contour(Path.through(*corners, 0j).segments),
            guides=(Guide(LineKind.FOLD, _level(width, height - OVER), "top edge"),),
            finished=(width, height),
            lay=material.lay_flat,
            arrow=(1j, "SEAT"),
            notes=(
                Note("Goes on before the cover, where its relief cut opens to {}", (inner.gap,)),
                Note("Fold line on the top's edge, the rest down the side and under"),
            ),
        )


def _level(width: float, y: float) -> Path:
    return Path.through(complex(0, y), complex(width, y))
