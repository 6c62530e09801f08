"""Shapes make themselves known from a file each."""

from pathlib import Path

import patternmaker.outlines
from patternmaker.facts import facts_of
from patternmaker.outlines import SHAPES


def test_every_file_of_the_room_brings_a_shape():
    files = {each.stem for each in Path(patternmaker.outlines.__path__[0]).glob("*.py")}
    brought = {kind.__module__.rpartition(".")[2] for kind in SHAPES.all.values()}
    assert brought == files - {"__init__", "registry"}


def test_contract_of_the_job_file_is_kept():
    assert {"circle", "rounded rectangle"} <= SHAPES.all.keys()
    assert list(facts_of(SHAPES.all["circle"])) == ["diameter"]
    assert list(facts_of(SHAPES.all["rounded rectangle"]))[:3] == ["width", "depth", "corner"]


def test_every_shape_says_what_it_is():
    assert all(kind.called == name and kind.__doc__ for name, kind in SHAPES.all.items())
