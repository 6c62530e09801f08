"""Lengths and rates as a tape and a workshop say them, in and out; millimetres inside.

>>> round(read_length('14 1/2"', Unit.MM), 9)
368.3
>>> show_length(368.3, Unit.IN)
'14 1/2 in'
"""

from __future__ import annotations

import math
import re
import unicodedata
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from patternmaker.errors import Refusal, brief

MM_PER_INCH = 25.4  # international yard and pound agreement, 1959; exact
EXAMPLES = "14 1/2, 14.5 in, 1 ft 2 1/2 in, 368 mm or 36.8 cm"
RATE_EXAMPLES = "1/4 per 10, 2.5% or 0.025"
STITCH_EXAMPLES = "8 per inch, 4 per cm or 3 mm"
BEYOND_ALL_TAPES = 1e9  # mm; not worth its every digit
LONGEST_TEXT = 60  # no measurement is longer; nothing longer is parsed


class Unit(StrEnum):
    """A unit in which a job is written and read."""

    MM = "mm"
    CM = "cm"
    IN = "in"

    @property
    def mm(self) -> float:
        """How many millimetres one of it is."""
        return {Unit.MM: 1.0, Unit.CM: 10.0, Unit.IN: MM_PER_INCH}[self]


_UNITS = {
    "mm": 1.0, "cm": 10.0, "m": 1000.0,
    '"': MM_PER_INCH, "in": MM_PER_INCH, "inch": MM_PER_INCH, "inches": MM_PER_INCH,
    "'": 12 * MM_PER_INCH, "ft": 12 * MM_PER_INCH, "foot": 12 * MM_PER_INCH,
    "feet": 12 * MM_PER_INCH,
}  # fmt: skip
_NUMBER = r"\d+\s*[- ]\s*\d+\s*/\s*\d+|\d+\s*/\s*\d+|\d+(?:[.,]\d+)?|[.,]\d+"
_FRACTION = re.compile(r"(\d{1,9})/(\d{1,9})(?!\d)")
_FEET_AND_INCHES = re.compile(
    rf"(?P<feet>\d+)\s*(?:'|ft|foot|feet)\s*(?P<inches>{_NUMBER})\s*(?:\"|in|inch|inches)?"
)
_ONE = re.compile(rf"(?P<number>{_NUMBER})\s*(?P<unit>{'|'.join(map(re.escape, _UNITS))})?")
_SHARE = re.compile(rf"(?P<minus>-)?(?P<number>{_NUMBER})\s*(?P<percent>%)?")
_AHEAD = {"<fraction>": " ", "<super>": "^", "<sub>": "^"}  # so that 2² is not read as 22


@lru_cache(maxsize=512)
def _plain_text(text: str) -> str:
    """Fold primes, quotes, dashes, odd spaces and vulgar fractions into plain characters."""
    spaced = "".join(_AHEAD.get(unicodedata.decomposition(sign).split(" ")[0], "") + sign
                     for sign in text)  # fmt: skip
    folded = unicodedata.normalize("NFKC", spaced).lower()
    for odd, plain in {"⁄": "/", "′": "'", "’": "'", "''": '"', "”": '"', "“": '"',
                       "–": "-", "−": "-", "\u2010": "-"}.items():  # fmt: skip
        folded = folded.replace(odd, plain)
    return " ".join(folded.split())


def _number(text: str) -> float:
    """Read ``14``, ``14.5``, ``36,8``, ``1/2`` or ``14-1/2``."""
    whole, _, fraction = text.replace("-", " ").rpartition(" ") if "/" in text else ("", "", text)
    if "/" not in text:
        return float(text.replace(",", "."))
    over, under = (int(part) for part in fraction.split("/"))
    return float(whole.strip() or 0) + over / under


def _tidy(text: str) -> str:
    """Close up the spaces round a fraction bar, so that only the one before a fraction is left."""
    return re.sub(r"\s*/\s*", "/", text)


def _misread(raw: object, wants: str, examples: str) -> Refusal:
    mend = f"write it like {examples}"
    return Refusal("", "{value} is not " + wants, value=brief(raw), mend=mend)


def read_length(raw: object, unit: Unit) -> float:
    r"""Return a length in millimetres from what a tape says; a bare number is in ``unit``.

    Raises:
        Refusal: if it can't be read as a length.

    >>> [round(read_length(t, Unit.IN), 3) for t in ("14-1/2", "14½ in", "1' 2 1/2", "36,8 cm")]
    [368.3, 368.3, 368.3, 368.0]
    """
    if isinstance(raw, int | float) and not isinstance(raw, bool):
        return _finite(raw, unit)
    if not isinstance(raw, str) or len(raw) > LONGEST_TEXT:
        raise _misread(raw, "a length", EXAMPLES)
    text = _tidy(_plain_text(raw))
    sign = -1.0 if text.startswith("-") else 1.0
    text = text.removeprefix("-").strip()
    if re.search(r"\d,\d{3}(?!\d)", text):
        raise Refusal(
            "", "{value} could be a decimal or thousands", value=repr(raw),
            mend="write 1.25 or 1250, without the comma",
        )  # fmt: skip
    if any(int(over) >= int(under) > 0 for over, under in _FRACTION.findall(text)):
        raise Refusal(
            "", "{value} has a fraction that is no part of one", value=brief(raw),
            mend="write the whole number apart, as 2 1/8",
        )  # fmt: skip
    try:
        return sign * _length(text, unit)
    except (ValueError, ZeroDivisionError, OverflowError):
        raise _misread(raw, "a length", EXAMPLES) from None


def _finite(raw: float, unit: Unit) -> float:
    try:
        value = float(raw) * unit.mm
    except OverflowError:
        value = math.inf
    if not math.isfinite(value):
        raise _misread(raw, "a length", EXAMPLES)
    return value


def _length(text: str, unit: Unit) -> float:
    if match := _FEET_AND_INCHES.fullmatch(text):
        inches = _number(match["inches"])
        if inches >= 12:  # more than a foot beside a foot is a slip of the pen too
            raise ValueError(text)
        return (12 * int(match["feet"]) + inches) * MM_PER_INCH
    if match := _ONE.fullmatch(text):
        return _number(match["number"]) * (_UNITS[match["unit"]] if match["unit"] else unit.mm)
    raise ValueError(text)


def read_rate(raw: object, unit: Unit = Unit.MM) -> float:
    """Return a rate as a fraction of one, from ``1/4 per 10``, ``2.5%`` or ``0.025``.

    Raises:
        Refusal: if it can't be read as a rate.

    >>> read_rate("1/4 per 10"), read_rate("2.5%"), read_rate(0.025)
    (0.025, 0.025, 0.025)
    """
    try:
        if isinstance(raw, str) and len(raw) <= LONGEST_TEXT:
            return _rate(_tidy(_plain_text(raw)), unit)
        if isinstance(raw, int | float) and not isinstance(raw, bool) and math.isfinite(raw):
            return float(raw)
    except (ValueError, ZeroDivisionError, OverflowError, Refusal):
        pass
    raise _misread(raw, "a rate", RATE_EXAMPLES)


def _rate(text: str, unit: Unit) -> float:
    if " per " in text:
        part, whole = text.split(" per ")
        return read_length(part, unit) / read_length(whole, unit)
    if match := _SHARE.fullmatch(text):
        share = _number(match["number"]) / (100 if match["percent"] else 1)
        return -share if match["minus"] else share
    raise ValueError(text)


def read_stitch(raw: object, unit: Unit) -> float:
    """Return the length of a stitch in millimetres, from it or from how many go on a length.

    Raises:
        Refusal: if it can't be read as either.

    >>> [read_stitch(each, Unit.MM) for each in ("8 per inch", "4 per cm", 3)]
    [3.175, 2.5, 3.0]
    """
    try:
        if not isinstance(raw, str) or " per " not in raw or len(raw) > LONGEST_TEXT:
            return read_length(raw, unit)
        stitches, on = _plain_text(raw).split(" per ")
        return read_length(on if re.match(r"\d", on) else f"1 {on}", unit) / _number(stitches)
    except (ValueError, ZeroDivisionError, OverflowError, Refusal):
        raise _misread(raw, "the length of a stitch", STITCH_EXAMPLES) from None


def show_stitch(value: float, unit: Unit | None) -> str:
    """Return the length of a stitch as machines are set: by the inch, or in millimetres.

    >>> show_stitch(3.175, Unit.IN), show_stitch(3.175, Unit.CM)
    ('8 per inch', '3.175 mm')
    """
    if unit is Unit.IN and value:
        return f"{MM_PER_INCH / value:.4g} per inch"
    return f"{value:.4g} mm"


def show_length(value: float, unit: Unit | None, *, bare: bool = False) -> str:
    """Return a length as it is read off a tape in ``unit``; ``bare`` leaves the unit away.

    Inches go to the nearest 1/16 in lowest terms, millimetres to the half, centimetres to 0.1.

    >>> show_length(365.3, Unit.IN), show_length(365.3, Unit.MM), show_length(365.3, Unit.CM)
    ('14 3/8 in', '365.5 mm', '36.5 cm')
    """
    unit = unit or Unit.MM
    figures = {Unit.IN: _sixteenths, Unit.MM: _halves, Unit.CM: _tenths}[unit](value / unit.mm)
    return figures if bare else f"{figures} {unit}"


def show_length_exactly(value: float, unit: Unit | None) -> str:
    """Return a length to the last digit that matters, for messages in which rounding would lie."""
    unit = unit or Unit.MM
    if value is None or not math.isfinite(value):
        return str(value)
    if not 1.0 <= abs(value) < BEYOND_ALL_TAPES:
        return f"{value / unit.mm:.6g} {unit}"
    rounded = show_length(value, unit)
    if abs(read_length(rounded, unit) - value) < 1e-6:
        return rounded
    thousandths = f"{value / unit.mm:.3f}".rstrip("0").rstrip(".")
    return f"{thousandths} {unit}"


def show_finely(value: float, unit: Unit) -> str:
    """Return a length finer than a tape tells it: to 0.01 mm, or to a thousandth of an inch.

    >>> show_finely(0.254, Unit.IN), show_finely(0.254, Unit.CM)
    ('0.01 in', '0.25 mm')
    """
    shown, name = (value / MM_PER_INCH, "in") if unit is Unit.IN else (value, "mm")
    return f"{round(shown, 3 if unit is Unit.IN else 2):g} {name}"


def thread_in(value: float, unit: Unit) -> tuple[float, str]:
    """Return a length of thread as it is bought, and its unit: yards in an inch job, else metres.

    >>> thread_in(1828.8, Unit.IN)
    (2.0, 'yd')
    """
    return (value / (36 * MM_PER_INCH), "yd") if unit is Unit.IN else (value / 1000, "m")


def show_thread(value: float, unit: Unit) -> str:
    """Return a length of thread to be read, to a tenth of a metre or a yard.

    >>> show_thread(7657.5, Unit.CM)
    '7.7 m'
    """
    figure, name = thread_in(value, unit)
    return f"{figure:.1f} {name}"


def show_gauge(value: float, unit: Unit) -> str:
    """Return a diameter or a thickness as it is sold by: to 1/32 in, or to 0.1 mm.

    >>> show_gauge(25.4 * 5 / 32, Unit.IN), show_gauge(4, Unit.CM)
    ('5/32 in', '4 mm')
    """
    if unit is not Unit.IN:
        return f"{round(value, 1):g} mm"
    whole, rest = divmod(_nearest(value / MM_PER_INCH, 32), 32)
    return f"{whole or ''}{' ' if whole and rest else ''}{Fraction(rest, 32) if rest else ''} in"


def _nearest(value: float, parts: int) -> int:
    return math.floor(abs(value) * parts + 0.5)


def _sixteenths(value: float) -> str:
    count = _nearest(value, 16)
    whole, rest = divmod(count, 16)
    minus = "-" if value < 0 and count else ""
    if not rest:
        return f"{minus}{whole}"
    return minus + (f"{whole} " if whole else "") + str(Fraction(rest, 16))


def _halves(value: float) -> str:
    count = _nearest(value, 2)
    if count > 2e9:
        return f"{value:g}"
    whole, rest = divmod(count, 2)
    return ("-" if value < 0 and count else "") + f"{whole}{'.5' if rest else ''}"


def _tenths(value: float) -> str:
    count = _nearest(value, 10)
    return ("-" if value < 0 and count else "") + f"{count / 10:.1f}"


def area_in(value: float, unit: Unit) -> tuple[float, str]:
    """Return an area as it is bought, and its unit: square feet in an inch job, else square metres.

    >>> area_in(2e6, Unit.CM)
    (2.0, 'm²')
    """
    if unit is Unit.IN:
        return value / (12 * MM_PER_INCH) ** 2, "sq ft"
    return value / 1e6, "m²"


def show_area(value: float, unit: Unit) -> str:
    """Return an area to be read: two decimals of a square foot, three of a square metre."""
    figure, name = area_in(value, unit)
    return f"{figure:.2f} {name}" if unit is Unit.IN else f"{figure:.3f} {name}"


def show_rate(value: float, unit: object = None) -> str:
    """Return a rate in per cent.

    >>> show_rate(0.025)
    '2.5 %'
    """
    del unit
    return f"{value * 100:.4g} %" if abs(value) >= 5e-7 else "0 %"


_UPPER = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_LOWER = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")


def with_set_fractions(text: str) -> str:
    """Return ``text`` with its fractions in superior and inferior figures, for print.

    >>> with_set_fractions("14 13/16 in")
    '14¹³⁄₁₆ in'
    """
    return re.sub(
        r"(?:(?<=\d) )?\b(\d{1,2})/(\d{1,2})\b",
        lambda match: f"{match[1].translate(_UPPER)}⁄{match[2].translate(_LOWER)}",
        text,
    )
