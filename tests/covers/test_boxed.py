import pytest

from patternmaker.covers import COVERS
from patternmaker.covers.boxed import Boxed
from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from tests.covers.seats import BENCH, ROUND, boxed, brief, objections, with_bay

VELOUR, VINYL = Material(kind="velour"), Material(kind="vinyl")


def test_boxed_is_a_known_cover():
    assert COVERS.all["boxed"] is Boxed
    assert Boxed.called == "boxed"


def test_seat_is_boxed_by_top_boxing_template_and_dust_cover():
    assert [piece.role for piece in boxed(brief()).pieces] == [
        "top", "boxing", "base template", "dust cover",
    ]  # fmt: skip
    assert {piece.role for piece in boxed(brief()).pieces} <= set(Boxed.roles)


def test_each_role_is_cut_from_its_own_material():
    pattern = boxed(brief(ROUND, VELOUR, roles={"boxing": VINYL}))
    cut_from = {piece.role: piece.material.kind for piece in pattern.pieces}
    assert cut_from == {
        "top": "velour", "boxing": "vinyl", "base template": "card", "dust cover": "cambric",
    }  # fmt: skip


def test_notch_is_as_deep_as_its_own_piece_s_material_bears():
    """An eighth in vinyl; three sixteenths in cloth, where the allowance lets it."""
    pattern = boxed(brief(ROUND, VELOUR, roles={"boxing": VINYL}, seam=20, topstitch=5))
    depth = {piece.role: {notch.depth for notch in piece.notches} for piece in pattern.pieces[:2]}
    assert depth == {"top": {25.4 * 3 / 16}, "boxing": {25.4 / 8}}


def test_seams_are_the_edge_of_the_top_and_the_joined_ends():
    names = [(str(seam.a), str(seam.b)) for seam in boxed(brief()).seams]
    assert names == [("top/edge", "boxing/upper edge"), ("boxing/far end", "boxing/near end")]


def test_each_panel_has_its_part_of_the_top_and_the_next_one_s_end():
    names = [(str(seam.a), str(seam.b)) for seam in boxed(brief(BENCH, boxing_longest=1600)).seams]
    assert names == [
        ("top/edge", "boxing front/upper edge"),
        ("top/edge", "boxing back/upper edge"),
        ("boxing front/far end", "boxing back/near end"),
        ("boxing back/far end", "boxing front/near end"),
    ]


def test_joined_ends_are_as_long_as_the_boxing_is_wide():
    join = boxed(brief(seam=12, wrap=25), drop=80).seams[-1]
    assert [join.a.length, join.b.length] == [117, 117]


def test_both_sides_of_a_seam_name_the_same_stations():
    for seam in boxed(brief(BENCH, boxing_longest=1600)).seams:
        names = [[name for name, _ in edge.stations] for edge in (seam.a, seam.b)]
        assert names[0] == names[1]


def test_allowance_larger_than_half_the_seat_is_refused_alone():
    seat = brief(Circle(diameter=60).contour(), seam=31, sewing_open=200)
    assert objections(seat) == [
        (
            "allowances.seam: 31 mm is more than half the seat (30 mm); make the allowance "
            "smaller or check the seat's measurements"
        )
    ]


def test_topstitch_below_the_drop_is_refused():
    assert objections(brief(seam=40, topstitch=30), drop=30) == [
        (
            "allowances.topstitch: 30 mm lies below the drop (30 mm); bring the topstitch nearer "
            "the seam"
        )
    ]
    assert objections(brief(seam=40, topstitch=29.9), drop=30) == []


@pytest.mark.parametrize(("seam", "refused"), [(29, False), (31, True)])
def test_bay_narrower_than_two_allowances_is_refused(seam, refused):
    found = objections(brief(with_bay(mouth=60, corner=5), seam=seam, topstitch=5))
    assert bool(found) is refused
    assert all("allowances.seam: a line 31 mm outside the edge closes up" in each for each in found)


@pytest.mark.parametrize("longest", [None, 1600])
def test_seat_with_a_bay_is_boxed_like_any_other(longest):
    kept = {} if longest is None else {"boxing_longest": longest}
    pattern = boxed(brief(with_bay(width=600, corner=8), Material(), **kept))
    assert max(seam.worst for seam in pattern.seams) < 0.001
    assert len(pattern.pieces) == (4 if longest is None else 5)
