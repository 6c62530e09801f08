"""The bench card of a seat."""

import re
from dataclasses import replace

import pytest

from patternmaker.cutlist.rows import Tally
from patternmaker.drawing.measures import usual
from patternmaker.drawing.surface import Drawing, Letters
from patternmaker.job import load_job
from patternmaker.job.model import Job
from patternmaker.job.reading import read_job
from patternmaker.outlines import SHAPES
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Fit
from patternmaker.sheets.card import LARGEST, SETTINGS, Card
from patternmaker.sheets.figures import Figures
from patternmaker.sheets.papers import stock_of
from patternmaker.units import Unit
from tests.covers.seats import BENCH, boxed, brief
from tests.paper.samples import SAMPLES

STOOL = load_job(SAMPLES / "round-piano-stool.toml")
CASES = [
    (job, seat.name)
    for job in (load_job(path) for path in sorted(SAMPLES.glob("*.toml")))
    for seat in job.seats
]
USUAL = [outline for kind in SHAPES.all.values() if (outline := usual(kind, Unit.MM))]
EACH = pytest.mark.parametrize(("job", "name"), CASES, ids=[name for _, name in CASES])


def card(job: Job = STOOL, name: str | None = None, paper: str = "A4", **changes) -> Card:
    seat = next(seat for seat in job.seats if name in {None, seat.name})
    return Card(job, seat, replace(seat.pattern(), **changes), stock_of(job.unit, paper))


def letters(pages: list[Drawing]) -> list[Letters]:
    return [mark for page in pages for mark in page.marks if isinstance(mark, Letters)]


def text(pages: list[Drawing]) -> str:
    return " ".join(each.text for each in letters(pages))


def inside(pages: list[Drawing], each: Card) -> bool:
    across, up = each.stock.window(landscape=False)
    return all(
        mark.box[0] > -0.01
        and mark.box[1] > -0.01
        and mark.box[2] < across + 0.01
        and mark.box[3] < up + 0.01
        for mark in letters(pages)
    )


@EACH
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_every_sample_s_card_is_one_page_in_type_to_be_read_at_arm_s_length(job, name, paper):
    each = card(job, name, paper)
    pages = each.pages()
    assert len(pages) == 1
    assert inside(pages, each)
    steps = [mark for mark in letters(pages) if mark.text.startswith(("Cut on", "Pull its"))]
    assert min(mark.size for mark in steps) >= SETTINGS[-1][0]


@EACH
def test_card_says_every_step_and_every_piece_with_its_sizes(job, name):
    each = card(job, name)
    said = text(each.pages())
    assert said.count("Cut on the cut line") == 1
    for number in range(1, len(each.pattern.steps) + 1):
        assert f" {number} " in said
    for piece in each.pattern.pieces:
        assert f"{piece.name.capitalize()}: cut" in said
        assert piece.material.title in said


def test_drawings_give_way_before_a_line_goes_over_to_a_second_page():
    """Piped twice, with a zip and a warning, a box cushion has more to say than most."""
    job = read_job({
        "name": "Organ loft", "units": "in", "material": {"kind": "woven cloth"},
        "seat": [{
            "name": "Organ bench", "cover": {"style": "box cushion", "height": 3},
            "outline": {"shape": "rounded rectangle", "width": 42, "depth": 14, "corner": 1},
            "welt": [{"seam": "top seam"}, {"seam": "bottom seam"}],
        }],
    })  # fmt: skip
    each = card(job, paper="Letter")
    assert "Look: The boxing takes a strip" in text(each.pages())
    assert len(each.pages()) == 1
    assert inside(each.pages(), each)


@pytest.mark.parametrize("outline", USUAL, ids=lambda outline: outline.called)
def test_card_of_every_shape_is_one_page(outline):
    pattern = boxed(brief(outline.contour()))
    seat = replace(STOOL.seats[0], outline=outline)
    each = Card(STOOL, seat, pattern, stock_of(Unit.MM, "A4"))
    pages = each.pages()
    assert len(pages) == 1
    assert inside(pages, each)


@pytest.mark.parametrize("steps", [30, 60, 200])
def test_more_than_a_page_holds_goes_on_over_the_next_and_nothing_is_lost(steps):
    told = tuple(Note(f"Step{i} " + "and so on " * 16) for i in range(steps))
    each = card(steps=told)
    pages = each.pages()
    assert len(pages) > 1
    assert inside(pages, each)
    said = text(pages)
    assert all(f"Step{i} " in said for i in range(steps))
    assert min(mark.size for mark in letters(pages) if "so on" in mark.text) >= SETTINGS[-1][0]
    for page in pages:
        assert "6 × Round piano stool" in text([page])


def test_fewer_steps_are_set_larger():
    sizes = []
    for count in (3, 14, 22):
        pages = card(steps=(Note("Look twice and cut once"),) * count).pages()
        assert len(pages) == 1
        sizes.append(next(mark.size for mark in letters(pages) if mark.text.startswith("Look tw")))
    assert sizes == sorted(sizes, reverse=True)
    assert sizes[0] == pytest.approx(SETTINGS[0][0], rel=0.05)
    assert len(set(sizes)) == 3


def test_larger_paper_is_set_larger_up_to_a_limit():
    sizes = [max(mark.size for mark in letters(card(paper=p).pages())) for p in ("A4", "A3", "A0")]
    assert sizes == sorted(sizes)
    assert sizes[2] == pytest.approx(9.0 * LARGEST)


def test_smallest_paper_holds_it_on_more_pages():
    each = card(paper="150x160mm")
    pages = each.pages()
    assert len(pages) > 1
    assert inside(pages, each)


def test_seat_and_job_are_named_with_what_is_asked_for_all_day():
    said = text(card().pages())
    assert said.startswith("6 × Round piano stool") or "6 × Round piano stool" in said
    for words in ("Practice rooms, east wing", "Seat 12¹⁄₂ × 12¹⁄₂ in", "Seam allowance ¹⁄₂ in",
                  "Topstitch at ¹⁄₄ in", "Wrap-under 1 in"):  # fmt: skip
        assert words in said


def test_cushion_without_base_or_topstitch_has_no_figures_for_them():
    said = text(card(load_job(SAMPLES / "loose-cushions.toml")).pages())
    assert "Seam allowance" in said
    assert "Topstitch at" not in said
    assert "Wrap-under" not in said


def test_figures_are_not_parted_from_their_words():
    each = card(load_job(SAMPLES / "duet-bench.toml"))
    lines = [mark.text for mark in letters(each.pages()) if "Topstitch" in mark.text and mark.bold]
    assert len(lines) == 2
    for figure in (each for line in lines for each in line.split("   ")):
        assert re.fullmatch(r"(Seat [\d.]+ ×|[A-Z][a-z-]+( [a-z]+)*) [\d.]+ m?m( a seat)?", figure)


def test_long_name_is_set_smaller_or_over_two_lines():
    job = replace(STOOL, seats=(replace(STOOL.seats[0], name="Bench " * 9 + "of walnut"),))
    each = card(job)
    assert inside(each.pages(), each)
    assert "of walnut" in text(each.pages())


def test_warnings_and_cautions_are_on_the_card():
    said = text(card(fit=Fit(1.0, (), (Note("The tape is {} off", (3.0,)),))).pages())
    assert "Look: The tape is ¹⁄₈ in off" in said
    assert "flammability code" in said


def test_stitches_to_set_and_the_thread_of_a_seat_are_told():
    each = card()
    thread = sum(row.thread for row in each.pattern.stitches) / 25.4 / 36
    said = text(each.pages())
    for figure in ("Stitch 8 per inch", "Topstitch 6 per inch", f"Thread {thread:.1f} yd"):
        assert figure in said


def test_reversed_seats_are_counted_and_their_papers_turned():
    outline = {"shape": "L shape", "width": 500, "depth": 450, "leg_width": 200,
               "back_depth": 180}  # fmt: skip
    table = {"name": "Pair", "units": "mm", "seat": [
        {"name": "Corner", "make": 1, "reversed": 2, "outline": outline,
         "cover": {"style": "boxed", "drop": 70}},
    ]}  # fmt: skip
    said = text(card(read_job(table)).pages())
    assert "1 + 2 reversed × Corner" in said
    assert "turn the papers over" in said
    assert "turn the papers over" not in text(card().pages())


def figures(pieces, width=190.0, room=100.0) -> Figures:
    return Figures(pieces, Tally(1), Unit.MM, width, room, 3.0)


def test_pieces_stand_side_by_side_and_boxing_below():
    square = RoundedRectangle(width=440, depth=440, corner=60).contour()
    rows = figures(boxed(brief(square, boxing_longest=1370)).pieces).rows
    assert [[figure.piece.name for figure in row] for row in rows] == [
        ["top", "base template", "dust cover"], ["boxing front", "boxing back"],
    ]  # fmt: skip


def test_all_pieces_are_drawn_to_one_scale_wherever_they_fit():
    rows = figures(boxed(brief(BENCH, boxing_longest=1600)).pieces).rows
    assert len({figure.factor for row in rows for figure in row}) == 1


def test_boxing_too_long_for_that_is_drawn_to_a_lesser_scale():
    scales = {}
    for row in figures(boxed(brief()).pieces, room=400).rows:
        for figure in row:
            scales[figure.piece.name] = figure.factor
    assert scales["boxing"] < scales["top"] == scales["dust cover"]


@pytest.mark.parametrize("room", [40, 70, 100, 160])
@pytest.mark.parametrize("count", [1, 4, 12])
def test_however_many_pieces_there_are_they_stay_within_their_rooms(room, count):
    pieces = boxed(brief(BENCH)).pieces * count
    found = figures(pieces, room=room)
    assert sum(len(row) for row in found.rows) == len(pieces)
    assert found.height == pytest.approx(sum(block.height for block in found.blocks()))
    if room > 40 * count:
        assert found.height <= room
    for row in found.rows:
        assert sum(figure.room for figure in row) <= 190
        assert all(figure.piece.cut.width * figure.factor < figure.room for figure in row)


def test_long_name_of_a_panel_is_wrapped_below_it():
    top = replace(boxed(brief()).pieces[0], name="the panel that runs over the left arm and down")
    (block,) = figures([top] * 4, room=60).blocks()
    words = [mark for mark in block.drawing.marks if isinstance(mark, Letters) and mark.bold]
    assert len([mark for mark in words if "panel" in mark.text]) == 4
    assert not any("and down" in mark.text and "panel" in mark.text for mark in words)


def test_figures_grow_by_no_more_than_is_to_spare():
    before = figures(boxed(brief()).pieces, room=60)
    for spare in (0, 5, 30, 300):
        assert before.height <= before.grown(spare).height <= before.height + spare + 1e-9
