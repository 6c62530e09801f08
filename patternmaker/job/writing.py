"""Writing a job file to begin from: every measurement with its words and bounds beside it."""

from __future__ import annotations

import json
import re
import textwrap
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from patternmaker.covers import COVERS
from patternmaker.facts import (
    ANGLE,
    COUNT,
    FILE,
    LENGTH,
    RATE,
    STITCH,
    Rows,
    both,
    facts_of,
)
from patternmaker.facts.telling import bounds_of, words_of
from patternmaker.job.model import Inset, JobFacts, SeatFacts
from patternmaker.materials import KINDS, Material
from patternmaker.pattern.allowances import Allowances
from patternmaker.pattern.finishing import WeltWish
from patternmaker.pattern.stitching import StitchRules
from patternmaker.units import Unit, read_length, show_length, show_stitch

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from patternmaker.covers import Cover
    from patternmaker.facts import Fact, Measured
    from patternmaker.outlines import Outline

TRACE = "outline.svg"  # the name of a drawing until its user puts another
FOAM = both(in_=2, mm=50)  # shown as its thickness
WIDE = 76  # letters of a comment
NOT_A_COVERING = ("cambric", "card")  # materials that no top is of
_NUMBER = re.compile(r"(0|[1-9]\d*)(\.\d+)?")


def literal(typed: str) -> str:
    """Return TOML for a measurement as it was typed: a plain number bare, all else in quotes.

    >>> print(literal("14"), literal("14 1/2"), literal('14 1/2"'))
    14 "14 1/2" '14 1/2"'
    """
    if _NUMBER.fullmatch(typed):
        return typed
    if '"' in typed and "'" not in typed and typed.isprintable():
        return f"'{typed}'"
    return json.dumps(typed, ensure_ascii=False)


def source(fact: Fact, value: Any, unit: Unit) -> str:
    """Return TOML for a value, lengths in ``unit`` as a tape says them."""
    quantity = fact.quantity
    if isinstance(quantity, Rows):
        return rows_source([[tape(cell, unit) for cell in row] for row in value])
    if quantity is LENGTH:
        return literal(tape(value, unit))
    if quantity is RATE:
        return json.dumps(f"{value * 100:.6g}%")
    if quantity is STITCH:
        return json.dumps(show_stitch(value, unit))
    if quantity in {ANGLE, COUNT}:
        return f"{value:.6g}"
    return json.dumps(value, ensure_ascii=False)


def rows_source(rows: Iterable[Iterable[str]]) -> str:
    """Return TOML for rows of lengths as they were typed, a line for each."""
    lines = (f"  [{', '.join(map(literal, row))}],\n" for row in rows)
    return f"[\n{''.join(lines)}]"


def tape(value: float, unit: Unit) -> str:
    """Return a length without its unit, which reads back as the same length.

    >>> tape(368.3, Unit.IN), tape(368.3, Unit.CM)
    ('14 1/2', '36.83')
    """
    shown = show_length(value, unit, bare=True)
    if abs(read_length(shown, unit) - value) < 1e-6:
        return shown.removesuffix(".0")
    return f"{value / unit.mm:.5f}".rstrip("0").rstrip(".")


@dataclass(frozen=True)
class Beginning:
    """What a job file to begin from is written of.

    Args:
        shape: of the seat.
        cover: of the seat.
        unit: of its lengths.
        name: of job and seat.
        make: how many seats.
        given: TOML of what is known of the outline, by field; defaults stand for the rest.
        covering: the same of the cover.
        letters: by which the picture calls the fields.
        picture: lines of plain text, to stand above the outline.
    """

    shape: type[Outline]
    cover: type[Cover]
    unit: Unit
    name: str
    make: int = 1
    given: Mapping[str, str] = field(default_factory=dict)
    covering: Mapping[str, str] = field(default_factory=dict)
    letters: Mapping[str, str] = field(default_factory=dict)
    picture: tuple[str, ...] = ()


def usual_cover() -> type[Cover]:
    """Return the cover that a job begins with."""
    return COVERS.all["boxed"]


def written(beginning: Beginning) -> str:
    """Return the job file."""
    return "\n".join(_lines(beginning)) + "\n"


def _lines(of: Beginning) -> Iterator[str]:
    yield "# A job to fill in: put your measurements for the ones that stand here; what stands"
    yield "# behind a # is not read, and shows what else can be set."
    yield f"name = {json.dumps(of.name, ensure_ascii=False)}"
    yield f'units = "{of.unit}"  # in, mm or cm: what a bare number means'
    yield from _optional(JobFacts, of.unit, passing=("name", "units"))
    yield from ("", "[material]")
    kinds = [kind for kind in KINDS if kind not in NOT_A_COVERING]
    usual = json.dumps(facts_of(Material)["kind"].default.in_(of.unit))
    yield f"kind = {usual}  # or {', '.join(kinds[1:])}"
    yield from _optional(Material, of.unit, passing=("kind",))
    yield from ("", "[allowances]")
    yield from _optional(Allowances, of.unit)
    yield from ("", "[stitching]")
    yield from _optional(StitchRules, of.unit)
    yield from ("", "[[seat]]", f"name = {json.dumps(of.name, ensure_ascii=False)}")
    yield f"make = {of.make}"
    yield from _optional(SeatFacts, of.unit, passing=("name", "make"))
    also = ", ".join(name for name in facts_of(WeltWish) if name != "seam")
    yield f'# welt = {{ seam = "top seam" }}  # piping in a seam; it takes {also} too'
    foam = literal(tape(FOAM.in_(of.unit), of.unit))
    yield f"# padding = {{ foam = {foam} }}  # templates of foam, and of wadding, under the cover"
    yield from ("", "[seat.outline]", f"shape = {json.dumps(of.shape.called)}")
    yield from (f"# {line}".rstrip() for line in of.picture)
    yield from _fields(of.shape, of.unit, of.given, of.letters)
    yield from ("", "[seat.cover]", f"style = {json.dumps(of.cover.called)}")
    yield from _fields(of.cover, of.unit, of.covering, {})
    yield from ("", "[seat.base]")
    yield from _optional(Inset, of.unit)


def _fields(
    kind: type[Measured], unit: Unit, given: Mapping[str, str], letters: Mapping[str, str]
) -> Iterator[str]:
    """Yield every field of a table, each below its words and bounds."""
    facts = facts_of(kind)
    values = {name: fact.default.in_(unit) for name, fact in facts.items()}
    for name, fact in facts.items():
        says = (
            f"{letters[name]}: {words_of(fact)}" if name in letters else words_of(fact),
            bounds_of(kind, name, unit, {} if given else values),
            "" if fact.required else "may be left out",
        )
        text = "; ".join(filter(None, says))
        yield from textwrap.wrap(text, WIDE, initial_indent="# ", subsequent_indent="# ")
        own = given.get(name)
        yield f"{name} = {own}" if own else _line(name, fact, values[name], unit)


def _line(name: str, fact: Fact, value: Any, unit: Unit) -> str:
    """Return a field with its default, behind a # where there is none to give."""
    if value is None and fact.quantity is FILE and fact.required:
        return f'{name} = "{TRACE}"  # put your drawing beside this file, and its name here'
    if value is None or value == ():
        return f"# {name} = ..."
    return f"{name} = {source(fact, value, unit)}"


def _optional(kind: type[Measured], unit: Unit, *, passing: tuple[str, ...] = ()) -> Iterator[str]:
    """Yield every field of a table behind a #, with its default."""
    for name, fact in facts_of(kind).items():
        if name in passing:
            continue
        value = fact.default.in_(unit)
        shown = "..." if value is None else source(fact, value, unit)
        bounds = bounds_of(kind, name, unit, {})
        yield f"# {name} = {shown}  # {words_of(fact)}{f'; {bounds}' if bounds else ''}"
