"""The long saddle: a narrow nose, and a rear that flares."""

from __future__ import annotations

import cmath
import math
from typing import TYPE_CHECKING

from patternmaker.facts import at_least, at_most, both, length
from patternmaker.geometry.compass import Compass
from patternmaker.outlines.registry import Outline, Taken, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.framing import Ring


def _furthest_flare(width: float, depth: float, nose: float, rear_corner: float) -> float:
    """Return the flare's radius with which it would begin at the nose itself."""
    wider = (width - nose) / 2
    along = depth - rear_corner - nose / 2
    return (along**2 / wider - 2 * rear_corner + wider) / 2


@shape("long saddle")
class LongSaddle(Outline):
    """A long saddle struck from tangent arcs and straight sides.

    The nose is half a circle; straight sides run back from it, level with each other; a hollow arc
    leaves each side and touches, from outside, the arc of the rear corner. Its middle lies its
    own radius f outside the side, and f + r from that of the corner.
    """

    width: float = length("left to right, over the rear", default=both(in_=10, mm=260), least=100)
    depth: float = length("back edge to tip of the nose", default=both(in_=24, mm=600), least=150)
    nose: float = length("left to right across the nose", default=both(in_=5, mm=130), least=40)
    rear_corner: float = length("radius of the rear corners", default=both(in_=2, mm=50), least=10)
    flare: float = length(
        "radius of the hollow by which each side flares", default=both(in_=8, mm=200), least=20
    )
    limits = (
        at_most("nose", lambda width, depth: min(width - 20, depth / 2),
                "the width less 20 mm, or half the depth", "take another shape"),
        at_most("rear_corner", lambda width, depth, nose:
                    min(width / 2, depth / 4, (width - nose) / 2 + nose / 4),
                "what the rear has room for", "make the corner smaller"),
        at_least("flare", lambda width, nose, rear_corner: (width - nose) / 2 - rear_corner,
                 "what leads a side out to the rear corner", "make the flare or the corner larger"),
        at_most("flare", _furthest_flare, "what the length of a side has room for",
                "make the flare smaller"),
    )  # fmt: skip

    def struck(self) -> Ring:
        """Return the outline, its middle at the origin."""
        x, y, n, r = self.width / 2, self.depth / 2, self.nose / 2, self.rear_corner
        corner, flare = complex(r - x, y - r), self._flare
        towards = cmath.phase(flare - corner) % (2 * math.pi)
        turn, hollow = towards - math.pi / 2, towards - math.pi
        compass = Compass(complex(x - r, y)).line(complex(r - x, y))
        compass.joint("back left begins").arc(corner, turn).joint("back left ends")
        compass.arc(flare, -hollow).line(complex(-n, n - y)).joint("nose left")
        compass.arc(1j * (n - y), math.pi).joint("nose right")
        compass.line(complex(n, flare.imag)).arc(-flare.conjugate(), -hollow)
        compass.joint("back right begins").arc(-corner.conjugate(), turn)
        return compass.joint("back right ends").ring()

    @property
    def _flare(self) -> complex:
        """The middle of the left hollow."""
        x, y, r, f = self.width / 2, self.depth / 2, self.rear_corner, self.flare
        aside = -self.nose / 2 - f
        across = aside - (r - x)
        return complex(aside, y - r - math.sqrt((f + r) ** 2 - across**2))

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken."""
        x, y, n, r = self.width / 2, self.depth / 2, self.nose / 2, self.rear_corner
        yield Taken("width", complex(-x, y - r), complex(x, y - r))
        yield Taken("depth", -1j * y, 1j * y)
        yield Taken("nose", complex(-n, n - y), complex(n, n - y))
        corner = complex(x - r, y - r)
        yield Taken("rear_corner", corner, corner + r * complex(0.6, 0.8))
        flare = -self._flare.conjugate()
        way = (corner - flare) / abs(corner - flare) + -1
        yield Taken("flare", flare, flare + self.flare * way / abs(way))
