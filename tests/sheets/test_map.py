"""The map: every sheet and join in small, with the numbers that the sheets carry."""

from collections.abc import Sequence

import pytest

from patternmaker.drawing.surface import Letters
from patternmaker.sheets.arranging import arranged
from patternmaker.sheets.map import NumberedPlate, map_blocks, numbered
from tests.sheets.prints import A4, board, disc


def numbers(plates: Sequence[NumberedPlate], width: float = 190) -> list[int]:
    marks = [mark for block in map_blocks(plates, width) for mark in block.drawing.marks]
    return sorted(int(mark.text) for mark in marks if isinstance(mark, Letters))


def test_every_sheet_and_join_has_its_number_on_the_map():
    plates = numbered(arranged([board(500, 500), disc(330), board(700, 90)], A4, 500).plates)
    sheets = sum(len(plate.plate.sheets) for plate in plates)
    joins = sum(len(plate.joins) for plate in plates)
    assert joins > 8
    assert numbers(plates) == sorted([*range(1, sheets + 1), *range(1, joins + 1)])


def test_map_stays_within_its_column():
    plates = numbered(arranged([board(900, 400), board(300, 900), disc(600)], A4, 500).plates)
    for block in map_blocks(plates, 120):
        for mark in block.drawing.marks:
            if not isinstance(mark, Letters):
                left, bottom, right, _ = mark.path.bounds
                assert left >= -1e-9
                assert right <= 120 + 1e-6
                assert bottom >= -block.height


@pytest.mark.parametrize("side", [2500, 4000])
def test_numbers_too_small_to_read_are_left_out(side):
    plates = numbered(arranged([board(side, side)], A4, 5000).plates)
    assert len(numbers(plates)) < sum(len(plate.plate.sheets) for plate in plates) * 2


def test_joins_at_a_sheet_are_those_that_it_takes_part_in():
    (plate,) = numbered(arranged([board(500, 500)], A4, 500).plates)
    for place in plate.plate.sheets:
        expected = [join for join in plate.joins if place in (join.first, join.second)]
        assert list(plate.joins_at[place]) == expected
        assert len(expected) >= 2
