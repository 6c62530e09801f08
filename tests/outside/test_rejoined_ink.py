"""Rendered sheets put together, in each way: the cut line's ink lies on its formula."""

import math

import numpy as np
import pytest

from tests.paper.assembly import Assembled
from tests.paper.forms import SEATS, Rounded
from tests.paper.raster import Ink
from tests.paper.samples import made

DOTS = 10  # to the millimetre
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


TABLES: dict[tuple[str, str, str], Assembled] = {}


def across(table: Assembled, point: complex, normal: complex) -> Ink:
    """Return the ink along a normal."""
    return table.at(point + ACROSS * normal)


@pytest.mark.parametrize("join", ["lap", "butt", "fold"])
@pytest.mark.parametrize(("job", "piece", "form"), CASES)
def test_ink_of_the_cut_line_lies_on_its_formula(job, piece, form, join):
    printed = made(job, whole=False, join=join)
    ((plate, curve),) = [
        (plate, curve)
        for plate, curve in printed.book.drawn("cut line")
        if np.allclose(curve.size, form.size, atol=0.04)
    ]
    if (job, plate, join) not in TABLES:
        TABLES[job, plate, join] = Assembled.of(printed, printed.book.plates[plate], DOTS)
    points, normals = form.rim(step=1.0)
    assert len(points) == pytest.approx(form.length, abs=10)
    offs = [
        _off(across(TABLES[job, plate, join], point + curve.middle, normal))
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
