"""Every named shape beside closed forms, printed figures and adaptive quadrature, to 1e-7."""

import cmath
import math

import pytest
from scipy.optimize import fsolve
from scipy.special import ellipe

from patternmaker.outlines import Outline
from patternmaker.outlines.bowed_front import BowedFront
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.half_round import HalfRound
from patternmaker.outlines.horseshoe import Horseshoe
from patternmaker.outlines.l_shape import LShape
from patternmaker.outlines.long_saddle import LongSaddle
from patternmaker.outlines.oval import Oval
from patternmaker.outlines.polygon import Polygon
from patternmaker.outlines.regular_polygon import RegularPolygon
from patternmaker.outlines.round_ended_bench import RoundEndedBench
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.outlines.rounded_trapezoid import RoundedTrapezoid
from patternmaker.outlines.saddle import Saddle
from patternmaker.outlines.t_shape import TShape
from patternmaker.outlines.table_of_widths import TableOfWidths
from patternmaker.outlines.wedge import Wedge
from tests.outside.reckoning import arc, both_sides, line, polygon, table

RIGHT = 1e-7  # of the figure
PI = math.pi


def holds(outline: Outline, length: float, area: float | None = None) -> None:
    contour = outline.contour()
    assert contour.length == pytest.approx(length, rel=RIGHT)
    assert area is None or contour.area == pytest.approx(area, rel=RIGHT)


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize(("corner", "inner"), [(0, 0), (40, 25), (90, 0), (0, 120)])
def test_l_shape_by_the_shoelace_formula(hand, corner, inner):
    seat = LShape(width=600, depth=560, back_depth=280, leg_width=300, corner=corner,
                  inner_corner=inner, hand=hand)  # fmt: skip
    points = [560j, 0, 300, 300 + 280j, 600 + 280j, 600 + 560j]
    holds(seat, *polygon(points, [corner, corner, corner, inner, corner, corner]))


def test_parallel_of_a_sharp_l_shape():
    """d (v - 2 tan(v / 2)) = -5.15044408 for its inner right angle, d = 12: mpmath, 25 digits."""
    seat = LShape(width=300, depth=300, back_depth=150, leg_width=150, corner=0, inner_corner=0)
    mitres = 5 * (2 - PI / 2) * 12
    length = seat.contour().grown(12).length
    assert length == pytest.approx(1200 + 2 * PI * 12 - 5.15044408 + mitres, rel=1e-9)


@pytest.mark.parametrize(("corner", "inner"), [(0, 0), (40, 12), (0, 60)])
def test_t_shape_by_the_shoelace_formula(corner, inner):
    seat = TShape(width=660, depth=560, back_width=500, ear_depth=130, corner=corner,
                  inner_corner=inner)  # fmt: skip
    points = [-250 + 560j, -250 + 130j, -330 + 130j, -330, 330, 330 + 130j, 250 + 130j, 250 + 560j]
    radii = [corner, inner, corner, corner, corner, corner, inner, corner]
    holds(seat, *polygon(points, radii))


@pytest.mark.parametrize(("corner", "radii"), [(0, {}), (60, {}), (30, {"back_left": 0.0}),
                         (0, {"back_left": 200.0, "front_right": 150.0})])  # fmt: skip
def test_rounded_rectangle_by_the_shoelace_formula(corner, radii):
    seat = RoundedRectangle(width=500, depth=450, corner=corner, **radii)
    names = ["front_left", "front_right", "back_right", "back_left"]
    holds(seat, *polygon([0, 500, 500 + 450j, 450j], [radii.get(each, corner) for each in names]))


def test_rounded_rectangle_worked_out_elsewhere():
    """2 (W + D) - (8 - 2 pi) r and W D - (4 - pi) r^2: mpmath, 25 digits."""
    holds(RoundedRectangle(width=500, depth=450, corner=60), 1796.99111843, 221909.733553)


@pytest.mark.parametrize(("front", "back"), [(0, 0), (60, 40), (0, 100)])
@pytest.mark.parametrize("behind", [300, 380, 520])
def test_rounded_trapezoid_by_the_shoelace_formula(behind, front, back):
    seat = RoundedTrapezoid(front_width=450, back_width=behind, depth=400, front_corner=front,
                            back_corner=back)  # fmt: skip
    points = [-225, 225, behind / 2 + 400j, -behind / 2 + 400j]
    holds(seat, *polygon(points, [front, front, back, back]))


@pytest.mark.parametrize("sides", [3, 4, 5, 6, 8, 24])
@pytest.mark.parametrize("corner", [0, 25])
def test_regular_polygon_by_the_shoelace_formula(sides, corner):
    reach = 200 / (2 * math.sin(PI / sides))
    points = [cmath.rect(reach, 2 * PI * i / sides) for i in range(sides)]
    holds(RegularPolygon(sides=sides, side=200, corner=corner), *polygon(points, [corner] * sides))


def test_hexagon_and_octagon_by_school_formulas():
    """3 sqrt(3) / 2 s^2, and 2 (1 + sqrt(2)) s^2."""
    holds(RegularPolygon(sides=6, side=200, corner=0), 1200, 1.5 * math.sqrt(3) * 200**2)
    holds(RegularPolygon(sides=8, side=150, corner=0), 1200, 2 * (1 + math.sqrt(2)) * 150**2)


@pytest.mark.parametrize("turned", [1, -1])
def test_polygon_by_the_shoelace_formula(turned):
    corners = [(20, 0, 40), (430, 0, 40), (500, 230, 50), (350, 400, 60), (250, 300, 30),
               (80, 400, 0), (0, 200, 50)]  # fmt: skip
    points = [complex(x, -y) for x, y, _ in reversed(corners)]
    radii = [radius for *_, radius in reversed(corners)]
    seat = Polygon(corners=tuple(tuple(map(float, row)) for row in corners[::turned]))
    holds(seat, *polygon(points, radii))


def test_circle():
    holds(Circle(diameter=330), PI * 330, PI * 330**2 / 4)


@pytest.mark.parametrize(("width", "depth"), [(406.4, 330.2), (330.2, 406.4), (1500, 300),
                                              (50, 1500), (400, 400)])  # fmt: skip
def test_oval_by_the_elliptic_integral(width, depth):
    """4 a E(1 - b^2 / a^2) by scipy.special.ellipe: the first seat is 16 x 13 in."""
    b, a = sorted((width / 2, depth / 2))
    holds(Oval(width=width, depth=depth), 4 * a * ellipe(1 - (b / a) ** 2), PI * a * b)


@pytest.mark.parametrize(("a", "b", "length"), [
    (250, 180, 1359.84965003), (100, 75, 552.587304018),  # mpmath, 25 digits
    (250, 225, 1493.29011),  # mpmath, as the superellipse of power 2
    (175, 105, 50 * 17.8688992044),  # printed in the manual of scipy.special.ellipe
])  # fmt: skip
def test_oval_worked_out_elsewhere(a, b, length):
    holds(Oval(width=2 * a, depth=2 * b), length)


@pytest.mark.parametrize(("chord", "height", "length", "area"), [
    # Machinery's Handbook, 31st edition, pp. 50-51: radius 12, printed 14.06 and 18.01
    (13.2664992, 2, 14.0564530, 18.0062225),
    # a teaching page on circular sections
    (21, 6, 25.3083731, 89.2541484),
])  # fmt: skip
def test_shallow_half_round_is_a_segment_of_a_circle(chord, height, length, area):
    seat = HalfRound(width=25 * chord, depth=25 * height, corner=0)
    holds(seat, 25 * (chord + length), 25**2 * area)


@pytest.mark.parametrize("round_edge", ["front", "back"])
def test_shallow_half_round_with_corners_by_quadrature(round_edge):
    """The corner's middle lies r from the straight edge and R - r from the middle of the arc."""
    r, radius = 25, (225**2 + 150**2) / 300
    up = radius - 150
    corner = complex(-math.sqrt((radius - r) ** 2 - (r + up) ** 2), -r)
    touch = cmath.phase(corner - 1j * up) % (2 * PI)
    reckoned = both_sides(
        line(0, corner.real), arc(corner, r, PI / 2, touch), arc(1j * up, radius, touch, 1.5 * PI)
    )
    holds(HalfRound(width=450, depth=150, corner=r, round=round_edge), *reckoned)


@pytest.mark.parametrize("corner", [0, 25])
def test_deep_half_round_is_half_a_circle_and_a_rectangle(corner):
    length = 450 + 2 * 135 + PI * 225 - 2 * (2 - PI / 2) * corner
    area = 450 * 135 + PI * 225**2 / 2 - 2 * (1 - PI / 4) * corner**2
    holds(HalfRound(width=450, depth=360, corner=corner), length, area)


def test_bowed_front_worked_out_elsewhere():
    """The arc over a chord of 500 that rises 25: radius 1262.5, length 503.326695: mpmath."""
    segment = (1262.5 * 503.326695 - 500 * (1262.5 - 25)) / 2
    seat = BowedFront(width=500, depth=400, bow=25, back_corner=0, front_corner=0)
    holds(seat, 503.326695 + 500 + 2 * 375, 500 * 375 + segment)


@pytest.mark.parametrize(("bow", "back", "front"), [(30, 25, 50), (8, 0, 90), (190, 40, 20)])
def test_bowed_front_with_corners_by_quadrature(bow, back, front):
    """The front corner's middle lies r from the side and R - r from the middle of the arc."""
    radius = (215**2 + bow**2) / (2 * bow)
    middle, x = 1j * (radius - 400), front - 215
    corner = complex(x, middle.imag - math.sqrt((radius - front) ** 2 - x**2))
    touch = cmath.phase(corner - middle) % (2 * PI)
    reckoned = both_sides(
        line(0, back - 215),
        arc(complex(back - 215, -back), back, PI / 2, PI),
        line(complex(-215, -back), complex(-215, corner.imag)),
        arc(corner, front, PI, touch),
        arc(middle, radius, touch, 1.5 * PI),
    )
    seat = BowedFront(width=430, depth=400, bow=bow, back_corner=back, front_corner=front)
    holds(seat, *reckoned)


def test_round_ended_bench():
    """A rectangle and two half circles; with one, the other end has corners."""
    holds(RoundEndedBench(width=900, depth=330), 1140 + PI * 330, 570 * 330 + PI * 330**2 / 4)
    one = RoundEndedBench(width=900, depth=330, round_ends="left", corner=40)
    holds(one, 2 * 735 + 330 + PI * 165 - 2 * (2 - PI / 2) * 40,
          735 * 330 + PI * 165**2 / 2 - 2 * (1 - PI / 4) * 1600)  # fmt: skip


@pytest.mark.parametrize("opening", [60, 360, 460])
def test_sharp_horseshoe_is_a_circle_less_a_segment(opening):
    """The angle of the segment is 2 asin(O / d); its area r^2 (v - sin v) / 2."""
    v = 2 * math.asin(opening / 460)
    segment = 230**2 * (v - math.sin(v)) / 2
    seat = Horseshoe(diameter=460, opening=opening, corner=0)
    holds(seat, 230 * (2 * PI - v) + opening, PI * 230**2 - segment)


@pytest.mark.parametrize(("opening", "r"), [(360, 25), (200, 60), (460, 25)])
def test_horseshoe_with_corners_by_quadrature(opening, r):
    """The corner's middle lies r from the front and R - r from the middle of the circle."""
    front = -math.sqrt(230**2 - opening**2 / 4)
    y = front + r
    corner = complex(-math.sqrt((230 - r) ** 2 - y**2), y)
    touch = cmath.phase(corner) % (2 * PI)
    reckoned = both_sides(
        arc(0, 230, PI / 2, touch), arc(corner, r, touch, 1.5 * PI),
        line(complex(corner.real, front), 1j * front),
    )  # fmt: skip
    holds(Horseshoe(diameter=460, opening=opening, corner=r), *reckoned)


def test_sharp_wedge_by_hand():
    """A quarter of a ring of 600 and 900: 942.478 + 1413.717 + 600 mm."""
    seat = Wedge(outer_radius=900, inner_radius=600, angle=90, corner=0)
    assert seat.contour().length == pytest.approx(942.478 + 1413.717 + 600, abs=0.001)
    holds(seat, 750 * PI + 600, PI * (900**2 - 600**2) / 4)


@pytest.mark.parametrize(("angle", "r"), [(90, 25), (40, 60), (180, 90)])
def test_wedge_with_corners_by_quadrature(angle, r):
    """An outer corner's middle lies R - r from the middle, an inner one's R + r."""
    half = math.radians(angle) / 2
    left = cmath.rect(1, PI / 2 + half)
    out, into = math.asin(r / (900 - r)), math.asin(r / (500 + r))
    outer, inner = cmath.rect(900 - r, -out) * left, cmath.rect(500 + r, -into) * left
    to_side = PI / 2 + half + PI / 2
    reckoned = both_sides(
        arc(0, 900, PI / 2, PI / 2 + half - out),
        arc(outer, r, PI / 2 + half - out, to_side),
        line((900 - r) * math.cos(out) * left, (500 + r) * math.cos(into) * left),
        arc(inner, r, to_side, PI / 2 + half - into + PI),
        arc(0, 500, PI / 2 + half - into, PI / 2),
    )
    holds(Wedge(outer_radius=900, inner_radius=500, angle=angle, corner=r), *reckoned)


@pytest.mark.parametrize(("waist", "dip"), [(230, 12), (230, 0), (190, 30), (260, 5)])
def test_saddle_by_solving_its_conditions_of_tangency(waist, dip):
    """scipy.optimize.fsolve (MINPACK) finds the middles of hollow and dip, quadrature the rest."""
    lobe, nose = complex(75 - 180, 165 - 75), complex(0, 65 - 165)

    def hollow(found):
        middle, s = complex(*found[:2]), found[2]
        away = (abs(middle - lobe), abs(middle - nose), abs(middle + waist / 2))
        return away[0] - s - 75, away[1] - s - 65, away[2] - s

    x, y, s = fsolve(hollow, (-waist / 2 - 150, 0, 150), xtol=1e-13)
    middle = complex(x, y)
    back = [line(165j, lobe + 75j)]
    begin = PI / 2
    if dip:
        up, radius = fsolve(
            lambda found: (abs(1j * found[0] - lobe) - found[1] - 75,
                           found[0] - found[1] - (165 - dip)),
            (500, 350), xtol=1e-13,
        )  # fmt: skip
        begin = cmath.phase(1j * up - lobe)
        back = [arc(1j * up, radius, -PI / 2, begin - PI)]
    to_hollow, to_nose = cmath.phase(middle - lobe) % (2 * PI), cmath.phase(nose - middle)
    reckoned = both_sides(
        *back, arc(lobe, 75, begin, to_hollow), arc(middle, s, to_hollow - PI, to_nose),
        arc(nose, 65, to_nose + PI, 1.5 * PI),
    )  # fmt: skip
    holds(Saddle(width=360, depth=330, lobe=75, nose=130, waist=waist, dip=dip), *reckoned)


@pytest.mark.parametrize(("flare", "r"), [(200, 50), (20, 50), (600, 30)])
def test_long_saddle_by_quadrature(flare, r):
    """The hollow's middle lies f beyond the side, and f + r from that of the rear corner."""
    corner = complex(r - 130, 300 - r)
    across = (-65 - flare) - corner.real
    middle = complex(-65 - flare, corner.imag - math.sqrt((flare + r) ** 2 - across**2))
    turn = cmath.phase(middle - corner) % (2 * PI)
    reckoned = both_sides(
        line(300j, complex(corner.real, 300)), arc(corner, r, PI / 2, turn),
        arc(middle, flare, turn - PI, 0), line(complex(-65, middle.imag), complex(-65, -235)),
        arc(-235j, 65, PI, 1.5 * PI),
    )  # fmt: skip
    seat = LongSaddle(width=260, depth=600, nose=130, rear_corner=r, flare=flare)
    holds(seat, *reckoned)


PLACES, WIDTHS = [0.0, 90.0, 200.0, 300.0, 370.0], [300.0, 380.0, 390.0, 350.0, 250.0]


@pytest.mark.parametrize(("back", "front"), [(40, 40), (15, 30), (0.5, 0.5)])
def test_table_of_widths_by_steffen_s_cubics_and_quadrature(back, front):
    seat = TableOfWidths(widths=tuple(zip(PLACES, WIDTHS, strict=True)), corners_at=(),
                         back_corner=back, front_corner=front)  # fmt: skip
    holds(seat, *table(PLACES, WIDTHS, back, front))


def test_table_of_two_widths_is_a_trapezoid():
    seat = TableOfWidths(widths=((0.0, 380.0), (400.0, 450.0)), corners_at=(), back_corner=0,
                         front_corner=0)  # fmt: skip
    holds(seat, *polygon([-225, 225, 190 + 400j, -190 + 400j], [0, 0, 0, 0]))
