"""Worked examples of the trade, drafted and compared."""

import math
import re
from typing import Any

import pytest

from patternmaker.sheets.tiling import sheets_along
from tests.paper.samples import Made, told
from tests.paper.sheets import plain

IN = 25.4


def job(
    outline: dict[str, Any],
    *,
    material: dict[str, Any] | None = None,
    allowances: dict[str, Any] | None = None,
    **seat: Any,
) -> dict[str, Any]:
    return {
        "name": "Example",
        "units": "in",
        "material": material or {"kind": "woven cloth"},
        "allowances": {"seam": "1/2", "wrap": 1, **(allowances or {})},
        "seat": [
            {
                "name": "Cushion",
                "outline": outline,
                "cover": {"style": "boxed", "drop": "3 1/4"},
                **seat,
            }
        ],
    }


def pieces(made: Made) -> dict[str, Any]:
    return {piece["name"]: piece for piece in made.figures["seats"][0]["pieces"]}


def words(made: Made) -> str:
    return plain(word for page in made.book.paper.pages for word in page.words)


def test_a_twelve_inch_cushion():
    """12 in square finished: 13 in plate, 48 in of boxing at the stitch line.

    A sewing group's worked example; no take-up.
    """
    square = {"shape": "rounded rectangle", "width": 12, "depth": 12, "corner": 0}
    found = pieces(told(job(square)))
    assert found["top"]["width_mm"] == pytest.approx(13 * IN, abs=1e-9)
    assert found["top"]["height_mm"] == pytest.approx(13 * IN, abs=1e-9)
    assert found["boxing"]["sew_length_mm"] == pytest.approx(48 * IN, abs=1e-9)
    assert found["top"]["sew_length_mm"] == pytest.approx(48 * IN, abs=1e-9)


# What follows is common practice, no source.
THRONE = {"shape": "circle", "diameter": "13 3/4"}
LEATHER = {"kind": "upholstery leather", "take_up": "1/4 per 10"}


def test_a_round_top_with_its_take_up():
    """13 3/4 in, 1/2 in allowances, 1/4 in per 10 in: about 14 1/2 in; exactly 14.381."""
    top = pieces(told(job(THRONE, material=LEATHER)))["top"]
    assert top["width_mm"] / IN == pytest.approx(14.38125, abs=1e-9)
    assert top["height_mm"] / IN == pytest.approx(14.38125, abs=1e-9)


def test_the_same_rounded_to_a_quarter_inch():
    made = told(job(THRONE, material=LEATHER, allowances={"round_cut_to": "1/4"}))
    assert pieces(made)["top"]["width_mm"] / IN == pytest.approx(14.5, abs=1e-9)
    assert "cut 7 1/4 in" in words(made)  # the trammel's radius


def test_boxing_of_a_drop_an_allowance_and_a_wrap():
    """A 3 1/4 in drop, 1/2 in allowance, 1 in wrap-under: 4 3/4 in wide."""
    boxing = pieces(told(job(THRONE, material=LEATHER)))["boxing"]
    assert boxing["height_mm"] / IN == pytest.approx(4.75, abs=1e-9)


def test_reference_line_of_a_one_inch_wrap():
    """7/8 in from the base's edge."""
    made = told(job(THRONE, material=LEATHER))
    ((_, line),) = made.book.drawn("reference line")
    base = pieces(made)["base template"]["width_mm"]
    assert (base - line.size[0]) / 2 == pytest.approx(7 / 8 * IN, abs=0.02)


def test_a_tape_that_disagrees_is_said_and_not_refused():
    """44 1/4 in round a seam of 13 3/4 in disagrees with the width by 2.4 %."""
    differs = 100 * (44.25 / (13.75 * math.pi) - 1)
    assert round(differs, 1) == 2.4
    made = told(job(THRONE, material=LEATHER, measured_round="44 1/4"))
    (warning,) = made.figures["seats"][0]["fit"]["warnings"]
    for said in (warning, words(made)):
        (share,) = set(re.findall(r"disagrees .*? by ([\d.]+) %", said))  # overview and card
        assert float(share) == pytest.approx(differs, abs=0.05)
    assert pieces(made)["top"]["width_mm"] / IN == pytest.approx(14.38125, abs=1e-9)


@pytest.mark.parametrize(
    ("length", "usable", "count"), [(524, 190, 3), (474, 277, 2), (524, 195.9, 3), (474, 259.4, 2)]
)
def test_sheets_that_a_length_takes(length, usable, count):
    """n = ceil((L - o) / (u - o)): 524 x 474 mm is 3 x 2 sheets of A4 and of Letter, o = 10."""
    assert sheets_along(length, usable, 10) == count
