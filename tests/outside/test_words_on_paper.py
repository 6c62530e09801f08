"""What the paper says, read back with pdfplumber from the pages as a person gets them."""

import math
import re
import unicodedata
from io import BytesIO
from typing import Any

import pdfplumber
import pytest

from tests.paper.samples import JOBS, made

IN = 25.4


def _plain(text: str) -> str:
    apart = re.sub(r"(?<=\d)\s*([⁰¹²³⁴-⁹]+⁄)", r" \1", text)
    return " ".join(unicodedata.normalize("NFKC", apart).replace("⁄", "/").split())


@pytest.fixture(scope="module")
def said():
    """Every page of each job as text; what a form shows outside its window is still in it."""
    found = {}
    for job in JOBS:
        with pdfplumber.open(BytesIO(made(job, whole=False).pdf)) as document:
            found[job] = [_plain(page.extract_text()) for page in document.pages]
    return found


def sheets(said: dict[str, list[str]], job: str) -> list[str]:
    return said[job][len(made(job, whole=False).book.overview) :]


def pieces(job: str) -> list[tuple[dict[str, Any], dict[str, Any]]]:
    """Return each seat and piece of the summary."""
    seats = made(job, whole=False).figures["seats"]
    return [(seat, piece) for seat in seats for piece in seat["pieces"]]


def in_inches(value: float) -> str:
    """Return a length as a tape in inches shows it, to the nearest 1/16."""
    sixteenths = round(value / IN * 16)
    whole, rest, over = sixteenths // 16, sixteenths % 16, 16
    while rest and rest % 2 == 0:
        rest, over = rest // 2, over // 2
    return " ".join(part for part in (str(whole) if whole else "", f"{rest}/{over}" if rest else "")
                    if part)  # fmt: skip


@pytest.mark.parametrize("job", JOBS)
def test_every_piece_says_its_name_count_and_side(said, job):
    text = " ".join(sheets(said, job))
    for seat, piece in pieces(job):
        template = piece["role"] == "base template"
        count = piece["cut"] * (1 if template else seat["make"])
        assert re.search(rf"{piece['name'].capitalize()}:? .*?{count}", text), piece["name"]
        assert seat["name"] in text
    assert made(job).figures["job"] in text
    assert "SHOW SIDE UP" in text
    assert "FRONT" in text


@pytest.mark.parametrize("job", JOBS)
def test_every_sheet_names_its_job_pieces_and_number(said, job):
    count = made(job, whole=False).figures["sheets"]["count"]
    for number, text in enumerate(sheets(said, job), 1):
        assert f"sheet {number} of {count}" in text
        assert made(job).figures["job"] in text
        assert any(piece["name"] in text for _, piece in pieces(job))


def test_sizes_are_told_in_sixteenths(said):
    text = " ".join(said["round-piano-stool"])
    for _, piece in pieces("round-piano-stool"):
        width, height = in_inches(piece["width_mm"]), in_inches(piece["height_mm"])
        assert f"{width} × {height}" in text, piece["name"]
    assert "12 1/2 × 12 1/2" in text  # as measured
    assert "cut 6 9/16 in" in text  # the trammel: 334.3275 / 2 = 6.58 in


def test_sizes_are_told_in_millimetres(said):
    text = " ".join(said["organ-bench"])
    for _, piece in pieces("organ-bench"):
        width, height = (round(2 * piece[side]) / 2 for side in ("width_mm", "height_mm"))
        assert f"{width:g} × {height:g}" in text, piece["name"]
    assert "440 × 440" in text


@pytest.mark.parametrize("job", JOBS)
def test_overview_comes_first_and_holds_what_it_must(said, job):
    overview = " ".join(said[job][: len(made(job, whole=False).book.overview)])
    assert overview.startswith(made(job).figures["job"])
    for heading in ("Sheets and joins", "Cut list", "Fit report", "Strike by hand", "Cautions"):
        assert heading in overview
    for seat, piece in pieces(job):
        assert seat["name"] in overview
        assert piece["name"] in overview
        assert piece["material"] in overview
    assert f"{made(job, whole=False).figures['sheets']['count']} sheets" in overview


# Cautions, by the rules that they rest on: 16 CFR 1640 (Federal Register 2021-06977),
# SI 1988/1324, 49 CFR 571.302; OSHA on methylene chloride; tools are common practice.
@pytest.mark.parametrize(
    "caution",
    ["measure", "before anything is cut", "blade", "needle", "staple gun", "adhesive",
     "flammability code", "do not establish", "16 CFR 1640", "SI 1988/1324", "FMVSS 302",
     "airbag", "local codes", "licensed practice"],
)  # fmt: skip
@pytest.mark.parametrize("job", JOBS)
def test_overview_cautions(said, job, caution):
    overview = " ".join(said[job][: len(made(job, whole=False).book.overview)])
    assert caution.lower() in overview.lower()


@pytest.mark.parametrize("job", JOBS)
def test_overview_tells_of_the_materials_cut_and_the_date(said, job):
    overview = said[job][0]
    assert ("Summer term" in overview) is (job == "music-school")


@pytest.fixture(scope="module")
def cards():
    """The text of each job's bench cards, found by what they call themselves."""
    found = {}
    for job in JOBS:
        with pdfplumber.open(BytesIO(made(job, whole=False).pdf)) as document:
            texts = [_plain(page.extract_text()) for page in document.pages]
        found[job] = [text for text in texts if "Bench card ·" in text]
    return found


@pytest.mark.parametrize("job", JOBS)
def test_every_seat_has_one_card_between_overview_and_sheets(said, cards, job):
    seats = made(job, whole=False).figures["seats"]
    assert len(cards[job]) == len(seats)
    before = said[job][: len(made(job, whole=False).book.overview)]
    assert before[-len(seats) :] == cards[job]
    for seat, text in zip(seats, cards[job], strict=True):
        assert text.startswith(f"{seat['make']} × {seat['name']}")


@pytest.mark.parametrize("job", JOBS)
def test_sheets_count_neither_overview_nor_cards(job):
    printed = made(job, whole=False)
    assert printed.figures["sheets"]["count"] == len(printed.book.sheets)
    assert len(printed.book.paper.pages) == len(printed.book.sheets) + len(printed.book.overview)


@pytest.mark.parametrize("job", JOBS)
def test_card_tells_pieces_how_many_and_their_sizes(cards, job):
    inch = made(job).figures["units"] == "in"
    for seat, text in zip(made(job).figures["seats"], cards[job], strict=True):
        for piece in seat["pieces"]:
            sizes = [piece["width_mm"], piece["height_mm"]]
            shown = [in_inches(x) if inch else f"{math.floor(2 * x + 0.5) / 2:g}" for x in sizes]
            count = piece["cut"] * (1 if piece["role"] == "base template" else seat["make"])
            assert f"{piece['name'].capitalize()}: cut {count}" in text
            assert " × ".join(shown) in text


def test_card_s_steps_bear_the_job_s_own_numbers(cards):
    """Those of the job file, by hand: 1/2 in seam, 3 in spare, 1 in wrap."""
    (text,) = cards["round-piano-stool"]
    for words in ("Sew at 1/2 in", "trim its spare (3 in) to 1/2 in", "reference line 7/8 in",
                  "12 1/2 in by 12 1/2 in", "3 1/2 in past the back join", "7 in left open",
                  "staple every 1 in to 1 1/2 in"):  # fmt: skip
        assert words in text, words


def test_steps_are_numbered_in_the_order_of_work(cards):
    (text,) = cards["round-piano-stool"]
    order = ["Cut on the cut line", "Snip", "Leave the back join", "Lay the boxing", "Sew at",
             "trim its spare", "Close the back join", "Topstitch on", "draw the reference line",
             "Fit the cover", "staple back, front, left, right", "Look from above",
             "round the dust cover"]  # fmt: skip
    places = [text.index(words) for words in order]
    assert places == sorted(places)
    for number in range(1, len(order) + 1):
        assert re.search(rf"\b{number} [A-Z]", text)


@pytest.mark.parametrize("job", JOBS)
def test_no_word_of_a_card_leaves_the_printable_part_of_its_page(job):
    """Margins of a home printer: 10 mm, 13 at the foot; 3/8 and 1/2 in (as the job's paper)."""
    least = 25.4 * 3 / 8 if made(job).figures["units"] == "in" else 10.0
    with pdfplumber.open(BytesIO(made(job, whole=False).pdf)) as document:
        for page in document.pages:
            if "Bench card ·" not in page.extract_text():
                continue
            words = page.extract_words()
            assert min(word["x0"] for word in words) * 25.4 / 72 > least - 0.1
            assert max(word["x1"] for word in words) * 25.4 / 72 < (
                float(page.width) * 25.4 / 72 - least + 0.1
            )
            assert max(word["bottom"] for word in words) * 25.4 / 72 < (
                float(page.height) * 25.4 / 72 - least
            )
