"""Prints arranged on sheets: together where they fit, never more than are allowed."""

import re

import pytest

from patternmaker.drawing.prints import Print
from patternmaker.errors import Refusals
from patternmaker.geometry.touching import touches
from patternmaker.sheets.arranging import arranged, fewest_possible
from patternmaker.sheets.showing import BETWEEN
from patternmaker.sheets.tiling import neighbours
from tests.sheets.prints import A4, board, disc


def count(*prints: Print) -> int:
    return sum(len(plate.sheets) for plate in arranged(prints, A4, 500).plates)


def test_a_small_print_takes_one_sheet():
    assert count(board(100, 100)) == 1


def test_small_prints_share_a_sheet():
    assert count(*(board(80, 80, f"b{i}") for i in range(6))) == 1


def test_a_strip_is_turned_to_fit_beside_another_print():
    assert count(board(180, 220), board(40, 180)) == 1
    assert count(board(180, 220), board(180, 40)) == 1


def test_a_sheet_as_full_as_can_be_is_one_sheet():
    assert count(board(190, 274)) == 1
    assert count(board(277, 187)) == 1  # landscape


def test_orientation_is_the_one_that_takes_fewer_sheets():
    (plate,) = arranged([board(360, 180)], A4, 500).plates
    assert (len(plate.sheets), plate.grid.landscape) == (2, False)
    (plate,) = arranged([board(530, 180)], A4, 500).plates
    assert (len(plate.sheets), plate.grid.landscape) == (2, True)


def test_no_print_is_lost_and_each_is_told_where_it_shows():
    prints = [board(400, 300, "a"), disc(330, "b"), board(60, 60, "c"), board(600, 90, "d")]
    plates = arranged(prints, A4, 500).plates
    assert sorted(p.piece for plate in plates for p in plate.prints) == ["a", "b", "c", "d"]
    for plate in plates:
        assert set(plate.shows) == set(plate.sheets)
        assert {title for titles in plate.shows.values() for title in titles} == {
            each.title for each in plate.prints
        }


def test_prints_keep_their_distance():
    prints = [board(70 + 5 * i, 60, f"b{i}") for i in range(9)]
    for plate in arranged(prints, A4, 500).plates:
        boxes = [each.shape.bounds for each in plate.prints]
        for i, one in enumerate(boxes):
            for two in boxes[:i]:
                aside = max(one[0] - two[2], two[0] - one[2], one[1] - two[3], two[1] - one[3])
                assert aside >= BETWEEN - 1e-6


def test_as_many_sheets_as_allowed_are_not_refused():
    assert len(arranged([board(500, 500)], A4, 6).plates[0].sheets) == 6
    with pytest.raises(Refusals, match="6 of them, more than 5"):
        arranged([board(500, 500)], A4, 5)


def test_far_too_many_are_refused_before_they_are_laid_out():
    """Ten metres square would take 2,000 sheets, and 100,000 such prints for ever."""
    with pytest.raises(Refusals, match="--most-sheets"):
        arranged([board(10_000, 10_000)] * 100_000, A4, 500)


@pytest.mark.parametrize(
    ("prints", "least"),
    [
        ([board(100, 100)], 1),
        ([board(190, 274)], 1),
        ([board(190, 274), board(10, 10)], 2),  # by area
        ([board(5, 600)], 2),  # by length: one sheet's diagonal is 333 mm
        ([board(5, 2000)], 7),
    ],
)
def test_fewest_possible_is_by_area_and_by_length(prints, least):
    assert fewest_possible(prints, A4) == least


def test_a_refusal_names_a_number_that_is_then_allowed():
    """Whoever does as the message says must not be refused a second time."""
    prints = [board(1500, 1500)]
    with pytest.raises(Refusals) as refused:
        arranged(prints, A4, 10)
    found = re.search(r"--most-sheets (\d+)", str(refused.value))
    assert found
    assert arranged(prints, A4, int(found[1])).plates


@pytest.mark.parametrize("diameter", range(300, 1200, 17))
def test_no_sheet_shows_only_what_the_sheets_beside_it_show(diameter):
    (plate,) = arranged([disc(diameter)], A4, 500).plates
    for place in plate.sheets:
        beside = [side for side, n in neighbours(place).items() if n in plate.sheets]
        own = plate.grid.own(place, beside)
        assert len(beside) == 4 or touches(plate.prints[0].shape, own)
