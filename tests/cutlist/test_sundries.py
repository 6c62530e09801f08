"""What a job takes beside its covering."""

from typing import Any

import pytest

from patternmaker.cutlist.rows import Drafted
from patternmaker.cutlist.sundries import sundry_rows
from patternmaker.job.reading import read_job
from patternmaker.units import Unit

BENCH = {"shape": "rounded rectangle", "width": 760, "depth": 360, "corner": 40}
ROUND = {"shape": "circle", "diameter": 320}


def bought(*seats: dict[str, Any], unit: Unit = Unit.MM) -> list[str]:
    tables = [{"name": str(i), **seat} for i, seat in enumerate(seats)]
    job = read_job({"name": "Hall", "units": "mm", "seat": tables})
    drafted = Drafted(job, tuple(seat.pattern() for seat in job.seats))
    return [row.note.told(unit) for row in sundry_rows(drafted)]


def test_boxed_seat_on_a_base_of_its_own_takes_nothing() -> None:
    assert bought({"outline": ROUND, "cover": {"style": "boxed", "drop": 75}}) == []


def test_cushion_takes_a_zip_and_foam_and_alike_ones_are_added_up() -> None:
    """Along 680 mm of back, half an arc and 100 mm at either end, and 24 mm of allowance."""
    cushion = {"outline": BENCH, "cover": {"style": "box cushion", "height": 75}}
    zip_, foam = bought({**cushion, "make": 2}, {**cushion, "make": 3})
    assert zip_ == "Zip 967 mm long: 5"
    assert foam == "Foam 75 mm thick, 772 mm by 372 mm: 5"


def test_slip_seat_takes_the_foam_and_board_that_are_told() -> None:
    slip = {"style": "pull-over", "foam": 40, "board": 12}
    assert bought({"outline": ROUND, "cover": slip}) == [
        "Foam 40 mm thick, 320 mm by 320 mm: 1",
        "Board 12 mm thick, 314 mm by 314 mm: 1",
    ]
    assert bought({"outline": ROUND, "cover": {"style": "pull-over", "drop": 52}}) == []


@pytest.mark.parametrize(("unit", "says"), [(Unit.MM, "2010.5 mm"), (Unit.IN, "79 3/16 in")])
def test_cord_is_told_by_the_length(unit: Unit, says: str) -> None:
    """Twice 320 pi mm, less what a stretched leather top is smaller: cloth takes none."""
    seat = {
        "outline": ROUND, "cover": {"style": "boxed", "drop": 75}, "make": 2,
        "material": {"kind": "woven cloth"}, "welt": {"seam": "top seam", "cord": 4},
    }  # fmt: skip
    (cord,) = bought(seat, unit=unit)
    assert cord.startswith("Cord ")
    assert cord.endswith(f"thick: {says} in all")


def test_padding_templates_say_what_to_buy() -> None:
    seat = {
        "outline": ROUND, "cover": {"style": "boxed", "drop": 75},
        "padding": {"foam": 50, "wadding": 12, "foam_oversize": 5},
    }  # fmt: skip
    assert bought(seat) == [
        "Foam 50 mm thick, 330 mm by 330 mm: 1",
        "Wadding 12 mm thick, 430 mm by 430 mm: 1",
    ]
