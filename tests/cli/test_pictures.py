"""Shapes as a terminal shows them."""

import pytest

from patternmaker.cli.pictures import SMALL, Size, picture
from patternmaker.drawing.measures import letters_of, usual
from patternmaker.outlines import SHAPES
from patternmaker.outlines.circle import Circle
from patternmaker.units import Unit

SHAPE = pytest.mark.parametrize("kind", list(SHAPES.all.values()))


@SHAPE
@pytest.mark.parametrize("size", [Size(), SMALL])
@pytest.mark.parametrize("braille", [True, False])
def test_picture_keeps_its_room_and_shows_each_letter(kind, size, braille):
    if (seat := usual(kind, Unit.MM)) is None:
        return
    *lines, front = picture(seat, size, braille=braille)
    assert len(lines) <= size.rows
    assert max(map(len, lines)) <= size.columns
    assert max(len(lines) / size.rows, max(map(len, lines)) / size.columns) > 0.9
    assert front.endswith("FRONT")
    seen = "".join(lines)
    assert all(letter in seen for letter in letters_of(kind, seat).values())


@SHAPE
def test_plain_picture_is_of_plain_signs(kind):
    if (seat := usual(kind, Unit.MM)) is not None:
        assert all(line.isascii() for line in picture(seat, braille=False))


def test_circle_is_as_wide_as_it_is_high():
    """A cell is two dots wide and four high: 24 rows are as high as 48 columns are wide."""
    lines = picture(Circle(diameter=400), braille=False)[:-1]
    assert len(lines) == 24
    assert max(map(len, lines)) == 48


def test_circle_looks_like_one():
    assert picture(Circle(diameter=400), Size(12, 6)) == [
        "  ⡠⠖⠊⠉⠉⠑⠲⢄",
        "⢠⠎        ⠱⡄",
        "⡎⡀⡀⡀⡀⡀A⡀⡀⡀⡀⣱",
        "⢇          ⡸",
        "⠘⢆        ⡰⠃",
        "  ⠑⠦⢄⣀⣀⡠⠴⠊",
        "     ↓ FRONT",
    ]


def test_only_one_measurement_is_shown_where_one_is_asked_for():
    kind = SHAPES.all["oval"]
    seat = usual(kind, Unit.MM)
    assert seat is not None
    seen = "".join(picture(seat, only="depth", braille=False)[:-1])
    assert "B" in seen
    assert "A" not in seen


def test_corners_counted_in_rows_show_their_numbers():
    seat = usual(SHAPES.all["polygon"], Unit.MM)
    assert seat is not None
    seen = "".join(picture(seat)[:-1])
    assert [number for number in "1234567" if number in seen] == list("123456")
