"""The seat whose outline was traced, and lies in a file."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from patternmaker.errors import Refusal
from patternmaker.facts import HAIR, Found, angle, both, choice, file, length, switch, text
from patternmaker.geometry.framing import Ring
from patternmaker.outlines.registry import Outline, Taken, shape
from patternmaker.tracing.wishes import Wishes
from patternmaker.units import Unit

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternmaker.tracing.said import Said
    from patternmaker.tracing.trace import Trace

ITS_OWN = "its own"
FIELD_OF = {"": "file", "unit": "file_units"}
"""The field that mends what a trace objects to, where it has another name."""


@shape("traced")
class Traced(Outline):
    """A seat traced from the real one: a closed line in an SVG, a DXF or a list of points.

    True lines, arcs and curves are kept as they are drawn. A string of points is followed by
    tangent arcs, its wobble smoothed, its corners kept.
    """

    file: Found = file("the drawing, beside the job: .svg, .dxf or .csv (x,y)")
    line: str | None = text(
        "which line of the drawing, by its id; the only closed one if not given",
        default=None, required=False,
    )  # fmt: skip
    file_units: str = choice(
        "what one unit of the drawing is, where it does not say",
        (ITS_OWN, *(unit.value for unit in Unit)), default=ITS_OWN,
    )  # fmt: skip
    width: float | None = length(
        "left to right, at the widest, if the drawing is to be brought to it",
        default=None, least=50, required=False,
    )  # fmt: skip
    depth: float | None = length(
        "front to back, at the deepest, if the drawing is to be brought to it",
        default=None, least=50, required=False,
    )  # fmt: skip
    ruler: str | None = text(
        "id of a straight line in the drawing whose length is known", default=None, required=False
    )
    ruler_length: float | None = length(
        "how long that line is on the seat", default=None, least=10, required=False
    )
    back: str = choice("which side of the drawing is the back of the seat",
                       ("up", "down", "left", "right"), default="up")  # fmt: skip
    turned_over: bool = switch("traced from below, so that left is right", default=False)
    symmetrical: bool = switch("make both halves alike: the mean of the two", default=False)
    gap: float = length("ends of lines that lie closer are joined",
                        default=both(in_=1 / 16, mm=1), most=50, required=False)  # fmt: skip
    smooth: float = length(
        "the most by which the wobble of a hand may be smoothed; 0 keeps every point",
        default=both(in_=1 / 32, mm=0.5), most=20, required=False,
    )  # fmt: skip
    corner: float = angle("a string of points that turns more than this has a corner there",
                          default=30, least=5, most=120, required=False)  # fmt: skip

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        """Yield what keeps the drawing from being that of a seat."""
        try:
            _trace(values["file"], _wishes(values))
        except Refusal as mistake:
            yield mistake.about(FIELD_OF.get(mistake.field, mistake.field))

    @property
    def _traced(self) -> Trace:
        return _trace(self.file, _wishes(vars(self)))

    def struck(self) -> Ring:
        """Return the traced line."""
        contour = self._traced.contour
        return Ring(contour.segments, contour.joints)

    def remarks(self) -> tuple[Said, ...]:
        """Return what was done to the line."""
        return self._traced.notes

    def taken(self) -> Iterator[Taken]:
        """Yield where the lengths are taken to which the drawing is brought."""
        if self.width is not None:
            yield Taken("width", complex(-self.width / 2), complex(self.width / 2))
        if self.depth is not None:
            yield Taken("depth", -0.5j * self.depth, 0.5j * self.depth)

    def partner(self) -> Outline:
        """Return the same line seen from below."""
        return replace(self, turned_over=not self.turned_over)


def _wishes(values: Mapping[str, Any]) -> Wishes:
    """Return the fields as what is wanted of the trace."""
    units = values["file_units"]
    return Wishes(
        line=values["line"],
        gap=values["gap"],
        smooth=values["smooth"] if values["smooth"] >= HAIR else 0.0,
        corner=values["corner"],
        unit=None if units == ITS_OWN else Unit(units).mm,
        width=values["width"],
        depth=values["depth"],
        ruler=values["ruler"],
        ruler_length=values["ruler_length"],
        back=values["back"],
        turned_over=values["turned_over"],
        symmetrical=values["symmetrical"],
    )


@lru_cache(maxsize=16)
def _trace(found: Found, wishes: Wishes) -> Trace:
    """Return the trace of a file, kept, since it is asked for again and again."""
    from patternmaker.tracing.sketch import read_sketch
    from patternmaker.tracing.trace import traced

    return traced(read_sketch(found.name, found.content), wishes)
