"""What comes out of a printer that prints long and short, drawn for it: measured on its paper.

The printer is simulated: pages are rendered at 600 dots an inch, or read, and their ink stretched.
"""

import dataclasses
import tempfile
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from patternmaker.drafting import Options, draft
from patternmaker.job import load_job
from patternmaker.sheets.papers import stock_of
from patternmaker.sheets.printer import Printer, Sides
from patternmaker.sheets.proof import command_for, proof_page
from patternmaker.sheets.sides import proved, read_sides
from patternmaker.units import Unit
from tests.outside.test_proof_of_scale import (
    DPI,
    PER_100,
    bars,
    between_ticks,
    corners,
    is_clear,
    meeting,
    side_of_ink,
)
from tests.paper.lying import Lying
from tests.paper.raster import Raster
from tests.paper.reader import Page, Paper
from tests.paper.samples import SAMPLES
from tests.paper.sheets import Print

LONG_AND_SHORT = Lying(0.006, -0.004)
INCHES, MILLIMETRES = (101.6, (76.2, 101.6, 127.0)), (100.0, (90.0, 120.0, 150.0))
JOBS = [
    ("round-piano-stool", None, LONG_AND_SHORT, *INCHES),
    ("organ-bench", None, LONG_AND_SHORT, *MILLIMETRES),
    ("organ-bench", None, Lying(-0.004, 0.006), *MILLIMETRES),
    ("organ-bench", "A3", Lying(-0.03, -0.03), *MILLIMETRES),
    ("music-school", "A3", Lying(0.03, -0.029), *MILLIMETRES),
]


def true_sides(up: float) -> Sides:
    return Sides(up / 4 * 3, up, up / 4 * 5)


@cache
def made_for(job: str, paper: str | None, lying: Lying) -> tuple[bytes, Print]:
    """Return a sample as it is drawn for a printer that lies."""
    loaded = load_job(SAMPLES / f"{job}.toml")
    stock = stock_of(loaded.unit, paper)
    stated = true_sides(240)
    measured = Sides(180 * (1 + lying.across), 240 * (1 + lying.up), None)
    printer = Printer("east wing", stock.paper, stock.margins, loaded.unit, stated, measured)
    options = Options(dataclasses.replace(stock, printer=printer))
    with tempfile.TemporaryDirectory() as folder:
        pdf = draft(loaded, Path(folder), options).files[0].read_bytes()
    return pdf, Print(pdf)


def measured_on(raster: Raster, page: Page, sides: Sides) -> Sides:
    """Return the sides of a proof triangle as its ink lies on the paper."""
    assert sides.long
    corner, up, across = triangle(raster, page, (sides.across, sides.up, sides.long))
    return Sides(abs(across - corner), abs(up - corner), abs(up - across))


def triangle(
    raster: Raster, page: Page, sides: tuple[float, float, float]
) -> tuple[complex, complex, complex]:
    """Return the corners of the triangle by its ink: the right angle, the upper, the other."""
    right, up, along = corners(page, sides)
    upright, level = side_of_ink(raster, right, up), side_of_ink(raster, right, along)
    slope = side_of_ink(raster, up, along)
    return meeting(upright, level), meeting(upright, slope), meeting(level, slope)


@pytest.mark.parametrize("way", [LONG_AND_SHORT, Lying(-0.02, 0.013)])
@pytest.mark.parametrize(("paper", "unit"), [("A4", Unit.MM), ("Letter", Unit.IN)])
def test_proof_page_that_is_printed_and_measured_tells_what_the_printer_does(way, paper, unit):
    stock = stock_of(unit, paper)
    pdf, drawn = proof_page(stock, unit, command_for("east wing")), proved(unit, stock)
    (page,) = Paper(pdf).pages
    found = measured_on(way.rastered(pdf, page, DPI), way.printed(page), drawn)
    typed = {name: f"{side} mm" for name, side in found.named.items()}
    stated, measured = read_sides(typed, unit, stock)
    printer = Printer("east wing", stock.paper, stock.margins, unit, stated, measured)
    assert printer.errors == pytest.approx((way.across, way.up), abs=PER_100 / 100)
    assert printer.lean == pytest.approx(0, abs=PER_100 / 100)
    assert not printer.is_askew
    again = dataclasses.replace(stock, printer=printer)
    pdf = proof_page(again, unit, "")
    (page,) = Paper(pdf).pages
    drawn = proved(unit, again)
    proof = measured_on(way.rastered(pdf, page, DPI), way.printed(page), drawn)
    for name, side in proof.named.items():
        length = drawn.named[name]
        assert side == pytest.approx(length, abs=PER_100 * length / 100)


def test_sides_read_to_half_a_millimetre_correct_as_finely_as_is_said():
    """What a person reads at best: a quarter of a millimetre off on 180 and 240."""
    read = Sides(round(180 * 1.006 * 2) / 2, round(240 * 0.996 * 2) / 2, None)
    stock = stock_of(Unit.MM)
    printer = Printer("east wing", stock.paper, stock.margins, Unit.MM, true_sides(240), read)
    for error, reading, true in zip(
        printer.errors, printer.reading_errors, (0.006, -0.004), strict=True
    ):
        assert abs(error - true) <= reading < 0.0015


@pytest.mark.parametrize(("job", "paper", "lying", "length", "_sides"), JOBS)
def test_bars_come_out_as_long_as_they_say_on_the_printer_they_are_drawn_for(
    job, paper, lying, length, _sides
):
    pdf, book = made_for(job, paper, lying)
    sheets = [
        (sheet.page, lying.printed(sheet.page))
        for sheet in book.sheets
        if is_clear(lying.printed(sheet.page), length)
    ]
    for page, printed in (sheets[0], sheets[-1]):
        raster = lying.rastered(pdf, page, DPI)
        found = bars(printed, length)
        assert set(found) == {True, False}
        for upright, bar in found.items():
            across = between_ticks(raster, bar, upright=upright)
            assert across == pytest.approx(length, abs=PER_100 * length / 100)


@pytest.mark.parametrize(("job", "paper", "lying", "_length", "sides"), JOBS)
def test_triangle_comes_out_true_on_the_printer_it_is_drawn_for(job, paper, lying, _length, sides):
    pdf, book = made_for(job, paper, lying)
    raster = lying.rastered(pdf, book.overview[0], DPI)
    right, up, along = triangle(raster, lying.printed(book.overview[0]), sides)
    measured = abs(up - right), abs(along - right), abs(up - along)
    for side, length in zip(measured, sides, strict=True):
        assert side == pytest.approx(length, abs=PER_100 * length / 100)
    assert abs(np.degrees(np.angle((up - right) / (along - right)))) == pytest.approx(90, abs=0.01)


@pytest.mark.parametrize(("job", "paper", "lying", "length", "_sides"), JOBS)
def test_every_bar_of_every_sheet_comes_out_true_on_upright_pages_and_on_lying_ones(
    job, paper, lying, length, _sides
):
    for sheet in made_for(job, paper, lying)[1].sheets:
        found = bars(lying.printed(sheet.page), length)
        for upright, bar in found.items():
            assert max(bar.size) == pytest.approx(length, abs=0.001), upright
        assert len(found) == 2


@pytest.mark.parametrize(("job", "paper", "lying", "_length", "_sides"), JOBS)
def test_no_ink_is_drawn_or_comes_out_over_the_margins(job, paper, lying, _length, _sides):
    loaded = load_job(SAMPLES / f"{job}.toml")
    margins = stock_of(loaded.unit, paper).margins
    for sheet in made_for(job, paper, lying)[1].sheets:
        width, height = sheet.page.size
        assert sheet.placed.clip
        left, bottom, right, top = sheet.placed.clip
        assert left >= margins.left - 0.001
        assert bottom >= margins.bottom - 0.001
        assert right <= width - margins.right + 0.001
        assert top <= height - margins.top + 0.001
        x, y = lying.factors(sheet.page)
        assert (right - left) * x <= width - margins.left - margins.right + 0.001
        assert (top - bottom) * y <= height - margins.top - margins.bottom + 0.001


def test_samples_have_both_upright_and_lying_sheets():
    ways = {
        sheet.page.size[0] > sheet.page.size[1]
        for job, paper, lying, *_ in JOBS
        for sheet in made_for(job, paper, lying)[1].sheets
    }
    assert ways == {True, False}


@pytest.mark.parametrize(("job", "paper", "lying", "length", "_sides"), JOBS[:2])
def test_plain_sheets_do_lie_on_that_printer(job, paper, lying, length, _sides):
    """So the checks above can fail: a bar is off by 0.4 mm in 100 and more."""
    page = made_for(job, paper, Lying(0, 0))[1].sheets[0].page
    unstretched = bars(page, length)
    x, y = lying.factors(page)
    assert max(bar.size[0] * x for bar in unstretched.values()) - length > 0.3
    assert max(bar.size[1] * y for bar in unstretched.values()) - length < -0.3


@pytest.mark.parametrize(("job", "paper", "lying", "_length", "_sides"), JOBS)
def test_sheets_drawn_for_a_printer_say_so(job, paper, lying, _length, _sides):
    for sheet in made_for(job, paper, lying)[1].sheets:
        assert any("for east wing" in word.text for word in sheet.page.words)
