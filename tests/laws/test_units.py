"""Laws of the tape's notation."""

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternmaker.errors import Refusal
from patternmaker.units import Unit, read_length, read_rate, show_length, show_length_exactly
from tests.laws.strategies import UNITS

LENGTHS = st.floats(-50_000, 50_000)
STEPS = {Unit.IN: 25.4 / 16, Unit.MM: 0.5, Unit.CM: 1.0}
TAPE = "0123456789 .,/-'\"½¼⅜″′–%²inftcmerp"


@given(st.floats(0.001, 10_000))
def test_inch_to_mm_to_inch_returns_home(inches):
    mm = read_length(f"{inches:.9f} in", Unit.MM)
    assert read_length(f"{mm:.9f} mm", Unit.IN) / 25.4 == pytest.approx(inches, abs=1e-9)


@given(LENGTHS, UNITS)
def test_what_is_shown_reads_back_within_half_a_step(mm, unit):
    shown = show_length(mm, unit)
    assert abs(read_length(shown, unit) - mm) <= STEPS[unit] / 2 + 1e-6


@given(LENGTHS, UNITS)
def test_what_was_read_back_is_shown_the_same(mm, unit):
    shown = show_length(mm, unit)
    assert show_length(read_length(shown, unit), unit) == shown


@given(LENGTHS, UNITS)
def test_bare_figures_mean_the_unit_of_the_job(mm, unit):
    bare = show_length(mm, unit, bare=True)
    assert read_length(bare, unit) == read_length(f"{bare} {unit}", Unit.MM)


@given(LENGTHS, UNITS)
def test_exact_message_reads_back_to_a_thousandth(mm, unit):
    shown = show_length_exactly(mm, unit)
    if "e" not in shown:  # a length of nothing but a few atoms
        assert abs(read_length(shown, unit) - mm) <= 0.0005 * unit.mm + 1e-6


@given(st.integers(0, 400), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_every_way_of_writing_a_fraction_is_the_same_length(whole, over, under):
    over %= under
    ways = (f"{whole} {over}/{under}", f"{whole}-{over}/{under} in", f'{whole} {over} / {under}"')
    inches = whole + over / under
    assert [read_length(way, Unit.IN) for way in ways] == pytest.approx([inches * 25.4] * 3)


ANYTHING = (
    st.text()
    | st.text(TAPE)
    | st.integers()
    | st.integers(10**400, 10**401)
    | st.floats()
    | st.booleans()
    | st.none()
    | st.binary()
    | st.lists(st.integers())
)


def read_or_refusal(
    read: Callable[[object, Unit], float], raw: object, unit: Unit
) -> float | Refusal:
    """Return what was read, or how it was refused; anything else that is raised is a fault."""
    try:
        return read(raw, unit)
    except Refusal as refusal:
        return refusal


@given(ANYTHING, UNITS)
def test_anything_is_a_finite_length_or_refused(raw, unit):
    value = read_or_refusal(read_length, raw, unit)
    assert math.isfinite(value) if isinstance(value, float) else len(str(value)) < 250


@given(ANYTHING, UNITS)
def test_anything_is_a_finite_rate_or_refused(raw, unit):
    value = read_or_refusal(read_rate, raw, unit)
    assert math.isfinite(value) if isinstance(value, float) else len(str(value)) < 250
