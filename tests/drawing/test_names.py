"""Names of joints, beside them."""

from patternmaker.drawing.measures import Measure
from patternmaker.drawing.names import Name, disc, names
from patternmaker.drawing.surface import Letters
from patternmaker.geometry.contour import Contour
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.rounded_rectangle import RoundedRectangle

ROUND = Circle(diameter=100).contour()


def written(*found: Name) -> dict[str, Letters]:
    letters = [mark for name in found for mark in name.marks if isinstance(mark, Letters)]
    return {each.text: each for each in letters}


def test_names_stand_outside_and_read_away_from_the_seat():
    found = written(*names(ROUND, []))
    assert {text: letters.anchor for text, letters in found.items()} == {
        "back": "middle", "left": "right", "front": "middle", "right": "left",
    }  # fmt: skip
    assert found["back"].at.imag > 50
    assert found["front"].at.imag < -50
    assert found["left"].at.real < -50
    assert found["right"].at.real > 50


def test_ends_of_a_rounding_are_passed_over():
    rounded = RoundedRectangle(width=100, depth=100, corner=20).contour()
    found = written(*names(rounded, []))
    assert "back left" in found
    assert not [text for text in found if text.endswith((" begins", " ends"))]


def test_joints_at_one_place_share_a_line():
    joints = {**ROUND.joints, "seam": ROUND.joints["left"]}
    found = written(*names(Contour(ROUND.segments, joints), []))
    assert "left, seam" in found
    assert len(found) == 4


def test_name_stands_inside_where_a_line_runs_outside():
    out = Measure("A", "reach", 50, 80, is_radius=False)
    assert written(*names(ROUND, [out]))["right"].at.real < 50


def test_points_cover_the_text():
    name = next(names(ROUND, []))
    xs = [point.real for point in name.points]
    assert min(xs) < -1
    assert max(xs) > 1


def test_disc_is_a_whole_circle():
    assert disc(3 + 4j, 2).bounds == (1, 2, 5, 6)
