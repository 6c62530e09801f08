"""``patternmaker shapes NAME``: one of them, as text, as JSON and as a picture."""

import json
import xml.etree.ElementTree as ET
from typing import Any

import pytest

from patternmaker.cli.shape import as_data, as_text
from patternmaker.cli.shapes import Known, found
from patternmaker.facts import file, measured
from patternmaker.outlines import SHAPES
from patternmaker.outlines.circle import Circle
from patternmaker.units import Unit
from tests.cli.command import leaves, run


class Drawn(Circle):
    """A seat drawn before."""

    file: Any = file("a drawing of the outline")


DRAWN = Known("shape", "drawn before", measured(Drawn))


def text(*words: str, unit: Unit = Unit.MM) -> str:
    return as_text(found(words), unit, braille=False)


@pytest.mark.parametrize(("units", "shown"), [("in", "13 in"), ("mm", "330 mm"), ("cm", "33.0 cm")])
def test_text_shows_the_defaults_in_the_unit_asked_for(units, shown):
    said = run("shapes", "circle", "--units", units).stdout
    row = next(line for line in said.splitlines() if line.split()[1:2] == ["diameter"])
    assert row.split()[0] == "A"
    assert row.endswith(shown)


def test_text_shows_purpose_picture_limits_sizes_and_construction():
    said = text("rounded", "rectangle")
    for part in ("rounded rectangle (shape)", "A rectangle with corners", "v FRONT",
                 "radius of the corners; 0 for sharp ones",
                 "at most half the shorter side (190 mm)",
                 "This seat: 400 x 380 mm, 1474 mm round, 0.150 m²", "With one radius: length",
                 "patternmaker start rounded-rectangle"):  # fmt: skip
        assert part in said


@pytest.mark.parametrize("name", list(SHAPES.all))
@pytest.mark.parametrize("unit", list(Unit))
def test_text_of_every_shape_fits_a_terminal(name, unit):
    assert max(map(len, text(name, unit=unit).splitlines())) <= 100


def test_row_of_a_table_stands_on_a_line_of_its_own():
    said = text("polygon", unit=Unit.IN).splitlines()
    assert any(line.endswith("  1, 0, 1 1/2 in") for line in said)
    assert any(line.endswith("  17, 0, 1 1/2 in") for line in said)


def test_cover_shows_its_measurements_and_no_picture():
    said = text("boxed")
    assert "drop" in said
    assert "75 mm" in said
    assert "FRONT" not in said
    assert "start" not in said


def test_shape_without_defaults_says_where_it_comes_from():
    said = as_text(DRAWN, Unit.MM, braille=True)
    assert "(drawn from a file)" in said
    assert "This seat" not in said
    assert "sizes" not in as_data(DRAWN)


def test_terminal_shows_braille_where_it_can():
    assert "⡇" in run("shapes", "circle", PYTHONIOENCODING="utf-8").stdout
    plain = run("shapes", "circle", PYTHONIOENCODING="cp1252").stdout
    assert "****" in plain
    assert "v FRONT" in plain
    assert "\\u28" not in plain


def test_json_tells_one_with_its_lines_and_joints():
    made = json.loads(run("shapes", "circle", "--json").stdout)
    assert (made["name"], made["kind"]) == ("circle", "shape")
    assert made["purpose"] == "A round seat: four quarter turns about the middle."
    assert made["measurements"] == [
        {"name": "diameter", "unit": "mm", "default": 330.0, "required": True, "letter": "A",
         "words": "straight across the middle", "least": 50, "most": 5000.0, "choices": [],
         "limits": "at least 50 mm"}
    ]  # fmt: skip
    assert made["dimensions"] == [
        {"letter": "A", "name": "diameter", "begin": [-165.0, 0.0], "end": [165.0, 0.0],
         "radius": False}
    ]  # fmt: skip
    assert [each["name"] for each in made["joints"]] == ["back", "left", "front", "right"]
    assert made["joints"][0]["at"] == pytest.approx([0, 165])
    assert made["sizes"]["width_mm"] == pytest.approx(330)
    assert made["picture"][-1].endswith("FRONT")


@pytest.mark.parametrize("name", list(SHAPES.all))
def test_json_of_every_shape_is_json(name):
    made = as_data(found([name]))
    assert json.loads(json.dumps(made))["name"] == name


def test_json_of_a_cover_has_no_picture():
    made = json.loads(run("shapes", "boxed", "--json").stdout)
    assert made["kind"] == "cover"
    assert made["measurements"][0]["letter"] is None
    assert "picture" not in made


def test_svg_of_one_is_written_and_an_earlier_one_replaced(tmp_path):
    path = tmp_path / "pictures" / "circle.svg"
    done = run("shapes", "circle", "--svg", path)
    assert (done.returncode, done.stdout) == (0, f"Drawn: {path}\n")
    first = path.read_bytes()
    run("shapes", "circle", "--svg", path, "--units", "in")
    assert path.read_bytes() != first
    assert leaves(path.parent) == ["circle.svg"]
    assert ET.parse(path).getroot().tag.endswith("svg")


def test_svg_of_all_names_each(tmp_path):
    path = tmp_path / "shapes.svg"
    assert run("shapes", "--svg", path).returncode == 0
    said = {each.text for each in ET.parse(path).getroot().iter() if each.text}
    assert set(SHAPES.all) <= said


@pytest.mark.parametrize(
    ("words", "says"),
    [(["boxed", "--svg", "x.svg"], "boxed: is a cover: it has no picture"),
     (["circle", "--svg", ""], "svg: names no file")],
)  # fmt: skip
def test_what_can_not_be_drawn_is_refused(words, says, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    done = run("shapes", *words)
    assert done.returncode == 2
    assert says in done.stderr
    assert leaves(tmp_path) == []


def test_folder_where_the_picture_should_be_is_told(tmp_path):
    done = run("shapes", "circle", "--svg", tmp_path)
    assert done.returncode == 1
    assert "is a folder there" in done.stderr
