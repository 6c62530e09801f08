"""A trace of 100,000 points, from the bytes of its file to the outline of a seat.

Each is run in a process of its own, so that its peak of memory is its own: that of Python and of
numpy is in it.
"""

import json
import random
import resource
import statistics
import subprocess
import sys
import time
from math import cos, sin, tau

from patternmaker.tracing.sketch import read_sketch
from patternmaker.tracing.trace import Wishes, traced

COUNT = 100_000
WOBBLE = 0.05  # mm, either way, in x and in y
SECONDS, MEGABYTES = 3.0, 300.0  # goals


def points(kind: str) -> bytes:
    """Return an oval of 500 by 360 mm as text: smooth, or each point off its place."""
    chance, wobble = random.Random(1), WOBBLE if kind == "wobbly" else 0.0

    def off() -> float:
        return wobble * (2 * chance.random() - 1)

    angles = (tau * i / COUNT for i in range(COUNT))
    lines = (f"{250 * cos(a) + off():.6f},{180 * sin(a) + off():.6f}" for a in angles)
    return "\n".join(["x (mm),y (mm)", *lines]).encode()


def run(kind: str) -> None:
    """Trace once, and print what it took."""
    content = points(kind)
    begin = time.perf_counter()
    contour = traced(read_sketch("oval.csv", content), Wishes()).contour
    seconds = time.perf_counter() - begin
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(json.dumps([seconds, peak, len(contour.segments)]))


def report(rounds: int) -> str:
    """Trace both kinds a few times, and return what was found."""
    lines = []
    for kind in ("smooth", "wobbly"):
        command = [sys.executable, "-m", "tests.bench.traces", kind]
        found = [
            json.loads(subprocess.run(command, check=True, capture_output=True).stdout)
            for _ in range(max(3, rounds // 3))
        ]
        seconds, peak, segments = (statistics.median(each) for each in zip(*found, strict=True))
        lines.append(
            f"a {kind} trace of {COUNT:,} points: {seconds:.2f} s (goal: {SECONDS:g}), "
            f"{peak:.0f} MB at the most (goal: {MEGABYTES:g}), {segments:g} lines and arcs"
        )
    return "\n".join(lines)


if __name__ == "__main__":
    run(sys.argv[1])
