"""Circles and lines as one kind of curve, and the best one along points.

It is found by G. Taubin's method ("Estimation of planar curves, surfaces and nonplanar space
curves defined by implicit equations", IEEE Transactions on Pattern Analysis and Machine
Intelligence 13 (1991)), which finds straight lines as well.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    from patternmaker.tracing.thinning import Floats, Points


ROUND = 1e-9  # of all; points that lie all round a circle show no way to run


class Curve(NamedTuple):
    """A circle or a line.

    Args:
        at: a point on it.
        way: the direction there.
        bend: one over its radius, positive where it bends left; 0 for a line.
    """

    at: complex
    way: complex
    bend: float

    def strays(self, points: Points) -> Floats:
        """Return how far points lie to the left of it."""
        return strays(points, self.at, self.way, self.bend)

    def nearest(self, point: complex) -> tuple[complex, complex]:
        """Return its point nearest to a point, and the direction there."""
        import numpy as np

        way = self.way + 1j * self.bend * (point - self.at)
        way /= abs(way)
        return point - 1j * way * float(self.strays(np.array([point]))[0]), way


def strays(points: Points, at: Any, way: Any, bend: Any) -> Floats:
    """Return how far points lie to the left of curves: one for all points, or one for each."""
    import numpy as np

    arm = points - at
    left = (arm * np.conj(way)).imag
    square = arm.real**2 + arm.imag**2
    root = np.sqrt(np.maximum(0.0, 1 - 2 * bend * left + bend**2 * square))
    found: Floats = (2 * left - bend * square) / (1 + root)
    return found


def line_along(points: Points) -> Curve:
    """Return the line with the least squares of distances, from first to last."""
    import numpy as np

    middle = complex(points.mean())
    chord = complex(points[-1] - points[0]) or 1.0 + 0j  # a line that comes back has no way to run
    turned = (points - middle) * chord.conjugate()
    angle = 0.5 * float(np.angle((turned**2).sum()))  # of the longer axis of their ellipse
    way = chord / abs(chord) * complex(np.exp(1j * angle))
    return Curve(middle, way, 0.0)


def curve_along(points: Points) -> Curve:
    """Return the circle or line that lies closest to three points or more, from first to last."""
    import numpy as np

    middle = complex(points.mean())
    arm = points - middle
    square = arm.real**2 + arm.imag**2
    mean = float(square.mean())
    rows = np.stack([(square - mean) / (2 * mean**0.5), arm.real, arm.imag])
    _, vectors = np.linalg.eigh(rows @ rows.T)
    a, toward = float(vectors[0, 0]) / (2 * mean**0.5), complex(vectors[1, 0], vectors[2, 0])
    d, steep = -mean * a, abs(toward)
    if steep < ROUND:
        return line_along(points)
    root = (steep**2 - 4 * a * d) ** 0.5
    normal = toward / steep
    off = 2 * d / (root + steep)
    way = -1j * normal
    side = 1.0
    if (complex(points[-1] - points[0]) * way.conjugate()).real < 0:
        way, side = -way, -1.0
    return Curve(middle - off * normal, way, -2 * side * a / root)
