"""The printed pieces of a job, told apart by their cut lines; a plan says only which is which."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from patternmaker.pattern.piece import Pattern, Piece
    from tests.paper.curves import Curve
    from tests.paper.sheets import Print

ALIKE = 0.05  # mm between figures that are taken for the same
BESIDE = 0.5  # mm between a mark and the place where it is looked for
AT_MARK = 1.0  # mm within which a mark is taken for the one that belongs to a place
NAME_OFF = 4.0  # mm from the sew line to the middle of a name beside it
QUARTERS = (1, 1j, -1, -1j)


@dataclass(frozen=True)
class Slits:
    """A printed notch: its slits, and the name by which it is looked for."""

    name: str
    curves: tuple[Curve, ...]

    @property
    def foot(self) -> complex:
        """Where it stands on the cut line: the middle of the feet of a double notch."""
        return sum(slit.start for slit in self.curves) / len(self.curves)

    @property
    def way(self) -> complex:
        """The way that it leads inward."""
        return sum(slit.end - slit.start for slit in self.curves)

    def leads_to(self, line: Curve) -> tuple[float, float] | None:
        """Return how far off a line it stands and where it meets it, None if it leads elsewhere.

        Its foot lies square to the line, but for a corner that turns inward, where it leads to the
        middle of the corner's arc while its sides lie nearer.
        """
        at, off = line.nearest(self.foot)
        beside = self.aside(line.at(at))
        if beside < AT_MARK:
            return off, at
        if beside < off:
            met = min(line.meets(self.foot, self.way), default=(math.inf, 0.0))
            return met if met[0] < off + AT_MARK else None
        return None

    def aside(self, place: complex) -> float:
        """Return how far beside a place its slits lead."""
        return abs(((place - self.foot) / self.way).imag) * abs(self.way)


@dataclass(frozen=True)
class Laid:
    """A piece as it is printed, and how its plan is turned and moved to lie on it."""

    plan: Piece
    cut: Curve
    drawn: tuple[tuple[str, Curve], ...]
    words: tuple[tuple[str, complex], ...]
    turn: complex
    shift: complex

    def on_paper(self, point: complex) -> complex:
        """Return where a place of the plan is looked for."""
        return point * self.turn + self.shift

    @cached_property
    def lines(self) -> list[tuple[str, Curve]]:
        """The printed lines on which a seam may run, or that cross one: their kinds, and they."""
        kinds = ("sew line", "fold line", "join line")
        return [(kind, curve) for kind, curve in self.drawn if kind in kinds]

    @cached_property
    def notches(self) -> list[Slits]:
        """Its printed notches; each slit is the one nearest to where it is looked for."""
        slits = [curve for kind, curve in self.drawn if kind == "notch"]
        return [
            Slits(notch.name, tuple(_nearest(slits, self.on_paper(foot)) for foot in notch.feet))
            for notch in self.plan.notches
        ]

    @cached_property
    def notched(self) -> list[list[float]]:
        """The places of the notches of each line; a notch is that of the first line it leads to."""
        found: list[list[float]] = [[] for _ in self.lines]
        for notch in self.notches:
            leads = [(i, notch.leads_to(line)) for i, (_, line) in enumerate(self.lines)]
            first = min((met[0] for _, met in leads if met), default=0.0)
            for i, met in leads:
                if met and met[0] < first + AT_MARK:
                    found[i].append(met[1])
        return found

    def named_at(self, notch: Slits, sewn: complex) -> list[str]:
        """Return the names that are printed nearest to where a notch meets the sew line."""
        known = {each.name for each in self.notches}
        inside = sewn + NAME_OFF * _unit(notch.way)
        names = [word for word in self.words if word[0] in known]
        nearest = min(names, key=lambda word: abs(word[1] - inside), default=("", 0j))
        return nearest[0].split(", ")

    @property
    def lettered(self) -> int:
        """How many notches have their own name beside them: one face of two alike has most."""
        plan = zip(self.notches, self.plan.notches, strict=True)
        sewn = ((notch, notch.foot + told.to_seam * _unit(notch.way)) for notch, told in plan)
        return sum(notch.name in ", ".join(self.named_at(notch, at)) for notch, at in sewn)

    @property
    def agrees(self) -> int:
        """How many marks of the plan are printed where they are looked for."""
        ends = np.array([end for _, curve in self.drawn for end in (curve.start, curve.end)])
        marks = np.array([self.on_paper(mark) for mark in _marks(self.plan)])
        return int((np.abs(marks[:, None] - ends[None, :]).min(axis=1) < BESIDE).sum())


def _unit(way: complex) -> complex:
    return way / abs(way)


def _nearest(slits: list[Curve], foot: complex) -> Curve:
    return min(slits, key=lambda slit: abs(slit.start - foot))


def _marks(plan: Piece) -> list[complex]:
    """Return the ends of its lines and the feet of its notches."""
    paths = [guide.path.segments for guide in plan.guides]
    ends = [end for path in paths for end in (path[0].start, path[-1].end)]
    return [*ends, *(foot for notch in plan.notches for foot in notch.feet)]


def sewn_pieces(book: Print, patterns: Iterable[Pattern]) -> list[dict[str, Laid]]:
    """Return the printed pieces of each seat that are sewn to something, by name."""
    free = [(form, curve) for form, curve in book.drawn("cut line") if curve.is_closed]
    found = []
    for pattern in patterns:
        sewn = {edge.piece for seam in pattern.seams for edge in (seam.a, seam.b)}
        laid = {}
        for plan in (piece for piece in pattern.pieces if piece.name in sewn):
            laid[plan.name] = _find(book, free, plan)
            free = [each for each in free if each[1] is not laid[plan.name].cut]
        found.append(laid)
    return found


def _find(book: Print, free: list[tuple[str, Curve]], plan: Piece) -> Laid:
    """Return a piece as it is printed: of those of its figures the one on which its marks lie."""
    laid = [each for form, cut in free for each in _lying(book, form, cut, plan)]
    assert laid, f"{plan.name}: no such cut line is printed"
    most = max(each.agrees for each in laid)
    lost = len(_marks(plan)) - most
    assert not lost, f"{plan.name}: {lost} of its marks are not printed where they belong"
    return max((each for each in laid if each.agrees == most), key=lambda each: each.lettered)


def _lying(book: Print, form: str, cut: Curve, plan: Piece) -> Iterator[Laid]:
    """Yield a piece laid on a printed cut line of its length, area and size, every way it fits."""
    told = plan.cut
    if abs(cut.length - told.length) > ALIKE or abs(abs(cut.area) / told.area - 1) > 1e-4:
        return
    left, bottom, right, top = told.bounds
    middle = complex(left + right, bottom + top) / 2
    for turn in QUARTERS:
        size = (told.width, told.height) if turn.imag == 0 else (told.height, told.width)
        if np.allclose(cut.size, size, rtol=0, atol=ALIKE):
            drawn, words = _on(book, form, cut), tuple(book.words(form))
            yield Laid(plan, cut, drawn, words, turn, cut.middle - middle * turn)


def _on(book: Print, form: str, cut: Curve) -> tuple[tuple[str, Curve], ...]:
    """Return what a plate shows within the box of a cut line."""
    left, bottom, right, top = cut.box
    return tuple(
        (kind, curve)
        for each, kind, curve in book.lines
        if each == form and left - 1 < curve.middle.real < right + 1
        and bottom - 1 < curve.middle.imag < top + 1
    )  # fmt: skip
