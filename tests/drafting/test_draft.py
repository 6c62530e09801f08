"""A job drafted whole: its files, its summary, and what it is warned of."""

from pathlib import Path

import pytest

from patternmaker.drafting import Options, draft
from patternmaker.drafting.summary import summary
from patternmaker.errors import OutputFault, Refusals
from patternmaker.job import Job, load_job
from patternmaker.sheets.papers import stock_of

SAMPLES = Path(__file__).parents[2] / "samples"


@pytest.fixture
def stool() -> Job:
    return load_job(SAMPLES / "round-piano-stool.toml")


def options(job: Job, **wishes: object) -> Options:
    return Options(stock_of(job.unit), **wishes)  # type: ignore[arg-type]


def test_files_are_those_asked_for(stool, tmp_path):
    asked = options(stool, svg=True, cut_list=True)
    names = [path.name for path in draft(stool, tmp_path, asked).files]
    assert names == [
        "practice-rooms-east-wing.pdf", "practice-rooms-east-wing.svg", "cutlist.csv",
        "sewinglist.csv",
    ]  # fmt: skip
    assert all((tmp_path / name).stat().st_size for name in names)


def test_progress_counts_every_sheet(stool, tmp_path):
    seen: list[tuple[int, int]] = []
    drafted = draft(stool, tmp_path, options(stool, progress=lambda *far: seen.append(far)))
    count = drafted.sheets.count
    assert seen == [(i, count) for i in range(1, count + 1)]


def test_too_many_sheets_leave_the_earlier_files(stool, tmp_path):
    draft(stool, tmp_path, options(stool))
    earlier = {path: path.read_bytes() for path in tmp_path.iterdir()}
    with pytest.raises(Refusals):
        draft(stool, tmp_path, options(stool, most_sheets=1, svg=True))
    assert {path: path.read_bytes() for path in tmp_path.iterdir()} == earlier


@pytest.mark.parametrize("fault", [KeyboardInterrupt, MemoryError, ZeroDivisionError])
def test_fault_while_a_file_is_made_leaves_the_earlier_files(fault, stool, tmp_path, monkeypatch):
    draft(stool, tmp_path, options(stool))
    earlier = {path: path.read_bytes() for path in tmp_path.iterdir()}

    def broken(*_: object) -> bytes:
        raise fault

    monkeypatch.setattr("patternmaker.cutlist.csv.csv_of", broken)
    with pytest.raises(fault):
        draft(stool, tmp_path, options(stool, cut_list=True))
    assert {path: path.read_bytes() for path in tmp_path.iterdir()} == earlier


def test_folder_that_is_a_file_is_told(stool, tmp_path):
    (tmp_path / "out").write_bytes(b"mine")
    with pytest.raises(OutputFault, match="can't write into"):
        draft(stool, tmp_path / "out", options(stool))
    assert (tmp_path / "out").read_bytes() == b"mine"


def test_letters_that_cannot_be_printed_are_warned_of_once_for_each_name(tmp_path):
    path = tmp_path / "job.toml"
    path.write_text(
        'name = "椅"\nunits = "mm"\ndate = "夏"\n[material]\nname = "革"\n[[seat]]\nname = "椅"\n'
        'outline = { shape = "circle", diameter = 318 }\n'
        'cover = { style = "boxed", drop = 70 }\n',
        encoding="utf-8",
    )
    job = load_job(path)
    warnings = draft(job, tmp_path / "out", options(job)).warnings
    assert [warning[:3] for warning in warnings] == ["'椅'", "'夏'", "'革'"]


def test_summary_names_the_files_where_they_are(stool, tmp_path):
    drafted = draft(stool, tmp_path, options(stool))
    assert summary(drafted)["files"] == [str(tmp_path / "practice-rooms-east-wing.pdf")]


def test_summary_counts_what_is_drawn(stool, tmp_path):
    drafted = draft(stool, tmp_path, options(stool))
    (pattern,) = drafted.drafted.patterns
    (seat,) = summary(drafted)["seats"]
    assert [piece["notches"] for piece in seat["pieces"]] == [
        len(piece.notches) for piece in pattern.pieces
    ]
    assert [piece["cut_length_mm"] for piece in seat["pieces"]] == [
        piece.cut.length for piece in pattern.pieces
    ]
