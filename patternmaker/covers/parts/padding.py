"""What lies under a cover: templates of its foam, and of the wadding that wraps it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from patternmaker.covers.parts.tops import centre_cross, closing
from patternmaker.materials import Material
from patternmaker.pattern.notes import Gauge, Note
from patternmaker.pattern.piece import Guide, LineKind, Piece
from patternmaker.pattern.sundries import foam_of, wadding_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from patternmaker.errors import Refusal
    from patternmaker.geometry.contour import Contour
    from patternmaker.pattern.finishing import Padding
    from patternmaker.pattern.sundries import Sundry

FOAM, WADDING = "foam template", "wadding"


def foam_template(outline: Contour, oversize: float, thickness: float) -> Piece:
    """Return the template by which foam is cut: larger than the cover on every side."""
    larger = outline.grown(oversize)
    says = "For the foam, {} thick: {} larger than the cover on every side"
    return Piece(
        FOAM,
        FOAM,
        Material(kind="card"),
        larger,
        guides=tuple(centre_cross(larger)),
        notes=(
            Note(says, (Gauge(thickness), oversize)),
            Note("Trace round it on the foam; hold the saw upright"),
        ),
        lay="either way",
    )


def wadding_wrap(foam: Contour, thickness: float, wadding: float) -> Piece:
    """Return the template of wadding that lies over foam and down its sides.

    The foam's thickness is added on every side; what bunches where it turns a corner is cut away.

    Args:
        foam: the outline of the foam as it is cut.
        thickness: of the foam, mm.
        wadding: the thickness of the wadding, mm.
    """
    cut = foam.grown(thickness)
    return Piece(
        WADDING,
        WADDING,
        Material(kind="card"),
        cut,
        guides=(*((Guide(LineKind.FOLD, foam),) if thickness else ()), *centre_cross(foam)),
        notes=(
            Note("For wadding {} thick, one for each seat", (Gauge(wadding),)),
            Note("Turned down the foam's sides at the fold line; cut out what bunches at corners"),
        ),
        lay="either way",
    )  # fmt: skip


def objections(padding: Padding, seat: Contour) -> Iterator[Refusal]:
    """Yield whatever keeps the templates from being drawn."""
    shut = list(closing("padding.foam_oversize", seat, _oversize(padding)))
    yield from shut
    if padding.wadding and padding.foam and not shut:
        yield from closing("padding.foam", seat.grown(_oversize(padding)), padding.foam)


def names(padding: Padding) -> Iterator[str]:
    """Yield what the templates are called that a job asks for."""
    if padding.foam:
        yield FOAM
    if padding.wadding:
        yield WADDING


def templates(padding: Padding, seat: Contour) -> Iterator[Piece]:
    """Yield the templates that a job asks for."""
    oversize = _oversize(padding)
    if padding.foam:
        yield foam_template(seat, oversize, padding.foam)
    if padding.wadding:
        yield wadding_wrap(seat.grown(oversize), padding.foam or 0.0, padding.wadding)


def sundries(padding: Padding, seat: Contour) -> Iterator[Sundry]:
    """Yield the foam and the wadding that the templates are for."""
    foam = seat.grown(_oversize(padding))
    if padding.foam:
        yield foam_of(padding.foam, foam)
    if padding.wadding:
        yield wadding_of(padding.wadding, foam.grown(padding.foam or 0.0))


def _oversize(padding: Padding) -> float:
    return padding.foam_oversize if padding.foam else 0.0
