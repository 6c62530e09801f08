"""The one check: format, lint, types, the rooms' contract, tests.

Run it as ``python -m tests.check``; it stops at the first that fails. With ``--coverage`` it counts
the lines and branches that the tests pass through, which takes twice as long.
"""

from __future__ import annotations

import subprocess
import sys

SHARED = ("-n", "auto", "--dist", "worksteal")  # among all the processors there are
FIRST = (
    ("ruff", "format", "--check", "."),
    ("ruff", "check", "."),
    ("mypy",),
    ("lint-imports", "--no-cache"),
)
TESTS = (("pytest", *SHARED),)
COUNTED = (
    ("pytest", *SHARED, "--cov", "--cov-report=term:skip-covered", "--ignore=tests/laws"),
    ("pytest", *SHARED, "tests/laws"),  # thousands of draws: counting their lines would treble them
)


def main() -> int:
    """Run each step, and return the exit code of the first that fails."""
    tests = COUNTED if "--coverage" in sys.argv[1:] else TESTS
    for step in (*FIRST, *tests):
        print(f"\n$ {' '.join(step)}", flush=True)
        if code := subprocess.run([_tool(step[0]), *step[1:]], check=False).returncode:
            return code
    return 0


def _tool(name: str) -> str:
    """Return the path of a tool in the environment that runs this."""
    from pathlib import Path

    return str(Path(sys.executable).parent / name)


if __name__ == "__main__":
    sys.exit(main())
