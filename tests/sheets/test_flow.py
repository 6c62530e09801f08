"""Blocks of type flowed into columns and over pages."""

import pytest

from patternmaker.drawing.surface import Drawing, Letters
from patternmaker.drawing.typeface import width
from patternmaker.sheets.flow import (
    Block,
    column_width,
    flowed,
    heading,
    paragraph,
    row,
    space,
)


def block(name: str, height: float, *, keeps: bool = False) -> Block:
    return Block(height, Drawing((Letters(-1j * height, name, 3),)), keeps=keeps)


def names(page: Drawing) -> list[str]:
    return [mark.text for mark in page.marks if isinstance(mark, Letters)]


def test_blocks_stand_one_below_the_other():
    (page,) = flowed([block("a", 20), block("b", 30)], 186, 250)
    ends = [mark.at for mark in page.marks if isinstance(mark, Letters)]
    assert ends == [230j, 200j]


def test_what_does_not_fit_goes_to_the_next_page():
    pages = flowed([block(str(i), 100) for i in range(5)], 186, 250)
    assert [names(page) for page in pages] == [["0", "1"], ["2", "3"], ["4"]]


def test_wide_pages_have_columns():
    pages = flowed([block(str(i), 100) for i in range(5)], 2 * 186 + 10, 250)
    assert [names(page) for page in pages] == [["0", "1", "2", "3"], ["4"]]
    ats = [mark.at for mark in pages[0].marks if isinstance(mark, Letters)]
    assert {at.real for at in ats} == {0, column_width(2 * 186 + 10) + 10}


@pytest.mark.parametrize(("page", "column"), [(100, 100), (381, 381), (382, 186), (578, 186)])
def test_columns_share_the_width(page, column):
    assert column_width(page) == pytest.approx(column)


def test_heading_is_not_parted_from_what_it_heads():
    blocks = [block("a", 200), block("head", 20, keeps=True), block("b", 40)]
    assert [names(page) for page in flowed(blocks, 186, 250)] == [["a"], ["head", "b"]]


def test_block_taller_than_a_page_has_one_of_its_own():
    blocks = [block("a", 10), block("tall", 900), block("b", 10)]
    assert [names(page) for page in flowed(blocks, 186, 250)] == [["a"], ["tall"], ["b"]]


def test_paragraph_keeps_within_its_width():
    text = "the quick brown fox jumps over the lazy dog " * 5
    found = paragraph(text.strip(), 60, indent=8)
    for mark in found.drawing.marks:
        assert isinstance(mark, Letters)
        assert mark.at.real == 8
        assert 8 + width(mark.text, mark.size) <= 60
        assert -found.height <= mark.at.imag < 0
    assert " ".join(names(found.drawing)).split() == text.split()


def test_row_is_as_high_as_its_highest_cell():
    low = row(["a", "b"], [0.5, 0.5], 100)
    high = row(["a", "many words that take more lines than one or two or three"], [0.5, 0.5], 60)
    assert high.height > 2 * low.height
    assert not low.keeps
    assert row(["A"], [1.0], 100, bold=True, keeps=True).keeps


def test_heading_keeps_and_space_is_empty():
    assert heading("Cut list", 100).keeps
    assert space(7).height == 7
    assert space(7).drawing.marks == ()
