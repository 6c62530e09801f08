"""How many sheets thirty jobs take: by the search, each piece alone, and at least."""

import statistics
import time
from dataclasses import dataclass

from patternmaker.cutlist.rows import Drafted
from patternmaker.drawing.prints import Print
from patternmaker.job import load_job
from patternmaker.job.reading import read_job
from patternmaker.sheets.arranging import Arrangement, alone, arranged
from patternmaker.sheets.book import prints_of
from patternmaker.sheets.papers import Stock, stock_of
from tests.bench.mixed import JOBS, SAMPLES, Mixed

LESS, NEAR, FIRST, WHOLE = 0.25, 1.25, 1.0, 3.0  # goals; the last two in seconds of processor time
EFFORT = 10


@dataclass(frozen=True)
class Run:
    """What one job took."""

    name: str
    prints: int
    alone: int
    first: int
    found: int
    fewest: int
    first_seconds: float
    seconds: float


def drafted(mixed: Mixed) -> tuple[list[Print], Stock]:
    """Return the prints of a job, and what they are printed on."""
    made = mixed.job
    job = load_job(SAMPLES / f"{made}.toml") if isinstance(made, str) else read_job(made)
    patterns = Drafted(job, tuple(seat.pattern() for seat in job.seats))
    return list(prints_of(patterns, whole=mixed.whole)), stock_of(job.unit, mixed.paper)


def run(mixed: Mixed, effort: int) -> Run:
    """Arrange a job twice, and return what it took."""
    prints, stock = drafted(mixed)
    begin = time.process_time()
    first = arranged(prints, stock, 10_000)
    between = time.process_time()
    found = arranged(prints, stock, 10_000, effort)
    end = time.process_time()
    assert _figures(found) == _figures(arranged(prints, stock, 10_000, effort)), (
        "not the same twice"
    )
    single = sum(len(plate.sheets) for plate in alone(prints, stock))
    assert found.fewest <= found.count <= single
    return Run(mixed.name, len(prints), single, first.count, found.count, found.fewest,
               between - begin, end - between)  # fmt: skip


def _figures(found: Arrangement) -> list[object]:
    return [(plate.sheets, [each.shape.bounds for each in plate.prints]) for plate in found.plates]


def report(effort: int = EFFORT) -> str:
    """Arrange all jobs, and return a table."""
    lines = [f"{'job':34} prints alone first found least  /least  -alone  first s  whole s"]
    runs = []
    for mixed in JOBS:
        runs.append(each := run(mixed, effort))
        near, less = each.found / each.fewest, 1 - each.found / each.alone
        lines.append(
            f"{each.name:34} {each.prints:6} {each.alone:5} {each.first:5} {each.found:5} "
            f"{each.fewest:5} {near:7.2f} {less:7.0%} {each.first_seconds:8.2f} {each.seconds:8.2f}"
        )
    near = statistics.mean(each.found / each.fewest for each in runs)
    less = statistics.mean(1 - each.found / each.alone for each in runs)
    first, whole = max(r.first_seconds for r in runs), max(r.seconds for r in runs)
    lines.append(
        f"mean of {len(runs)}: {near:.3f} times the least (goal: {NEAR}), "
        f"{less:.1%} fewer than alone (goal: {LESS:.0%})\n"
        f"longest: first {first:.2f} s (goal: {FIRST}), "
        f"whole {whole:.2f} s (goal: {WHOLE}) of processor time"
    )
    return "\n".join(lines)


if __name__ == "__main__":
    print(report())
