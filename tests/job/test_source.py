"""Whatever lies under the name of a job file is either read or refused in words."""

import os
import sys
from pathlib import Path

import pytest

from patternmaker.errors import Refusals
from patternmaker.job import load_job
from patternmaker.job.source import LARGEST, LONGEST_LINE

GOOD = b"""name  = "Practice rooms"
units = "mm"
[[seat]]
name    = "Stool"
outline = { shape = "circle", diameter = 318 }
cover   = { style = "boxed", drop = 70 }
"""
SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def told(path: Path) -> str:
    with pytest.raises(Refusals) as refused:
        load_job(path)
    return str(refused.value)


def told_of(content: bytes, folder: Path) -> str:
    path = folder / "job.toml"
    path.write_bytes(content)
    return told(path)


@pytest.mark.parametrize("path", SAMPLES, ids=[path.stem for path in SAMPLES])
def test_sample_is_read(path):
    assert load_job(path).seats


def test_lines_may_end_as_windows_ends_them(tmp_path):
    (tmp_path / "job.toml").write_bytes(GOOD.replace(b"\n", b"\r\n"))
    assert load_job(tmp_path / "job.toml").name == "Practice rooms"


def test_folder_is_refused(tmp_path):
    assert told(tmp_path) == f"{tmp_path.name}: is a folder; name the job file in it"


def test_missing_file_is_refused(tmp_path):
    assert told(tmp_path / "job.toml") == (
        "job.toml: is not there; check the name and the folder"
    )  # fmt: skip


def test_path_through_a_file_is_refused(tmp_path):
    (tmp_path / "job.toml").write_bytes(GOOD)
    assert told(tmp_path / "job.toml" / "x") == (
        "x: can't be read: Not a directory; check its name and rights"
    )


def test_name_that_no_disk_takes_is_refused():
    assert (
        told(Path("a\0b")) == "a?b: can't be read: it has no such name; check its name and rights"
    )
    assert "can't be read: File name too long" in told(Path("x" * 5000))


def test_endless_name_is_cut_in_the_message():
    assert len(told(Path("x" * 5000))) < 200


def test_name_with_braces_and_control_characters_is_told_safely(tmp_path):
    assert told(tmp_path / "{x}\x1b[2J.toml") == (
        "(x)?[2J.toml: is not there; check the name and the folder"
    )


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="there are no pipes with names here")
def test_pipe_is_refused_without_waiting_for_it(tmp_path):
    os.mkfifo(tmp_path / "job.toml")
    assert told(tmp_path / "job.toml").startswith("job.toml: is not an ordinary file")


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="there is no such device here")
@pytest.mark.parametrize("device", ["zero", "null", "full"])
def test_device_is_refused(device):
    assert told(Path("/dev") / device).startswith(f"{device}: is not an ordinary file")


def test_gigabyte_is_refused_by_its_size(tmp_path):
    path = tmp_path / "job.toml"
    with path.open("wb") as file:
        file.truncate(2**30)
    assert told(path) == (
        "job.toml: has 1,073,741,824 bytes, more than 1,000,000; is it a job file?"
    )  # fmt: skip


def test_file_that_holds_more_than_it_says_is_refused(tmp_path, monkeypatch):
    path = tmp_path / "job.toml"
    path.write_bytes(GOOD + b"#" * (LARGEST + 1))
    small = os.stat_result((0o100644, *[0] * 9))
    monkeypatch.setattr(Path, "stat", lambda self: small)
    assert told(path) == "job.toml: has more than 1,000,000 bytes; is it a job file?"


@pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() == 0, reason="the administrator may read everything"
)
def test_file_without_rights_is_refused(tmp_path):
    path = tmp_path / "job.toml"
    path.write_bytes(GOOD)
    path.chmod(0)
    assert told(path).startswith("job.toml: can't be read: Permission denied")


@pytest.mark.parametrize("mark", [b"\xef\xbb\xbf", b"\xff\xfe", b"\xfe\xff"])
def test_byte_order_mark_is_refused(mark, tmp_path):
    assert "byte order mark" in told_of(mark + GOOD, tmp_path)


def test_line_that_is_not_utf_8_is_named(tmp_path):
    assert told_of(b'name = "x"\nunits = "\xfc"', tmp_path) == (
        "job.toml: is not UTF-8 text (line 2, byte 20); save it as plain UTF-8"
    )


def test_broken_toml_is_told_with_line_and_column(tmp_path):
    assert "(at line 2, column 9)" in told_of(b'name = "x"\nunits = \n', tmp_path)


def test_braces_in_broken_toml_are_told_safely(tmp_path):
    assert "is broken TOML" in told_of(b"a = {x}\n", tmp_path)


@pytest.mark.parametrize("opening", [b"[", b"{a="])
def test_brackets_nested_too_deep_are_refused(opening, tmp_path):
    assert told_of(b"name = " + opening * 5000, tmp_path).startswith("job.toml: is nested too deep")


def test_dotted_keys_nested_too_deep_are_refused(tmp_path):
    assert told_of(b"name" + b".a" * 5000 + b" = 1", tmp_path).startswith(
        "job.toml: is nested too deep"
    )


def test_tables_as_deep_as_a_job_takes_are_read(tmp_path):
    own = b'[seat.material.boxing]\nkind = "vinyl"\n'
    (tmp_path / "job.toml").write_bytes(GOOD + own)
    assert load_job(tmp_path / "job.toml").seats[0].brief.material("boxing").kind == "vinyl"


def test_endless_line_is_refused_before_it_is_parsed(tmp_path):
    line = b"# " + b"o" * LONGEST_LINE
    assert told_of(GOOD + line, tmp_path) == (
        "job.toml: is too long in line 7: 20,002 letters; keep each line under 20,000"
    )


@pytest.mark.parametrize("digits", [400, 4000, sys.get_int_max_str_digits() + 1])
def test_numbers_of_any_length_are_refused_in_few_words(digits, tmp_path):
    message = told_of(GOOD.replace(b"318", b"9" * digits), tmp_path)
    assert len(message) < 300
    assert message.count("\n") == 0


def test_nothing_at_all_is_refused(tmp_path):
    assert told_of(b"", tmp_path).splitlines() == [
        "name: is missing; give a name for the job, which its files take",
        "units: is missing; give the unit of every bare number: mm, cm, in",
        "seat: there is none; add one under [[seat]]",
    ]
