"""The command line: thin commands that read, call, write and report."""

from __future__ import annotations

import os
import sys


def main() -> None:
    """Run the program: exit 0 when done, 2 when the input is refused, 1 on any other fault."""
    try:
        code = _run()
        sys.stdout.flush()
    except BrokenPipeError:  # whoever read the output has stopped
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        code = 1
    except KeyboardInterrupt:
        code = _told("stopped; the files are as they were", 1)
    sys.exit(code)


def _told(message: str, code: int) -> int:
    print(f"patternmaker: {message}", file=sys.stderr)  # noqa: T201
    return code


def _run() -> int:
    import click

    from patternmaker.cli.commands import app
    from patternmaker.errors import OutputFault, Refusals

    try:
        return app(standalone_mode=False) or 0
    except Refusals as refusals:
        return _told(refused(refusals), 2)
    except OutputFault as fault:
        return _told(str(fault), 1)
    except click.exceptions.Abort:
        raise KeyboardInterrupt from None
    except click.exceptions.ClickException as usage:
        usage.show()
        return usage.exit_code
    except (BrokenPipeError, KeyboardInterrupt):
        raise
    except Exception as fault:
        if os.environ.get("PATTERNMAKER_TRACE"):
            raise
        return _told(
            f"a fault of ours: {type(fault).__name__}: {fault}. Please tell us, with the job "
            "file; PATTERNMAKER_TRACE=1 shows where it happened.", 1
        )  # fmt: skip


def refused(refusals: object) -> str:
    """Return the message for a job that holds mistakes: how many, then each on a line."""
    lines = str(refusals).splitlines()
    mistakes = "1 mistake" if len(lines) == 1 else f"{len(lines)} mistakes"
    return f"{mistakes}, nothing was written\n" + "\n".join(f"  {line}" for line in lines)
