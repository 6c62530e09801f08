"""The sewing list, and the thread that a job takes."""

import csv
import tomllib
from io import StringIO

import pytest

from patternmaker.cutlist.csv import SEWING_HEADER, sewing_csv_of
from patternmaker.cutlist.rows import Drafted
from patternmaker.cutlist.sewing import HEADS, sew_rows, thread_in_all, thread_says
from patternmaker.job import read_job
from patternmaker.units import Unit

JOB = """
name = "Practice rooms"
units = "in"
[material]
kind = "woven cloth"
[stitching]
seams = "9 per inch"
[[seat]]
name = "Round piano stool"
make = 3
outline = { shape = "circle", diameter = "12 1/2" }
cover = { style = "boxed", drop = 3 }
[[seat]]
name = "=Bench"
outline = { shape = "circle", diameter = 20 }
cover = { style = "boxed", drop = 3 }
welt = { seam = "top seam" }
"""


@pytest.fixture(scope="module")
def drafted() -> Drafted:
    job = read_job(tomllib.loads(JOB))
    return Drafted(job, tuple(seat.pattern() for seat in job.seats))


def test_every_row_of_stitches_of_every_seat_is_listed(drafted):
    assert [(row.seat, row.stitching.seam) for row in sew_rows(drafted)] == [
        ("Round piano stool", "top seam"), ("Round piano stool", "top seam"),
        ("Round piano stool", "join"),
        ("=Bench", "top seam welt"), ("=Bench", "top seam"), ("=Bench", "join"),
    ]  # fmt: skip


def test_row_tells_stitch_seam_type_setting_length_and_thread(drafted):
    cells = dict(zip(HEADS, sew_rows(drafted)[0].cells(Unit.IN), strict=True))
    assert cells["Stitch"] == "301 lockstitch"
    assert cells["Seam type"] == "SSa plain seam"
    assert cells["Set to"] == "9 per inch"
    assert cells["Length"] == "39 1/4 in"  # 12.5 pi = 39.27
    assert cells["Thread"].endswith(" yd")


def test_thread_in_all_counts_every_seat(drafted):
    one, two = (sum(r.thread for r in found.stitches) for found in drafted.patterns)
    assert thread_in_all(drafted) == pytest.approx(3 * one + two)
    assert thread_says(drafted).startswith(f"Thread in all: {(3 * one + two) / 914.4:.1f} yd (3 × ")


def test_spreadsheet_has_the_same_rows_under_its_heads(drafted):
    rows = list(csv.DictReader(StringIO(sewing_csv_of(drafted).decode(), newline="")))
    assert len(rows) == len(sew_rows(drafted))
    assert all(tuple(row) == SEWING_HEADER for row in rows)
    assert rows[0]["stitches per inch"] == "9"
    assert float(rows[0]["thread in all"]) == pytest.approx(
        3 * float(rows[0]["thread of one seat"]), abs=0.02
    )


def test_spreadsheet_takes_no_name_for_a_formula(drafted):
    assert "'=Bench" in sewing_csv_of(drafted).decode()
