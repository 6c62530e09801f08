"""A pattern on very many sheets: time and bytes for each beyond those of a small one."""

import math
import statistics
import time
from dataclasses import dataclass

from patternmaker.cutlist.rows import Drafted
from patternmaker.job.reading import read_job
from patternmaker.sheets.book import laid_out, written
from patternmaker.sheets.papers import Margins, Paper, Stock

MS, BYTES = 0.6, 1000.0  # goals, for each sheet
STOCK = Stock(Paper("180x180mm", 180, 180), Margins(10, 10, 10, 10), overlap=10)
STEP = 150.0  # mm of pattern that each further sheet shows, of its 160


@dataclass(frozen=True)
class Run:
    """What one job took."""

    sheets: int
    milliseconds: float
    size: int


def drafted(sheets: int) -> Drafted:
    """Return a job of one seat that takes about so many sheets.

    Top, base template and dust cover take a third each; the boxing is printed as its ends.
    """
    side = STEP * math.sqrt(sheets / 3)
    outline = {"shape": "rounded rectangle", "width": side, "depth": side, "corner": 20}
    job = read_job({
        "name": "Bench", "units": "mm", "material": {"kind": "woven cloth"},
        "seat": [{"name": "Large", "outline": outline, "cover": {"style": "boxed", "drop": 75}}],
    })  # fmt: skip
    return Drafted(job, tuple(seat.pattern() for seat in job.seats))


def run(sheets: int, rounds: int) -> Run:
    """Lay out and write a job so often, and return its median time."""
    job = drafted(sheets)
    times = []
    for _ in range(rounds):
        begin = time.perf_counter()
        laid = laid_out(job, STOCK, whole=False, most_sheets=100_000)
        content = written(laid, lambda done, whole: None)
        times.append((time.perf_counter() - begin) * 1000)
    return Run(laid.count, statistics.median(times), len(content))


def report(sheets: int, rounds: int) -> str:
    """Run a small job and a large one, and return what each further sheet took."""
    run(3, 1)  # warm
    few, many = run(3, rounds), run(sheets, max(3, rounds // 3))
    more = many.sheets - few.sheets
    each_ms = (many.milliseconds - few.milliseconds) / more
    each_bytes = (many.size - few.size) / more
    return (
        f"{few.sheets} sheets: {few.milliseconds:.0f} ms, {few.size:,} bytes\n"
        f"{many.sheets} sheets: {many.milliseconds:.0f} ms, {many.size:,} bytes\n"
        f"each further sheet: {each_ms:.2f} ms (goal: {MS}), "
        f"{each_bytes:.0f} bytes (goal: {BYTES:.0f}); layout and bookmarks included"
    )
