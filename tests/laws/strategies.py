"""Legal measurements for any registered kind, drawn from the facts of its fields alone."""

from typing import Any, TypeVar

from hypothesis import reject
from hypothesis import strategies as st

from patternmaker.errors import Refusals
from patternmaker.facts import (
    FILE,
    LENGTH,
    SWITCH,
    TEXT,
    Angle,
    Fact,
    Found,
    Limit,
    Measured,
    Rate,
    Rows,
    facts_of,
)
from patternmaker.geometry.contour import Contour
from patternmaker.outlines import SHAPES, Outline
from patternmaker.units import Unit

LARGEST_SEAT = 1500.0  # mm; the laws need no larger one

M = TypeVar("M", bound=Measured)
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
    try:
        return kind(**values)
    except Refusals:  # fields that go together in ways which no bound of one of them tells
        reject()


def outlines() -> st.SearchStrategy[Outline]:
    """Draw a seat of any known shape."""
    return st.sampled_from(list(SHAPES.all.values())).flatmap(measurements)


def contours() -> st.SearchStrategy[Contour]:
    """Draw the contour of a seat of any known shape."""
    return outlines().map(lambda outline: outline.contour())


def _needs(kind: type[Measured], name: str) -> set[str]:
    """Return the fields that must be drawn before one that limits bind to them."""
    return {need for limit in kind.limits if limit.field == name for need in limit.needs} - {name}


def _value(fact: Fact, limits: list[Limit], values: dict[str, Any]) -> st.SearchStrategy[Any]:
    if fact.quantity is SWITCH:
        return st.booleans()
    if isinstance(fact.quantity, Rows):
        return _rows(fact)
    if fact.quantity is FILE:
        return _files()
    if fact.choices:
        return st.sampled_from(fact.choices)
    if fact.quantity is TEXT:
        if not fact.required:  # it names something that the draw knows nothing of
            return st.none()
        return st.text("abc äß", min_size=1, max_size=int(fact.most or 120)).filter(str.strip)
    number = _number(fact, limits, values)
    left_out = fact.default.metric is None and not fact.required
    return st.none() | st.none() | number if left_out else number


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
    if fact.quantity is LENGTH or isinstance(fact.quantity, Rate | Angle):
        ends = st.sampled_from([low, high]) if fact.above is None else st.nothing()
        return st.floats(low, high, exclude_min=fact.above is not None) | ends
    return st.integers(int(low), int(high))


@st.composite
def _rows(draw: st.DrawFn, fact: Fact) -> tuple[tuple[float, ...], ...]:
    """Draw rows like those that are given as an example, each figure somewhat larger or smaller."""
    size = draw(st.floats(0.5, 2.5))
    share = st.floats(0.85, 1.15)
    return tuple(tuple(cell * size * draw(share) for cell in row) for row in fact.default.metric)


@st.composite
def _files(draw: st.DrawFn) -> Found:
    """Draw a string of points round a seat of some other shape."""
    known = [kind for kind in SHAPES.all.values()
             if not any(fact.quantity is FILE for fact in facts_of(kind).values())]  # fmt: skip
    contour = draw(st.sampled_from(known).flatmap(measurements)).contour()
    count = draw(st.integers(300, 900))
    points = (contour.point_at(contour.length * i / count) for i in range(count))
    text = "\n".join(f"{point.real:.6f},{point.imag:.6f}" for point in points)
    return Found("outline.csv", f"x (mm),y (mm)\n{text}\n".encode())
