"""Pictures of shapes, as files."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from patternmaker.drafting.staging import put_in_place
from patternmaker.drawing.contact import contact_sheet
from patternmaker.drawing.measures import usual
from patternmaker.drawing.shapes import shape_picture
from patternmaker.errors import Refusal, Refusals
from patternmaker.writers.picture import picture_file

if TYPE_CHECKING:
    from pathlib import Path

    from patternmaker.cli.shapes import Known
    from patternmaker.drawing.shapes import Picture
    from patternmaker.outlines import Outline
    from patternmaker.units import Unit


def drawn(known: Known | None, unit: Unit, path: Path) -> Path:
    """Draw a shape, or all of them, as SVG, and return the path of the file.

    Raises:
        Refusals: if it is a cover, or the path names no file.
        OutputFault: if the file can't be written; an earlier one is then as it was.
    """
    if known and known.kind != "shape":
        mend = "draft a job, whose sheets show its pieces"
        raise Refusals([Refusal(known.name, "is a cover: it has no picture", mend=mend)])
    if not path.name:
        raise Refusals([Refusal("svg", "names no file", mend="write it like stool.svg")])
    picture = _of_one(known, unit) if known else contact_sheet(unit)
    content = picture_file(picture.title, picture.size, picture.drawing)
    return put_in_place(path.parent, {path.name: content})[0]


def _of_one(known: Known, unit: Unit) -> Picture:
    kind = cast("type[Outline]", known.made)
    return shape_picture(kind, usual(kind, unit), unit)
