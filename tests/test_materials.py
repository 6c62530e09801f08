import pytest

from patternmaker.errors import Refusals
from patternmaker.facts import Pull
from patternmaker.materials import KINDS, Material
from patternmaker.units import MM_PER_INCH


@pytest.mark.parametrize(
    ("kind", "rate"),
    [("upholstery leather", 0.25 / 10), ("vinyl", 0.015), ("woven cloth", 0), ("velour", 0)],
)
def test_take_up_by_kind(kind, rate):
    """The house's defaults: 1/4 in per 10 in for leather; common practice, no source."""
    material = Material(kind=kind)
    assert material.across == material.along == rate
    assert not material.must_lie_one_way


def test_take_up_of_this_hide_overrides_its_kind_and_one_way_overrides_both():
    assert Material(take_up=0.03).across == 0.03
    uneven = Material(take_up=0.03, take_up_along=0.01)
    assert (uneven.across, uneven.along) == (0.03, 0.01)
    assert uneven.must_lie_one_way


def test_take_up_of_nothing_is_not_the_same_as_none_given():
    assert Material(take_up=0).across == 0
    assert Material(take_up_across=0).must_lie_one_way


def test_give_is_by_kind_and_way_unless_it_is_known_of_this_hide():
    assert (Material().gives_across, Material().gives_along) == (0.05, 0.04)
    known = Material(give=0.1)
    assert (known.gives_across, known.gives_along) == (0.1, 0.1)


def test_thickness_is_by_kind_unless_it_is_known_of_this_hide():
    assert Material().thick == 1.2
    assert Material(thickness=0.9).thick == 0.9
    assert Material(thickness=0).thick == 0


@pytest.mark.parametrize("kind", ["upholstery leather", "vinyl"])
def test_slit_in_leather_and_vinyl_is_an_eighth_at_most(kind):
    """Common practice, no source."""
    assert KINDS[kind].notch == MM_PER_INCH / 8


def test_nap_runs_to_the_front_on_tops_and_down_on_boxing():
    assert Material(kind="velour").lay_flat.endswith("nap back to front")
    assert Material(kind="velour").lay_boxing.endswith("nap downward")


@pytest.mark.parametrize("kind", ["upholstery leather", "vinyl", "woven cloth", "velour"])
def test_strip_is_said_to_lie_the_way_in_which_its_stretch_is_judged(kind):
    known = KINDS[kind]
    assert ("along" in known.lay_boxing) is known.boxing_runs_along
    assert ("across" in known.lay_boxing) is not known.boxing_runs_along


def test_material_is_called_by_its_own_name_where_it_has_one():
    assert Material(name="chestnut").title == "chestnut"
    assert Material(kind="vinyl").title == "vinyl"


def test_mistyped_take_up_is_refused():
    with pytest.raises(Refusals, match=r"take_up: 25 % is more than 15 %"):
        Material(take_up=0.25)


def test_a_mark_of_ten_inches_pulled_to_ten_and_three_eighths_gives_three_eighths_in_ten():
    test = Pull(mark=10 * MM_PER_INCH, pulled_to=10.375 * MM_PER_INCH)
    assert test.give == pytest.approx(0.375 / 10)
    hide = Material(stretch_test=test)
    assert hide.across == hide.along == pytest.approx(0.375 / 10 / 2)  # half: common practice
    assert hide.gives_across == hide.gives_along == pytest.approx(0.375 / 10)
    assert not hide.must_lie_one_way


def test_a_test_one_way_sets_that_way_only():
    hide = Material(stretch_test_across=Pull(100, 106), use=0.4)
    assert (hide.across, hide.along) == pytest.approx((0.024, 0.025))
    assert (hide.gives_across, hide.gives_along) == pytest.approx((0.06, 0.04))
    assert hide.must_lie_one_way


def test_a_test_both_ways_yields_to_one_of_a_single_way():
    hide = Material(stretch_test=Pull(100, 104), stretch_test_along=Pull(100, 102))
    assert (hide.across, hide.along) == pytest.approx((0.02, 0.01))
    assert [way for way, _ in hide.tests] == ["", " from front to back"]


def test_nap_is_by_kind_unless_the_job_knows_better():
    assert Material(kind="velour").has_nap
    assert not Material(kind="velour", nap="none").has_nap
    assert Material(kind="velour", nap="none").lay_flat == "arrow along the warp"
    assert not Material(kind="woven cloth").has_nap
    corduroy = Material(kind="woven cloth", nap="one way")
    assert corduroy.lay_flat == "arrow along the warp, nap back to front"
    assert corduroy.lay_boxing == "length across the warp, nap downward"


def test_railroaded_cloth_lies_a_quarter_turn_round():
    cloth = Material(kind="woven cloth", lay="railroaded")
    assert cloth.lay_flat == "arrow across the warp"
    assert cloth.lay_boxing == "length along the warp"


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ({"stretch_test": Pull(250, 245)},
         "stretch_test, pulled_to: 245 mm is less than the mark (250 mm)"),
        ({"stretch_test_along": Pull(40, 41)}, "stretch_test_along, mark: 40 mm is less than"),
        ({"stretch_test": Pull(100, 151)}, "stretch_test: gives 51 %, more than 50 %"),
        ({"stretch_test": Pull(100, float("nan"))}, "stretch_test, pulled_to: nan"),
        ({"stretch_test": Pull(100, 140)}, "use: 20 % would be taken up, more than 15 %"),
        ({"use": 0.5}, "use: 50 % is a share of the give in a stretch test, and there is none"),
        ({"take_up": 0.02, "stretch_test": Pull(100, 104)},
         "take_up: 2 % is given beside stretch_test, which sets it; leave one of them away"),
        ({"give": 0.02, "stretch_test": Pull(100, 104)}, "give: 2 % is given beside stretch_test"),
        ({"take_up_along": 0.02, "stretch_test_along": Pull(100, 104)},
         "take_up_along: 2 % is given beside stretch_test_along"),
        ({"kind": "velour", "lay": "railroaded"},
         "lay: railroaded turns the nap from left to right, and the nap (one way) must run from"),
        ({"kind": "woven cloth", "nap": "one way", "lay": "railroaded"}, "lay: railroaded turns"),
        ({"lay": "railroaded"}, "lay: railroaded, but upholstery leather has no roll"),
        ({"repeat": 240.0}, "repeat: 240 mm is a repeat, and upholstery leather has none to match"),
        ({"kind": "woven cloth", "repeat_across": 2.0}, "repeat_across: 2 mm is less than 5 mm"),
        ({"nap": "up"}, "nap: 'up' is not known; it can be none, one way"),
    ],
)  # fmt: skip
def test_what_quarrels_is_refused(wrong, told):
    with pytest.raises(Refusals) as refused:
        Material(**wrong)
    assert str(refused.value).startswith(told)


def test_velour_without_its_nap_may_be_railroaded():
    assert Material(kind="velour", nap="none", lay="railroaded").is_railroaded
