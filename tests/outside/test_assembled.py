"""Sheets put together on a virtual table: what they show is the whole plate, dot by dot.

Every way of joining, by nothing but what is printed: the words at the edges, crosses, numbers.
"""

import numpy as np
import pytest

from tests.paper.assembly import EDGE, Assembled, undivided
from tests.paper.raster import Ink
from tests.paper.reader import Box, Words
from tests.paper.samples import Made, made
from tests.paper.sheets import Sheet, lone_lines, lone_words

JOINS = {"lap": {"TRIM"}, "butt": {"TRIM"}, "fold": {"FOLD BACK"}}
BOOKS = [
    (job, paper, join) for job, paper in (("organ-bench", None), ("round-piano-stool", "180x200mm"))
    for join in JOINS
]  # fmt: skip
DOTS = 5  # to the mm
OFF = 2  # dots: each page is pasted on whole dots, and ink runs into both sides of one
DARK, PALE = 0.75, 0.3
BESIDE = 1.2  # mm round the strokes and words of the sheets themselves


@pytest.fixture(params=BOOKS, ids=lambda book: " ".join(map(str, book)))
def printed(request: pytest.FixtureRequest) -> Made:
    job, paper, join = request.param
    return made(job, paper, whole=False, join=join)


def spread(ink: Ink, dots: int) -> Ink:
    """Return the darkest ink within some dots of each place, along and across."""
    for axis in (0, 1):
        ink = np.max([np.roll(ink, off, axis) for off in range(-dots, dots + 1)], axis=0)
    return ink


def of_the_sheets(sheets: list[Sheet], shape: tuple[int, ...]) -> np.ndarray:
    """Return where the sheets' own strokes and words stand, with some room round them."""
    found = np.zeros(shape, dtype=np.bool_)
    for sheet in sheets:
        boxes = [line.curve.box for line in lone_lines(sheet.page)]
        boxes = [
            box for box in boxes if min(box[2] - box[0], box[3] - box[1]) < 15
        ]  # not the frame
        boxes += [_round_about(word) for word in lone_words(sheet.page)]
        left, bottom, right, top = sheet.page_clip
        boxes += [(left, bottom, left, top), (right, bottom, right, top),
                  (left, bottom, right, bottom), (left, top, right, top)]  # fmt: skip
        for box in boxes:
            low = (complex(*box[:2]) - sheet.placed.origin) + (EDGE - BESIDE) * (1 + 1j)
            high = (complex(*box[2:]) - sheet.placed.origin) + (EDGE + BESIDE) * (1 + 1j)
            rows = slice(max(0, int(low.imag * DOTS)), int(high.imag * DOTS))
            found[rows, max(0, int(low.real * DOTS)) : int(high.real * DOTS)] = True
    return found


def _round_about(word: Words) -> Box:
    """Return a box that holds a word, read level or upward."""
    long = 0.65 * word.size * len(word.text)
    level = (word.at.real, word.at.imag, word.at.real + long, word.at.imag + word.size)
    upward = (word.at.real - word.size, word.at.imag, word.at.real, word.at.imag + long)
    return upward if word.upward else level


def test_assembled_sheets_show_the_plate_and_nothing_else(printed):
    for sheets in printed.book.plates.values():
        table = Assembled.of(printed, sheets, DOTS)
        plate = undivided(printed, sheets[0], DOTS)
        edge = round(EDGE * DOTS)
        whole = np.zeros_like(table.ink)
        rows = min(plate.shape[0], whole.shape[0] - edge)
        columns = min(plate.shape[1], whole.shape[1] - edge)
        whole[edge : edge + rows, edge : edge + columns] = plate[:rows, :columns]
        lost = (whole > DARK) & (spread(table.ink, OFF) < PALE)
        assert not lost.any(), f"{lost.sum()} dots of the pattern are not seen"
        added = (table.ink > DARK) & (spread(whole, OFF) < PALE)
        added &= ~of_the_sheets(sheets, table.ink.shape)
        assert not added.any(), f"{added.sum()} dots are no part of the pattern"
        assert max(map(abs, table.offs), default=0.0) < 0.02


def test_sheets_say_at_their_edges_what_is_done_there(printed, request):
    join = request.node.callspec.params["printed"][2]
    for sheets in printed.book.plates.values():
        for sheet in sheets:
            earlier = {n for s in sheets if s.number < sheet.number for n in s.joins}
            new = [number for number in sheet.joins if number in earlier]
            done = len(sheet.joins) if join == "butt" else len(new)
            assert len(sheet.edges) == done
            assert {says for _, says in sheet.edges} <= JOINS[join]


def test_paper_lies_everywhere_inside_the_plate(printed):
    """Edge to edge leaves no gap, and no sheet hides what lies below but what it shows itself."""
    for sheets in printed.book.plates.values():
        table = Assembled.of(printed, sheets, DOTS)
        for sheet in sheets:
            left, bottom, right, top = (round((side + EDGE) * DOTS) for side in sheet.window)
            assert table.paper[bottom + 2 : top - 2, left + 2 : right - 2].mean() > 0.9
