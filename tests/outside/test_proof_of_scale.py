"""What proves the scale, measured at 600 dots an inch from the middle of one stroke to the next."""

import numpy as np
import pytest
import shapely

from tests.paper.curves import Curve
from tests.paper.raster import HALF, Raster, rendered
from tests.paper.reader import Page
from tests.paper.samples import made
from tests.paper.sheets import lone_lines

DPI = 600
PER_100 = 0.02  # mm

# 4 in, or 100 mm; and a triangle of 3, 4, 5 in, or 90, 120, 150 mm.
JOBS = [
    ("round-piano-stool", None, 101.6, (76.2, 101.6, 127.0)),
    ("organ-bench", None, 100.0, (90.0, 120.0, 150.0)),
    ("music-school", "A3", 100.0, (90.0, 120.0, 150.0)),
]


def bars(page: Page, length: float) -> dict[bool, Curve]:
    """Return the bars of a sheet, by whether they stand upright: one stroke, ticks and all."""
    found = {}
    for line in lone_lines(page):
        width, height = line.curve.size
        if abs(max(width, height) - length) < 0.1 and 1 < min(width, height) < 8:
            found[height > width] = line.curve
    return found


def is_clear(page: Page, length: float) -> bool:
    """Return whether no line of the pattern runs so near a bar's tick that their ink is mixed."""
    pattern = shapely.MultiLineString([
        [(point.real, point.imag) for point in line.curve.spread(32)]
        for line in page.lines
        if line.placed and line.placed.clip
    ])  # fmt: skip
    ticks = [
        shapely.Point(*corner)
        for left, bottom, right, top in (bar.box for bar in bars(page, length).values())
        for corner in ((left, bottom), (right, bottom), (left, top), (right, top))
    ]
    return all(pattern.distance(tick) > 2 * HALF for tick in ticks)


def between_ticks(raster: Raster, bar: Curve, *, upright: bool) -> float:
    """Return how far the ticks of a bar are apart, away from the bar itself."""
    left, bottom, right, top = bar.box
    middle, half = bar.middle, min(bar.size) / 2
    found = []
    for aside in (-0.75 * half, -0.6 * half, 0.6 * half, 0.75 * half):
        if upright:
            x = middle.real + aside
            found.append(raster.y_of_ink(x, top) - raster.y_of_ink(x, bottom))
        else:
            y = middle.imag + aside
            found.append(raster.x_of_ink(right, y) - raster.x_of_ink(left, y))
    return float(np.mean(found))


@pytest.mark.parametrize(("job", "paper", "length", "_sides"), JOBS)
def test_bars_of_a_sheet_are_as_long_as_they_say(job, paper, length, _sides):
    printed = made(job, paper, whole=False)
    clear = [sheet for sheet in printed.book.sheets if is_clear(sheet.page, length)]
    for sheet in (clear[0], clear[-1]):
        found = bars(sheet.page, length)
        assert set(found) == {True, False}
        raster = rendered(printed.pdf, sheet.page, DPI)
        for upright, bar in found.items():
            across = between_ticks(raster, bar, upright=upright)
            assert across == pytest.approx(length, abs=PER_100 * length / 100)


@pytest.mark.parametrize(("job", "length"), [(job, length) for job, _, length, _ in JOBS])
def test_every_sheet_has_both_bars_and_says_their_length(job, length):
    says = {101.6: "4 in", 100.0: "100 mm"}[length]
    for sheet in made(job, whole=False).book.sheets:
        assert set(bars(sheet.page, length)) == {True, False}
        assert sum(word.text.startswith(says) for word in sheet.page.words) >= 2


def corners(page: Page, sides: tuple[float, float, float]) -> tuple[complex, complex, complex]:
    """Return the triangle's right angle, the end of its upright side and of its level one."""
    (triangle,) = [
        line.curve
        for line in page.lines
        if len(line.curve.pieces) == 3
        and line.curve.is_closed
        and abs(line.curve.length - sum(sides)) < 0.5
    ]
    ends = [piece.controls[0] for piece in triangle.pieces]
    right = min(ends, key=lambda end: sum(abs(end - other) for other in ends))
    up, along = sorted((e for e in ends if e is not right), key=lambda e: abs(e.real - right.real))
    return right, up, along


def side_of_ink(raster: Raster, begin: complex, end: complex) -> tuple[complex, complex]:
    """Return a point on the middle of a drawn side and its direction, from its ink alone."""
    steps = np.linspace(0.12, 0.88, 40)
    spots = [begin + (end - begin) * step for step in steps]
    steep = abs((end - begin).imag) > abs((end - begin).real)
    if steep:
        points = [
            complex(raster.x_of_ink(spot.real, raster.middle_of_row(spot.imag)),
                    raster.middle_of_row(spot.imag))
            for spot in spots
        ]  # fmt: skip
    else:
        points = [
            complex(raster.middle_of_column(spot.real),
                    raster.y_of_ink(raster.middle_of_column(spot.real), spot.imag))
            for spot in spots
        ]  # fmt: skip
    inked = np.array([[p.real, p.imag] for p in points])
    centre = inked.mean(axis=0)
    way = np.linalg.svd(inked - centre)[2][0]
    return complex(*centre), complex(*way)


def meeting(one: tuple[complex, complex], two: tuple[complex, complex]) -> complex:
    """Return where two lines meet."""
    (p, v), (q, w) = one, two
    share = ((q - p).real * w.imag - (q - p).imag * w.real) / (v.real * w.imag - v.imag * w.real)
    return p + share * v


@pytest.mark.parametrize(("job", "paper", "_length", "sides"), JOBS)
def test_triangle_proves_both_ways_and_the_right_angle(job, paper, _length, sides):
    printed = made(job, paper, whole=False)
    page = printed.book.overview[0]
    right, up, along = corners(page, sides)
    raster = rendered(printed.pdf, page, DPI)
    upright, level = side_of_ink(raster, right, up), side_of_ink(raster, right, along)
    slope = side_of_ink(raster, up, along)
    right, up, along = meeting(upright, level), meeting(upright, slope), meeting(level, slope)
    measured = abs(up - right), abs(along - right), abs(up - along)
    for side, length in zip(measured, sides, strict=True):
        assert side == pytest.approx(length, abs=PER_100 * length / 100)
    angle = np.degrees(np.angle((up - right) / (along - right)))
    assert abs(angle) == pytest.approx(90, abs=0.01)
