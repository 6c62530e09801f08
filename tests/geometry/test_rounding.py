"""Corners rounded by an arc that touches both sides, or refused with the radius that would fit."""

import cmath
import math

import pytest

from patternmaker.errors import Refusal
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.framing import Ring, sharp
from patternmaker.geometry.rounding import rounded
from patternmaker.geometry.segments import Arc
from tests.contours import ring as shapely_ring

SQUARE = sharp({"a": 0, "b": 100, "c": 100 + 100j, "d": 100j})
ELL = sharp({"a": 0, "b": 300, "c": 300 + 150j, "in": 150 + 150j, "e": 150 + 300j, "f": 300j})


def half_disc() -> Ring:
    """Return the right half of a disc of radius 100."""
    return Compass(100j).joint("top").line(-100j).joint("foot").arc(0, math.pi).ring()


def bends(ring: Ring) -> list[float]:
    """Return how much a ring turns at each of its vertices."""
    pairs = zip((ring.segments[-1], *ring.segments), ring.segments, strict=False)
    return [cmath.phase(after.tangent() / before.tangent(before.length)) for before, after in pairs]


def starts(ring: Ring) -> dict[str, complex]:
    return {name: ring.segments[at].start for name, at in ring.joints.items()}


def test_corner_of_a_square_becomes_a_quarter_turn_of_three_joints():
    ring = rounded(SQUARE, {"b": 30})
    middle = 70 + 30j + cmath.rect(30, -math.pi / 4)
    assert starts(ring) == pytest.approx({
        "b begins": 70, "b": middle, "b ends": 100 + 30j, "c": 100 + 100j, "d": 100j, "a": 0,
    })  # fmt: skip
    assert Contour(*ring).area == pytest.approx(100**2 - (1 - math.pi / 4) * 30**2)


def test_corners_that_use_up_their_sides_make_a_circle():
    ring = rounded(SQUARE, dict.fromkeys("abcd", 50))
    assert len(ring.segments) == 8
    assert Contour(*ring).length == pytest.approx(100 * math.pi)


def test_inner_corner_is_filled():
    ring = rounded(ELL, {"in": 40})
    assert Contour(*ring).area == pytest.approx(67_500 + (1 - math.pi / 4) * 40**2)
    assert ring.segments[ring.joints["in"]].sweep == pytest.approx(-math.pi / 4)


def test_corner_between_a_line_and_an_arc_touches_both():
    """Its middle lies r from the line and R - r from the middle of the arc."""
    ring = rounded(half_disc(), {"top": 20})
    (fillet,) = {each.centre for each in ring.segments
                 if isinstance(each, Arc) and each.radius == pytest.approx(20)}  # fmt: skip
    assert fillet == pytest.approx(complex(20, math.sqrt(80**2 - 20**2)))
    assert min(map(abs, bends(ring))) < 1e-12
    assert sum(abs(bend) > 1e-12 for bend in bends(ring)) == 1


def test_corner_between_two_arcs_touches_both():
    """A lens of two arcs of radius 100, whose middles lie 120 apart: half as high as 160."""
    half = math.acos(0.6)
    compass = Compass(-80j).joint("foot").arc(-60, 2 * half).joint("top").arc(60, 2 * half)
    ring = rounded(compass.ring(), {"top": 10, "foot": 10})
    assert max(map(abs, bends(ring))) < 1e-12
    centres = [each.centre for each in ring.segments if isinstance(each, Arc) and each.radius < 50]
    assert {round(abs(centre.imag), 6) for centre in centres} == {
        round(math.sqrt(90**2 - 60**2), 6)
    }


def test_arc_may_begin_beyond_a_short_side():
    """A corner nipped off by 2 mm is rounded past its own ends."""
    ring = sharp({"a": 0, "b": 98, "nip": 100 + 2j, "c": 100 + 100j, "d": 100j})
    found = starts(rounded(ring, {"nip": 30}))
    assert (found["nip begins"], found["nip ends"]) == pytest.approx((70, 100 + 30j))
    assert "b" not in found


@pytest.mark.parametrize("radius", [0, 0.0009])
def test_radius_finer_than_a_hair_leaves_the_corner_sharp(radius):
    assert rounded(SQUARE, {"a": radius}) is SQUARE


def test_vertex_that_does_not_turn_is_left_alone():
    ring = sharp({"a": 0, "halfway": 50, "b": 100, "c": 100 + 100j, "d": 100j})
    assert rounded(ring, {"halfway": 20}) is ring


@pytest.mark.parametrize(
    ("ring", "radii", "name", "limit"),
    [
        (SQUARE, dict.fromkeys("abcd", 50.2), "a", 50.0),
        (SQUARE, {"a": 70, "b": 40}, "a", 60.0),
        (SQUARE, {"b": 40, "c": 70}, "c", 60.0),
        (SQUARE, {"d": 40, "a": 70}, "a", 60.0),
        (SQUARE, {"a": 1000}, "a", 100.0),
        (ELL, {"in": 151}, "in", 150.0),
        (half_disc(), {"top": 50, "foot": 50}, "foot", 50.0),
    ],
)
def test_radius_that_finds_no_room_is_refused_with_the_one_that_would_fit(ring, radii, name, limit):
    with pytest.raises(Refusal) as refused:
        rounded(ring, radii)
    wrong = radii[refused.value.field]
    assert (refused.value.field, refused.value.value) == (name, wrong)
    assert refused.value.limit == pytest.approx(limit, abs=0.1)
    fits = {each: limit - 0.1 if r == wrong else r for each, r in radii.items()}
    assert shapely_ring(Contour(*rounded(ring, fits))).is_valid


def test_message_names_the_corner_its_radius_and_what_fits():
    with pytest.raises(Refusal) as refused:
        rounded(SQUARE, {"a": 70, "b": 40})
    assert str(refused.value) == (
        "a: 70 mm is more than the corner has room for (60 mm); "
        "make the radius smaller, or its sides longer"
    )
