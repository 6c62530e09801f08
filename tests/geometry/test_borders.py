"""Cut lines whose sides have allowances of their own."""

import math

import pytest
import shapely

from patternmaker.errors import Refusal
from patternmaker.geometry.borders import bordered, parallel
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Path
from patternmaker.geometry.segments import Arc, Line
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.polygon import Polygon
from patternmaker.outlines.rounded_rectangle import RoundedRectangle

SQUARE = [Path.through(0, 100), Path.through(100, 100 + 80j), Path.through(100 + 80j, 80j),
          Path.through(80j, 0)]  # fmt: skip


def test_rectangle_of_four_allowances_stays_four_lines():
    cut = bordered(list(zip(SQUARE, (25.0, 12.0, 10.0, 15.0), strict=True)))
    assert cut.bounds == pytest.approx((-15, -25, 112, 90))
    assert [type(each) for each in cut.segments] == [Line] * 4
    assert cut.area == pytest.approx(127 * 115)


@pytest.mark.parametrize("outline", [Circle(diameter=320), RoundedRectangle(corner=30)])
def test_one_allowance_all_round_is_the_parallel(outline):
    contour = outline.contour()
    cut = bordered([(contour, 12.0)])
    assert cut.length == pytest.approx(contour.grown(12.0).length, abs=1e-9)
    assert cut.area == pytest.approx(contour.grown(12.0).area, abs=1e-6)


def test_corner_between_two_allowances_lies_at_both():
    """A rhombus of 60 and 120 degrees, sides alternately 20 and 10 mm."""
    corners = [0, 200 + 0j, 200 + 200 * complex(0.5, math.sqrt(0.75)),
               200 * complex(0.5, math.sqrt(0.75))]  # fmt: skip
    sides = [Path.through(a, b) for a, b in zip(corners, [*corners[1:], 0], strict=True)]
    cut = bordered(list(zip(sides, (20.0, 10.0, 20.0, 10.0), strict=True)))
    ring = shapely.LinearRing([(z.real, z.imag) for z in cut.chords(0.01)])
    for path, allowance in zip(sides, (20.0, 10.0, 20.0, 10.0), strict=True):
        middle = path.point_at(100) + allowance * path.outward(100)
        assert ring.distance(shapely.Point(middle.real, middle.imag)) < 1e-9


def test_allowance_that_changes_where_the_edge_is_smooth_takes_a_step():
    halves = [Path((Arc(0, 100, math.pi),)), Path((Arc(0, -100 + 0j, math.pi),))]
    cut = bordered([(halves[0], 10.0), (halves[1], 25.0)])
    assert cut.area == pytest.approx(math.pi * (110**2 + 125**2) / 2)
    assert cut.length == pytest.approx(math.pi * 235 + 30)


def test_edge_of_no_allowance_beside_a_wide_one_is_shortened_to_the_crossing():
    """At a corner of 135 degrees the wide side's line crosses the raw edge itself."""
    chain = [Path.through(0, 200), Path.through(200, 300 + 100j), Path.through(300 + 100j, 100j),
             Path.through(100j, 0)]  # fmt: skip
    cut = bordered(list(zip(chain, (0.0, 20.0, 0.0, 0.0), strict=True)))
    assert cut.bounds[2] == pytest.approx(300 + 20 * math.sqrt(2))
    cut = bordered(list(zip(chain, (20.0, 0.0, 0.0, 0.0), strict=True)))
    assert cut.area == pytest.approx(25_000 + 190 * 20)


def test_bay_deeper_than_its_allowance_bears_is_refused_with_its_radius():
    bay = Compass(0).line(100).arc(130 + 0j, -math.pi).line(260).line(260 + 90j).line(90j).line(0)
    with pytest.raises(Refusal, match="an allowance of 40 mm is too wide for a curve of radius 30"):
        bordered([(bay.closed(), 40.0)])


@pytest.mark.parametrize("radius", [3.0, 11.9, 12.0])
def test_inner_corner_tighter_than_its_allowance_vanishes_as_in_the_parallel(radius):
    ell = Polygon(corners=((0, 0), (300, 0), (300, 100), (150, 100, radius), (150, 250), (0, 250)))
    outline = ell.contour()
    cut, parallel_ = bordered([(outline, 12.0)]), outline.grown(12.0)
    assert (cut.length, cut.area) == pytest.approx((parallel_.length, parallel_.area))


def test_tight_edge_with_which_a_piece_would_begin_is_refused():
    edges = (Arc(10 + 0j, 0j, -math.pi / 2), Line(10 + 10j, 60 + 10j), Line(60 + 10j, 60 + 60j),
             Line(60 + 60j, 60j), Line(60j, 0j))  # fmt: skip
    with pytest.raises(Refusal, match="too wide for a curve of radius 10"):
        bordered([(Path(edges), 12.0)])


def test_parallel_of_an_open_path_keeps_its_ends_square():
    path = Compass(0).line(100).arc(100 + 50j, math.pi / 2).line(150 + 120j)
    beside = parallel(Path(path.ring().segments), -10.0)
    assert beside.segments[0].start == pytest.approx(10j)
    assert beside.segments[-1].end == pytest.approx(140 + 120j)
    assert beside.length == pytest.approx(100 + 40 * math.pi / 2 + 70)
    assert parallel(beside, 10.0).length == pytest.approx(100 + 50 * math.pi / 2 + 70)


def test_sharp_tip_is_squared_off():
    tip = [Path.through(0, 300 + 40j), Path.through(300 + 40j, 80j), Path.through(80j, 0)]
    cut = bordered([(path, 12.0) for path in tip])
    assert cut.bounds[2] < 300 + 2 * 12


@pytest.mark.parametrize("begin", range(8))
def test_edges_shorter_than_the_allowance_vanish_beside_an_inner_corner(begin):
    """A step of 100 mm whose inner corner stands between runs of 4 mm, from wherever it begins."""
    places = [0, 200, 200 + 100j, 108 + 100j, 104 + 100j, 100 + 100j, 100 + 104j, 100 + 108j,
              100 + 200j, 200j]  # fmt: skip
    sides = [Path.through(a, b) for a, b in zip(places, [*places[1:], places[0]], strict=True)]
    turned = [*sides[begin:], *sides[:begin]]
    cut = bordered([(side, 12.0) for side in turned])
    whole = shapely.Polygon([(z.real, z.imag) for z in cut.chords(0.01)])
    assert whole.is_valid
    assert cut.area == pytest.approx(224 * 124 + 124 * 100)
