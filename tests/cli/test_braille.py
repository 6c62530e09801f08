"""Dots and letters on a terminal."""

import pytest

from patternmaker.cli.braille import Raster, takes_braille


@pytest.mark.parametrize(
    ("encoding", "takes"),
    [("utf-8", True), ("UTF-16", True), ("gb18030", True), ("cp1252", False), ("ascii", False),
     ("cp437", False), (None, False), ("no such thing", False)],
)  # fmt: skip
def test_braille_is_for_encodings_that_hold_it(encoding, takes):
    assert takes_braille(encoding) is takes


@pytest.mark.parametrize(
    ("dot", "sign"),
    [(3j, "⠁"), (2j, "⠂"), (1j, "⠄"), (0, "⡀"), (1 + 3j, "⠈"), (1 + 2j, "⠐"), (1 + 1j, "⠠"),
     (1, "⢀")],
)  # fmt: skip
def test_each_dot_is_where_unicode_has_it(dot, sign):
    """The Unicode Standard, chart Braille Patterns: dots 1 to 8, upward here."""
    raster = Raster(1, 1)
    raster.line([dot, dot])
    assert raster.shown(braille=True) == [sign]


def test_full_line_has_every_dot():
    raster = Raster(2, 1)
    raster.line([0, 3])
    assert raster.shown(braille=True) == ["⣀⣀"]


def test_line_between_dots_has_none_twice_and_misses_none():
    raster = Raster(1, 4)
    raster.line([0.5 + 0.5j, 0.5 + 14.9j])
    assert raster.shown(braille=True) == ["⢸", "⢸", "⢸", "⠸"]


def test_lighter_line_has_every_other_dot():
    raster = Raster(2, 1)
    raster.line([0, 3], every=2)
    assert raster.shown(braille=True) == ["⡀⡀"]


def test_first_row_is_the_uppermost():
    raster = Raster(1, 2)
    raster.line([7j, 7j])
    assert raster.shown(braille=True) == ["⠁", ""]


def test_plain_signs_tell_a_seat_from_a_measurement():
    raster = Raster(3, 1)
    raster.line([4, 5], every=2)
    raster.line([0, 1])
    assert raster.shown(braille=False) == ["* ."]


def test_seat_is_not_hidden_by_a_measurement_that_crosses_it():
    raster = Raster(1, 1)
    raster.line([0, 1])
    raster.line([3j, 2j], every=2)
    assert raster.shown(braille=False) == ["*"]


def test_letters_take_cells_of_their_own():
    raster = Raster(4, 1)
    raster.line([0, 7])
    raster.letter(2, "12")
    assert raster.shown(braille=True) == ["⣀12⣀"]
    assert raster.shown(braille=False) == ["*12*"]
