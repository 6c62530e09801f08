"""Points as text, in the ways in which digitisers and spreadsheets write them."""

import pytest

from patternmaker.errors import Refusal
from patternmaker.tracing.csv import read_csv
from patternmaker.tracing.sketch import read_sketch
from tests.tracing.drawings import only, told

POINTS = (1.5 + 2j, -3 + 4.25j, 1000 - 0.5j)


@pytest.mark.parametrize(
    "text",
    [
        "1.5,2\n-3,4.25\n1000,-0.5",
        "1.5, 2\r\n-3 ,4.25\r\n+1e3,-.5\r\n",
        "1.5;2\n-3;4.25\n1000.;-.5\n",
        "1,5;2\n-3;4,25\n1000; -0,5\n",
        "1,5\t2\n-3\t4,25\t\n1e3\t-,5\n",
        "1.5 2\n-3  4.25\n   1000 -0.5\n",
        "1.5,2,\n-3,4.25,,\n1000,-0.5\n",
        "x,y\n1.5,2\n-3,4.25\n1000,-0.5",
        "# from the tablet\n\nx;y\n1,5;2 # first\n\n-3;4,25\n1000;-0,5",
        '"x" "y"\r1.5 2\r-3 4.25\r1000 -0.5',
    ],
)
def test_points_are_read(text):
    sketch = read_sketch("seat.csv", text.encode())
    chain = only(sketch)
    assert chain.points == POINTS
    assert (chain.name, chain.drawn, chain.closed) == ("points", True, False)
    assert sketch.unit is None


@pytest.mark.parametrize("code", ["utf-8-sig", "utf-16"])
def test_byte_order_mark_is_passed_over(code):
    assert only(read_sketch("seat.TXT", "x\ty\n1,5\t2\n".encode(code))).points == (1.5 + 2j,)


@pytest.mark.parametrize(
    ("header", "mm"),
    [("x (mm),y (mm)", 1), ("x [cm],y", 10), ("x(in), y(in)", 25.4), ("x (m),y ( M )", 1000),
     ("across (inches),up (inches)", 25.4)],
)  # fmt: skip
def test_header_may_give_the_unit(header, mm):
    sketch = read_sketch("seat.csv", f"{header}\n2,3,left\n4,5".encode())
    assert sketch.unit == mm
    assert only(sketch).points == (mm * (2 + 3j), mm * (4 + 5j))
    assert sketch.marks == {"left": mm * (2 + 3j)}


@pytest.mark.parametrize(
    "text",
    [
        "1,2,left front\n3,4\n5,6, 2nd leg ",
        '1;2;"left front"\n3;4;\n5;6;2nd leg',
        "1 2   left front\n3 4\n5 6 2nd  leg",
    ],
)
def test_third_column_names_a_place(text):
    marks = read_sketch("seat.csv", text.encode()).marks
    assert dict(marks) == {"left front": 1 + 2j, "2nd leg": 5 + 6j}


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("1,2\nnan,3", "is no point in line 2: 'nan,3'"),
        ("nan,nan\n1,2", "is no point in line 1: 'nan,nan'"),
        ("Infinity 1\n1 2", "is no point in line 1: 'Infinity 1'"),
        ("1,2\n3,inf", "is no point in line 2: '3,inf'"),
        ("1,2\n\nthen,on\n3,4", "is no point in line 3: 'then,on'"),
        ("1,2\n3\n", "is no point in line 2: '3'"),
        ("5\n6\n", "is no point in line 1: '5'"),
        ("1,2\n1,5;3", "is no point in line 2: '1,5;3'"),
        ("1.234,5;2", "is no point in line 1: '1.234,5;2'"),
        ("1,5 2,5", "is no point in line 1: '1,5 2,5'"),
        ("1_0,2", "is no point in line 1: '1_0,2'"),
        ("１,2\n1,2", "is no point in line 1: '１,2'"),
        ("x,y\nx,y\n1,2", "is no point in line 2: 'x,y'"),
        ("1,2\n3,{x}", "is no point in line 2: '3,{x}'"),
        ("1,2,7.5", "names no place of its own in line 1: '7.5'"),
        ("1,2,leg\n3,4,leg", "names no place of its own in line 2: 'leg'"),
        ("x (mm),y (cm)\n1,2", "gives its unit as 'cm and mm'"),
        ("x (ells)\n1,2", "gives its unit as 'ells'"),
        ("x,y\n# 1,2", "looks like plain text, not like points"),
        ("1,2\n2e7,3", "holds a point farther out than 1,000,000, or no number, in line 2"),
        ("1,2\n3,1e999", "holds a point farther out than 1,000,000, or no number, in line 2"),
        (f"1,2\n3,4,{'o' * 500}", "is no point in line 2: '3,4,ooo"),
        (
            "x,y\n" + "1,2\n" * 250_000,
            "holds 250,000 points or more, where at most 200,000 are read",
        ),
    ],
)
def test_first_wrong_line_is_named(text, message):
    assert told("seat.csv", text.encode()).startswith(message)


def test_file_of_remarks_holds_no_points():
    with pytest.raises(Refusal, match="holds no points"):
        read_csv(b"x,y\n# 1,2\n")


def test_text_that_is_not_utf_8_is_refused_with_its_line():
    assert told("seat.csv", b"1,2\n3,4 \xff\n") == (
        "is not UTF-8 text in line 2; save it as plain UTF-8"
    )  # fmt: skip


def test_hundred_thousand_points_are_read():
    text = "\n".join(f"{i / 7:.4f},{-i / 9:.4f}" for i in range(100_000))
    assert len(only(read_sketch("seat.csv", text.encode())).points) == 100_000


def test_endless_line_takes_no_time():
    """Patterns that try again and again would take hours here."""
    told("seat.csv", b"1" * 5_000_000)
    told("seat.csv", b"1" + b" " * 5_000_000 + b"1")
    told("seat.csv", b"1,2\n" + b"1, " * 1_000_000)
