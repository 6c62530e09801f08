"""The lettering's measures, against a second library that reads fonts."""

import pytest
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from patternmaker.drawing.typeface import font_file, lacking, width, wrapped

TEXTS = ["Round piano stool", "13 ³⁄₁₆ × 4 ¼ in", "Größe ½", "Табурет", "Σκαμνί", "…·–×", ""]


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("text", TEXTS)
def test_words_run_as_wide_as_reportlab_measures_them(text, bold):
    name = f"Measured-{bold}"
    pdfmetrics.registerFont(TTFont(name, str(font_file(bold=bold))))
    expected = pdfmetrics.stringWidth(text, name, 1000)
    assert width(text, 1000, bold=bold) == pytest.approx(expected, abs=0.5)


@pytest.mark.parametrize("bold", [False, True])
def test_figures_are_of_one_width(bold):
    assert len({round(width(figure, 10, bold=bold), 6) for figure in "0123456789"}) == 1


def test_font_has_every_sign_that_we_print():
    assert lacking("ÄÖÜßéñç ЖЩЯ ΑΩψ ½¼¾⅛⅜⅝⅞ ¹⁄₁₆ ×·…–—“”’ °²½ §") == ""


def test_signs_that_the_font_lacks_are_named_once():
    assert lacking("a凳b子凳") == "凳子"


def test_wrapped_lines_fit_and_lose_no_word():
    text = "the quick brown fox jumps over the lazy dog and runs on"
    lines = wrapped(text, 4, 30)
    assert " ".join(lines) == text
    assert all(width(line, 4) <= 30 for line in lines)
    assert len(lines) > 3


def test_word_wider_than_the_room_is_broken_and_kept():
    lines = wrapped("a" + "m" * 200, 4, 30)
    assert "".join(lines) == "a" + "m" * 200
    assert all(width(line, 4) <= 30 for line in lines)


def test_nothing_is_one_empty_line():
    assert wrapped("", 4, 30) == [""]
