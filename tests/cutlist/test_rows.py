"""The cut list counts every piece of every seat, and what each material comes to."""

import tomllib
from dataclasses import replace

import pytest

from patternmaker.cutlist.rows import Drafted, Need, Tally, cut_rows, needs, tally_of
from patternmaker.job import read_job
from patternmaker.materials import Material
from patternmaker.units import Unit
from tests.covers.seats import boxed, brief, piece

JOB = """
name = "Refit"
units = "mm"
[material]
name = "wine"
boxing = { kind = "vinyl", name = "black" }
[[seat]]
name = "Stool"
make = 6
outline = { shape = "circle", diameter = 318 }
cover = { style = "boxed", drop = 70 }
[[seat]]
name = "Bench"
make = 2
outline = { shape = "rounded rectangle", width = 760, depth = 360, corner = 40 }
cover = { style = "boxed", drop = 85 }
"""


@pytest.fixture(scope="module")
def drafted() -> Drafted:
    job = read_job(tomllib.loads(JOB))
    return Drafted(job, tuple(seat.pattern() for seat in job.seats))


def test_every_piece_is_counted_for_all_the_seats(drafted):
    counted = [(row.seat, row.piece.role, row.count) for row in cut_rows(drafted)]
    assert counted == [
        ("Stool", "top", 6), ("Stool", "boxing", 6), ("Stool", "base template", 1),
        ("Stool", "dust cover", 6), ("Bench", "top", 2), ("Bench", "boxing", 2),
        ("Bench", "base template", 1), ("Bench", "dust cover", 2),
    ]  # fmt: skip


def test_materials_are_added_up_in_the_order_in_which_they_are_met(drafted):
    rows = cut_rows(drafted)
    found = {need.title: need.area for need in needs(rows)}
    assert list(found) == ["wine", "black", "card", "cambric"]
    assert found["wine"] == pytest.approx(
        sum(row.area * row.count for row in rows if row.piece.role == "top")
    )


def test_hide_is_asked_for_at_the_usual_yield(drafted):
    wine, black, *_ = needs(cut_rows(drafted))
    assert (wine.sold_by_area, black.sold_by_area) == (True, False)
    least, most = wine.hides
    assert [least * 0.7, most * 0.5] == pytest.approx([wine.area] * 2)


def test_pair_of_handed_seats_is_cut_from_one_pattern():
    """Two with the leg at the left, one with it at the right; one template serves all three."""
    seat = {
        "name": "Corner cushion",
        "make": 2,
        "reversed": 1,
        "outline": {"shape": "L shape", "width": 600, "depth": 560, "back_depth": 280,
                    "leg_width": 300},
        "cover": {"style": "boxed", "drop": 75},
    }  # fmt: skip
    job = read_job({"name": "Foyer", "units": "mm", "seat": [seat]})
    rows = cut_rows(Drafted(job, tuple(seat.pattern() for seat in job.seats)))
    told = {row.piece.role: (str(row.tally), row.count) for row in rows}
    assert told["top"] == told["boxing"] == ("2 + 1 reversed", 3)
    assert told["base template"] == ("1", 1)


def test_matching_counts_each_piece_up_to_the_next_whole_repeat():
    """A tweed of 240 x 120 on a bench of 300 x 200, seam 12, wrap 25, drop 80, join at the back.

    The top is cut 324 x 224: 360 x 240; the boxing 1024 x 117: 1080 x 240.
    """
    job = read_job(tomllib.loads(TWEED))
    tweed, *others = needs(cut_rows(Drafted(job, tuple(s.pattern() for s in job.seats))))
    top, boxing = 360 * 240 - 324 * 224, 1080 * 240 - 1024 * 117
    assert tweed.matching == pytest.approx(3 * (top + boxing))
    assert tweed.area == pytest.approx(3 * (324 * 224 + 1024 * 117))
    assert tweed.why.told(Unit.MM) == (
        "each piece is counted up to the next whole repeat, 240 mm from back to front and "
        "120 mm across"
    )
    assert all(other.matching == 0 for other in others)


def test_stripes_are_matched_across_alone_and_a_whole_repeat_takes_no_more():
    striped = TWEED.replace("repeat = 240\n", "").replace("120", "8")  # 324 and 1024 are eights
    job = read_job(tomllib.loads(striped))
    tweed, *_ = needs(cut_rows(Drafted(job, tuple(s.pattern() for s in job.seats))))
    top, boxing = 328 * 224 - 324 * 224, 0
    assert tweed.matching == pytest.approx(3 * (top + boxing), abs=1e-3)
    assert tweed.why.told(Unit.MM).endswith("whole repeat, 8 mm across")


def test_pieces_of_one_cloth_are_added_up_though_some_are_not_matched():
    """The boxing has no repeat to heed; what lies on the bias heeds none."""
    plain = TWEED.replace("[allowances]", 'boxing = { kind = "woven cloth" }\n[allowances]')
    job = read_job(tomllib.loads(plain))
    rows = cut_rows(Drafted(job, tuple(s.pattern() for s in job.seats)))
    tweed, *_ = needs(rows)
    assert tweed.area == pytest.approx(3 * (324 * 224 + 1024 * 117))
    assert tweed.matching == pytest.approx(3 * (360 * 240 - 324 * 224))
    bias = replace(rows[0], piece=replace(rows[0].piece, lay="length on the bias"))
    assert bias.matching == 0


def test_two_repeats_of_one_cloth_are_both_told():
    need = Need(Material(), repeats=((240.0, None), (None, 60.0)))
    assert need.why.told(Unit.MM).endswith("240 mm from back to front or 60 mm across")


def test_mirror_images_within_a_seat_are_counted_beside_those_of_reversed_seats():
    side = replace(TOP, count=1, reversed=1)
    assert str(tally_of(side, Tally(2))) == "2 + 2 reversed"
    assert str(tally_of(side, Tally(2, 1))) == "3 + 3 reversed"
    assert str(tally_of(replace(TOP, count=2, reversed=1), Tally(2, 1))) == "5 + 4 reversed"
    assert str(tally_of(replace(side, finished=None), Tally(2, 1))) == "1"


TOP = piece(boxed(brief()), "top")
TWEED = """
name = "Refit"
units = "mm"
[material]
kind = "woven cloth"
repeat = 240
repeat_across = 120
[allowances]
seam = 12
wrap = 25
[[seat]]
name = "Bench"
make = 3
outline = { shape = "rounded rectangle", width = 300, depth = 200, corner = 0 }
cover = { style = "boxed", drop = 80 }
"""
