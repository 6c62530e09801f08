"""A job: some seats to be covered, ready to be drafted."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from patternmaker.covers.finishing import finished
from patternmaker.facts import Measured, both, choice, count, length, measured, names, text
from patternmaker.pattern.brief import TAKEN
from patternmaker.pattern.cloth import laid
from patternmaker.units import Unit

if TYPE_CHECKING:
    from collections.abc import Mapping

    from patternmaker.covers import Cover
    from patternmaker.outlines import Outline
    from patternmaker.pattern.brief import Brief
    from patternmaker.pattern.piece import Pattern

MOST_SEATS = 200  # different seats in one job


@measured
class JobFacts(Measured):
    """What a job says of itself."""

    name: str = text("a name for the job, which its files take")
    units: str = choice("the unit of every bare number", [unit.value for unit in Unit], default="")
    date: str | None = text("a date to print on the sheets", default=None, required=False, most=40)


@measured
class SeatFacts(Measured):
    """What a job says of one seat, besides its outline, cover and base."""

    name: str = text("a name for the seat", most=60)
    make: int = count("how many of this seat")
    reversed: int = count(
        "how many more of its mirror image, for a seat that differs left and right",
        default=0, least=0,
    )  # fmt: skip
    taken: str = choice("how the seat was measured", TAKEN, default="flat")
    measured_round: float | None = length(
        "tape round the seam, a cross-check", default=None, least=150, required=False,
        most=20_000,
    )  # fmt: skip
    without: tuple[str, ...] = names("pieces to leave out, such as the dust cover")
    trust: str = choice("which wins where the tape disagrees", ("width", "round"), default="width")


@measured
class PanelFacts(Measured):
    """What a job says of a panel, besides its outline."""

    name: str = text("a name for the panel", most=60)
    cut: int = count("how many of it a seat takes", most=20)
    reversed: int = count(
        "how many more of its mirror image, for a panel that differs left and right",
        default=0, least=0, most=20,
    )  # fmt: skip


@measured
class Inset(Measured):
    """A base that follows the seam, a little inside it, or outside."""

    inset: float = length(
        "from the seam line in to the board's edge",
        default=both(in_=1 / 8, mm=3), most=200, required=False,
    )  # fmt: skip
    outset: float | None = length(
        "from the seam line out to the board's edge, where the base is the larger", default=None,
        most=300, required=False, unless=("inset",),
    )  # fmt: skip

    @property
    def step(self) -> float:
        """From the seam line out to the board's edge; negative where it lies inside."""
        return -self.inset if self.outset is None else self.outset


@dataclass(frozen=True)
class Seat:
    """One seat: how many, its shape, its cover, and all that a cover must know.

    ``reversed`` more are made of its mirror image, from the same pattern turned over.
    """

    name: str
    make: int
    outline: Outline
    cover: Cover
    brief: Brief
    reversed: int = 0

    def pattern(self) -> Pattern:
        """Return its pattern, laid as its materials must lie and finished as its job asks."""
        return finished(laid(self.cover.pattern(self.brief)), self.brief)


@dataclass(frozen=True)
class Given:
    """What a job was read from.

    Args:
        tables: of the job file.
        files: that it names, by the names that it gives them.
    """

    tables: Mapping[str, object] = field(default_factory=dict)
    files: Mapping[str, bytes] = field(default_factory=dict)


@dataclass(frozen=True)
class Job:
    """Some seats, in the order of the job file."""

    name: str
    unit: Unit
    seats: tuple[Seat, ...]
    date: str | None = None
    given: Given = field(default=Given(), repr=False, compare=False)
