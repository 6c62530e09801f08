"""Which line of a drawing is the seat."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.errors import Refusal, brief
from patternmaker.facts import HAIR
from patternmaker.geometry.contour import joined_bounds
from patternmaker.tracing.closing import Row, rows
from patternmaker.tracing.said import Said, escaped, near, shown
from patternmaker.tracing.scaling import MOST_NAMES, SMALLEST, drawn_in, unknown_line

if TYPE_CHECKING:
    from patternmaker.geometry.segments import Box
    from patternmaker.tracing.sketch import Sketch
    from patternmaker.tracing.wishes import Wishes

MOST_ROWS = 200  # loose lines whose distances are compared to tell of the smallest gap


def chosen(sketch: Sketch, wishes: Wishes) -> tuple[Row, tuple[Said, ...]]:
    """Return the line that is the seat, closed, and what to tell of it.

    Raises:
        Refusal: if there is none, or it is not clear which.
    """
    chains = [chain for chain in drawn_in(sketch) if chain.name != wishes.ruler]
    found = rows(chains, wishes.gap)
    row = _only(found) if wishes.line is None else _named(found, wishes.line)
    if not row.closed:
        raise _open(row, found)
    return row, tuple(_told(row, found, wishes))


def _told(row: Row, found: list[Row], wishes: Wishes) -> list[Said]:
    said = []
    least = wishes.gap if all(link.chain.drawn for link in row.links) else HAIR
    if gaps := [gap for gap in row.gaps if gap > least]:
        count = "a gap" if len(gaps) == 1 else f"{len(gaps)} gaps"
        said.append(Said(f"closed {count} between ends of lines, the widest of {{}}", (max(gaps),)))
    if others := len(found) - 1:
        said.append(Said(f"left out {others} other line{'s' if others > 1 else ''} of the file"))
    return said


def _only(found: list[Row]) -> Row:
    closed = [row for row in found if row.closed]
    if len(closed) == 1:
        return closed[0]
    if not closed:
        longest = max(found, key=lambda row: _size(row.bounds), default=None)
        if longest is None:
            raise Refusal("line", "the file draws no line but the ruler", mend="draw the seat too")
        return longest
    names = [row.name for row in closed]
    more = f" and {len(names) - MOST_NAMES} more" if len(names) > MOST_NAMES else ""
    raise Refusal(
        "line", f"the file draws {len(names)} closed lines: {{value}}{more}",
        value=", ".join(brief(name) for name in names[:MOST_NAMES]), mend="name the one to take",
    )  # fmt: skip


def _size(box: Box) -> float:
    return box[2] - box[0] + box[3] - box[1]


def _named(found: list[Row], name: str) -> Row:
    for row in found:
        if any(link.chain.name == name for link in row.links):
            return row
    raise unknown_line("line", name, [link.chain.name for row in found for link in row.links])


def _open(row: Row, found: list[Row]) -> Refusal:
    """Return the refusal of an open line, with the smallest gap at its ends."""
    loose = sorted(
        (each for each in found if not each.closed), key=lambda each: -_size(each.bounds)
    )
    ends = [end for each in loose[:MOST_ROWS] if each is not row
            for end in (each.links[0].start, each.links[-1].end)]  # fmt: skip
    own = row.links[0].start, row.links[-1].end
    pairs = [own, *((one, end) for one in own for end in ends)]
    one, two = min(pairs, key=lambda pair: abs(pair[0] - pair[1]))
    box = joined_bounds(each.bounds for each in loose[:MOST_ROWS])
    middle = complex((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
    place = (one + two) / 2
    field = "line" if abs(one - two) > SMALLEST / 2 else "gap"
    return Refusal(
        field,
        f"{escaped(row.name)} is not closed: the nearest ends lie {{value}} apart"
        f" {near(place, box)} ({{limit}} from the middle)",
        value=abs(one - two), limit=place - middle, show=shown,
        mend="draw it closed, or allow a wider gap",
    )  # fmt: skip
