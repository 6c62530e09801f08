"""What goes on the underside: the base's template with its reference line, and the dust cover."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.covers.parts.tops import centre_cross, closing
from patternmaker.geometry.contour import Path
from patternmaker.materials import Material
from patternmaker.pattern.notes import UNTOLD, Note
from patternmaker.pattern.piece import Guide, LineKind, Piece
from patternmaker.pattern.stations import CARDINALS

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.errors import Refusal
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.brief import Brief

ACROSS_THE_EDGE = 12.0  # mm; length of the mark where stapling begins


def objections(brief: Brief) -> Iterator[Refusal]:
    """Yield whatever keeps the base's lines from being drawn inside it."""
    base, allowances = brief.base, brief.allowances
    line = "wrap" if allowances.reference_line is None else "reference_line"
    yield from closing(f"allowances.{line}", base, -allowances.reference_at)
    inset, turning = allowances.dust_cover_inset, allowances.dust_cover_turning
    shut = list(closing("allowances.dust_cover_inset", base, -inset))
    yield from shut or closing("allowances.dust_cover_turning", base.grown(-inset), turning)


def template(brief: Brief) -> Piece:
    """Return the template of the base, with the reference line and where stapling begins."""
    inset = brief.allowances.reference_at
    reference = brief.base.grown(-inset)
    return Piece(
        "base template",
        "base template",
        brief.materials.get("base template", Material(kind="card")),
        brief.base,
        guides=(
            Guide(LineKind.REFERENCE, reference),
            *centre_cross(brief.base),
            *(_staple_start(brief.base, joint, inset) for joint in CARDINALS),
        ),
        notes=tuple(_to_the_line(inset)),
        lay="either way",
    )


def _staple_start(base: Contour, joint: str, inset: float) -> Guide:
    along = base.station(joint)
    point, out = base.point_at(along), base.outward(along)
    stroke = Path.through(point, point - (inset + ACROSS_THE_EDGE) * out)
    return Guide(LineKind.STAPLE, stroke, f"staple first: {joint}")


def _to_the_line(inset: float) -> Iterator[Note]:
    """Yield what the reference line is for; one on the very edge is none."""
    if inset < UNTOLD:
        yield Note("For the underside of the base: the cover's edge comes to its own")
        return
    yield Note("For the underside of the base: trace the reference line {} from its edge", (inset,))
    yield Note("Pull the cover's edge to it, then staple: back, front, left, right")


def dust_cover(brief: Brief) -> Piece:
    """Return the panel that closes the underside."""
    finished = brief.base.grown(-brief.allowances.dust_cover_inset)
    return Piece(
        "dust cover",
        "dust cover",
        brief.materials.get("dust cover", Material(kind="cambric")),
        finished.grown(brief.allowances.dust_cover_turning),
        guides=(Guide(LineKind.FOLD, finished), *centre_cross(finished)),
        finished=(finished.width, finished.height),
        lay="either way",
        notes=(Note("Turn in {} all round", (brief.allowances.dust_cover_turning,)),),
    )
