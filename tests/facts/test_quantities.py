"""Each kind of value reads what fits it and refuses the rest."""

import pytest

from patternmaker.errors import Refusal
from patternmaker.facts import (
    ANGLE,
    COUNT,
    FILE,
    LENGTH,
    NAMES,
    RATE,
    STITCH,
    SWITCH,
    TEXT,
    Found,
    Rows,
    quantities,
)
from patternmaker.units import Unit


@pytest.mark.parametrize(
    ("quantity", "raw", "value"),
    [
        (LENGTH, "1/2", 12.7), (RATE, "2.5%", 0.025), (COUNT, 6, 6), (TEXT, "  Organ  bench ",
        "Organ  bench"), (SWITCH, True, True),
    ],
)  # fmt: skip
def test_reads_what_fits(quantity, raw, value):
    assert quantity.read(raw, Unit.IN) == value


@pytest.mark.parametrize(
    ("quantity", "raw", "says"),
    [
        (COUNT, True, "true is not a whole number"), (COUNT, 1.0, "1.0 is not a whole number"),
        (COUNT, "6", "'6' is not a whole number"), (TEXT, 6, "6 is not text"),
        pytest.param(TEXT, 10**5000, "a number of thousands of digits is not text", id="huge"),
        (TEXT, "a\nb", r"control character \(U\+000A\)"),
        (TEXT, "a\u202eb", r"control character \(U\+202E\)"),
        (SWITCH, 1, "1 is not true or false"), (SWITCH, "yes", "'yes' is not true or false"),
        (SWITCH, "n" * 100, "…"),
    ],
)  # fmt: skip
def test_refuses_what_does_not_fit(quantity, raw, says):
    with pytest.raises(Refusal, match=says):
        quantity.read(raw, Unit.MM)


@pytest.mark.parametrize(
    ("quantity", "value", "shown"),
    [
        (LENGTH, 12.7, "1/2 in"), (RATE, 0.025, "2.5 %"), (COUNT, 12000, "12,000"),
        pytest.param(COUNT, -(10**5000), "a number of more than 15 digits", id="huge"),
        (TEXT, "oak", "'oak'"),
        (SWITCH, True, "true"),
    ],
)  # fmt: skip
def test_shows_it_as_the_reader_knows_it(quantity, value, shown):
    assert quantity.show(value, Unit.IN) == shown


PAIRS = Rows(("across", "along", "radius"), needed=2)


@pytest.mark.parametrize(
    ("raw", "degrees"), [(90, 90.0), ("22.5", 22.5), ("45°", 45.0), (" 45 ° ", 45.0), (-3.5, -3.5)]
)
def test_angle_is_read_with_its_sign_or_without(raw, degrees):
    assert ANGLE.read(raw, Unit.IN) == degrees


@pytest.mark.parametrize("raw", ["a quarter", "", "°", True, None, [90], float("nan"), "inf",
                                 10**400])  # fmt: skip
def test_anything_else_is_no_angle(raw):
    with pytest.raises(Refusal, match=r"is not an angle; write it like 90$"):
        ANGLE.read(raw, Unit.MM)


def test_angle_is_shown_in_degrees():
    assert ANGLE.show(22.5, Unit.IN) == "22.5°"


def test_rows_are_read_in_the_unit_of_the_job_and_held_in_millimetres():
    read = PAIRS.read([["1/2", "20 mm"], [1, 2, 0]], Unit.IN)
    assert read == ((12.7, 20.0), (25.4, 50.8, 0.0))


def test_row_of_one_figure_needs_no_brackets_of_its_own():
    assert Rows(("at",), needed=1).read([100, [200]], Unit.MM) == ((100.0,), (200.0,))


@pytest.mark.parametrize(
    ("raw", "told"),
    [
        ("all", ("'all' is not a list of rows; write each row as [across, along], and radius where "
         "you like")),
        ({}, ("{} is not a list of rows; write each row as [across, along], and radius where you "
         "like")),
        ([[1, 2], [3]], ("row 2: holds one figure; write each row as [across, along], and radius "
         "where you like")),
        ([[1, 2, 3, 4]], ("row 1: holds 4 figures; write each row as [across, along], and radius "
         "where you like")),
        ([[]], ("row 1: holds 0 figures; write each row as [across, along], and radius where you "
         "like")),
    ],
)  # fmt: skip
def test_rows_of_another_form_are_refused_with_the_right_one(raw, told):
    with pytest.raises(Refusal) as refused:
        PAIRS.read(raw, Unit.MM)
    assert str(refused.value) == told


def test_cell_that_is_no_length_is_refused_with_its_place():
    with pytest.raises(Refusal, match=r"^row 2, along: 'far' is not a length; "):
        PAIRS.read([[0, 0], [1, "far"]], Unit.MM)


def test_rows_are_shown_as_a_job_file_writes_them():
    assert PAIRS.show(((12.7, 25.4), (0.0, 304.8, 3.0)), Unit.MM) == (
        "[[12.7 mm, 25.4 mm], [0 mm, 304.8 mm, 3 mm]]"
    )


def test_file_is_found_beside_the_job(tmp_path):
    (tmp_path / "seat.csv").write_bytes(b"0,0")
    name = FILE.read("seat.csv", Unit.MM)
    assert FILE.opened(name, tmp_path) == Found("seat.csv", b"0,0")
    assert FILE.opened(str(tmp_path / "seat.csv"), None).content == b"0,0"


@pytest.mark.parametrize(
    ("name", "told"),
    [("missing.svg", "is not there; check the name and the folder"),
     (".", "is a folder; name the drawing in it"),
     ("/dev/null", "is not an ordinary file; save the drawing as a file and name that"),
     ("n" * 300, "can't be read: File name too long; check its name and rights"),
     ("a\0b", "can't be read: it has no such name; check its name and rights")],
)  # fmt: skip
def test_file_that_is_none_is_refused(tmp_path, name, told):
    with pytest.raises(Refusal) as refused:
        FILE.opened(name, tmp_path)
    assert str(refused.value) == told


def test_file_too_large_is_refused_before_it_is_read(tmp_path, monkeypatch):
    monkeypatch.setattr(quantities, "LARGEST_FILE", 4)
    (tmp_path / "seat.csv").write_bytes(b"12345")
    with pytest.raises(Refusal, match=r"^has 5 bytes, more than 4; is it a drawing\?$"):
        FILE.opened("seat.csv", tmp_path)


def test_file_is_shown_by_its_name():
    assert FILE.show(Found("seat.csv", b"0,0"), None) == "'seat.csv'"
    assert FILE.show("seat.csv", None) == "'seat.csv'"


@pytest.mark.parametrize(
    ("text", "mm"),
    [("8 per inch", 3.175), ("5 per in", 5.08), ("4 per cm", 2.5), ("40 per 10 cm", 2.5),
     ("1/8", 3.175), ("3 mm", 3.0), (0.125, 3.175)],
)  # fmt: skip
def test_stitch_is_a_length_or_how_many_go_on_one(text, mm):
    assert STITCH.read(text, Unit.IN) == pytest.approx(mm)


@pytest.mark.parametrize("text", ["8 per", "per inch", "none per inch", "0 per inch", "8 per oak"])
def test_stitch_that_is_none_is_refused(text):
    with pytest.raises(Refusal, match="is not the length of a stitch"):
        STITCH.read(text, Unit.IN)


def test_stitch_is_shown_by_its_length():
    """As a limit it must read as what is less and what is more."""
    assert STITCH.show(3.175, Unit.IN) == "1/8 in (8 per inch)"
    assert STITCH.show(4.5, Unit.MM) == "4.5 mm"


def test_names_are_read_from_a_list():
    assert NAMES.read(["top", " dust cover "], Unit.MM) == ("top", "dust cover")
    assert NAMES.show(("top", "dust cover"), None) == "['top', 'dust cover']"


@pytest.mark.parametrize(("raw", "mend"), [("top", "write it as ['top']"), (3, "[...]")])
def test_names_that_are_no_list_are_refused(raw, mend):
    with pytest.raises(Refusal, match="is not a list of names") as refused:
        NAMES.read(raw, Unit.MM)
    assert mend in refused.value.told()
