"""DXF files whole: units, names, blocks, what is not drawn, and files that are broken."""

import logging
import math
from typing import Any

import numpy as np
import pytest

from patternmaker.tracing.sketch import Sketch, read_sketch
from tests.tracing.drawings import apart, dxf, only, told

BENT = [(0, 0, 0.4), (80, 10, 0), (60, 70, -0.2)]


def square(space: Any) -> Any:
    return space.add_lwpolyline([(0, 0), (100, 0), (100, 100), (0, 100)], close=True)


@pytest.mark.parametrize("fmt", ["asc", "bin"])
@pytest.mark.parametrize(
    ("code", "mm"),
    [(1, 25.4), (2, 304.8), (4, 1), (5, 10), (6, 1000), (8, 25.4e-6), (9, 0.0254), (10, 914.4),
     (13, 0.001), (14, 100)],
)  # fmt: skip
def test_unit_of_the_drawing_is_applied(code, mm, fmt):
    """DXF reference, header variable $INSUNITS."""
    sketch = read_sketch("a.dxf", dxf(square, units=code, fmt=fmt))
    assert sketch.unit == mm
    assert only(sketch).path.length == pytest.approx(400 * mm)


def straight(space: Any) -> Any:
    return space.add_line((0, 0), (100, 0))


@pytest.mark.parametrize(
    "content", [dxf(square, units=0), dxf(square, units=18), dxf(straight, version="R12")]
)
def test_drawing_that_gives_no_unit_stays_in_its_own(content):
    sketch = read_sketch("a.dxf", content)
    assert sketch.unit is None
    assert only(sketch).path.width == 100


def test_line_is_called_by_its_layer_and_handle():
    def fill(space):
        space.doc.layers.add("CUT Füße")
        space.add_line((0, 0), (1, 0), dxfattribs={"layer": "CUT Füße", "handle": "A7F"})

    assert only(read_sketch("a.dxf", dxf(fill))).name == "CUT Füße A7F"


def test_drawing_of_an_older_code_page_is_read():
    content = dxf(
        lambda s: s.add_line((0, 0), (1, 0), dxfattribs={"layer": "Füße"}), version="R2000"
    )
    assert only(read_sketch("a.dxf", content.decode().encode("cp1252"))).name.startswith("Füße ")


def blocks(fill: Any, base: Any = (0, 0), **inserted: Any) -> Sketch:
    def both(space):
        fill(space.doc.blocks.new("LEG", base_point=base))
        space.add_blockref("LEG", inserted.pop("at", (0, 0)), dxfattribs=inserted)

    return read_sketch("a.dxf", dxf(both))


def test_block_is_drawn_where_it_is_inserted():
    seat = only(blocks(square, base=(10, 20), at=(300, 400), xscale=2, yscale=3, rotation=90))
    assert seat.path.bounds == pytest.approx((300 - 240, 400 - 20, 300 + 60, 400 + 180))


def test_bulges_of_a_block_scaled_unequally_become_parts_of_ellipses():
    path = only(blocks(lambda b: b.add_lwpolyline(BENT, format="xyb"), yscale=0.5)).path
    plain = only(blocks(lambda b: b.add_lwpolyline(BENT, format="xyb"))).path
    reference = np.array(plain.chords(1e-5))
    assert apart(path, reference.real + 0.5j * reference.imag) < 0.0005


def test_mirrored_block_keeps_its_arcs():
    one = only(blocks(lambda b: b.add_lwpolyline(BENT, format="xyb"), xscale=-1))
    assert len(one.segments) == 2
    assert one.path.bounds[2] == pytest.approx(0)


def test_block_turned_over_runs_the_other_way():
    seat = only(blocks(square, at=(10, 0), extrusion=(0, 0, -1)))
    assert seat.path.bounds == pytest.approx((-110, 0, -10, 100))


def test_block_in_rows_and_columns_is_drawn_that_often():
    sketch = blocks(square, row_count=2, column_count=3, row_spacing=150, column_spacing=200,
                    rotation=90)  # fmt: skip
    assert len(sketch.chains) == 6
    last = sketch.chains[-1].path.bounds
    assert last == pytest.approx((-250, 400, -150, 500))
    assert len({chain.name for chain in sketch.chains}) == 6


def test_block_within_a_block_is_drawn_too():
    def fill(space):
        square(space.doc.blocks.new("INNER"))
        outer = space.doc.blocks.new("OUTER")
        outer.add_blockref("INNER", (5, 5), dxfattribs={"xscale": 2, "yscale": 2})
        space.add_blockref("OUTER", (100, 0), dxfattribs={"rotation": 180})

    assert only(read_sketch("a.dxf", dxf(fill))).path.bounds == pytest.approx((-105, -205, 95, -5))


def test_block_within_itself_is_refused():
    def fill(space):
        inner, outer = (space.doc.blocks.new(name) for name in ("A", "B"))
        inner.add_blockref("B", (0, 0))
        outer.add_blockref("a", (0, 0))
        space.add_blockref("A", (0, 0))

    assert told("a.dxf", dxf(fill)).startswith("holds a block within itself: 0 INSERT ")


def test_blocks_that_multiply_are_refused_soon():
    def fill(space):
        for i in range(8):
            block = space.doc.blocks.new(f"B{i}")
            for _ in range(16 * (i > 0)):
                block.add_blockref(f"B{i - 1}", (0, 0))
        space.add_blockref("B7", (0, 0))

    assert "over and over" in told("a.dxf", dxf(fill))


def test_endless_rows_of_an_empty_block_are_refused_soon():
    def fill(space):
        space.doc.blocks.new("A")
        space.add_blockref("A", (0, 0), dxfattribs={"row_count": 32_000, "column_count": 32_000})

    assert "over and over" in told("a.dxf", dxf(fill))


def test_block_without_size_is_not_drawn():
    assert blocks(square, xscale=1e-10).chains == ()


def test_what_is_hidden_or_holds_no_lines_is_noted():
    def fill(space):
        space.doc.layers.add("OFF").off()
        space.doc.layers.add("ICE").freeze()
        for layer in ("OFF", "off", "ICE"):
            space.add_circle((0, 0), 5, dxfattribs={"layer": layer})
        space.add_circle((0, 0), 6, dxfattribs={"invisible": 1})
        space.add_text("Seat")
        space.add_point((1, 1))
        space.add_blockref("GONE", (0, 0))
        space.add_polymesh((2, 2))
        space.add_lwpolyline([(5, 5)])

    sketch = read_sketch("a.dxf", dxf(fill))
    assert sketch.chains == ()
    (note,) = sketch.notes
    assert note == (
        "passed over in the drawing, as no lines to follow: 1 INSERT of nothing, 1 POINT, "
        "1 POLYLINE, 1 TEXT, 4 hidden CIRCLE"
    )


def test_paper_space_is_not_the_drawing():
    content = dxf(lambda space: space.doc.paperspace().add_circle((0, 0), 5))
    assert read_sketch("a.dxf", content).chains == ()


@pytest.mark.parametrize("number", ["nan", "inf", "1e7", "1e308", "-1e999"])
def test_number_that_is_none_is_refused_with_its_place(number):
    content = dxf(lambda s: s.add_line((12.345, 5), (1, 2), dxfattribs={"handle": "A7F"}))
    message = told("a.dxf", content.replace(b"12.345", number.encode()))
    assert message.startswith("holds a point farther out than 1,000,000, or no number, in 0 A7F;")


BROKEN = "is cut off or broken, and can't be read as DXF; save it again"


@pytest.mark.parametrize("share", [0.05, 0.3, 0.5, 0.8, 0.95, 0.999])
@pytest.mark.parametrize("fmt", ["asc", "bin"])
def test_file_that_is_cut_off_is_refused(share, fmt, capfd, caplog):
    whole = dxf(square, fmt=fmt)
    with caplog.at_level(logging.CRITICAL):
        assert told("a.dxf", whole[: int(len(whole) * share)]) == BROKEN
    assert capfd.readouterr() == ("", "")


@pytest.mark.parametrize(
    "content",
    [
        b"0\nSECTION\n2\nENTITIES\n0\nLINE\n10\nten\n20\n5\n0\nENDSEC\n0\nEOF\n",
        b"0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n5\n0\nENDSEC\n0\nEOF\n",
        b"0\nSECTION\nand so on\n",
        b"AutoCAD Binary DXF\r\n\x1a\x00" + bytes(range(256)) * 10,
    ],
)
def test_nonsense_is_refused(content):
    assert told("a.dxf", content) == BROKEN


def test_short_old_file_is_read():
    """One without a header; it gives no unit."""
    content = (b"999\nby hand\n0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n8\nTOP\n10\n0\n20\n0\n40\n160\n"
               b"0\nENDSEC\n0\nEOF\n").replace(b"\n", b"\r\n")  # fmt: skip
    sketch = read_sketch("a.dxf", content)
    assert sketch.unit is None
    assert only(sketch).path.length == pytest.approx(320 * math.pi)


def test_file_of_too_many_lines_is_refused_before_it_is_taken_apart():
    content = b"0\nSECTION\n" + b"0\nPOINT\n" * 1_250_001
    assert told("a.dxf", content).startswith("has more than 2,500,000 lines;")


def test_many_vertices_are_read():
    spots = [(100 * math.cos(i / 400), 100 * math.sin(i / 400)) for i in range(2000)]
    names = [b"0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n8\nTOP\n66\n1\n70\n1\n"]
    names += [b"0\nVERTEX\n8\nTOP\n10\n%.5f\n20\n%.5f\n" % spot for spot in spots]
    content = b"".join([*names, b"0\nSEQEND\n8\nTOP\n0\nENDSEC\n0\nEOF\n"])
    assert len(only(read_sketch("a.dxf", content)).points) == 2000
