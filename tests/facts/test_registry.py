"""A class makes itself known by its decorator, from a file of its own."""

import subprocess
import sys

import pytest

from patternmaker.covers import COVERS
from patternmaker.facts import Measured, Registry, length
from patternmaker.outlines import SHAPES
from tests.paper.samples import SAMPLES


def test_known_classes_stand_in_alphabetical_order():
    registry = Registry[Measured]("patternmaker.facts")

    @registry.known_as("wedge")
    class Wedge(Measured):
        width: float = length("left to right")

    @registry.known_as("drum")
    class Drum(Measured):
        height: float = length("bottom to top")

    assert list(registry.all.items()) == [("drum", Drum), ("wedge", Wedge)]
    assert registry.all["drum"].called == "drum"
    assert Drum(height=3.0).height == 3.0  # type: ignore[call-arg]


@pytest.mark.parametrize("registry", [SHAPES, COVERS], ids=["shapes", "covers"])
def test_class_is_found_by_its_name_whatever_its_file_is_called(registry):
    for name, kind in registry.all.items():
        assert registry.named(name) is kind


@pytest.mark.parametrize(
    "name", ["", " ", "registry", "parts", "__init__", "../circle", "circle.py", "x" * 9000, "ſ"]
)
def test_name_of_no_class_finds_none(name):
    assert SHAPES.named(name) is None
    assert COVERS.named(name) is None


def test_only_the_files_of_the_shape_and_cover_asked_for_are_read():
    job = SAMPLES / "round-piano-stool.toml"
    code = (
        "import sys; from pathlib import Path; from patternmaker.job import load_job; "
        f"load_job(Path({str(job)!r})); "
        "print(*[name for name in sys.modules if name.startswith('patternmaker.')])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    read = done.stdout.split()
    assert {"patternmaker.outlines.circle", "patternmaker.covers.boxed"} <= set(read)
    assert not {"patternmaker.outlines.saddle", "patternmaker.covers.waterfall"} & set(read)
