"""One shape or cover: what to measure, where, and what comes of its defaults."""

from __future__ import annotations

import inspect
import textwrap
from typing import TYPE_CHECKING, Any, cast

from patternmaker.cli.pictures import picture
from patternmaker.cli.shapes import listed
from patternmaker.cli.tables import table
from patternmaker.drawing.measures import letters_of, measures, usual
from patternmaker.drawing.shapes import purpose, without_seat
from patternmaker.facts import Rows, facts_of
from patternmaker.facts.telling import bounds_of, words_of
from patternmaker.units import Unit, show_area, show_length

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternmaker.cli.shapes import Known
    from patternmaker.facts import Fact, Measured
    from patternmaker.geometry.contour import Contour
    from patternmaker.outlines import Outline

HEAD = ("", "measurement", "what to measure", "must be given", "such as")
WORDS, PARAGRAPH = 44, 76  # letters in a line: of the middle column, and of running text


def as_text(known: Known, unit: Unit, *, braille: bool) -> str:
    """Return a shape or a cover to be read, lengths in ``unit``."""
    return "\n".join(_lines(known, unit, braille=braille))


def _lines(known: Known, unit: Unit, *, braille: bool) -> Iterator[str]:
    yield f"{known.name} ({known.kind})"
    yield from textwrap.wrap(purpose(known.made), PARAGRAPH)
    seat, letters = _usual(known, unit)
    if seat:
        yield from ("", *picture(seat, braille=braille))
    elif known.kind == "shape":
        yield from ("", f"  ({without_seat(known.made)})")
    yield from ("", table(HEAD, [*_rows(known.made, letters, unit)]))
    if seat:
        yield from ("", f"This seat: {sizes(seat.contour(), unit)}.")
    if construction := _construction(known.made):
        yield from ("", *textwrap.wrap(construction, PARAGRAPH))
    if known.kind == "shape":
        yield ""
        yield f"patternmaker start {slug(known.name)} begins a job with it; --svg FILE draws it."


def _usual(known: Known, unit: Unit) -> tuple[Outline | None, Mapping[str, str]]:
    """Return the usual seat of a shape, if it has one, and the letters of its measurements."""
    if known.kind != "shape":
        return None, {}
    kind = cast("type[Outline]", known.made)
    seat = usual(kind, unit)
    return seat, letters_of(kind, seat)


def slug(name: str) -> str:
    """Return a name that needs no quotes on a command line."""
    return name.replace(" ", "-")


def sizes(contour: Contour, unit: Unit) -> str:
    """Return the sizes of a seat in a line."""
    wide = show_length(contour.width, unit, bare=True)
    deep, round_ = show_length(contour.height, unit), show_length(contour.length, unit)
    return f"{wide} x {deep}, {round_} round, {show_area(contour.area, unit)}"


def _construction(kind: type[Measured]) -> str:
    _, _, rest = inspect.cleandoc(kind.__doc__ or "").partition("\n")
    return " ".join(rest.split())


def _rows(
    kind: type[Measured], letters: Mapping[str, str], unit: Unit
) -> Iterator[tuple[str, ...]]:
    """Yield the rows of the table: what is too long for its column goes on in the next row."""
    facts = facts_of(kind)
    values = {field: fact.default.in_(unit) for field, fact in facts.items()}
    for field, fact in facts.items():
        bounds = bounds_of(kind, field, unit, values)
        middle = [*textwrap.wrap(words_of(fact), WORDS), *textwrap.wrap(bounds, WORDS)]
        last = _figures(fact, unit)
        given = " or ".join(("yes", *fact.unless)) if fact.required else "no"
        for number in range(max(len(middle), len(last))):
            left = (letters.get(field, ""), field) if number == 0 else ("", "")
            yield (*left, _at(middle, number), given if number == 0 else "", _at(last, number))


def _at(lines: list[str], number: int) -> str:
    return lines[number] if number < len(lines) else ""


def _figures(fact: Fact, unit: Unit) -> list[str]:
    """Return a default in lines: each row of a table in one of its own."""
    default = fact.default.in_(unit)
    if default is None:
        return []
    if isinstance(fact.quantity, Rows):
        shown = [[show_length(cell, unit, bare=True) for cell in row] for row in default]
        return [f"{', '.join(row)} {unit}" for row in shown]
    return [fact.quantity.show(default, unit).strip("'")]


def as_data(known: Known) -> dict[str, Any]:
    """Return one shape or cover as plain data; lengths in mm, x to the right, y to the back."""
    data = listed(known)
    seat, letters = _usual(known, Unit.MM)
    for each, (field, fact) in zip(data["measurements"], facts_of(known.made).items(), strict=True):
        each |= {
            "letter": letters.get(field),
            "words": fact.words,
            "least": fact.least,
            "most": fact.most,
            "choices": list(fact.choices),
            "limits": bounds_of(known.made, field, Unit.MM, {}),
        }
    data["purpose"] = purpose(known.made)
    if seat:
        data |= _of_seat(seat)
    return data


def _of_seat(seat: Outline) -> dict[str, Any]:
    contour = seat.contour()
    return {
        "sizes": {"width_mm": contour.width, "depth_mm": contour.height,
                  "perimeter_mm": contour.length, "area_mm2": contour.area},
        "dimensions": [
            {"letter": each.letter, "name": each.field, "begin": _xy(each.begin),
             "end": _xy(each.end), "radius": each.is_radius}
            for each in measures(seat, contour)
        ],
        "joints": [
            {"name": name, "at": _xy(contour.point_at(contour.station(name)))}
            for name in contour.joints
        ],
        "picture": picture(seat),
    }  # fmt: skip


def _xy(point: complex) -> list[float]:
    return [point.real, point.imag]
