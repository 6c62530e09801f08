"""The lettering that is embedded: where its files are, how wide its letters run, what it lacks.

Only two tables of the TrueType files are read, ``cmap`` (format 4) and ``hmtx``: enough to set
type without loading a library (OpenType specification 1.9, chapters cmap, hmtx, hhea, head).
"""

from __future__ import annotations

import struct
from functools import cache, cached_property, lru_cache
from pathlib import Path

import patternmaker

FILES = {False: "Roboto-Regular.ttf", True: "Roboto-Bold.ttf"}
LINE = 1.3  # from baseline to baseline, in sizes of the type


def font_file(*, bold: bool) -> Path:
    """Return the path of a font file: in the installed package, or in a checkout beside it."""
    package = Path(patternmaker.__file__).parent
    for folder in (package / "fonts", package.parent / "fonts"):
        if (path := folder / FILES[bold]).is_file():
            return path
    raise FileNotFoundError(f"{FILES[bold]} was not installed with patternmaker")


class Typeface:
    """The measures of one font file."""

    def __init__(self, path: Path) -> None:
        self._data = path.read_bytes()
        (count,) = struct.unpack_from(">H", self._data, 4)
        records = struct.iter_unpack(">4sLLL", self._data[12 : 12 + 16 * count])
        self._tables = {tag.decode("ascii"): offset for tag, _, offset, _ in records}

    @cached_property
    def units_per_em(self) -> int:
        """How many units of the font make one size of the type."""
        return int(struct.unpack_from(">H", self._data, self._tables["head"] + 18)[0])

    @cached_property
    def _advances(self) -> tuple[int, ...]:
        (count,) = struct.unpack_from(">H", self._data, self._tables["hhea"] + 34)
        pairs = struct.unpack_from(f">{2 * count}H", self._data, self._tables["hmtx"])
        return pairs[::2]

    @cached_property
    def _glyphs(self) -> dict[int, int]:
        """Each code point's glyph."""
        start = self._tables["cmap"]
        (count,) = struct.unpack_from(">H", self._data, start + 2)
        offsets = {
            struct.unpack_from(">H", self._data, start + offset)[0]: start + offset
            for _, _, offset in struct.iter_unpack(
                ">HHL", self._data[start + 4 : start + 4 + 8 * count]
            )
        }
        return dict(self._format_4(offsets[4]))

    def _format_4(self, at: int) -> list[tuple[int, int]]:
        (doubled,) = struct.unpack_from(">H", self._data, at + 6)
        n = doubled // 2
        ends = struct.unpack_from(f">{n}H", self._data, at + 14)
        starts = struct.unpack_from(f">{n}H", self._data, at + 16 + doubled)
        deltas = struct.unpack_from(f">{n}h", self._data, at + 16 + 2 * doubled)
        ranges_at = at + 16 + 3 * doubled
        ranges = struct.unpack_from(f">{n}H", self._data, ranges_at)
        found = []
        for i in range(n):
            for code in range(starts[i], ends[i] + 1):
                glyph = code
                if ranges[i]:
                    place = ranges_at + 2 * i + ranges[i] + 2 * (code - starts[i])
                    (glyph,) = struct.unpack_from(">H", self._data, place)
                if glyph := (glyph + deltas[i]) % 65536 if glyph or not ranges[i] else 0:
                    found.append((code, glyph))
        return found

    def width(self, text: str, size: float) -> float:
        """Return how wide ``text`` runs at a size, mm."""
        glyphs, advances = self._glyphs, self._advances
        last = len(advances) - 1
        units = sum(advances[min(glyphs.get(ord(sign), 0), last)] for sign in text)
        return units * size / self.units_per_em

    def lacks(self, text: str) -> str:
        """Return the signs of ``text`` that the font has no glyph for."""
        return "".join(dict.fromkeys(s for s in text if ord(s) not in self._glyphs))


@cache
def typeface(*, bold: bool = False) -> Typeface:
    """Return the regular or the bold face."""
    return Typeface(font_file(bold=bold))


@lru_cache(maxsize=4096)
def _word(text: str, *, bold: bool) -> float:
    """Return how wide a word runs at size 1; labels say the same words over and over."""
    return typeface(bold=bold).width(text, 1.0)


def width(text: str, size: float, *, bold: bool = False) -> float:
    """Return how wide a line of text runs, mm."""
    words = text.split(" ")
    space = _word(" ", bold=bold) * (len(words) - 1)
    return size * (space + sum(_word(word, bold=bold) for word in words))


def lacking(text: str) -> str:
    """Return the signs that can't be printed."""
    return typeface().lacks(text)


def wrapped(text: str, size: float, room: float, *, bold: bool = False) -> list[str]:
    """Return ``text`` in lines no wider than ``room``; a word that is wider is broken."""
    lines: list[str] = []
    line, used = "", 0.0
    space = size * _word(" ", bold=bold)
    for word in text.split(" "):
        needs = size * _word(word, bold=bold)
        if line and used + space + needs <= room:
            line, used = f"{line} {word}", used + space + needs
            continue
        if line:
            lines.append(line)
        *whole, line = _broken(word, size, room, bold=bold) if needs > room else [word]
        lines += whole
        used = width(line, size, bold=bold)
    return [*lines, line]


def _broken(word: str, size: float, room: float, *, bold: bool) -> list[str]:
    parts = [""]
    for sign in word:
        if parts[-1] and width(parts[-1] + sign, size, bold=bold) > room:
            parts.append("")
        parts[-1] += sign
    return parts
