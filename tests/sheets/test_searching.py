"""Prints laid by the engine, as plates."""

from dataclasses import replace
from itertools import combinations

import pytest
import shapely

from patternmaker.drawing.prints import Print
from patternmaker.sheets.arranging import Arrangement, alone, arranged
from patternmaker.sheets.papers import Margins
from patternmaker.sheets.searching import fewest_by_need, searched
from patternmaker.sheets.showing import BETWEEN
from tests.contours import horseshoe, ring
from tests.sheets.prints import A4, board, disc, shaped

SET = [disc(334, "top"), disc(311, "base"), disc(317, "dust cover"), board(228, 108, "boxing"),
       shaped(horseshoe(), 1, "shoe"), board(40, 180, "strip"), board(300, 90, "bar")]  # fmt: skip


def sought(*prints: Print, effort: int = 2) -> Arrangement:
    return arranged(prints, A4, 500, effort)


def test_search_finds_fewer_sheets_than_the_first_arrangement():
    assert sought(*SET[:4], effort=6).count < arranged(SET[:4], A4, 500).count


def test_every_print_is_on_a_plate_once_and_told_on_its_sheets():
    plates = sought(*SET).plates
    assert sorted(p.piece for plate in plates for p in plate.prints) == sorted(
        each.piece for each in SET
    )
    for plate in plates:
        assert set(plate.shows) == set(plate.sheets)
        told = {title for titles in plate.shows.values() for title in titles}
        assert told == {each.title for each in plate.prints}


def test_prints_on_a_plate_are_apart_and_shown_whole():
    for plate in sought(*SET).plates:
        rings = [ring(each.shape, 0.01) for each in plate.prints]
        seen = shapely.union_all([shapely.box(*plate.grid.window(at)) for at in plate.sheets])
        assert all(seen.buffer(1e-6).covers(one) for one in rings)
        assert all(one.distance(two) >= BETWEEN - 0.05 for one, two in combinations(rings, 2))


def test_largest_print_of_a_plate_stands_upright():
    """A board that is higher than wide stays so, though the plate is then landscape."""
    stock = replace(A4, margins=Margins(10, 10, 10, 10))
    plates = searched([board(230, 240), board(30, 90)], stock, 1, (1, 9), lambda share, count: None)
    for plate in plates:
        largest = max(plate.prints, key=lambda each: each.shape.area)
        assert largest.shape.height > largest.shape.width


@pytest.mark.parametrize("foot", [10, 13, 25])
@pytest.mark.parametrize("size", [(264, 330), (330, 264), (180, 540), (540, 180)])
def test_no_print_sticks_out_of_a_plate_whatever_the_margins(size, foot):
    """A landscape sheet with 25 mm at its foot is no upright one with 25 mm at its foot, turned."""
    stock = replace(A4, margins=Margins(10, 10, 10, foot))
    for plate in searched([board(*size)], stock, 1, (1, 9), lambda share, count: None):
        seen = shapely.union_all([shapely.box(*plate.grid.window(at)) for at in plate.sheets])
        assert all(seen.buffer(1e-6).covers(ring(each.shape)) for each in plate.prints)


def test_prints_stand_off_the_bars_where_there_is_room():
    for plate in searched([board(100, 60), board(90, 40)], A4, 0, (1, 10), lambda s, c: None):
        assert min(min(each.shape.bounds[:2]) for each in plate.prints) == pytest.approx(8.0)


def test_same_prints_are_arranged_the_same_way():
    one, two = (sought(*SET) for _ in range(2))
    for a, b in zip(one.plates, two.plates, strict=True):
        assert a.sheets == b.sheets
        assert [p.shape.bounds for p in a.prints] == [p.shape.bounds for p in b.prints]


def test_nothing_is_sought_where_there_can_be_no_fewer():
    heard = []
    arranged([board(180, 240), board(20, 20)], A4, 500, 5, lambda s, count: heard.append(count))
    assert heard == []


def test_search_tells_how_far_it_is():
    heard = []
    arranged(SET, A4, 500, 1, lambda share, count: heard.append((share, count)))
    shares, counts = zip(*heard, strict=True)
    assert list(shares) == sorted(shares)
    assert list(counts) == sorted(counts, reverse=True)


@pytest.mark.parametrize("prints", [SET, SET[:3], SET[4:], [board(700, 90)] * 3])
def test_bound_count_and_alone_are_in_order(prints):
    found = sought(*prints)
    singly = sum(len(plate.sheets) for plate in alone(prints, A4))
    assert fewest_by_need(prints, A4) == found.fewest <= found.count <= singly


def test_more_prints_than_there_is_room_for_are_not_laid():
    assert searched([board(150, 250)] * 40, A4, 1, (1, 1), lambda s, c: None) == ()
