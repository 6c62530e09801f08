"""A whole draft, against a process that only imports the libraries that it stands on."""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
JOB = ROOT / "samples" / "round-piano-stool.toml"
IMPORTS = "import shapely, reportlab.pdfgen.canvas, svgwrite, typer"
GOAL = 1.5


def seconds(command: list[str], environment: dict[str, str]) -> float:
    begin = time.perf_counter()
    subprocess.run(command, check=True, capture_output=True, cwd=ROOT, env=environment)
    return time.perf_counter() - begin


def installed(cache: str) -> dict[str, str]:
    """Return an environment that keeps compiled modules, as an installed program's are kept."""
    environment = {**os.environ, "PYTHONPYCACHEPREFIX": cache}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    return environment


def report(rounds: int) -> str:
    """Run both in turn, so that both meet the same machine, and return what was found."""
    with tempfile.TemporaryDirectory() as folder, tempfile.TemporaryDirectory() as cache:
        draft = [
            sys.executable,
            "-m",
            "patternmaker",
            "draft",
            str(JOB),
            "--out",
            folder,
            "--quick",
        ]
        imports = [sys.executable, "-c", IMPORTS]
        kept = installed(cache)
        seconds(draft, kept)
        seconds(imports, kept)  # both warm
        pairs = [(seconds(draft, kept), seconds(imports, kept)) for _ in range(rounds)]
    drafts, bare = ([pair[i] for pair in pairs] for i in (0, 1))
    ratio = statistics.median(drafts) / statistics.median(bare)
    return (
        f"a whole draft of {JOB.stem}: median {statistics.median(drafts) * 1000:.0f} ms "
        f"({min(drafts) * 1000:.0f} to {max(drafts) * 1000:.0f})\n"
        f"only imports of its libraries: median {statistics.median(bare) * 1000:.0f} ms "
        f"({min(bare) * 1000:.0f} to {max(bare) * 1000:.0f})\n"
        f"ratio of the medians, {rounds} runs each in turn: {ratio:.2f} (goal: at most {GOAL})"
    )
