import math

import pytest

from patternmaker.materials import Material
from tests.covers.seats import ROUND, brief


def test_outline_is_as_measured_unless_the_tape_is_trusted():
    assert brief(tape=1100).outline is ROUND
    assert brief(trusts_tape=True).outline is ROUND


def test_trusted_tape_sets_the_size_and_keeps_the_shape():
    outline = brief(tape=1100, trusts_tape=True).outline
    assert outline.length == pytest.approx(1100)
    assert outline.width == outline.height == pytest.approx(1100 / math.pi)


def test_role_without_a_material_of_its_own_takes_the_seat_s():
    vinyl = Material(kind="vinyl")
    seat = brief(roles={"boxing": vinyl})
    assert seat.material("boxing") is vinyl
    assert seat.material("top") is seat.materials[""]
