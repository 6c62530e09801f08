"""Numbers of joins stand clear of words, alike on both sheets."""

import pytest

from patternmaker.drawing.surface import Letters
from patternmaker.geometry.touching import overlap
from patternmaker.sheets.book import laid_out
from patternmaker.sheets.numbers import SHARES, beside, number_shares, words_in
from patternmaker.sheets.tiling import Grid, Join
from tests.paper.samples import JOBS
from tests.sheets.prints import A4
from tests.sheets.test_book import drafted

GRID = Grid(A4, landscape=False, columns=2, rows=1)
JOIN = Join(7, (0, 0), (1, 0))


def test_number_stands_where_it_always_does_if_nothing_is_there():
    assert number_shares([JOIN], GRID, ()) == {JOIN: SHARES[0]}


@pytest.mark.parametrize("place", [(0, 0), (1, 0)])
def test_number_gives_way_to_a_word_on_either_sheet(place):
    left, bottom, *_ = GRID.window(place)
    (number, *_) = beside(JOIN, GRID, place, SHARES[0])
    word = Letters(number.at + complex(left, bottom), "back left ends", 3.0, anchor="middle")
    assert number_shares([JOIN], GRID, tuple(words_in([word]))) == {JOIN: SHARES[1]}


def test_box_of_turned_words_is_turned():
    (box,) = words_in([Letters(10 + 10j, "turned", 3.0, way=1j)])
    assert box[3] - box[1] > box[2] - box[0]
    assert box[2] == pytest.approx(10)


@pytest.mark.parametrize("name", JOBS)
def test_no_sample_has_a_number_on_a_word(name):
    for each in laid_out(drafted(name), A4, whole=False, most_sheets=500).plates:
        grid = each.plate.grid
        words = tuple(words_in(m for one in each.plate.prints for m in one.drawing.marks))
        for join, share in number_shares(each.joins, grid, words).items():
            corner = complex(*grid.window(join.second)[:2])
            for word in beside(join, grid, join.second, share):
                assert not any(overlap(word.mapped(1, corner).box, other) for other in words)
