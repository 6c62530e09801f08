"""What drawings hold before it is lines and arcs: maps of the plane, and ovals.

A drawing's own maps (shears and unequal scales too) are put on its curves as they are, so that
each is followed once, at its true size; and what is a circle then becomes an exact arc.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.geometry.biarcs import CLOSE, fitted
from patternmaker.geometry.segments import FULL_TURN, Arc, turned

if TYPE_CHECKING:
    from collections.abc import Iterable

    from patternmaker.geometry.segments import Segment

SHARE = 1e-6  # of the size of a line; so a small sketch may be enlarged and still be followed
ROUND = 1e-9  # of its radius; an oval that is out of round by less is a circle


class Affine(NamedTuple):
    """A map of the plane that keeps lines straight: z to ``turn`` z + ``flip`` conj(z) + ``shift``.

    Circles stay circles where ``flip`` or ``turn`` is 0.
    """

    turn: complex = 1
    flip: complex = 0
    shift: complex = 0

    @classmethod
    def matrix(cls, *entries: float) -> Affine:
        """Return x' = a x + c y + e, y' = b x + d y + f, from a, b, c, d, e and f."""
        a, b, c, d, e, f = entries
        across, up = complex(a, b), complex(c, d)
        return cls((across - 1j * up) / 2, (across + 1j * up) / 2, complex(e, f))

    def __call__(self, z: complex) -> complex:
        """Return where a point comes to lie."""
        return self.turn * z + self.flip * z.conjugate() + self.shift

    def after(self, first: Affine) -> Affine:
        """Return the map that does ``first``, then this."""
        return Affine(
            self.turn * first.turn + self.flip * first.flip.conjugate(),
            self.turn * first.flip + self.flip * first.turn.conjugate(),
            self(first.shift),
        )

    @property
    def scale(self) -> float:
        """How many times longer it makes a length, in the mean of all ways; 0 if all is flat."""
        return math.sqrt(abs(abs(self.turn) ** 2 - abs(self.flip) ** 2))

    @property
    def is_flat(self) -> bool:
        """Whether it lays the whole plane on one line."""
        one, two = abs(self.turn), abs(self.flip)
        return abs(one - two) <= ROUND * (one + two)


class Oval(NamedTuple):
    """Part of an ellipse: ``centre`` + ``turn`` e^it + ``back`` e^-it, as t runs from ``begin``.

    It is a circle where ``back`` is 0 (run to the left) or ``turn`` is 0 (run to the right).
    """

    centre: complex
    turn: complex
    back: complex
    begin: float = 0.0
    sweep: float = FULL_TURN

    @property
    def hull(self) -> tuple[complex, ...]:
        """Points of it, from end to end."""
        return tuple(self.at(self.begin + self.sweep * i / 4)[0] for i in range(5))

    def mapped(self, by: Affine) -> Oval:
        """Return it mapped."""
        return Oval(
            by(self.centre),
            by.turn * self.turn + by.flip * self.back.conjugate(),
            by.turn * self.back + by.flip * self.turn.conjugate(),
            self.begin,
            self.sweep,
        )

    def at(self, t: float) -> tuple[complex, complex]:
        """Return the point at a parameter, and which way it moves there."""
        out, home = self.turn * turned(t), self.back * turned(-t)
        return self.centre + out + home, 1j * (out - home)

    def segments(self, close: float) -> tuple[Segment, ...]:
        """Return an exact arc if it is round (four for a whole circle), else tangent arcs.

        Raises:
            ValueError: if it is too thin to be followed.
        """
        small, large = sorted((abs(self.turn), abs(self.back)))
        if large * abs(self.sweep) < ROUND * close:
            return ()
        if small > ROUND * large:
            return fitted(self._follow, self.begin, self.begin + self.sweep, close)
        sweep = self.sweep if abs(self.turn) == large else -self.sweep
        count = 4 if abs(sweep) == FULL_TURN else 1
        starts = (self.at(self.begin + self.sweep * i / count)[0] for i in range(count))
        return tuple(Arc(self.centre, start, sweep / count) for start in starts)

    def _follow(self, t: float) -> tuple[complex, complex]:
        point, way = self.at(t)
        return point, way / math.copysign(abs(way), self.sweep)


def ellipse(centre: complex, half_width: float, half_height: float, way: complex = 1) -> Oval:
    """Return an ellipse whose first axis points ``way``; it runs from there to the second."""
    return Oval(centre, (half_width + half_height) / 2 * way, (half_width - half_height) / 2 * way)


def extent(points: Iterable[complex]) -> float:
    """Return the larger side of the box round some points; 0 if there are none."""
    places = tuple(points)
    xs, ys = [z.real for z in places], [z.imag for z in places]
    return max(max(xs) - min(xs), max(ys) - min(ys)) if places else 0.0


def closeness(size: float) -> float:
    """Return how closely to follow the curves of a line of that size."""
    return min(CLOSE, SHARE * size)
