"""Every shape, written to a file and traced back in, is the same within 0.005 mm.

The DXF is written here, by ezdxf (a general library), with the bulges of the DXF reference
(VERTEX, code 42); distances are measured by shapely on fine chords.
"""

import io
import math

import ezdxf.document
import pytest
import shapely

from patternmaker.drawing.surface import BLACK
from patternmaker.facts import FILE, Found, facts_of
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.segments import Arc
from patternmaker.outlines import SHAPES
from patternmaker.outlines.traced import Traced
from patternmaker.writers.svg import svg_file
from tests.contours import ring, spread

CLOSE = 0.005  # mm
DRAWN = [
    name for name, kind in SHAPES.all.items()
    if not any(fact.quantity is FILE for fact in facts_of(kind).values())
]  # fmt: skip


def as_svg(contour: Contour) -> Found:
    left, bottom, right, top = contour.bounds
    placed = contour.mapped(1, complex(10 - left, 10 - bottom))
    size = (right - left + 20, top - bottom + 20)
    return Found("seat.svg", svg_file("seat", size, {"sew line": (BLACK, [("seat", placed)])}))


def as_dxf(contour: Contour) -> Found:
    """Return the contour as a closed polyline: a bulge is the tangent of a quarter of the sweep."""
    document = ezdxf.document.Drawing.new("R2010")
    document.header["$INSUNITS"] = 4
    points = [
        (s.start.real, s.start.imag, math.tan(s.sweep / 4) if isinstance(s, Arc) else 0.0)
        for s in contour.segments
    ]
    document.modelspace().add_lwpolyline(points, format="xyb", close=True)
    text = io.StringIO()
    document.write(text)
    return Found("seat.dxf", text.getvalue().encode())


def apart(one: Contour, two: Contour) -> float:
    """Return how far two outlines lie apart, either way."""
    return max(_furthest(one, two), _furthest(two, one))


def _furthest(one: Contour, two: Contour) -> float:
    edge = ring(two, 1e-4).exterior
    return max(edge.distance(shapely.Point(p.real, p.imag)) for p in spread(one, 300))


@pytest.mark.parametrize("write", [as_svg, as_dxf])
@pytest.mark.parametrize("name", DRAWN)
def test_shape_comes_back_from_a_file(name, write):
    contour = SHAPES.all[name]().contour()
    traced = Traced(file=write(contour)).contour()
    assert apart(traced, contour) < CLOSE
    assert traced.length == pytest.approx(contour.length, abs=CLOSE)
