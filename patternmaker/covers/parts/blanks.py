"""Domed tops in one piece: a flat blank, its edge eased in, or darts sewn in it."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.covers.parts.caps import Cap, Run
from patternmaker.covers.parts.tops import FOR_THE_PAPER, sewing_marks
from patternmaker.geometry.darts import darts
from patternmaker.geometry.plain import as_circle
from patternmaker.pattern.notes import Note, Share
from patternmaker.pattern.piece import Edge, Guide, LineKind, Notch, Piece, Seam
from patternmaker.pattern.stations import Station, foot, notches_round

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.covers.parts.caps import Domed
    from patternmaker.geometry.contour import Contour
    from patternmaker.geometry.darts import Dart

DEEP = 2 / 3  # of the way to the crown, that darts reach unless told; common practice, no source


def surplus(domed: Domed) -> tuple[float, float]:
    """Return what a blank's edge has more than its seam, as a length and as a share of that."""
    more = domed.dome.blank.length - domed.dome.seam.length
    return more, more / domed.dome.seam.length


def eased(domed: Domed) -> Cap:
    """Return the top as a blank whose surplus is worked in evenly from notch to notch."""
    blank = domed.dome.blank
    longer = blank.length / domed.dome.seam.length
    places = [Station(p.name, p.at * longer, p.double) for p in domed.places]
    ats = (*(place.at for place in places), blank.length)
    cut = blank.grown(domed.seam)
    joins = tuple((name, at * longer) for name, at in domed.joins)
    marks = sewing_marks(blank, cut, joins, domed.brief.allowances)
    notches = notches_round(blank, places, domed.seam, domed.depth, cut)
    more = Note("Its edge has {} ({}) more than the seam: work it in evenly", _told(domed))
    piece = _piece(domed, cut, marks, notches, more)
    runs = (Run("top", blank, 0, ats, is_eased=True),)
    return Cap((piece,), runs)


def _told(domed: Domed) -> tuple[float, Share]:
    more, share = surplus(domed)
    return more, Share(share)


def _piece(
    domed: Domed, cut: Contour, guides: Iterable[Guide], notches: tuple[Notch, ...], *says: Note
) -> Piece:
    blank = domed.dome.blank
    run = (("back", 0.0), ("back", blank.length))
    return Piece(
        "top", "top", domed.material, cut,
        guides=(Guide(LineKind.SEW, blank), *domed.cross(), *guides),
        notches=notches,
        edges={"edge": Edge("top", "edge", blank, run)},
        finished=domed.finished,
        lay=domed.material.lay_flat,
        notes=tuple(_notes(domed, says)),
    )  # fmt: skip


def _notes(domed: Domed, says: Iterable[Note]) -> Iterator[Note]:
    yield Note("Seam allowance {}", (domed.seam,))
    if circle := as_circle(domed.dome.blank):
        yield Note("Trammel: cut {}, sew {}", (circle.radius + domed.seam, circle.radius))
    if domed.material.must_lie_one_way:
        yield Note("Keep the arrow's way: the take-up differs by direction")
    yield from says
    yield FOR_THE_PAPER


def darted(domed: Domed, depth: float | None) -> Cap:
    """Return the top as a blank whose surplus is taken out by darts."""
    blank, ends = domed.dome.blank, [at for _, at in domed.parts]
    found = darts(domed.dome, ends, reach(domed, depth))
    cut = blank.grown(domed.seam)
    runs = tuple(_runs(domed, found))
    inner = [
        Station(domed.places[(run.first + i) % len(domed.places)].name, at)
        for run in runs
        for i, at in enumerate(run.ats)
        if 0 < i < len(run.ats) - 1
    ]
    notches = (
        *(
            _mouth(domed, cut, name, each)
            for (name, _), each in zip(domed.parts, found, strict=True)
        ),
        *notches_round(blank, inner, domed.seam, domed.depth, cut),
    )
    legs = (Guide(LineKind.SEW, leg) for each in found for leg in (each.before, each.after))
    piece = _piece(domed, cut, legs, notches, *says_of_darts(found, reach(domed, depth)))
    return Cap((piece,), runs, tuple(_seams(domed, found)))


def reach(domed: Domed, depth: float | None) -> float:
    """Return how far darts reach in from the seam: as given, else as is usual."""
    return DEEP * shortest(domed) if depth is None else depth


def shortest(domed: Domed) -> float:
    """Return the length from the crown to the seam along the shortest of the dart lines."""
    return min(domed.dome.meridian(at).length for _, at in domed.parts)


def says_of_darts(found: Sequence[Dart], depth: float) -> Iterator[Note]:
    """Yield how many darts there are, how wide at the seam, and how long."""
    widths = sorted(each.width for each in found)
    wide = "{} wide" if widths[-1] - widths[0] < 0.25 else "{} to {} wide"
    values = widths[:1] if wide == "{} wide" else [widths[0], widths[-1]]
    yield Note(f"{len(found)} darts, {wide} at the seam, {{}} long: fold, sew from edge to tip, "
               "trim to the allowance", (*values, depth))  # fmt: skip


def _runs(domed: Domed, found: Sequence[Dart]) -> Iterator[Run]:
    """Yield what is left of the edge after each dart; the seam is as long between the same."""
    whole = domed.dome.blank.length
    for (first, places), (here, after) in zip(
        domed.sections(), pairwise((*found, found[0])), strict=True
    ):
        left = (after.begin - here.end) % whole
        share = left / (places[-1].at - places[0].at)
        ats = (here.end + (place.at - places[0].at) * share for place in places)
        yield Run("top", domed.dome.blank, first, tuple(ats))


def _mouth(domed: Domed, cut: Contour, name: str, dart: Dart) -> Notch:
    """Return the two slits where the legs of a dart come to the cut edge.

    They are named past the tip, where no leg runs through the name.
    """
    feet = tuple(foot(domed.dome.blank, cut, at, domed.seam) for at in (dart.begin, dart.end))
    way = (dart.tip - dart.middle) / abs(dart.tip - dart.middle)
    past_the_tip = abs(sum(feet) / 2 - dart.tip)
    return Notch(name, feet, way, domed.depth, past_the_tip)


def _seams(domed: Domed, found: Sequence[Dart]) -> Iterator[Seam]:
    """Yield each dart: one leg sewn to the other, from its mouth to its tip."""
    for (name, _), each in zip(domed.parts, found, strict=True):
        a, b = (
            Edge("top", f"{name}, {side} leg", leg, (("tip", 0.0), (name, leg.length))).backward
            for side, leg in (("first", each.before), ("second", each.after))
        )
        yield Seam(a, b, "dart")
