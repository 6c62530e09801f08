"""Contours that several tests share, and an independent look at them."""

import math

import shapely

from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour, Path


def polygon(*points: complex) -> Contour:
    """Return the polygon through the points, its joints named v0, v1 ..."""
    edges = Path.through(*points, points[0]).segments
    return Contour(edges, {f"v{i}": i for i in range(len(points))})


def l_shape() -> Contour:
    """Return a 300 mm square without its upper right quarter: one corner turns to the right."""
    return polygon(0, 300, 300 + 150j, 150 + 150j, 150 + 300j, 300j)


def horseshoe() -> Contour:
    """Return a 400 mm square with a bay 60 mm wide, 230 mm deep and round at its end."""
    compass = Compass(-200 - 200j).joint("start").line(200 - 200j).line(200 + 200j)
    compass.line(30 + 200j).joint("mouth").line(30).joint("bay").arc(0, -math.pi)
    return compass.line(-30 + 200j).line(-200 + 200j).line(-200 - 200j).closed()


def ring(contour: Contour, tolerance: float = 1e-4) -> shapely.Polygon:
    """Return its chords as a shapely polygon."""
    return shapely.Polygon([(p.real, p.imag) for p in contour.chords(tolerance)])


def spread(contour: Contour, count: int = 400) -> list[complex]:
    """Return points all round a contour."""
    return [contour.point_at(contour.length * i / count) for i in range(count)]


def distance(contour: Contour, point: complex) -> float:
    """Return how far a point lies from a contour, measured by shapely on fine chords."""
    return ring(contour).exterior.distance(shapely.Point(point.real, point.imag))
