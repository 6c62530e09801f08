"""Boxing: the upright strip round a top, in one panel or more."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Path
from patternmaker.pattern.clips import NEAREST, SHORT_OF_SEAM, clips
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Edge, Guide, LineKind, Notch, Piece
from patternmaker.pattern.stations import corner_names, slits_at

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.stations import Station

Joins = tuple[tuple[str, float], ...]
"""Name and place on the seam of each join, in order round it."""

SHORTEST_PANEL = 150.0  # mm of seam; a shorter one is a patch
SAME = 1e-6  # mm; places on a seam that lie closer are the same
SHORTEST_SEAM = 50.0  # mm of seam that a strip must bear beyond its allowances


def joins(sew: Contour, allowances: Allowances) -> Joins:
    """Return where the boxing is joined: at the back, or symmetrically where it takes more panels.

    The front panel is whole, and its joins stand at the back corners, on their side toward the
    back; on a seat without corners they stand as far back as the longest strip lets them.
    """
    whole, longest = sew.length, allowances.boxing_longest
    ends = 2 * allowances.join
    if longest is None or whole + ends + allowances.boxing_spare <= longest:
        return (("back", 0.0),)
    least = max((whole + ends - longest) / 2, SHORTEST_PANEL / 2)
    side = _furthest(sew) if _back_corner(sew) else min(least, _furthest(sew))
    panels = math.ceil(2 * side / (longest - ends - allowances.boxing_spare) - 1e-9)
    return tuple(_joins_behind(side, panels, whole))


def _joins_behind(side: float, panels: int, whole: float) -> Iterator[tuple[str, float]]:
    """Yield the joins in order where equal panels go round the back, ``side`` to either side."""
    left = [side - i * 2 * side / panels for i in range(1, (panels + 1) // 2)][::-1]
    right = [whole - along for along in reversed(left)]
    if panels % 2 == 0:
        yield "back", 0.0
    for number, along in enumerate(left, 1):
        yield f"back join {number}", along
    yield "left join", side
    yield "right join", whole - side
    for number, along in enumerate(right, len(left) + 1):
        yield f"back join {number}", along


def _back_corner(sew: Contour) -> str | None:
    """Return the name of the first corner between the back and the left, or None."""
    return next((c for c in corner_names(sew) if 0 < sew.station(c) <= sew.station("left")), None)


def _furthest(sew: Contour) -> float:
    """Return how far round from the back a join may stand."""
    corner = _back_corner(sew)
    if corner is None:
        return sew.station("left")
    middle, begins = sew.station(corner), f"{corner} begins"
    side = sew.station(begins) if begins in sew.joints else middle
    return side if SHORTEST_PANEL / 2 < side <= middle else middle  # it may begin past the back


def objections(sew: Contour, allowances: Allowances) -> Iterator[Refusal]:
    """Yield whatever keeps the boxing from being cut and sewn."""
    unsewn = allowances.open_at(sew.length)
    if unsewn > sew.length / 4:
        yield Refusal(
            "allowances.sewing_open", "{value} is more than a quarter of the seam ({limit})",
            value=unsewn, limit=sew.length / 4, show=LENGTH.show,
            mend="leave less unsewn",
        )  # fmt: skip
    if allowances.boxing_longest is None:
        return
    ends = 2 * allowances.join
    least = max(
        min(sew.length - 2 * _furthest(sew) + ends, sew.length + ends + allowances.boxing_spare),
        ends + allowances.boxing_spare + SHORTEST_SEAM,
    )
    if allowances.boxing_longest < least - 1e-9:
        yield Refusal(
            "allowances.boxing_longest",
            "{value} is less than the front panel takes, which is whole from one join at the back "
            "round the front to the other ({limit})",
            value=allowances.boxing_longest, limit=least, show=LENGTH.show,
            mend="find a longer strip, or sew one up to that length first",
        )  # fmt: skip


def sewing_places(whole: float, joined: Joins, allowances: Allowances) -> Joins:
    """Return where sewing starts and stops on either side of the join that is closed last."""
    unsewn, last = allowances.open_at(whole), joined[0][1]
    if not unsewn:
        return ()
    return (
        ("start sewing", (last + unsewn) % whole),
        ("stop sewing", (last - unsewn) % whole),
    )


def boxing(
    brief: Brief, sew: Contour, places: tuple[Station, ...], joined: Joins, drop: float
) -> tuple[Piece, ...]:
    """Return the panels of the boxing, in order round the seat."""
    return tuple(
        _Panel(brief, sew, places, joined, drop, index).piece() for index in range(len(joined))
    )


@dataclass(frozen=True)
class _Panel:
    """One panel while it is drafted.

    Its own coordinates: x along the seam from its near join, y up from the seam; show side up,
    top edge up, it reads from left to right as one walks round the seat anticlockwise.
    """

    brief: Brief
    sew: Contour
    places: tuple[Station, ...]
    joined: Joins
    drop: float
    index: int

    @property
    def name(self) -> str:
        if len(self.joined) == 1:
            return "boxing"
        if self.begin[0] == "left join":
            return "boxing front"
        backs = [name for name, _ in self.joined if name != "left join"]
        number = backs.index(self.begin[0]) + 1
        return "boxing back" if len(backs) == 1 else f"boxing back {number}"

    @property
    def begin(self) -> tuple[str, float]:
        return self.joined[self.index]

    @property
    def end(self) -> tuple[str, float]:
        name, at = (*self.joined, self.joined[0])[self.index + 1]
        return name, at + (self.sew.length if self.is_last else 0.0)

    @property
    def is_last(self) -> bool:
        return self.index == len(self.joined) - 1

    @property
    def length(self) -> float:
        return self.end[1] - self.begin[1]

    @property
    def allowances(self) -> Allowances:
        return self.brief.allowances

    @property
    def spare(self) -> float:
        return self.allowances.boxing_spare if self.is_last else 0.0

    @cached_property
    def stops(self) -> tuple[Station, ...]:
        """The stations between the joins, their lengths from the near join."""
        inner = (replace(place, at=x) for place in self.places for x in self._on_it(place.at))
        return tuple(sorted(inner, key=lambda stop: stop.at))

    @property
    def run(self) -> tuple[tuple[str, float], ...]:
        """The same with both joins."""
        inner = ((stop.name, stop.at) for stop in self.stops)
        return (self.begin[0], 0.0), *inner, (self.end[0], self.length)

    def _on_it(self, *places: float) -> Iterator[float]:
        """Yield the places that fall between the joins, as lengths from the near one."""
        for at in places:
            along = (at - self.begin[1]) % self.sew.length
            if SAME < along < self.length - SAME:
                yield along

    @property
    def bottom(self) -> float:
        """The height of the lower cut edge."""
        return -self.drop - self.allowances.wrap

    def piece(self) -> Piece:
        """Return the panel as a piece."""
        material = self.brief.material("boxing")
        depth = self.allowances.notch_depth(material.known.notch)
        return Piece(
            self.name,
            "boxing",
            material,
            self.cut,
            guides=tuple(self._guides()),
            notches=tuple(self._notch(stop, depth) for stop in self.stops),
            edges={edge.name: edge for edge in self._edges()},
            finished=(self.length * self.brief.outline.length / self.sew.length, self.drop),
            lay=material.lay_boxing,
            notes=tuple(self._notes()),
            arrow=(1j, "SEAT"),
            run=self.run,
        )  # fmt: skip

    def _notch(self, stop: Station, depth: float) -> Notch:
        places = slits_at(stop.at, double=stop.double)
        feet = tuple(complex(x, self.allowances.seam) for x in places)
        return Notch(stop.name, feet, -1j, depth, self.allowances.seam)

    @cached_property
    def cut(self) -> Contour:
        """The cut line."""
        left, right = -self.allowances.join, self.length + self.allowances.join + self.spare
        top, bottom = self.allowances.seam, self.bottom
        corners = (complex(left, bottom), complex(right, bottom), complex(right, top))
        compass = Compass(complex(left, top))
        for corner in (*corners, compass.at):
            compass.line(corner)
        return compass.closed()

    def _guides(self) -> Iterator[Guide]:
        left, _, right, top = self.cut.bounds
        stitch, fold = -self.allowances.topstitch_at, -self.drop
        yield Guide(LineKind.SEW, Path.through(0, self.length))
        yield Guide(LineKind.TOPSTITCH, _level(0, self.length, stitch))
        yield Guide(LineKind.FOLD, _level(left, right, fold))
        for x in (0.0, self.length):
            yield Guide(LineKind.JOIN, _upright(x, top, self.bottom))
        for x in self._on_it(*clips(self.sew, self.allowances.seam, convex=True)):
            if not NEAREST < x < self.length - NEAREST:  # the join gives way there by itself
                continue
            yield Guide(LineKind.CLIP, _upright(x, top, SHORT_OF_SEAM), "clip")
        for name, at in sewing_places(self.sew.length, self.joined, self.allowances):
            for x in self._on_it(at):
                yield Guide(LineKind.SEWING, _upright(x, top, 0.0), name)

    def _edges(self) -> Iterator[Edge]:
        yield Edge(self.name, "upper edge", Path.through(0, self.length), self.run)
        height = self.allowances.seam - self.bottom
        for name, x in (("near end", 0.0), ("far end", self.length)):
            path = _upright(x, self.allowances.seam, self.bottom)
            yield Edge(self.name, name, path, (("top", 0.0), ("bottom", height)))

    def _notes(self) -> Iterator[Note]:
        allowances = self.allowances
        yield Note("Seam allowance {}, at the joins {}", (allowances.seam, allowances.join))
        yield Note("Topstitch {} below the seam", (allowances.topstitch_at,))
        yield Note("Sew and topstitch lines are gauges: trace neither on the show side")
        yield Note("Drop {}, wrap-under {}", (self.drop, allowances.wrap))
        if self.is_last and allowances.open_at(self.sew.length):
            yield Note("Close the join at the right end last: leave {} unsewn on each side",
                       (allowances.open_at(self.sew.length),))  # fmt: skip
        if self.spare:
            yield Note("{} spare at the right end: trim at the join line", (self.spare,))


def _level(left: float, right: float, y: float) -> Path:
    return Path.through(complex(left, y), complex(right, y))


def _upright(x: float, top: float, bottom: float) -> Path:
    return Path.through(complex(x, top), complex(x, bottom))
