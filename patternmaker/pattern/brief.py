"""What a cover must know of the seat that it is drafted for."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

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
    """

    taped: Contour
    base: Contour
    allowances: Allowances
    materials: Mapping[str, Material]
    taken: str = "flat"
    measured_round: float | None = None
    trusts_round: bool = False
    remarks: tuple[Note, ...] = ()

    @cached_property
    def outline(self) -> Contour:
        """The outline that is covered: as measured, or as the tape round it says if that wins."""
        return sized(self.taped, self.measured_round if self.trusts_round else None)

    def material(self, role: str) -> Material:
        """Return the material of the pieces that play ``role``."""
        return self.materials.get(role, self.materials[""])
