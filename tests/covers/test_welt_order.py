"""A welt is sewn round a top that is made up of parts once it is one, and not before."""

import pytest

from patternmaker.covers import Cover, finishing
from patternmaker.covers.domed import DomedTop
from patternmaker.covers.fluted import Fluted
from patternmaker.covers.waterfall import Waterfall
from tests.covers.seats import ROUND, SHARP, brief, told
from tests.covers.welted import with_welts


@pytest.mark.parametrize(
    ("cover", "shaping"),
    [
        (DomedTop(made="gores"), "Gore seams"),
        (DomedTop(made="darts", crown=40.0), "Fold each dart"),
        (Fluted(panels=4, roll=10.0), "the allowances of every panel seam"),
    ],
)
def test_welt_follows_what_makes_up_the_top(cover: Cover, shaping: str):
    seat = with_welts(brief(ROUND), seam="top seam")
    steps = told(finishing.finished(cover.pattern(seat), seat).steps)
    order = [steps.index(each) for each in (shaping, "Sew it to the top", "Lay the boxing")]
    assert order == sorted(order)


def test_each_of_two_welts_is_sewn_to_its_own_piece():
    seat = with_welts(brief(SHARP), seam="corner seam")
    steps = told(finishing.finished(Waterfall(drop=80.0).pattern(seat), seat).steps)
    assert "Sew it to the boxing left on its sew line, cord inward, the others likewise" in steps
