"""What loose covers share: two equal faces, the marks in their seam, and the figures of the fit.

A loose cover is not pulled down, so nothing is taken up: its sew line is the outline itself.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from patternmaker.covers.parts.tops import (
    FOR_THE_PAPER,
    centre_cross,
    clips_of,
    closing,
    part_of_edge,
    sewing_strokes,
)
from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.framing import flipped
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Edge, Guide, LineKind, Piece
from patternmaker.pattern.stations import notches_round

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.stations import Station

Marks = tuple[tuple[str, float], ...]
"""Name and place on a seam of each mark."""


def objections(brief: Brief, sew: Contour) -> Iterator[Refusal]:
    """Yield whatever keeps two faces from being cut along a sew line."""
    seam, half = brief.allowances.seam, min(sew.width, sew.height) / 2
    if seam > half:
        yield Refusal(
            "allowances.seam", "{value} is more than half the cushion ({limit})",
            value=seam, limit=half, show=LENGTH.show,
            mend="make the allowance smaller or check the measurements",
        )  # fmt: skip
        return
    yield from closing("allowances.seam", sew, seam)


def turned_over(contour: Contour) -> Contour:
    """Return a contour seen from its other side; each joint keeps its name and its partner."""
    count = len(contour.segments)
    edges = tuple(flipped(each).reversed() for each in reversed(contour.segments))
    joints = {name: (count - index) % count for name, index in contour.joints.items()}
    return Contour(edges, joints)


def seen_below(places: Iterable[Station], whole: float) -> tuple[Station, ...]:
    """Return the stations of a seam as they lie round the face that is turned over."""
    turned = (replace(place, at=(whole - place.at) % whole) for place in places)
    return tuple(sorted(turned, key=lambda place: place.at))


def faces(
    brief: Brief, sew: Contour, places: tuple[Station, ...], marks: Marks = ()
) -> tuple[Piece, Piece]:
    """Return the top and the bottom, which is the top turned over; only that has the marks."""
    below = seen_below(places, sew.length)
    return (
        face(brief, "top", sew, places, marks),
        face(brief, "bottom", turned_over(sew), below),
    )


def face(
    brief: Brief, name: str, sew: Contour, places: tuple[Station, ...], marks: Marks = ()
) -> Piece:
    """Return a flat face of a cushion, show side up.

    Args:
        brief: the seat.
        name: what it is called; it is its role too.
        sew: its sew line, as seen on its show side.
        places: the stations round it, from the back.
        marks: where sewing starts and stops.
    """
    allowance, material = brief.allowances.seam, brief.material(name)
    cut = sew.grown(allowance)
    depth = brief.allowances.notch_depth(material.known.notch)
    return Piece(
        name,
        name,
        material,
        cut,
        guides=(
            Guide(LineKind.SEW, sew),
            *centre_cross(sew),
            *clips_of(sew, cut, allowance),
            *sewing_strokes(sew, cut, marks, allowance),
        ),
        notches=notches_round(sew, places, allowance, depth),
        edges={"edge": part_of_face(name, sew, places, places[0].name, places[0].name)},
        finished=(sew.width, sew.height),
        lay=material.lay_flat,
        notes=tuple(_notes(name, allowance)),
    )


def part_of_face(
    name: str, sew: Contour, places: tuple[Station, ...], begin: str, end: str
) -> Edge:
    """Return the edge of a face from one station to another, anticlockwise on its show side."""
    return replace(part_of_edge(sew, places, begin, end), piece=name)


def _notes(name: str, allowance: float) -> Iterator[Note]:
    yield Note("Seam allowance {}", (allowance,))
    if name == "bottom":
        yield Note("The top turned over: left and right are changed about")
    yield FOR_THE_PAPER


def foam_objections(outline: Contour, oversize: float) -> Iterator[Refusal]:
    """Yield that the foam can't be drawn so much larger."""
    yield from closing("cover.foam_oversize", outline, oversize)
