"""Pieces of a job on the cutter's drawing."""

import re

from patternmaker.cutter.svg import BETWEEN
from tests.paper.samples import JOBS, made, told


def test_pieces_stand_one_above_the_other_and_none_touches_another():
    figures = made("organ-bench").figures["seats"][0]["pieces"]
    height = sum(piece["height_mm"] for piece in figures) + BETWEEN * (len(figures) + 1)
    width = max(piece["width_mm"] for piece in figures) + 2 * BETWEEN
    found = re.search(rb'viewBox="0 0 ([\d.]+) ([\d.]+)"', made("organ-bench").svg)
    assert found
    assert abs(float(found[1]) - width) < 1e-5
    assert abs(float(found[2]) - height) < 1e-5


def test_titles_say_whose_piece_it_is_and_how_many_to_cut():
    svg = made("music-school").svg.decode()
    assert "Round piano stool, top (cut 6, chestnut leather): cut line" in svg
    assert "Organ bench, boxing (cut 1, black vinyl): cut line" in svg
    assert "base template (cut 1, card)" in svg  # one serves the whole set


def test_there_is_no_lettering_to_be_cut():
    for job in JOBS:
        assert b"<text" not in made(job).svg


def test_same_job_gives_the_same_bytes():
    table = {
        "name": "J", "units": "mm", "material": {"kind": "vinyl"},
        "seat": [{"name": "S", "outline": {"shape": "circle", "diameter": 300},
                  "cover": {"style": "boxed", "drop": 70}}],
    }  # fmt: skip
    one, two = told(table), told(table)
    assert one.svg == two.svg
    assert one.pdf == two.pdf


def test_drawing_has_only_the_kinds_of_line_that_its_pieces_have():
    svg = made("round-piano-stool").svg
    assert b'id="clip"' not in svg  # a seam this wide is followed without clips
    assert b'id="clip"' in made("organ-bench").svg
