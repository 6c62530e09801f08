"""The PDF writer: what is drawn comes out where it was drawn, and always as the same bytes."""

import math
from io import BytesIO
from typing import Any

import pypdf
import pytest

from patternmaker.drawing.looks import Pen
from patternmaker.drawing.surface import Drawing, Fill, Letters, Stroke, rectangle
from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.segments import Arc
from patternmaker.writers.pdf import PdfBook
from tests.paper.reader import Page, Paper

RED = Pen(0.5, (3.0, 1.0), (1.0, 0.0, 0.0))


def one_page(*marks: Stroke | Fill | Letters, width: float = 200, height: float = 100) -> bytes:
    book = PdfBook("Title", "Subject")
    Drawing(marks).onto(book.page(width, height))
    book.end_page()
    return book.finished()


def read(content: bytes) -> Page:
    return Paper(content).pages[0]


def test_same_calls_give_the_same_bytes():
    marks = (Stroke(Path.through(0, 10 + 5j), RED), Letters(20 + 20j, "½ Größe", 4))
    assert one_page(*marks) == one_page(*marks)


def test_page_has_its_size():
    assert read(one_page()).size == pytest.approx((200, 100))


def test_line_comes_out_where_it_was_drawn_with_its_pen():
    (line,) = read(one_page(Stroke(Path.through(10 + 20j, 60 + 30.5j), RED))).lines
    assert abs(line.curve.start - (10 + 20j)) < 1e-4
    assert abs(line.curve.end - (60 + 30.5j)) < 1e-4
    assert line.pen.width == pytest.approx(0.5, abs=1e-5)
    assert line.pen.dashes == pytest.approx((3, 1), abs=1e-5)
    assert line.pen.colour == pytest.approx((1, 0, 0))


def test_pen_is_the_one_of_each_line_in_turn():
    other = Pen(0.2)
    row = [RED, RED, other, RED, other]
    page = read(one_page(*(Stroke(Path.through(i, i + 1j), pen) for i, pen in enumerate(row))))
    assert [round(line.pen.width, 3) for line in page.lines] == [pen.width for pen in row]
    assert [bool(line.pen.dashes) for line in page.lines] == [bool(pen.dashes) for pen in row]


@pytest.mark.parametrize("radius", [5.0, 40.0, 900.0])
def test_circle_is_round_to_a_few_millionths_of_its_radius(radius):
    """Beziers of 45 degrees miss an arc by 4.2e-6 of its radius: tried with mpmath."""
    circle = Contour((Arc(0, radius, math.tau),))
    (line,) = read(one_page(Stroke(circle, RED))).lines
    away = abs(line.curve.spread()) - radius
    assert max(abs(away)) < 5e-6 * radius + 1e-3
    assert line.curve.length == pytest.approx(math.tau * radius, rel=3e-6, abs=1e-3)
    assert line.curve.is_closed


def test_open_path_stays_open():
    (line,) = read(one_page(Stroke(Path.through(0, 10, 10 + 10j), RED))).lines
    assert len(line.curve.pieces) == 2
    assert not line.curve.is_closed


def test_fill_is_no_stroke():
    assert read(one_page(Fill(rectangle((0, 0, 5, 5)), (0, 0, 0)))).lines == []


@pytest.mark.parametrize(
    "text", ["Stool", "½ ⅜ ¹⁄₁₆", "Größe, Ñandú", "Табурет", "Σκαμνί", "(a\\b)"]
)
def test_words_come_back_as_they_were_written(text):
    (words,) = read(one_page(Letters(30 + 40j, text, 4))).words
    assert words.text == text
    assert abs(words.at - (30 + 40j)) < 1e-3
    assert words.size == pytest.approx(4, abs=1e-4)


@pytest.mark.parametrize("way", [1, 1j, -1, complex(0.8, -0.6)])
def test_words_are_anchored_by_their_width(way):
    found = [
        read(one_page(Letters(100 + 50j, "Boxing", 5, anchor=anchor, way=way))).words[0].at
        for anchor in ("left", "middle", "right")
    ]
    steps = [(found[0] - at) / way for at in found]
    assert abs(steps[1] - steps[2] / 2) < 1e-3
    assert steps[2].real > 10
    assert abs(steps[2].imag) < 1e-3


def test_form_is_drawn_where_it_is_placed_and_clipped():
    book = PdfBook("Title", "Subject")
    form = book.form(Drawing((Stroke(Path.through(0, 900 + 900j), RED),)), 1000, 1000)
    for shift in (5 + 7j, -300 - 200j):
        book.page(200, 100).place(form, (10, 20, 190, 90), shift)
        book.end_page()
    first, second = Paper(book.finished()).pages
    for page, shift in ((first, 5 + 7j), (second, -300 - 200j)):
        (line,) = page.lines
        assert abs(line.curve.start - shift) < 1e-3
        assert line.placed
        assert line.placed.clip == pytest.approx((10, 20, 190, 90), abs=1e-3)
    assert first.lines[0].placed != second.lines[0].placed


def test_form_is_written_once_however_often_it_is_shown():
    def size(pages: int) -> int:
        book = PdfBook("Title", "Subject")
        lines = tuple(Stroke(Path.through(i, i + 90j), RED) for i in range(2000))
        form = book.form(Drawing(lines), 1000, 1000)
        for _ in range(pages):
            book.page(200, 100).place(form, (10, 20, 190, 90))
            book.end_page()
        return len(book.finished())

    assert size(12) - size(2) < 10 * 1000
    assert size(2) > 5000


def test_bookmarks_keep_their_order_and_lead_to_their_pages():
    book = PdfBook("Title", "Subject")
    for name in ("Überblick", "Second", "Third (½)"):
        book.page(200, 100)
        book.bookmark(name, book.place())
        book.end_page()
    reader = pypdf.PdfReader(BytesIO(book.finished()))
    entries = [entry for entry in reader.outline if not isinstance(entry, list)]
    assert [entry.title for entry in entries] == ["Überblick", "Second", "Third (½)"]
    assert [reader.get_destination_page_number(entry) for entry in entries] == [0, 1, 2]


def test_file_says_what_it_is_and_not_when_or_where_it_was_made():
    """/CreationDate is a fixed one; the same job gives the same bytes on every machine."""
    reader = pypdf.PdfReader(BytesIO(one_page(Letters(0, "x", 3))))
    assert reader.metadata
    assert reader.metadata.title == "Title"
    assert reader.metadata.subject == "Subject"
    assert "patternmaker" in str(reader.metadata.creator)
    assert reader.metadata.creation_date
    assert reader.metadata.creation_date.year == 2000


def test_enclosed_file_comes_back_under_its_name():
    book = PdfBook("A", "B")
    book.page(100, 100)
    book.end_page()
    book.enclose("job.json", "What it was drafted from", b'{"a":1}')
    found = pypdf.PdfReader(BytesIO(book.finished()))
    assert found.attachments == {"job.json": [b'{"a":1}']}


def test_entries_below_a_bookmark_are_folded_away_and_share_pages_with_others():
    book = PdfBook("Title", "Subject")
    places = []
    for _ in range(3):
        book.page(200, 100)
        places.append(book.place())
        book.end_page()
    book.bookmark("Top", places[0], [("Sheet 1", places[0]), ("Sheet 2", places[1])])
    book.bookmark("Boxing", places[1])
    reader = pypdf.PdfReader(BytesIO(book.finished()))
    outline: list[Any] = list(reader.outline)
    top, below, boxing = outline
    assert [reader.get_destination_page_number(each) for each in (top, *below, boxing)] == [
        0, 0, 1, 1,
    ]  # fmt: skip
    assert top["/Count"] == -2
    root: Any = reader.trailer["/Root"]
    assert root["/Outlines"]["/Count"] == 2


def test_pages_are_labelled_as_they_are_numbered():
    book = PdfBook("Title", "Subject")
    for before in ("Overview ", None, "Card ", "", None):
        book.page(200, 100)
        if before is not None:
            book.label(before)
        book.end_page()
    reader = pypdf.PdfReader(BytesIO(book.finished()))
    assert reader.page_labels == ["Overview 1", "Overview 2", "Card 1", "1", "2"]
