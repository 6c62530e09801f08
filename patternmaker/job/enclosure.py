"""What a print carries, so that it can be checked without the job file at hand.

It holds what the job says (its tables, not its comments), the drawings that it names, and what
decides which lines are on which paper. A print of another version is not checked: that version
may draft otherwise, and be right.
"""

from __future__ import annotations

import base64
import json
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Any

import patternmaker
from patternmaker.errors import Refusal, Refusals
from patternmaker.job.model import Given
from patternmaker.job.reading import read_job

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternmaker.job.model import Job

BASE_64 = "base64"
ANEW = "draft the job anew, and check that"


@dataclass(frozen=True)
class Printed:
    """What a job was printed on, upright, in mm, and how its strips were.

    Drawn for a printer that prints long or short, it is so much larger than life across the paper
    and up it; on a page that lies the two change places. If only some pieces were printed, it says
    by which names they were asked for.
    """

    paper: str
    width_mm: float
    height_mm: float
    whole_strips: bool
    drawn: tuple[float, float] | None = None
    only: tuple[str, ...] = ()


@dataclass(frozen=True)
class Enclosure:
    """Everything that a print was drafted from, and by which version."""

    version: str
    given: Given
    printed: Printed

    @classmethod
    def of(cls, job: Job, printed: Printed) -> Enclosure:
        """Return what a print of a job must carry."""
        return cls(patternmaker.__version__, job.given, printed)

    @property
    def written(self) -> bytes:
        """It as JSON: the same bytes for the same job."""
        files = {name: _kept(content) for name, content in sorted(self.given.files.items())}
        data = {
            "patternmaker": self.version,
            "job": self.given.tables,
            "files": files,
            "printed": {k: v for k, v in asdict(self.printed).items() if v is not None},
        }
        return json.dumps(data, ensure_ascii=False, separators=(",", ":")).encode()

    @classmethod
    def read(cls, content: bytes) -> Enclosure:
        """Return what a print carries.

        Raises:
            Refusals: if it is damaged, or of another version.
        """
        try:
            data = json.loads(content)
            version = data["patternmaker"]
        except (ValueError, KeyError, TypeError, RecursionError):
            raise _damaged() from None
        if version != patternmaker.__version__:
            raise _of_another_version(version)
        try:
            files = dict(_files(data["files"]))
            return cls(version, Given(dict(data["job"]), files), _printed(data["printed"]))
        except (ValueError, KeyError, TypeError, AttributeError):
            raise _damaged() from None

    def job(self) -> Job:
        """Return the job; no file on the disk is opened for it.

        Raises:
            Refusals: if it holds mistakes, which no job that was drafted does.
        """
        return read_job(self.given.tables, self.given.files)


def _printed(data: Mapping[str, Any]) -> Printed:
    return Printed(
        str(data["paper"]), float(data["width_mm"]), float(data["height_mm"]),
        whole_strips=bool(data["whole_strips"]), drawn=_drawn(data.get("drawn")),
        only=tuple(map(str, data.get("only", ()))),
    )  # fmt: skip


def _drawn(data: list[Any] | None) -> tuple[float, float] | None:
    if data is None:
        return None
    across, up = data
    return float(across), float(up)


def _kept(content: bytes) -> str | dict[str, str]:
    """Return a file as text where it is text, which packs closer."""
    try:
        return content.decode()
    except UnicodeDecodeError:
        return {BASE_64: base64.b64encode(content).decode()}


def _files(data: Mapping[str, Any]) -> Iterator[tuple[str, bytes]]:
    for name, kept in data.items():
        text = isinstance(kept, str)
        yield name, kept.encode() if text else base64.b64decode(kept[BASE_64], validate=True)


def _damaged() -> Refusals:
    return Refusals([Refusal("", "the job that it carries is damaged", mend=ANEW)])


def _of_another_version(version: object) -> Refusals:
    says = "it was drafted by version {value}, and this is {limit}, which may draft otherwise"
    return Refusals(
        [Refusal("", says, value=str(version)[:20], limit=patternmaker.__version__, mend=ANEW)]
    )
