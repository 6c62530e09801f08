"""The drop of a boxed seat comes from one measurement, and never from two that disagree."""

import pytest

from patternmaker.covers.boxed import Boxed
from patternmaker.covers.parts.sloping import ACROSS, ALONG
from patternmaker.errors import Refusals
from patternmaker.job.reading import read_job
from tests.covers.seats import SHARP, brief

HOLLOW = ((0.0, 80.0), (200.0, 60.0), (400.0, 80.0))


def refused(**cover: object) -> str:
    outline = {"shape": "rounded rectangle", "width": 400, "depth": 400}
    seat = {"name": "Stool", "outline": outline, "cover": {"style": "boxed", **cover}}
    with pytest.raises(Refusals) as caught:
        read_job({"name": "Practice rooms", "units": "mm", "seat": [seat]})
    return str(caught.value)


@pytest.mark.parametrize(
    ("cover", "says"),
    [
        ({"drop": 70, "foam": 50, "board": 12}, "cover.foam: is given beside drop; give one"),
        ({"drop": 70, "bent": ALONG, "drops": HOLLOW}, "cover.drops: is given beside drop; give"),
        ({"foam": 50, "board": 12, "bent": ALONG, "drops": HOLLOW}, "cover.foam: is given beside"),
        ({"bent": ALONG, "drops": HOLLOW, "drop_back": 90}, "cover.drop_back: is given beside"),
    ],
)
def test_drop_that_is_told_twice_is_refused(cover, says):
    cover = {name: [list(row) for row in value] if name == "drops" else value
             for name, value in cover.items()}  # fmt: skip
    assert says in refused(**cover)


def test_hollow_taken_at_the_front_slopes_to_the_drop_at_the_back():
    """80 at the front's ends and 60 in its middle; 100 at the back's ends, 80 in its middle."""
    seat, cover = brief(SHARP), Boxed(bent=ACROSS, drops=HOLLOW, drop_back=100.0)
    assert not list(cover.objections(seat))
    assert cover.wall(cover.form(seat)).drops == pytest.approx((60, 100))
