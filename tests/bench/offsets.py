"""Parallels of an outline traced by very many arcs: time outside, inside, and where none fits."""

import statistics
import time
from collections.abc import Callable
from functools import partial

from patternmaker.errors import Refusal
from patternmaker.geometry.contour import Contour
from tests.waves import wavy_by

GOAL = 1000.0  # ms for 2,000 arcs
STEPS = (12.0, -12.0, 150.0)


def milliseconds(run: Callable[[], object], rounds: int) -> float:
    """Return the median time of a run."""
    times = []
    for _ in range(rounds):
        begin = time.perf_counter()
        run()
        times.append((time.perf_counter() - begin) * 1000)
    return statistics.median(times)


def refused(contour: Contour, by: float) -> None:
    """Look for the largest step that fits."""
    try:
        contour.grown(by)
    except Refusal:
        return
    raise AssertionError("it was meant to close up")


def report(rounds: int) -> str:
    """Move contours of 200 to 5,000 arcs, and return what each took."""
    lines = []
    for count in (200, 2000, 5000):
        contour = wavy_by(count, 200, 0.1, 7)
        contour.grown(12)  # warm
        took = [milliseconds(partial(contour.grown, by), rounds) for by in STEPS]
        none = milliseconds(partial(refused, contour, -250), max(1, rounds // 5))
        steps = ", ".join(f"{by:+g} mm {ms:.0f} ms" for by, ms in zip(STEPS, took, strict=True))
        lines.append(f"{count} arcs: {steps} (goal: {GOAL:.0f}); too far inside {none:.0f} ms")
    return "\n".join(lines)
