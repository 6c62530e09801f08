"""Match lines read back from the printed sheets and walked by numeric integration."""

from typing import Any

import pytest

from tests.paper.curves import Curve
from tests.paper.samples import Made, made

DRAWN = 0.03  # mm; how well a printed place is known


@pytest.fixture(scope="module")
def printed() -> Made:
    """The sample on a sheet so wide that every piece is drawn whole."""
    return made("cello-chairs", "1500x1500mm")


def sized(printed: Made, name: str) -> dict[str, Any]:
    """Return the figures of a piece of the striped chair."""
    chair = next(seat for seat in printed.figures["seats"] if seat["name"] == "Cello chair")
    return next(piece for piece in chair["pieces"] if piece["name"] == name)


def within(printed: Made, piece: dict[str, Any]) -> tuple[Curve, list[Curve]]:
    """Return the cut line of a piece, known by its area, and the match lines inside it."""
    form, cut = next(
        (form, curve)
        for form, curve in printed.book.drawn("cut line")
        if abs(abs(curve.area) - piece["area_mm2"]) < 1
    )
    left, bottom, right, top = cut.box
    lines = (line for other, line in printed.book.drawn("match line") if other == form)
    inside = [
        line
        for line in lines
        if left <= line.middle.real <= right and bottom <= line.middle.imag <= top
    ]
    return cut, inside


def off(line: Curve, point: complex) -> float:
    """Return how far a point lies off the whole line."""
    return float(abs(((point - line.start) / (line.end - line.start)).imag) * line.length)


def test_match_lines_of_a_top_stand_in_its_middle_and_begin_at_its_edges(printed):
    """The chair is alike left and right: its front centre is in the middle of its width."""
    cut, lines = within(printed, sized(printed, "top"))
    assert len(lines) == 2
    for line in lines:
        assert off(line, cut.middle) < DRAWN
        begin = min((line.start, line.end), key=lambda end: -abs(end - cut.middle))
        assert abs(begin - cut.middle) == pytest.approx(min(cut.size) / 2, abs=DRAWN)


def test_match_line_of_the_boxing_stands_half_way_between_its_joins(printed):
    front = sized(printed, "boxing front")
    cut, (line,) = within(printed, front)
    assert abs(line.middle - cut.middle) < DRAWN
    assert line.length == pytest.approx(front["height_mm"], abs=DRAWN)


def test_nothing_but_what_is_cut_from_striped_cloth_has_a_match_line(printed):
    """Two strokes on the top, middle and side each, one line across the boxing's front."""
    assert len(printed.book.drawn("match line")) == 3 * 2 + 1
