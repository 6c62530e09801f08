"""Pieces drawn small."""

from dataclasses import replace
from itertools import combinations

import pytest
import shapely

from patternmaker.drawing.small import NAME, SLIT, SMALL_PENS, small_drawing
from patternmaker.drawing.surface import Letters
from patternmaker.geometry.contour import Path
from patternmaker.geometry.touching import overlap
from patternmaker.job import load_job
from patternmaker.pattern.piece import LineKind, Piece
from tests.contours import ring
from tests.covers.seats import BENCH, boxed, brief, piece
from tests.drawing.recorder import Recorder
from tests.paper.samples import SAMPLES

PIECES = [
    piece
    for name in ("round-piano-stool", "organ-bench", "music-school", "traced-seats")
    for seat in load_job(SAMPLES / f"{name}.toml").seats
    for piece in seat.pattern().pieces
]
EACH = pytest.mark.parametrize("each", PIECES, ids=lambda each: each.name)


def drawn(each: Piece, wide: float = 60.0, middle: complex = 0) -> Recorder:
    recorder = Recorder()
    small_drawing(each, wide / each.cut.width, middle).onto(recorder)
    return recorder


def strokes(recorder: Recorder, kind: LineKind) -> list[Path]:
    return [path for path, pen in recorder.strokes if pen == SMALL_PENS[kind]]


@EACH
def test_piece_is_drawn_to_scale_about_the_middle_it_is_given(each):
    (cut,) = strokes(drawn(each, 60, middle=100 + 50j), LineKind.CUT)
    left, bottom, right, top = cut.bounds
    assert right - left == pytest.approx(60)
    assert (top - bottom) / 60 == pytest.approx(each.cut.height / each.cut.width)
    assert [(left + right) / 2, (bottom + top) / 2] == pytest.approx([100, 50])


@EACH
def test_names_stand_clear_of_each_other_and_inside_the_box_round_the_piece(each):
    recorder = drawn(each, 160 if each.is_strip else 60)
    (cut,) = strokes(recorder, LineKind.CUT)
    left, bottom, right, top = cut.bounds
    boxes = [letters.box for letters in recorder.letters]
    assert not any(overlap(one, two) for one, two in combinations(boxes, 2))
    for one in boxes:
        assert left <= one[0] < one[2] <= right
        assert bottom <= one[1] < one[3] <= top


@EACH
def test_arrow_s_word_lies_on_the_piece_clear_of_its_edge(each):
    recorder = drawn(each)
    area = ring(each.cut.mapped(60 / each.cut.width, -each.cut.middle * 60 / each.cut.width))
    for letters in recorder.letters:
        if letters.text == each.arrow[1]:
            assert area.contains(shapely.box(*letters.box))


def test_sides_front_and_back_of_a_top_are_named():
    text = [letters.text for letters in drawn(piece(boxed(brief()), "top")).letters]
    assert {"back", "left", "front", "right", "start", "stop", "FRONT"} <= set(text)


def test_both_ends_of_a_strip_are_named_beside_their_join_lines():
    recorder = drawn(piece(boxed(brief(BENCH)), "boxing"), 180)
    ends = [letters for letters in recorder.letters if letters.text == "back"]
    assert [letters.anchor for letters in ends] == ["left", "right"]
    joins = strokes(recorder, LineKind.JOIN)
    for letters, line in zip(ends, joins, strict=True):
        assert abs(letters.at.real - line.bounds[0]) < 1


def test_places_where_stapling_begins_are_named_by_their_side():
    text = [letters.text for letters in drawn(piece(boxed(brief()), "base template")).letters]
    assert text[:4] == ["back", "left", "front", "right"]


def test_notch_is_long_enough_to_be_seen():
    top = replace(piece(boxed(brief()), "top"), arrow=(-1j, ""))
    slits = strokes(drawn(top, 20), LineKind.NOTCH)
    assert {round(path.length, 6) for path in slits} == {SLIT}


def test_numbers_give_way_to_names():
    top = piece(boxed(brief(notch_spacing=25)), "top")
    text = {letters.text for letters in drawn(top, 30).letters if letters.size == NAME}
    assert {"back", "left", "front", "right"} <= text
    assert len(text) < len(top.notches)


def test_arrow_matters_more_than_a_name_in_its_place():
    dome = next(seat for seat in load_job(SAMPLES / "drum-throne.toml").seats
                if seat.name == "Timpani stool")  # fmt: skip
    text = [letters.text for letters in drawn(piece(dome.pattern(), "top")).letters]
    assert "FRONT" in text


def test_lines_give_way_to_names():
    recorder = drawn(piece(boxed(brief()), "top"))
    boxes = [path.bounds for path, _ in recorder.fills]
    for letters in recorder.letters[:-1]:
        own = letters.box
        assert any(box[0] < own[0] and own[2] < box[2] and box[1] < own[1] and own[3] < box[3]
                   for box in boxes[1:])  # fmt: skip


def test_piece_without_room_has_no_arrow():
    text = [mark.text for mark in small_drawing(piece(boxed(brief()), "top"), 0.02, 0).marks
            if isinstance(mark, Letters)]  # fmt: skip
    assert "FRONT" not in text


def test_piece_without_edges_is_drawn_all_the_same():
    bare = replace(piece(boxed(brief()), "dust cover"), edges={}, guides=())
    assert len(drawn(bare).strokes) == 1 + 1  # its cut line, and the arrow
