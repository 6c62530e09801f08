"""The SVG writer: paths in absolute commands, turned over to run downward."""

import math

import pytest
import svgpathtools

from patternmaker.drawing.looks import INDIGO
from patternmaker.geometry.contour import Contour, Path
from patternmaker.geometry.segments import Arc, Line
from patternmaker.outlines.circle import Circle
from patternmaker.writers.svg import path_data, svg_file


def test_lines_are_absolute_and_run_downward():
    assert path_data(Path.through(0, 10, 10 + 5j), 100) == "M0,100 L10,100 L10,95"


def test_contour_is_closed():
    square = Contour(Path.through(0, 10, 10 + 10j, 10j, 0).segments)
    assert path_data(square, 10).endswith("Z")


@pytest.mark.parametrize("sweep", [0.5, 2.0, 3.5, 6.0, -0.5, -2.0, -3.5, -6.0])
def test_arc_is_read_back_with_its_length_and_its_bulge(sweep):
    """svgpathtools reads SVG 1.1, 8.3.8: radii, large-arc flag and sweep flag."""
    arc = Arc(30 + 20j, 50 + 20j, sweep)
    read = svgpathtools.parse_path(path_data(Path((arc,)), 100))
    assert read.length() == pytest.approx(arc.length, abs=1e-4)
    middle = arc.point(arc.length / 2)
    assert abs(read.point(0.5) - complex(middle.real, 100 - middle.imag)) < 1e-4


def test_path_of_lines_and_arcs_has_the_length_of_a_worked_example():
    """M20,20 L120,20 A30,30 0 0 1 150,50 L150,120 Z is 381.136084472 mm: svgpathtools."""
    arc = Arc(120 + 70j, 120 + 100j, -math.pi / 2)
    sides = (Line(20 + 100j, 120 + 100j), arc, Line(150 + 70j, 150), Line(150, 20 + 100j))
    data = path_data(Contour(sides), 120)
    assert data.startswith("M20,20 L120,20 A30,30 0 0 1 150,50 L150,120")
    assert svgpathtools.parse_path(data).length() == pytest.approx(381.136084472, abs=1e-8)
    assert Contour(sides).length == pytest.approx(381.136084472, abs=1e-8)


def test_no_number_is_written_with_an_exponent_or_as_minus_nought():
    data = path_data(Path.through(1e-9, -1e-9 + 1e-12j, 123456.7890123), 1e-8)
    assert "e" not in data
    assert "-0 " not in f"{data.replace(',', ' ')} "


def test_file_is_the_same_every_time():
    def file() -> bytes:
        circle = Circle(diameter=80).contour()
        return svg_file("T", (100, 100), {"cut line": (INDIGO, [("a", circle)])})

    assert file() == file()
    assert b"<circle" in file()
    assert b'id="cut-line"' in file()
