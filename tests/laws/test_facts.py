"""Laws of fields and their facts."""

from pathlib import Path
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from patternmaker.errors import Refusals
from patternmaker.facts import FILE, LENGTH, Fact, Reading, Rows, facts_of
from tests.laws.strategies import UNITS, alike, outlines


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("job")


def written(fact: Fact, value: Any, folder: Path) -> Any:
    """Return a value as a job file writes it, a file being put beside that."""
    if isinstance(fact.quantity, Rows):
        return [[f"{cell:.15f} mm" for cell in row] for row in value]
    if fact.quantity is FILE:
        (folder / value.name).write_bytes(value.content)
        return value.name
    return f"{value:.15f} mm" if fact.quantity is LENGTH else value


@given(outline=outlines(), unit=UNITS)
def test_shape_written_down_in_any_unit_is_read_back(folder, outline, unit):
    facts = facts_of(type(outline))
    given = {name: value for name, value in vars(outline).items() if value is not None}
    table = {name: written(facts[name], value, folder) for name, value in given.items()}
    reading = Reading(unit, folder)
    again = reading.read(type(outline), table, "outline")
    assert reading.mistakes == []
    assert again is not None
    assert alike(again, outline)


@given(outlines(), st.data())
def test_any_length_past_its_bounds_is_refused_by_name(outline, data):
    lengths = [n for n, fact in facts_of(type(outline)).items() if fact.quantity is LENGTH]
    assume(lengths)
    name = data.draw(st.sampled_from(lengths))
    wrong = data.draw(st.sampled_from([-1.0, 5000.5, float("nan"), float("inf")]))
    with pytest.raises(Refusals) as refused:
        type(outline)(**{**vars(outline), name: wrong})
    assert name in {mistake.field for mistake in refused.value}
