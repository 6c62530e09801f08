"""Whether a contour crosses itself: shapely is asked, but only where it turns both ways."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from patternmaker.geometry.contour import Contour

CHORD = 0.01  # mm between an arc and its chords: a loop too small to show in them is no crossing


def crossing(contour: Contour) -> complex | None:
    """Return a point at which a contour crosses or touches itself, or None."""
    if contour.is_convex and _winds_once(contour):
        return None
    from shapely import Polygon
    from shapely.validation import explain_validity

    says = explain_validity(Polygon([(p.real, p.imag) for p in contour.chords(CHORD)]))
    place = re.search(r"\[(\S+) (\S+)\]", says)
    return complex(float(place[1]), float(place[2])) if place else None


def _winds_once(contour: Contour) -> bool:
    """Return whether it turns by one full turn in all; a five-pointed star drawn at once by two."""
    turn = sum(contour.corners) + sum(each.sweep for each in contour.segments)
    return turn < 3 * math.pi
