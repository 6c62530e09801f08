"""Rendered sheets pasted together by their crosses: the cut line's ink lies on its formula."""

import math
from dataclasses import dataclass

import numpy as np
import pytest

from tests.paper.forms import SEATS, Rounded
from tests.paper.raster import Ink, rendered
from tests.paper.samples import Made, made
from tests.paper.sheets import Sheet

DPI = 254  # ten dots to the millimetre
WITHIN = 0.2  # mm
BESIDE = 0.7  # mm from the line's middle; ink further out is another mark's
ACROSS = np.arange(-15, 16) / 10.0  # mm along the normal
CASES = [
    (seat.job, piece, form)
    for seat in SEATS
    if seat.job != "music-school"
    for piece, kind, form in seat.closed_lines
    if kind == "cut line" and isinstance(form, Rounded)
]


@dataclass(frozen=True)
class Pasted:
    """The ink of a plate's sheets, ten dots to the mm, from its lower left corner upward."""

    ink: Ink

    @classmethod
    def together(cls, printed: Made, sheets: list[Sheet]) -> "Pasted":
        """Paste the sheets, each laid to the ones before it by the crosses of its joins."""
        laid = {sheets[0].number: sheets[0].placed.origin}
        size = np.max([sheet.window[2:] for sheet in sheets], axis=0)
        big = np.zeros((int(size[1] * 10) + 40, int(size[0] * 10) + 40), dtype=np.float32)
        for sheet in sheets:
            if sheet.number not in laid:
                laid[sheet.number] = _laid(sheet, sheets, laid)
            raster = rendered(printed.pdf, sheet.page, DPI)
            cls._paste(big, raster.ink[::-1], -laid[sheet.number], sheet)
        return cls(big)

    @staticmethod
    def _paste(big: Ink, ink: Ink, corner: complex, sheet: Sheet) -> None:
        """Paste what a page's window shows, the page's corner lying at ``corner``."""
        assert sheet.placed.clip
        left, bottom, right, top = (round(side * 10) for side in sheet.placed.clip)
        shown = ink[bottom:top, left:right]
        x, y = round(corner.real * 10) + left, round(corner.imag * 10) + bottom
        here = big[y : y + shown.shape[0], x : x + shown.shape[1]]
        np.maximum(here, shown[: here.shape[0], : here.shape[1]], out=here)

    def across(self, point: complex, normal: complex) -> Ink:
        """Return the ink along a normal."""
        spots = point + ACROSS * normal
        ink = self.ink[(spots.imag * 10).astype(int), (spots.real * 10).astype(int)]
        return np.asarray(ink, np.float32)


def _laid(sheet: Sheet, sheets: list[Sheet], laid: dict[int, complex]) -> complex:
    """Return where the plate's origin lies on a sheet, by the crosses that it shares."""
    return next(
        laid[other.number] + here - there
        for other in sheets
        if other.number in laid
        for number in sheet.joins.keys() & other.joins.keys()
        for here, there in zip(sheet.joins[number], other.joins[number], strict=True)
    )


PASTED: dict[tuple[str, str], Pasted] = {}


@pytest.mark.parametrize(("job", "piece", "form"), CASES)
def test_ink_of_the_cut_line_lies_on_its_formula(job, piece, form):
    printed = made(job, whole=False)
    ((plate, curve),) = [
        (plate, curve)
        for plate, curve in printed.book.drawn("cut line")
        if np.allclose(curve.size, form.size, atol=0.04)
    ]
    if (job, plate) not in PASTED:
        PASTED[job, plate] = Pasted.together(printed, printed.book.plates[plate])
    points, normals = form.rim(step=1.0)
    assert len(points) == pytest.approx(form.length, abs=10)
    offs = [
        _off(PASTED[job, plate].across(point + curve.middle, normal))
        for point, normal in zip(points, normals, strict=True)
    ]
    clear = [off for off in offs if not math.isnan(off)]
    assert len(clear) > 0.75 * len(offs)  # the rest stand beside a notch, a cross or a word
    assert max(map(abs, clear)) < WITHIN
    assert abs(sum(clear) / len(clear)) < WITHIN / 4


def _off(ink: Ink) -> float:
    """Return how far the ink's middle lies from the formula; NaN where other marks disturb it."""
    near = np.abs(ACROSS) < BESIDE
    if ink[~near].max() > 0.1:
        return math.nan
    weight = float(ink[near].sum())
    assert weight > 3, "no ink"  # of the 6 dots that the line is wide
    return float((ACROSS[near] * ink[near]).sum()) / weight
