"""Which triangle was measured, and what is said of sides that are of none."""

import pytest

from patternmaker.errors import Refusals
from patternmaker.sheets.papers import stock_of
from patternmaker.sheets.printer import Sides
from patternmaker.sheets.sides import NAMES, proved, read_sides
from patternmaker.units import Unit


def read(*sides: str | None, unit: Unit = Unit.MM, paper: str | None = None) -> tuple[Sides, Sides]:
    typed = {name: side for name, side in zip(NAMES, sides, strict=False) if side}
    return read_sides(typed, unit, stock_of(unit, paper))


def refused(*typed: str, unit: Unit = Unit.MM, paper: str | None = None) -> list[str]:
    with pytest.raises(Refusals) as caught:
        read(*typed, unit=unit, paper=paper)
    return str(caught.value).splitlines()


@pytest.mark.parametrize(
    ("paper", "unit", "sides"),
    [
        ("A4", Unit.MM, (180, 240, 300)),
        ("A4", Unit.CM, (180, 240, 300)),
        ("Letter", Unit.IN, (6 * 25.4, 8 * 25.4, 10 * 25.4)),
        ("A3", Unit.MM, (270, 360, 450)),
        ("150x160mm", Unit.MM, (120, 90, 150)),
    ],
)
def test_triangle_is_3_4_5_as_large_as_the_paper_takes(paper, unit, sides):
    drawn = proved(unit, stock_of(unit, paper))
    assert (drawn.across, drawn.up, drawn.long) == pytest.approx(sides)


@pytest.mark.parametrize(
    ("typed", "drawn"),
    [
        (("181", "239.2", "300"), (180, 240)),
        (("18.1 cm", "23.9 cm", None), (180, 240)),
        (("120.5", "89.7", "150"), (120, 90)),
        (("6 1/32 in", "7 31/32 in", "10 in"), (152.4, 203.2)),
        (("4 in", "3 in", "5 in"), (101.6, 76.2)),
    ],
)
def test_triangle_of_the_proof_page_or_the_overview_is_known_by_its_sides(typed, drawn):
    stated, _ = read(*typed)
    assert (stated.across, stated.up) == pytest.approx(drawn)


@pytest.mark.parametrize(
    ("typed", "unit", "says"),
    [
        (("6", "8", "10"), Unit.MM, 'if you read 6 in, say --across "6 in"'),
        (("4", "3", "5"), Unit.MM, 'if you read 4 in, say --across "4 in"'),
        (("18.1", "24", "30"), Unit.MM, 'if you read 18.1 cm, say --across "18.1 cm"'),
        (("181", "240", "300"), Unit.IN, 'if you read 181 mm, say --across "181 mm"'),
        (("6 1/16", "8", "10"), Unit.CM, 'if you read 6 1/16 in, say --across "6 1/16 in"'),
    ],
)
def test_sides_in_the_wrong_unit_are_told_with_the_one_that_was_meant(typed, unit, says):
    told = refused(*typed, unit=unit, paper="A4" if unit is not Unit.IN else "Letter")
    assert len(told) == 3
    assert told[0].startswith("across: ")
    assert says in told[0]


def test_one_side_in_the_wrong_unit_is_told_alone():
    (told,) = refused("181", "23.9", "300")
    assert told == (
        'up: 23.9 mm is far from 240 mm; if you read 23.9 cm, say --up "23.9 cm"'
    )  # fmt: skip


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (("240", "180"), "across and up: | --across 180 --up 240"),
        (("300", "240", "180"), "across and long-side: | --across 180 --up 240 --long-side 300"),
        (("300", "180", "240"),
         "across and up and long-side: | --across 180 --up 240 --long-side 300"),
        (("90", "120", "150"), "across and up: | --across 120 --up 90 --long-side 150"),
    ],
)  # fmt: skip
def test_swapped_sides_are_told_as_they_would_be_right(typed, says):
    assert refused(*typed) == [says.replace("|", "these sides look swapped; if they are, say")]


def test_page_that_was_fitted_to_its_margins_is_refused():
    told = refused("172.8", "230.4", "288")
    assert [line.split(":")[0] for line in told] == ["across", "up", "long-side"]
    assert all("4 % less than" in line and "actual size (100 %)" in line for line in told)


def test_every_side_that_is_no_length_is_told():
    told = refused("abc", "1/0", "3 apples")
    assert [line.split(":")[0] for line in told] == ["across", "up", "long-side"]


@pytest.mark.parametrize("side", ["0", "-180", "1e9", "9" * 50])
def test_no_side_is_so_odd_that_it_is_not_told(side):
    (told,) = refused(side, "240", "300")
    assert told.startswith("across: ")
