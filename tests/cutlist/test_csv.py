"""The cut list for a spreadsheet: every piece, and nothing that a spreadsheet would run."""

import csv
import tomllib
from io import StringIO

import pytest

from patternmaker.cutlist.csv import HEADER, csv_of
from patternmaker.cutlist.rows import Drafted
from patternmaker.job import read_job


def listed(seat: str = "Stool", material: str = "wine", units: str = "mm") -> str:
    job = read_job(
        tomllib.loads(
            f"name = 'x'\nunits = '{units}'\n[material]\nname = '{material}'\n[[seat]]\n"
            f"name = '{seat}'\nmake = 6\n"
            "outline = { shape = 'circle', diameter = '318 mm' }\n"
            "cover = { style = 'boxed', drop = '70 mm' }\n"
        )
    )
    return csv_of(Drafted(job, tuple(each.pattern() for each in job.seats))).decode()


def rows(**wishes: str) -> list[dict[str, str]]:
    return list(csv.DictReader(StringIO(listed(**wishes), newline="")))


def test_every_piece_has_a_row_under_the_same_heads():
    found = rows()
    assert [row["piece"] for row in found] == ["top", "boxing", "base template", "dust cover"]
    assert all(tuple(row) == HEADER for row in found)


def test_row_says_how_many_of_what_and_how_large():
    top = rows()[0]
    assert (top["seat"], top["material"], top["kind"]) == ("Stool", "wine", "upholstery leather")
    assert (top["how many"], top["unit"]) == ("6", "mm")
    assert (top["finished width"], top["cut width"]) == ("318", "333.5")  # (318 + 24) x 0.975


def test_one_template_serves_all_the_seats():
    assert {row["piece"]: row["how many"] for row in rows()} == {
        "top": "6", "boxing": "6", "base template": "1", "dust cover": "6",
    }  # fmt: skip


def test_piece_without_a_finished_size_leaves_it_empty():
    template = rows()[2]
    assert (template["finished width"], template["finished height"]) == ("", "")


def test_lengths_are_in_the_unit_of_the_job():
    assert (rows(units="in")[0]["cut width"], rows(units="in")[0]["unit"]) == ("13 3/16", "in")


@pytest.mark.parametrize(
    "name",
    ["=1+1", "+1", "-1", "@SUM(A1)", '=HYPERLINK("x","y")', "＝1+1", "＋1", "－1", "＠A1"],
)
def test_formula_is_text_to_a_spreadsheet(name):
    top = rows(seat=name, material=name)[0]
    assert (top["seat"], top["material"]) == (f"'{name}", f"'{name}")


@pytest.mark.parametrize("name", ['a, b "c"', "a=b", "1-2", "Übung 椅子"])
def test_other_names_come_back_as_they_are(name):
    assert rows(seat=name)[0]["seat"] == name


def test_lines_end_as_the_standard_says():
    text = listed()
    assert text.count("\r\n") == text.count("\n") == 5  # RFC 4180, 2.1
