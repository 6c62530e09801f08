"""The printers that a user has measured, kept in a file in the user's own configuration folder.

The only thing that is remembered from one run to the next. What is damaged there is told, and kept
aside under another name before the file is written again.
"""

from __future__ import annotations

import json
import os
import sys
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from patternmaker.drafting.staging import put_in_place
from patternmaker.errors import OutputFault, Refusal, Refusals
from patternmaker.facts import unknown
from patternmaker.sheets.papers import Margins, Paper
from patternmaker.sheets.printer import Printer, Sides
from patternmaker.units import Unit

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

APP, FILE = "patternmaker", "printers.json"
FORMAT = 1
FIRST = "patternmaker printer --proof proof.pdf draws the page to measure"


def settings_folder(platform: str, settings: Mapping[str, str], home: Path) -> Path:
    """Return where a user's settings lie on a platform.

    XDG Base Directory Specification 0.8 (a relative path is not heeded); on Windows and macOS by
    their makers' guides.

    >>> settings_folder("linux", {}, Path("/home/me")).as_posix()
    '/home/me/.config/patternmaker'
    """
    if platform == "win32":
        roaming = settings.get("APPDATA")
        return (Path(roaming) if roaming else home / "AppData" / "Roaming") / APP
    if platform == "darwin":
        return home / "Library" / "Application Support" / APP
    asked = settings.get("XDG_CONFIG_HOME", "")
    return (Path(asked) if asked.startswith("/") else home / ".config") / APP


def usual_place() -> Path:
    """Return where the file of this user lies.

    Raises:
        OutputFault: if nobody knows where the user is at home.
    """
    try:
        return settings_folder(sys.platform, os.environ, Path.home()) / FILE
    except RuntimeError as fault:
        raise OutputFault(f"can't tell where printers are kept: {fault}") from None


@dataclass(frozen=True)
class Printers:
    """What the file holds.

    Args:
        place: where it lies.
        known: the printers, by name.
        faults: what is damaged in it, by the name of the printer, or by "" for the whole file.
        content: the file as it was found.
    """

    place: Path
    known: Mapping[str, Printer]
    faults: Mapping[str, str]
    content: bytes = b""

    @classmethod
    def kept(cls, place: Path | None = None) -> Printers:
        """Return the printers of this user, or of a file.

        Raises:
            OutputFault: if the file is there and can't be opened.
            Refusals: if a later version wrote it.
        """
        place = usual_place() if place is None else place
        try:
            content = place.read_bytes()
        except (FileNotFoundError, NotADirectoryError):
            return cls(place, {}, {})
        except OSError as fault:
            raise OutputFault(f"can't read {place}: {fault.strerror or fault}") from fault
        return _opened(place, content)

    def named(self, name: str) -> Printer:
        """Return the printer of a name, in small letters or large.

        Raises:
            Refusals: if there is none, with the nearest, or if what is kept of it is damaged.
        """
        for known, printer in self.known.items():
            if _plain(known) == _plain(name):
                return printer
        for damaged, fault in self.faults.items():
            if not damaged or _plain(damaged) == _plain(name):
                raise Refusals([self._is_damaged(name, fault)])
        mistake = unknown("printer", name, self.known)
        if not self.known:
            mistake.mend = f"none has been measured yet; {FIRST}"
        raise Refusals([mistake])

    def _is_damaged(self, name: str, fault: str) -> Refusal:
        return Refusal(
            "printer", "{value} can't be read from {limit}",
            value=repr(name), limit=f"{self.place}: {fault}",
            mend="mend that, or measure the printer again: the file is then kept aside",
        )  # fmt: skip

    def knows(self, name: str) -> Printer | None:
        """Return the printer of a name if what is kept of it is sound."""
        return next((p for known, p in self.known.items() if _plain(known) == _plain(name)), None)

    def with_one(self, printer: Printer) -> Path | None:
        """Keep a printer, in place of an earlier one of its name.

        Returns:
            where the file as it was is kept aside, if it was damaged.

        Raises:
            OutputFault: if that can't be done; the file is then as it was.
        """
        return self._keep({**self._without(printer.name), printer.name: printer})

    def without(self, name: str) -> Path | None:
        """Forget a printer; see `with_one`."""
        return self._keep(self._without(name))

    def _without(self, name: str) -> dict[str, Printer]:
        return {known: p for known, p in self.known.items() if _plain(known) != _plain(name)}

    def _keep(self, printers: Mapping[str, Printer]) -> Path | None:
        place = self.place.resolve()  # a link to a file elsewhere stays one
        aside = next(_aside(place)) if self.faults else None
        files = {aside.name: self.content} if aside else {}
        put_in_place(place.parent, files | {place.name: _written(printers)})
        return aside


def _plain(name: str) -> str:
    return " ".join(name.split()).casefold()


def _aside(place: Path) -> Iterator[Path]:
    """Yield names beside a file that no other has."""
    for number in range(1, sys.maxsize):
        path = place.with_name(f"{place.stem}-damaged-{number}{place.suffix}")
        if not path.exists() and not path.is_symlink():
            yield path


def _opened(place: Path, content: bytes) -> Printers:
    try:
        data = json.loads(content.decode("utf-8-sig"))
        if data["format"] > FORMAT:
            raise Refusals([_too_new(place)])
        entries = dict(data["printers"])
    except json.JSONDecodeError as fault:
        where = f"line {fault.lineno}, column {fault.colno}"
        return Printers(place, {}, {"": f"it is no JSON at {where}"}, content)
    except (ValueError, KeyError, TypeError, RecursionError):
        return Printers(place, {}, {"": "it is no list of printers"}, content)
    known: dict[str, Printer] = {}
    faults: dict[str, str] = {}
    for name, entry in entries.items():
        try:
            known[name] = _printer(name, entry)
        except Refusals as refusals:
            faults[name] = "; ".join(mistake.told() for mistake in refusals)
        except (ValueError, KeyError, TypeError, AttributeError, ArithmeticError):
            faults[name] = "what is kept of it is damaged"
    return Printers(place, known, faults, content)


def _too_new(place: Path) -> Refusal:
    mend = "use that version, or move the file away"
    return Refusal("printer", "a later version of patternmaker wrote {value}", value=place,
                   mend=mend)  # fmt: skip


def _printer(name: str, data: Mapping[str, Any]) -> Printer:
    paper, margins = data["paper"], data["margins_mm"]
    return Printer(
        name,
        Paper(str(paper["name"]), float(paper["width_mm"]), float(paper["height_mm"])),
        Margins(*(float(margins[side]) for side in ("left", "right", "top", "bottom"))),
        Unit(data["units"]),
        _sides(data["drawn_mm"]),
        _sides(data["measured_mm"]),
    )


def _sides(data: Mapping[str, Any]) -> Sides:
    long = data["long"]
    return Sides(float(data["across"]), float(data["up"]), None if long is None else float(long))


def _written(printers: Mapping[str, Printer]) -> bytes:
    """Return the file: the same bytes for the same printers."""
    entries = {name: _entry(printers[name]) for name in sorted(printers)}
    data = {"format": FORMAT, "printers": entries}
    return (json.dumps(data, ensure_ascii=False, indent=2) + "\n").encode()


def _entry(printer: Printer) -> dict[str, Any]:
    paper = printer.paper
    return {
        "paper": {
            "name": paper.name,
            "width_mm": float(paper.width),
            "height_mm": float(paper.height),
        },
        "margins_mm": _plain_lengths(printer.margins),
        "units": printer.unit.value,
        "drawn_mm": _plain_lengths(printer.stated),
        "measured_mm": _plain_lengths(printer.measured),
    }


def _plain_lengths(lengths: Sides | Margins) -> dict[str, float | None]:
    return {name: None if mm is None else float(mm) for name, mm in asdict(lengths).items()}
