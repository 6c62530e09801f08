"""Walls and bent tops laid flat against published developments; the source stands beside each."""

import cmath
import math

import numpy as np
import pytest
from scipy.integrate import quad

from patternmaker.covers.boxed import TO_BASE, Boxed
from patternmaker.covers.parts.forms import Form
from patternmaker.covers.parts.walls import Wall
from patternmaker.geometry.bending import Bend, Bow, Spread, Straight
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.unrolling import Flat
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from tests.covers.seats import brief

IN = 25.4  # mm


def laid(outline: Contour, outset: float = 0.0, **cover: float) -> Flat:
    """Return the whole wall of a seat, flat, joined at the back."""
    boxed = Boxed(**{"walls": TO_BASE, **cover})  # type: ignore[arg-type]
    form = boxed.form(brief(outline, base=outline.grown(outset)))
    wall = boxed.wall(form)
    return wall.part(0.0, wall.sew.length)


def area(flat: Flat) -> float:
    ring = [*flat.lower.chords(1e-5), *flat.upper.reversed().chords(1e-5)]
    ring.append(ring[0])
    points = np.array(ring)
    return float(np.sum(np.imag(np.conj(points[:-1]) * points[1:])) / 2)


@pytest.mark.parametrize(("diameter", "slope"), [(300, 0.3), (360, -0.5), (320, 0.05)])
def test_pipe_cut_obliquely_unrolls_to_a_cosine(diameter, slope):
    """The mitre of a pipe in sheet-metal drafting: over s along the girth its cut stands
    r tan(alpha) cos(s / r) above the middle (general knowledge, from memory)."""
    radius = diameter / 2
    flat = laid(Circle(diameter=diameter).contour(), drop=200 - slope * radius,
                drop_back=200 + slope * radius)  # fmt: skip
    for point in flat.upper.chords(1e-3):
        s = point.real - flat.upper.segments[0].start.real
        height = point.imag - flat.lower.segments[0].start.imag
        assert height == pytest.approx(200 + radius * slope * math.cos(s / radius), abs=0.001)
    for point in flat.lower.chords(1e-3):
        assert point.imag == pytest.approx(flat.lower.segments[0].start.imag, abs=1e-6)
    assert flat.lower.length == pytest.approx(math.pi * diameter)


@pytest.mark.parametrize(
    ("small", "large", "height", "inner", "outer", "degrees"),
    [
        (5, 8, 4, 7.12000312, 11.39200499, 126.404439),
        (300, 400, 120, 390, 520, 138.461538),
    ],
)
def test_frustum_of_a_cone_unrolls_to_a_ring_sector(small, large, height, inner, outer, degrees):
    """s = sqrt(h^2 + (r2 - r1)^2), R = s r / (r2 - r1), angle = 360 r2 / R2: a geometry course's
    "Net of a frustum", which works the first one (7.12, 11.39, 126.4 degrees); in inches here, so
    that it is as large as a seat. The second is reckoned by the same formulas."""
    unit = 40.0 if small < 10 else 1.0
    flat = laid(Circle(diameter=small * unit).contour(), (large - small) / 2 * unit,
                drop=height * unit)  # fmt: skip
    (above, below), (far_above, far_below) = flat.ends
    turn = abs(cmath.phase((far_below - far_above) / (below - above)))
    assert math.degrees(turn) == pytest.approx(degrees, abs=1e-6)
    apex = above - (below - above) / abs(below - above) * inner * unit
    for edge, radius in ((flat.upper, inner), (flat.lower, outer)):
        off = np.abs(np.array(edge.chords(0.01)) - apex)
        assert off == pytest.approx(np.full(off.shape, radius * unit), rel=1e-7)


def test_lateral_area_and_chord_of_a_frustum():
    """Diameters 300 and 400, height 120: by the formulas of "Net of a frustum", and
    A = pi s (r1 + r2) (Machinery's Handbook, frustum of cone; page from memory)."""
    flat = laid(Circle(diameter=300).contour(), 50, drop=120)
    (above, below), (_, far_below) = flat.ends
    assert abs(above - below) == pytest.approx(130)
    assert abs(far_below - below) == pytest.approx(972.416892, abs=1e-5)
    assert area(flat) == pytest.approx(142942.466, abs=0.05)


@pytest.mark.parametrize(("radius", "height", "degrees"), [(8, 15, 169.411765), (3, 4, 216)])
def test_frustum_unrolls_through_the_angle_of_its_cone(radius, height, degrees):
    """A cone unrolls through 360 r / s: a table of cones; the second, Machinery's Handbook p. 90,
    of area 47.124. Here a quarter is cut off below the tip."""
    unit, cut = 40.0, 0.25
    flat = laid(Circle(diameter=2 * radius * unit * cut).contour(), radius * unit * (1 - cut),
                drop=height * unit * (1 - cut))  # fmt: skip
    (above, below), (far_above, far_below) = flat.ends
    turn = abs(cmath.phase((far_below - far_above) / (below - above)))
    shown = math.degrees(turn) % 360
    assert min(abs(shown - degrees), abs(360 - shown - degrees)) < 1e-6
    whole = math.pi * radius * math.hypot(radius, height) * unit**2
    assert area(flat) == pytest.approx(whole * (1 - cut**2), rel=1e-6)


@pytest.mark.parametrize(("chord", "rise", "radius"), [(16, 6, 8.33333333), (21, 6, 12.1875)])
def test_radius_of_a_shallow_arc(chord, rise, radius):
    """r = (c^2 + 4 h^2) / 8 h: Machinery's Handbook p. 79 (8 1/3); a teaching page, 12.1875."""
    assert Bow(chord, rise).radius == pytest.approx(radius)


@pytest.mark.parametrize(
    ("chord", "rise", "arc"),
    [
        (21, 6, 25.3083731),
        (13.2664992, 2, 14.0564530),
        (400, 40, 410.582764),
        (500, 25, 503.326695),
    ],
)
def test_bent_top_lies_as_long_as_its_arc(chord, rise, arc):
    """21 x 6: a teaching page on circular sections. Radius 12, depth 2: Machinery's Handbook
    p. 50 (chord 13.27, arc 14.06). The others by its formulas."""
    for bend in (Bend(50, along=Bow(chord, rise)), Bend(50, across=Bow(chord, -rise))):
        across = not isinstance(bend.across, Straight)
        flat = Spread(bend, 1.0, 1.0).extent(-chord / 2, chord / 2, across=across)
        assert flat == pytest.approx(arc, abs=2e-6)


def test_shallow_arc_is_near_the_handbook_s_short_form():
    """c + 8 h^2 / 3 c for a shallow arc: 503.333 for 500 and 25 (Machinery's Handbook, p. 79)."""
    flat = Spread(Bend(0, along=Bow(500, 25)), 1, 1).extent(-250, 250, across=False)
    assert flat == pytest.approx(500 + 8 * 25**2 / 1500, abs=0.01)


@pytest.mark.parametrize("slope", [0.0, 0.2])
@pytest.mark.parametrize("rise", [-25.0, 40.0])
def test_edge_of_a_bent_top_is_as_long_as_quadpack_makes_it(rise, slope):
    """scipy's quad along the rim of a round seat in space, whole and by quarters."""
    radius = 170.0
    bend = Bend(80, along=Bow(340, rise, slope))
    flat = Spread(bend, 1.0, 1.0).laid(Circle(diameter=340).contour())
    big = (340**2 + 4 * rise**2) / (8 * abs(rise))

    def speed(turn: float) -> float:
        y = radius * math.cos(turn)
        steep = slope - math.copysign(1, rise) * y / math.sqrt(big**2 - y**2)
        return radius * math.hypot(math.cos(turn), math.sin(turn), steep * math.sin(turn))

    for name, end in (("left", 0.5), ("front", 1.0), ("right", 1.5)):
        wanted = quad(speed, 0, end * math.pi, epsabs=1e-10)[0]
        assert flat.station(name) == pytest.approx(wanted, abs=0.001)


def test_edges_of_a_flared_square_are_those_of_a_pyramid_s_frustum():
    """Four trapezoids: slant height sqrt(h^2 + w^2), edge sqrt(h^2 + 2 w^2), by Pythagoras."""
    square = RoundedRectangle(width=300, depth=300, corner=0).contour()
    flat = laid(square, 50, drop=120)
    assert flat.upper.length == pytest.approx(1200)
    assert flat.lower.length == pytest.approx(1600)
    assert area(flat) == pytest.approx(4 * 350 * 130)
    corner = math.hypot(120, 50, 50)
    ends = [Wall.part(_wall(square), at, at + 300).ends for at in (150.0, 450.0)]
    for near, far in ends:
        assert [abs(a - b) for a, b in (near, far)] == pytest.approx([corner, corner])


def _wall(outline: Contour) -> Wall:
    boxed = Boxed(walls=TO_BASE, drop=120)
    seat = brief(outline, base=outline.grown(50))
    return boxed.wall(Form(seat, boxed.bending.over(outline)))
