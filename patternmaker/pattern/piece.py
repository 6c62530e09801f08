"""A piece: what the knife cuts, and everything that is marked on it."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import StrEnum
from itertools import pairwise
from typing import TYPE_CHECKING

from patternmaker.materials import EITHER_WAY

if TYPE_CHECKING:
    from collections.abc import Mapping

    from patternmaker.geometry.contour import Contour, Path
    from patternmaker.materials import Material
    from patternmaker.pattern.notes import Note
    from patternmaker.pattern.stitching import Stitching
    from patternmaker.pattern.sundries import Sundry


LEVEL = 1e-6  # of a direction; one that strays less is level, or upright


class LineKind(StrEnum):
    """What a line on a piece is for."""

    CUT = "cut line"
    SEW = "sew line"
    TOPSTITCH = "topstitch"
    FOLD = "fold line"
    JOIN = "join line"
    REFERENCE = "reference line"
    CENTRE = "centre mark"
    NOTCH = "notch"
    CLIP = "clip"
    PLEAT = "pleat"
    RELIEF = "relief cut"
    STAPLE = "staple start"
    SEWING = "sewing start and stop"
    MATCH = "match line"


@dataclass(frozen=True)
class Guide:
    """A line on a piece, other than its cut line."""

    kind: LineKind
    path: Path
    name: str = ""


@dataclass(frozen=True)
class Notch:
    """A mark at the cut edge that meets its partner.

    Args:
        name: the station that it marks.
        feet: where its slits begin on the cut line: one, or two for a double notch.
        inward: the direction of the slits.
        depth: how far they reach, mm.
        to_seam: from the cut line to the sew line there, mm.
    """

    name: str
    feet: tuple[complex, ...]
    inward: complex
    depth: float
    to_seam: float

    @property
    def slits(self) -> tuple[tuple[complex, complex], ...]:
        """Each slit, from the cut line inward."""
        return tuple((foot, foot + self.depth * self.inward) for foot in self.feet)


@dataclass(frozen=True)
class Edge:
    """An edge that is sewn: its sew line, and the stations along it.

    Args:
        piece: the name of the piece.
        name: the name of the edge on it.
        path: the sew line.
        stations: name and length along ``path`` of each notch, in order, first and last included.
    """

    piece: str
    name: str
    path: Path
    stations: tuple[tuple[str, float], ...]

    @property
    def length(self) -> float:
        """From its first station to its last."""
        return self.stations[-1][1] - self.stations[0][1]

    @property
    def spans(self) -> tuple[tuple[str, str, float], ...]:
        """From each station to the next: both names, and the length between."""
        return tuple((a, b, there - here) for (a, here), (b, there) in pairwise(self.stations))

    @property
    def backward(self) -> Edge:
        """The same edge walked from its other end; its path is no longer than itself."""
        begin, end = self.stations[0][1], self.stations[-1][1]
        stations = tuple((name, end - at) for name, at in reversed(self.stations))
        return replace(self, path=self.path.part(begin, end).reversed(), stations=stations)

    def __str__(self) -> str:
        return f"{self.piece}/{self.name}"


@dataclass(frozen=True)
class Piece:
    """One piece of a cover, flat, show side up.

    Args:
        name: what it is called on paper.
        role: what it does in the cover: ``top``, ``boxing`` and so on.
        material: what it is cut from.
        cut: the cut line.
        guides: every other line.
        notches: its notches.
        edges: its sewn edges by name, the main one first.
        finished: width and height once it is sewn, mm; None for a template.
        lay: how it lies on the material.
        notes: what else it must say.
        arrow: the direction that the arrow on it shows, and what it says.
        nap: the direction of the nap, where there is one.
        count: how many of it a seat takes.
        reversed: how many more of its mirror image a seat takes.
        run: for a straight strip, the stations to mark off along it, measured from its first join.
        heart: for a curved or bent strip, the place in its middle about which its label stands.
    """

    name: str
    role: str
    material: Material
    cut: Contour
    guides: tuple[Guide, ...] = ()
    notches: tuple[Notch, ...] = ()
    edges: Mapping[str, Edge] = field(default_factory=dict)
    finished: tuple[float, float] | None = None
    lay: str = ""
    notes: tuple[Note, ...] = ()
    arrow: tuple[complex, str] = (-1j, "FRONT")
    nap: complex | None = None
    count: int = 1
    reversed: int = 0
    run: tuple[tuple[str, float], ...] = ()
    heart: complex | None = None

    @property
    def is_template(self) -> bool:
        """Whether it is traced round instead of sewn; one serves a whole set."""
        return self.finished is None

    @property
    def turn(self) -> int:
        """By how many degrees it may be turned on its material: 360 is not at all."""
        if self.lay == EITHER_WAY:
            return 90
        return 180 if self.nap is None else 360

    @property
    def is_strip(self) -> bool:
        """Whether it is a straight strip, which a rule strikes as well as paper."""
        return bool(self.run)

    @property
    def is_slanted(self) -> bool:
        """Whether it is a strip with slanting ends, which meet those of the next one."""
        ways = (segment.tangent() for segment in self.cut.segments)
        return self.is_strip and any(min(abs(way.real), abs(way.imag)) > LEVEL for way in ways)

    @property
    def sew_length(self) -> float:
        """The length of its main sewn edge, zero if it has none."""
        return next((edge.length for edge in self.edges.values()), 0.0)


@dataclass(frozen=True)
class Seam:
    """Two edges sewn together, walked from notch to notch.

    Args:
        a: the one edge.
        b: the other, walked the same way.
        name: what the bench calls it, such as ``top seam``; seams sewn in one go share it.
        eased: the length that ``a`` is meant to have more than ``b``, worked in evenly.
    """

    a: Edge
    b: Edge
    name: str = "seam"
    eased: float = 0.0

    @property
    def ease(self) -> float:
        """The length that ``a`` has more than ``b``."""
        return self.a.length - self.b.length

    @property
    def spans(self) -> tuple[tuple[str, str, float, float], ...]:
        """Each span: from, to, its length on ``a`` and on ``b``."""
        return tuple(
            (start, end, a, b)
            for (start, end, a), (_, _, b) in zip(self.a.spans, self.b.spans, strict=True)
        )

    @property
    def worst(self) -> float:
        """The largest difference between the edges over one span, beside its share of the ease."""
        share = self.eased / self.b.length
        return max(abs(a - b - share * b) for _, _, a, b in self.spans)


@dataclass(frozen=True)
class Fit:
    """How the finished cover fits the seat.

    Args:
        stretch_round: the finished perimeter as measured over the sewn length; 1.0 is none.
        says: what the report tells.
        warnings: what it warns of.
    """

    stretch_round: float
    says: tuple[Note, ...]
    warnings: tuple[Note, ...] = ()


@dataclass(frozen=True)
class Pattern:
    """Everything that one seat's cover is cut and sewn from.

    Args:
        outline: the seat's outline as it is covered.
        pieces: every piece, the main ones first.
        seams: every seam, in the order of sewing.
        fit: how the finished cover fits.
        steps: the order of work at the bench, with this seat's own numbers.
        stitches: how each seam is sewn, and the thread that it takes.
        sundries: what it takes beside its covering.
    """

    outline: Contour
    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    fit: Fit
    steps: tuple[Note, ...] = ()
    stitches: tuple[Stitching, ...] = ()
    sundries: tuple[Sundry, ...] = ()

    @property
    def seam_names(self) -> tuple[str, ...]:
        """What its seams are called, each once, in the order of sewing."""
        return tuple(dict.fromkeys(seam.name for seam in self.seams))
