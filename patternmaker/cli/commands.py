"""The commands."""

from __future__ import annotations

import json as json_format
import sys
from pathlib import Path
from typing import Annotated

import typer

import patternmaker
from patternmaker.errors import OutputFault
from patternmaker.units import Unit

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="Full-scale, sew-ready upholstery patterns from a few tape measurements.",
)


def _version(asked: bool) -> None:  # noqa: FBT001
    if asked:
        typer.echo(f"patternmaker {patternmaker.__version__}")
        raise typer.Exit


@app.callback()
def _program(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Say which it is.")
    ] = False,
) -> None:
    del version


@app.command()
def draft(
    job: Annotated[Path, typer.Argument(help="The job file (TOML).")],
    out: Annotated[
        Path | None, typer.Option(help="Folder for the files; named after the job if not given.")
    ] = None,
    paper: Annotated[
        str | None,
        typer.Option(help="A4 to A0, Letter, Legal, Tabloid, or a size such as 600x900mm."),
    ] = None,
    margins: Annotated[
        str | None,
        typer.Option(help="What the printer leaves white: one length, or left,right,top,bottom."),
    ] = None,
    overlap: Annotated[str | None, typer.Option(help="How far sheets overlap.")] = None,
    join: Annotated[
        str | None,
        typer.Option(
            help="How sheets are joined: lap (the new one trimmed, laid over), butt (both trimmed, "
            "edge to edge), fold (the new one folded back, nothing trimmed); lap if not given."
        ),
    ] = None,
    printer: Annotated[
        str | None, typer.Option(help="Draw for this printer, as the command printer knows it.")
    ] = None,
    whole_strips: Annotated[
        bool, typer.Option("--whole-strips", help="Print straight strips whole.")
    ] = False,
    only: Annotated[
        list[str] | None,
        typer.Option(
            help="Print only this piece, by its name (top) or by what it does (boxing); repeat it "
            "for more.",
            show_default=False,
        ),
    ] = None,
    most_sheets: Annotated[int, typer.Option(help="Refuse to print more sheets.", min=1)] = 500,
    effort: Annotated[
        int,
        typer.Option(
            help="How long to look for fewer sheets; 100 takes ten times 10.", max=1000, min=0
        ),
    ] = 10,
    quick: Annotated[
        bool, typer.Option("--quick", help="Don't look for fewer sheets: as --effort 0.")
    ] = False,
    svg: Annotated[bool, typer.Option("--svg", help="Also an SVG to cut from.")] = False,
    cut_list: Annotated[bool, typer.Option("--cut-list", help="Also cutlist.csv.")] = False,
    json: Annotated[bool, typer.Option("--json", help="Report as JSON.")] = False,
) -> None:
    """Draft a job: a 1:1 PDF to print, join, trace, cut and sew."""
    from patternmaker.cli.progress import Progress
    from patternmaker.cli.report import told
    from patternmaker.drafting import Options
    from patternmaker.drafting import draft as draft_job
    from patternmaker.drafting.summary import summary
    from patternmaker.job import load_job
    from patternmaker.sheets.papers import stock_of

    loaded = load_job(job)
    stock = stock_of(loaded.unit, paper, margins, overlap, join)
    if printer is not None:
        from patternmaker.cli.printer import drawn_for

        stock = drawn_for(stock, printer, loaded.unit)
    with Progress(sys.stderr) as progress:
        options = Options(
            stock, most_sheets, whole_strips, svg, cut_list, progress, tuple(only or ()),
            effort=0 if quick else effort, searching=progress.searching,
        )  # fmt: skip
        drafted = draft_job(loaded, out, options)
    _say(json_format.dumps(summary(drafted), indent=1) if json else told(drafted))


@app.command()
def check(
    printed: Annotated[Path, typer.Argument(metavar="FILE", help="The PDF that draft wrote.")],
    job: Annotated[
        Path | None,
        typer.Argument(help="The job file that it should be of; the job that it carries if not."),
    ] = None,
    json: Annotated[bool, typer.Option("--json", help="Report as JSON.")] = False,
) -> None:
    """Check a print before you cut: measure every line of the PDF and hold it to the job."""
    from patternmaker.checking.check import checked
    from patternmaker.cli.checked import as_data, refuse, told
    from patternmaker.job import load_job

    found = checked(printed, load_job(job) if job else None)
    _say(json_format.dumps(as_data(found, printed), indent=1) if json else told(found))
    refuse(found)


@app.command()
def shapes(
    name: Annotated[
        list[str] | None, typer.Argument(help="One of them, to see it whole.", show_default=False)
    ] = None,
    units: Annotated[Unit, typer.Option(help="The unit to show lengths in.")] = Unit.MM,
    json: Annotated[bool, typer.Option("--json", help="Tell it as JSON.")] = False,
    svg: Annotated[
        Path | None, typer.Option("--svg", help="Draw it, or all shapes, into this file.")
    ] = None,
) -> None:
    """List the shapes and covers; of one, show what to measure, and where."""
    from patternmaker.cli import shape as one
    from patternmaker.cli import shapes as all_of_them

    known = all_of_them.found(name) if name else None
    if svg is not None:
        from patternmaker.cli.drawn import drawn

        _say(f"Drawn: {drawn(known, units, svg)}")
    elif json:
        data = one.as_data(known) if known else all_of_them.as_data()
        _say(json_format.dumps(data, indent=1))
    else:
        from patternmaker.cli.braille import takes_braille

        braille = takes_braille(sys.stdout.encoding)
        _say(one.as_text(known, units, braille=braille) if known else all_of_them.as_text())


@app.command()
def start(
    shape: Annotated[list[str], typer.Argument(help="The shape of the seat, as shapes lists it.")],
    out: Annotated[
        Path | None, typer.Option(help="The file to write; named after the shape if not given.")
    ] = None,
    cover: Annotated[
        str | None, typer.Option(help="How it is covered, as shapes lists it; boxed if not given.")
    ] = None,
    units: Annotated[
        Unit | None, typer.Option(help="The unit of its lengths; mm if not given.")
    ] = None,
    ask: Annotated[
        bool | None,
        typer.Option("--ask/--no-ask", help="Ask for the measurements; on a terminal it does."),
    ] = None,
    replace: Annotated[bool, typer.Option("--replace", help="Replace an earlier file.")] = False,
) -> None:
    """Begin a job: write a job file to fill in, or ask for each measurement."""
    from patternmaker.cli.start import begun, next_step
    from patternmaker.cli.terminal import Terminal

    terminal = Terminal(sys.stdin, sys.stdout)
    talk = terminal if ask or (ask is None and terminal.is_one) else None
    _say(next_step(begun(shape, units, out, over=replace, talk=talk, cover=cover)))


@app.command("printer")
def known_printer(
    name: Annotated[
        list[str] | None, typer.Argument(help="What you call it.", show_default=False)
    ] = None,
    proof: Annotated[
        Path | None, typer.Option(help="Draw the page to measure into this file (PDF).")
    ] = None,
    across: Annotated[
        str | None, typer.Option(help="What its triangle's side across the paper really is.")
    ] = None,
    up: Annotated[str | None, typer.Option(help="And the side up the paper.")] = None,
    long_side: Annotated[
        str | None, typer.Option(help="And the long one: whether it prints square.")
    ] = None,
    reset: Annotated[bool, typer.Option("--reset", help="Forget it.")] = False,
    paper: Annotated[
        str | None, typer.Option(help="What the page is printed on, as for draft.")
    ] = None,
    margins: Annotated[str | None, typer.Option(help="Its margins, as for draft.")] = None,
    units: Annotated[Unit, typer.Option(help="What bare numbers are.")] = Unit.MM,
) -> None:
    """Tell what a printer prints long or short, so that sheets come out true on it; list all."""
    from patternmaker.cli.printer import Asked, answered

    told = {"across": across, "up": up, "long-side": long_side}
    sides = {side: raw for side, raw in told.items() if raw is not None}
    _say(answered(Asked(" ".join(name or []), proof, sides, reset, paper, margins, units)))


def _say(text: str) -> None:
    try:
        typer.echo(text)
    except BrokenPipeError:
        raise
    except OSError as fault:
        raise OutputFault(
            f"the work is done, but its report can't be written: {fault.strerror}"
        ) from fault
