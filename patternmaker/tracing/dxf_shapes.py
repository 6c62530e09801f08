"""What the entities of a DXF draw, seen from above, in the drawing's own units.

Group codes are those of the DXF reference. A bulge is the tangent of a quarter of an arc's sweep
(VERTEX, code 42); an object coordinate system that looks down from above or up from below keeps
things flat (extrusion 0, 0, 1 or 0, 0, -1), and any other does not.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from patternmaker.errors import Refusal
from patternmaker.geometry.segments import FULL_TURN
from patternmaker.tracing.beziers import splines
from patternmaker.tracing.curves import Affine, Oval, extent
from patternmaker.tracing.gathering import Stroke, printable

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from patternmaker.tracing.gathering import Piece

FLAT = 1e-6  # of the size of an entity (or of an extrusion's 1); a smaller rise is none
STRAIGHT = 1e-8  # bulge; an arc that turns less misses its chord by less than that share of it
WHOLE = 1e-8  # radians; a sweep that lacks less is a full turn
HIGHEST = 15  # degree of a spline; drawing programs write 2, 3 or 5
FRAME = 16  # VERTEX, code 70: a control point of a smoothed polyline, not a point of it


def strokes(entity: Any) -> tuple[Stroke, ...] | None:
    """Return what an entity of ezdxf draws; None if its kind draws no lines that are read here.

    Raises:
        Refusal: if it is not flat, or broken.
    """
    kind = entity.dxftype()
    if kind == "POLYLINE" and not (entity.is_2d_polyline or entity.is_3d_polyline):
        return None
    return SHAPES[kind](entity) if kind in SHAPES else None


def facing(entity: Any) -> Affine:
    """Return the map from an entity's own coordinates to those of the drawing (code 210)."""
    x, y, z = entity.dxf.extrusion
    if not (abs(x) <= FLAT * abs(z) and abs(y) <= FLAT * abs(z) and z):
        raise refused(entity, "is not flat")
    return Affine() if z > 0 else Affine(0, -1)


def refused(entity: Any, says: str) -> Refusal:
    """Return the refusal of an entity, by its layer and handle."""
    mend = "draw it anew in the plane" if "flat" in says else "draw it anew"
    return Refusal("", f"holds a thing that {says}: {{value}}", value=called(entity), mend=mend)


def called(entity: Any) -> str:
    """Return the layer, the kind and the handle of an entity."""
    return printable(f"{entity.dxf.layer} {entity.dxftype()} {entity.dxf.handle}")


def _flat(entity: Any, points: Iterable[Sequence[float]]) -> list[complex]:
    """Return points of the drawing, all on one level, seen from above."""
    places = [(float(p[0]), float(p[1]), float(p[2])) for p in points]
    flat = [complex(x, y) for x, y, _ in places]
    heights = [z for _, _, z in places]
    if max(heights) - min(heights) > FLAT * extent(flat):
        raise refused(entity, "is not flat")
    return flat


def _line(entity: Any) -> tuple[Stroke, ...]:
    start, end = _flat(entity, (entity.dxf.start, entity.dxf.end))
    return (Stroke(start, (end,)),)


def _circle(entity: Any) -> tuple[Stroke, ...]:
    return _round(entity, 0.0, FULL_TURN)


def _arc(entity: Any) -> tuple[Stroke, ...]:
    begin, end = entity.dxf.start_angle, entity.dxf.end_angle
    return _round(entity, math.radians(begin), math.radians(end - begin))


def _round(entity: Any, begin: float, sweep: float) -> tuple[Stroke, ...]:
    centre = complex(entity.dxf.center.x, entity.dxf.center.y)
    oval = Oval(centre, abs(entity.dxf.radius), 0, begin, _positive(sweep))
    return (_alone(oval).mapped(facing(entity)),)


def _ellipse(entity: Any) -> tuple[Stroke, ...]:
    axis = entity.dxf.major_axis
    _flat(entity, ((0, 0, 0), axis))
    rise = entity.dxf.ratio * (1 if facing(entity) == Affine() else -1)
    way, centre = complex(axis.x, axis.y), complex(entity.dxf.center.x, entity.dxf.center.y)
    begin, end = entity.dxf.start_param, entity.dxf.end_param
    oval = Oval(centre, way * (1 + rise) / 2, way * (1 - rise) / 2, begin, _positive(end - begin))
    return (_alone(oval),)


def _positive(sweep: float) -> float:
    """Return a sweep to the left, of at most one turn."""
    rest = sweep % FULL_TURN
    return rest if WHOLE < rest < FULL_TURN - WHOLE else FULL_TURN


def _alone(oval: Oval) -> Stroke:
    return Stroke(oval.at(oval.begin)[0], (oval,), oval.sweep == FULL_TURN)


def _lwpolyline(entity: Any) -> tuple[Stroke, ...]:
    vertices = [(complex(x, y), float(bulge)) for x, y, bulge in entity.get_points("xyb")]
    return _bulged(vertices, facing(entity), closed=entity.closed)


def _polyline(entity: Any) -> tuple[Stroke, ...]:
    vertices = [each for each in entity.vertices if not each.dxf.flags & FRAME]
    if entity.is_3d_polyline and vertices:
        points = _flat(entity, [each.dxf.location for each in vertices])
        return _bulged([(each, 0.0) for each in points], Affine(), closed=entity.is_closed)
    flat = [(complex(p.x, p.y), bulge)
            for p, bulge in ((v.dxf.location, v.dxf.bulge) for v in vertices)]  # fmt: skip
    return _bulged(flat, facing(entity), closed=entity.is_closed)


def _bulged(
    vertices: list[tuple[complex, float]], by: Affine, *, closed: bool
) -> tuple[Stroke, ...]:
    """Return a chain of lines and arcs: each vertex with the bulge of what leaves it."""
    if len(vertices) < 2:
        return ()
    steps = pairwise([*vertices, vertices[0]] if closed else vertices)
    pieces = tuple(_bulge(start, bulge, end) for (start, bulge), (end, _) in steps)
    return (Stroke(vertices[0][0], pieces, closed).mapped(by),)


def _bulge(start: complex, bulge: float, end: complex) -> Piece:
    if abs(bulge) < STRAIGHT or start == end:
        return end
    arm = -(end - start) * complex(0.5, (1 - bulge * bulge) / (4 * bulge))
    return Oval(start - arm, arm, 0, 0.0, 4 * math.atan(bulge))


def _spline(entity: Any) -> tuple[Stroke, ...]:
    if len(entity.control_points):
        points, degree = _flat(entity, entity.control_points), entity.dxf.degree
        knots, weights = tuple(entity.knots), tuple(entity.weights)
    else:  # points that it passes, and nothing else
        curve = entity.construction_tool()
        points, degree = _flat(entity, curve.control_points), curve.degree
        knots, weights = tuple(curve.knots()), tuple(curve.weights())
    knots = knots or _even(len(points), degree)
    if not _is_sound(len(points), weights, knots, degree):
        raise refused(entity, "is broken")
    pieces = tuple(splines(tuple(points), weights, knots, degree))
    jumps = [abs(two.hull[0] - one.hull[-1]) for one, two in pairwise(pieces)]
    if not pieces or max(jumps, default=0.0) > FLAT * extent(points):
        raise refused(entity, "is broken")
    return (Stroke(pieces[0].hull[0], pieces, bool(entity.closed)),)


def _even(count: int, degree: int) -> tuple[float, ...]:
    """Return the knots of a spline that gives none: one apart, and many at its ends."""
    inner = max(0, count - degree)
    return (0.0,) * degree + tuple(map(float, range(inner + 1))) + (float(inner),) * degree


def _is_sound(
    count: int, weights: tuple[float, ...], knots: tuple[float, ...], degree: int
) -> bool:
    return (
        1 <= degree <= min(HIGHEST, count - 1)
        and len(knots) == count + degree + 1
        and len(weights) in {0, count}
        and all(one <= two for one, two in pairwise(knots))
        and all(weight > 0 for weight in weights)
    )


SHAPES: dict[str, Callable[[Any], tuple[Stroke, ...]]] = {
    "LINE": _line,
    "CIRCLE": _circle,
    "ARC": _arc,
    "ELLIPSE": _ellipse,
    "LWPOLYLINE": _lwpolyline,
    "POLYLINE": _polyline,
    "SPLINE": _spline,
}
