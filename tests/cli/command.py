"""The program as a person runs it: in a process of its own."""

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

SAMPLES = Path(__file__).parents[2] / "samples"
STOOL = SAMPLES / "round-piano-stool.toml"


def run(*words: str | Path, **settings: str) -> "subprocess.CompletedProcess[str]":
    """Run the program with these words on its command line, and settings in its environment.

    It does not look for fewer sheets unless told to: that has tests of its own.
    """
    told = [*map(str, words)]
    if told[:1] == ["draft"] and "--effort" not in told:
        told.insert(1, "--quick")
    return subprocess.run(
        [sys.executable, "-m", "patternmaker", *told],
        capture_output=True, text=True, encoding="utf-8", errors="replace", check=False,
        env={**os.environ, **settings},
    )  # fmt: skip


def job(
    folder: Path,
    name: str = "Practice rooms",
    seat: str = "Round piano stool",
    outline: str = '{ shape = "circle", diameter = 318 }',
    more: str = "",
) -> Path:
    """Write a small job into a folder and return its path."""
    path = folder / "job.toml"
    path.write_text(
        f'name = "{name}"\nunits = "mm"\n[[seat]]\nname = "{seat}"\noutline = {outline}\n'
        f'cover = {{ style = "boxed", drop = 70 }}\n{more}',
        encoding="utf-8",
    )
    return path


def ended(*words: str | Path, code: int) -> "subprocess.CompletedProcess[str]":
    """Draft, and check that it ended with this code and in words of its own."""
    done = run("draft", *words)
    assert "Traceback" not in done.stderr
    assert "fault of ours" not in done.stderr
    assert done.returncode == code, done.stderr
    return done


def refused(*words: str | Path) -> str:
    """Draft, and return what it says when it refuses to."""
    done = ended(*words, code=2)
    assert done.stdout == ""
    return done.stderr


def summary(path: Path, folder: Path, *more: str) -> Any:
    """Draft, and return the JSON that is all it says."""
    done = ended(path, "--out", folder, "--json", *more, code=0)
    assert done.stderr == ""
    return json.loads(done.stdout)


def leaves(folder: Path) -> list[str]:
    """Return the names of everything in a folder."""
    return sorted(path.name for path in folder.iterdir())
