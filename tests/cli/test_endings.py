"""However the program is cut off, it ends in words, and leaves no half file."""

import json
import os
import shlex
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.command import SAMPLES, STOOL, job, leaves, run

pty = pytest.importorskip("pty", reason="these are endings of a POSIX shell")

DRAFT = f"{shlex.quote(sys.executable)} -m patternmaker draft {shlex.quote(str(STOOL))}"
WRONG = SAMPLES / "wrong" / "negative.toml"


def shell(command: str) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(
        ["/bin/bash", "-c", command], capture_output=True, text=True, check=False
    )  # fmt: skip


@pytest.mark.parametrize("report", ["", "--json"])
def test_closed_pipe_ends_quietly(report, tmp_path):
    done = shell(f"{DRAFT} --out {tmp_path} {report} | head -c 0; echo ${{PIPESTATUS[0]}}")
    assert done.stderr == ""
    assert done.stdout in {"0\n", "1\n"}
    assert leaves(tmp_path) == ["practice-rooms-east-wing.pdf"]


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="there is no full device here")
def test_report_onto_a_full_disk_is_told(tmp_path):
    done = shell(f"{DRAFT} --out {tmp_path} > /dev/full")
    assert done.returncode == 1
    assert done.stderr == (
        "patternmaker: the work is done, but its report can't be written: No space left on device\n"
    )
    assert leaves(tmp_path) == ["practice-rooms-east-wing.pdf"]


@pytest.mark.parametrize("closed", [">&-", "2>&-", ">&- 2>&-", "<&-"])
def test_streams_that_are_closed_change_nothing(closed, tmp_path):
    done = shell(f"{DRAFT} --out {tmp_path} {closed}")
    assert (done.returncode, done.stderr) == (0, "")
    assert leaves(tmp_path) == ["practice-rooms-east-wing.pdf"]


def test_refusal_that_nobody_hears_is_still_one():
    assert run("draft", WRONG).returncode == 2
    done = shell(f"{DRAFT.replace(str(STOOL), str(WRONG))} 2>&-")
    assert (done.returncode, done.stdout) == (2, "")


def test_terminal_without_the_letters_gets_their_numbers(tmp_path):
    path = job(tmp_path, "Music 椅子")
    done = run("draft", path, "--out", tmp_path, PYTHONIOENCODING="cp1252")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith(r"Music \u6905\u5b50")


def test_json_is_whole_whatever_letters_the_terminal_has(tmp_path):
    path = job(tmp_path, "Music 椅子")
    done = run("draft", path, "--out", tmp_path, "--json", PYTHONIOENCODING="cp1252")
    assert json.loads(done.stdout)["job"] == "Music 椅子"


def test_folder_that_a_terminal_would_obey_is_shown_with_question_marks(tmp_path):
    done = run("draft", STOOL, "--out", tmp_path / "a\x1b[2Jb")
    assert done.returncode == 0
    assert f"{tmp_path}/a?[2Jb/practice-rooms-east-wing.pdf" in done.stdout
    assert "\x1b" not in done.stdout


def test_fault_of_ours_is_told_in_a_line_and_shown_whole_when_asked_for(tmp_path):
    breaking = (
        "import sys, patternmaker.job as job, patternmaker.cli as cli\n"
        "def load_job(path): raise ZeroDivisionError('by none')\n"
        "job.load_job = load_job\n"
        "sys.argv = ['patternmaker', 'draft', 'x.toml']\n"
        "cli.main()\n"
    )
    words = [sys.executable, "-c", breaking]
    done = subprocess.run(words, capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert done.stderr.startswith("patternmaker: a fault of ours: ZeroDivisionError: by none.")
    assert done.stderr.count("\n") == 1
    shown = subprocess.run(
        words, capture_output=True, text=True, check=False,
        env={**os.environ, "PATTERNMAKER_TRACE": "1"},
    )  # fmt: skip
    assert "Traceback" in shown.stderr


def test_stopped_in_the_midst_of_its_sheets_it_says_so_and_leaves_nothing(tmp_path):
    seats = "".join(
        f'[[seat]]\nname = "Bench {i}"\ncover = {{ style = "boxed", drop = 500 }}\n'
        'outline = { shape = "rounded rectangle", width = 4900, depth = 4900 }\n'
        for i in range(10)
    )
    path = tmp_path / "job.toml"
    path.write_text(f'name = "Hall"\nunits = "mm"\n{seats}')
    out = tmp_path / "out"
    out.mkdir()
    (out / "hall.pdf").write_bytes(b"the earlier one")
    ours, theirs = pty.openpty()
    draft = subprocess.Popen(
        [sys.executable, "-m", "patternmaker", "draft", path, "--out", out,
         "--most-sheets", "1000000", "--quick"],
        stdout=subprocess.PIPE, stderr=theirs,
    )  # fmt: skip
    os.close(theirs)
    heard = b""
    while b"sheet " not in heard:  # it is writing them now
        heard += os.read(ours, 1000)  # fails once the program has ended
    draft.send_signal(signal.SIGINT)
    try:
        while more := os.read(ours, 1000):
            heard += more
    except OSError:  # the other end is closed
        pass
    os.close(ours)
    said, _ = draft.communicate()
    assert draft.returncode == 1
    assert said == b""
    assert b"patternmaker: stopped; no file was left half written" in heard
    assert b"Traceback" not in heard
    assert leaves(out) == ["hall.pdf"]
    assert (out / "hall.pdf").read_bytes() == b"the earlier one"
