"""The drum-throne or stool saddle: two lobes behind, a waist, a nose."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from patternmaker.facts import at_least, at_most, both, length
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.tangency import Disc, touching
from patternmaker.outlines.registry import Outline, Taken, shape

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.geometry.framing import Ring

SLIGHT = 1.0  # mm; the least hollow at the waist, and between lobes, that is struck as an arc

TIGHTEST = 40.0  # mm; least width of a hollow
FLATTEST = 1e5  # mm; its largest radius
CLEAR_OF_MIDDLE = 0.6  # of the nose's radius; hollows come no nearer to the middle line
STEP = 1.04  # from one radius to the next while the narrowest waist is looked for


class _Saddle(NamedTuple):
    """The middles of its arcs on the left, and their radii; the waist is at y = 0."""

    lobe: complex
    lobe_radius: float
    nose: complex
    nose_radius: float


def _placed(width: float, depth: float, lobe: float, nose: float) -> _Saddle:
    return _Saddle(
        complex(lobe - width / 2, depth / 2 - lobe), lobe, -1j * (depth - nose) / 2, nose / 2
    )


def _straight(width: float, depth: float, lobe: float, nose: float) -> float:
    """Return how wide the waist is where a rule laid from lobe to nose crosses it."""
    at = _placed(width, depth, lobe, nose)
    along = at.nose - at.lobe
    slant = math.asin((at.lobe_radius - at.nose_radius) / abs(along))
    out = -1j * along / abs(along) * complex(math.cos(slant), math.sin(slant))
    touch, way = at.lobe + at.lobe_radius * out, 1j * out
    return -2 * (touch.real - way.real * touch.imag / way.imag)


def _touching(at: _Saddle, radius: float) -> complex:
    """Return the middle of the arc of a radius that touches lobe and nose from outside, at left."""
    along = at.nose - at.lobe
    apart, one, two = abs(along), radius + at.lobe_radius, radius + at.nose_radius
    share = (apart**2 + one**2 - two**2) / (2 * apart)
    aside = math.sqrt(max(0.0, one**2 - share**2))
    return at.lobe + (share - 1j * aside) * along / apart


def _across(at: _Saddle, radius: float) -> float:
    """Return how wide the waist is with hollows of a radius.

    It is infinite where they come too near to the middle line or to the back.
    """
    middle = _touching(at, radius)
    at_waist = middle.real + math.sqrt(max(0.0, radius**2 - middle.imag**2))
    faces_middle = at.nose.imag < middle.imag < at.lobe.imag
    innermost = middle.real + radius if faces_middle else at_waist
    reaches_up = middle.real > at.lobe.real and middle.imag + radius > at.lobe.imag
    too_near = reaches_up or innermost > -CLEAR_OF_MIDDLE * at.nose_radius
    return math.inf if too_near else -2 * at_waist


def _narrowest(width: float, depth: float, lobe: float, nose: float) -> float:
    """Return how wide the waist must be: tighter hollows would not make it narrower."""
    at = _placed(width, depth, lobe, nose)
    radius = max(TIGHTEST, abs(at.nose - at.lobe) - at.lobe_radius - at.nose_radius) / 2
    while radius < FLATTEST and _across(at, STEP * radius) <= _across(at, radius):
        radius *= STEP
    return _across(at, radius) + SLIGHT


@shape("saddle")
class Saddle(Outline):
    """A saddle struck from tangent arcs, as a draughtsman does with compasses.

    A lobe of radius r on each side behind, a nose in front that is half a circle, and on each
    side one hollow arc that touches lobe and nose from outside and passes through the waist. Its
    middle c and radius s follow from |c - lobe| = s + r, |c - nose| = s + n, |c - waist| = s
    (the circle through a point that touches two circles, after Apollonius). Between the lobes the
    back is straight, or dips in an arc that touches both.
    """

    width: float = length("left to right, over the lobes", default=both(in_=14, mm=360), least=150)
    depth: float = length("back edge to tip of the nose", default=both(in_=13, mm=330), least=150)
    lobe: float = length("radius of a lobe behind", default=both(in_=3, mm=75), least=25)
    nose: float = length("left to right across the nose", default=both(in_=5, mm=130), least=40)
    waist: float = length(
        "left to right, halfway between back and nose", default=both(in_=9, mm=230), least=40
    )
    dip: float = length(
        "how far the back dips between the lobes; 0 for straight",
        default=both(in_=1 / 2, mm=12), required=False,
    )  # fmt: skip
    limits = (
        at_most("lobe", lambda width, depth: min(width, depth) / 4,
                "a quarter of the width or of the depth", "make the lobes smaller"),
        at_most("nose", lambda width, depth: min(0.6 * width, depth / 2),
                "six tenths of the width or half the depth",
                "make the nose smaller, or take another shape"),
        at_most("waist", lambda width, depth, lobe, nose:
                    _straight(width, depth, lobe, nose) - SLIGHT,
                "where a rule laid from lobe to nose crosses the middle",
                "measure the waist again: a saddle is hollow there"),
        at_least("waist", _narrowest, "what a hollow between lobe and nose can be",
                 "measure the waist again, or make lobes and nose smaller"),
        at_most("dip", lambda lobe: lobe / 2, "half a lobe", "make the dip smaller"),
    )  # fmt: skip

    def struck(self) -> Ring:
        """Return the outline, its middle lines through the origin but for the dip."""
        at = self._at
        centre, _ = self._hollow()
        to_hollow = (centre - at.lobe) / abs(centre - at.lobe)
        to_nose = (at.nose - centre) / abs(at.nose - centre)
        compass, dips = self._behind(at)
        compass.joint("left lobe").arc(at.lobe, _left_turn(dips, to_hollow))
        compass.joint("left hollow begins").arc(centre, -_left_turn(to_nose, -to_hollow))
        compass.joint("left hollow ends").arc(at.nose, 2 * _left_turn(-to_nose, -1j))
        compass.joint("right hollow begins")
        compass.arc(-centre.conjugate(), -_left_turn(to_nose, -to_hollow))
        compass.joint("right hollow ends")
        compass.arc(-at.lobe.conjugate(), _left_turn(dips, to_hollow)).joint("right lobe")
        if self._dips:
            middle, _ = self._dip()
            compass.arc(middle, -_left_turn(dips, 1j))
        return compass.ring()

    @property
    def _at(self) -> _Saddle:
        return _placed(self.width, self.depth, self.lobe, self.nose)

    @property
    def _dips(self) -> bool:
        return self.dip >= SLIGHT

    def _behind(self, at: _Saddle) -> tuple[Compass, complex]:
        """Return a compass at the left lobe, and where its arc begins, seen from its middle."""
        if not self._dips:
            back = at.lobe + 1j * at.lobe_radius
            return Compass(-back.conjugate()).line(back), 1j
        middle, radius = self._dip()
        way = (middle - at.lobe) / abs(middle - at.lobe)
        low = middle - 1j * radius
        return Compass(low).arc(middle, -_left_turn(-way, -1j)), way

    def _dip(self) -> tuple[complex, float]:
        """Return the middle and radius of the arc between the lobes."""
        apart, rise = -self._at.lobe.real, self.lobe - self.dip
        radius = (apart**2 + rise**2 - self.lobe**2) / (2 * self.dip)
        return 1j * (self._at.lobe.imag + rise + radius), radius

    def _hollow(self) -> Disc:
        """Return the circle of the left hollow."""
        at = self._at
        lobe, nose = Disc(at.lobe, at.lobe_radius), Disc(at.nose, at.nose_radius)
        circles = touching(lobe, nose, complex(-self.waist / 2))
        outside = (
            each for each in circles if ((each.middle - at.lobe) / (at.nose - at.lobe)).imag < 0
        )
        return max(outside, key=lambda circle: circle.radius)

    def taken(self) -> Iterator[Taken]:
        """Yield where each length is taken."""
        at, x, y = self._at, self.width / 2, self.depth / 2
        yield Taken("width", complex(-x, at.lobe.imag), complex(x, at.lobe.imag))
        yield Taken("depth", -1j * y, 1j * y)
        yield Taken("lobe", at.lobe, at.lobe + at.lobe_radius * complex(-0.6, 0.8))
        yield Taken("nose", at.nose - at.nose_radius, at.nose + at.nose_radius)
        yield Taken("waist", complex(-self.waist / 2), complex(self.waist / 2))
        yield Taken("dip", complex(x / 12, y - self.dip), complex(x / 12, y))


def _left_turn(begin: complex, end: complex) -> float:
    """Return the angle from one direction to another, turning left, from 0 to a full turn."""
    turn = math.atan2((end / begin).imag, (end / begin).real)
    return turn if turn >= -1e-12 else turn + 2 * math.pi
