"""Laws of every seat shape, whatever its name."""

import cmath
import math
from itertools import pairwise
from typing import Any

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from patternmaker.errors import Refusal, Refusals
from patternmaker.facts import LENGTH, facts_of
from patternmaker.geometry.segments import Arc
from patternmaker.outlines import SHAPES, Outline
from tests.contours import ring
from tests.laws.strategies import alike, contours, loose, outlines, struck

WAYS = {"back": 1j, "left": -1, "front": -1j, "right": 1}


@given(contours())
def test_outline_is_closed_simple_and_anticlockwise(contour):
    assert abs(contour.segments[-1].end - contour.segments[0].start) < 1e-9
    assert ring(contour, 0.01).is_valid
    assert contour.area > 0


@given(contours())
def test_outline_turns_once_round(contour):
    turning = sum(contour.corners) + sum(each.sweep for each in contour.segments)
    assert turning == pytest.approx(2 * math.pi, abs=1e-5)


@given(contours())
def test_outline_stands_with_its_middle_at_the_origin(contour):
    left, bottom, right, top = contour.bounds
    assert [left + right, bottom + top] == pytest.approx([0, 0], abs=1e-6)


@given(contours())
def test_four_sides_stand_in_order_where_one_sees_them_from_afar(contour):
    """On a middle line, or where the seat reaches furthest; nothing of the seat lies before it."""
    box, edge = 2 * max(contour.width, contour.height), ring(contour, 0.01).exterior
    left, bottom, right, top = contour.bounds
    reach = {"back": top, "left": -left, "front": -bottom, "right": right}
    stations = [contour.station(name) for name in WAYS]
    assert stations == sorted(stations)
    for name, way in WAYS.items():
        place = contour.point_at(contour.station(name))
        furthest = (place / way).real > reach[name] - 1e-6
        assert abs((place / way).imag) < 1e-6 or furthest
        line = [place + 0.02 * way, place + box * way]
        assert not edge.intersects(shapely.LineString([(z.real, z.imag) for z in line]))


@given(contours())
def test_joints_stand_in_order_anticlockwise_from_the_back(contour):
    stations = [contour.station(name) for name in contour.joints]
    assert contour.station("back") == 0
    assert sum(b < a for a, b in pairwise([*stations, stations[0]])) <= 1


@given(struck())
def test_partner_is_the_mirror_image_and_its_partner_is_the_seat_again(outline):
    contour, other = outline.contour(), outline.partner().contour()
    assert other.length == pytest.approx(contour.length, rel=1e-9)
    assert other.area == pytest.approx(contour.area, rel=1e-9)
    mirrored = shapely.Polygon([(-p.real, p.imag) for p in contour.chords(0.01)])
    assert ring(other, 0.01).exterior.hausdorff_distance(mirrored.exterior) < 0.05
    assert alike(outline.partner().partner(), outline)


@given(outlines())
def test_each_length_is_taken_where_it_is_as_long_as_it_is_said_to_be(outline):
    for each in outline.dimensions():
        said = vars(outline)[each.field]
        figures = (
            [said] if isinstance(said, float | int) else [cell for row in said for cell in row]
        )
        length = abs(each.end - each.begin)
        assert min(abs(figure - length) for figure in figures) < 1e-6


@given(outlines())
def test_every_length_that_must_be_given_is_shown_where_it_is_taken(outline):
    facts = facts_of(type(outline))
    asked = {name for name, fact in facts.items() if fact.required and fact.quantity is LENGTH}
    assert asked <= {each.field for each in outline.dimensions()}


@given(struck())
def test_arcs_meet_their_neighbours_without_a_bend_but_at_a_corner_that_has_a_name(outline):
    """A bend of 1e-9 radians is the rounding of figures. Between two lines any angle is meant."""
    contour = outline.contour()
    named = {at for name, at in contour.joints.items() if name not in WAYS}
    for index, after in enumerate(contour.segments):
        before = contour.segments[index - 1]
        bend = abs(cmath.phase(after.tangent() / before.tangent(before.length)))
        if isinstance(before, Arc) or isinstance(after, Arc):
            assert bend < 1e-9 or (bend > 1e-3 and index in named)


@given(contours())
def test_area_is_that_of_its_chords(contour):
    assert contour.area == pytest.approx(ring(contour, 1e-3).area, abs=0.001 * contour.length)


@given(
    st.sampled_from(list(SHAPES.all.values())).flatmap(
        lambda kind: loose(kind).map(lambda values: (kind, values))
    )
)
def test_any_measurements_make_a_seat_or_are_refused_in_words(drawn):
    kind, values = drawn
    wrong = mistakes_in(kind, values)
    assert {mistake.field.split(",")[0] for mistake in wrong} <= facts_of(kind).keys()
    assert all(mistake.told() for mistake in wrong)


def mistakes_in(kind: type[Outline], values: dict[str, Any]) -> tuple[Refusal, ...]:
    """Return the mistakes of a seat, or none once its outline has been drawn."""
    try:
        kind(**values).contour()
    except Refusals as refused:
        return refused.mistakes
    return ()
