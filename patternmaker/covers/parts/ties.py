"""Ties: straps that hold a loose pad to its chair, and where they are caught in its seam."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.covers.parts.facing import facing
from patternmaker.covers.parts.sides import Side, cut_round, lines_of
from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH
from patternmaker.geometry.contour import Path
from patternmaker.pattern.notes import Note
from patternmaker.pattern.piece import Guide, LineKind, Piece
from patternmaker.units import MM_PER_INCH

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.cushions import Marks
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.brief import Brief

APART = MM_PER_INCH * 5  # least between two pairs of one edge; common practice, no source
FOLD_SHOWN = 30.0  # mm of each fold, past the allowance
LAYERS = 4  # of a tie: both long edges to the middle, then doubled


@dataclass(frozen=True)
class Ties:
    """The ties of a pad: two at each place.

    Args:
        pairs: at how many places: 2, at the back, or 4, at the front too.
        width: of one, finished.
        length: of one, from the seam.
        inset: from each end of the back or front edge to the place.
    """

    pairs: int
    width: float
    length: float
    inset: float

    @property
    def count(self) -> int:
        """How many straps there are."""
        return 2 * self.pairs

    @property
    def edges(self) -> tuple[str, ...]:
        """The edges that they are caught in."""
        return ("back",) if self.pairs == 2 else ("back", "front")

    def marks(self, sew: Contour) -> Marks:
        """Return where they are caught."""
        found: list[tuple[str, float]] = []
        for edge in self.edges:
            run = facing(sew, edge).longer(-self.inset)
            sides = ("right", "left") if edge == "back" else ("left", "right")
            found += [(f"tie {edge} {side}", at % sew.length)
                      for side, at in zip(sides, (run.begin, run.end), strict=True)]  # fmt: skip
        return tuple(found)

    def objections(self, sew: Contour) -> Iterator[Refusal]:
        """Yield whatever keeps the places from standing apart."""
        for edge in self.edges:
            length = facing(sew, edge).length
            if length < APART:
                yield _too_short(edge, length)
            elif self.inset > (length - APART) / 2:
                yield Refusal(
                    "cover.tie_inset", f"{{value}} brings the ties at the {edge} too near each "
                    "other ({limit})", value=self.inset, limit=(length - APART) / 2,
                    show=LENGTH.show, mend="set them in less",
                )  # fmt: skip

    def piece(self, brief: Brief) -> Piece:
        """Return one strap, flat: four times its width, an allowance longer at either end."""
        seam, sides = brief.allowances.seam, self._sides(brief.allowances.seam)
        return Piece(
            "tie",
            "tie",
            brief.materials.get("tie", brief.material("top")),
            cut_round(sides),
            guides=(*lines_of(sides), *(Guide(LineKind.FOLD, fold) for fold in self._folds(seam))),
            finished=(self.length, self.width),
            lay="either way",
            count=self.count,
            arrow=(1 + 0j, ""),
            notes=(Note("Turn in {} at the free end; fold both long edges to the middle, then "
                        "double", (seam,)),),
        )  # fmt: skip

    def _sides(self, seam: float) -> tuple[Side, ...]:
        half, far = 1j * LAYERS * self.width / 2, self.length
        return (
            Side("caught end", Path.through(half, -half), seam),
            Side("lower edge", Path.through(-half, far - half), 0.0, line=None),
            Side("free end", Path.through(far - half, far + half), seam, line=LineKind.FOLD),
            Side("upper edge", Path.through(far + half, half), 0.0, line=None),
        )

    def _folds(self, seam: float) -> Iterator[Path]:
        """Yield the folds along it, at both ends; between, there is room for its label."""
        reach = min(FOLD_SHOWN, self.length / 4)
        for y in (self.width, 0.0, -self.width):
            for end, inward in ((-seam, seam + reach), (self.length + seam, -seam - reach)):
                yield Path.through(complex(end, y), complex(end + inward, y))

    def note(self, seam: float) -> Note:
        """Return what they take."""
        return Note("{} ties {} by {}: strips {} by {}, {} of that width in all",
                    (str(self.count), self.width, self.length, LAYERS * self.width,
                     self.length + 2 * seam, self.count * (self.length + 2 * seam)))  # fmt: skip

    def steps(self, seam: float) -> Iterator[Note]:
        """Yield how they are made and caught."""
        yield Note("Ties: turn in {} at one end, fold both long edges to the middle and then "
                   "double, and topstitch: {} wide. Make {}",
                   (seam, self.width, str(self.count)))  # fmt: skip
        yield Note("Pin two at each of the {} tie marks on the show side of the bottom, raw ends "
                   "to its edge, free ends inward", (str(self.pairs),))  # fmt: skip


def _too_short(edge: str, length: float) -> Refusal:
    """Return the refusal of a seat whose edge has no room for two places."""
    back = edge == "back"
    return Refusal(
        "outline" if back else "cover.pairs",
        f"faces {edge} for only {{value}}, and two places for ties take {{limit}}" if back
        else f"the seat faces {edge} for only {{value}}, and ties there take {{limit}}",
        value=length, limit=APART, show=LENGTH.show,
        mend="turn the shape, so that a side of it lies at the back" if back
        else "tie it at the back alone (pairs = 2)",
    )  # fmt: skip
