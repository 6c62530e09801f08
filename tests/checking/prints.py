"""Prints to be checked, as they were drafted and as something spoiled them."""

from __future__ import annotations

import re
import tempfile
from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pypdf
from pypdf.generic import DecodedStreamObject, NameObject

from patternmaker.checking.check import Checked, checked
from patternmaker.drafting import Options, draft
from patternmaker.job import load_job
from patternmaker.sheets.papers import stock_of
from tests.paper.samples import SAMPLES

if TYPE_CHECKING:
    from collections.abc import Callable

    from pypdf import PdfWriter

    from patternmaker.sheets.printer import Printer

MM = 72 / 25.4
TRACED = re.compile(rb"(-?[\d.]+) (-?[\d.]+) ([lm])\b")


@cache
def pdf(
    sample: str, paper: str | None = None, *, whole: bool = False, printer: Printer | None = None
) -> bytes:
    """Return the PDF of a sample, drafted once."""
    job = load_job(SAMPLES / f"{sample}.toml")
    stock = replace(stock_of(job.unit, paper), printer=printer)
    options = Options(stock, whole_strips=whole)
    with tempfile.TemporaryDirectory() as folder:
        return draft(job, Path(folder), options).files[0].read_bytes()


def held(content: bytes, folder: Path, job: str | None = None) -> Checked:
    """Check a print that lies in a folder, against a sample if not the job that it carries."""
    path = folder / "print.pdf"
    path.write_bytes(content)
    return checked(path, load_job(SAMPLES / f"{job}.toml") if job else None)


def spoilt(content: bytes, spoil: Callable[[PdfWriter], object]) -> bytes:
    """Return a print after something was done to it."""
    writer = pypdf.PdfWriter(clone_from=BytesIO(content))
    spoil(writer)
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def sheets(writer: PdfWriter) -> list[Any]:
    """Return the pages of a print that are sheets: those that show a form."""
    pages: list[Any] = list(writer.pages)
    return [page for page in pages if page["/Resources"].get("/XObject")]


def pattern(page: Any) -> Any:
    """Return the form that a sheet shows through its window: the first that it draws."""
    (name, *_) = re.findall(rb"(/\S+) Do", page.get_contents().get_data())
    name = name.decode()
    return page["/Resources"]["/XObject"][name].get_object()


def rewritten(form: Any, change: Callable[[bytes], bytes]) -> None:
    """Change what a form draws."""
    form.set_data(change(form.get_data()))


def page_rewritten(page: Any, change: Callable[[bytes], bytes]) -> None:
    """Change what a page draws itself."""
    stream = DecodedStreamObject()
    stream.set_data(change(page.get_contents().get_data()))
    page[NameObject("/Contents")] = stream


def moved(number: int, by: complex) -> Callable[[bytes], bytes]:
    """Return a change that moves one vertex of a stream's lines, counted through, by some mm."""

    def change(stream: bytes) -> bytes:
        match = list(TRACED.finditer(stream))[number]
        x, y = float(match[1]) + by.real * MM, float(match[2]) + by.imag * MM
        return stream[: match.start()] + b"%f %f %s" % (x, y, match[3]) + stream[match.end() :]

    return change


def told(found: Checked, *words: str) -> bool:
    """Return whether one fault holds all these words."""
    return any(all(word in fault for word in words) for fault in found.faults)
