"""Drawings: recorded, turned, moved, and played on any surface."""

from itertools import combinations

import pytest

from patternmaker.drawing.looks import PENS, RULE
from patternmaker.drawing.surface import BLACK, Drawing, Fill, Letters, Stroke, rectangle
from patternmaker.geometry.contour import Path
from patternmaker.pattern.piece import LineKind
from tests.drawing.recorder import Recorder

LINE = Path.through(1 + 1j, 5 + 2j)


def test_drawing_plays_its_marks_in_order():
    recorder = Recorder()
    Drawing((Stroke(LINE, RULE), Fill(LINE, BLACK), Letters(2j, "a", 3))).onto(recorder)
    assert recorder.strokes == [(LINE, RULE)]
    assert recorder.fills == [(LINE, BLACK)]
    assert recorder.text == "a"


def test_quarter_turn_turns_lines_and_the_way_words_read():
    turned = Drawing((Stroke(LINE, RULE), Letters(3 + 1j, "a", 4, way=1))).mapped(1j, 10)
    stroke, letters = turned.marks
    assert isinstance(stroke, Stroke)
    assert stroke.path.segments[0].start == 9 + 1j
    assert isinstance(letters, Letters)
    assert (letters.at, letters.way, letters.size) == (9 + 3j, 1j, 4)


def test_smaller_drawing_has_smaller_type_and_the_same_pens():
    small = Drawing((Stroke(LINE, RULE), Letters(0, "a", 4))).mapped(0.5)
    stroke, letters = small.marks
    assert isinstance(stroke, Stroke)
    assert stroke.pen == RULE
    assert isinstance(letters, Letters)
    assert letters.size == 2
    assert abs(letters.way) == pytest.approx(1)


def test_drawings_are_put_one_on_the_other():
    one, two = Drawing((Stroke(LINE, RULE),)), Drawing((Letters(0, "a", 4),))
    assert (one + two).marks == one.marks + two.marks


def test_rectangle_is_closed():
    path = rectangle((1, 2, 4, 6))
    assert path.length == 14
    assert path.segments[0].start == path.segments[-1].end == 1 + 2j


def test_every_kind_of_line_has_a_look():
    assert set(PENS) == set(LineKind)


@pytest.mark.parametrize(("one", "two"), list(combinations(LineKind, 2)))
def test_kinds_of_line_are_told_apart_by_their_looks(one, two):
    assert PENS[one] != PENS[two]


def test_lines_that_run_along_an_edge_are_told_apart_without_colour():
    """By dashes alone, as on a printer in black."""
    along = (LineKind.CUT, LineKind.SEW, LineKind.TOPSTITCH, LineKind.FOLD, LineKind.JOIN,
             LineKind.REFERENCE)  # fmt: skip
    assert len({PENS[kind].dashes for kind in along}) == len(along)
