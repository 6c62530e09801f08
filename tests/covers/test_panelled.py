"""Panels with outlines of their own: their seams are walked, and what can't be sewn is told."""

from dataclasses import replace

import pytest

from patternmaker.covers.panelled import Panelled
from patternmaker.facts import Found
from patternmaker.geometry.contour import Contour
from patternmaker.outlines.polygon import Polygon
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.outlines.traced import Traced
from patternmaker.pattern.brief import Brief, Panel, SeamWish
from patternmaker.pattern.piece import Piece
from patternmaker.units import Unit
from tests.covers.seats import brief, piece, told

SQUARE = RoundedRectangle(width=300, depth=200, corner=0).contour()
SEAM = SeamWish(panel="crown", begins="front left", ends="front right",
                partner="skirt", partner_begins="back left", partner_ends="back right")  # fmt: skip
TRIANGLE = "x (mm),y (mm)\n0,0\n300,0\n150,260\n"


def panelled(*seams: SeamWish, skirt: Contour = SQUARE, seam: float = 12) -> Brief:
    """Return a crown and a skirt, 300 mm wide each, in front of it."""
    panels = (Panel("crown", SQUARE), Panel("skirt", skirt))
    return replace(brief(seam=seam), panels=panels, seams=seams)


def objections(seat: Brief) -> list[str]:
    return [mistake.told() for mistake in Panelled().objections(seat)]


def slits(of: Piece) -> dict[str, complex]:
    return {notch.name: sum(notch.feet) / len(notch.feet) for notch in of.notches}


def test_seam_is_walked_from_notch_to_notch():
    pattern = Panelled().pattern(panelled(SEAM))
    (seam,) = pattern.seams
    assert (str(seam.a), str(seam.b)) == ("crown/seam 1", "skirt/seam 1")
    assert [span[2:] for span in seam.spans] == [(150, 150), (150, 150)]
    assert seam.worst < 1e-9


def test_notches_meet_when_the_panels_lie_right_sides_together():
    """The skirt turned over and laid under the crown: its back edge on the crown's front edge."""
    pattern = Panelled().pattern(panelled(SEAM, seam=12))
    crown, skirt = (slits(piece(pattern, name)) for name in ("crown", "skirt"))
    assert set(crown) == set(skirt) == {"1·0", "1·1", "1·2"}
    for name, foot in crown.items():
        assert foot.real == pytest.approx(skirt[name].real, abs=1e-9)


def test_panel_is_cut_by_the_seam_allowance_and_takes_nothing_up():
    pattern = Panelled().pattern(panelled(SEAM, seam=10))
    crown = piece(pattern, "crown")
    assert (crown.cut.width, crown.cut.height) == (320, 220)


def test_notches_of_two_seams_at_one_corner_become_one():
    other = SeamWish(panel="crown", begins="front right", ends="back right",
                     partner="skirt",
                     partner_begins="front left", partner_ends="back left")  # fmt: skip
    crown = piece(Panelled().pattern(panelled(SEAM, other)), "crown")
    assert "1·2, 2·0" in slits(crown)


def test_longer_edge_is_warned_of_unless_it_is_eased_in():
    short = RoundedRectangle(width=296, depth=200, corner=0).contour()
    (warning,) = Panelled().pattern(panelled(SEAM, skirt=short)).fit.warnings
    assert warning.told(Unit.MM).startswith(
        "Seam 1: crown has 300 mm, skirt has 296 mm: crown is longer by 4 mm."
    )
    eased = replace(SEAM, ease=4.0)
    fit = Panelled().pattern(panelled(eased, skirt=short)).fit
    assert fit.warnings == ()
    assert "Seam 1: crown 300 mm, skirt 296 mm: they meet" in told(fit.says, Unit.MM)


def test_whole_edge_is_sewn_where_a_seam_ends_where_it_begins():
    ringed = SeamWish(panel="crown", begins="back", ends="back",
                      partner="skirt", partner_begins="back", partner_ends="back")  # fmt: skip
    (seam,) = Panelled().pattern(panelled(ringed)).seams
    assert (seam.a.length, seam.b.length) == (1000, 1000)


def test_traced_panel_has_its_corners_for_joints():
    traced = Traced(file=Found("gore.csv", TRIANGLE.encode())).contour()
    wish = SeamWish(panel="gore", begins="corner 1", ends="corner 2",
                    partner="gore", partner_begins="corner 3", partner_ends="corner 2")  # fmt: skip
    seat = replace(brief(), panels=(Panel("gore", traced),), seams=(wish,))
    assert objections(seat) == []
    (seam,) = Panelled().pattern(seat).seams
    assert (seam.a.length, seam.b.length) == pytest.approx((300.1666, 300), abs=1e-3)


def test_panels_must_be_there_and_have_names_of_their_own():
    assert objections(brief()) == ["panel: there is none; add one under [[seat.panel]]"]
    twins = replace(brief(), panels=(Panel("crown", SQUARE), Panel("crown", SQUARE)))
    assert objections(twins) == ["panel: two have the same name; give each a name of its own"]


def test_panels_and_joints_that_are_not_there_are_told_with_the_nearest():
    wrong = replace(SEAM, panel="crwn", partner_ends="back rigt")
    assert objections(panelled(wrong)) == [
        "seam 1.panel: 'crwn' is not known; did you mean 'crown'?",
        "seam 1.partner_ends: 'back rigt' is not known; did you mean 'back right'?",
    ]


def test_panel_that_its_allowance_closes_up_is_refused():
    bay = Polygon(corners=((0, 0), (100, 0), (100, 150), (115, 150), (115, 0), (300, 0),
                           (300, 300), (0, 300))).contour()  # fmt: skip
    (mistake,) = objections(replace(brief(), panels=(Panel("crown", bay),)))
    assert "panel 1 'crown', allowances.seam" in mistake
    assert "the most that fits is 7.4 mm" in mistake or "7.5 mm" in mistake


SIDE = Polygon(corners=((0, 0), (100, 0), (100, 200), (20, 180))).contour()
LEFT = SeamWish(
    panel="side", begins="corner 3", ends="corner 2",
    partner="middle", partner_begins="front left", partner_ends="back left",
)  # fmt: skip
RIGHT = SeamWish(
    panel="side", reversed=True, begins="corner 2", ends="corner 3",
    partner="middle", partner_begins="back right", partner_ends="front right",
)  # fmt: skip


def handed(*seams: SeamWish, mirrored: int = 1) -> Brief:
    """Return a middle with a side at its left, and that side's mirror image at its right."""
    panels = (Panel("middle", SQUARE), Panel("side", SIDE, 1, mirrored))
    return replace(brief(), panels=panels, seams=seams)


def test_panel_and_its_mirror_image_are_counted_from_one_piece():
    side = piece(Panelled().pattern(handed(LEFT, RIGHT)), "side")
    assert (side.count, side.reversed) == (1, 1)


def test_mirror_image_meets_the_other_edge_at_notches_of_its_own():
    pattern = Panelled().pattern(handed(LEFT, RIGHT))
    assert all(seam.worst < 1e-9 for seam in pattern.seams)
    assert pattern.seams[1].name == "seam 2 (side reversed)"
    assert "Seam 2: side reversed 200 mm, middle 200 mm: they meet" in told(pattern.fit.says)
    middle, side = (slits(piece(pattern, name)) for name in ("middle", "side"))
    assert {name[0] for name in middle} == {"1", "2"}
    assert set(side) == {"1·0, 2·2", "1·1, 2·1", "1·2, 2·0"}


def test_mirrored_side_laid_on_the_middle_has_its_notches_there():
    """Turned over left to right the side keeps its heights, but for the tips of sharp corners."""
    pattern = Panelled().pattern(handed(LEFT, RIGHT))
    middle, side = (slits(piece(pattern, name)) for name in ("middle", "side"))
    for number in range(3):
        there = next(foot for name, foot in side.items() if f"2·{number}" in name)
        assert middle[f"2·{number}"].imag == pytest.approx(
            there.imag, abs=1e-9 if number == 1 else 4
        )


def test_a_panel_sewn_to_its_own_mirror_image_has_each_notch_once():
    own = replace(RIGHT, partner="side", partner_begins="corner 2", partner_ends="corner 3")
    pattern = Panelled().pattern(handed(own))
    assert set(slits(piece(pattern, "side"))) == {"1·0", "1·1", "1·2"}
    assert pattern.seams[0].worst < 1e-9


def test_a_mirror_image_that_the_seat_does_not_take_is_refused():
    (refused,) = objections(handed(LEFT, RIGHT, mirrored=0))
    assert refused.startswith("seam 2.reversed: the seat takes no mirror image of 'side'; say")


def test_both_edges_of_a_seam_are_walked_over_the_places_of_their_notches():
    for seat in (panelled(SEAM), panelled(replace(SEAM, begins="back left", ends="front left"))):
        pattern = Panelled().pattern(seat)
        (seam,) = pattern.seams
        for edge in (seam.a, seam.b):
            feet = slits(piece(pattern, edge.piece))
            for name, at in edge.stations[1:-1]:
                assert abs(edge.path.point_at(at) - feet[name]) == pytest.approx(12, abs=1e-9)
