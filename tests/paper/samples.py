"""Jobs drafted for the second look: their files and their figures."""

from __future__ import annotations

import tempfile
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from patternmaker.drafting import Options, draft
from patternmaker.drafting.summary import summary
from patternmaker.job import load_job
from patternmaker.job.reading import read_job
from patternmaker.sheets.papers import stock_of
from tests.paper.sheets import Print

if TYPE_CHECKING:
    from patternmaker.job.model import Job
    from patternmaker.pattern.piece import Pattern

SAMPLES = Path(__file__).parents[2] / "samples"
JOBS = ("round-piano-stool", "organ-bench", "music-school")


@dataclass(frozen=True)
class Made:
    """What one draft left."""

    pdf: bytes
    svg: bytes
    figures: dict[str, Any]
    book: Print
    patterns: tuple[Pattern, ...]


@cache
def made(
    job: str, paper: str | None = None, *, whole: bool = True, join: str | None = None
) -> Made:
    """Return the files of a sample, drafted once."""
    return drafted(load_job(SAMPLES / f"{job}.toml"), paper, whole=whole, join=join)


def told(table: dict[str, Any], paper: str | None = None, *, whole: bool = False) -> Made:
    """Return the files of a job written as a table, each piece of it lying as it is drawn."""
    return drafted(read_job(table), paper, whole=whole, effort=0)


def drafted(
    job: Job, paper: str | None, *, whole: bool, join: str | None = None, effort: int = 1
) -> Made:
    """Draft a job into a folder of its own and return what it leaves."""
    stock = stock_of(job.unit, paper, join=join)
    options = Options(stock, whole_strips=whole, svg=True, effort=effort)
    with tempfile.TemporaryDirectory() as folder:
        done = draft(job, Path(folder), options)
        pdf, svg = (path.read_bytes() for path in done.files)
        return Made(pdf, svg, summary(done), Print(pdf), done.drafted.patterns)
