"""Legal measurements for any registered kind, drawn from the facts of its fields alone."""

from typing import Any, TypeVar

import numpy as np
from hypothesis import reject
from hypothesis import strategies as st

from patternmaker.errors import Refusals
from patternmaker.facts import (
    FILE,
    LENGTH,
    NAMES,
    SWITCH,
    TEXT,
    Angle,
    Fact,
    Found,
    Limit,
    Measured,
    Rate,
    Rows,
    Stitch,
    facts_of,
)
from patternmaker.geometry.contour import Contour
from patternmaker.outlines import SHAPES, Outline
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.units import Unit

LARGEST_SEAT = 1500.0  # mm; the laws need no larger one
MOST_MENDED = 6

M = TypeVar("M", bound=Measured)
STRUCK = [
    kind
    for kind in SHAPES.all.values()
    if not any(fact.quantity is FILE for fact in facts_of(kind).values())
]
UNITS = st.sampled_from(Unit)


@st.composite
def measurements(draw: st.DrawFn, kind: type[M]) -> M:
    """Draw a ``kind``, each field within its own bounds and those that others set."""
    values: dict[str, Any] = {}
    waiting = facts_of(kind)
    while waiting:
        name = next(name for name in waiting if not _needs(kind, name) & waiting.keys())
        bounds = [limit for limit in kind.limits if limit.field == name]
        values[name] = draw(_value(waiting.pop(name), bounds, values))
    found = None
    for _ in range(MOST_MENDED):
        try:
            found = kind(**values)
            break
        except Refusals as refused:  # fields that go together in ways that no bound of one tells
            values = _mended(kind, values, refused)
    return found or reject()


def _mended(kind: type[M], values: dict[str, Any], refused: Refusals) -> dict[str, Any]:
    """Return values with each refused one at the limit that its refusal names, or left away.

    If none is left to be mended so, all are left away that have no default.
    """
    facts = facts_of(kind)
    mended = dict(values)
    for mistake in refused:
        fact = facts.get(mistake.field)
        if fact and fact.quantity is LENGTH and isinstance(mistake.limit, float):
            mended[mistake.field] = mistake.limit
        elif fact and not fact.required:
            mended[mistake.field] = fact.default.metric
    none = {name: None for name, fact in facts.items() if not fact.required and
            fact.default.metric is None}  # fmt: skip
    return mended if mended != values else {**values, **none}


def outlines() -> st.SearchStrategy[Outline]:
    """Draw a seat of any known shape."""
    return st.sampled_from(list(SHAPES.all.values())).flatmap(measurements)


def struck() -> st.SearchStrategy[Outline]:
    """Draw a seat of any known shape that is struck from measurements, not read from a file."""
    return st.sampled_from(STRUCK).flatmap(measurements)


def contours() -> st.SearchStrategy[Contour]:
    """Draw the contour of a seat of any known shape."""
    return outlines().map(lambda outline: outline.contour())


@st.composite
def fronted(draw: st.DrawFn) -> Contour:
    """Draw a seat with a straight front between two corners, as often sharp as round."""
    width, depth = draw(st.floats(180, 1500)), draw(st.floats(150, 900))
    back, front = draw(st.floats(0, 70)), draw(st.just(0.0) | st.floats(0, min(60, width / 5)))
    seat = RoundedRectangle(width=width, depth=depth, corner=back, front_left=front,
                            front_right=front)  # fmt: skip
    return seat.contour()


def alike(one: Measured, other: Measured) -> bool:
    """Return whether two of a kind have the same measurements, but for the rounding of figures."""
    mine, its = vars(one), vars(other)
    return type(one) is type(other) and all(
        mine[name] == its[name] or np.allclose(mine[name], its[name], rtol=0, atol=1e-9)
        for name in mine
    )


def loose(kind: type[Measured]) -> st.SearchStrategy[dict[str, Any]]:
    """Draw values of a kind, each within its own bounds: they need not go together."""
    return st.fixed_dictionaries(
        {name: _value(fact, [], {}) for name, fact in facts_of(kind).items()}
    )


def _needs(kind: type[Measured], name: str) -> set[str]:
    """Return the fields that must be drawn before one that limits bind to them."""
    return {need for limit in kind.limits if limit.field == name for need in limit.needs} - {name}


def _value(fact: Fact, limits: list[Limit], values: dict[str, Any]) -> st.SearchStrategy[Any]:
    if fact.quantity is SWITCH:
        return st.booleans()
    if isinstance(fact.quantity, Rows):
        return _rows(fact, fact.quantity)
    if fact.quantity is FILE:
        return _files()
    if fact.quantity is NAMES:  # of things that the draw knows nothing of
        return st.just(())
    if fact.quantity is TEXT:
        return st.sampled_from(fact.choices) if fact.choices else _text(fact)
    number = _number(fact, limits, values)
    left_out = fact.default.metric is None and not fact.required
    return st.none() | st.none() | number if left_out else number


def _text(fact: Fact) -> st.SearchStrategy[str | None]:
    if not fact.required:  # it names something that the draw knows nothing of
        return st.none()
    return st.text("abc äß", min_size=1, max_size=int(fact.most or 120)).filter(str.strip)


def _number(fact: Fact, limits: list[Limit], values: dict[str, Any]) -> st.SearchStrategy[Any]:
    bounds = [(limit.upper, limit.value(values)) for limit in limits]
    lows = [value for upper, value in bounds if value is not None and not upper]
    highs = [value for upper, value in bounds if value is not None and upper]
    least = fact.least if fact.least is not None else fact.above
    low = max([least if least is not None else 0.0, *lows])
    most = min(fact.most, LARGEST_SEAT) if fact.quantity is LENGTH and fact.most else fact.most
    high = min([most if most is not None else LARGEST_SEAT, *highs])
    if low > high:
        reject()
    if fact.quantity is LENGTH or isinstance(fact.quantity, Rate | Angle | Stitch):
        ends = st.sampled_from([low, high]) if fact.above is None else st.nothing()
        return st.floats(low, high, exclude_min=fact.above is not None) | ends
    return st.integers(int(low), int(high))


@st.composite
def _rows(draw: st.DrawFn, fact: Fact, quantity: Rows) -> tuple[tuple[float, ...], ...]:
    """Draw rows like those of the example, but for their size and some of their figures.

    One row may be missing, one pulled in, and one at an end pulled in to nothing; what need not be
    given is given for all or for none.
    """
    rows = list(fact.default.metric)
    if len(rows) > (fact.least or 0):
        missing = draw(st.integers(1, 2 * len(rows)))
        rows = rows[:missing] + rows[missing + 1 :]
    pulled = draw(st.integers(0, 2 * len(rows)))
    nothing = draw(st.sampled_from([None, None, 0, len(rows) - 1]))
    figures = draw(st.sampled_from([quantity.needed, len(quantity.columns)]))
    size, little, share = draw(st.floats(0.5, 2.5)), st.floats(0.95, 1.05), st.floats(0.85, 1.15)
    found = []
    for i, row in enumerate(rows):
        pull = 0.0 if i == nothing else size * (0.6 if i == pulled else 1.0)
        whole = [row[0] * size * draw(little), *(cell * pull * draw(share) for cell in row[1:])]
        found.append(tuple(whole + whole[-1:] * len(quantity.columns))[:figures])
    return tuple(found)


@st.composite
def _files(draw: st.DrawFn) -> Found:
    """Draw a string of points round a seat of some other shape."""
    contour = draw(struck()).contour()
    count = draw(st.integers(150, 400))
    points = (contour.point_at(contour.length * i / count) for i in range(count))
    text = "\n".join(f"{point.real:.6f},{point.imag:.6f}" for point in points)
    return Found("outline.csv", f"x (mm),y (mm)\n{text}\n".encode())
