"""The check command: what it says, as words and as data, and what it leaves with."""

import json

import pytest

from tests.checking.prints import moved, pattern, pdf, rewritten, sheets, spoilt
from tests.cli.command import SAMPLES, STOOL, run

ORGAN = SAMPLES / "organ-bench.toml"


@pytest.fixture
def printed(tmp_path):
    path = tmp_path / "print.pdf"
    path.write_bytes(pdf("round-piano-stool"))
    return path


@pytest.fixture
def spoilt_print(tmp_path):
    path = tmp_path / "spoilt.pdf"
    change = moved(0, 2 + 2j)
    path.write_bytes(
        spoilt(pdf("round-piano-stool"), lambda w: rewritten(pattern(sheets(w)[0]), change))
    )
    return path


def test_sound_print_is_told_in_words(printed):
    done = run("check", printed)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("Practice rooms, east wing\n9 sheets of Letter among 12 pages")
    assert "Scale: 100.000% across, 100.000% up, 100.000% on the slope" in done.stdout
    assert "Every line is there, and within 0.05 mm of the model" in done.stdout


def test_sound_print_is_told_as_data(printed):
    done = run("check", printed, "--json")
    assert (done.returncode, done.stderr) == (0, "")
    told = json.loads(done.stdout)
    assert (told["as_drafted"], told["faults"], told["sheets"]) == (True, [], 9)
    assert told["largest_mm"] < 0.003
    cut = [line for each in told["pieces"] for line in each["lines"] if line["kind"] == "cut line"]
    assert all(abs(line["drawn_mm"] - line["length_mm"]) < 0.02 for line in cut)
    assert {each["piece"] for each in told["pieces"]} == {
        "top", "boxing", "base template", "dust cover",
    }  # fmt: skip


def test_job_that_it_should_be_of(printed):
    assert run("check", printed, STOOL).returncode == 0
    other = run("check", printed, ORGAN)
    assert other.returncode == 2
    assert "Organ bench: top is not on the sheets as it was drafted" in other.stderr


def test_spoilt_print_is_refused_after_its_report(spoilt_print):
    done = run("check", spoilt_print)
    assert done.returncode == 2
    assert done.stdout.startswith("Practice rooms, east wing\n")
    assert "Every line is there" not in done.stdout
    assert done.stderr.startswith("patternmaker: 1 mistake, do not cut by this print\n")
    assert "mm from the model on sheet" in done.stderr


def test_spoilt_print_is_refused_as_data_too(spoilt_print):
    done = run("check", spoilt_print, "--json")
    assert done.returncode == 2
    told = json.loads(done.stdout)
    assert not told["as_drafted"]
    assert [f"  {fault}" for fault in told["faults"]] == done.stderr.splitlines()[1:]


@pytest.mark.parametrize("options", [(), ("--json",)])
def test_what_is_no_print_is_refused(options):
    done = run("check", STOOL, *options)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr == (
        "patternmaker: 1 mistake, nothing was checked\n"
        "  round-piano-stool.toml: is not a PDF; name the PDF that patternmaker wrote\n"
    )


def test_braces_and_markup_in_names_are_told_as_they_are(tmp_path):
    job = tmp_path / "job.toml"
    text = ORGAN.read_text(encoding="utf-8").replace('"Organ bench"', '"Bench {0} [red] {value}"')
    job.write_text(text, encoding="utf-8")
    assert run("draft", job, "--out", tmp_path).returncode == 0
    assert run("check", tmp_path / "recital-hall.pdf").returncode == 0
    larger = tmp_path / "larger.toml"
    larger.write_text(text.replace("440", "450"), encoding="utf-8")
    done = run("check", tmp_path / "recital-hall.pdf", larger)
    assert done.returncode == 2
    assert "Bench {0} [red] {value}: top is not on the sheets" in done.stderr


@pytest.mark.parametrize("ways", [[], ["--join", "fold"], ["--only", "dust cover"]])
def test_pieces_that_seats_share_are_sound(ways, tmp_path):
    seat = (
        '[[seat]]\nname = "{}"\ncover = {{ style = "boxed", drop = {} }}\n'
        'outline = {{ shape = "circle", diameter = 340 }}\n'
    )
    head = 'name = "Set"\nunits = "mm"\nmaterial = { kind = "woven cloth" }\n'
    path = tmp_path / "set.toml"
    path.write_text(head + seat.format("Low", 75) + seat.format("High", 100))
    assert run("draft", path, "--out", tmp_path, *ways).returncode == 0
    done = run("check", tmp_path / "set.pdf")
    assert (done.returncode, done.stderr) == (0, "")
