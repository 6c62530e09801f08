"""The dome of a seat as it is sewn: what was measured over its crown, and what is taken up.

A finished width of a domed top is its length over the crown. Both ways it is taken up exactly, as
that of a flat top is; the crown is drafted lower by the mean of both rates, and the seam is as wide
as the arcs then make it. Where the take-up is the same both ways that is the same dome, a little
smaller. The arcs are reckoned as if the crown stood in the middle of the width and the depth.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from patternmaker.covers.parts import tops
from patternmaker.errors import Refusal
from patternmaker.facts import ANGLE, LENGTH
from patternmaker.geometry.domes import Dome, over_crown, width_under
from patternmaker.geometry.plain import as_circle
from patternmaker.geometry.segments import radius_over
from patternmaker.pattern.brief import TAKEN
from patternmaker.pattern.clips import clips
from patternmaker.pattern.notes import Note

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.tops import TakeUp
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.brief import Brief

OVER = "crown"  # how a seat may be taken: over its crown
OTHERWISE = "cover the seat boxed, or with panels"
LEAST_SLANT = 15.0  # degrees; an edge that runs more toward the crown takes no dome; our limit


def flat(taped: Contour, rise: float) -> Contour:
    """Return the outline in plan of one whose width and depth were measured over the crown.

    One whose crown is too high for it comes back as it is: `too_high_for_tape` objects to it.
    """
    sizes = (taped.width, taped.height)
    if min(sizes) < math.pi * rise:
        return taped
    across, along = (width_under(size, rise) / size for size in sizes)
    return taped.scaled(across, along)


def in_plan(brief: Brief, rise: float) -> Brief:
    """Return a brief with its outline in plan, however it was measured."""
    return replace(brief, taped=flat(brief.taped, rise)) if brief.taken == OVER else brief


def too_high_for_tape(taped: Contour, rise: float) -> Iterator[Refusal]:
    """Yield that no dome of this height has so little over its crown."""
    limit = min(taped.width, taped.height) / math.pi
    if rise > limit:
        yield Refusal(
            "cover.crown",
            "{value} is more than the seat's least width over the crown allows, a half circle "
            "({limit})",
            value=rise, limit=limit, show=LENGTH.show,
            mend="measure the height again, or say how the seat was taken",
        )  # fmt: skip


def objections(outline: Contour, rise: float, seam: float) -> Iterator[Refusal]:
    """Yield whatever keeps a dome from standing on an outline."""
    dome = Dome.over(outline, rise)
    slant = round(math.degrees(dome.slant), 1)
    if clips(outline, seam, convex=False):
        yield Refusal("outline", "its edge turns inward, and a dome falls away to every side",
                      mend=OTHERWISE)  # fmt: skip
    elif slant < LEAST_SLANT:
        yield Refusal(
            "outline",
            "its edge runs straight toward the middle, but for {value}; a dome takes {limit} or "
            "more",
            value=slant, limit=LEAST_SLANT, show=ANGLE.show, mend=OTHERWISE,
        )  # fmt: skip
    elif rise > dome.nearest:
        yield Refusal(
            "cover.crown", "{value} is more than from the middle to the nearest edge ({limit})",
            value=rise, limit=dome.nearest, show=LENGTH.show,
            mend="measure the height over the seam, not over the floor or the board",
        )  # fmt: skip


def take_ups(brief: Brief, rise: float) -> tuple[TakeUp, TakeUp]:
    """Return the take-up over the crown, across the seat and along it."""
    across, along = tops.take_ups(brief)
    return (
        replace(across, finished=over_crown(across.finished, rise)),
        replace(along, finished=over_crown(along.finished, rise)),
    )


def sewn(brief: Brief, rise: float) -> Dome:
    """Return the dome as it is sewn, its seam in plan."""
    ups, outline = take_ups(brief, rise), brief.outline
    arcs = [up.finished * up.scale for up in ups]
    high = min(rise * math.sqrt(ups[0].scale * ups[1].scale), min(arcs) / math.pi)
    across, along = (
        width_under(arc, high) / size
        for arc, size in zip(arcs, (outline.width, outline.height), strict=True)
    )
    return Dome.over(outline.scaled(across, along), high)


def says(brief: Brief, seat: Brief, rise: float) -> Iterator[Note]:
    """Yield what the fit report tells of a dome; the seat is the brief, its outline in plan."""
    outline = seat.outline
    if brief.taken == OVER:
        yield Note("Measured over the crown: {} across and {} along are {} and {} flat across the "
                   "seams", (*_sizes(brief.taped), *_sizes(seat.taped)))  # fmt: skip
    yield Note("The crown stands {} over the seam: over it, the top is {} across and {} along",
               (rise, *(over_crown(size, rise) for size in _sizes(outline))))  # fmt: skip
    if circle := as_circle(outline):
        yield Note("The dome is a part of a ball of radius {}",
                   (radius_over(circle.radius, rise),))  # fmt: skip
    else:
        yield Note("The dome is taken to rise as an arc of a circle from every place of the seam "
                   "to the crown, which stands over the middle of the area: a model, so make a "
                   "trial in cloth first")  # fmt: skip


def retold(notes: tuple[Note, ...]) -> tuple[Note, ...]:
    """Return notes without what is said of flat tops that were measured over a crown."""
    return tuple(note for note in notes if note != Note(TAKEN[OVER]))


def _sizes(contour: Contour) -> tuple[float, float]:
    return contour.width, contour.height
