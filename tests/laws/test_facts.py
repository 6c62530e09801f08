"""Laws of fields and their facts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternmaker.errors import Refusals
from patternmaker.facts import LENGTH, Reading, facts_of
from tests.laws.strategies import UNITS, outlines


@given(outlines(), UNITS)
def test_shape_written_down_in_any_unit_is_read_back(outline, unit):
    reading = Reading(unit)
    written = {name: value for name, value in vars(outline).items() if value is not None}
    for name, fact in facts_of(type(outline)).items():
        if fact.quantity is LENGTH and name in written:
            written[name] = f"{written[name]:.9f} mm"
    again = reading.read(type(outline), written, "outline")
    assert reading.mistakes == []
    assert again is not None
    assert vars(again) == pytest.approx(vars(outline), abs=1e-8)


@given(outlines(), st.data())
def test_any_length_past_its_bounds_is_refused_by_name(outline, data):
    lengths = [n for n, fact in facts_of(type(outline)).items() if fact.quantity is LENGTH]
    name = data.draw(st.sampled_from(lengths))
    wrong = data.draw(st.sampled_from([-1.0, 5000.5, float("nan"), float("inf")]))
    with pytest.raises(Refusals) as refused:
        type(outline)(**{**vars(outline), name: wrong})
    assert name in {mistake.field for mistake in refused.value}
