"""The figures that strike a piece by hand are those of the piece."""

import math
from dataclasses import replace
from typing import Any

import pytest

from patternmaker.cutlist.strike import by_hand, marks_along
from patternmaker.materials import Material
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.brief import Brief
from patternmaker.units import Unit
from tests.contours import polygon
from tests.covers.seats import BENCH, IN, ROUND, SHARP, boxed, brief, piece, told, with_bay

LEATHER = Material()


def struck(seat: Brief, name: str, unit: Unit = Unit.MM) -> list[str]:
    return told(by_hand(piece(boxed(seat), name)), unit).splitlines()


def values(seat: Brief, name: str) -> list[Any]:
    return [value for note in by_hand(piece(boxed(seat), name)) for value in note.values]


def test_round_top_is_struck_with_a_trammel_at_half_its_cut_width():
    """(320 + 24)(1 - 2.5 %) = 335.4 mm."""
    assert values(brief(ROUND, LEATHER), "top") == pytest.approx([167.7])


def test_rounded_round_top_is_struck_at_a_workable_radius():
    """Common practice, no source: 13 3/4 in in leather is cut at 14 1/2, trammel 7 1/4 in."""
    seat = brief(ROUND.mapped(13.75 * IN / 320), LEATHER, seam=IN / 2, round_cut_to=IN / 4)
    assert struck(seat, "top", Unit.IN) == ["A circle: trammel set to 7 1/4 in"]


def test_sharp_rectangle_is_struck_by_its_sides_and_proved_by_its_diagonal():
    assert struck(brief(SHARP), "top") == [
        f"Rectangle 424 mm × 324 mm, diagonal {round(math.hypot(424, 324) * 2) / 2:g} mm",
        "corners sharp",
    ]


def test_corner_of_a_cut_rectangle_is_rounder_by_the_allowance():
    width, height, diagonal, corner, inside = values(brief(BENCH), "top")
    assert (width, height) == pytest.approx((784, 384))
    assert diagonal == pytest.approx(math.hypot(784, 384))
    assert corner == inside == pytest.approx(52)


def test_corner_after_take_up_lies_between_what_each_way_takes_off():
    """40 mm is scaled by ((760 + 24)(1 - r) - 24) / 760 across, by as much of 360 along."""
    corner = values(brief(BENCH, LEATHER), "top")[3]
    across, along = ((side * 0.975 - 24) / (side - 24) for side in (784, 384))
    assert 12 + 40 * along < corner < 12 + 40 * across


@pytest.mark.parametrize(("corner", "is_struck"), [(40, True), (160, False)])
def test_rectangle_is_withheld_where_its_corners_are_too_oval_for_one_radius(corner, is_struck):
    """At 2 and 6 per cent a corner of 160 mm is 6.4 mm longer one way than the other."""
    uneven = Material(take_up_across=0.02, take_up_along=0.06 if corner == 160 else 0.025)
    seat = RoundedRectangle(width=760, depth=360, corner=corner).contour()
    assert bool(struck(brief(seat, uneven), "top")) is is_struck


@pytest.mark.parametrize("along", [0.021, 0.06])
def test_round_top_out_of_round_needs_its_paper(along):
    uneven = Material(take_up_across=0.02, take_up_along=along)
    assert struck(brief(ROUND, uneven), "top") == []


@pytest.mark.parametrize(("cut", "strays"), [(2, 0.177), (2.8, 0.2475), (2.9, 0.256), (6, 0.53)])
def test_rectangle_is_withheld_where_its_line_strays_further_than_a_knife(cut, strays):
    """Of a chamfer c wide the arc of equal area, its radius 1.527 c, misses the ends by 0.088 c."""
    radius = cut * math.sqrt(2 / (4 - math.pi))
    assert math.hypot(radius, radius - cut) - radius == pytest.approx(strays, abs=0.001)
    far = 300 - cut
    chamfered = polygon(
        complex(cut, 0), complex(far, 0), complex(300, cut), complex(300, far),
        complex(far, 300), complex(cut, 300), complex(0, far), complex(0, cut),
    )  # fmt: skip
    panel = replace(piece(boxed(brief(SHARP)), "top"), cut=chamfered)
    assert bool(by_hand(panel)) is (strays < 0.25)


@pytest.mark.parametrize(("cut", "is_struck"), [(0.6, True), (0.75, False)])
def test_line_is_compared_between_its_corners_too(cut, is_struck):
    """One chamfer c wide lies 0.39 c inside the arcs, the three sharp corners 0.32 c outside."""
    radius = cut * math.sqrt(0.5 / (4 - math.pi))
    assert (radius - cut / 2) * math.sqrt(2) - radius == pytest.approx(-0.391 * cut, rel=0.01)
    assert radius * (math.sqrt(2) - 1) == pytest.approx(0.316 * cut, rel=0.01)
    chamfered = polygon(complex(cut, 0), 300, 300 + 300j, 300j, complex(0, cut))
    panel = replace(piece(boxed(brief(SHARP)), "top"), cut=chamfered)
    assert bool(by_hand(panel)) is is_struck


def test_seat_with_a_bay_needs_its_paper():
    assert struck(brief(with_bay()), "top") == []


def test_strip_is_struck_by_its_size_lines_and_marks():
    """Drop 80, wrap 30 and allowance 12: 122 mm wide; 320 pi, two allowances and 30 mm long."""
    seat = brief(ROUND, seam=12, wrap=30, notch_spacing=400, boxing_spare=30)
    assert struck(seat, "boxing") == [
        "Strip 1059.5 mm × 122 mm, diagonal 1066.5 mm",
        "left join line 12 mm from the end; seam 12 mm from the upper edge",
        "fold 92 mm from the upper edge",
        (
            "along the seam from the left join line: 89 mm (start sewing), 251.5 mm (left), "
            "502.5 mm (front), 754 mm (right), 916.5 mm (stop sewing), 1005.5 mm (back)"
        ),
    ]


def test_base_and_dust_cover_are_struck_too():
    assert values(brief(ROUND), "base template") == pytest.approx([157])
    assert values(brief(ROUND), "dust cover") == pytest.approx([159])


def test_clips_of_a_strip_are_told_corner_by_corner():
    """Sharp corners of a seat of 400 by 300 stand 200, 500, 900 and 1200 mm from the back."""
    assert struck(brief(SHARP, seam=12), "boxing")[-1] == (
        "clip the allowance 9 mm deep, evenly: "
        "one at 200 mm, one at 500 mm, one at 900 mm, one at 1200 mm"
    )
    told = struck(brief(BENCH, seam=12), "boxing")[-1]
    assert told.count(" from ") == 4
    assert not [note for note in struck(brief(ROUND), "boxing") if "clip" in note]


def test_a_double_notch_within_a_panel_is_told_as_double():
    seat = brief(BENCH, seam=12, boxing_longest=1600)
    back = next(p for p in boxed(seat).pieces if p.name == "boxing back")
    assert [name for name, _ in marks_along(back) if "back" in name] == ["back, double"]
