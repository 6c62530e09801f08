"""The order of work at the bench."""

import pytest

from patternmaker.covers.parts import steps
from patternmaker.geometry.contour import Path
from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.pattern.allowances import Allowances
from patternmaker.pattern.piece import Edge, Guide, LineKind, Piece, Seam
from patternmaker.units import Unit
from tests.covers.seats import BENCH, CLOTH, boxed, brief, told

LEATHER = Material()
SEAT = Circle(diameter=1000 / 3.141592653589793).contour()
RING = (("back", 0.0), ("left", 250.0), ("1", 300.0), ("front", 500.0), ("right", 750.0),
        ("back", 1000.0))  # fmt: skip


def ring(*joins: str, stations=RING, **allowances: float) -> steps.Round:
    """Return boxing round a lid of 1 m."""
    given = {"seam": 12, "sewing_open": 90, **allowances}
    return steps.Round("boxing", Edge("lid", "edge", SEAT, stations), joins, Allowances(**given))


def scrap(material: Material, clips: int = 0, name: str = "side") -> Piece:
    """Return a round piece with some clips, 9 mm deep."""
    guides = [Guide(LineKind.CLIP, Path.through(0, 9j), "clip")] * clips
    edge = Edge(name, "edge", SEAT, RING)
    return Piece(name, name, material, SEAT, tuple(guides), edges={"edge": edge}, finished=(1, 1))


def test_leather_is_marked_on_its_flesh_side():
    assert "on the flesh side only: no awl" in told(steps.marking([scrap(LEATHER)]))


def test_every_other_material_is_marked_on_its_wrong_side():
    both = told(steps.marking([scrap(LEATHER), scrap(CLOTH)]))
    assert "on the flesh side or wrong side only" in both


def test_notches_are_snipped_as_deep_as_they_are_drawn():
    assert "Snip the notches 3 mm deep, no deeper" in told(boxed(brief(material=LEATHER)).steps)


def test_notches_of_two_depths_are_told_as_both():
    seat = brief(material=CLOTH, roles={"boxing": LEATHER}, seam=20, topstitch=5)
    assert "Snip the notches 3 mm to 5 mm deep" in told(boxed(seat).steps)


def test_piece_without_notches_has_none_to_snip():
    assert len(list(steps.marking([scrap(LEATHER)]))) == 1


def test_clips_are_counted_and_end_short_of_the_seam():
    pieces = [scrap(LEATHER, 4), scrap(LEATHER, name="lid"), scrap(LEATHER, 1, name="front")]
    assert told(steps.clipping(pieces)) == (
        "Clip at the clip marks, 9 mm deep, stopping 3 mm short of the seam: side 4 and front 1"
    )
    assert not list(steps.clipping([scrap(LEATHER)]))


def test_what_frays_is_stay_stitched_before_it_is_clipped():
    first, then = steps.clipping([scrap(CLOTH, 2), scrap(LEATHER, 2, name="front")])
    assert first.told(Unit.IN) == (
        "Stay-stitch the side 1/16 in outside the seam, past the clip marks"
    )
    assert then.told(Unit.MM).endswith("side 2 and front 2")


def test_the_one_join_is_left_open():
    assert told(ring("back").joined()) == (
        "Leave the back join of the boxing open: it is closed last"
    )


def test_all_joins_but_the_last_are_sewn_first():
    joined = told(ring("left join", "right join", "back join 2", boxing_join=15).joined())
    assert joined == (
        "Sew the right join and back join 2 of the boxing first, at 15 mm; leave the left join "
        "open: it is closed last"
    )


def test_with_nothing_left_unsewn_the_boxing_is_a_ring_first():
    seam = ring("back", sewing_open=0, boxing_spare=75)
    assert told(seam.joined()) == (
        "Check the back join against the double notch at the back; trim its spare (75 mm) to "
        "12 mm past the join line\n"
        "Sew the back join of the boxing at 12 mm, into a ring"
    )
    assert "all round from the back join; overlap" in told(seam.sewn())
    assert not list(seam.closed())


def test_sewing_starts_and_stops_as_far_from_the_join_as_is_left_open():
    laid, sewn = ring("back").sewn()
    assert laid.told(Unit.MM) == (
        "Lay the boxing to the lid, show sides together: back join to the double notch at the "
        "back, left to left, front to front, right to right; then each notch between to its like"
    )
    assert sewn.told(Unit.MM) == (
        "Sew at 12 mm: from the start mark, 90 mm past the back join, by left, front and right "
        "to the stop mark, as far before it; lock both ends over 13 mm"
    )


# TM 10-8415-210-13&P, 5-8: the ends of a lockstitch overlap by half an inch at least.
def test_ends_are_locked_over_half_an_inch():
    assert told(ring("back").sewn(), Unit.IN).endswith("over 1/2 in")
    assert steps.LOCKED.in_(Unit.MM) >= 25.4 / 2


def test_join_beside_a_side_begins_the_round_there():
    places = (("back", 0.0), ("left join", 200.0), ("front", 500.0), ("right", 750.0),
              ("back", 1000.0))  # fmt: skip
    laid, sewn = ring("left join", stations=places).sewn()
    assert "left join to its notch, front to front, right to right, back to back" in (
        laid.told(Unit.MM)
    )
    assert "past the left join, by front, right and back to" in sewn.told(Unit.MM)


def test_spare_is_trimmed_at_the_machine_before_the_join_is_closed():
    assert told(ring("back", boxing_spare=75).closed()) == (
        "Check the back join against the double notch at the back; trim its spare (75 mm) to "
        "12 mm past the join line\n"
        "Close the back join of the boxing at 12 mm: it must meet the double notch at the back. "
        "Sew home the 180 mm left open"
    )


def edge(piece: str, *stations: tuple[str, float]) -> Edge:
    return Edge(piece, "edge", Path.through(0, stations[-1][1]), stations)


def test_seam_is_told_by_its_pieces_notches_and_length():
    places = ("2·0", 0.0), ("2·1", 318.0)
    seam = Seam(edge("left half", *places), edge("right half", *places), "seam 2")
    assert told(steps.sewing([seam], 12)) == (
        "Seam 2: left half to right half, show sides together, notch 2·0 to 2·1 (318 mm long), "
        "at 12 mm"
    )


def test_surplus_that_is_but_rounding_is_not_told():
    one, two = (edge(name, ("a", 0.0), ("b", 100.0)) for name in ("fall", "band"))
    assert told(steps.sewing([Seam(one, two, "corner seam", 3e-14)], 12)).endswith("at 12 mm")


@pytest.mark.parametrize(("cap", "band"), [(104.0, 100.0), (100.0, 104.0)])
def test_surplus_of_either_edge_is_worked_in(cap, band):
    one, two = (edge(name, ("a", 0.0), ("b", x)) for name, x in (("cap", cap), ("band", band)))
    assert told(steps.sewing([Seam(one, two, "top seam", cap - band)], 12)).endswith(
        f"at 12 mm; work in the 4 mm that the {'cap' if cap > band else 'band'} has more, evenly "
        "from notch to notch"
    )


def test_seams_of_one_name_and_pieces_are_sewn_in_one_go():
    one = Seam(edge("cap", ("a", 0.0), ("b", 100.0)), edge("band", ("a", 0.0), ("b", 100.0)), "rim")
    two = Seam(edge("cap", ("b", 0.0), ("c", 50.0)), edge("band", ("b", 0.0), ("c", 50.0)), "rim")
    ends = Seam(edge("band", ("top", 0.0), ("bottom", 80.0)), edge("band", ("top", 0.0),
                ("bottom", 80.0)), "join")  # fmt: skip
    assert told(steps.sewing([one, two, ends], 12)).splitlines() == [
        "Rim: cap to band, show sides together, notch a to c (150 mm long), at 12 mm",
        "Join: both ends of band, show sides together, notch top to bottom (80 mm long), at 12 mm",
    ]


def test_topstitch_says_what_it_catches():
    assert "6 mm from the seam, so that it catches 6 mm of" in told(
        steps.topstitching("boxing", Allowances(seam=12, topstitch=6))
    )


@pytest.mark.parametrize(("line", "says"), [(20, "Pull its edge to the line"), (0, "Pull it down")])
def test_stapling_begins_at_four_places_and_pulls_to_the_line_if_there_is_one(line, says):
    allowances = Allowances(wrap=25, reference_line=line)
    told_of = told(steps.stapling(allowances))
    assert told_of.startswith(f"{says} and staple back, front, left, right. Then outward")
    assert "every 25 mm to 40 mm" in told_of  # common practice, no source
    assert len(list(steps.reference(brief(wrap=25, reference_line=line)))) == bool(line)


def test_cover_without_a_seam_on_the_edge_is_centred():
    assert told(steps.placing("horsehair", "")) == (
        "Fit the cover over the horsehair, front to the front, centred both ways"
    )
    assert "the crown seam on the edge" in told(steps.placing(seam="crown seam"))


def test_order_of_a_boxed_seat_has_its_own_numbers():
    order = [note.told(Unit.MM) for note in boxed(brief(BENCH, CLOTH, wrap=30)).steps]
    firsts = [each.split()[0] for each in order]
    assert firsts == ["Cut", "Snip", "Stay-stitch", "Clip", "Leave", "Lay", "Sew", "Close", "Turn",
                      "Underside", "Fit", "Pull", "Look", "Turn"]  # fmt: skip
    assert "reference line 27 mm from the edge" in told(boxed(brief(BENCH, wrap=30)).steps)
    assert "760 mm by 360 mm" in order[-2]
