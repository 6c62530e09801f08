"""Seats that are pulled over, as several tests need them."""

import cmath
import math
from typing import Any

from patternmaker.covers.parts.corners import Wish, corners
from patternmaker.covers.parts.draped import Draped
from patternmaker.covers.pull_over import PullOver
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import Pattern, Piece
from tests.covers.seats import SHARP, brief, piece

ROUNDED = RoundedRectangle(width=400, depth=300, corner=60).contour()


def pulled(seat: Brief | None = None, **cover: Any) -> Pattern:
    """Return the pattern of a seat pulled over, its side 60 mm high unless said otherwise."""
    made = PullOver(**{"drop": 60.0, **cover})
    seat = seat or brief(SHARP)
    assert not list(made.objections(seat))
    return made.pattern(seat)


def refused(seat: Brief, **cover: Any) -> list[str]:
    """Return what keeps a seat from being pulled over."""
    made = PullOver(**{"drop": 60.0, **cover})
    return [mistake.told() for mistake in made.objections(seat)]


def top(pattern: Pattern) -> Piece:
    return piece(pattern, "top cover")


def found(seat: Brief, how: str = "by radius", *, pleats: int = 0, depth: float = 12.0, side=60.0):
    """Return the corners of a seat, and the cover that they are corners of."""
    draped = Draped.over(seat, side)
    return corners(draped, Wish(how, pleats, depth, seat.allowances.seam)), draped


def chamfered(line: float, kink: float = 0.0) -> Contour:
    """Return a seat whose left back corner is two arcs with a line or kink (degrees) between."""
    half = math.radians((90 - kink) / 2)
    compass = Compass(150j).joint("back").line(-100 + 150j).arc(-100 + 110j, half)
    way = cmath.rect(1, math.pi + half)
    compass.line(compass.at + line * way)
    way *= cmath.rect(1, math.radians(kink))
    compass.arc(compass.at + 40j * way, half)
    low = complex(compass.at.real, -150)
    compass.joint("left").line(low).line(-150j).joint("front")
    return compass.line(200 - 150j).joint("right").line(200 + 150j).line(150j).closed()
