"""The command line: thin commands that read, call, write and report."""

from __future__ import annotations

import os
import sys

from patternmaker.errors import OutputFault, Refusals


def main() -> None:
    """Run the program: exit 0 when done, 2 when the input is refused, 1 on any other fault."""
    try:
        _run()
    except BrokenPipeError:  # whoever read the output has stopped
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(1)


def _run() -> None:
    from patternmaker.cli.commands import app

    try:
        try:
            app()
        finally:
            sys.stdout.flush()
    except Refusals as refusals:
        _leave(refused(refusals), 2)
    except OutputFault as fault:
        _leave(str(fault), 1)
    except KeyboardInterrupt:
        _leave("stopped; the files are as they were", 1)
    except BrokenPipeError:
        raise
    except Exception as fault:
        if os.environ.get("PATTERNMAKER_TRACE"):
            raise
        _leave(
            f"a fault of ours: {type(fault).__name__}: {fault}. Please tell us, with the job "
            "file; PATTERNMAKER_TRACE=1 shows where it happened.", 1
        )  # fmt: skip


def _leave(message: str, code: int) -> None:
    print(f"patternmaker: {message}", file=sys.stderr)  # noqa: T201
    sys.exit(code)


def refused(refusals: Refusals) -> str:
    """Return the message for a job that holds mistakes: how many, then each on a line."""
    lines = str(refusals).splitlines()
    mistakes = "1 mistake" if len(lines) == 1 else f"{len(lines)} mistakes"
    return f"{mistakes}, nothing was written\n" + "\n".join(f"  {line}" for line in lines)
