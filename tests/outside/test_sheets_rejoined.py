"""Sheets laid together again by nothing but what is printed on them."""

import pytest
import shapely

from tests.paper.samples import JOBS, Made, made
from tests.paper.sheets import Sheet

COINCIDE = 0.02  # mm
WRITTEN = 0.001  # mm; a number of the file has about seven figures
BOOKS = [
    *((job, None, True) for job in JOBS),
    *((job, None, False) for job in JOBS),
    ("organ-bench", "Letter", True),
    ("music-school", "A2", True),
    ("music-school", "180x200mm", False),
]


@pytest.fixture(params=BOOKS, ids=lambda book: " ".join(map(str, book)))
def printed(request: pytest.FixtureRequest) -> Made:
    job, paper, whole = request.param
    return made(job, paper, whole=whole)


def shown(sheets: list[Sheet]) -> shapely.geometry.base.BaseGeometry:
    return shapely.union_all([shapely.box(*sheet.window) for sheet in sheets]).buffer(WRITTEN)


def outlines(printed: Made, plate: str) -> list[shapely.Polygon]:
    """Return the pieces of a plate that are drawn whole."""
    return [
        shapely.Polygon([(p.real, p.imag) for p in curve.spread(48)])
        for form, curve in printed.book.drawn("cut line")
        if form == plate and curve.is_closed
    ]


def test_every_sheet_says_which_it_is(printed):
    sheets = printed.book.sheets
    assert [sheet.number for sheet in sheets] == list(range(1, len(sheets) + 1))
    assert {sheet.of for sheet in sheets} == {len(sheets)}
    assert printed.figures["sheets"]["count"] == len(sheets)
    assert len(printed.book.paper.pages) == len(printed.book.overview) + len(sheets)


def test_every_join_number_is_on_exactly_two_sheets_of_one_plate(printed):
    found: dict[int, list[Sheet]] = {}
    for sheet in printed.book.sheets:
        for number in sheet.joins:
            found.setdefault(number, []).append(sheet)
    assert sorted(found) == list(range(1, len(found) + 1))
    assert all(len(pair) == 2 for pair in found.values())
    assert all(one.placed.form == two.placed.form for one, two in found.values())


def test_crosses_of_like_number_coincide(printed):
    for sheets in printed.book.plates.values():
        places: dict[int, list[complex]] = {}
        for sheet in sheets:
            for number, crosses in sheet.joins.items():
                in_plate = [cross - sheet.placed.origin for cross in crosses]
                other = places.setdefault(number, in_plate)
                assert len(crosses) == len(other) >= 2
                assert max(abs(a - b) for a, b in zip(in_plate, other, strict=True)) < COINCIDE
                assert abs(in_plate[0] - in_plate[-1]) > 50  # far enough apart to turn nothing


def test_sheets_laid_cross_on_cross_rejoin_the_plate(printed):
    """Each lies where its plate was moved on it, though only the crosses were looked at."""
    for sheets in printed.book.plates.values():
        laid = {sheets[0].number: 0j}
        for sheet in sheets[1:]:
            shifts = [
                laid[other.number] + there - here
                for other in sheets
                if other.number in laid
                for number in sheet.joins.keys() & other.joins.keys()
                for here, there in zip(sheet.joins[number], other.joins[number], strict=True)
            ]
            assert shifts, f"sheet {sheet.number} meets no earlier one"
            truth = sheets[0].placed.origin - sheet.placed.origin
            assert max(abs(shift - truth) for shift in shifts) < COINCIDE
            laid[sheet.number] = sum(shifts) / len(shifts)


def test_sheets_show_every_piece_whole(printed):
    whole = 0
    for plate, sheets in printed.book.plates.items():
        seen = shown(sheets)
        for outline in outlines(printed, plate):
            assert outline.difference(seen).area < 1e-3
            whole += 1
    counted = sum(len(seat["pieces"]) for seat in printed.figures["seats"])
    strips = sum(
        piece["role"] == "boxing" for seat in printed.figures["seats"] for piece in seat["pieces"]
    )
    assert counted - strips <= whole <= counted


def test_sheets_show_every_line(printed):
    for plate, sheets in printed.book.plates.items():
        seen = shown(sheets)
        for form, kind, curve in printed.book.lines:
            if form == plate and kind:
                drawn = shapely.LineString([(p.real, p.imag) for p in curve.spread(24)])
                assert seen.covers(drawn), kind


def test_no_sheet_is_blank(printed):
    for plate, sheets in printed.book.plates.items():
        drawn = [
            shapely.LineString([(p.real, p.imag) for p in curve.spread(24)])
            for form, _, curve in printed.book.lines
            if form == plate
        ]
        all_of_it = shapely.union_all([*drawn, *outlines(printed, plate)])
        for sheet in sheets:
            assert all_of_it.intersects(shapely.box(*sheet.window)), sheet.number


def test_windows_keep_the_margins(printed):
    """10 mm, 13 at the foot; 3/8 and 1/2 in: what printers' manuals call imageable, and more."""
    for sheet in printed.book.sheets:
        (width, height), clip = sheet.page.size, sheet.placed.clip
        assert clip
        margins = clip[0], width - clip[2], height - clip[3], clip[1]
        least = (
            (9.525, 9.525, 9.525, 12.7) if printed.figures["units"] == "in" else (10, 10, 10, 13)
        )
        assert margins == pytest.approx(least, abs=0.001)


def test_no_fewer_sheets_are_promised_than_can_be(printed):
    told = printed.figures["sheets"]
    area = sum(
        outline.area for plate in printed.book.plates for outline in outlines(printed, plate)
    )
    left, bottom, right, top = printed.book.sheets[0].window
    assert area / ((right - left) * (top - bottom)) <= told["fewest_possible"] + 1e-9
    assert told["fewest_possible"] <= told["count"]
