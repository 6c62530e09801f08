"""Every job in samples/wrong is refused, with each of the messages that it holds itself."""

from pathlib import Path

import pytest

from patternmaker.errors import Refusals
from patternmaker.job import load_job

WRONG = sorted((Path(__file__).parents[2] / "samples" / "wrong").glob("*.toml"))
MARK = "# refused: "


def expected(path: Path) -> list[str]:
    lines = path.read_text(encoding="utf-8-sig", errors="replace").splitlines()
    return [line.removeprefix(MARK) for line in lines if line.startswith(MARK)]


def test_there_are_many_ways_to_be_wrong():
    assert len(WRONG) >= 25


@pytest.mark.parametrize("path", WRONG, ids=[path.stem for path in WRONG])
def test_wrong_sample_is_refused_with_exactly_its_mistakes(path):
    with pytest.raises(Refusals) as refused:
        load_job(path)
    told = str(refused.value).splitlines()
    wanted = expected(path)
    assert wanted
    assert [line[: len(start)] for line, start in zip(told, wanted, strict=False)] == wanted
    assert len(told) == len(wanted) == len(refused.value.mistakes)
