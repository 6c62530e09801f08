"""Fields that carry their own facts, and the check of a set of values against them."""

from __future__ import annotations

import dataclasses
import difflib
import math
import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, ClassVar, TypeVar, dataclass_transform

from patternmaker.errors import Refusal, Refusals, brief
from patternmaker.facts.pulls import STRETCH_TEST, Pull
from patternmaker.facts.quantities import (
    ANGLE,
    COUNT,
    FILE,
    LENGTH,
    NAMES,
    RATE,
    STITCH,
    SWITCH,
    TEXT,
    Rows,
)
from patternmaker.facts.words import meant
from patternmaker.units import MM_PER_INCH, Unit

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

    from patternmaker.facts.quantities import Quantity

T = TypeVar("T")

LONGEST = 5000.0  # mm; past any seat, and the longest side of a PDF page (ISO 32000-1, Annex C)
ALIKE, PART_ALIKE = 0.6, 0.85  # of the letters of a word and a known name, or a part of one
HAIR = 0.001  # mm; far finer than a knife can follow: two lengths within it are the same


@dataclass(frozen=True)
class Default:
    """A default in each system of units; both are held in millimetres where they are lengths."""

    metric: Any
    inch: Any

    def in_(self, unit: Unit) -> Any:
        """Return the default for a job in ``unit``."""
        return self.inch if unit is Unit.IN else self.metric


def both(*, mm: float, in_: float | None = None) -> Default:
    """Return a default length: in millimetres for a metric job, in inches for an inch job."""
    return Default(float(mm), float(mm) if in_ is None else in_ * MM_PER_INCH)


def both_rows(*, mm: Iterable[Sequence[float]], in_: Iterable[Sequence[float]]) -> Default:
    """Return default rows of lengths, for a metric job and for an inch job."""
    return Default(
        tuple(tuple(float(cell) for cell in row) for row in mm),
        tuple(tuple(cell * MM_PER_INCH for cell in row) for row in in_),
    )


@dataclass(frozen=True)
class Fact:
    """What one field knows about itself."""

    words: str
    quantity: Quantity
    default: Default
    least: float | None = None
    most: float | None = None
    above: float | None = None
    required: bool = False
    choices: tuple[str, ...] = ()
    unless: tuple[str, ...] = ()
    """Fields that may be given in its place, but not beside it."""

    def mistake(self, name: str, value: Any) -> Refusal | None:
        """Return what is wrong with ``value`` on its own, or None."""
        if value is None or isinstance(value, bool) or self.quantity in {FILE, NAMES}:
            return None
        if self.choices and value not in self.choices:
            return unknown(name, value, self.choices)
        if isinstance(value, str):
            return self._text_mistake(name, value)
        if isinstance(value, Pull):
            return value.mistake(name)
        if isinstance(self.quantity, Rows):
            return self._rows_mistake(name, self.quantity.columns, value)
        return self._bound_mistake(name, value)

    def _text_mistake(self, name: str, value: str) -> Refusal | None:
        if not value:
            return Refusal(name, "is empty", mend="give it a name")
        if self.most is not None and len(value) > self.most:
            return Refusal(
                name, "has {value} letters, more than {limit}", value=len(value),
                limit=int(self.most), mend="shorten it", show=COUNT.show,
            )  # fmt: skip
        return None

    def _rows_mistake(
        self, name: str, columns: tuple[str, ...], rows: tuple[tuple[float, ...], ...]
    ) -> Refusal | None:
        number = Fact(self.words, COUNT, self.default, self.least, self.most)
        if wrong := number.mistake(f"{name}, number of rows", len(rows)):
            return wrong
        cell = Fact(self.words, LENGTH, self.default, 0.0, LONGEST)
        mistakes = (
            cell.mistake(f"{name}, row {i}, {column}", value)
            for i, row in enumerate(rows, 1)
            for column, value in zip(columns, row, strict=False)
        )
        return next(filter(None, mistakes), None)

    def _bound_mistake(self, name: str, value: float) -> Refusal | None:
        if isinstance(value, float) and not math.isfinite(value):
            return Refusal(name, "{value} is not a measurement", value=value, mend="measure again")
        for broken, says, limit, mend in (
            (self.above is not None and value <= self.above, "{value} is not more than {limit}",
             self.above, "measure again"),
            (self.least is not None and value < self.least, "{value} is less than {limit}",
             self.least, "make it {limit} or more"),
            (self.most is not None and value > self.most, "{value} is more than {limit}",
             self.most, f"make it {{limit}} or less{self.quantity.doubt}"),
        ):  # fmt: skip
            if broken:
                show = self.quantity.show
                return Refusal(name, f"{says}; {mend}", value=value, limit=limit, show=show)
        return None


def _made(fact: Fact) -> Any:
    return field(default=fact.default.metric, metadata={"fact": fact})


def length(
    words: str,
    *,
    default: Default | None = None,
    least: float | None = 0.0,
    above: float | None = None,
    most: float = LONGEST,
    required: bool = True,
    unless: tuple[str, ...] = (),
) -> Any:
    """Make a field that holds a length in millimetres, or None where it has no default.

    One that is required need not be given where one of the fields ``unless`` is; none may be
    given beside one of them.
    """
    none = Default(None, None)
    return _made(Fact(words, LENGTH, default or none, least, most, above, required, unless=unless))


def rate(words: str, *, default: float | None = None, most: float = 1.0) -> Any:
    """Make a field that holds a share of one."""
    return _made(Fact(words, RATE, Default(default, default), 0.0, most))


def count(words: str, *, default: int = 1, least: int = 1, most: int = 10_000) -> Any:
    """Make a field that holds a whole number."""
    return _made(Fact(words, COUNT, Default(default, default), least, most))


def text(words: str, *, default: str | None = None, required: bool = True, most: int = 120) -> Any:
    """Make a field that holds a line of text."""
    return _made(Fact(words, TEXT, Default(default, default), most=most, required=required))


def choice(words: str, choices: Iterable[str], *, default: str | None) -> Any:
    """Make a field that holds one of a few words; with an empty default it must be given.

    With None for a default it may be left away, and something else settles it.
    """
    return _made(
        Fact(
            words,
            TEXT,
            Default(default, default),
            required=default == "",
            choices=tuple(choices),
        )
    )


def switch(words: str, *, default: bool = False) -> Any:
    """Make a field that holds yes or no."""
    return _made(Fact(words, SWITCH, Default(default, default)))


def angle(words: str, *, default: float, least: float, most: float, required: bool = True) -> Any:
    """Make a field that holds an angle in degrees."""
    return _made(Fact(words, ANGLE, Default(default, default), least, most, required=required))


def rows(
    words: str,
    columns: tuple[str, ...],
    *,
    needed: int | None = None,
    default: Default | None = None,
    least: int = 0,
    most: int = 200,
) -> Any:
    """Make a field that holds rows of lengths: a tuple of tuples, in millimetres.

    Args:
        words: what is measured.
        columns: what each figure of a row is.
        needed: how many figures every row must have; all of them if not given.
        default: rows for each system of units; none, and the field may be left away, if not given.
        least: fewest rows.
        most: most rows.
    """
    quantity = Rows(columns, len(columns) if needed is None else needed)
    return _made(Fact(words, quantity, default or Default((), ()), least, most,
                      required=default is not None))  # fmt: skip


def stitch(words: str, *, default: Default, least: float, most: float) -> Any:
    """Make a field that holds the length of a stitch in millimetres."""
    return _made(Fact(words, STITCH, default, least, most))


def names(words: str) -> Any:
    """Make a field that holds some names; none, if it is left away."""
    return _made(Fact(words, NAMES, Default((), ())))


def pull(words: str, *, default: None) -> Any:
    """Make a field that holds a stretch test, or None where there was none."""
    return _made(Fact(words, STRETCH_TEST, Default(default, default)))


def file(words: str, *, required: bool = True) -> Any:
    """Make a field that holds a file as it was found beside the job."""
    return _made(Fact(words, FILE, Default(None, None), required=required))


@dataclass(frozen=True)
class Limit:
    """A bound on one field that other fields set; ``bound`` takes them by name."""

    field: str
    bound: Callable[..., float | None]
    words: str
    mend: str
    upper: bool

    @property
    def needs(self) -> tuple[str, ...]:
        """The names of the fields that set the bound."""
        return self.bound.__code__.co_varnames[: self.bound.__code__.co_argcount]

    def value(self, values: Mapping[str, Any]) -> float | None:
        """Return the bound for these values, or None where it sets none."""
        return self.bound(*(values[name] for name in self.needs))

    def mistake(self, values: Mapping[str, Any], show: Callable[..., str]) -> Refusal | None:
        """Return how ``values`` break this limit, or None."""
        value, bound = values[self.field], self.value(values)
        if value is None or bound is None:
            return None
        if (value - bound if self.upper else bound - value) <= 1e-9:
            return None
        says = f"{{value}} is {'more' if self.upper else 'less'} than {self.words} ({{limit}})"
        return Refusal(self.field, says, value=value, limit=bound, mend=self.mend, show=show)


def at_most(field: str, bound: Callable[..., float | None], words: str, mend: str) -> Limit:
    """Bind a field from above to others, named by the parameters of ``bound``."""
    return Limit(field, bound, words, mend, upper=True)


def at_least(field: str, bound: Callable[..., float | None], words: str, mend: str) -> Limit:
    """Bind a field from below to others, named by the parameters of ``bound``."""
    return Limit(field, bound, words, mend, upper=False)


class Measured:
    """A frozen set of measurements that can't be made wrong.

    Raises:
        Refusals: on construction, naming every field that is out of its bounds.
    """

    limits: ClassVar[tuple[Limit, ...]] = ()
    called: ClassVar[str] = ""
    """What a job file calls it, where it is one of several."""

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        """Yield what is wrong with values that are good each by itself and within the limits."""
        del values
        return iter(())

    def __post_init__(self) -> None:
        if wrong := list(mistakes(type(self), vars(self))):
            raise Refusals(wrong)


@dataclass_transform(frozen_default=True, kw_only_default=True, field_specifiers=(field, length,
                     rate, count, text, choice, switch, angle, rows, stitch, names,
                     pull, file))  # fmt: skip
def measured(kind: type[T]) -> type[T]:
    """Make a class of facts a frozen dataclass with named fields only."""
    return dataclass(frozen=True, kw_only=True)(kind)


def facts_of(kind: type[Measured]) -> dict[str, Fact]:
    """Return the facts of each field, in the order in which they are asked for."""
    return {
        each.name: each.metadata["fact"]
        for each in dataclasses.fields(kind)  # type: ignore[arg-type]
        if "fact" in each.metadata
    }


def mistakes(kind: type[Measured], values: Mapping[str, Any]) -> Iterator[Refusal]:
    """Yield every mistake among ``values``, limits between good fields included."""
    facts = facts_of(kind)
    given = {name: values[name] for name in facts if name in values}
    wrong = {name: facts[name].mistake(name, value) for name, value in given.items()}
    good = {name: value for name, value in given.items() if wrong[name] is None}
    found = [mistake for mistake in wrong.values() if mistake]
    found += _limits_broken(kind, facts, good)
    yield from found
    if not found and good.keys() == facts.keys():
        yield from kind.misfits(good)


def _limits_broken(
    kind: type[Measured], facts: Mapping[str, Fact], good: Mapping[str, Any]
) -> Iterator[Refusal]:
    """Yield each limit that is broken; a field past its own sets no limit to another."""
    sound = set(good)
    for limit in kind.limits:
        if {limit.field, *limit.needs} <= sound:
            show = facts[limit.field].quantity.show
            if wrong := limit.mistake(good, show):
                sound.remove(limit.field)
                yield wrong


def unknown(name: str, value: object, known: Iterable[str]) -> Refusal:
    """Return the refusal of a word that is none of the known ones, with the nearest of them."""
    known = list(known)
    near = nearest(str(value), known)
    mend = f"did you mean {near!r}?" if near else f"it can be {', '.join(known)}"
    return Refusal(name, "{value} is not known", value=brief(value), mend=mend)


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known name that is most like a word, or holds a word most like it, if one is.

    >>> nearest("lether", ["velour", "upholstery leather"]), nearest("silk", ["velour"])
    ('upholstery leather', None)
    """
    known = list(known)
    if other := meant(word, known):
        return other

    def likeness(text: str, cutoff: float) -> float:
        ratio = difflib.SequenceMatcher(None, word.lower()[:60], text.lower()).ratio()
        return ratio if ratio >= cutoff else 0.0

    def best(name: str) -> float:
        parts = re.split("[ _]", name)
        return max(likeness(name, ALIKE), *(likeness(part, PART_ALIKE) for part in parts))

    found = max(known, key=best, default="")
    return found if found and best(found) else None
