"""What is added round a seat's measurements, and where the marks stand."""

from __future__ import annotations

from patternmaker.facts import HAIR, Measured, at_most, both, length, measured
from patternmaker.units import MM_PER_INCH

# All common practice, no source.
CAUGHT = MM_PER_INCH / 8  # of the turned allowance, beyond the topstitch
CLEAR = MM_PER_INCH / 16  # between a notch and the topstitch
SHORT_OF_WRAP = MM_PER_INCH / 8  # of the reference line
USUAL_OPEN = MM_PER_INCH * 3.5  # on each side of the join that is closed last
USUAL_TOPSTITCH = MM_PER_INCH / 4  # from the seam


@measured
class Allowances(Measured):
    """The allowances of a seat, and its rules for marks."""

    seam: float = length(
        "seam allowance", default=both(in_=1 / 2, mm=12), least=6, most=50, required=False
    )
    wrap: float = length(
        "what turns under the base", default=both(in_=1, mm=25), most=150, required=False
    )
    boxing_seam: float | None = length(
        "seam allowance of the boxing's upper edge, graded; the same as seam unless given",
        default=None, least=6, most=50, required=False,
    )  # fmt: skip
    boxing_join: float | None = length(
        "seam allowance where boxing is joined; the same as seam unless given",
        default=None, least=6, most=50, required=False,
    )  # fmt: skip
    boxing_spare: float = length(
        "left long at one end of the boxing, trimmed at the machine",
        default=both(mm=0), most=300, required=False,
    )  # fmt: skip
    boxing_longest: float | None = length(
        "longest strip that the material gives", default=None, least=150, required=False
    )
    topstitch: float | None = length(
        "from the seam to the visible stitch", default=None, above=0, most=50, required=False
    )
    notch_spacing: float = length(
        "widest gap between notches",
        default=both(in_=6, mm=150), least=25, most=1000, required=False,
    )  # fmt: skip
    sewing_open: float | None = length(
        "left unsewn on each side of the join that is closed last",
        default=None, most=300, required=False,
    )  # fmt: skip
    reference_line: float | None = length(
        "from the base's edge to the line that the cover's edge is pulled to",
        default=None,
        required=False,
    )
    dust_cover_inset: float = length(
        "from the base's edge to the finished dust cover",
        default=both(in_=3 / 8, mm=10), most=50, required=False,
    )  # fmt: skip
    dust_cover_turning: float = length(
        "turned in round the dust cover",
        default=both(in_=1 / 2, mm=12), most=50, required=False,
    )  # fmt: skip
    round_cut_to: float | None = length(
        "fraction to which the top's cut size is rounded",
        default=None,
        least=0.5,
        most=50,
        required=False,
    )

    limits = (
        at_most(
            "topstitch",
            lambda seam, boxing_seam: _narrower(seam, boxing_seam) - CAUGHT,
            "the seam allowance less 1/8 in, which it must catch",
            "bring the topstitch nearer the seam or widen the allowance",
        ),
        at_most(
            "reference_line",
            lambda wrap: wrap,
            "the wrap-under",
            "bring the reference line nearer the edge or widen the wrap",
        ),
        at_most(
            "boxing_spare",
            lambda boxing_longest: None if boxing_longest is None else boxing_longest / 2,
            "half the longest strip",
            "leave less spare",
        ),
    )

    @property
    def upper_edge(self) -> float:
        """The seam allowance of the boxing where it is sewn to the top."""
        return self.seam if self.boxing_seam is None else self.boxing_seam

    @property
    def narrower(self) -> float:
        """The narrower allowance of that seam, which topstitch and notches must not pass."""
        return _narrower(self.seam, self.boxing_seam)

    @property
    def is_graded(self) -> bool:
        """Whether the allowances of that seam differ, so that cut edges don't meet."""
        return abs(self.seam - self.upper_edge) > HAIR

    @property
    def join(self) -> float:
        """The seam allowance at a join of the boxing."""
        return self.seam if self.boxing_join is None else self.boxing_join

    @property
    def topstitch_at(self) -> float:
        """From the seam to the topstitch: as given, else as near the usual as it can be."""
        return (
            min(USUAL_TOPSTITCH, self.narrower - CAUGHT)
            if self.topstitch is None
            else self.topstitch
        )

    def open_at(self, seam: float) -> float:
        """Return what is left unsewn on each side of the join closed last, less on a short seam."""
        return min(USUAL_OPEN, seam / 8) if self.sewing_open is None else self.sewing_open

    @property
    def reference_at(self) -> float:
        """From the base's edge to the reference line."""
        usual = max(0.0, self.wrap - SHORT_OF_WRAP)
        return usual if self.reference_line is None else self.reference_line

    def notch_depth(self, deepest: float) -> float:
        """Return how deep a notch is cut in a material that bears ``deepest``."""
        return min(deepest, self.narrower - self.topstitch_at - CLEAR)


def _narrower(seam: float, boxing_seam: float | None) -> float:
    return seam if boxing_seam is None else min(seam, boxing_seam)
