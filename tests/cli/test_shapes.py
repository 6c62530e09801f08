"""``patternmaker shapes``: the list of shapes and covers."""

import json
import subprocess
import sys
from typing import Any

import pytest

from patternmaker.cli.shapes import as_data, as_text, found
from patternmaker.covers import COVERS
from patternmaker.errors import Refusals
from patternmaker.outlines import SHAPES
from tests.cli.command import run


def listed() -> list[dict[str, Any]]:
    done = run("shapes", "--json")
    assert (done.returncode, done.stderr) == (0, "")
    made: list[dict[str, Any]] = json.loads(done.stdout)
    return made


def test_every_shape_and_cover_is_listed():
    names = {(each["name"], each["kind"]) for each in listed()}
    assert names == {(name, "shape") for name in SHAPES.all} | {(n, "cover") for n in COVERS.all}


def test_list_keeps_its_contract():
    for each in listed():
        assert set(each) >= {"name", "kind", "measurements"}
        for measurement in each["measurements"]:
            assert set(measurement) >= {"name", "unit", "default", "required"}
            assert type(measurement["required"]) is bool
            assert type(measurement["unit"]) is str


def test_circle_is_measured_by_its_diameter():
    circle = next(each for each in listed() if each["name"] == "circle")
    assert circle["kind"] == "shape"
    assert circle["measurements"] == [
        {"name": "diameter", "unit": "mm", "default": 330.0, "required": True}
    ]


def test_defaults_of_every_shape_that_has_them_draw_a_seat():
    for each in listed():
        lacks = any(m["required"] and m["default"] is None for m in each["measurements"])
        if each["kind"] == "shape" and not lacks:
            values = {m["name"]: m["default"] for m in each["measurements"]}
            assert SHAPES.all[each["name"]](**values).contour().width > 50


def test_text_has_a_line_for_each_shapes_before_covers():
    lines = run("shapes").stdout.splitlines()
    shapes = lines[lines.index("Shapes") + 1 : lines.index("Covers") - 1]
    covers = lines[lines.index("Covers") + 1 : lines.index("", lines.index("Covers"))]
    assert [line.split("  ")[1] for line in shapes] == list(SHAPES.all)
    assert [line.split("  ")[1] for line in covers] == list(COVERS.all)
    circle = next(line for line in lines if line.startswith("  circle"))
    assert circle.endswith("  A round seat: four quarter turns about the middle.")
    assert "patternmaker shapes NAME" in lines[-2]


def test_list_is_the_same_as_text_and_as_data():
    named = [each["name"] for each in as_data()]
    rows = [line.split("  ")[1] for line in as_text().splitlines() if line.startswith("  ")]
    assert rows == named


def test_unit_that_is_none_is_refused():
    done = run("shapes", "--units", "yards")
    assert (done.returncode, done.stdout) == (2, "")
    assert "yards" in done.stderr


@pytest.mark.parametrize(
    "words",
    [["rounded rectangle"], ["rounded-rectangle"], ["rounded", "rectangle"], ["Rounded_Rectangle"]],
)
def test_name_is_found_however_it_is_written(words):
    assert found(words).made is SHAPES.all["rounded rectangle"]


def test_name_with_a_hyphen_of_its_own_is_found():
    assert found(["round", "ended", "bench"]).name == "round-ended bench"


def test_cover_is_no_shape():
    assert found(["boxed"]).kind == "cover"
    with pytest.raises(Refusals, match="shape: 'boxed' is not known"):
        found(["boxed"], kind="shape")


def test_unknown_name_is_refused_with_the_nearest():
    done = run("shapes", "sadle")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.endswith("  name: 'sadle' is not known; did you mean 'saddle'?\n")


@pytest.mark.parametrize("words", [["shapes"], ["shapes", "circle"], ["shapes", "L-shape"]])
def test_heavy_libraries_are_left_alone(words):
    loaded = (
        "import sys\nfrom patternmaker.cli.commands import app\n"
        f"try: app({words!r})\nexcept SystemExit: pass\n"
        "heavy = {'shapely', 'numpy', 'svgwrite', 'reportlab', 'ezdxf'}\n"
        "sys.exit(', '.join(heavy & set(sys.modules)))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", loaded], capture_output=True, text=True, check=False,
        encoding="utf-8",
    )  # fmt: skip
    assert done.stderr.strip() == ""
