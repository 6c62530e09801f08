"""The top: the panel that one sits on, its take-up, and its edge."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.covers.parts.joining import sewing_places
from patternmaker.errors import Refusal
from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.plain import as_circle
from patternmaker.geometry.touching import encloses, enters
from patternmaker.pattern.clips import SHORT_OF_SEAM, clips
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Edge, Guide, LineKind, Piece
from patternmaker.pattern.stations import foot, notches_round

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.geometry.segments import Box
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.stations import Station

FOR_THE_PAPER = Note(
    "Sew line and centre are for the paper: trace or prick neither on the show side"
)
CROSS = 10.0  # mm; half the centre cross
CLEAR = 3.0  # mm between it and the nearest line


@dataclass(frozen=True)
class TakeUp:
    """What is taken off one way of a panel, exactly.

    For a finished width W, seam allowance a and rate r the panel is cut (W + 2a)(1 - r) wide, or
    the nearest whole number of ``step`` to it.

    >>> TakeUp(finished=13.75, allowance=0.5, rate=0.025).cut
    14.38125
    >>> TakeUp(finished=13.75, allowance=0.5, rate=0.025, step=0.25).cut
    14.5
    """

    finished: float
    allowance: float
    rate: float
    step: float | None = None

    @property
    def cut(self) -> float:
        """The cut width."""
        exact = (self.finished + 2 * self.allowance) * (1 - self.rate)
        return exact if self.step is None else math.floor(exact / self.step + 0.5) * self.step

    @property
    def scale(self) -> float:
        """The sewn width over the finished one."""
        return (self.cut - 2 * self.allowance) / self.finished

    @property
    def on_finished(self) -> float:
        """The rate that the finished width sees."""
        return 1 - self.scale

    @property
    def on_cut(self) -> float:
        """The rate that the cut width comes to once it is rounded."""
        return 1 - self.cut / (self.finished + 2 * self.allowance)


def rates(brief: Brief, role: str = "top") -> tuple[float, float]:
    """Return the rate of take-up across the seat, and along it; an old cover has had its own."""
    material = brief.material(role)
    if brief.taken == "old cover":
        return 0.0, 0.0
    along = material.along if material.must_lie_one_way else material.across
    return material.across, along


def take_ups(brief: Brief, role: str = "top") -> tuple[TakeUp, TakeUp]:
    """Return the take-up across a flat top, and along it."""
    allowances = brief.allowances
    sizes = brief.outline.width, brief.outline.height
    across, along = (
        TakeUp(size, allowances.seam, rate, allowances.round_cut_to)
        for size, rate in zip(sizes, rates(brief, role), strict=True)
    )
    return across, along


def sew_line(brief: Brief) -> Contour:
    """Return the top's sew line: the outline, scaled about its centre by the take-up each way."""
    across, along = take_ups(brief)
    return brief.outline.scaled(across.scale, along.scale)


def closing(field: str, contour: Contour, by: float) -> Iterator[Refusal]:
    """Yield the refusal of ``field`` if the parallel of a contour closes up on itself."""
    try:
        contour.grown(by)
    except Refusal as mistake:
        yield mistake.at(field)


def top(
    brief: Brief,
    sew: Contour,
    places: tuple[Station, ...],
    joins: tuple[tuple[str, float], ...],
    taken: tuple[TakeUp, TakeUp] | None = None,
) -> Piece:
    """Return the top with its lines, notches and marks.

    Args:
        brief: the seat.
        sew: its sew line.
        places: the stations round it.
        joins: where the boxing is joined.
        taken: the take-up each way, where it is not that of a flat top.
    """
    across, along = taken or take_ups(brief)
    allowances, material = brief.allowances, brief.material("top")
    depth = allowances.notch_depth(material.known.notch)
    cut = sew.grown(allowances.seam)
    return Piece(
        "top",
        "top",
        material,
        cut,
        guides=(
            Guide(LineKind.SEW, sew),
            *centre_cross(sew),
            *clips_of(sew, cut, allowances.seam),
            *sewing_marks(sew, cut, joins, allowances),
        ),
        notches=notches_round(sew, places, allowances.seam, depth),
        edges={"edge": part_of_edge(sew, places, places[0].name, places[0].name)},
        finished=(across.finished, along.finished),
        lay=material.lay_flat,
        notes=tuple(_notes(brief, sew)),
    )


def part_of_edge(sew: Contour, places: tuple[Station, ...], begin: str, end: str) -> Edge:
    """Return the edge from one station to another, all the way round where they are the same."""
    names = [place.name for place in places]
    first = names.index(begin)
    ring = [(place.name, place.at) for place in places[first:]]
    ring += [(place.name, place.at + sew.length) for place in places[: first + 1]]
    last = next(i for i, (name, _) in enumerate(ring) if i and name == end)
    return Edge("top", "edge", sew, tuple(ring[: last + 1]))


def centre_cross(contour: Contour) -> Iterator[Guide]:
    """Yield the two strokes of the cross in the middle of a panel, if that lies well inside it."""
    centre = contour.middle
    if not encloses(contour, centre) or enters(contour, _square(centre, CROSS + CLEAR)):
        return
    for way in (1, 1j):
        stroke = Path.through(centre - CROSS * way, centre + CROSS * way)
        yield Guide(LineKind.CENTRE, stroke, "centre")


def _square(centre: complex, half: float) -> Box:
    return centre.real - half, centre.imag - half, centre.real + half, centre.imag + half


def clips_of(sew: Contour, cut: Contour, allowance: float) -> Iterator[Guide]:
    """Yield the clips of a panel's own allowance where its edge turns inward."""
    for along in clips(sew, allowance, convex=False):
        inner = sew.point_at(along) + SHORT_OF_SEAM * sew.outward(along)
        stroke = Path.through(foot(sew, cut, along, allowance), inner)
        yield Guide(LineKind.CLIP, stroke, "clip")


def sewing_marks(
    sew: Contour, cut: Contour, joins: tuple[tuple[str, float], ...], allowances: Allowances
) -> Iterator[Guide]:
    """Return where sewing starts and stops on either side of the join that is closed last."""
    places = sewing_places(sew.length, joins, allowances)
    return sewing_strokes(sew, cut, places, allowances.seam)


def sewing_strokes(
    sew: Contour, cut: Contour, places: Iterable[tuple[str, float]], allowance: float
) -> Iterator[Guide]:
    """Yield the strokes at which sewing starts or stops, by name and place on the sew line."""
    for name, along in places:
        stroke = Path.through(foot(sew, cut, along, allowance), sew.point_at(along))
        yield Guide(LineKind.SEWING, stroke, name)


def _notes(brief: Brief, sew: Contour) -> Iterable[Note]:
    allowances = brief.allowances
    across, along = rates(brief)
    yield Note("Seam allowance {}", (allowances.seam,))
    if allowances.is_graded:
        yield Note("Graded seam, {} on the boxing: lay sew line to sew line, not edge to edge",
                   (allowances.upper_edge,))  # fmt: skip
    if circle := as_circle(sew):
        yield Note("Trammel: cut {}, sew {}", (circle.radius + allowances.seam, circle.radius))
    if across != along:
        yield Note("Keep the arrow's way: the take-up differs by direction")
    yield FOR_THE_PAPER
