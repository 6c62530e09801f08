"""The opening in the back seam of two faces that are sewn together, and the rest of the seam."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from patternmaker.covers.parts.cushions import part_of_face, seen_below, turned_over
from patternmaker.covers.parts.facing import facing
from patternmaker.errors import Refusal
from patternmaker.facts import LENGTH
from patternmaker.pattern.piece import Seam
from patternmaker.units import MM_PER_INCH

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.covers.parts.cushions import Marks
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.stations import Station

LEFT, RIGHT = "opening left", "opening right"
LEAST_BACK = MM_PER_INCH * 3  # of a back edge that holds its opening; common practice, no source


@dataclass(frozen=True)
class Opening:
    """A part of the seam of two equal faces that is left open.

    Args:
        sew: the sew line of the top.
        length: how long it is.
        middle: its middle on the seam, a length from the joint ``back``.
    """

    sew: Contour
    length: float
    middle: float = 0.0

    @classmethod
    def of(cls, sew: Contour, wanted: float | None, share: float) -> Opening:
        """Return the opening that is wanted, or one as long as a share of the back edge.

        It stands in the middle of that edge. Where hardly anything faces back, it stands at the
        back and takes a quarter of the seam.
        """
        back = facing(sew, "back")
        if back.length < LEAST_BACK:
            return cls(sew, sew.length / 4 if wanted is None else wanted)
        return cls(sew, share * back.length if wanted is None else wanted, back.middle)

    def objections(self) -> Iterator[Refusal]:
        """Yield that it is too long."""
        if self.length > self.sew.length / 2:
            yield Refusal(
                "cover.opening", "{value} is more than half of the seam ({limit})",
                value=self.length, limit=self.sew.length / 2, show=LENGTH.show,
                mend="leave less open",
            )  # fmt: skip

    @property
    def marks(self) -> Marks:
        """Where it begins and ends."""
        half, whole = self.length / 2, self.sew.length
        return (LEFT, (self.middle + half) % whole), (RIGHT, (self.middle - half) % whole)

    def sewn(self, places: tuple[Station, ...], name: str) -> Seam:
        """Return the seam of both faces from one end of the opening round to the other."""
        return self._seam(places, LEFT, RIGHT, name)

    def closed(self, places: tuple[Station, ...], name: str) -> Seam:
        """Return the seam that closes the opening."""
        return self._seam(places, RIGHT, LEFT, name)

    def _seam(self, places: tuple[Station, ...], begin: str, end: str, name: str) -> Seam:
        below = seen_below(places, self.sew.length)
        one = part_of_face("top", self.sew, places, begin, end)
        two = part_of_face("bottom", turned_over(self.sew), below, end, begin)
        return Seam(one, two.backward, name)
