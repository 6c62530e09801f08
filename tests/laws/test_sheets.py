"""Laws of sheets: whatever the paper and the pieces, they rejoin to show every piece whole."""

import math

import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from patternmaker.sheets.arranging import alone, arranged, fewest_possible
from patternmaker.sheets.map import numbered
from patternmaker.sheets.papers import Margins, Paper, Stock
from patternmaker.sheets.searching import fewest_by_need
from patternmaker.sheets.showing import BETWEEN
from patternmaker.sheets.tiling import sheets_along
from tests.contours import horseshoe, l_shape, ring
from tests.sheets.prints import board, disc, shaped

SIDES = st.floats(10, 900)
MARGIN = st.floats(0, 25)


@st.composite
def stocks(draw: st.DrawFn) -> Stock:
    """Draw a paper that can be used, with its margins and overlap."""
    width, height = draw(st.floats(190, 700)), draw(st.floats(190, 700))
    margins = Margins(*(draw(MARGIN) for _ in range(4)))
    return Stock(Paper("drawn", *sorted((width, height))), margins, draw(st.floats(0, 40)))


PRINTS = st.lists(
    st.builds(board, SIDES, SIDES) | st.builds(disc, st.floats(60, 900)), min_size=1, max_size=5
)


@given(st.floats(1, 5000), st.floats(112, 1200), st.floats(0, 0.33))
def test_as_many_sheets_as_it_takes_and_not_one_more(length, usable, share):
    lap = usable * share
    count = sheets_along(length, usable, lap)
    assert count * (usable - lap) + lap >= length - 1e-5
    assert count == 1 or (count - 1) * (usable - lap) + lap < length


@given(stocks(), PRINTS)
def test_sheets_rejoined_show_every_print_whole(stock, prints):
    plates = arranged(prints, stock, 10_000).plates
    assert sum(len(plate.prints) for plate in plates) == len(prints)
    for plate in plates:
        windows = [shapely.box(*plate.grid.window(place)) for place in plate.sheets]
        seen = shapely.union_all(windows).buffer(1e-4)
        for each in plate.prints:
            assert seen.covers(ring(each.shape, 0.01))


@given(stocks(), PRINTS)
def test_no_print_lies_on_another(stock, prints):
    for plate in arranged(prints, stock, 10_000).plates:
        rings = [ring(each.shape, 0.01) for each in plate.prints]
        for i, one in enumerate(rings):
            assert all(one.intersection(two).area < 1e-6 for two in rings[:i])


@given(stocks(), PRINTS)
def test_prints_keep_their_size(stock, prints):
    placed = [each for plate in arranged(prints, stock, 10_000).plates for each in plate.prints]
    before = sorted((each.shape.area, each.shape.length) for each in prints)
    after = sorted((each.shape.area, each.shape.length) for each in placed)
    for one, two in zip(before, after, strict=True):
        assert all(math.isclose(a, b, rel_tol=1e-9) for a, b in zip(one, two, strict=True))


@given(stocks(), PRINTS)
def test_nothing_beats_the_fewest_possible(stock, prints):
    count = sum(len(plate.sheets) for plate in arranged(prints, stock, 10_000).plates)
    assert 1 <= fewest_possible(prints, stock) <= count


@given(stocks(), PRINTS)
def test_every_sheet_shows_something(stock, prints):
    for plate in arranged(prints, stock, 10_000).plates:
        rings = shapely.union_all([ring(each.shape, 0.01) for each in plate.prints]).buffer(0.02)
        for place in plate.sheets:
            assert rings.intersects(shapely.box(*plate.grid.window(place)))


@given(stocks(), PRINTS)
def test_sheets_and_joins_are_numbered_through(stock, prints):
    plates = numbered(arranged(prints, stock, 10_000).plates)
    numbers = [join.number for plate in plates for join in plate.joins]
    assert numbers == list(range(1, len(numbers) + 1))
    firsts = [plate.first_sheet for plate in plates]
    sizes = [len(plate.plate.sheets) for plate in plates]
    assert firsts == [1 + sum(sizes[:i]) for i in range(len(sizes))]


@given(stocks(), PRINTS)
def test_every_sheet_of_a_plate_but_the_first_meets_an_earlier_one_by_a_side(stock, prints):
    """So nobody has to bridge a gap while joining."""
    for plate in numbered(arranged(prints, stock, 10_000).plates):
        met = {join.second for join in plate.joins}
        assert [place for place in plate.plate.sheets if place not in met] == [
            plate.plate.sheets[0]
        ]


SOUGHT = st.lists(
    st.builds(board, SIDES, SIDES)
    | st.builds(disc, st.floats(60, 600))
    | st.builds(shaped, st.sampled_from([l_shape(), horseshoe()]), st.floats(0.3, 1.6)),
    min_size=1,
    max_size=6,
)


@given(stocks(), SOUGHT)
@settings(max_examples=25)
def test_what_a_search_finds_is_whole_and_apart_and_no_more_than_alone(stock, prints):
    """Chords are 0.02 mm off an arc, on either side of the distance between two prints."""
    found = arranged(prints, stock, 10_000, effort=1)
    assert sum(len(plate.prints) for plate in found.plates) == len(prints)
    for plate in found.plates:
        windows = [shapely.box(*plate.grid.window(place)) for place in plate.sheets]
        seen = shapely.union_all(windows).buffer(1e-4)
        rings = [ring(each.shape, 0.01) for each in plate.prints]
        assert all(seen.covers(one) for one in rings)
        for i, one in enumerate(rings):
            assert all(one.distance(two) >= BETWEEN - 0.05 for two in rings[:i])
    singly = sum(len(plate.sheets) for plate in alone(prints, stock))
    assert 1 <= found.fewest <= found.count <= singly


@given(stocks(), SOUGHT)
@settings(max_examples=50)
def test_nothing_beats_what_the_prints_need(stock, prints):
    first = arranged(prints, stock, 10_000)
    assert fewest_by_need(prints, stock) <= first.count
