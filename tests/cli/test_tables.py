"""Tables line up in a terminal, whatever letters they hold."""

import pytest

from patternmaker.cli.tables import columns, plain, table


@pytest.mark.parametrize(
    ("text", "wide"), [("", 0), ("top", 3), ("椅子", 4), ("u\u0308", 1), ("Übung", 5), ("｛", 2)]
)
def test_text_takes_so_many_columns(text, wide):
    assert columns(text) == wide


def test_columns_line_up_beside_wide_letters():
    lines = table(("seat", "cut"), [("椅子", "6"), ("stool", "2")]).splitlines()
    assert [columns(line[: line.rindex(" ") + 1]) for line in lines] == [9, 9, 9]


def test_nothing_trails_at_the_end_of_a_line():
    assert table(("a", "b"), [("x", ""), ("y", "long")]).splitlines()[1] == "  x"


@pytest.mark.parametrize("sign", ["\x1b", "\x07", "\u202e", "\udcff", "\x9b", "\r", "\t"])
def test_terminal_is_given_nothing_to_obey(sign):
    assert plain(f"a{sign}b\nc") == "a?b\nc"


def test_other_letters_stay():
    assert plain("½ × ″ 椅 — [red]") == "½ × ″ 椅 — [red]"
