"""Shapes that several tests of the laying engine share, as rings and as shapely polygons."""

import numpy as np
import shapely

from patternmaker.laying.rings import ring_of, turned
from patternmaker.outlines.circle import Circle
from tests.contours import horseshoe, l_shape, polygon


def polygon_of(ring: np.ndarray, at: complex = 0) -> shapely.Polygon:
    return shapely.Polygon([(z.real, z.imag) for z in ring + at])


def board(width: float, height: float) -> np.ndarray:
    return ring_of(polygon(0, complex(width), complex(width, height), 1j * height))


SHAPES = {
    "board": board(120, 50),
    "disc": ring_of(Circle(diameter=90).contour()),
    "slant": ring_of(polygon(0, 100 + 20j, 130 + 90j, 20 + 60j)),
    "l": ring_of(l_shape()),
    "horseshoe": turned(ring_of(horseshoe()), 1),
}
