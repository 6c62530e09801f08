"""Nothing is told of a length that a tape shows as none."""

import re

import pytest

from patternmaker.covers import Cover
from patternmaker.covers.boxed import Boxed
from patternmaker.covers.fluted import Fluted
from patternmaker.covers.pull_over import PullOver
from patternmaker.covers.waterfall import Waterfall
from patternmaker.materials import Material
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.units import Unit
from tests.covers.seats import BENCH, SHARP, brief

NONE = re.compile(r"(?<![\d.,/])0(\.0)? (mm|in|cm)\b")
BOWED = RoundedRectangle(width=1300, depth=1300, corner=640).contour()
BARELY = Material(kind="vinyl", take_up=0.001)  # of a drop of 80 a twelfth of a millimetre


@pytest.mark.parametrize("unit", [Unit.MM, Unit.CM, Unit.IN])
@pytest.mark.parametrize(
    ("cover", "seat"),
    [
        (Fluted(drop=80.0, panels=4, roll=2.0), brief(BENCH)),
        (Boxed(drop=80.0, drop_back=90.0), brief(BENCH, base=BENCH)),
        (PullOver(), brief(BOWED, wrap=3)),
        (Waterfall(drop=80.0), brief(SHARP, BARELY)),
    ],
)
def test_no_sentence_tells_of_nothing(cover: Cover, seat, unit):
    assert not list(cover.objections(seat))
    pattern = cover.pattern(seat)
    notes = [*pattern.fit.says, *pattern.fit.warnings, *pattern.steps]
    notes += [note for piece in pattern.pieces for note in piece.notes]
    told = [note.told(unit) for note in notes]
    assert [says for says in told if NONE.search(says) and "take-up 0" not in says] == []
