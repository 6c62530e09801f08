from patternmaker.geometry.contour import Path
from patternmaker.materials import Material
from patternmaker.pattern.piece import Edge, Notch, Piece, Seam
from tests.covers.seats import SHARP

LINE = Path.through(0, 500)


def edge(name: str, *stops: float) -> Edge:
    return Edge(name, "edge", LINE, tuple((f"s{i}", stop) for i, stop in enumerate(stops)))


def test_seam_tells_its_ease_and_its_worst_span():
    seam = Seam(edge("a", 0, 100, 305), edge("b", 10, 112, 310))
    assert list(seam.spans) == [("s0", "s1", 100, 102), ("s1", "s2", 205, 198)]
    assert (seam.ease, seam.worst) == (5, 7)


def test_edge_is_measured_between_its_first_and_last_station():
    assert edge("a", 20, 60, 120).length == 100
    assert str(edge("top", 0, 1)) == "top/edge"


def test_slits_reach_from_the_cut_line_inward():
    notch = Notch("back", (-3 + 10j, 3 + 10j), -1j, 4.0, 12.0)
    assert notch.slits == ((-3 + 10j, -3 + 6j), (3 + 10j, 3 + 6j))


def test_piece_without_a_sewn_edge_is_a_template_of_no_seam():
    card = Piece("base template", "base template", Material(kind="card"), SHARP)
    assert card.is_template
    assert not card.is_strip
    assert card.sew_length == 0


def test_sewn_length_is_that_of_the_main_edge():
    edges = {"upper": edge("a", 0, 90), "end": edge("a", 0, 40)}
    strip = Piece("a", "boxing", Material(), SHARP, edges=edges, finished=(90, 40),
                  run=(("s0", 0), ("s1", 90)))  # fmt: skip
    assert strip.sew_length == 90
    assert strip.is_strip
    assert not strip.is_template


def test_edge_past_the_beginning_of_a_ring_is_walked_backward_on_the_same_places():
    whole = SHARP.length
    there = Edge("top", "edge", SHARP, (("a", whole - 90), ("b", whole), ("c", whole + 40)))
    places = [there.path.point_at(at) for _, at in there.stations]
    back = there.backward
    assert [name for name, _ in back.stations] == ["c", "b", "a"]
    for (_, at), place in zip(back.stations, reversed(places), strict=True):
        assert abs(back.path.point_at(at) - place) < 1e-9
