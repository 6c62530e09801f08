"""``patternmaker shapes``: what each shape and cover is measured by."""

import json
from typing import Any

import pytest

from patternmaker.covers import COVERS
from patternmaker.outlines import SHAPES
from tests.cli.command import run


def listed() -> list[dict[str, Any]]:
    done = run("shapes", "--json")
    assert (done.returncode, done.stderr) == (0, "")
    found: list[dict[str, Any]] = json.loads(done.stdout)
    return found


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


def test_defaults_of_every_shape_draw_a_seat():
    for each in listed():
        if each["kind"] == "shape":
            values = {m["name"]: m["default"] for m in each["measurements"]}
            assert SHAPES.all[each["name"]](**values).contour().width > 200


@pytest.mark.parametrize(("units", "shown"), [("in", "13 in"), ("mm", "330 mm"), ("cm", "33.0 cm")])
def test_text_shows_the_defaults_in_the_unit_asked_for(units, shown):
    text = run("shapes", "--units", units).stdout
    row = next(line for line in text.splitlines() if line.split()[:1] == ["diameter"])
    assert row.endswith(shown)


def test_unit_that_is_none_is_refused():
    done = run("shapes", "--units", "yards")
    assert (done.returncode, done.stdout) == (2, "")
    assert "yards" in done.stderr
