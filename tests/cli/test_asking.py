"""Questions, one by one."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from patternmaker.cli.answers import Answer
from patternmaker.cli.asking import Questions, pictures
from patternmaker.errors import Refusal, Refusals
from patternmaker.facts import (
    Default,
    Measured,
    at_most,
    both,
    choice,
    file,
    length,
    measured,
    rows,
)
from patternmaker.outlines import SHAPES
from patternmaker.outlines.circle import Circle
from patternmaker.units import Unit
from tests.cli.talk import Answering


@measured
class Cushion(Measured):
    width: float = length("left to right", default=both(mm=400), least=50)
    corner: float = length("radius", default=both(mm=40), required=False)
    hand: str = choice("which side", ("left", "right"), default="left")
    extra: float | None = length("what differs", required=False)
    limits = (at_most("corner", lambda width: width / 2, "half", "make it smaller"),)


@measured
class Stand(Measured):
    height: float = length("how high")


PAIR = ((1.0, 2.0), (3.0, 4.0))


@measured
class Table(Measured):
    places: tuple[tuple[float, ...], ...] = rows(
        "each place", ("x", "y"), least=2, default=Default(PAIR, PAIR)
    )


@measured
class Corners(Measured):
    corners: tuple[tuple[float, ...], ...] = rows("where", ("x",))


class Drawn(Circle):
    file: Any = file("a drawing of the outline")


DRAWN = measured(Drawn)


def values(talk: Answering, kind: type[Measured] = Cushion, **more: Any) -> dict[str, Any]:
    asked = Questions(talk, kind, Unit.MM, Path(), **more).asked()
    return {name: answer.value for name, answer in asked.items()}


def test_enter_takes_what_is_offered():
    talk = Answering(["", "", "", ""])
    assert values(talk) == {"width": 400.0, "corner": 40.0, "hand": "left", "extra": None}
    assert talk.asked == ["width [400 mm]", "corner [40 mm]", "hand [left]", "extra [none]"]


def test_words_bounds_and_choices_are_told():
    talk = Answering(["200", "", "", ""])
    values(talk)
    for part in ("width: left to right; at least 50 mm", "at most half (100 mm)",
                 "hand: which side: left or right"):  # fmt: skip
        assert part in talk.heard


def test_wrong_answer_is_refused_as_in_a_job_file_and_asked_again():
    talk = Answering(["wide", "10", "200", "", "", ""])
    assert values(talk)["width"] == 200
    assert "width: 'wide' is not a length" in talk.heard
    assert "width: 10 mm is less than 50 mm; make it 50 mm or more" in talk.heard


def test_limit_between_fields_is_checked_at_once():
    talk = Answering(["100", "60", "50", "", ""])
    assert values(talk)["corner"] == 50
    assert "corner: 60 mm is more than half (50 mm); make it smaller" in talk.heard


def test_unknown_choice_is_refused_with_the_nearest():
    talk = Answering(["", "", "rihgt", "right", ""])
    assert values(talk)["hand"] == "right"
    assert "did you mean 'right'?" in talk.heard


def test_back_asks_the_question_before_again():
    talk = Answering(["100", "back", "200", "90", "", ""])
    assert values(talk) == {"width": 200.0, "corner": 90.0, "hand": "left", "extra": None}


def test_back_at_the_first_question_asks_it_again():
    talk = Answering(["BACK", "", "", "", ""])
    assert values(talk)["width"] == 400


def test_missing_answer_that_must_be_given_is_refused():
    talk = Answering(["", "70"])
    assert values(talk, Stand) == {"height": 70.0}
    assert talk.asked[0] == "height []"
    assert "height: is missing; give how high" in talk.heard


def test_only_the_fields_asked_for_are_asked_with_the_defaults_given():
    talk = Answering([""])
    found = values(talk, fields=("extra",), defaults={"extra": Answer(7.0, "7")})
    assert found == {"extra": 7.0}


@pytest.mark.parametrize("one", [True, False])
def test_answers_that_may_not_stand_together_are_refused_and_the_last_is_asked_again(one):
    tries = []

    def check(answers: Mapping[str, Answer]) -> None:
        tries.append(answers["extra"].value)
        if len(tries) == 1:
            mistake = Refusal("seat", "closes up", mend="make it larger")
            raise mistake if one else Refusals([mistake])

    talk = Answering(["", "", "", "1", "2"])
    assert values(talk, check=check)["extra"] == 2
    assert tries == [1.0, 2.0]
    assert "seat: closes up; make it larger" in talk.heard


def test_rows_are_asked_until_an_empty_line():
    talk = Answering(["1, 2", "5; 6", "7, 8", ""])
    assert values(talk, Table) == {"places": ((1.0, 2.0), (5.0, 6.0), (7.0, 8.0))}
    assert talk.asked == ["row 1:", "row 2:", "row 3:", "row 4:"]


def test_empty_line_at_once_takes_the_rows_offered():
    talk = Answering([""])
    assert values(talk, Table) == {"places": ((1.0, 2.0), (3.0, 4.0))}
    assert "An empty line at once takes [[1 mm, 2 mm], [3 mm, 4 mm]]" in talk.heard


def test_rows_that_have_no_default_may_be_left_away():
    talk = Answering([""])
    assert values(talk, Corners) == {"corners": ()}
    assert "at once" not in talk.heard


def test_wrong_row_is_refused_by_its_number_and_asked_again():
    talk = Answering(["1, 2", "3", "3, -4", "3, 4", ""])
    assert values(talk, Table) == {"places": ((1.0, 2.0), (3.0, 4.0))}
    assert "row 2: holds one figure" in talk.heard
    assert "row 2, y: -4 mm is less than 0 mm" in talk.heard


def test_too_few_rows_are_refused_and_all_asked_again():
    talk = Answering(["1, 2", "", "1, 2", "3, 4", ""])
    assert len(values(talk, Table)["places"]) == 2
    assert "number of rows: 1 is less than 2" in talk.heard


def test_rows_may_be_left_for_the_question_before():
    talk = Answering(["1, 2", "back", "1, 2", "3, 4", ""])
    assert len(values(talk, Table)["places"]) == 2


def test_end_of_the_answers_is_passed_on():
    with pytest.raises(EOFError):
        values(Answering(["100"]))


def test_picture_shows_where_the_measurement_in_question_is_taken():
    show = pictures(SHAPES.all["oval"], Unit.MM, braille=False)
    assert "A" in "".join(show("width", {})[:-1])
    assert "B" in "".join(show("depth", {})[:-1])


def test_picture_follows_the_answers_as_far_as_they_may_stand():
    show = pictures(SHAPES.all["oval"], Unit.MM, braille=False)
    round_ = show("depth", {"width": 330.0})
    assert round_ != show("depth", {})
    assert show("depth", {"width": 1.0}) == show("depth", {})


def test_nothing_is_shown_for_what_is_taken_nowhere():
    assert pictures(SHAPES.all["half round"], Unit.MM, braille=True)("round", {}) == []
    assert pictures(DRAWN, Unit.MM, braille=True)("diameter", {}) == []
