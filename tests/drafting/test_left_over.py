"""A draft says which files beside it are older than it."""

from patternmaker.drafting import Options, draft
from patternmaker.job import load_job
from patternmaker.sheets.papers import stock_of
from tests.paper.samples import SAMPLES

JOB = load_job(SAMPLES / "round-piano-stool.toml")


def test_an_svg_of_an_earlier_draft_is_warned_of(tmp_path):
    stock = stock_of(JOB.unit)
    assert draft(JOB, tmp_path, Options(stock, svg=True, cut_list=True)).warnings == ()
    again = draft(JOB, tmp_path, Options(stock))
    assert [warning.split(" is from ")[0] for warning in again.warnings] == [
        str(tmp_path / "practice-rooms-east-wing.svg"),
        str(tmp_path / "cutlist.csv"),
        str(tmp_path / "sewinglist.csv"),
    ]
