"""Thread and welts against what others publish."""

import math

import pytest

from patternmaker.covers.parts.welts import strips_for, wrapping
from patternmaker.materials import Material
from patternmaker.pattern.stitching import thread_on
from tests.covers.seats import ROUND, brief, pieces
from tests.covers.welted import finished, with_welts

IN = 25.4


def test_thread_of_a_lockstitch():
    """C = 2 + 2 T S: T = 0.01 in, S = 10 gives 2.2 in an inch (textile engineers' notes)."""
    assert thread_on(1, thickness=0.01, stitch=1 / 10) == pytest.approx(2.2)


def test_thread_of_two_layers_of_leather():
    """2 x 1.2 mm, stitches of 4 mm: 3.2 m a metre, by the same formula."""
    assert thread_on(1000, thickness=2 * 1.2, stitch=4) == pytest.approx(3200)


def test_thread_is_near_the_quick_ratio():
    """A seam of 220 cm takes 550 cm, 2.5 times as much (apparel-science page): light material."""
    assert thread_on(220, thickness=2 * 0.35, stitch=2.8) == pytest.approx(550, rel=1e-12)


@pytest.mark.parametrize(("cord", "width"), [(5 / 32 * IN, 37.868), (IN / 4, 45.349)])
def test_width_of_a_welt(cord, width):
    """pi d + 2 allowances of 1/2 in (a sewing page's formula); a trade forum cuts 1 1/2 in."""
    flat = Material(kind="vinyl", thickness=0)
    seat = with_welts(brief(material=flat, seam=IN / 2), seam="top seam", cord=cord)
    (strip,) = pieces(finished(seat), "welt")
    assert strip.cut.height == pytest.approx(width, abs=5e-4)
    assert wrapping(cord, 0) + IN == pytest.approx(width, abs=5e-4)


def test_strips_and_cloth_for_a_long_welt():
    """950 in of welt from 54 in cloth: 18 strips of 1 1/2 in, 27 in of cloth (a trade forum)."""
    strips = strips_for(950 * IN, 54 * IN)
    assert strips == 18
    assert strips * 1.5 == 27


def test_welt_round_both_plates_is_twice_the_perimeter():
    """2 x perimeter and the joins (cushion instructions): once for each seam."""
    (strip,) = pieces(finished(with_welts(brief(), seam="top seam", join=6)), "welt")
    long_edge = strip.cut.segments[1].length
    assert long_edge == pytest.approx(ROUND.length + 2 * 6 * math.sqrt(2))
