"""What is done to a cover of any kind: welts in its seams, stitches, padding, pieces left out."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from patternmaker.errors import Refusal
from patternmaker.facts import Measured, both, choice, length, measured, switch, text
from patternmaker.pattern.stitching import StitchRules

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

CUTS = ("straight", "bias")


@measured
class WeltWish(Measured):
    """A welt in a seam: a cord in a folded strip, as a job asks for it."""

    seam: str = text("the seam that it is sewn into, by its name", most=60)
    cord: float = length(
        "diameter of the cord", default=both(in_=5 / 32, mm=4), least=1, most=40, required=False
    )
    allowance: float | None = length(
        "seam allowance of its strip; the seat's unless given",
        default=None, least=3, most=50, required=False,
    )  # fmt: skip
    strip: float | None = length(
        "width to which its strip is cut; as wide as the cord takes it unless given",
        default=None, least=10, most=250, required=False,
    )  # fmt: skip
    join: float = length(
        "seam allowance where its strips are joined",
        default=both(in_=1 / 4, mm=6), least=3, most=50, required=False,
    )  # fmt: skip
    spare: float = length(
        "left long, to be trimmed where its ends meet",
        default=both(mm=0), most=300, required=False,
    )  # fmt: skip
    cut: str | None = choice(
        "how its strips lie; on the bias in cloth, else straight, unless given", CUTS, default=None
    )
    topstitch: bool = switch("whether that seam is topstitched all the same", default=False)


@measured
class Padding(Measured):
    """What lies under the cover: a template is drawn of each."""

    foam: float | None = length(
        "thickness of the foam", default=None, least=3, most=300, required=False
    )
    foam_oversize: float = length(  # "1/2 in in width and length", Good Old Boat
        "how far the foam is cut beyond the seat on each side",
        default=both(in_=1 / 4, mm=6), most=50, required=False,
    )  # fmt: skip
    wadding: float | None = length(
        "thickness of the wadding over it", default=None, least=1, most=100, required=False
    )

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        """Yield that there is nothing to draw a template of."""
        if values["foam"] is None and values["wadding"] is None:
            yield Refusal("foam", "is missing", mend="give its thickness, or that of the wadding")


@dataclass(frozen=True)
class Finishing:
    """What is done to a cover once its pieces are drafted.

    Args:
        welts: the welts in its seams.
        stitches: how long its stitches are.
        padding: what lies under it, if templates of that are wanted.
        without: the names of pieces that are not wanted.
    """

    welts: tuple[WeltWish, ...] = ()
    stitches: StitchRules = field(default_factory=StitchRules)
    padding: Padding | None = None
    without: tuple[str, ...] = ()

    @property
    def asks(self) -> bool:
        """Whether it asks for anything that a pattern may be at odds with."""
        return bool(self.welts or self.padding or self.without)
