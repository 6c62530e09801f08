"""From the tables of a job file to a job, noting every mistake on the way."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from patternmaker.covers import COVERS, Cover, finishing
from patternmaker.errors import Refusal, Refusals, brief
from patternmaker.facts import Measured, Reading, Registry, unknown
from patternmaker.job.finishing import Finishings
from patternmaker.job.lists import listing
from patternmaker.job.materials import Materials
from patternmaker.job.model import (
    MOST_SEATS,
    Given,
    Inset,
    Job,
    JobFacts,
    PanelFacts,
    Seat,
    SeatFacts,
)
from patternmaker.outlines import SHAPES, Outline
from patternmaker.pattern.allowances import Allowances
from patternmaker.pattern.brief import Brief, Panel, SeamWish, sized
from patternmaker.pattern.notes import Fine, Note
from patternmaker.units import Unit, show_length

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from pathlib import Path
    from typing import TypeVar

    from patternmaker.geometry.contour import Contour
    from patternmaker.tracing.said import Said

    M = TypeVar("M", bound=Measured)

JOB_TABLES = ("material", "allowances", "stitching", "seat")
SEAT_TABLES = ("outline", "cover", "base", "material", "allowances", "panel", "seam", "welt",
               "stitching", "padding")  # fmt: skip
USUAL = {"shape": "rounded rectangle", "style": "boxed"}  # what a job that lacks one is offered
WIDEST_DISAGREEMENT = 0.25  # between tape and width; beyond it one of them is mistyped


def read_job(tables: Mapping[str, object], folder: Path | Mapping[str, bytes] | None = None) -> Job:
    """Return the job that the tables of a job file describe.

    Args:
        tables: as they were read from TOML.
        folder: in which the files lie that the job names, or those files themselves, by name.

    Raises:
        Refusals: naming every mistake, by seat and field.
    """
    reading = Reading(_unit(tables), folder)
    facts = reading.read(JobFacts, tables, "", beside=JOB_TABLES)
    seats = _Seats(reading, tables).read()
    if reading.mistakes or facts is None or reading.unit is None:
        raise Refusals(reading.mistakes, reading.unit)
    files = {name: found.content for name, found in reading.opened.items()}
    return Job(facts.name, reading.unit, seats, facts.date, Given(tables, files))


def _unit(tables: Mapping[str, object]) -> Unit | None:
    """Return the job's unit, or None where it is wrong: that is noted when its field is read."""
    given = tables.get("units")
    return Unit(given) if isinstance(given, str) and given in list(Unit) else None


class _Seats:
    """Reads the seats of a job, each with the job's own tables beneath its overrides."""

    def __init__(self, reading: Reading, tables: Mapping[str, object]) -> None:
        self.reading = reading
        self.materials = Materials(reading, tables)
        self.finishing = Finishings(reading, tables)
        self.allowed = reading.table(tables.get("allowances", {}), "allowances")
        self.allowances = reading.read(Allowances, self.allowed, "allowances")
        self.told = reading.told("allowances")
        self.tables = self._listed(tables.get("seat", []))

    def read(self) -> tuple[Seat, ...]:
        seats = [self._seat(raw, number) for number, raw in enumerate(self.tables, 1)]
        self._note_twins()
        return tuple(seat for seat in seats if seat)

    def _listed(self, seats: object) -> list[object]:
        """Return the tables of the seats, or none once it is noted that they can't be read."""
        if not isinstance(seats, list):
            mend = "write each seat under [[seat]], with two brackets on each side"
            self.reading.note(Refusal("seat", "is not a list of seats", mend=mend))
            return []
        if not seats:
            self.reading.note(Refusal("seat", "there is none", mend="add one under [[seat]]"))
        if len(seats) > MOST_SEATS:
            self.reading.note(
                Refusal("seat", "there are {value}, more than {limit}", value=len(seats),
                        limit=MOST_SEATS, mend="split the job")
            )  # fmt: skip
            return []
        return seats

    def _note_twins(self) -> None:
        seen: dict[str, int] = {}
        for number, raw in enumerate(self.tables, 1):
            if not isinstance(raw, dict) or not isinstance(name := raw.get("name"), str):
                continue
            first = seen.setdefault(" ".join(name.split()).casefold(), number)
            if first != number:
                self.reading.note(
                    Refusal("name", "{value} is the name of seat {limit} too", value=brief(name),
                            limit=first, mend="give each seat a name of its own"),
                    _place(raw, number),
                )  # fmt: skip

    def _seat(self, raw: object, number: int) -> Seat | None:
        table = self.reading.table(raw, f"seat {number}")
        if not isinstance(raw, dict):
            return None
        place = _place(table, number)
        facts = self.reading.read(SeatFacts, table, place, beside=SEAT_TABLES)
        if facts and facts.trust == "round" and facts.measured_round is None:
            self.reading.note(_NO_ROUND, place)
        outline = self._one_of(SHAPES, "shape", table.get("outline"), f"{place}outline")
        cover = self._one_of(COVERS, "style", table.get("cover"), f"{place}cover")
        if facts and outline and facts.reversed and outline.partner() == outline:
            self.reading.note(_ALIKE, place)
        allowances = self._allowances(table, place)
        materials = self.materials.of_seat(table, place)
        covered = _covered(outline, cover, facts) if outline else None
        base = self._base(table.get("base", {}), covered, f"{place}base")
        panels = listing(self.reading, table, "panel", place, self._panel)
        seams = listing(self.reading, table, "seam", place, partial(self.reading.read, SeamWish))
        wishes = self.finishing.of_seat(table, place)
        if not (facts and outline and cover and allowances and materials and base):
            return None
        if panels is None or seams is None or wishes is None:
            return None
        brief = Brief(
            outline.contour(), base, allowances, materials,
            facts.taken, facts.measured_round, facts.trust == "round",
            tuple(_note(said) for said in outline.remarks()),
            tuple(panels), tuple(seams), replace(wishes, without=facts.without),
        )  # fmt: skip
        for mistake in _objections(brief, cover):
            self.reading.note(mistake, place)
        return Seat(facts.name, facts.make, outline, cover, brief, facts.reversed)

    def _panel(self, table: Mapping[str, object], place: str) -> Panel | None:
        facts = self.reading.read(PanelFacts, table, place, beside=("outline",))
        outline = self._one_of(SHAPES, "shape", table.get("outline"), f"{place}.outline")
        if facts is None or outline is None:
            return None
        if facts.reversed and outline.partner() == outline:
            self.reading.note(_ALIKE_PANEL, place)
        return Panel(facts.name, outline.contour(), facts.cut, facts.reversed)

    def _allowances(self, table: Mapping[str, object], place: str) -> Allowances | None:
        if "allowances" not in table:
            return self.allowances
        here = f"{place}allowances"
        own = self.reading.table(table["allowances"], here)
        told = self.told - own.keys()
        return self.reading.read(Allowances, {**self.allowed, **own}, here, told=told)

    def _one_of(self, known: Registry[M], key: str, raw: object, place: str) -> M | None:
        """Return what the table describes: one of the known classes, named under ``key``."""
        if raw is None:
            mend = f'add one, such as {{ {key} = "{USUAL[key]}", ... }}'
            self.reading.note(Refusal(place, "is missing", mend=mend))
            return None
        table = self.reading.table(raw, place)
        if not isinstance(raw, dict):
            return None
        name = table.get(key)
        kind = known.named(name) if isinstance(name, str) else None
        if kind is None:
            self.reading.note(_misnamed(key, table, known), place)
            return None
        rest = {field: value for field, value in table.items() if field != key}
        return self.reading.read(kind, rest, place)

    def _base(self, raw: object, covered: Contour | None, place: str) -> Contour | None:
        table = self.reading.table(raw, place)
        if "shape" in table:
            own = self._one_of(SHAPES, "shape", table, place)
            return own.contour() if own else None
        inset = self.reading.read(Inset, table, place, beside=("shape",))
        if inset is None or covered is None:
            return None
        try:
            return covered.grown(inset.step)
        except Refusal as mistake:
            field = "inset" if inset.step < 0 else "outset"
            self.reading.note(mistake.at(field), place)
            return None


def _note(said: Said) -> Note:
    return Note(said.says, tuple(Fine(value) for value in said.values))


_ALIKE = Refusal(
    "reversed", "the seat is alike left and right, so it has no mirror image",
    mend="count these seats under make",
)  # fmt: skip
_ALIKE_PANEL = Refusal(
    "reversed", "the panel is alike left and right, so it has no mirror image",
    mend="count these under cut",
)  # fmt: skip
_NO_ROUND = Refusal(
    "trust", "there is no tape round the seam to trust",
    mend="give measured_round, or trust the width",
)  # fmt: skip


def _covered(outline: Outline, cover: Cover | None, facts: SeatFacts | None) -> Contour:
    """Return the outline that the cover will have, which a base without its own follows."""
    trusted = facts.measured_round if facts and facts.trust == "round" else None
    taped = outline.contour()
    return sized(cover.plan(taped, facts.taken) if cover and facts else taped, trusted)


def _misnamed(key: str, table: Mapping[str, object], known: Registry[M]) -> Refusal:
    if key in table:
        return unknown(key, table[key], known.all)
    return Refusal(key, "is missing", mend=f"it can be {', '.join(known.all)}")


def _place(table: Mapping[str, object], number: int) -> str:
    name = table.get("name")
    if not isinstance(name, str) or not name.isprintable():
        return f"seat {number}, "
    short = name if len(name) <= 40 else f"{name[:39]}…"
    return f'seat {number} "{short}", '


def _objections(brief: Brief, cover: Cover) -> Iterator[Refusal]:
    """Yield whatever keeps a seat from being covered, though each measurement alone may stand."""
    if brief.measured_round is not None:
        seam = cover.plan(brief.taped, brief.taken).length
        differs = brief.measured_round / seam - 1
        if abs(differs) > WIDEST_DISAGREEMENT:
            yield Refusal(
                "measured_round", "{value} is far from the {limit} that the measured width gives",
                value=brief.measured_round, limit=seam, show=show_length,
                mend="check its unit, and the width",
            )  # fmt: skip
            return
    mistakes = list(cover.objections(brief))
    yield from mistakes
    if not mistakes and brief.finishing.asks:
        yield from finishing.objections(cover.pattern(brief), brief)
