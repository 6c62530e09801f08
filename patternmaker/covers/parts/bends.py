"""Where a seat's edge bends: its corners, sharp or rounded, and its curved parts.

A bend is a run of arcs that turn the same way, each tighter than asked for; small kinks and short
straight lines between them belong to it. A corner that turns far at one place is a bend by itself,
and where a corner's arc runs on into a far wider one, a new bend begins.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.facts import HAIR
from patternmaker.geometry.segments import turned
from patternmaker.pattern.stations import CARDINALS, corner_names

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from patternmaker.geometry.contour import Contour

KINK = math.radians(20)  # a corner that turns further is a bend by itself
ALIKE = 2.5  # times the radius; a wider arc that follows is a bend of its own
SHORT = 1.0  # mm; a shorter line between two arcs is part of their bend
NEAR = 1e-6  # mm


class Turn(NamedTuple):
    """A part of a contour that turns: an arc, or a corner of no length."""

    begin: float
    length: float
    angle: float
    way: complex

    @property
    def end(self) -> float:
        """Where it ends, along the contour."""
        return self.begin + self.length

    @property
    def radius(self) -> float:
        """Its radius, zero for a corner."""
        return self.length / abs(self.angle)


class Place(NamedTuple):
    """A place on a bend: along the contour, and the direction outward there."""

    along: float
    outward: complex


@dataclass(frozen=True)
class Bend:
    """A run that turns one way.

    Args:
        name: the corner that it is, or whatever is near.
        turns: its arcs and corners in order; ``begin`` may run past the contour's length.
    """

    name: str
    turns: tuple[Turn, ...]

    @property
    def begin(self) -> float:
        """Where it begins, along the contour."""
        return self.turns[0].begin

    @property
    def length(self) -> float:
        """Its length along the contour, zero for a sharp corner."""
        return self.turns[-1].end - self.begin

    @property
    def angle(self) -> float:
        """How far it turns, in radians, negative where it turns inward."""
        return math.fsum(turn.angle for turn in self.turns)

    @property
    def radius(self) -> float:
        """Its mean radius."""
        return self.length / abs(self.angle)

    @property
    def tightest(self) -> float:
        """The radius of its tightest arc, zero if it has a corner."""
        return min(turn.radius for turn in self.turns)

    @property
    def has_kinks(self) -> bool:
        """Whether there are corners in it, however small."""
        return not all(turn.length for turn in self.turns)

    @property
    def is_sharp(self) -> bool:
        """Whether it is a corner without an arc."""
        return self.length < HAIR

    def at(self, share: float) -> Place:
        """Return the place up to which a share of its turning is done."""
        left = share * self.angle
        *firsts, turn = self.turns
        for each in firsts:
            if abs(left) <= abs(each.angle):
                turn = each
                break
            left -= each.angle
        part = min(1.0, left / turn.angle)
        way = turn.way * turned(part * turn.angle)
        return Place(turn.begin + part * turn.length, -1j * way)


def bends(contour: Contour, follows: float, *, outward: bool = True) -> tuple[Bend, ...]:
    """Return the bends of a contour, in order from its back.

    Args:
        contour: the seat's edge.
        follows: a radius as wide as this or wider is no bend.
        outward: those that turn outward (True) or inward.
    """
    sign = 1 if outward else -1
    runs = _runs(list(_turns(contour, follows, sign)), contour.length)
    names: list[str] = []
    for run in runs:
        names.append(_name(contour, run, names))
    return tuple(Bend(name, tuple(run)) for name, run in zip(names, runs, strict=True))


def _turns(contour: Contour, follows: float, sign: int) -> Iterator[Turn]:
    for i, segment in enumerate(contour.segments):
        corner = contour.corners[i]
        if corner * sign > 0:
            yield Turn(contour.stops[i], 0.0, corner, segment.tangent() * turned(-corner))
        if segment.sweep * sign > 0 and segment.length < follows * abs(segment.sweep):
            yield Turn(contour.stops[i], segment.length, segment.sweep, segment.tangent())


def _runs(turns: Sequence[Turn], whole: float) -> list[list[Turn]]:
    """Return turns put together to runs; the last one may run on past the contour's beginning."""
    if not turns:
        return []
    runs = [[turns[0]]]
    for before, turn in pairwise(turns):
        if _runs_on(before, turn, 0.0):
            runs[-1].append(turn)
        else:
            runs.append([turn])
    if len(runs) > 1 and _runs_on(turns[-1], turns[0], whole):
        first = runs.pop(0)
        runs[-1] += [turn._replace(begin=turn.begin + whole) for turn in first]
    return runs


def _runs_on(before: Turn, turn: Turn, whole: float) -> bool:
    if turn.begin + whole - before.end >= SHORT:
        return False
    small = [abs(each.angle) < KINK for each in (before, turn)]
    if not (before.length and turn.length):
        return all(few or each.length for few, each in zip(small, (before, turn), strict=True))
    tight, wide = sorted((before.radius, turn.radius))
    return all(small) or wide < ALIKE * tight


def is_left(contour: Contour, along: float) -> bool:
    """Return whether a place lies between back and front on the left."""
    back, front = contour.station("back"), contour.station("front")
    return 0 < (along - back) % contour.length < (front - back) % contour.length


def _name(contour: Contour, run: Sequence[Turn], taken: Iterable[str]) -> str:
    """Return the name of the joint in the middle of a run, or of the one that it is near."""
    begin, length = run[0].begin, run[-1].end - run[0].begin
    if length > contour.length - SHORT:
        return "all round"
    middle = begin + length / 2

    def off(name: str) -> float:
        gap = abs(contour.station(name) - middle) % contour.length
        return min(gap, contour.length - gap)

    joint = min((*corner_names(contour), *CARDINALS), key=off)
    name = joint
    if off(joint) > max(length / 4, NEAR):
        side = " left" if is_left(contour, middle) else " right"
        name = f"near {joint}{'' if joint.endswith(side) or joint == side[1:] else side}"
    count = sum(each == name or each.startswith(f"{name} (") for each in taken)
    return f"{name} ({count + 1})" if count else name
