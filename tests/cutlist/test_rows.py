"""The cut list counts every piece of every seat, and what each material comes to."""

import tomllib

import pytest

from patternmaker.cutlist.rows import Drafted, cut_rows, needs
from patternmaker.job import read_job

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
