"""The options of ``draft``: taken, or refused with a word on each."""

import pytest

from tests.cli.command import STOOL, ended, job, leaves, refused, summary


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--papre", "A4"], "No such option"),
        (["--paper"], "requires an argument"),
        (["--paper", "foo"], "paper: 'foo' is not known"),
        (["--paper", "A44"], "did you mean 'A4'"),
        (["--paper", "10x10mm"], "paper: a side of"),
        (["--paper", "9x9m"], "paper: a side of"),
        (["--paper", "0x0"], "paper: a side of"),
        (["--paper", "nanxinf"], "paper: 'nanxinf' is not known"),
        (["--paper", ""], "paper: '' is not known"),
        (["--margins", "200"], "margins: they are larger than Letter itself"),
        (["--margins", "1,2"], "margins: '1,2' has 2 lengths"),
        (["--margins", "wide"], "margins: 'wide' is not a length"),
        (["--margins", ""], "margins: '' is not a length"),
        (["--margins", "-1"], "margin left: -1 in is less than 0 in"),
        (["--overlap", "-3"], "overlap: -3 in is less than 0 in"),
        (["--overlap", "500mm"], "is more than a third of the usable width"),
        (["--overlap", "nan"], "overlap: 'nan' is not a length"),
        (["--overlap", "1e999"], "overlap: '1e999' is not a length"),
        (["--join", "glue"], "join: 'glue' is not known; it can be lap, butt, fold"),
        (["--join", "fald"], "did you mean 'fold'"),
        (["--only", "bxing"], "only: 'bxing' is not known; did you mean 'boxing'"),
        (["--only", "sleeve", "--only", "top"], "it can be top, boxing"),
        (["--only", "sleeve", "--only", "cuff"], "2 mistakes"),
        (["--most-sheets", "0"], "--most-sheets"),
        (["--most-sheets", "many"], "--most-sheets"),
        (["--units", "mm"], "No such option"),
        (["twice.toml"], "extra argument"),
    ],
)
def test_wrong_options_are_refused(words, says, tmp_path):
    told = refused(STOOL, "--out", tmp_path / "out", *words)
    assert says in told
    assert leaves(tmp_path) == []


@pytest.mark.parametrize(
    ("paper", "called"),
    [("A4", "A4"), ("a3", "A3"), ("A0", "A0"), ("legal", "Legal"), ("tabloid", "Tabloid"),
     ("600x900mm", "600x900mm"), ("24x36in", "24x36in"), ("24 x 36", "24 x 36 in"),
     ("60 cm x 90 cm", "60 cm x 90 cm")],
)  # fmt: skip
def test_papers_are_taken_by_name_and_by_size(paper, called, tmp_path):
    assert summary(STOOL, tmp_path, "--paper", paper)["sheets"]["paper"] == called


def test_fewer_sheets_than_it_takes_are_refused_with_how_to_allow_them(tmp_path):
    count = summary(STOOL, tmp_path)["sheets"]["count"]
    told = refused(STOOL, "--out", tmp_path / "out", "--most-sheets", str(count - 1))
    assert f"it takes {count} of them, more than {count - 1}" in told
    assert f"--most-sheets {count}" in told
    ended(STOOL, "--out", tmp_path / "out", "--most-sheets", str(count), code=0)


def test_huge_seat_on_tiny_paper_is_refused_before_it_is_laid_out(tmp_path, monkeypatch):
    huge = '{ shape = "rounded rectangle", width = 5000, depth = 5000 }'
    path = job(tmp_path, outline=huge)
    told = refused(path, "--out", tmp_path / "out", "--paper", "135x160mm", "--margins", "5")
    assert "more than 500; choose a larger paper, or allow it with --most-sheets" in told
    assert leaves(tmp_path) == ["job.toml"]


def test_number_of_sheets_that_a_refusal_names_suffices(tmp_path):
    named = refused(STOOL, "--out", tmp_path, "--most-sheets", "1").split()[-1]
    assert int(named) > 1
    ended(STOOL, "--out", tmp_path, "--most-sheets", named, code=0)
