"""Loose cushions against worked examples of the trade, told by the program itself."""

import math
import re
from typing import Any

import pytest

from patternmaker.covers.knife_edge import filled
from tests.paper.samples import Made, made, told

IN = 25.4


def job(cover: dict[str, Any], width: float = 12, depth: float = 12, **more: Any) -> dict[str, Any]:
    return {
        "name": "Example",
        "units": "in",
        "material": {"kind": "upholstery leather"},  # its take-up must not matter
        "allowances": {"seam": "1/2"},
        "seat": [
            {
                "name": "Cushion",
                "outline": {
                    "shape": "rounded rectangle", "width": width, "depth": depth, "corner": 0,
                },
                "cover": cover,
                **more,
            }
        ],
    }  # fmt: skip


def pieces(made: Made) -> dict[str, Any]:
    return {piece["name"]: piece for piece in made.figures["seats"][0]["pieces"]}


def boxed(**measures: Any) -> dict[str, Any]:
    return {"style": "box cushion", "height": 4, "zip_return": 3, "zip_lap": 0, **measures}


def test_plate_of_a_twelve_inch_cushion_is_an_inch_larger():
    """12 in square finished: 13 in plate. A sewing group's worked example."""
    found = pieces(told(job(boxed())))
    for face in ("top", "bottom"):
        assert found[face]["width_mm"] == pytest.approx(13 * IN, abs=1e-9)
        assert found[face]["height_mm"] == pytest.approx(13 * IN, abs=1e-9)


def test_boxing_and_zip_boxing_are_as_long_as_the_stitch_line():
    """12 in square: 48 in of boxing at the stitch line. The same example."""
    found = pieces(told(job(boxed())))
    assert found["boxing"]["sew_length_mm"] + found["zip strip top"][
        "sew_length_mm"
    ] == pytest.approx(48 * IN, abs=1e-9)


def test_boxing_is_as_high_as_the_foam():
    """Boxing height = foam thickness (a cushion workshop's blog), cut with two allowances."""
    assert pieces(told(job(boxed())))["boxing"]["height_mm"] == pytest.approx(5 * IN)


def test_zip_is_eight_inches_longer_than_the_back_edge():
    """Cushion instructions: zip = back edge + 8 in; what the program does unless told."""
    made = told(job({"style": "box cushion", "height": 4}, 24, 20))
    assert pieces(made)["zip strip top"]["sew_length_mm"] == pytest.approx((24 + 8) * IN)
    assert any(
        "32 in from join to join" in each for each in made.figures["seats"][0]["fit"]["report"]
    )


def test_each_zip_strip_is_half_the_cut_boxing_and_three_quarters_of_an_inch():
    """Cushion instructions: each strip = half the cut boxing width + 3/4 in."""
    found = pieces(told(job(boxed())))
    for strip in ("zip strip top", "zip strip bottom"):
        half = found["boxing"]["height_mm"] / 2
        assert found[strip]["height_mm"] == pytest.approx(half + 0.75 * IN, abs=1e-9)


def test_foam_is_half_an_inch_larger_each_way():
    """Good Old Boat: foam + 1/2 in in width and length, 1/4 in each side."""
    foam = pieces(told(job(boxed(), 24, 20)))["foam template"]
    assert foam["width_mm"] == pytest.approx(24.5 * IN)
    assert foam["height_mm"] == pytest.approx(20.5 * IN)


def test_face_filled_to_an_arc_is_as_wide_as_the_handbook_s_chord():
    """Machinery's Handbook, 31st, p. 50: arc 14.06, height 2, radius 12: chord 13.27.

    A knife-edge cushion whose faces are 14.06 in wide and rise 2 in each.
    """
    arc = 24 * math.acos(10 / 12)
    assert round(arc, 2) == 14.06
    knife = {"style": "knife edge", "height": 4, "taper": 0}
    report = " ".join(told(job(knife, arc, 20)).figures["seats"][0]["fit"]["report"])
    (width,) = re.findall(r"shrinks to about (\d+ \d+/\d+) in by", report)
    assert width == "13 1/4"  # 13.27 to the nearest sixteenth
    assert filled(arc, 4) == pytest.approx(13.2664992, abs=1e-7)


PAPER = 0.03  # mm; what a length read from the sheets may differ by


@pytest.fixture(scope="module")
def seams() -> tuple[list[float], list[float]]:
    """The lengths of the sew lines printed for the samples: those round a face, and the others."""
    lines = [curve for _, curve in made("loose-cushions").book.drawn("sew line")]
    closed, others = ([c.length for c in lines if c.is_closed is so] for so in (True, False))
    return sorted(closed), sorted(others)


def test_printed_faces_of_each_cushion_are_sewn_along_equal_lines(seams):
    closed, _ = seams
    assert len(closed) == 6
    for one, two in zip(closed[::2], closed[1::2], strict=True):
        assert one == pytest.approx(two, abs=PAPER)


def test_printed_boxing_and_zip_boxing_go_round_the_printed_face(seams):
    """The organ bench cushion: its boxing has a lap of 25 mm, there and back, besides."""
    closed, (tie, *zips_and_boxing) = seams
    assert tie == pytest.approx(80, abs=PAPER)
    top_zip, bottom_zip, upper, lower = zips_and_boxing
    for along in (top_zip + upper, bottom_zip + lower):
        assert along - 2 * 25 == pytest.approx(closed[-1], abs=PAPER)
