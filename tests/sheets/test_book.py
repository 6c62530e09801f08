"""A whole job as sheets."""

import pytest

from patternmaker.cutlist.rows import Drafted
from patternmaker.errors import Refusals
from patternmaker.job import load_job
from patternmaker.sheets.book import laid_out, written
from patternmaker.sheets.papers import stock_of
from tests.paper.samples import JOBS, SAMPLES
from tests.sheets.prints import A4


def drafted(name: str) -> Drafted:
    job = load_job(SAMPLES / f"{name}.toml")
    return Drafted(job, tuple(seat.pattern() for seat in job.seats))


@pytest.mark.parametrize("name", JOBS)
@pytest.mark.parametrize("whole", [False, True])
def test_every_piece_of_every_seat_is_printed_once(name, whole):
    job = drafted(name)
    sheets = laid_out(job, A4, whole=whole, most_sheets=500)
    printed = sorted(t for each in sheets.plates for p in each.plate.prints for t in p.titles)
    assert printed == sorted(f"{s.name}: {p.name}" for s, pat in job.seats for p in pat.pieces)
    assert sheets.fewest <= sheets.count


@pytest.mark.parametrize("name", JOBS)
def test_ends_of_strips_take_fewer_sheets_than_whole_strips(name):
    counts = [
        laid_out(drafted(name), A4, whole=way, most_sheets=500).count for way in (False, True)
    ]
    assert counts[0] < counts[1]


def test_larger_paper_takes_fewer_sheets():
    job = drafted("music-school")
    counts = [
        laid_out(job, stock_of(job.job.unit, paper), whole=True, most_sheets=500).count
        for paper in ("A4", "A3", "A2", "A1", "A0")
    ]
    assert counts == sorted(counts, reverse=True)
    assert len(set(counts)) > 3


def test_progress_is_told_of_every_sheet_in_turn():
    told: list[tuple[int, int]] = []
    sheets = laid_out(drafted("organ-bench"), A4, whole=False, most_sheets=500)
    written(sheets, lambda done, whole: told.append((done, whole)))
    assert told == [(i, sheets.count) for i in range(1, sheets.count + 1)]


def test_more_sheets_than_allowed_are_refused():
    with pytest.raises(Refusals, match="--most-sheets"):
        laid_out(drafted("organ-bench"), A4, whole=True, most_sheets=3)


def test_only_the_pieces_asked_for_are_printed():
    job = drafted("music-school")
    for only, roles in ((["boxing"], {"boxing"}), (["Dust cover", "top"], {"dust cover", "top"})):
        sheets = laid_out(job, A4, whole=False, most_sheets=500, only=only)
        printed = {t for p in sheets.plates for each in p.plate.prints for t in each.titles}
        assert printed == {
            f"{seat.name}: {each.name}" for seat, pattern in job.seats for each in pattern.pieces
            if each.role in roles or each.name in roles
        }  # fmt: skip


def test_a_piece_of_one_seat_is_asked_for_by_its_title():
    seat, pattern = next(drafted("music-school").seats)
    title = f"{seat.name}: {pattern.pieces[0].name}"
    sheets = laid_out(drafted("music-school"), A4, whole=False, most_sheets=500, only=[title])
    assert [each.title for p in sheets.plates for each in p.plate.prints] == [title]
