"""The command line: thin commands that read, call, write and report."""

from __future__ import annotations

import contextlib
import gc
import io
import os
import signal
import sys

from patternmaker.errors import OutputFault, Refusals

CTRL_C = 128 + 2  # what typer leaves with when it is stopped: 128 + SIGINT, as shells have it
FEW_CYCLES = 100_000  # objects; a run is short, and looking for cycles often slows its start
STOPPED = "stopped; no file was left half written"


def main() -> None:
    """Run the program: exit 0 when done, 2 when the input is refused, 1 on any other fault."""
    gc.set_threshold(FEW_CYCLES)
    _open_streams()
    watched = sys.stderr.isatty()  # there Ctrl-C may also end no more than a search
    for name in ("SIGTERM", "SIGHUP", *(() if watched else ("SIGINT",))):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), _told_to_end)
    code = _run()
    try:
        sys.stdout.flush()
    except OSError:  # whoever read it has stopped, or its disk is full
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        code = code or 1
    sys.exit(code)


def _told_to_end(number: int, frame: object) -> None:
    """Stop as by Ctrl-C, but altogether: what has the number of a signal is not held up."""
    del frame
    raise KeyboardInterrupt(number)


def _open_streams() -> None:
    """Let output go nowhere where there is none, and let no letter stop it."""
    sys.stdout = sys.stdout or io.StringIO()
    sys.stderr = sys.stderr or io.StringIO()
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="backslashreplace")


def _run() -> int:
    try:
        from patternmaker.cli.commands import app

        app()
    except SystemExit as leaving:
        stopped = leaving.code == CTRL_C
        return _told(STOPPED, 1) if stopped else int(leaving.code or 0)
    except KeyboardInterrupt:
        return _told(STOPPED, 1)
    except Refusals as refusals:
        return _told(refused(refusals), 2)
    except (OutputFault, OSError) as fault:
        return _told(str(fault), 1)
    except Exception as fault:
        if os.environ.get("PATTERNMAKER_TRACE"):
            raise
        return _told(
            f"a fault of ours: {type(fault).__name__}: {fault}. Please tell us, with the job "
            "file; PATTERNMAKER_TRACE=1 shows where it happened.", 1
        )  # fmt: skip
    return 0


def _told(message: str, code: int) -> int:
    from patternmaker.cli.tables import plain

    with contextlib.suppress(OSError):  # nobody is listening
        print(f"patternmaker: {plain(message)}", file=sys.stderr)  # noqa: T201
    return code


def refused(refusals: Refusals) -> str:
    """Return the message for a job that holds mistakes: how many, then each on a line."""
    many = len(refusals.mistakes)
    mistakes = "1 mistake" if many == 1 else f"{many} mistakes"
    lines = str(refusals).splitlines()
    return f"{mistakes}, {refusals.outcome}\n" + "\n".join(f"  {line}" for line in lines)
