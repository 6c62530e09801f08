"""What is no drawing is refused with what it looks like, and with what is read."""

import gzip
import io
import zipfile

import pytest

from patternmaker.tracing.kinds import LARGEST, READ_HERE
from tests.tracing.drawings import dxf, svg, told


def packed() -> bytes:
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w") as file:
        file.writestr("seat.svg", svg(""))
    return stream.getvalue()


@pytest.mark.parametrize("name", ["seat.svg", "SEAT.DXF", "seat.csv", "seat.txt"])
@pytest.mark.parametrize(
    ("content", "what"),
    [
        (b"%PDF-1.7\n", "a PDF"),
        (b"\x89PNG\r\n\x1a\n", "a PNG picture"),
        (b"\xff\xd8\xff\xe0", "a JPEG picture"),
        (gzip.compress(svg("")), "packed by gzip"),
        (packed(), "packed by zip"),
        (b"AC1032\x00\x00", "a DWG"),
        (b"\x00\x01\x02\x03", "binary data"),
        (b"Dear all,\nhere is the seat.", "plain text"),
        (b"<!DOCTYPE html><html></html>", "another kind of markup"),
    ],
)
def test_other_files_are_refused_with_what_they_look_like(name, content, what):
    kind = {"svg": "SVG", "dxf": "DXF"}.get(name[-3:].lower(), "points")
    assert told(name, content) == f"looks like {what}, not like {kind}; {READ_HERE}"


@pytest.mark.parametrize(
    ("name", "content", "says"),
    [
        ("a.svg", dxf(lambda space: None), "looks like DXF, not like SVG"),
        ("a.svg", dxf(lambda space: None, fmt="bin"), "looks like DXF, not like SVG"),
        ("a.dxf", svg(""), "looks like SVG, not like DXF"),
        ("a.dxf", "\N{ZERO WIDTH NO-BREAK SPACE}".encode() + svg(""), "looks like SVG, not like"),
        ("a.svg", b"1,2\n3,4", "looks like points, not like SVG"),
        ("a.csv", svg("").decode().encode("utf-16"), "looks like SVG, not like points"),
    ],
)
def test_wrong_ending_is_refused_with_the_right_kind(name, content, says):
    assert told(name, content).startswith(says)


@pytest.mark.parametrize("name", ["seat", "seat.pdf", ".svg", "seat.svg.bak", ""])
def test_unknown_ending_is_refused_with_what_is_read(name):
    assert told(name, svg("")) == (
        f"has an ending that is not known here, and looks like SVG; {READ_HERE}"
    )


@pytest.mark.parametrize("content", [b"", b" \r\n\t", b"\0" * 5000])
def test_empty_file_is_refused(content):
    assert told("a.dxf", content) == "is empty; save the drawing again"


def test_too_large_a_file_is_refused_before_it_is_looked_at():
    assert told("a.svg", bytes(LARGEST + 1)) == (
        "has 25,000,001 bytes, more than 25,000,000; save the seat alone, or with fewer points"
    )
