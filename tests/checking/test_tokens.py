"""Tokens as ISO 32000-1:2008 has them, 7.2 and 7.3; its own examples where a clause is named."""

import pytest

from patternmaker.checking.content import content_of_stream
from patternmaker.checking.tokens import Unreadable, operations


def operands(text: bytes) -> list[object]:
    ((_, found),) = operations(text + b" x")
    return found


@pytest.mark.parametrize(
    ("text", "value"),
    [(b"123", 123.0), (b"+17", 17.0), (b"-98", -98.0), (b"34.5", 34.5), (b"-3.62", -3.62),
     (b"+123.6", 123.6), (b"4.", 4.0), (b"-.002", -0.002), (b"0.0", 0.0)],
)  # fmt: skip
def test_numbers_of_the_standard(text, value):
    """7.3.3, examples 1 and 2."""
    assert operands(text) == [value]


@pytest.mark.parametrize(
    ("text", "value"),
    [(b"(This is a string)", b"This is a string"), (b"()", b""), (rb"(a\(b\)c)", b"a(b)c"),
     (rb"(This string contains \245two octal characters\307.)",
      b"This string contains \xa5two octal characters\xc7."),
     (b"(two \\\nlines)", b"two lines"), (rb"(\0053)", b"\x053"), (rb"(\53)", b"+"),
     (b"<4E6F762073686D6F7A206B6120706F702E>", b"Nov shmoz ka pop."),
     (b"<901FA>", b"\x90\x1f\xa0")],
)  # fmt: skip
def test_strings_of_the_standard(text, value):
    """7.3.4, its examples among them."""
    assert operands(text) == [value]


def test_lists_names_comments():
    assert operands(b"[4 2.5] 0 /Name1 % a comment\n<< /a [1] >>") == [
        [4.0, 2.5], 0.0, "/Name1", ["/a", [1.0]],
    ]  # fmt: skip


def test_operators_in_a_row():
    assert list(operations(b"0 0 m 1 2 l S")) == [("m", [0, 0]), ("l", [1, 2]), ("S", [])]


@pytest.mark.parametrize("text", [b"1 }", b"(open", b"]", b"\xff"])
def test_what_is_no_token_is_told(text):
    with pytest.raises(Unreadable, match="its drawing"):
        list(operations(text))


def drawn(text: bytes):
    return content_of_stream(text, {})


def test_path_operators():
    """8.5.2.1: v begins its curve with the current point, y ends it with its last handle twice."""
    (stroke,) = drawn(b"0 0 m 1 0 l 2 1 3 1 v 4 1 5 5 y h S").strokes
    assert stroke.pieces == ((0, 1), (1, 1, 2 + 1j, 3 + 1j), (3 + 1j, 4 + 1j, 5 + 5j, 5 + 5j),
                             (5 + 5j, 0))  # fmt: skip


def test_matrix_goes_before_the_ones_before_it():
    """8.3.4: what is concatenated last is done first."""
    (stroke,) = drawn(b"2 0 0 2 0 0 cm 1 0 0 1 10 0 cm 0 0 m 1 1 l 3 w S").strokes
    assert stroke.pieces == ((20, 22 + 2j),)
    assert stroke.pen.width == 6


def test_window_is_kept_to_its_end():
    first, second = drawn(b"q 0 0 5 5 re W n 0 0 m 9 9 l S Q 0 0 m 9 9 l S").strokes
    assert (first.clip, second.clip) == ((0, 0, 5, 5), None)


def test_white_boxes_hide_and_other_areas_do_not():
    blanks = drawn(b"1 g 0 0 5 5 re f 0 g 0 0 7 7 re f 1 1 1 rg 0 0 m 9 9 l 9 0 l f").blanks
    assert [blank.box for blank in blanks] == [(0, 0, 5, 5)]


def test_words_stand_where_their_matrix_says():
    """9.4.2: Td moves the line, not what was shown of it."""
    content = content_of_stream(
        b"BT /F 10 Tf 5 7 Td (a) Tj 0 -12 Td [(a) -50 (b)] TJ ET", {"/F": {97: "A", 98: "B"}}
    )
    assert [(w.text, w.at, w.size) for w in content.words] == [
        ("A", 5 + 7j, 10), ("AB", 5 - 5j, 10),
    ]  # fmt: skip
