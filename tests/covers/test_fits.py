import math

import pytest

from patternmaker.covers.parts.fits import fit
from patternmaker.covers.parts.tops import sew_line
from patternmaker.facts import Pull
from patternmaker.geometry.contour import Path
from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.pattern.brief import TAKEN, Brief
from patternmaker.pattern.piece import Edge, Seam
from patternmaker.units import Unit
from tests.covers.seats import BENCH, IN, ROUND, boxed, brief, told

LEATHER = Material()
SMALL = Circle(diameter=4 * IN).contour()
SCALE = (344 * 0.975 - 24) / 320  # of a round top of leather, 320 mm across


def says(seat: Brief) -> str:
    return told(boxed(seat).fit.says)


def warnings(seat: Brief) -> str:
    return told(boxed(seat).fit.warnings)


@pytest.mark.parametrize("taken", list(TAKEN))
def test_report_says_what_each_way_of_measuring_implies(taken):
    assert TAKEN[taken] in says(brief(taken=taken))


def test_stretch_round_is_the_finished_perimeter_over_the_sewn_length():
    assert boxed(brief(ROUND, LEATHER)).fit.stretch_round == pytest.approx(1 / SCALE)
    assert boxed(brief(ROUND)).fit.stretch_round == 1


def test_take_up_is_told_on_the_cut_and_on_the_finished_width():
    """(320 + 24)(1 - 2.5 %) = 335.4 mm; 2.5 % of 344 is 2.69 % of 320."""
    line = "Top: take-up 2.5 %, cut 335.5 mm instead of 344 mm; 2.69 % of the finished width"
    assert line in says(brief(ROUND, LEATHER)).splitlines()


def test_take_up_of_a_rectangle_is_told_each_way():
    lines = says(brief(BENCH, LEATHER)).splitlines()
    assert any(line.startswith("Top across: take-up 2.5 %, cut 764.5 mm") for line in lines)
    assert any(line.startswith("Top along: take-up 2.5 %, cut 374.5 mm") for line in lines)


def test_material_without_take_up_says_so():
    assert "No take-up in the top (woven cloth)" in says(brief())


def test_old_cover_says_that_none_is_added():
    assert "No take-up in the top (upholstery leather)" in says(
        brief(ROUND, LEATHER, taken="old cover")
    )


def test_rounded_cut_says_what_rounding_does_to_the_rate():
    """335.4 mm rounded to the nearest 5 is 335: 2.62 % off 344."""
    assert (
        "Cut sizes rounded to the nearest 5 mm: the take-up comes to 2.62 % across, 2.62 % along"
        in says(brief(ROUND, LEATHER, round_cut_to=5))
    )


def test_each_edge_is_told_how_far_it_stretches_in_the_way_it_is_laid():
    stretch = f"{(1 / SCALE - 1) * 100:.3g} %"
    lines = says(brief(ROUND, LEATHER)).splitlines()
    title = "upholstery leather"
    assert (
        f"Top, from left to right, stretches {stretch} to go on; {title} gives 5 % that way"
        in lines
    )
    assert (
        f"Top, from front to back, stretches {stretch} to go on; {title} gives 4 % that way"
        in lines
    )
    assert (
        f"Boxing, round the seat, stretches {stretch} to go on; {title} gives 4 % that way" in lines
    )


def test_strip_laid_across_the_roll_is_judged_by_what_that_gives():
    lines = says(brief(ROUND, LEATHER, roles={"boxing": Material(kind="vinyl")}))
    assert "Boxing, round the seat, stretches 2.76 % to go on; vinyl gives 4 % that way" in lines


def test_edge_that_need_not_stretch_is_passed_over():
    assert "stretches" not in says(brief())


def test_edge_that_must_stretch_further_than_its_material_gives_is_warned_of():
    """A 4 in stool in vinyl taken up by 5 %: about 6.8 % where 4 % and 3 % are given."""
    seat = brief(SMALL, Material(kind="vinyl", take_up=0.05), wrap=13, sewing_open=30)
    lines = warnings(seat).splitlines()
    assert [line.split(" must")[0] for line in lines] == [
        "Top, from left to right,",
        "Top, from front to back,",
        "Boxing, round the seat,",
    ]
    assert "but vinyl gives only 3 % that way: take up less" in lines[1]


def test_give_of_this_hide_overrides_what_is_known_of_its_kind():
    seat = brief(ROUND, Material(give=0.02))
    assert warnings(seat).count("gives only 2 % that way") == 3
    assert warnings(brief(ROUND, Material(give=0.03))) == ""


def test_tape_within_one_per_cent_is_the_tape():
    """320 pi = 1005.3 mm, give or take 10.05."""
    assert warnings(brief(tape=1005.31 + 10.0)) == ""
    assert warnings(brief(tape=1005.31 - 10.0)) == ""
    assert "disagrees" in warnings(brief(tape=1005.31 + 10.2))
    assert "disagrees" in warnings(brief(tape=1005.31 - 10.2))


def test_tape_that_disagrees_is_told_with_the_width_it_implies():
    assert warnings(brief(tape=1100)) == (
        "The tape round the seam (1100 mm) disagrees with the measured width (320 mm) by 9.42 %: "
        "it implies a width of 350 mm; the measured width was used; measure both again, "
        'or let the tape win (trust = "round")'
    )


def test_either_may_win_where_tape_and_width_disagree():
    pattern = boxed(brief(tape=1100, trusts_tape=True))
    assert told(pattern.fit.warnings).endswith("that width was used")
    assert pattern.outline.width == pytest.approx(1100 / math.pi)


def test_trusted_tape_that_agrees_says_that_it_sets_the_width():
    line = "The tape round the seam (1010 mm) sets the width: 321.5 mm instead of 320 mm"
    assert line in says(brief(tape=1010, trusts_tape=True))
    assert "sets the width" not in says(brief(tape=1010))
    assert "sets the width" not in says(brief(trusts_tape=True))


def test_base_larger_than_its_seat_is_warned_of():
    large = Circle(diameter=330).contour()
    assert warnings(brief(base=large)) == (
        "The base is 1036.5 mm round, more than the seat at its seam (1005.5 mm): check both"
    )
    assert warnings(brief(base=ROUND)) == ""


def test_seams_are_told_as_walked():
    """Four quarters of 251 mm in two spans each; the join through allowance, drop and wrap."""
    assert "Seams walked: each of 11 spans meets within 0.001 mm" in says(brief())


def test_seam_that_does_not_meet_is_told_by_its_worst_span():
    one, two = (Edge("a", "edge", Path.through(0, 500), stops)
             for stops in ((("x", 0.0), ("y", 200.0)), (("x", 0.0), ("y", 200.25))))  # fmt: skip
    seat = brief()
    report = fit(seat, sew_line(seat), (Seam(one, two),))
    assert "each of 1 spans meets within 0.250 mm" in told(report.says)


def test_rounding_that_leaves_less_than_half_of_the_take_up_is_warned_of():
    """(320 + 24) x 0.985 = 338.84: to the nearest 15 mm 345, which is looser than the seat."""
    lines = warnings(brief(ROUND, Material(kind="vinyl"), round_cut_to=15))
    assert lines.count("it may lie loose") == 2
    assert "it may lie loose" not in warnings(brief(ROUND, Material(kind="vinyl"), round_cut_to=1))


def test_tape_that_agrees_is_told():
    assert "(1010 mm) agrees with the measured width within 0.47 %" in says(brief(tape=1010))


def test_a_wrap_too_short_to_staple_is_warned_of():
    assert "A wrap-under of 10 mm leaves little to staple" in warnings(brief(wrap=10))
    assert "staple" not in warnings(brief(wrap=13))


def test_a_base_far_inside_the_seam_is_warned_of():
    assert "The base stands 30 mm inside the seam" in warnings(brief(base=ROUND.grown(-30)))
    assert "inside the seam" not in warnings(brief(base=ROUND.grown(-25)))


def test_a_strip_longer_than_the_roll_is_wide_is_warned_of():
    """54 in cloth: four suppliers of hides count a yard of it so."""
    assert "seldom gives more than 1371.5 mm" in warnings(brief(BENCH))
    assert "boxing_longest" not in warnings(brief(ROUND))
    assert "boxing_longest" not in warnings(brief(BENCH, boxing_longest=2500))


def test_a_take_up_that_an_old_cover_sets_aside_is_warned_of():
    own = Material(take_up=0.02)
    assert "none of the take-up" in warnings(brief(ROUND, own, taken="old cover"))
    assert "none of the take-up" not in warnings(brief(ROUND, Material(), taken="old cover"))
    assert "none of the take-up" not in warnings(brief(ROUND, own))


def test_a_stretch_test_sets_the_take_up_and_is_told_with_its_share():
    """A 10 in mark pulled to 10 3/8 gives 3/8 in 10; half of that is 3/16 in 10, or 1.875 %."""
    hide = Material(stretch_test=Pull(10 * IN, 10.375 * IN))
    pattern = boxed(brief(ROUND, hide))
    (told_,) = (note.told(Unit.IN) for note in pattern.fit.says if "a mark of" in note.says)
    assert told_.startswith(
        "Stretch test of upholstery leather: a mark of 10 in pulled to 10 3/8 in "
        "gives 3.75 %; 50 % of that is taken up (1.875 %)"
    )
    assert told_.endswith("(common practice; use sets another share)")
    sewn = (344 * (1 - 0.01875) - 24) / 320
    assert pattern.fit.stretch_round == pytest.approx(1 / sewn)


def test_a_share_of_the_give_that_is_asked_for_is_told_without_a_reason():
    lines = says(brief(ROUND, Material(stretch_test=Pull(250, 260), use=0.25)))
    assert "gives 4 %; 25 % of that is taken up (1 %), the rest" in lines
    assert "common practice" not in lines
    assert "Top: take-up 1 %" in lines


def test_a_test_of_the_boxing_or_beside_an_old_cover_tells_what_it_gives_alone():
    vinyl = Material(kind="vinyl", stretch_test_across=Pull(200, 210))
    lines = says(brief(ROUND, LEATHER, roles={"boxing": vinyl})).splitlines()
    assert (
        "Stretch test of vinyl: a mark of 200 mm pulled to 210 mm from left to right gives 5 %"
        in lines
    )
    assert "Boxing, round the seat, stretches 2.76 % to go on; vinyl gives 5 % that way" in lines
    old = brief(ROUND, Material(stretch_test=Pull(200, 210)), taken="old cover")
    assert (
        "Stretch test of upholstery leather: a mark of 200 mm pulled to 210 mm gives 5 %"
        in says(old)
    )
    assert "none of the take-up" in warnings(old)


def test_railroaded_cloth_gives_boxing_in_one_strip_and_stretches_the_other_way():
    cloth = Material(kind="woven cloth", lay="railroaded")
    assert "boxing_longest" not in warnings(brief(BENCH, cloth))
    assert (cloth.gives_across, cloth.gives_along) == (0.01, 0.015)
