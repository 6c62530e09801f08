"""Talking on a terminal, or with a file."""

from io import BytesIO, StringIO, TextIOWrapper

import pytest

from patternmaker.cli.terminal import Terminal


class Screen(StringIO):
    def isatty(self) -> bool:
        return True


def test_answer_is_a_line_without_its_end():
    screen = Screen()
    assert Terminal(Screen("14 1/2\r\nmore\n"), screen).ask("width ") == "14 1/2"
    assert screen.getvalue() == "width "


def test_answer_from_a_file_is_shown_as_it_would_be_on_a_terminal():
    says = StringIO()
    assert Terminal(StringIO("12\n"), says).ask("width ") == "12"
    assert says.getvalue() == "width 12\n"


@pytest.mark.parametrize("left", ["", "12"])
def test_answers_that_end_or_are_cut_off_are_told_apart_from_an_empty_one(left):
    with pytest.raises(EOFError):
        Terminal(StringIO(left), StringIO()).ask("width ")


def test_closed_stream_answers_nothing():
    terminal = Terminal(None, StringIO())
    assert not terminal.is_one
    with pytest.raises(EOFError):
        terminal.ask("width ")


def test_it_is_a_terminal_only_with_somebody_on_both_ends():
    assert Terminal(Screen(), Screen()).is_one
    assert not Terminal(StringIO(), Screen()).is_one
    assert not Terminal(Screen(), StringIO()).is_one


def test_what_a_terminal_would_obey_is_shown_as_question_marks():
    says = StringIO()
    terminal = Terminal(StringIO("\x1b[2J\n"), says)
    terminal.say("a\x1bb")
    terminal.ask("c ")
    assert says.getvalue() == "a?b\nc ?[2J\n"


def test_byte_that_is_no_letter_is_a_bad_answer_and_no_fault():
    answers = TextIOWrapper(BytesIO(b"\xff\n"), encoding="utf-8")
    assert Terminal(answers, StringIO()).ask("") == "\ufffd"


def test_braille_is_shown_where_the_stream_takes_it():
    assert Terminal(None, TextIOWrapper(BytesIO(), encoding="utf-8")).braille
    assert not Terminal(None, TextIOWrapper(BytesIO(), encoding="cp1252")).braille
