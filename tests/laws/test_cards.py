"""Laws of bench cards: whatever the seat, its cover and the paper, nothing is lost or clipped."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from patternmaker.drawing.surface import Letters, Mark
from patternmaker.job import load_job
from patternmaker.sheets.card import LARGEST, PAGE, SETTINGS, SMALLEST, Card
from patternmaker.sheets.papers import PAPERS, Margins, Stock
from tests.laws.test_covers import covered, few
from tests.paper.samples import SAMPLES

(STOOL,) = load_job(SAMPLES / "round-piano-stool.toml").seats
JOB = load_job(SAMPLES / "round-piano-stool.toml")


@st.composite
def stocks(draw: st.DrawFn) -> Stock:
    """Draw a paper by name, and what the printer leaves white."""
    margin = draw(st.floats(0, 20))
    return Stock(draw(st.sampled_from(sorted(PAPERS.values(), key=lambda paper: paper.name))),
                 Margins(margin, margin, margin, margin), 10)  # fmt: skip


def box(mark: Mark) -> tuple[float, float, float, float]:
    return mark.box if isinstance(mark, Letters) else mark.path.bounds


@few
@given(covered(), stocks())
def test_card_says_every_step_and_keeps_within_its_page(seat, stock):
    card = Card(JOB, replace(STOOL, brief=seat.brief, cover=seat.cover), seat.pattern, stock)
    pages = card.pages()
    across, up = stock.window(landscape=False)
    for mark in (mark for page in pages for mark in page.marks):
        left, bottom, right, top = box(mark)
        assert left > -0.01
        assert bottom > -0.01
        assert right < across + 0.01
        assert top < up + 0.01
    words = [mark for page in pages for mark in page.marks if isinstance(mark, Letters)]
    said = " ".join(mark.text for mark in words)
    for number, note in enumerate(seat.pattern.steps, 1):
        assert f" {number} {note.told(JOB.unit).split()[0]}" in said
    scale = max(SMALLEST, min(LARGEST, across / PAGE[0], up / PAGE[1]))
    numbers = [mark for mark in words if mark.bold and mark.text == "1"]
    assert min(mark.size for mark in numbers) > SETTINGS[-1][0] * scale - 1e-6
