"""The few figures that strike a piece by hand, with rule and trammel, where it needs no paper."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.facts import HAIR
from patternmaker.geometry.plain import as_circle, as_rectangle
from patternmaker.pattern.cloth import match_line
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import LineKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.pattern.piece import Piece


ONE_RUN = 30.0  # mm; clips that stand further apart belong to another corner


def by_hand(piece: Piece) -> tuple[Note, ...]:
    """Return how to strike a piece by hand, or nothing if only paper will do."""
    if piece.is_slanted:
        return tuple(_slanted(piece))
    if piece.is_strip:
        return tuple(_strip(piece))
    if circle := as_circle(piece.cut):
        return (Note("A circle: trammel set to {}", (circle.radius,)),)
    return tuple(_rectangle(piece))


def _strip(piece: Piece) -> Iterator[Note]:
    size = piece.cut.width, piece.cut.height
    yield Note("Strip {} × {}, diagonal {}", (*size, math.hypot(*size)))
    (first, *seams), folds = _down(piece, LineKind.SEW), _down(piece, LineKind.FOLD)
    left = -piece.cut.bounds[0]
    if left:
        yield Note("left join line {} from the end; seam {} from the upper edge", (left, first))
    else:
        yield Note("seam {} from the upper edge", (first,))
    for says, lines in (
        ("seam {} from the upper edge", seams),
        ("fold {} from the upper edge", folds),
    ):
        yield from (Note(says, (down,)) for down in lines)
    along = marks_along(piece)
    if left or len(along) > 1:
        yield _marks(along)
    yield from clip_notes(piece)


def _marks(along: list[tuple[str, float]]) -> Note:
    marks = ", ".join("{} ({})" for _ in along)
    values = [value for name, x in along for value in (x, name)]
    return Note(f"along the seam from the left join line: {marks}", tuple(values))


def _slanted(piece: Piece) -> Iterator[Note]:
    top = piece.cut.bounds[3]
    long, past = piece.cut.segments[1].length, piece.cut.segments[1].length - piece.run[-1][1]
    yield Note("Strip {} wide, both its ends at 45° the same way, each long edge {}",
               (piece.cut.height, long))  # fmt: skip
    yield Note("join lines {} from the cut ends, along the strip; seams {} from the edges",
               (past / 2, top))  # fmt: skip


def _down(piece: Piece, kind: LineKind) -> list[float]:
    """Return how far below the upper edge of a strip its level lines of a kind lie."""
    level = (g.path for g in piece.guides if g.kind is kind and not g.path.height)
    return sorted({piece.cut.bounds[3] - path.bounds[3] for path in level})


def marks_along(piece: Piece) -> list[tuple[str, float]]:
    """Return every mark on the seam of a strip in order: its name, mm from the left join line."""
    doubles = {notch.name for notch in piece.notches if len(notch.feet) > 1}
    marks = [(f"{name}, double" if name in doubles else name, x) for name, x in piece.run[1:]]
    if match := match_line(piece):
        at = match.bounds[0]
        marks = [(f"{name}, match line" if abs(x - at) < HAIR else name, x) for name, x in marks]
    marks += [
        (guide.name, guide.path.segments[0].start.real)
        for guide in piece.guides
        if guide.kind is LineKind.SEWING
    ]
    return sorted(marks, key=lambda mark: mark[1])


def clip_notes(piece: Piece) -> Iterator[Note]:
    """Yield where a strip's allowance is clipped so that it follows the corners, and how deep."""
    clips = [guide.path for guide in piece.guides if guide.kind is LineKind.CLIP]
    if not clips:
        return
    places = sorted({path.bounds[0] for path in clips})  # both edges may have one
    runs = [[places[0]]]
    for before, place in pairwise(places):
        if place - before > ONE_RUN:
            runs.append([])
        runs[-1].append(place)
    told = ", ".join("{} from {} to {}" if len(run) > 1 else "one at {}" for run in runs)
    values: list[float | str] = []
    for run in runs:
        values += [str(len(run)), run[0], run[-1]] if len(run) > 1 else run
    yield Note(f"clip the allowance {{}} deep, evenly: {told}", (clips[0].length, *values))


def _rectangle(piece: Piece) -> Iterator[Note]:
    rectangle = as_rectangle(piece.cut)
    if rectangle is None:
        return
    size = (rectangle.width, rectangle.height, rectangle.diagonal)
    yield Note("Rectangle {} × {}, diagonal {}", size)
    if rectangle.corner:
        yield Note("corners of radius {}, struck from {} inside both edges",
                   (rectangle.corner, rectangle.corner))  # fmt: skip
    else:
        yield Note("corners sharp")
