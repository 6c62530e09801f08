"""Welts: a cord in a folded strip, sewn into a seam of any cover."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.covers.parts.runs import runs
from patternmaker.errors import Refusal
from patternmaker.facts import HAIR, LENGTH
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Path
from patternmaker.pattern.clips import SHORT_OF_SEAM
from patternmaker.pattern.notes import Gauge, Note
from patternmaker.pattern.piece import Edge, Guide, LineKind, Piece

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.runs import Run
    from patternmaker.geometry.contour import Contour
    from patternmaker.materials import Material
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.finishing import WeltWish
    from patternmaker.pattern.piece import Pattern

ROLE = "welt"
DIAGONAL = math.sqrt(2)  # along a strip, of a step square to a cut at 45 degrees
SHOWN = 45.0  # mm of each line drawn at either end of a strip; the rest has room for words
SHORTEST = 50.0  # mm that a strip must hold beyond its slanting ends


def wrapping(cord: float, thickness: float) -> float:
    """Return the width that goes round a cord: the middle of its layer lies half of it outside.

    >>> round(wrapping(3.96875, 0.0) + 2 * 12.7, 3)
    37.868
    """
    return math.pi * (cord + thickness)


def strips_for(length: float, longest: float, lost: float = 0.0) -> int:
    """Return how many strips a length takes, when each loses ``lost`` to its joins.

    >>> strips_for(950, 54)
    18
    """
    return max(1, math.ceil(length / (longest - lost) - 1e-9))


@dataclass(frozen=True)
class Welt:
    """The welt of the runs of one length in one seam.

    Args:
        brief: the seat.
        wish: what the job asks for.
        run: one of the runs that it is sewn into.
        times: how many such runs there are.
        name: what its strips are called.
    """

    brief: Brief
    wish: WeltWish
    run: Run
    times: int
    name: str

    @property
    def material(self) -> Material:
        """What it is cut from."""
        return self.brief.material(ROLE)

    @property
    def is_bias(self) -> bool:
        """Whether its strips are cut on the bias."""
        return self.wish.cut == "bias" if self.wish.cut else self.material.known.frays

    @property
    def wraps(self) -> float:
        """The width round the cord, from sew line to sew line."""
        return wrapping(self.wish.cord, self.material.thick)

    @property
    def asked(self) -> float:
        """The seam allowance that it must have at least."""
        wish = self.wish.allowance
        return self.brief.allowances.seam if wish is None else wish

    @property
    def width(self) -> float:
        """The width of its strip."""
        return self.wraps + 2 * self.asked if self.wish.strip is None else self.wish.strip

    @property
    def allowance(self) -> float:
        """Its seam allowance: a strip that is wider than need be has more."""
        return (self.width - self.wraps) / 2

    @property
    def longest(self) -> float:
        """What the material gives in one strip, from tip to tip."""
        given = self.brief.allowances.boxing_longest
        return self.material.longest_strip if given is None else given

    @property
    def _lost(self) -> float:
        """What a strip loses to slanting ends; on the bias the slant is the cloth's own edge."""
        return 2 * self.wish.join * DIAGONAL + (0.0 if self.is_bias else self.width)

    @property
    def _total(self) -> float:
        """From end to end; an open one goes through the allowance at both its ends."""
        ends = 0.0 if self.run.is_closed else 2 * self.brief.allowances.seam
        return self.run.length + ends + self.wish.spare

    @cached_property
    def count(self) -> int:
        """How many strips one welt is joined from."""
        if not self.run.is_closed and self._total <= self.longest:
            return 1
        return strips_for(self._total, self.longest, self._lost)

    @property
    def is_slanted(self) -> bool:
        """Whether its ends are cut at 45 degrees, to be joined."""
        return self.run.is_closed or self.count > 1

    @property
    def strip(self) -> float:
        """The length of each strip, from join to join."""
        return self._total / self.count

    def objections(self) -> Iterator[Refusal]:
        """Yield whatever keeps it from being cut."""
        if self.allowance < self.asked - HAIR:
            bears = (self.width - 2 * self.asked) / math.pi - self.material.thick
            yield Refusal(
                "cord", "{value} is more than its strip bears beside its allowances ({limit})",
                value=self.wish.cord, limit=max(0.0, bears), show=LENGTH.show,
                mend="widen the strip or leave its width away, narrow the allowance, or take a "
                "thinner cord",
            )  # fmt: skip
        if self.longest < self._lost + SHORTEST:
            yield Refusal(
                "strip", "a strip of {value} leaves a welt too little beside its slanting joins "
                "(at least {limit})", value=self.longest, limit=self._lost + SHORTEST,
                show=LENGTH.show, mend="find a longer strip (allowances.boxing_longest)",
            )  # fmt: skip

    def _x(self, end: float, y: float) -> complex:
        """Return the place of a join line at a height on the strip."""
        return complex(end + y if self.is_slanted else end, y)

    @property
    def _past(self) -> float:
        """What is cut beyond a join line, along the strip."""
        return self.wish.join * DIAGONAL if self.is_slanted else 0.0

    @cached_property
    def _levels(self) -> tuple[float, float]:
        """The heights of its upper and lower cut edge; its upper sew line lies at nought."""
        return self.allowance, self.allowance - self.width

    @property
    def cut(self) -> Contour:
        """The cut line of a strip."""
        top, bottom = self._levels
        compass = Compass(self._x(-self._past, top))
        for end, y in ((-self._past, bottom), (self.strip + self._past, bottom),
                       (self.strip + self._past, top), (-self._past, top)):  # fmt: skip
            compass.line(self._x(end, y))
        return compass.closed()

    def _guides(self) -> Iterator[Guide]:
        top, bottom = self._levels
        for y in (0.0, -self.wraps):
            yield from self._shown(LineKind.SEW, y, 0.0)
        yield from self._shown(LineKind.FOLD, -self.wraps / 2, self._past)
        if self.is_slanted:
            for end in (0.0, self.strip):
                yield Guide(LineKind.JOIN, Path.through(self._x(end, top), self._x(end, bottom)))

    def _shown(self, kind: LineKind, y: float, past: float) -> Iterator[Guide]:
        """Yield a level line at both ends, where it is needed; a short strip has it all along."""
        begin, end = self._x(-past, y), self._x(self.strip + past, y)
        top, bottom = self._levels if self.is_slanted else (0.0, 0.0)
        near, far = complex(SHOWN + top, y), complex(self.strip - SHOWN + bottom, y)
        short = far.real - near.real < SHOWN
        for part in [(begin, end)] if short else [(begin, near), (far, end)]:
            yield Guide(kind, Path.through(*part))

    def piece(self) -> Piece:
        """Return one of its strips as a piece."""
        end = "join" if self.is_slanted else "end"
        run = ((end, 0.0), (end, self.strip))
        edge = Edge(self.name, "edge", Path.through(0, self.strip), run)
        lay = "length on the bias, at 45° to the threads" if self.is_bias else self._straight
        return Piece(
            self.name,
            ROLE,
            self.material,
            self.cut,
            guides=tuple(self._guides()),
            edges={edge.name: edge},
            finished=(self.strip, self.wish.cord + 2 * self.material.thick),
            lay=lay,
            notes=tuple(self._notes()),
            arrow=(1j, ""),
            count=self.count * self.times,
            run=run,
        )

    @property
    def _straight(self) -> str:
        return self.material.lay_boxing.removesuffix(", nap downward")

    def _notes(self) -> Iterator[Note]:
        yield Note("Round a cord of {}, folded along the middle; seam allowance {}",
                   (Gauge(self.wish.cord), self.allowance))  # fmt: skip
        if self.is_slanted:
            yield Note("Join the ends at 45°, at {}, pressed open", (self.wish.join,))
        if self.run.is_closed:
            yield Note("Its ends meet at the {}", (self.run.meets,))
        if self.wish.spare:
            yield Note("{} of its length is to spare", (self.wish.spare,))

    def steps(self) -> Iterator[Note]:
        """Yield how it is made up and sewn on, ahead of the seam."""
        made = (
            "fold it round its cord, show side out, and sew close to the cord with a one-sided foot"
        )
        if self.count > 1:
            yield Note(f"Join the {{}} strips of the {{}} at 45°, {made}",
                       (str(self.count), self.name))  # fmt: skip
        else:
            yield Note(f"{{}}: {made}", (self.name.capitalize(),))
        ends = " Join its ends at 45° at the {}, the cord butted" if self.run.is_closed else ""
        meets = (self.run.meets,) if self.run.is_closed else ()
        others = ", the others likewise" if self.times > 1 else ""
        yield Note(f"Sew it to the {{}} on its sew line, cord inward{others}: eased at corners, "
                   "never stretched, its allowance clipped to {} short of the cord." + ends,
                   (self._sewn_to, SHORT_OF_SEAM, *meets))  # fmt: skip

    @property
    def _sewn_to(self) -> str:
        """The piece that it is sewn to first; the top, where that is made up of several by then."""
        edges = [seam.a for seam in self.run.seams]
        several = len({edge.piece for edge in edges}) > 1
        copies = len({(str(edge), edge.stations[0][1]) for edge in edges}) < len(edges)
        return "top" if self.run.is_closed and (several or copies) else edges[0].piece

    def warnings(self) -> Iterator[Note]:
        """Yield that cloth cut straight does not follow a seam that turns."""
        if self.run.is_closed and self.material.known.frays and not self.is_bias:
            yield Note("{}: cut straight, {} puckers where the seam turns: cut it on the bias",
                       (self.name.capitalize(), self.material.title))  # fmt: skip

    @property
    def _rows(self) -> int:
        """How many strips' width it takes of a roll, short ones side by side."""
        beside = max(1, math.floor(self.longest / self.cut.width))
        return math.ceil(self.count * self.times / beside)

    def says(self) -> Iterator[Note]:
        """Yield what the fit report tells of it."""
        strips = f"{self.count} strips" if self.count > 1 else "one strip"
        times = f"{self.times} of them, each " if self.times > 1 else ""
        yield Note(f"{{}}: {times}{{}} long, in {strips} {{}} wide round a cord of {{}}",
                   (self.name.capitalize(), self.run.length, self.width,
                    Gauge(self.wish.cord)))  # fmt: skip
        if not self.material.known.sold_by_area and math.isfinite(self.longest):
            yield Note("Cut from {} that gives {} a strip, it takes {} of the roll",
                       (self.material.title, self.longest, self.width * self._rows))  # fmt: skip


def asked(pattern: Pattern, brief: Brief) -> Iterator[Welt]:
    """Yield the welts that a job asks for in seams that are there."""
    for wish in brief.finishing.welts:
        by_length: dict[tuple[int, bool], list[Run]] = {}
        for run in runs(pattern, wish.seam):
            by_length.setdefault((round(run.length / HAIR), run.is_closed), []).append(run)
        for number, alike in enumerate(by_length.values(), 1):
            name = f"{wish.seam} welt" + (f" {number}" if len(by_length) > 1 else "")
            yield Welt(brief, wish, alike[0], sum(run.times for run in alike), name)
