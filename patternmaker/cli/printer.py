"""What a user's printers print long or short: measured, kept, listed, forgotten."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from patternmaker.cli.tables import plain, table
from patternmaker.drafting.printers import FIRST, Printers
from patternmaker.drafting.staging import put_in_place
from patternmaker.errors import Refusal, Refusals
from patternmaker.sheets.papers import stock_of
from patternmaker.sheets.printer import Printer
from patternmaker.sheets.proof import command_for, proof_page
from patternmaker.sheets.sides import NAMES, quoted, read_sides
from patternmaker.units import Unit

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from patternmaker.sheets.papers import Stock


@dataclass(frozen=True)
class Asked:
    """What the command was asked.

    Args:
        name: of the printer; empty for all of them.
        proof: the file to draw the proof page into.
        sides: what was measured, by the names of the options.
        reset: whether to forget it.
        paper: as `draft` takes it, and so the margins.
        margins: see there.
        unit: of bare numbers.
    """

    name: str
    proof: Path | None
    sides: dict[str, str]
    reset: bool
    paper: str | None
    margins: str | None
    unit: Unit

    def __post_init__(self) -> None:
        if wrong := list(self._mistakes()):
            raise Refusals(wrong)

    def _mistakes(self) -> Iterator[Refusal]:
        if sum((self.proof is not None, bool(self.sides), self.reset)) > 1:
            yield Refusal("printer", "it can draw the proof page, be told the sides or reset, one "
                          "at a time", mend="give only one of these")  # fmt: skip
        if (self.sides or self.reset) and not self.name:
            yield Refusal("printer", "has no name", mend="say which: printer NAME")
        if self.sides:
            for side in NAMES[:2]:
                if side not in self.sides:
                    yield Refusal(side, "is not given", mend=f"measure it too: --{side}")
        if self.proof is not None and not self.proof.name:
            yield Refusal("proof", "names no file", mend="write it like proof.pdf")

    @property
    def stock(self) -> Stock:
        """What the page is printed on."""
        return stock_of(self.unit, self.paper, self.margins)

    @property
    def again(self) -> str:
        """The options that must be given again with the sides, as they were given."""
        given = {"paper": self.paper, "margins": self.margins}
        more = "".join(f" --{name} {quoted(raw)}" for name, raw in given.items() if raw)
        return more + ("" if self.unit is Unit.MM else f" --units {self.unit}")


def answered(asked: Asked) -> str:
    """Do what was asked, and return what is to be said of it.

    Raises:
        Refusals: if it can't be done as asked.
        OutputFault: if a file can't be read or written.
    """
    printers = Printers.kept()
    if asked.proof is not None:
        return _proof(asked, asked.proof, printers)
    if asked.sides:
        return plain("\n".join(_measured(asked, printers)))
    if asked.reset:
        return plain("\n".join(_reset(asked.name, printers)))
    if asked.name:
        return plain("\n".join(_one(printers.named(asked.name))))
    return plain("\n".join(_all(printers)))


def drawn_for(stock: Stock, name: str, unit: Unit) -> Stock:
    """Return a stock that is drawn on for a printer that was measured.

    Raises:
        Refusals: if there is none of that name, or too little is left to print on.
    """
    printer = Printers.kept().named(name)
    try:
        return replace(stock, printer=printer)
    except Refusals as refusals:
        raise Refusals(refusals.mistakes, unit) from None


def _proof(asked: Asked, path: Path, printers: Printers) -> str:
    known = printers.knows(asked.name)
    stock = drawn_for(asked.stock, known.name, asked.unit) if known else asked.stock
    command = command_for(asked.name, asked.again)
    page = proof_page(stock, asked.unit, command)
    drawn = f"Drawn: {put_in_place(path.parent, {path.name: page})[0]}"
    if known:
        says = f"{drawn}, for {known.name} as it is known: its sides must come out true"
        return plain("\n".join([says, *(f"  {doubt}" for doubt in known.doubts(stock))]))
    return plain(f"{drawn}\nPrint it at actual size (100 %), measure its three sides, and say\n"
                 f"  {command.replace('…', '...')}")  # fmt: skip


def _measured(asked: Asked, printers: Printers) -> Iterator[str]:
    stock, earlier = asked.stock, printers.knows(asked.name)
    stated, measured = read_sides(asked.sides, asked.unit, stock)
    name = " ".join(asked.name.split())
    printer = Printer(name, stock.paper, stock.margins, asked.unit, stated, measured)
    if earlier and printer.is_true and not earlier.is_true:
        raise Refusals([_undoes(earlier)])
    aside = printers.with_one(printer)
    yield from _one(printer)
    if earlier:
        yield f"It was known before: {earlier.mended}. That is forgotten."
    yield from _set_aside(printers, aside)
    yield f"Kept in {printers.place}"
    yield f"\npatternmaker draft JOB --printer {quoted(name)} draws what comes out true on it."


def _undoes(earlier: Printer) -> Refusal:
    return Refusal(
        "printer", "{value} is known already ({limit}), and these sides are true",
        value=repr(earlier.name), limit=earlier.mended,
        mend="if the page was drawn for it, all is well; if it was not, and the printer now prints "
        f"true, say printer {quoted(earlier.name)} --reset",
    )  # fmt: skip


def _reset(name: str, printers: Printers) -> Iterator[str]:
    damaged = next((each for each in printers.faults if each and each == name), None)
    known = name if damaged else printers.named(name).name
    aside = printers.without(known)
    yield f"{known} is forgotten."
    yield from _set_aside(printers, aside)


def _set_aside(printers: Printers, aside: Path | None) -> Iterator[str]:
    if aside:
        yield from _damaged(printers)
        yield f"The file as it was is kept as {aside}"


def _damaged(printers: Printers) -> Iterator[str]:
    for name, fault in printers.faults.items():
        yield f"{printers.place} is damaged: {f'{name!r}: ' if name else ''}{fault}"


def _one(printer: Printer) -> Iterator[str]:
    yield printer.name
    yield from (f"  {line}" for line in printer.report())
    yield f"  so sheets are drawn {printer.mended} the paper (measured on {printer.paper.name})"


def _all(printers: Printers) -> Iterator[str]:
    if printers.known:
        head = ("printer", "drawn across", "drawn up", "square", "measured on")
        yield table(head, [_row(printer) for printer in printers.known.values()], indent="")
    elif not printers.faults:
        yield f"No printer has been measured yet. {FIRST}."
    yield from _damaged(printers)


def _row(printer: Printer) -> tuple[str, ...]:
    across, up = printer.drawn
    square = "not known" if printer.lean is None else "no" if printer.is_askew else "yes"
    return printer.name, across, up, square, printer.paper.name
