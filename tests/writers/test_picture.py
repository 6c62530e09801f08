"""The SVG picture: any drawing, with its lettering as text."""

import xml.etree.ElementTree as ET

import pytest

from patternmaker.drawing.looks import INDIGO, Pen
from patternmaker.drawing.surface import Drawing, Fill, Letters, Stroke, rectangle
from patternmaker.geometry.contour import Path
from patternmaker.writers.picture import picture_file

SVG = "{http://www.w3.org/2000/svg}"
LINE = Path.through(0, 10 + 5j)


def elements(*marks: Stroke | Fill | Letters) -> list[ET.Element]:
    """Return the elements of a picture of 40 by 20 mm beyond its title and its ground."""
    root = ET.fromstring(picture_file("A stool", (40, 20), Drawing(marks)))
    drawn = [each for each in root if each.tag in {f"{SVG}path", f"{SVG}text"}]
    assert len(drawn) == len(marks)
    return drawn


def test_page_is_in_millimetres_and_white():
    root = ET.fromstring(picture_file("A stool", (40, 20.5), Drawing(())))
    assert root.attrib["width"] == "40mm"
    assert root.attrib["height"] == "20.5mm"
    assert root.attrib["viewBox"] == "0 0 40 20.5"
    assert root.find(f"{SVG}title").text == "A stool"  # type: ignore[union-attr]
    assert root.find(f"{SVG}rect").attrib["fill"] == "#ffffff"  # type: ignore[union-attr]


def test_stroke_takes_the_pen_and_runs_downward():
    (line,) = elements(Stroke(LINE, Pen(0.4, (2, 1.5), INDIGO)))
    assert line.attrib["d"] == "M0,20 L10,15"
    assert line.attrib["fill"] == "none"
    assert line.attrib["stroke"] == "#213380"
    assert line.attrib["stroke-width"] == "0.4"
    assert line.attrib["stroke-dasharray"] == "2,1.5"


def test_full_line_has_no_dashes():
    (line,) = elements(Stroke(LINE, Pen(0.4)))
    assert "stroke-dasharray" not in line.attrib


def test_fill_has_no_stroke():
    (area,) = elements(Fill(rectangle((0, 0, 4, 4)), (1.0, 0.0, 0.0)))
    assert area.attrib["fill"] == "#ff0000"
    assert "stroke" not in area.attrib


@pytest.mark.parametrize(
    ("anchor", "named"), [("left", "start"), ("middle", "middle"), ("right", "end")]
)
def test_letters_are_text_from_whatever_plain_face_there_is(anchor, named):
    (words,) = elements(Letters(3 + 4j, "Front", 5, bold=True, anchor=anchor))
    assert words.text == "Front"
    assert (words.attrib["x"], words.attrib["y"]) == ("3", "16")
    assert words.attrib["font-size"] == "5"
    assert words.attrib["font-weight"] == "bold"
    assert words.attrib["text-anchor"] == named
    assert words.attrib["font-family"].endswith("sans-serif")
    assert "transform" not in words.attrib


def test_letters_that_read_upward_are_turned_to_the_left():
    (words,) = elements(Letters(3 + 4j, "Side", 5, way=1j))
    assert words.attrib["transform"] == "rotate(-90 3 16)"
    assert "font-weight" not in words.attrib


def test_sign_that_no_file_may_hold_becomes_a_question_mark():
    (words,) = elements(Letters(0, "a\x07b", 5))
    assert words.text == "a?b"


def test_picture_is_the_same_every_time():
    def file() -> bytes:
        return picture_file("T", (40, 20), Drawing((Stroke(LINE, Pen(0.4)), Letters(0, "a", 5))))

    assert file() == file()
