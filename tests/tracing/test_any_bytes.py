"""Whatever the bytes of a drawing are, it is read or refused in words."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from patternmaker.errors import Refusal
from patternmaker.tracing.sketch import Sketch, read_sketch
from tests.tracing.drawings import dxf, svg


def everything(space: Any) -> None:
    block = space.doc.blocks.new("LEG")
    block.add_circle((0, 0), 5)
    space.add_blockref("LEG", (5, 5), dxfattribs={"xscale": 2, "row_count": 2, "rotation": 30})
    space.add_polyline2d([(0, 0), (50, 90), (100, 0)])
    space.add_arc((0, 0), 5, 20, 70)
    space.add_line((0, 0), (5, 5))
    if space.doc.dxfversion <= "AC1009":
        return
    space.add_lwpolyline([(0, 0, 0.3), (90, 0, 0), (90, 50, -1)], format="xyb", close=True)
    space.add_rational_spline([(0, 0), (30, 90), (120, 80), (150, 10), (190, -40)], [1, 2, 1, 3, 1])
    space.add_spline([(0, 0), (30, 90), (120, 80)])
    space.add_ellipse((0, 0), (30, 40), 0.5, 0, 2)


DRAWING = """<style>.off { display: none }</style><g transform="rotate(20 5 5) skewX(3)">
<path id="p" d="M10 10h5v5a3,2 20 0 1 9-9c1 2 3 4 5 6s1 1 2 3q4 4 6 9t1 1zm3 3l4 4"/>
<rect x="5%" width="9mm" height="3" rx="1"/><ellipse rx="5" ry="3"/><polygon points="1,2 3,4 5,0"/>
<use href="#p" x="3"/><svg viewBox="0 0 9 9" width="5"><circle r="2"/></svg></g>"""
FILES = {
    "a.svg": svg(DRAWING),
    "r12.dxf": dxf(everything, version="R12"),
    "a.dxf": dxf(everything),
    "bin.dxf": dxf(everything, fmt="bin", version="R2000"),
    "a.csv": b"x (mm);y (mm)\n# all\n1,5;2;left\n-3;4e1;\n" + b"7;8\n" * 9,
    "a.txt": "x\ty\n1,5\t2\n".encode("utf-16"),
}


def read(name: str, content: bytes) -> None:
    """Read a drawing; what it gives is sound, or it is refused on one line."""
    try:
        sketch = read_sketch(name, content)
    except Refusal as refused:
        message = str(refused)
        assert 10 < len(message) < 400
        assert message.isprintable()
    else:
        assert isinstance(sketch, Sketch)
        for chain in sketch.chains:
            assert bool(chain.points) != bool(chain.segments)
            assert not chain.segments or math.isfinite(chain.path.length)


@pytest.mark.parametrize("name", FILES)
def test_what_the_others_are_made_of_is_read(name):
    assert read_sketch(name, FILES[name]).chains


@given(st.sampled_from(sorted(FILES)), st.data())
def test_changed_bytes_are_read_or_refused(name, data):
    content = bytearray(FILES[name])
    for _ in range(data.draw(st.integers(1, 6))):
        at = data.draw(st.integers(0, len(content)))
        new = data.draw(
            st.binary(max_size=3) | st.sampled_from([b"-1e9", b"nan", b"0", b'"', b"<g>"])
        )
        content[at : at + data.draw(st.integers(0, 3))] = new
    read(name, bytes(content))


@given(st.sampled_from(sorted(FILES)), st.data())
def test_cut_and_doubled_files_are_read_or_refused(name, data):
    content = FILES[name]
    one, two = (data.draw(st.integers(0, len(content))) for _ in range(2))
    read(name, content[:one] + content[two:])


@given(st.sampled_from(sorted(FILES)), st.binary(max_size=300))
def test_any_bytes_are_read_or_refused(name, content):
    read(name, content)


@given(st.text("MmLlHhVvCcSsQqTtAaZz0123456789.,-+e \n", max_size=80))
def test_any_path_data_are_read_or_refused(data):
    read("a.svg", svg(f'<path d="M{data}"/>'))


@given(st.text("0123456789.,;-+e\tx \n#", max_size=80))
def test_any_figures_are_read_or_refused(text):
    read("a.csv", text.encode())


CODES = ["10", "20", "40", "41", "42", "50", "70", "71", "90", "210", "230", "44", "2", "8"]
VALUES = ["0", "1", "-1", "3", "1e9", "nan", "LEG", "1e308", "7"]
KINDS = ["LINE", "ARC", "CIRCLE", "ELLIPSE", "SPLINE", "LWPOLYLINE", "INSERT", "POLYLINE", "MESH"]
TAGS = st.lists(st.tuples(st.sampled_from(CODES), st.sampled_from(VALUES)), max_size=12)


@given(TAGS, st.sampled_from(KINDS))
def test_any_entity_is_read_or_refused(tags, kind):
    body = "".join(f"{code}\n{value}\n" for code, value in tags)
    content = f"0\nSECTION\n2\nENTITIES\n0\n{kind}\n8\nTOP\n{body}0\nENDSEC\n0\nEOF\n"
    read("a.dxf", content.encode())
