"""Progress is shown on a terminal, when there is something to wait for."""

from io import StringIO

import pytest

from patternmaker.cli import progress
from patternmaker.cli.progress import WIDEST, Progress


class Terminal(StringIO):
    def isatty(self) -> bool:
        return True


class Clock:
    def __init__(self) -> None:
        self.now = 100.0

    def monotonic(self) -> float:
        return self.now


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> Clock:
    made = Clock()
    monkeypatch.setattr(progress, "time", made)
    return made


def shown(stream: StringIO, clock: Clock, *moments: float) -> str:
    with Progress(stream) as tell:
        for done, moment in enumerate(moments, 1):
            clock.now = 100 + moment
            tell(done, len(moments))
        return stream.getvalue()


def test_quick_work_shows_nothing(clock):
    assert shown(Terminal(), clock, 0.1, 0.2, 0.49) == ""


def test_long_work_shows_how_far_it_has_come(clock):
    assert shown(Terminal(), clock, 0.1, 0.5, 0.9) == "\rsheet 2 of 3 \rsheet 3 of 3 "


def test_it_is_not_shown_more_often_than_one_can_read(clock):
    assert shown(Terminal(), clock, 0.5, 0.55, 0.59, 0.61) == "\rsheet 1 of 4 \rsheet 4 of 4 "


def test_it_is_wiped_away_at_the_end_even_of_a_fault(clock):
    stream = Terminal()

    def faulty() -> None:
        with Progress(stream) as tell:
            clock.now += 1
            tell(1, 2)
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        faulty()
    assert stream.getvalue() == "\rsheet 1 of 2 \r" + " " * WIDEST + "\r"


def test_nothing_is_shown_where_nobody_watches(clock):
    assert shown(StringIO(), clock, 1, 2, 3) == ""


def test_the_search_for_fewer_sheets_is_shown_with_how_to_end_it(clock):
    stream = Terminal()
    with Progress(stream) as tell:
        clock.now += 1
        tell.searching(0.25, 37)
        assert stream.getvalue() == "\r37 sheets; looking for fewer: 25% (Ctrl-C: take these) "
        clock.now += 1
        tell(1, 37)
        assert stream.getvalue().endswith(" ")
        assert "Ctrl" not in stream.getvalue().rsplit("\r", 1)[1]
