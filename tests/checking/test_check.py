"""Prints as they were drafted pass; whatever spoiled one is found, measured and placed."""

import re

import pytest
from pypdf.generic import FloatObject, NameObject, RectangleObject

from patternmaker.checking.check import LIMIT
from patternmaker.drafting import Options, draft
from patternmaker.job import load_job
from patternmaker.sheets.papers import PAPERS, stock_of, usual_margins
from patternmaker.sheets.printer import Printer, Sides
from patternmaker.units import Unit
from tests.checking.prints import (
    MM,
    TRACED,
    held,
    moved,
    page_rewritten,
    pattern,
    pdf,
    rewritten,
    sheets,
    spoilt,
    told,
)
from tests.paper.samples import JOBS, SAMPLES

STOOL = "round-piano-stool"
CLOSE = 0.003  # mm; a number of the file has seven figures


@pytest.mark.parametrize("sample", sorted(path.stem for path in SAMPLES.glob("*.toml")))
def test_every_sample_is_as_it_was_drafted(sample, tmp_path):
    found = held(pdf(sample), tmp_path)
    assert found.faults == ()
    assert found.off < CLOSE
    assert found.apart < CLOSE
    assert max(abs(line.longer) for line in found.lines) < 0.02
    assert all(line.hidden == 0 for line in found.lines)
    for way in ("across", "up", "on the slope"):
        assert found.scale(way) == pytest.approx(1, abs=1e-6)


@pytest.mark.parametrize("job", JOBS)
@pytest.mark.parametrize(
    ("paper", "whole"), [("A4", True), ("Letter", False), ("A2", True), ("180x200mm", False)]
)
def test_so_it_is_on_any_paper(job, paper, whole, tmp_path):
    found = held(pdf(job, paper, whole=whole), tmp_path)
    assert found.faults == ()
    assert found.off < CLOSE


@pytest.mark.parametrize("job", JOBS)
def test_print_that_was_drawn_for_one_printer_is_checked_as_it_comes_out(job, tmp_path):
    sides = Sides(90, 120, 150), Sides(90 * 1.006, 120 * 0.996, None)
    one = Printer("east wing", PAPERS["a4"], usual_margins(Unit.MM), Unit.MM, *sides)
    found = held(pdf(job, "A4", printer=one), tmp_path)
    assert found.printed.drawn == (1 / 1.006, 1 / 0.996)
    assert found.faults == ()
    assert found.off < CLOSE


def test_print_kept_anew_by_another_program_is_as_it_was(tmp_path):
    found = held(spoilt(pdf(STOOL), lambda writer: None), tmp_path)
    assert found.faults == ()


def test_every_line_of_every_piece_is_measured_once(tmp_path):
    """A strip's ends are lines of their own: nothing runs between them."""
    whole = held(pdf(STOOL, whole=True), tmp_path)
    (seat,) = whole.job.seats
    pieces = seat.pattern().pieces
    lines = sum(
        1 + len(piece.guides) + sum(len(notch.slits) for notch in piece.notches) for piece in pieces
    )
    assert len(whole.lines) == lines


@pytest.mark.parametrize("number", range(0, 40, 3))
@pytest.mark.parametrize("by", [1 + 1j, 0.1 - 0.1j])
def test_vertex_that_was_moved_is_found(number, by, tmp_path):
    """At a slant, for a vertex that moves along its own level or upright line changes nothing."""
    content = pdf("organ-bench")

    def spoil(writer):
        form = pattern(sheets(writer)[0])
        stream = form.get_data()
        ours = [i for i, m in enumerate(TRACED.finditer(stream)) if _draws(stream, m.start())]
        rewritten(form, moved(ours[number % len(ours)], by))

    found = held(spoilt(content, spoil), tmp_path)
    assert found.faults
    assert all("mm" in fault or "missing" in fault or "no piece" in fault for fault in found.faults)


def _draws(stream: bytes, at: int) -> bool:
    """Return whether the pen in use at a place of a stream draws lines of a piece only."""
    widths = re.findall(rb"([\d.]+) w\b", stream[:at])
    return bool(widths) and round(float(widths[-1]) / MM, 2) in {0.6, 0.35, 0.4, 0.5}


def test_deviation_is_measured_and_placed(tmp_path):
    """The lowest edge of a cut line moved down by 2 mm at one end, on the sheet that shows it."""

    def spoil(writer):
        form = pattern(sheets(writer)[0])
        rewritten(form, moved(_cut_line(form.get_data()), -2 + 0j))

    found = held(spoilt(pdf("organ-bench"), spoil), tmp_path)
    (worst,) = [line for line in found.lines if line.off > LIMIT]
    assert worst.kind == "cut line"
    assert 0.5 < worst.off <= 2.001
    assert told(found, "cut line", "mm from the model on sheet", "from its left")


def _cut_line(stream: bytes) -> int:
    """Return the number of the vertex at which the first cut line begins."""
    at = re.search(rb"1\.7007\d* w\s+\[\] 0 d\s+0 0 0 RG", stream)
    assert at
    return sum(match.start() < at.start() for match in TRACED.finditer(stream))


def test_line_that_was_taken_out_is_missing(tmp_path):
    def spoil(writer):
        form = pattern(sheets(writer)[0])
        stream = form.get_data()
        first = next(m for m in re.finditer(rb"n [^S]*S", stream) if _draws(stream, m.start()))
        rewritten(form, lambda s: s[: first.start()] + s[first.end() :])

    assert told(held(spoilt(pdf(STOOL), spoil), tmp_path), "is missing")


def test_line_that_was_added_belongs_to_no_piece(tmp_path):
    def spoil(writer):
        form = pattern(sheets(writer)[0])
        rewritten(form, lambda s: s + b"\n[] 0 d 0 0 0 RG 1.700787 w 100 100 m 200 230 l S")

    found = held(spoilt(pdf(STOOL), spoil), tmp_path)
    assert found.faults == ("sheet 1 and those joined to it show 1 x cut line of no piece",)


def test_pattern_that_slipped_on_one_sheet_is_off_by_as_much(tmp_path):
    """By 1.5 mm to the right under its window; the crosses stay where they were."""

    def spoil(writer):
        page = sheets(writer)[1]
        page_rewritten(
            page,
            lambda s: re.sub(
                rb"1 0 0 1 (\S+) (\S+) cm\s*(/\S+ Do)",
                lambda m: b"1 0 0 1 %f %s cm %s" % (float(m[1]) + 1.5 * MM, m[2], m[3]),
                s, count=1,
            ),
        )  # fmt: skip

    found = held(spoilt(pdf(STOOL), spoil), tmp_path)
    assert found.off == pytest.approx(1.5, abs=0.01)
    assert told(found, "on sheet 2,")
    assert not told(found, "on sheet 1,")


def test_crosses_that_slipped_are_told(tmp_path):
    """What all sheets joined on the same sides have alike, moved on one of them by 1 mm."""

    def spoil(writer):
        page = sheets(writer)[1]
        page_rewritten(
            page,
            lambda s: re.sub(
                rb"1 0 0 1 (\S+) (\S+) cm(?=\s*/\S+ Do\s*Q\s*[\d.]+ [\d.]+ [\d.]+ rg)",
                lambda m: b"1 0 0 1 %f %s cm" % (float(m[1]) + MM, m[2]),
                s,
            ),
        )  # fmt: skip

    found = held(spoilt(pdf(STOOL), spoil), tmp_path)
    assert found.off == pytest.approx(1, abs=0.02)


@pytest.mark.parametrize("scale", [0.97, 0.999, 1.01])
def test_fit_to_page_is_told_as_that_and_nothing_else(scale, tmp_path):
    def spoil(writer):
        for page in writer.pages:
            page.add_transformation((scale, 0, 0, scale, 5, 5))

    found = held(spoilt(pdf(STOOL), spoil), tmp_path)
    assert found.scale("across") == pytest.approx(scale, abs=1e-5)
    assert all("it was scaled to" in fault for fault in found.faults)
    assert len(found.faults) == 3
    assert found.lines == ()


def test_stretch_one_way_is_told_that_way(tmp_path):
    def spoil(writer):
        for page in writer.pages:
            page.add_transformation((1.01, 0, 0, 1, 0, 0))

    found = held(spoilt(pdf(STOOL), spoil), tmp_path)
    assert told(found, "scaled to 101.00% across")
    assert not told(found, "% up")


def test_slant_is_told_by_the_long_side(tmp_path):
    """A printer that is out of square leaves the level side as it is, not the long one."""

    def spoil(writer):
        for page in writer.pages:
            page.add_transformation((1, 0, 0.01, 1, 0, 0))

    assert told(held(spoilt(pdf(STOOL), spoil), tmp_path), "on the slope")


def test_one_sheet_that_was_scaled_is_told_by_its_page(tmp_path):
    def spoil(writer):
        sheets(writer)[2].scale_by(0.98)

    found = held(spoilt(pdf(STOOL), spoil), tmp_path)
    assert told(found, "scaled to 98.00% across", "on page 6")
    assert told(found, "page 6 is", "not Letter")


def test_unit_of_a_page_that_was_changed_scales_it(tmp_path):
    def spoil(writer):
        for page in writer.pages:
            page[NameObject("/UserUnit")] = FloatObject(2)

    assert told(held(spoilt(pdf(STOOL), spoil), tmp_path), "scaled to 200.00%")


def test_missing_sheet_is_told_by_its_number(tmp_path):
    found = held(spoilt(pdf(STOOL), lambda writer: writer.remove_page(4)), tmp_path)
    assert told(found, "sheet 2 of 9 is missing")
    assert told(found, "is not on exactly two sheets")
    assert told(found, "are on no sheet")


def test_missing_overview_is_told(tmp_path):
    def spoil(writer):
        writer.remove_page(0)

    assert told(held(spoilt(pdf("organ-bench"), spoil), tmp_path), "proof triangle is missing")


def test_print_of_the_overview_alone_is_told(tmp_path):
    def spoil(writer):
        while len(writer.pages) > 1:
            writer.remove_page(1)

    assert told(held(spoilt(pdf(STOOL), spoil), tmp_path), "no page of it is a sheet")


def test_cropped_page_is_told_with_what_it_lost(tmp_path):
    def spoil(writer):
        page = sheets(writer)[0]
        page.cropbox = RectangleObject((0, 0, 612, 400))

    found = held(spoilt(pdf(STOOL), spoil), tmp_path)
    assert told(found, "page 4 is 141.1 x 215.9 mm, not Letter (215.9 x 279.4 mm)")
    assert told(found, "are on no sheet")


def test_line_under_white_is_not_there_to_be_cut_along(tmp_path):
    def spoil(writer):
        page_rewritten(sheets(writer)[0], lambda s: s + b"\n1 1 1 rg 100 100 300 400 re f")

    assert told(held(spoilt(pdf(STOOL), spoil), tmp_path), "are on no sheet")


def test_wish_not_to_be_scaled_is_missed(tmp_path):
    def spoil(writer):
        del writer.root_object["/ViewerPreferences"]

    (fault,) = held(spoilt(pdf(STOOL), spoil), tmp_path).faults
    assert "no longer asks the viewer to print at actual size" in fault


def test_font_that_is_not_in_the_file_is_told(tmp_path):
    def spoil(writer):
        for page in writer.pages:
            for font in page["/Resources"]["/Font"].values():
                font["/FontDescriptor"].pop("/FontFile2", None)

    assert told(held(spoilt(pdf(STOOL), spoil), tmp_path), "the font /", "is not in the file")


def test_other_job_is_told_apart(tmp_path):
    found = held(pdf("organ-bench"), tmp_path, job="music-school")
    assert told(found, "is not on the sheets as it was drafted")
    assert held(pdf("organ-bench"), tmp_path, job="organ-bench").faults == ()


def test_print_of_some_pieces_alone_is_held_to_those(tmp_path):
    job = load_job(SAMPLES / "round-piano-stool.toml")
    options = Options(stock_of(job.unit), only=("top", "Round piano stool: boxing"))
    done = draft(job, tmp_path, options)
    found = held(done.files[0].read_bytes(), tmp_path)
    assert found.faults == ()
    assert {line.piece for line in found.lines} == {"top", "boxing"}
