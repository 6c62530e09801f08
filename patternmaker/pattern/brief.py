"""What a cover must know of the seat that it is drafted for."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from patternmaker.facts import Measured, both, length, measured, switch, text
from patternmaker.pattern.finishing import Finishing

if TYPE_CHECKING:
    from collections.abc import Mapping

    from patternmaker.geometry.contour import Contour
    from patternmaker.materials import Material
    from patternmaker.pattern.allowances import Allowances
    from patternmaker.pattern.notes import Note

TAKEN = {
    "flat": "Measured flat, across the seams: the finished seam lies where it was measured.",
    "crown": "Measured over the crown: the rise of the padding is in it, so the seam will lie "
    "further out than a flat measure says.",
    "old cover": "Measured on the old cover, unpicked: its take-up is already in it, "
    "so none is added.",
    "board": "Measured on the board: padding that bulges past the board is not in it.",
}
"""How a seat may be measured, and what each way implies."""


def sized(taped: Contour, round_: float | None) -> Contour:
    """Return an outline grown or shrunk to a length round it, or as it is where none is given."""
    return taped if round_ is None else taped.mapped(round_ / taped.length)


@dataclass(frozen=True)
class Panel:
    """A piece with an outline of its own, as a job gives it.

    Args:
        name: what it is called.
        outline: its sew line.
        cut: how many of it a seat takes.
        reversed: how many more of its mirror image.
    """

    name: str
    outline: Contour
    cut: int = 1
    reversed: int = 0


@measured
class SeamWish(Measured):
    """A seam between two panels, each part of it named by two joints of its panel.

    On its own panel it runs anticlockwise from ``begins`` to ``ends``, seen from the show side; on
    its partner, laid right sides together, the other way round.
    """

    panel: str = text("the panel")
    reversed: bool = switch(
        "whether the panel's mirror image is meant, its joints called as on paper", default=False
    )
    begins: str = text("the joint of it at which the seam begins")
    ends: str = text("the joint of it at which the seam ends, going anticlockwise")
    partner: str = text("the panel that it is sewn to")
    partner_begins: str = text("the joint of that panel which meets the first")
    partner_ends: str = text("the joint of that panel which meets the second")
    ease: float = length(
        "how much longer the first part may be, to be worked in", default=both(mm=0), most=50,
        required=False,
    )  # fmt: skip


@dataclass(frozen=True)
class Brief:
    """A seat ready to be covered.

    Args:
        taped: the seat's outline through the seam, as its measurements give it.
        base: the outline of the board underneath.
        allowances: what is added round it.
        materials: by role of piece; the one under ``""`` is for all the others.
        taken: how the seat was measured, a key of `TAKEN`.
        measured_round: the tape round the seam, mm, or None.
        trusts_round: whether that tape wins over the measured width.
        remarks: what is to be said of how the outline came about.
        panels: pieces with outlines of their own.
        seams: how those are sewn together.
        finishing: what is done to the cover, of whatever kind it is.
    """

    taped: Contour
    base: Contour
    allowances: Allowances
    materials: Mapping[str, Material]
    taken: str = "flat"
    measured_round: float | None = None
    trusts_round: bool = False
    remarks: tuple[Note, ...] = ()
    panels: tuple[Panel, ...] = ()
    seams: tuple[SeamWish, ...] = ()
    finishing: Finishing = field(default_factory=Finishing)

    @cached_property
    def outline(self) -> Contour:
        """The outline that is covered: as measured, or as the tape round it says if that wins."""
        return sized(self.taped, self.measured_round if self.trusts_round else None)

    def material(self, role: str) -> Material:
        """Return the material of the pieces that play ``role``."""
        return self.materials.get(role, self.materials[""])
