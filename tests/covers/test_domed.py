"""The domed cover: what is cut of it, what is eased, darted or gored, and what can't be domed."""

import math
from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from patternmaker.covers import COVERS
from patternmaker.covers.domed import DomedTop
from patternmaker.covers.parts.runs import runs
from patternmaker.errors import Refusals
from patternmaker.geometry.domes import Dome, over_crown
from patternmaker.geometry.plain import as_circle
from patternmaker.job.reading import read_job
from patternmaker.materials import Material
from patternmaker.outlines.circle import Circle
from patternmaker.outlines.oval import Oval
from patternmaker.outlines.rounded_rectangle import RoundedRectangle
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import LineKind, Pattern, Seam
from patternmaker.units import Unit
from tests.covers.seats import brief, guides, piece, pieces, told, with_bay

WIDE = Circle(diameter=400).contour()
SQUARE = RoundedRectangle(width=400, depth=400, corner=0).contour()
HIDE = Material(kind="upholstery leather", take_up=0.025)
ONE_WAY = Material(kind="upholstery leather", take_up_across=0.02, take_up_along=0.03)
VELOUR = Material(kind="velour")
SURPLUS = math.pi * (over_crown(400, 40) - 400)


def domed(seat: Brief, crown: float = 40.0, **fields: Any) -> Pattern:
    cover = DomedTop(crown=crown, **fields)
    assert not list(cover.objections(seat))
    return cover.pattern(seat)


def objections(seat: Brief, crown: float = 40.0, **fields: Any) -> list[str]:
    return [mistake.told() for mistake in DomedTop(crown=crown, **fields).objections(seat)]


def named(pattern: Pattern, name: str) -> list[Seam]:
    return [seam for seam in pattern.seams if seam.name == name]


def test_domed_is_a_known_cover():
    assert COVERS.all["domed"] is DomedTop
    roles = {each.role for each in domed(brief(WIDE)).pieces}
    assert roles <= set(DomedTop.roles)


def test_blank_is_struck_with_the_arc_from_the_crown_to_the_seam():
    """c400 h40: 410.582764 over the crown, so 205.29 to the seam and 12 more to the cut."""
    top = piece(domed(brief(WIDE, seam=12)), "top")
    circle = as_circle(top.cut)
    assert circle
    assert circle.radius == pytest.approx(410.582764 / 2 + 12)
    assert "Trammel: cut 217.5 mm, sew 205.5 mm" in told(top.notes)
    assert top.finished == pytest.approx((410.582764, 410.582764))


def test_surplus_of_the_blank_is_eased_in_evenly():
    pattern = domed(brief(WIDE))
    (seam,) = named(pattern, "top seam")
    assert seam.eased == pytest.approx(SURPLUS)
    assert seam.worst < 1e-9
    assert [a / b for _, _, a, b in seam.spans] == pytest.approx([over_crown(400, 40) / 400] * 12)
    assert "Its edge has 33 mm (2.65 %) more than the seam" in told(piece(pattern, "top").notes)
    assert "Work in the 33 mm that the top has more" in told(pattern.steps)


def test_surplus_past_what_the_material_takes_in_is_warned_of():
    """33 mm are 2.65 %: cloth takes in 3 %, vinyl 1.5 %."""
    assert domed(brief(WIDE)).fit.warnings == ()
    vinyl = brief(WIDE, Material(kind="vinyl", take_up=0))
    says = told(domed(vinyl).fit.warnings)
    assert (
        "33 mm (2.65 %) is to be worked in round the top, and vinyl takes in no more than" in says
    )
    assert 'made = "gores"' in says
    for made in ("darts", "gores"):
        assert "worked in" not in told(domed(vinyl, made=made).fit.warnings)


def test_take_up_is_taken_of_the_width_over_the_crown():
    """(W + 2a)(1 - r), W being the arc; the seam below shrinks with it."""
    pattern = domed(brief(WIDE, HIDE, seam=12))
    cut = (410.582764 + 24) * 0.975
    assert piece(pattern, "top").cut.width == pytest.approx(cut)
    kept = (cut - 24) / 410.582764
    assert piece(pattern, "boxing").sew_length == pytest.approx(400 * math.pi * kept)
    assert pattern.fit.stretch_round == pytest.approx(1 / kept)


def test_take_up_that_differs_by_direction_makes_an_oval_of_the_right_arcs():
    top = piece(domed(brief(WIDE, ONE_WAY, seam=12)), "top")
    (edge,) = guides(top, LineKind.SEW)
    arc = 410.582764 + 24
    assert edge.path.width == pytest.approx(arc * 0.98 - 24, abs=1e-3)
    assert edge.path.height == pytest.approx(arc * 0.97 - 24, abs=1e-3)
    assert "Keep the arrow's way" in told(top.notes)


def test_width_over_the_crown_is_solved_for_the_width_in_plan():
    over = Circle(diameter=410.582764).contour()
    pattern = domed(brief(over, taken="crown"))
    assert piece(pattern, "boxing").sew_length == pytest.approx(400 * math.pi, abs=1e-5)
    assert pattern.outline.width == pytest.approx(400, abs=1e-6)
    says = told(pattern.fit.says)
    assert "410.5 mm across and 410.5 mm along are 400 mm and 400 mm flat" in says
    assert "further out than a flat measure says" not in says


def test_tape_round_the_seam_is_in_plan_also_where_the_width_is_over_the_crown():
    over = Circle(diameter=410.582764).contour()
    pattern = domed(brief(over, taken="crown", tape=1256.637))
    assert "agrees with the measured width within 0 %" in told(pattern.fit.says)
    wins = domed(brief(over, taken="crown", tape=1260, trusts_tape=True))
    assert wins.outline.length == pytest.approx(1260)


def test_base_foam_and_tape_of_a_width_over_the_crown_belong_to_the_width_in_plan():
    """A crown of 160 mm over 400: by the width over it, a tape of 1256 would be 25 % off."""
    table = {"name": "Rhythm room", "units": "mm", "seat": [{
        "name": "Drum throne", "taken": "crown", "base": {"inset": 5}, "measured_round": 1256,
        "padding": {"foam": 60, "foam_oversize": 6},
        "outline": {"shape": "circle", "diameter": over_crown(400, 160)},
        "cover": {"style": "domed", "crown": 160, "drop": 60},
    }]}  # fmt: skip
    (seat,) = read_job(table).seats
    assert seat.brief.base.width == pytest.approx(390, abs=1e-5)
    assert piece(seat.pattern(), "foam template").cut.width == pytest.approx(412, abs=1e-5)


def test_round_dome_is_said_to_be_a_part_of_a_ball_and_any_other_a_model():
    assert "a ball of radius 520 mm" in told(domed(brief(WIDE)).fit.says)
    assert "a model" in told(domed(brief(Oval(width=450, depth=350).contour())).fit.says)


def test_crown_is_marked_over_the_middle_of_the_area():
    wedge = RoundedRectangle(width=400, depth=300, corner=0, front_left=80, front_right=80)
    seat = brief(wedge.contour())
    first, second = guides(piece(domed(seat, crown=20), "top"), LineKind.CENTRE)
    crown = Dome.over(seat.outline, 20).crown
    assert crown.imag > 1
    assert [first.path.middle, second.path.middle] == pytest.approx([crown, crown])


def test_darts_take_out_the_surplus_and_the_seam_walks_without_ease():
    pattern = domed(brief(WIDE), made="darts", count=6)
    parts = named(pattern, "top seam")
    assert len(parts) == 6
    assert all(seam.eased == 0 and seam.worst < 1e-6 for seam in parts)
    assert sum(seam.a.length for seam in parts) == pytest.approx(400 * math.pi)
    legs = named(pattern, "dart")
    assert len(legs) == 6
    assert all(seam.a.length == pytest.approx(seam.b.length, abs=1e-9) for seam in legs)


def test_each_dart_has_a_slit_for_each_leg_and_a_notch_of_the_boxing_to_meet():
    pattern = domed(brief(WIDE), made="darts", count=6)
    feet = {notch.name: notch.feet for notch in piece(pattern, "top").notches}
    assert {name for name, at in feet.items() if len(at) == 2} == {
        "back", "dart 2", "dart 3", "front", "dart 5", "dart 6",
    }  # fmt: skip
    first, last = feet["dart 2"]
    assert abs(last - first) == pytest.approx(SURPLUS / 6 * (205.29 + 12) / 205.29, abs=0.05)
    assert {"dart 2", "dart 5"} <= {notch.name for notch in piece(pattern, "boxing").notches}


def test_darts_reach_two_thirds_of_the_way_unless_told():
    (usual, *_) = named(domed(brief(WIDE), made="darts"), "dart")
    assert usual.a.length == pytest.approx(410.582764 / 3, abs=0.1)
    (short, *_) = named(domed(brief(WIDE), made="darts", dart=90), "dart")
    assert short.a.length == pytest.approx(90, abs=0.1)


def test_darts_say_how_wide_and_long_they_are():
    says = told(piece(domed(brief(WIDE), made="darts", count=6, dart=90), "top").notes)
    assert "6 darts, 5.5 mm wide at the seam, 90 mm long" in says
    oval = brief(Oval(width=450, depth=350).contour())
    says = told(piece(domed(oval, crown=60, made="darts", count=6), "top").notes)
    assert "6 darts, 11.5 mm to 13 mm wide" in says


def test_gores_of_a_plain_round_top_are_cut_from_one():
    pattern = domed(brief(WIDE), made="gores", count=8)
    (gore,) = pieces(pattern, "top")
    assert (gore.name, gore.count, gore.arrow) == ("gore", 8, (-1j, "SEAM"))
    assert gore.sew_length == pytest.approx(50 * math.pi, abs=5e-4)
    assert gore.edges["left side"].length == pytest.approx(410.582764 / 2, abs=5e-4)
    assert gore.cut.middle.real == pytest.approx(0, abs=1e-3)
    assert len(named(pattern, "top seam")) == 8
    (run,) = runs(pattern, "gore seam")
    assert run.times == 8


@pytest.mark.parametrize(
    "seat",
    [brief(WIDE, VELOUR), brief(WIDE, boxing_longest=900), brief(WIDE, ONE_WAY),
     brief(Oval(width=450, depth=350).contour()), brief(SQUARE)],
)  # fmt: skip
def test_gores_that_differ_or_lie_one_way_are_pieces_of_their_own(seat):
    pattern = domed(seat, made="gores", count=6)
    gores = pieces(pattern, "top")
    assert [gore.name for gore in gores] == [f"gore {i}" for i in range(1, 7)]
    assert all(gore.arrow == (-1j, "FRONT") and gore.count == 1 for gore in gores)
    ring = sum(panel.sew_length for panel in pieces(pattern, "boxing"))
    assert sum(seam.b.length for seam in named(pattern, "top seam")) == pytest.approx(ring)
    assert all(seam.worst < 1e-3 for seam in pattern.seams)


def test_gores_go_round_anticlockwise_and_each_is_sewn_to_the_next():
    pattern = domed(brief(WIDE, VELOUR), made="gores", count=4)
    pairs = [(seam.a.piece, seam.b.piece) for seam in named(pattern, "gore seam")]
    assert pairs == list(pairwise(["gore 1", "gore 2", "gore 3", "gore 4", "gore 1"]))
    seams = named(pattern, "gore seam")
    assert [seam.a.stations[0][0] for seam in seams] == ["left", "front", "right", "back"]
    assert all(seam.a.stations[-1][0] == "crown" for seam in seams)


def test_gore_lies_on_the_sheet_as_on_the_seat():
    gore, *_ = pieces(domed(brief(WIDE, VELOUR), made="gores", count=4), "top")
    base = gore.edges["base"].path
    middle = base.point_at(base.length / 2)
    assert middle.real < 0 < middle.imag
    assert middle.real == pytest.approx(-middle.imag)


def test_gore_seam_close_to_a_corner_is_moved_into_it():
    """A 320 by 300 mm seat: five eighths round it lie 10 mm beside a corner."""
    seat = brief(RoundedRectangle(width=320, depth=300, corner=0).contour())
    names = [seam.a.stations[0][0] for seam in named(domed(seat, made="gores"), "gore seam")]
    assert {"back left", "front left", "front right", "back right"} <= set(names)


def test_gores_cut_from_one_have_the_same_notches():
    pattern = domed(brief(WIDE, notch_spacing=60), made="gores", count=8)
    spans = [[a for _, _, a, _ in seam.spans] for seam in named(pattern, "top seam")]
    assert all(each == pytest.approx(spans[0]) and len(each) == 3 for each in spans)
    (gore,) = pieces(pattern, "top")
    assert [notch.name for notch in gore.notches if "side" not in notch.name] == ["1", "2"]


def test_boxing_in_panels_is_sewn_to_whatever_gores_it_passes():
    pattern = domed(brief(WIDE, boxing_longest=900), made="gores", count=7)
    for seam in named(pattern, "top seam"):
        assert [name for name, _ in seam.a.stations] == [name for name, _ in seam.b.stations]
    panels = {panel.name: panel.sew_length for panel in pieces(pattern, "boxing")}
    for name, length in panels.items():
        sewn = sum(seam.b.length for seam in named(pattern, "top seam") if seam.b.piece == name)
        assert sewn == pytest.approx(length)


def test_strip_longer_than_its_material_gives_is_warned_of_though_many_gores_share_it():
    wide = brief(Circle(diameter=700).contour(), made_of_strips := Material(kind="vinyl"))
    assert made_of_strips.known.longest_strip < 700 * math.pi
    for made in ("eased", "darts", "gores"):
        assert "The boxing takes a strip of" in told(domed(wide, made=made).fit.warnings)


def test_steps_make_the_dome_before_the_boxing_goes_round_it():
    says = told(domed(brief(WIDE), made="gores", count=8).steps, Unit.MM)
    assert says.index("in two halves, then both halves in one seam") < says.index("Lay the boxing")
    assert "back join to the gore seam at the back" in says
    odd = told(domed(brief(WIDE), made="gores", count=7).steps)
    assert "one to the next" in odd
    assert "by the front to the stop mark" in odd
    darts = told(domed(brief(WIDE), made="darts").steps)
    assert "Fold each dart" in darts
    assert "back join to the dart at the back" in darts
    assert "double" not in darts


def test_dome_taller_than_its_half_width_is_refused_with_the_limit():
    assert (
        "201 mm is more than from the middle to the nearest edge (200 mm)"
        in (objections(brief(WIDE), crown=201)[0])
    )
    assert objections(brief(WIDE), crown=200) == []


def test_tape_over_a_crown_must_reach_over_it():
    (says,) = objections(brief(WIDE, taken="crown"), crown=130)
    assert "130 mm is more than the seat's least width over the crown allows" in says
    assert f"{400 / math.pi:.6g} mm" in says


def test_half_ball_can_be_made_of_gores():
    pattern = domed(brief(WIDE), crown=200, made="gores", count=12)
    assert pieces(pattern, "top")[0].edges["left side"].length == pytest.approx(
        100 * math.pi, abs=1e-3
    )


def test_outline_that_turns_inward_is_refused():
    assert "its edge turns inward" in objections(brief(with_bay(corner=40)))[0]


def test_edge_that_runs_toward_the_middle_is_refused():
    long = RoundedRectangle(width=1600, depth=300, corner=0).contour()
    assert "runs straight toward the middle, but for 10.6°" in objections(brief(long))[0]


def test_darts_that_run_past_each_other_are_refused():
    (says,) = objections(brief(WIDE), made="darts", dart=200)
    assert "cover.dart: 200 mm lets the darts run past each other" in says
    with pytest.raises(Refusals, match="dart: is given, but the top is not made with darts"):
        objections(brief(WIDE), made="gores", dart=200)


def test_darts_where_there_is_nothing_to_take_out_are_refused():
    bench = brief(RoundedRectangle(width=760, depth=360, corner=40).contour())
    (says,) = objections(bench, made="darts", count=12)
    assert "cover.made: between two darts the blank's edge is" in says
    assert objections(bench, made="gores", count=12) == []


def test_too_many_and_too_few_are_refused():
    assert "at most 31" in objections(brief(WIDE), made="gores", count=36)[0]
    assert objections(brief(WIDE), count=36) == []
    with pytest.raises(Exception, match="2 is less than 3"):
        DomedTop(count=2)


def test_mistakes_of_the_seat_are_told_as_for_any_boxed_one():
    seat = brief(WIDE, seam=40, topstitch=30)
    (says,) = [m.told() for m in DomedTop(crown=30, drop=25).objections(seat)]
    assert "lies below the drop" in says
    small = replace(brief(WIDE, wrap=60), base=Circle(diameter=100).contour())
    assert "allowances.wrap" in objections(small)[0]
