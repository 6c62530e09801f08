"""Whether a contour crosses itself: shapely is asked, but only where it turns both ways."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from patternmaker.geometry.contour import Contour

CHORD = 0.01  # mm between an arc and its chords: a loop too small to show in them is no crossing


def crossing(contour: Contour) -> complex | None:
    """Return a point at which a contour crosses or touches itself, or None."""
    if contour.is_convex:
        return None
    from shapely import Polygon
    from shapely.validation import explain_validity

    says = explain_validity(Polygon([(p.real, p.imag) for p in contour.chords(CHORD)]))
    place = re.search(r"\[(\S+) (\S+)\]", says)
    return complex(float(place[1]), float(place[2])) if place else None
