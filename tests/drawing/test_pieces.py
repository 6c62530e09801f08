"""Pieces as they are printed: every line, every name, every word, in its place."""

from dataclasses import replace

import pytest
import shapely

from patternmaker.cutlist.rows import Tally, seats_of
from patternmaker.cutlist.strike import marks_along
from patternmaker.drawing.ends import StripEnds
from patternmaker.drawing.labels import Context, Row, by, columns, fitted, rows, show
from patternmaker.drawing.looks import PENS
from patternmaker.drawing.pieces import label_room, lines_of, piece_drawing
from patternmaker.drawing.prints import print_of
from patternmaker.drawing.surface import Drawing, Letters, Stroke
from patternmaker.drawing.typeface import width
from patternmaker.geometry.touching import enters
from patternmaker.job import load_job
from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.pattern.cloth import laid, match_line
from patternmaker.pattern.piece import LineKind, Piece
from patternmaker.units import Unit
from tests.contours import ring
from tests.covers.seats import BENCH, boxed, brief, piece
from tests.drawing.recorder import Recorder
from tests.paper.samples import JOBS, SAMPLES

ALL = [
    (seat, piece, Context(job.name, seat.name, seats_of(seat), job.unit))
    for job in (load_job(SAMPLES / f"{name}.toml") for name in (*JOBS, "cello-chairs"))
    for seat in job.seats
    for piece in seat.pattern().pieces
]
EACH = pytest.mark.parametrize(
    ("piece", "context"), [case[1:] for case in ALL],
    ids=[f"{case[2].job}: {case[2].seat}, {case[1].name}" for case in ALL],
)  # fmt: skip


def played(drawing: Drawing) -> Recorder:
    recorder = Recorder()
    drawing.onto(recorder)
    return recorder


@EACH
def test_every_line_is_drawn_with_its_own_pen(piece, context):
    drawn = played(piece_drawing(piece)).strokes
    for kind, path in lines_of(piece):
        assert (path, PENS[kind]) in drawn


@EACH
def test_cut_line_is_drawn_last_of_all_lines(piece, context):
    kinds = [kind for kind, _ in lines_of(piece)]
    assert kinds[-1] is LineKind.CUT
    assert kinds.count(LineKind.CUT) == 1
    slits = sum(len(notch.feet) for notch in piece.notches)
    assert kinds.count(LineKind.NOTCH) == slits


@EACH
def test_every_notch_has_its_name_beside_it(piece, context):
    letters = played(piece_drawing(piece)).letters
    for notch in piece.notches:
        foot = sum(notch.feet) / len(notch.feet)
        assert any(word.text == notch.name and abs(word.at - foot) < 30 for word in letters), (
            notch.name
        )


@EACH
@pytest.mark.parametrize("whole", [False, True])
def test_words_stand_within_the_piece(piece, context, whole):
    printed = print_of(piece, context, whole=whole).placed(0, 0, turned=False, cells=())
    inside = ring(printed.shape, 0.05).buffer(0.1)
    for word in played(printed.drawing).letters:
        run = width(word.text, word.size, bold=word.bold)
        share = {"left": 0.0, "middle": 0.5, "right": 1.0}[word.anchor]
        begin = word.at - share * run * word.way
        ends = [(p.real, p.imag) for p in (begin, begin + run * word.way)]
        assert inside.covers(shapely.LineString(ends)), word.text


@EACH
def test_no_line_nor_cross_runs_through_a_panel_s_label(piece, context):
    if not piece.is_strip:
        room = label_room(piece)
        assert [kind for kind, path in lines_of(piece) if enters(path, room)] == []


@EACH
def test_names_at_the_ends_of_a_strip_stand_beside_their_lines(piece, context):
    if not piece.is_strip or not StripEnds(piece, context).saves_paper:
        return
    drawing = StripEnds(piece, context).drawing()
    lines = [mark.path for mark in drawing.marks if isinstance(mark, Stroke)]
    names = {name for name, _ in piece.run}
    for mark in drawing.marks:
        if isinstance(mark, Letters) and mark.text in names:
            assert not any(enters(line, mark.box) for line in lines), mark.text


@EACH
def test_label_says_all_that_a_piece_must_say(piece, context):
    printed = print_of(piece, context, whole=True).placed(0, 0, turned=False)
    said = " ".join(played(printed.drawing).text.split())
    for row in rows(piece, context):
        assert " ".join(row.text.split()) in said, row.text


@EACH
def test_ends_of_a_strip_tell_every_mark_of_its_run(piece, context):
    if not piece.is_strip:
        assert print_of(piece, context, whole=False).shape == piece.cut
        return
    ends = StripEnds(piece, context)
    printed = print_of(piece, context, whole=False)
    assert (printed.shape != piece.cut) is ends.saves_paper
    if ends.saves_paper:
        said = " ".join(played(ends.drawing()).text.split())
        for name, x in piece.run[1:]:
            assert show(x, context.unit) in said
            assert name in said
        assert printed.width < piece.cut.width


def test_lengths_are_shown_in_the_unit_of_the_job():
    assert by(25.4, 50.8, Unit.IN) == "1 × 2 in"
    assert by(25.4, 50.5, Unit.MM) == "25.5 × 50.5 mm"


def test_label_is_set_smaller_and_then_shortened_to_fit():
    lines = [Row(f"line {i}", 4.0) for i in range(10)]
    assert fitted(lines, 100, 60)[0].size == 4.0
    smaller = fitted(lines, 100, 40)
    assert len(smaller) == 10
    assert smaller[0].size < 4.0
    shortened = fitted(lines, 100, 15)
    assert 0 < len(shortened) < 10
    assert shortened[0].text == "line 0"  # the weightiest comes first and stays
    assert fitted(lines, 100, 0) == []


def test_columns_run_from_the_top_and_begin_anew_where_they_are_full():
    marks = columns([Row(f"line {i}", 4.0) for i in range(10)], 5, 50, 40, 27).marks
    ats = [mark.at for mark in marks if isinstance(mark, Letters)]
    assert len({at.real for at in ats}) == 2
    assert min(at.imag for at in ats) >= 50 - 27


def test_a_shallow_strip_says_all_that_it_must_though_its_label_crosses_the_fold():
    seat = brief(BENCH, wrap=10)
    context = Context("Recital hall", "Organ bench", Tally(1), Unit.MM)
    printed = print_of(piece(boxed(seat, 15), "boxing"), context, whole=True).placed(
        0, 0, turned=False
    )
    said = " ".join(played(printed.drawing).text.split())
    for words in ("Boxing: cut", "SHOW SIDE UP", "Drop 15 mm, wrap-under 10 mm"):
        assert words in said


VELOUR = Material(kind="velour")


def arrows(cut: Piece) -> list[tuple[str, complex]]:
    """Return the words in bold on a piece and where they stand."""
    return [(word.text, word.at) for word in played(piece_drawing(cut)).letters if word.bold]


def test_arrow_of_a_top_shows_the_nap_with_the_front():
    (found,) = arrows(piece(laid(boxed(brief(BENCH, VELOUR))), "top"))
    assert found[0] == "FRONT, NAP"
    (plain,) = arrows(piece(laid(boxed(brief(BENCH))), "top"))
    assert plain[0] == "FRONT"


def test_boxing_has_an_arrow_up_to_the_seat_and_one_down_the_nap():
    boxing = piece(laid(boxed(brief(BENCH, VELOUR))), "boxing")
    (seat, up), (nap, down) = arrows(boxing)
    assert (seat, nap) == ("SEAT", "NAP")
    assert up.imag > down.imag  # each word stands past its head
    fold = next(g.path.bounds[1] for g in boxing.guides if g.kind is LineKind.FOLD)
    assert down.imag > fold


@pytest.mark.parametrize("drop", [30.0, 80.0])
def test_label_of_a_whole_strip_stands_beside_its_match_line(drop):
    tweed = Material(kind="woven cloth", repeat_across=60)
    boxing = piece(laid(boxed(brief(BENCH, tweed), drop)), "boxing")
    line = match_line(boxing)
    assert line
    left, _, right, _ = label_room(boxing)
    assert right - left > 900
    assert not left <= line.bounds[0] <= right


def test_name_of_a_notch_stands_beside_a_match_line():
    tweed = Material(kind="woven cloth", repeat_across=60)
    pattern = laid(boxed(brief(BENCH, tweed)))
    for each in (piece(pattern, "top"), piece(pattern, "boxing")):
        line = match_line(each)
        assert line
        (front,) = (w for w in played(piece_drawing(each)).letters if w.text == "front")
        assert front.box[0] > line.bounds[0] + 1


def says(seats: Tally, material: Material) -> str:
    cut = piece(laid(boxed(brief(BENCH, material))), "top")
    context = Context("Recital hall", "Organ bench", seats, Unit.MM)
    return " / ".join(row.text for row in rows(cut, context))


def test_paper_of_handed_seats_says_how_the_mirror_image_is_cut():
    plain = says(Tally(1, 1), Material())
    assert "cut 1 + 1 reversed" in plain
    assert "For the reversed ones turn this paper over / " in plain
    assert "nap" not in plain
    assert "Their arrow goes with the nap too" in says(Tally(1, 1), VELOUR)
    assert "reversed" not in says(Tally(2), VELOUR)


def test_marks_of_a_strip_name_its_match_line():
    tweed = Material(kind="woven cloth", repeat_across=60)
    boxing = piece(laid(boxed(brief(BENCH, tweed))), "boxing")
    assert [name for name, _ in marks_along(boxing) if "match" in name] == ["front, match line"]


def test_a_piece_too_low_for_a_label_is_drawn_without_one():
    tiny = replace(
        piece(boxed(brief(BENCH)), "dust cover"), cut=Circle(diameter=60).contour().mapped(0.5)
    )
    _, bottom, _, top = label_room(tiny)
    assert bottom == top
    context = Context("Recital hall", "Organ bench", Tally(1), Unit.MM)
    assert print_of(tiny, context, whole=True).placed(0, 0, turned=False).drawing.marks
