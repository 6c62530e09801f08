"""Transformations and viewports, against svgpathtools and by hand."""

import math

import numpy as np
import pytest
import svgpathtools
from svgpathtools.parser import parse_transform

from patternmaker.geometry.segments import Arc
from tests.tracing.drawings import MM, apart, drawn, only, svg, told

DATA = "M 30 20 C 80 0 120 40 90 90 A 40 40 0 0 1 20 110 Q 0 60 12 40 Z"
MAPS = [
    "matrix(0.9 0.3 -0.4 1.1 20 30)",
    "translate(15, 20)",
    "translate(15)",
    "scale(1.5)",
    "scale(2 0.5)",
    "scale(-1 1)",
    "rotate(33)",
    "rotate(90)",
    "rotate(-33 40 60)",
    "skewX(20)",
    "skewY(-20)",
    "translate(50 10) rotate(20),scale(1.2,.7) skewX(10)",
]


def mapped(data: str, transform: str) -> np.ndarray:
    path = svgpathtools.parse_path(data)
    at = np.concatenate([[each.point(t) for t in np.linspace(0, 1, 1500)] for each in path])
    (a, c, e), (b, d, f) = parse_transform(transform)[:2]
    x, y = a * at.real + c * at.imag + e, b * at.real + d * at.imag + f
    return np.array(x - 1j * y)


@pytest.mark.parametrize("transform", MAPS)
def test_path_is_mapped(transform):
    chain = only(drawn(f'<path transform="{transform}" d="{DATA}"/>'))
    assert apart(chain.path, mapped(DATA, transform)) < 0.0005


@pytest.mark.parametrize("outer", MAPS[3:6])
@pytest.mark.parametrize("inner", MAPS[6:12])
def test_maps_of_groups_are_done_from_the_inside_out(outer, inner):
    chain = only(drawn(f'<g transform="{outer}"><path transform="{inner}" d="{DATA}"/></g>'))
    assert apart(chain.path, mapped(DATA, f"{outer} {inner}")) < 0.0005


@pytest.mark.parametrize("transform", [*MAPS[1:4], *MAPS[5:9]])
def test_circle_under_a_map_that_keeps_shapes_is_a_circle(transform):
    chain = only(drawn(f'<circle cx="50" cy="60" r="40" transform="{transform}"/>'))
    assert all(isinstance(each, Arc) for each in chain.segments)
    assert len(chain.segments) == 4
    scale = math.sqrt(abs(np.linalg.det(parse_transform(transform))))
    assert chain.path.length == pytest.approx(80 * math.pi * scale, abs=1e-9)


def test_sheared_circle_keeps_its_area():
    """A shear keeps every area; the area is taken by Green's theorem."""
    chain = only(drawn('<circle cx="200" cy="200" r="150" transform="skewX(35)"/>'))
    area = abs(sum(each.moment for each in chain.segments))
    assert area == pytest.approx(math.pi * 150**2, rel=1e-6)


@pytest.mark.parametrize(
    "transform", ["scale(0)", "scale(1 0)", "matrix(1 1 1 1 0 0)", "skewX(90)"]
)
def test_map_that_lays_all_on_one_line_shows_nothing_to_follow(transform):
    assert drawn(f'<circle r="5" transform="{transform}"/>').chains == ()


@pytest.mark.parametrize(
    "transform",
    ["turn(20)", "scale()", "scale(1 2 3)", "rotate(1 2)", "rotate(20", "20", "matrix(1 2)",
     "scale(1) x", "scale(a)", "translate(1e99)"],
)  # fmt: skip
def test_transformation_that_can_not_be_read_is_refused(transform):
    assert told("a.svg", svg(f'<g transform="{transform}"/>')) == (
        f"can't be read in line 1: transform of g, {transform!r}; "
        "mend it there, or save the drawing again"
    )


def test_transformation_in_a_style_is_refused():
    message = told("a.svg", svg('<g style="fill:none; transform: rotate(20deg)"/>'))
    assert message.startswith("can't be read in line 1: style of g, ")


def test_style_that_only_speaks_of_text_is_no_transformation():
    assert drawn('<circle r="5" style="text-transform:none"/>').chains


SLICED = 'preserveAspectRatio="xMinYMax slice"'
SQUARE = '<rect width="100" height="100"/>'


@pytest.mark.parametrize(
    ("size", "mm"),
    [
        ('width="300mm" height="200mm" viewBox="0 0 300 200"', 100),
        ('width="300mm" viewBox="0 0 300 200"', 100),
        ('height="200mm" viewBox="0 0 300 200"', 100),
        ('width="30cm" height="20cm" viewBox="0 0 3000 2000"', 10),
        ('width="12in" height="12in" viewBox="0 0 12 12"', 2540),
        ('width="288pt" height="288pt" viewBox="0 0 288 288"', 100 * 25.4 / 72),
        ('width="300mm" height="200mm" viewBox="-50 -50 600 400"', 50),
        ('width="300mm" height="100mm" viewBox="0 0 300 200"', 50),
        (f'width="300mm" height="100mm" viewBox="0 0 300 200" {SLICED}', 100),
    ],
)  # fmt: skip
def test_drawing_that_gives_its_size_is_at_true_size(size, mm):
    sketch = drawn(SQUARE, size)
    assert only(sketch).path.width == pytest.approx(mm, rel=1e-12)
    assert only(sketch).path.height == pytest.approx(mm, rel=1e-12)
    assert sketch.unit == pytest.approx(mm / 100, rel=1e-12)
    assert sketch.notes == ()


@pytest.mark.parametrize(
    ("size", "px"),
    [
        ("", 1),
        ('width="400" height="300"', 1),
        ('width="400px" height="300px" viewBox="0 0 400 300"', 1),
        ('width="100%" height="100%" viewBox="0 0 400 300"', 1),
        ('viewBox="0 0 400 300"', 1),
        ('width="800" viewBox="0 0 400 300"', 2),
        ('width="300mm" height="200mm"', 1),
    ],
)
def test_drawing_that_does_not_takes_96_px_to_the_inch_and_says_so(size, px):
    """CSS Values and Units 3, 6.2."""
    sketch = drawn(SQUARE, size)
    assert only(sketch).path.width == pytest.approx(px * 100 * 25.4 / 96)
    (note,) = sketch.notes
    assert "1/96 in" in note
    assert "check the width" in note


def test_stretched_drawing_is_stretched():
    size = 'width="300mm" height="400mm" viewBox="0 0 300 200" preserveAspectRatio="none"'
    assert only(drawn(SQUARE, size)).path.height == pytest.approx(200)
    assert only(drawn(SQUARE, size)).path.width == pytest.approx(100)


@pytest.mark.parametrize(
    ("ratio", "corner"),
    [
        ("", 10 + 50 - 1j * 20),
        ("xMidYMid meet", 60 - 20j),
        ("xMinYMid", 10 - 20j),
        ("xMaxYMin", 110 - 20j),
        ("xMidYMid slice", 10 - (20 - 50) * 1j),
        ("xMidYMax slice", 10 - (20 - 100) * 1j),
        ("none", 10 - 20j),
    ],
)
def test_viewport_within_lies_as_its_ratio_says(ratio, corner):
    """A square of 100 in a box of 200 by 100 whose corner is at 10, 20 (SVG 1.1, 7.8)."""
    inner = (f'<svg x="10" y="20" width="200" height="100" viewBox="0 0 100 100" '
             f'preserveAspectRatio="{ratio}">{SQUARE}</svg>')  # fmt: skip
    path = only(drawn(inner.replace('preserveAspectRatio=""', ""))).path
    assert path.segments[0].start == pytest.approx(corner)


def test_viewport_within_fills_the_outer_one_unless_it_says_otherwise():
    assert only(drawn(f'<svg viewBox="0 0 50 50">{SQUARE}</svg>')).path.width == pytest.approx(2000)
    assert drawn(f'<svg width="0">{SQUARE}</svg>').chains == ()


def test_percentage_within_is_of_the_inner_viewport():
    inner = '<svg width="50%" height="100" viewBox="0 0 10 2"><rect width="50%" height="1"/></svg>'
    assert only(drawn(inner)).path.width == pytest.approx(250)


@pytest.mark.parametrize(
    ("size", "what"),
    [
        ('viewBox="0 0 300"', "viewBox of svg, '0 0 300'"),
        ('viewBox="0 0 0 5"', "viewBox of svg, '0 0 0 5'"),
        ('viewBox="0 0 x 5"', "viewBox of svg, '0 0 x 5'"),
        ('width="0" viewBox="0 0 5 5"', "width of svg, '0'"),
        ('height="-5mm"', "height of svg, '-5mm'"),
        (f'{MM} preserveAspectRatio="middle"', "preserveAspectRatio of svg, 'middle'"),
    ],
)
def test_size_that_can_not_be_read_is_refused(size, what):
    assert told("a.svg", svg(SQUARE, size)).startswith(f"can't be read in line 1: {what};")
