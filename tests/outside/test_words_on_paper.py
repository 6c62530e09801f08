"""What the paper says, read back with pdfplumber from the pages as a person gets them."""

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
