"""Rows of stitches."""

import pytest

from patternmaker.errors import Refusals
from patternmaker.pattern.stitching import TOPSTITCHED, Stitching, StitchRules, thread_on


def test_thread_grows_with_what_it_goes_through_and_with_the_stitches():
    assert thread_on(100, 0, 3) == 200
    assert thread_on(100, 3, 3) == 400
    assert thread_on(100, 3, 1.5) == 600


def test_thread_to_spare_is_a_share_of_what_the_stitches_hold():
    row = Stitching("top seam", "", stitch=4, run=1000, thickness=2.4, spare=0.25)
    assert row.thread == pytest.approx(4000)


def test_topstitch_shows():
    assert Stitching("a", TOPSTITCHED, 4, 1, 1).shows
    assert not Stitching("a", "", 4, 1, 1).shows


@pytest.mark.parametrize("rules", [{"seams": 0.5}, {"topstitch": 16}, {"spare": 1.5}])
def test_stitch_that_no_machine_sews_is_refused(rules):
    with pytest.raises(Refusals):
        StitchRules(**rules)
