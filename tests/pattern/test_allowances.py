import pytest

from patternmaker.errors import Refusals
from patternmaker.pattern.allowances import Allowances
from tests.covers.seats import IN

LEATHER_SLIT = IN / 8


def test_topstitch_is_a_quarter_inch_from_the_seam_unless_told():
    """Common practice, no source: 1/8 to 1/4 in."""
    assert Allowances(seam=IN / 2).topstitch_at == pytest.approx(IN / 4)
    assert Allowances(seam=12, topstitch=5).topstitch_at == 5


def test_topstitch_of_a_narrow_allowance_still_catches_an_eighth():
    assert Allowances(seam=6).topstitch_at == pytest.approx(6 - IN / 8)


def test_notch_in_leather_is_an_eighth_deep():
    assert Allowances(seam=IN / 2).notch_depth(LEATHER_SLIT) == pytest.approx(IN / 8)


def test_notch_stays_a_sixteenth_clear_of_the_topstitch():
    allowances = Allowances(seam=IN / 2, topstitch=IN * 5 / 16)
    assert allowances.notch_depth(10.0) == pytest.approx(IN / 2 - IN * 5 / 16 - IN / 16)


def test_notch_beside_the_deepest_topstitch_is_a_sixteenth():
    assert Allowances(seam=20, topstitch=20 - IN / 8).notch_depth(5.0) == pytest.approx(IN / 16)


def test_reference_line_is_an_eighth_short_of_the_wrap_unless_told():
    assert Allowances(wrap=IN).reference_at == pytest.approx(7 / 8 * IN)
    assert Allowances(wrap=30, reference_line=30).reference_at == 30
    assert Allowances(wrap=2).reference_at == 0


def test_join_of_the_boxing_takes_the_seam_allowance_unless_told():
    assert Allowances(seam=14).join == 14
    assert Allowances(seam=14, boxing_join=10).join == 10


def test_upper_edge_of_the_boxing_takes_the_seam_allowance_unless_it_is_graded():
    assert Allowances(seam=14).upper_edge == 14
    assert not Allowances(seam=14, boxing_seam=14).is_graded
    graded = Allowances(seam=14, boxing_seam=10)
    assert (graded.upper_edge, graded.seam, graded.is_graded) == (10, 14, True)


@pytest.mark.parametrize(("seam", "boxing_seam"), [(14, 8), (8, 14)])
def test_topstitch_and_notches_of_a_graded_seam_heed_its_narrower_allowance(seam, boxing_seam):
    graded = Allowances(seam=seam, boxing_seam=boxing_seam)
    assert graded.topstitch_at == pytest.approx(8 - IN / 8)
    assert graded.notch_depth(10.0) == pytest.approx(8 - graded.topstitch_at - IN / 16)


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ({"seam": 12, "boxing_seam": 8, "topstitch": 5}, "topstitch: 5 mm is more than the seam"),
        ({"boxing_seam": 5}, "boxing_seam: 5 mm is less than 6 mm"),
        ({"seam": 12, "topstitch": 8.9}, "topstitch: 8.9 mm is more than the seam"),
        ({"wrap": 25, "reference_line": 25.5}, "reference_line: 25.5 mm is more than the wrap"),
        ({"boxing_longest": 400, "boxing_spare": 201}, "boxing_spare: 201 mm is more than half"),
        ({"notch_spacing": 0.001}, "notch_spacing: 0.001 mm is less than 25 mm"),
        ({"seam": 0}, "seam: 0 mm is less than 6 mm"),
    ],
)  # fmt: skip
def test_allowance_past_its_limit_is_refused(wrong, told):
    with pytest.raises(Refusals) as refused:
        Allowances(**wrong)
    assert str(refused.value).startswith(told)
