"""The stitches of a cover, and their thread."""

import pytest

from patternmaker.covers.box_cushion import BoxCushion
from patternmaker.covers.parts.runs import runs, seam_beside
from patternmaker.materials import Material
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind
from patternmaker.pattern.stitching import PIPED, PLAIN, TOPSTITCHED, Stitching, StitchRules
from patternmaker.units import Unit
from tests.covers.seats import BENCH, CLOTH, ROUND, boxed, brief, guide, piece, told
from tests.covers.welted import finished, with_finishing, with_welts

LEATHER = Material(thickness=1.2, take_up=0)
THIN = Material(thickness=0.5)


def rows(seat: Brief) -> list[Stitching]:
    return list(finished(seat).stitches)


def test_every_seam_has_its_row_and_the_topstitch_follows_its_seam():
    found = [(row.seam, row.seam_type) for row in rows(brief())]
    assert found == [("top seam", PLAIN), ("top seam", TOPSTITCHED), ("join", PLAIN)]
    assert {row.kind for row in rows(brief())} == {"301 lockstitch"}


def test_seam_is_as_long_as_its_parts_together():
    seat = brief(BENCH, CLOTH, boxing_longest=1600, boxing_join=12)
    top, shown, join = rows(seat)
    assert top.run == pytest.approx(BENCH.length)
    assert shown.run == pytest.approx(BENCH.length)
    assert join.run == pytest.approx(2 * (80 + 12 + 25))


def test_seam_goes_through_both_pieces_and_the_topstitch_through_the_allowances_too():
    seat = brief(material=LEATHER, roles={"boxing": THIN})
    top, shown, join = rows(seat)
    assert top.thickness == pytest.approx(1.2 + 0.5)
    assert shown.thickness == pytest.approx(0.5 + 1.2 + 0.5)
    assert join.thickness == pytest.approx(0.5 + 0.5)


def test_welt_adds_a_row_and_two_layers_and_takes_the_topstitch():
    seat = with_welts(brief(material=LEATHER, roles={"welt": THIN}), seam="top seam")
    made, top, join = rows(seat)
    assert (made.seam, made.seam_type) == ("top seam welt", "welt made up")
    assert made.run == pytest.approx(ROUND.length)
    assert made.thickness == pytest.approx(2 * 0.5)
    assert top.seam_type == PIPED
    assert top.thickness == pytest.approx(2 * 1.2 + 2 * 0.5)
    assert join.thickness == pytest.approx(2 * 1.2)


def test_thread_of_a_seat():
    """2 + 2 T / p of its length for each row, and a tenth to spare."""
    rules = StitchRules(seams=3, topstitch=4, spare=0.1)
    top, shown, _ = rows(with_finishing(brief(material=LEATHER), stitches=rules))
    assert top.thread == pytest.approx(ROUND.length * (2 + 2 * 2.4 / 3) * 1.1)
    assert shown.thread == pytest.approx(ROUND.length * (2 + 2 * 3.6 / 4) * 1.1)


def test_stitches_are_those_asked_for():
    top, shown, _ = rows(with_finishing(brief(), stitches=StitchRules(seams=2, topstitch=5)))
    assert (top.stitch, shown.stitch) == (2, 5)
    assert shown.per_inch == pytest.approx(5.08)


def test_label_tells_the_stitches_of_its_own_seams():
    pattern = finished(with_finishing(brief(), stitches=StitchRules(seams=25.4 / 8)))
    assert told(piece(pattern, "top").notes, Unit.IN).endswith("Stitches 8 per inch")
    assert told(piece(pattern, "boxing").notes).endswith("Stitches 3.175 mm, topstitch 4.5 mm")
    assert "titches" not in told(piece(pattern, "base template").notes)


def test_topstitch_belongs_to_the_seam_that_it_runs_along():
    pattern = boxed(brief())
    strip = piece(pattern, "boxing")
    assert seam_beside(guide(strip, LineKind.TOPSTITCH), strip, pattern.seams) == "top seam"
    template = piece(pattern, "base template")
    assert seam_beside(guide(strip, LineKind.TOPSTITCH), template, pattern.seams) is None


def test_parts_of_a_seam_that_follow_each_other_are_one_run():
    pattern = boxed(brief(BENCH, CLOTH, boxing_longest=1600, boxing_join=12))
    (top,) = runs(pattern, "top seam")
    assert top.is_closed
    assert len(top.seams) == 2
    assert top.length == pytest.approx(BENCH.length)
    assert [run.is_closed for run in runs(pattern, "join")] == [False, False]


def test_ring_of_boxing_is_one_closed_run():
    (top,) = runs(boxed(brief()), "top seam")
    assert top.is_closed
    assert top.meets == "back"


def test_ends_of_a_strip_are_runs_of_their_own_though_both_go_from_top_to_bottom():
    """The zip's two strips meet each end of the boxing, half of it each."""
    pattern = BoxCushion(height=75).pattern(brief(BENCH))
    assert [run.is_closed for run in runs(pattern, "join")] == [False, False]
    assert [len(run.seams) for run in runs(pattern, "join")] == [2, 2]
