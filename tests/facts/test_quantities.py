"""Each kind of value reads what fits it and refuses the rest."""

import pytest

from patternmaker.errors import Refusal
from patternmaker.facts import COUNT, LENGTH, RATE, SWITCH, TEXT
from patternmaker.units import Unit


@pytest.mark.parametrize(
    ("quantity", "raw", "value"),
    [
        (LENGTH, "1/2", 12.7), (RATE, "2.5%", 0.025), (COUNT, 6, 6), (TEXT, "  Organ  bench ",
        "Organ  bench"), (SWITCH, True, True),
    ],
)  # fmt: skip
def test_reads_what_fits(quantity, raw, value):
    assert quantity.read(raw, Unit.IN) == value


@pytest.mark.parametrize(
    ("quantity", "raw", "says"),
    [
        (COUNT, True, "true is not a whole number"), (COUNT, 1.0, "1.0 is not a whole number"),
        (COUNT, "6", "'6' is not a whole number"), (TEXT, 6, "6 is not text"),
        pytest.param(TEXT, 10**5000, "a number of thousands of digits is not text", id="huge"),
        (TEXT, "a\nb", r"control character \(U\+000A\)"),
        (TEXT, "a\u202eb", r"control character \(U\+202E\)"),
        (SWITCH, 1, "1 is not true or false"), (SWITCH, "yes", "'yes' is not true or false"),
        (SWITCH, "n" * 100, "…"),
    ],
)  # fmt: skip
def test_refuses_what_does_not_fit(quantity, raw, says):
    with pytest.raises(Refusal, match=says):
        quantity.read(raw, Unit.MM)


@pytest.mark.parametrize(
    ("quantity", "value", "shown"),
    [
        (LENGTH, 12.7, "1/2 in"), (RATE, 0.025, "2.5 %"), (COUNT, 12000, "12,000"),
        pytest.param(COUNT, -(10**5000), "a number of more than 15 digits", id="huge"),
        (TEXT, "oak", "'oak'"),
        (SWITCH, True, "true"),
    ],
)  # fmt: skip
def test_shows_it_as_the_reader_knows_it(quantity, value, shown):
    assert quantity.show(value, Unit.IN) == shown
