"""What the corners of a cover in one piece put on it: the cut line, its other lines, its seams."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.covers.parts.bends import is_left
from patternmaker.covers.parts.corners import CUT_OUT, DART, PLEATS
from patternmaker.covers.parts.draped import along_at
from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.segments import Line
from patternmaker.pattern.piece import Edge, Guide, LineKind, Seam

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from patternmaker.covers.parts.corners import Corner
    from patternmaker.covers.parts.draped import Draped
    from patternmaker.covers.parts.wedges import Wedge
    from patternmaker.geometry.segments import Segment

ARROW = 0.6  # of the way from the top's edge to the board's
BARB = 2.5  # mm; of an arrow, along it
MOST_BARB = 0.4  # of a short arrow
BOARD_EDGE = "board's lower edge"


def cut_line(draped: Draped, found: Sequence[Corner], seam: float) -> Contour:
    """Return the cut line with a wedge cut out of each corner that wants it, less its allowance."""
    notches = [
        _Notch.of(draped.cut, wedge, seam)
        for corner in found if corner.how == CUT_OUT for wedge in corner.wedges
    ]  # fmt: skip
    if not notches:
        return draped.cut
    notches.sort(key=lambda notch: notch.begin)
    segments: list[Segment] = []
    for notch, after in zip(notches, [*notches[1:], notches[0]], strict=True):
        part = draped.cut.part(notch.end, after.begin)
        start, stop = part.segments[0].start, part.segments[-1].end
        segments += [Line(notch.tip, start), *part.segments, Line(stop, after.tip)]
    return Contour(tuple(segments))


@dataclass(frozen=True)
class _Notch:
    """What is cut out: from a place on the cut line to its inner tip, and back to another."""

    begin: float
    tip: complex
    end: float

    @classmethod
    def of(cls, cut: Contour, wedge: Wedge, seam: float) -> _Notch:
        tip = wedge.apex + seam / wedge.sine * wedge.axis
        begin, end = (along_at(cut, wedge.met(tip, way)) for way in wedge.ways)
        return cls(begin, tip, end)


def lines(draped: Draped, found: Sequence[Corner]) -> Iterator[Guide]:
    """Yield the lines of every corner: to sew, to fold, to lay pleats."""
    for corner in found:
        for name, wedge in corner.named:
            if corner.how == PLEATS:
                yield from _pleat(draped, wedge, name)
                continue
            yield from (Guide(LineKind.SEW, leg, name) for leg in wedge.legs)
            if corner.how == DART:
                end = wedge.met(wedge.apex, wedge.middle - wedge.apex)
                yield Guide(LineKind.FOLD, Path.through(wedge.apex, end), name)


def _pleat(draped: Draped, wedge: Wedge, name: str) -> Iterator[Guide]:
    """Yield a pleat's two lines, and the arrow from the one that is folded to where it is laid."""
    for tip in wedge.tips:
        yield Guide(LineKind.PLEAT, Path.through(wedge.apex, tip), name)
    laid, folded = (
        wedge.apex + ARROW * (foot - wedge.apex) for foot in wedge.feet
    )  # fmt: skip
    if not is_left(draped.outline, wedge.at):
        laid, folded = folded, laid
    yield Guide(LineKind.PLEAT, Path.through(folded, laid), name)
    back = folded - laid
    back *= min(BARB / abs(back), MOST_BARB)
    for side in (0.6j, -0.6j):
        yield Guide(LineKind.PLEAT, Path.through(laid, laid + (1 + side) * back), name)


def board_lines(draped: Draped, found: Sequence[Corner]) -> Iterator[Guide]:
    """Yield the line on the board's lower edge, broken where a corner is cut out."""
    gaps = sorted(
        tuple(along_at(draped.board, foot) for foot in wedge.feet)
        for corner in found if corner.how == CUT_OUT for wedge in corner.wedges
    )  # fmt: skip
    if not gaps:
        yield Guide(LineKind.FOLD, draped.board, BOARD_EDGE)
        return
    for (_, end), (begin, _) in zip(gaps, [*gaps[1:], gaps[0]], strict=True):
        yield Guide(LineKind.FOLD, draped.board.part(end, begin), BOARD_EDGE)


def seams(found: Sequence[Corner], piece: str) -> Iterator[Seam]:
    """Yield the seam of each wedge that is sewn, from the top's edge to the board's lower edge.

    The sides of a wedge differ only where the take-up across and along does: both are as long as
    the side is high once the cover is pulled.
    """
    for corner in found:
        if not corner.is_sewn:
            continue
        for name, wedge in corner.named:
            a, b = (
                Edge(piece, f"{name}, {which} leg", leg,
                     (("top edge", 0.0), ("board edge", leg.length)))
                for which, leg in zip(("first", "second"), wedge.legs, strict=True)
            )  # fmt: skip
            yield Seam(a, b, "corner seam", a.length - b.length)
