"""Printers are kept from one run to the next, and what is damaged is never dropped unseen."""

import dataclasses
import json
import os
from pathlib import Path

import pytest

from patternmaker.drafting.printers import Printers, settings_folder
from patternmaker.errors import OutputFault, Refusals
from patternmaker.sheets.papers import PAPERS, usual_margins
from patternmaker.sheets.printer import Printer, Sides
from patternmaker.units import Unit

EAST = Printer("east wing", PAPERS["a4"], usual_margins(Unit.MM), Unit.MM,
               Sides(180, 240, 300), Sides(181.1, 239, 300.2))  # fmt: skip
WEST = dataclasses.replace(EAST, name="West Wing", unit=Unit.CM, measured=Sides(179, 241, None))


@pytest.fixture
def place(tmp_path):
    return tmp_path / "settings" / "printers.json"


def kept(place: Path, *printers: Printer) -> Printers:
    for printer in printers:
        Printers.kept(place).with_one(printer)
    return Printers.kept(place)


@pytest.mark.parametrize(
    ("platform", "settings", "folder"),
    [
        ("linux", {}, "/home/me/.config/patternmaker"),
        ("linux", {"XDG_CONFIG_HOME": "/etc/mine"}, "/etc/mine/patternmaker"),
        ("linux", {"XDG_CONFIG_HOME": "mine"}, "/home/me/.config/patternmaker"),
        ("linux", {"XDG_CONFIG_HOME": ""}, "/home/me/.config/patternmaker"),
        ("darwin", {"XDG_CONFIG_HOME": "/etc/mine"},
         "/home/me/Library/Application Support/patternmaker"),
        ("win32", {"APPDATA": "/roaming"}, "/roaming/patternmaker"),
        ("win32", {}, "/home/me/AppData/Roaming/patternmaker"),
    ],
)  # fmt: skip
def test_settings_lie_where_each_platform_has_them(platform, settings, folder):
    """XDG Base Directory Specification 0.8: "If an implementation encounters a relative path ...
    it should consider the path invalid and ignore it"; the others from memory."""
    assert settings_folder(platform, settings, Path("/home/me")).as_posix() == folder


def test_what_is_kept_comes_back_as_it_was(place):
    printers = kept(place, EAST, WEST)
    assert printers.known == {"West Wing": WEST, "east wing": EAST}
    assert not printers.faults


def test_same_printers_are_the_same_bytes_in_whatever_order_they_came(place, tmp_path):
    other = tmp_path / "other.json"
    kept(place, EAST, WEST)
    kept(other, WEST, EAST)
    assert place.read_bytes() == other.read_bytes()


def test_name_is_found_in_small_letters_or_large_and_replaced_so(place):
    assert kept(place, EAST).named(" East  WING ") == EAST
    again = dataclasses.replace(EAST, name="East Wing")
    assert list(kept(place, again).known) == ["East Wing"]


def test_forgotten_printer_is_gone_and_the_others_stay(place):
    kept(place, EAST, WEST).without("EAST WING")
    assert list(Printers.kept(place).known) == ["West Wing"]


def test_unknown_printer_is_told_with_the_nearest(place):
    with pytest.raises(Refusals, match="'est wing' is not known; did you mean 'east wing'"):
        kept(place, EAST).named("est wing")


def test_first_printer_is_told_how_to_be_measured(place):
    with pytest.raises(Refusals, match="none has been measured yet; patternmaker printer --proof"):
        Printers.kept(place).named("east wing")


DAMAGED = {
    "cut off": b'{"format": 1, "printers": {"east wing": {"pap',
    "empty": b"",
    "no list": b'["east wing"]',
    "a number": b"17",
    "no UTF-8": b"\xff\xfe\x00",
    "no format": b'{"printers": {}}',
    "deep": b"[" * 100_000,
}


@pytest.mark.parametrize("content", DAMAGED.values(), ids=DAMAGED)
def test_damaged_file_is_told_and_kept_aside_when_it_is_written_again(place, content):
    place.parent.mkdir()
    place.write_bytes(content)
    printers = Printers.kept(place)
    with pytest.raises(Refusals, match="can't be read from"):
        printers.named("east wing")
    assert place.read_bytes() == content
    aside = printers.with_one(EAST)
    assert aside
    assert aside == place.with_name("printers-damaged-1.json")
    assert aside.read_bytes() == content
    assert Printers.kept(place).known == {"east wing": EAST}


def test_second_damaged_file_does_not_take_the_place_of_the_first(place):
    place.parent.mkdir()
    for content in (b"one", b"two"):
        place.write_bytes(content)
        Printers.kept(place).with_one(EAST)
    asides = [place.with_name(f"printers-damaged-{n}.json").read_bytes() for n in (1, 2)]
    assert asides == [b"one", b"two"]


def spoilt(place: Path, **entry: object) -> Printers:
    """Return two printers, the east wing's entry changed by hand."""
    kept(place, EAST, WEST)
    data = json.loads(place.read_bytes())
    data["printers"]["east wing"] |= entry
    place.write_text(json.dumps(data), encoding="utf-8")
    return Printers.kept(place)


@pytest.mark.parametrize(
    "entry",
    [
        {"measured_mm": None},
        {"measured_mm": {"across": 250, "up": 240, "long": None}},
        {"measured_mm": {"across": "nan", "up": 240, "long": None}},
        {"drawn_mm": {"across": 0, "up": 240, "long": 300}},
        {"units": "ell"},
        {"paper": "A4"},
        {"margins_mm": [1, 2, 3, 4]},
    ],
)
def test_damage_to_one_printer_leaves_the_others_usable(place, entry):
    printers = spoilt(place, **entry)
    assert printers.named("west wing") == WEST
    with pytest.raises(Refusals, match="'east wing' can't be read from"):
        printers.named("east wing")
    before = place.read_bytes()
    aside = printers.without("east wing")
    assert aside
    assert aside.read_bytes() == before
    assert list(Printers.kept(place).known) == ["West Wing"]


def test_file_of_a_later_version_is_left_alone(place):
    place.parent.mkdir()
    place.write_text('{"format": 2, "printers": {}}')
    with pytest.raises(Refusals, match="a later version"):
        Printers.kept(place)


def test_file_with_a_byte_order_mark_is_read(place):
    kept(place, EAST)
    place.write_bytes(b"\xef\xbb\xbf" + place.read_bytes())
    assert Printers.kept(place).named("east wing") == EAST


def test_file_that_is_a_folder_is_a_fault_of_the_disk(place):
    place.mkdir(parents=True)
    with pytest.raises(OutputFault, match="can't read"):
        Printers.kept(place)


def test_folder_that_is_a_file_is_told(tmp_path):
    (tmp_path / "settings").write_text("")
    with pytest.raises(OutputFault, match="can't write into"):
        kept(tmp_path / "settings" / "printers.json", EAST)


@pytest.mark.skipif(os.name == "nt", reason="links need a privilege there")
def test_link_to_a_file_elsewhere_stays_one(place, tmp_path):
    elsewhere = tmp_path / "elsewhere.json"
    kept(elsewhere, WEST)
    place.parent.mkdir()
    place.symlink_to(elsewhere)
    kept(place, EAST)
    assert place.is_symlink()
    assert len(Printers.kept(elsewhere).known) == 2
