"""What a tape says, in and out. 1 in = 25.4 mm: international yard and pound agreement, 1959."""

import math

import pytest

from patternmaker.errors import Refusal
from patternmaker.units import (
    Unit,
    read_length,
    read_rate,
    show_length,
    show_length_exactly,
    show_rate,
    with_set_fractions,
)


@pytest.mark.parametrize(
    ("said", "inches"),
    [
        ("14 1/2", 14.5), ("14-1/2", 14.5), ("14½", 14.5), ("14 ½ in", 14.5), ('14.5"', 14.5),
        ("14 1 / 2 inches", 14.5), ("1' 2 1/2\"", 14.5), ("1 ft 2 1/2 in", 14.5), ("1′ 2.5″", 14.5),
        ("14½″", 14.5), ("14½”", 14.5), ("1 foot 2,5", 14.5), ("3/4", 0.75), (".5", 0.5),
        ("2 ft", 24.0), ("-1/4", -0.25),
        ("−1/4", -0.25), (14, 14.0), (14.5, 14.5), ("25.4 mm", 1.0), ("2.54cm", 1.0),
        ("0,0254 m", 1.0), ("1 inch", 1.0), ("1''", 1.0), ("3 feet", 36.0),
    ],
)  # fmt: skip
def test_inch_job_reads_what_a_tape_says(said, inches):
    assert read_length(said, Unit.IN) == pytest.approx(inches * 25.4, rel=1e-12)


def test_bare_number_is_in_the_unit_of_the_job():
    said = [read_length("36.8", unit) for unit in (Unit.MM, Unit.CM, Unit.IN)]
    assert said == pytest.approx([36.8, 368.0, 934.72])


@pytest.mark.parametrize(
    "said",
    [
        "", " ", "-", "--5", "5--", "in", "1/0", "1/", "1 2", "1/2/3", "1.2/3", "½ ½", "2²",
        "1_000", "nan", "inf", "1e3", "14 1/2 yd", "9" * 61, "1" * 5000, "1' 2' 3", None, True,
        False, [], {}, b"5", math.nan, math.inf, -math.inf,
        pytest.param("\ud800", id="half a letter"), pytest.param(10**5000, id="huge"),
        pytest.param(-(10**5000), id="minus huge"),
    ],
)  # fmt: skip
def test_what_is_no_length_is_refused(said):
    with pytest.raises(Refusal, match="is not a length; write it like"):
        read_length(said, Unit.MM)


def test_comma_that_could_part_thousands_is_refused():
    with pytest.raises(Refusal, match=r"decimal or thousands; write 1\.25 or 1250"):
        read_length("1,250", Unit.MM)


def test_refusal_of_a_huge_number_is_one_short_line():
    with pytest.raises(Refusal) as refusal:
        read_length("8" * 5000, Unit.MM)
    assert len(str(refusal.value)) < 200


@pytest.mark.parametrize(
    ("said", "share"),
    [
        ("1/4 per 10", 0.025), ("1/4 in per 10 in", 0.025), ("6 mm per 24 cm", 0.025),
        ("2.5%", 0.025), ("2 1/2 %", 0.025), ("0,025", 0.025), ("1/40", 0.025), ("-1%", -0.01),
        (0, 0.0), (0.025, 0.025),
    ],
)  # fmt: skip
def test_rate_is_a_share_of_one(said, share):
    assert read_rate(said) == pytest.approx(share, rel=1e-12)


@pytest.mark.parametrize(
    "said",
    [
        "", "%", "per", "1 per 0", "1 per 2 per 3", "1 per x", "nan", "inf%", "1e400", "1_0", "2²%",
        "1/0", True, None, [], math.nan, math.inf, "1" * 100, pytest.param(10**5000, id="huge"),
    ],
)  # fmt: skip
def test_what_is_no_rate_is_refused(said):
    with pytest.raises(Refusal, match="is not a rate; write it like"):
        read_rate(said)


@pytest.mark.parametrize(
    ("mm", "unit", "shown"),
    [
        (368.3, Unit.IN, "14 1/2 in"), (25.4, Unit.IN, "1 in"), (6.35, Unit.IN, "1/4 in"),
        (0.0, Unit.IN, "0 in"), (-6.35, Unit.IN, "-1/4 in"), (-0.1, Unit.IN, "0 in"),
        (365.3, Unit.MM, "365.5 mm"), (365.2, Unit.MM, "365 mm"), (-0.3, Unit.MM, "-0.5 mm"),
        (-0.1, Unit.MM, "0 mm"), (123456.5, Unit.MM, "123456.5 mm"), (1e12, Unit.MM, "1e+12 mm"),
        (365.3, Unit.CM, "36.5 cm"), (-3.0, Unit.CM, "-0.3 cm"), (-0.3, Unit.CM, "0.0 cm"),
        (12.0, None, "12 mm"),
    ],
)  # fmt: skip
def test_length_is_shown_as_it_is_read_off_a_tape(mm, unit, shown):
    assert show_length(mm, unit) == shown


def test_bare_length_leaves_the_unit_away():
    assert show_length(368.3, Unit.IN, bare=True) == "14 1/2"


@pytest.mark.parametrize(
    ("mm", "unit", "shown"),
    [
        (368.3, Unit.IN, "14 1/2 in"), (10.0, Unit.IN, "0.394 in"), (10.01, None, "10.01 mm"),
        (math.inf, Unit.MM, "inf"), (None, Unit.MM, "None"),
    ],
)  # fmt: skip
def test_messages_do_not_round_away_what_is_wrong(mm, unit, shown):
    assert show_length_exactly(mm, unit) == shown


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("value", [1e20, 1e57, -1e57, 1e308])
def test_lengths_beyond_all_tapes_are_shown_in_short(value, unit):
    assert len(show_length_exactly(value, unit)) < 25


@pytest.mark.parametrize(("rate", "shown"), [(0.025, "2.5 %"), (0.0, "0 %"), (-1e-9, "0 %")])
def test_rate_is_shown_in_per_cent(rate, shown):
    assert show_rate(rate) == shown


def test_only_fractions_are_set_in_small_figures():
    assert with_set_fractions("3 boards, 14 13/16 in") == "3 boards, 14¹³⁄₁₆ in"


@pytest.mark.parametrize("slip", ["14 17/16", "3 4/4 in", "173/8", "21/8", "1 ft 3/2 in"])
def test_a_fraction_that_is_no_part_of_one_is_a_slip_of_the_pen(slip):
    """173/8 for 17 3/8 would else be a seat of 21 5/8 in, without a word."""
    with pytest.raises(Refusal, match="no part of one; write the whole number apart"):
        read_length(slip, Unit.IN)


@pytest.mark.parametrize("slip", ["1 ft 14 in", "2' 12"])
def test_a_foot_of_inches_beside_feet_is_a_slip_of_the_pen(slip):
    with pytest.raises(Refusal, match="is not a length"):
        read_length(slip, Unit.IN)
