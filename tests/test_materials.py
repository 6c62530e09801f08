import pytest

from patternmaker.errors import Refusals
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
    assert KINDS["velour"].lay.endswith("nap back to front")
    assert KINDS["velour"].lay_boxing.endswith("nap downward")


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
