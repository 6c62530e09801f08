"""Outlines made alike left and right."""

import cmath
import math

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from patternmaker.errors import Refusal
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.framing import framed
from patternmaker.geometry.segments import Line
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.tracing.halves import evened
from patternmaker.tracing.smoothing import smoothed
from patternmaker.tracing.spans import part_of
from tests.tracing.traces import FINE, along, apart, ellipse, turns


def seat(*points: complex) -> Contour:
    return framed(Path.through(*points, points[0]).segments, {})


def is_alike(contour: Contour) -> bool:
    places = along(contour.segments, 2000)
    return apart(-places.conj(), along(contour.segments, FINE)) < 1e-3 and all(
        any(abs(-each.start.conjugate() - other.start) < 1e-9 for other in contour.segments)
        for each in contour.segments
    )


def test_seat_that_is_alike_stays_as_it_is():
    contour = RoundedRectangle(width=400, depth=380, corner=50).contour()
    done = evened(contour)
    assert done.largest < 1e-9
    assert done.contour.area == pytest.approx(contour.area, abs=1e-6)
    assert len([each for each in done.contour.segments if isinstance(each, Line)]) == 8
    assert is_alike(done.contour)


def test_crooked_quarter_of_a_trapezoid_is_shared_between_its_sides():
    """The front corners stand 200 and 220 mm from the middle: 210 each when shared."""
    contour = seat(180 + 150j, -180 + 150j, -200 - 150j, 220 - 150j)
    done = evened(contour)
    corners = sorted((each.start for each in done.contour.segments), key=lambda z: (z.imag, z.real))
    assert corners[0] == pytest.approx(-210 - 150j)
    assert done.contour.width == pytest.approx(420)
    assert done.contour.height == pytest.approx(300)
    assert done.contour.area == pytest.approx(contour.area)
    assert is_alike(done.contour)
    assert 0 < done.mean < done.largest < 20.1


def test_point_at_the_back_that_is_a_little_off_comes_to_stand_on_the_middle_line():
    done = evened(seat(4 + 200j, -200, -200 - 150j, 200 - 150j, 200))
    tip = done.contour.segments[done.contour.joints["back"]].start
    assert tip.real == pytest.approx(0, abs=1e-9)
    assert sum(turn > 1e-6 for turn in turns(done.contour.segments)) == 5
    assert is_alike(done.contour)


def test_halves_with_different_corners_are_refused():
    lopsided = seat(200 + 150j, -120 + 150j, -200 + 70j, -200 - 150j, 200 - 150j)
    with pytest.raises(Refusal, match=r"symmetrical: the left half has 3 corners, the right one 2"):
        evened(lopsided)


def test_slight_kink_on_one_side_is_shared():
    done = evened(seat(200 + 150j, -200 + 150j, -210, -200 - 150j, 200 - 150j))
    kinks = [turn for turn in turns(done.contour.segments) if 1e-6 < turn < 30]
    assert len(kinks) == 2
    assert done.contour.width == pytest.approx(410)
    assert is_alike(done.contour)


@settings(max_examples=30)
@example(1e-14, 1e-14, 0.0)
@given(st.floats(0, 0.05), st.floats(-0.05, 0.05), st.floats(0, math.tau))
def test_uneven_oval_becomes_even_and_stays_smooth(wave, lean, turn):
    angle = np.angle(ellipse(700, 1, 1))
    oval = ellipse(700) * (1 + wave * np.cos(3 * angle + turn))
    contour = framed(smoothed(oval * (1 + 1j * lean), 0.5, 30).segments, {})
    done = evened(contour)
    assert is_alike(done.contour)
    assert max(turns(done.contour.segments)) < 1e-5
    assert done.contour.area == pytest.approx(contour.area, rel=0.02)
    assert abs(done.contour.width - contour.width) <= 2 * done.largest + 0.01


def test_arc_cut_in_two_is_one_arc_again():
    compass = Compass(200j).arc(0, math.pi / 3).arc(0, math.pi / 6).arc(0, 3 * math.pi / 2)
    done = evened(framed(compass.closed().segments, {}))
    assert {round(each.length, 6) for each in done.contour.segments} == {round(50 * math.tau, 6)}


def test_part_of_no_length_is_a_spot_on_its_path():
    path = Path.through(0, 100, 100 + 50j)
    part = part_of(path, 40, 40)
    assert part.length < 1e-8
    assert part.point_at(0) == pytest.approx(40)


@pytest.mark.parametrize("slip", [1e-13, 1e-10, 1e-9])
def test_halves_alike_but_for_their_last_digits_leave_no_specks(slip):
    points = [cmath.rect(200, math.tau * i / 60) for i in range(60)]
    points = [point * (1 + slip) if point.real > 0 else point for point in points]
    contour = framed(Path.through(*points, points[0]).segments, {})
    even = evened(contour).contour
    assert len(even.segments) == 60
    assert min(each.length for each in even.segments) == pytest.approx(20.93, abs=0.01)
