"""Chains and sketches as values."""

import pytest

from patternmaker.geometry.segments import Arc, Line
from patternmaker.tracing.sketch import Chain, Sketch

RING = (0j, 10 + 0j, 10 + 10j)


def test_closed_string_comes_back_to_its_first_point_in_its_path():
    path = Chain("points", points=RING, closed=True).path
    assert path.segments == (Line(0, 10), Line(10, 10 + 10j), Line(10 + 10j, 0))


def test_open_string_does_not():
    assert len(Chain("points", points=RING).path.segments) == 2


def test_path_of_true_lines_is_made_of_them():
    lines = (Line(0, 5), Arc(5 + 5j, 5, 1.0))
    assert Chain("leg", segments=lines).path.segments == lines


def test_enlarged_sketch_keeps_its_names():
    drawn, true = Chain("a", points=RING, closed=True), Chain("b", segments=(Line(1, 2j),))
    twice = Sketch((drawn, true), 25.4, {"left": 3 + 4j}, ("a note",)).scaled(2)
    assert twice.chains[0] == Chain("a", points=(0j, 20 + 0j, 20 + 20j), closed=True)
    assert twice.chains[1].segments == (Line(2, 4j),)
    assert (twice.unit, dict(twice.marks), twice.notes) == (50.8, {"left": 6 + 8j}, ("a note",))


def test_sketch_without_a_unit_gets_none_by_being_enlarged():
    assert Sketch((), None).scaled(3).unit is None


def test_marks_can_not_be_changed():
    sketch = Sketch((), marks={"left": 1j})
    with pytest.raises(TypeError):
        sketch.marks["right"] = 2j  # type: ignore[index]
