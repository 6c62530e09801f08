"""Shapes laid on sheets: apart, each on the sheets that it says, and the same way each time."""

from itertools import combinations

import numpy as np
import pytest
import shapely

from patternmaker.laying.footing import Lattice
from patternmaker.laying.rings import turned
from patternmaker.laying.search import Laid, Search
from patternmaker.laying.sheeting import Sheeting
from patternmaker.laying.ways import ways_of
from tests.laying.rings import SHAPES, board, polygon_of

SHEETING = Sheeting(190.0, 274.0, 10.0)
LATTICE = Lattice.over(SHEETING, 4.0, 0.5)
RINGS = [SHAPES["horseshoe"], SHAPES["l"], SHAPES["disc"] * 3, board(180, 40), board(60, 50),
         SHAPES["slant"] * 2]  # fmt: skip


def silent(share: float, count: int) -> None:
    assert 0 <= share < 1
    assert count > 0


def laid(
    effort: int = 1, enough: int = 0, rings: list[np.ndarray] = RINGS, side: int = 6
) -> tuple[Laid, ...]:
    return Search(ways_of(rings, LATTICE), LATTICE, 4.0, side).run(effort, enough, silent)


def polygons(found: tuple[Laid, ...]) -> list[shapely.Polygon]:
    return [
        polygon_of(turned(ring, each.turns), each.corner)
        for ring, each in zip(RINGS, found, strict=True)
    ]


def count(found: tuple[Laid, ...]) -> int:
    return len(frozenset().union(*(each.sheets for each in found)))


def test_shapes_keep_their_distance():
    for one, two in combinations(polygons(laid()), 2):
        assert one.distance(two) >= 4.0 - 0.05


def test_shapes_lie_on_the_sheets_that_they_say():
    found = laid()
    across, up = SHEETING.columns.pitch, SHEETING.rows.pitch
    for shape, each in zip(polygons(found), found, strict=True):
        sheets = [shapely.box(c * across, r * up, c * across + 190, r * up + 274)
                  for c, r in each.sheets]  # fmt: skip
        assert shapely.union_all(sheets).buffer(1e-6).covers(shape)


def test_same_shapes_are_laid_the_same_way():
    assert laid() == laid()


def test_longer_search_is_no_worse_and_no_search_is_a_laying_too():
    assert count(laid(3)) <= count(laid(1)) <= count(laid(0))
    assert len(laid(0)) == len(RINGS)


def test_search_ends_when_it_is_enough():
    heard = []
    shapes = ways_of(RINGS, LATTICE)
    Search(shapes, LATTICE, 4.0, 6).run(50, 100, lambda share, so_far: heard.append(so_far))
    assert heard == []


def test_search_that_is_interrupted_has_the_best_so_far():
    def stop(share: float, so_far: int) -> None:
        if share > 0.2:
            raise KeyboardInterrupt

    found = Search(ways_of(RINGS, LATTICE), LATTICE, 4.0, 6).run(2, 0, stop)
    assert len(found) == len(RINGS)


def test_search_that_is_told_to_end_altogether_does():
    def stop(share: float, so_far: int) -> None:
        raise KeyboardInterrupt(15)

    with pytest.raises(KeyboardInterrupt):
        Search(ways_of(RINGS, LATTICE), LATTICE, 4.0, 6).run(2, 0, stop)


def test_no_laying_where_there_is_no_room():
    assert laid(side=1) == ()


def test_small_shape_goes_into_the_hollow_of_a_large_one():
    ring = SHAPES["horseshoe"]
    rings = [ring, board(50, 200)]
    found = Search(ways_of(rings, LATTICE), LATTICE, 4.0, 6).run(2, 0, silent)
    alone = Search(ways_of([ring], LATTICE), LATTICE, 4.0, 6).run(2, 0, silent)
    assert count(found) == count(alone)


@pytest.mark.parametrize(("name", "ways"), [("disc", 1), ("board", 2), ("l", 4), ("slant", 4)])
def test_a_shape_is_turned_in_as_many_ways_as_look_different(name, ways):
    assert len(ways_of([SHAPES[name]], LATTICE)[0]) == ways


def test_like_shapes_share_their_ways():
    one, two = ways_of([board(60, 50), board(60, 50)], LATTICE)
    assert one is two
