import pytest

from patternmaker.errors import Refusal
from patternmaker.geometry.compass import Compass
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.validity import crossing
from patternmaker.outlines.circle import Circle


def polygon(*points: complex) -> Contour:
    compass = Compass(points[0])
    for point in (*points[1:], points[0]):
        compass.line(point)
    return compass.closed()


BOW_TIE = polygon(0, 100, 100j, 100 + 100j)  # its long sides meet in the middle
L_SHAPE = polygon(0, 100, 100 + 50j, 50 + 50j, 50 + 100j, 100j)


def test_a_bow_tie_crosses_itself_in_its_middle():
    assert crossing(BOW_TIE) == pytest.approx(50 + 50j)


def test_a_circle_and_an_l_shape_do_not_cross_themselves():
    assert crossing(Circle(diameter=300).contour()) is None
    assert crossing(L_SHAPE) is None


def test_an_edge_that_crosses_itself_has_no_parallel():
    with pytest.raises(Refusal, match=r"crosses itself at x 50.0, y 50.0 mm; draw it"):
        BOW_TIE.grown(5)
