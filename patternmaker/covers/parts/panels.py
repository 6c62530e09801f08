"""Panels with outlines of their own, and the seams between them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.covers.parts.tops import FOR_THE_PAPER, centre_cross
from patternmaker.facts import HAIR
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Edge, Guide, LineKind, Piece, Seam
from patternmaker.pattern.stations import Station, notches_round

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.geometry.contour import Contour, Path
    from patternmaker.pattern.brief import Brief, Panel, SeamWish


@dataclass(frozen=True)
class Part:
    """A part of a panel's sew line, anticlockwise from one place to another.

    Args:
        panel: the panel.
        begin: the length along its sew line at which the part begins.
        path: the part itself.
    """

    panel: Panel
    begin: float
    path: Path

    @classmethod
    def between(cls, panel: Panel, begins: str, ends: str) -> Part:
        """Return the part from joint to joint; from a joint to itself it goes all round."""
        begin, end = (panel.outline.station(joint) for joint in (begins, ends))
        return cls(panel, begin, panel.outline.part(begin, end))

    @property
    def length(self) -> float:
        """How long it is."""
        return self.path.length


@dataclass(frozen=True)
class Sewn:
    """A seam between two parts: the second one is walked from its end.

    So is the first, where it is that of the mirror image, which lies on paper the other way round.
    """

    number: int
    one: Part
    two: Part
    shares: tuple[float, ...]
    mirrored: bool = False

    @classmethod
    def of(cls, number: int, wish: SeamWish, panels: dict[str, Panel], spacing: float) -> Sewn:
        """Return the seam that a job asks for, its notches no wider apart than ``spacing``."""
        ends = (wish.ends, wish.begins) if wish.reversed else (wish.begins, wish.ends)
        one = Part.between(panels[wish.panel], *ends)
        two = Part.between(panels[wish.partner], wish.partner_ends, wish.partner_begins)
        count = math.ceil(max(one.length, two.length) / spacing - 1e-9)
        return cls(number, one, two, tuple(i / count for i in range(count + 1)), wish.reversed)

    def _names(self) -> Iterator[str]:
        return (f"{self.number}·{i}" for i in range(len(self.shares)))

    def stations(self, name: str) -> Iterator[Station]:
        """Yield its notches on the panel of that name."""
        first = self._turned if self.mirrored else self.shares
        for part, shares in ((self.one, first), (self.two, self._turned)):
            if part.panel.name == name:
                for station, share in zip(self._names(), shares, strict=True):
                    at = (part.begin + share * part.length) % part.panel.outline.length
                    yield Station(station, at)

    @property
    def _turned(self) -> tuple[float, ...]:
        return tuple(1 - share for share in self.shares)

    @property
    def seam(self) -> Seam:
        """The seam, both edges walked from its first notch to its last."""
        label = f"seam {self.number}"
        first = self.one.path.reversed() if self.mirrored else self.one.path
        one = self._edge(self.one.panel, label, first)
        two = self._edge(self.two.panel, label, self.two.path.reversed())
        name = f"{label} ({self.one.panel.name} reversed)" if self.mirrored else label
        return Seam(one, two, name)

    def _edge(self, panel: Panel, name: str, path: Path) -> Edge:
        shares = zip(self._names(), self.shares, strict=True)
        places = tuple((station, share * path.length) for station, share in shares)
        return Edge(panel.name, name, path, places)


def sewn(brief: Brief) -> list[Sewn]:
    """Return the seams of a brief, numbered in their order."""
    panels = {panel.name: panel for panel in brief.panels}
    spacing = brief.allowances.notch_spacing
    return [Sewn.of(i, wish, panels, spacing) for i, wish in enumerate(brief.seams, 1)]


def piece(brief: Brief, panel: Panel, seams: Sequence[Sewn]) -> Piece:
    """Return a panel as a piece."""
    allowances, material = brief.allowances, brief.material("panel")
    stations = _merged(station for each in seams for station in each.stations(panel.name))
    return Piece(
        panel.name,
        "panel",
        material,
        panel.outline.grown(allowances.seam),
        guides=(Guide(LineKind.SEW, panel.outline), *centre_cross(panel.outline)),
        notches=notches_round(
            panel.outline, stations, allowances.seam,
            allowances.notch_depth(material.known.notch),
        ),
        edges=dict(_edges(panel.outline, panel, seams)),
        finished=(panel.outline.width, panel.outline.height),
        lay=material.lay_flat,
        count=panel.cut,
        reversed=panel.reversed,
        notes=(
            Note("Seam allowance {} all round", (allowances.seam,)),
            FOR_THE_PAPER,
        ),
    )  # fmt: skip


def _edges(outline: Contour, panel: Panel, seams: Sequence[Sewn]) -> Iterator[tuple[str, Edge]]:
    """Yield the whole ring first, which is the main edge, then the part in each seam."""
    ring = Edge(panel.name, "edge", outline, (("back", 0.0), ("back", outline.length)))
    yield ring.name, ring
    for each in seams:
        for edge in (each.seam.a, each.seam.b):
            if edge.piece == panel.name:
                yield edge.name, edge


def _merged(stations: Iterable[Station]) -> list[Station]:
    """Return notches in order; those of several seams at one place become one."""
    kept: list[Station] = []
    for station in sorted(stations, key=lambda each: each.at):
        if kept and station.at - kept[-1].at < HAIR:
            names = dict.fromkeys([*kept[-1].name.split(", "), station.name])
            kept[-1] = Station(", ".join(names), kept[-1].at)
        else:
            kept.append(station)
    return kept
