"""Pictures of shapes, put in their place as files."""

from pathlib import Path

import pytest

from patternmaker.cli.drawn import drawn
from patternmaker.cli.shapes import found
from patternmaker.errors import Refusals
from patternmaker.units import Unit
from tests.cli.command import leaves


def test_one_shape_or_all_are_drawn_where_they_are_wanted(tmp_path):
    one = drawn(found(["oval"]), Unit.CM, tmp_path / "oval.svg")
    every = drawn(None, Unit.CM, tmp_path / "all.svg")
    assert b"<title>oval</title>" in one.read_bytes()
    assert b"<title>Seat shapes</title>" in every.read_bytes()
    assert leaves(tmp_path) == ["all.svg", "oval.svg"]


def test_cover_and_nameless_file_are_refused(tmp_path):
    with pytest.raises(Refusals, match="it has no picture"):
        drawn(found(["boxed"]), Unit.MM, tmp_path / "x.svg")
    with pytest.raises(Refusals, match="names no file"):
        drawn(None, Unit.MM, Path())
    assert leaves(tmp_path) == []
