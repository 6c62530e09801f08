"""Laws of every way of covering a seat of every shape, measured by shapely on fine chords."""

import math
from dataclasses import dataclass
from itertools import pairwise

import pytest
import shapely
import shapely.ops
from hypothesis import Phase, assume, given, reject, settings
from hypothesis import strategies as st

from patternmaker.covers import COVERS, Cover
from patternmaker.covers.boxed import Boxed
from patternmaker.errors import Refusal
from patternmaker.geometry.contour import Contour, Path
from patternmaker.materials import KINDS, MOST_TAKE_UP, Material
from patternmaker.pattern.allowances import CAUGHT, Allowances
from patternmaker.pattern.brief import TAKEN, Brief
from patternmaker.pattern.piece import LineKind, Notch, Pattern, Piece
from tests.covers.seats import guide, guides, pieces, told, with_bay
from tests.laws.strategies import contours, fronted, measurements

CHORDS = 1e-4  # mm; how far chords may stray: 0.0002 mm in a length of a metre
WALKS = 0.001  # mm; what a span of a seam may differ by
BESIDE = 0.05  # mm; the middle between two feet on a bend lies beside the line
SOME = [Phase.explicit, Phase.reuse, Phase.generate]  # each drafts a whole seat: none is shrunk
few = settings(max_examples=25, phases=SOME)
RATES = st.floats(0, MOST_TAKE_UP)


@dataclass(frozen=True, repr=False)
class Covered:
    """A seat, its cover and its pattern."""

    brief: Brief
    cover: Cover
    pattern: Pattern

    def __repr__(self) -> str:
        """Say what is drafted, in brief: an outline may have hundreds of edges."""
        outline = self.brief.outline
        size = f"{outline.width:.1f} x {outline.height:.1f} mm, {list(outline.joints)}"
        return f"{self.cover} on {size}, {self.brief.allowances} {self.brief.materials}"

    @property
    def top(self) -> Piece:
        (top,) = pieces(self.pattern, "top")
        return top

    @property
    def sew(self) -> Contour:
        sew = guide(self.top, LineKind.SEW).path
        assert isinstance(sew, Contour)
        return sew

    @property
    def panels(self) -> list[Piece]:
        return pieces(self.pattern, "boxing")


@st.composite
def bays(draw: st.DrawFn) -> Contour:
    """Draw a seat with a bay in its front: no shape is needed for its inner corners to be right."""
    corner = draw(st.sampled_from([0.0, 3.0, 15.0, 40.0]))
    return with_bay(draw(st.floats(400, 900)), draw(st.floats(250, 600)),
                    draw(st.floats(110, 200)), draw(st.floats(60, 120)), corner)  # fmt: skip


@st.composite
def allowances(draw: st.DrawFn, outline: Contour, *, in_panels: bool) -> Allowances:
    """Draw allowances that a seat of this size bears."""
    half = min(outline.width, outline.height) / 2
    assume(half > 8)
    seam = draw(st.floats(6, min(20.0, half)))
    wrap = draw(st.floats(0, min(150.0, half / 2)))
    longest = min(5000, draw(st.floats(0.4, 1.1)) * outline.length) if in_panels else None
    if longest is not None:
        assume(longest >= 150)
    return Allowances(
        seam=seam,
        wrap=wrap,
        boxing_join=draw(st.none() | st.floats(6, 20)),
        boxing_longest=longest,
        boxing_spare=draw(st.floats(0, 80 if longest is None else min(80, longest / 4))),
        topstitch=draw(st.none() | st.floats(1, min(seam - CAUGHT, 9))),
        notch_spacing=draw(st.floats(25, 300)),
        sewing_open=draw(st.floats(0, min(300, outline.length / 6))),
        reference_line=draw(st.none() | st.floats(0, wrap)),
        dust_cover_inset=draw(st.floats(0, min(50.0, half / 3))),
        dust_cover_turning=draw(st.floats(0, 20)),
        round_cut_to=draw(st.none() | st.floats(0.5, 10)),
    )


@st.composite
def materials(draw: st.DrawFn) -> Material:
    return Material(
        kind=draw(st.sampled_from(list(KINDS))),
        take_up=draw(st.none() | RATES),
        take_up_along=draw(st.none() | RATES),
        give=draw(st.none() | st.floats(0, 0.5)),
    )


@st.composite
def seats(
    draw: st.DrawFn, outlines: st.SearchStrategy[Contour], *, in_panels: bool = False
) -> Brief:
    outline = draw(outlines)
    half = min(outline.width, outline.height) / 2
    return Brief(
        outline,
        _inside(outline, draw(st.floats(0, half / 4))),
        draw(allowances(outline, in_panels=in_panels)),
        {"": draw(materials()), "boxing": draw(materials())},
        draw(st.sampled_from(list(TAKEN))),
        draw(st.none() | st.floats(0.9, 1.1).map(lambda share: share * outline.length)),
        draw(st.booleans()),
    )


def _inside(outline: Contour, by: float) -> Contour:
    """Return the base inside an outline, if there is room for one."""
    try:
        return outline.grown(-by)
    except Refusal:
        reject()


@st.composite
def covered(
    draw: st.DrawFn,
    kinds: tuple[type[Cover], ...] = tuple(COVERS.all.values()),
    outlines: st.SearchStrategy[Contour] | None = None,
    *,
    in_panels: bool = False,
    plain: bool = False,
) -> Covered:
    """Draw a seat of any shape under any of some covers, which meets no objection."""
    if outlines is None:
        outlines = contours() | bays() | fronted()
    brief = draw(seats(outlines, in_panels=in_panels))
    cover = draw(st.sampled_from(kinds).flatmap(measurements))
    if plain and isinstance(cover, Boxed):
        cover = Boxed(drop=cover.drop)
    assume(not list(cover.objections(brief)))
    return Covered(brief, cover, cover.pattern(brief))


def boxed(outlines: st.SearchStrategy[Contour] | None = None) -> st.SearchStrategy[Covered]:
    """Draw a seat under a level top and upright boxing."""
    return covered((Boxed,), outlines, plain=True)


def in_panels() -> st.SearchStrategy[Covered]:
    seats = covered((Boxed,), in_panels=True, plain=True)
    return seats.filter(lambda seat: len(seat.panels) > 1)


def line(path: Path) -> shapely.LineString:
    return shapely.LineString([(p.real, p.imag) for p in path.chords(CHORDS)])


def point(z: complex) -> shapely.Point:
    return shapely.Point(z.real, z.imag)


@few
@given(covered())
def test_every_seam_walks_from_notch_to_notch(seat):
    for seam in seat.pattern.seams:
        assert seam.worst <= WALKS
        assert abs(seam.ease - seam.eased) <= WALKS
        assert [name for name, _ in seam.a.stations] == [name for name, _ in seam.b.stations]


@few
@given(covered())
def test_foot_of_every_notch_lies_on_the_cut_line(seat):
    for piece in seat.pattern.pieces:
        cut = line(piece.cut)
        for notch in piece.notches:
            assert all(cut.distance(point(foot)) < 2 * CHORDS for foot in notch.feet)
            assert abs(notch.inward) == pytest.approx(1)


@few
@given(covered())
def test_slit_leads_inward_and_stays_clear_of_seam_and_topstitch(seat):
    """No deeper than the allowance less the topstitch less 1/16 in."""
    allowed = seat.brief.allowances
    for piece in seat.pattern.pieces:
        inside = shapely.Polygon(line(piece.cut)).buffer(2 * CHORDS)
        for notch in piece.notches:
            assert 25.4 / 16 - 1e-9 <= notch.depth <= piece.material.known.notch
            assert notch.depth <= allowed.seam - allowed.topstitch_at - 25.4 / 16 + 1e-9
            assert all(inside.contains(point(tip)) for _, tip in notch.slits)


@few
@given(boxed())
def test_partners_stand_at_the_same_length_of_their_seams(seat):
    """The line through a notch of the top meets its seam as far round as the boxing's x says."""
    assume(seat.brief.outline.is_convex)
    sew = line(seat.sew)
    top = {notch.name: _met(sew, notch) for notch in seat.top.notches}
    begins = {str(seam.b): seam.a.stations[0][0] for seam in seat.pattern.seams}
    for panel in seat.panels:
        start = top[begins[f"{panel.name}/upper edge"]]
        for notch in panel.notches:
            x = sum(foot.real for foot in notch.feet) / len(notch.feet)
            off = (top[notch.name] - start - x + sew.length / 2) % sew.length - sew.length / 2
            doubled = "back" in (notch.name, begins[f"{panel.name}/upper edge"])
            assert abs(off) < (BESIDE if doubled else WALKS)
            assert len(notch.feet) == (2 if notch.name == "back" else 1)


def _met(sew: shapely.LineString, notch: Notch) -> float:
    """Return how far round a sew line the line through a notch meets it."""
    foot = sum(notch.feet) / len(notch.feet)
    through = shapely.LineString([(z.real, z.imag) for z in (foot, foot + 60 * notch.inward)])
    met = sew.intersection(through)
    return float(sew.project(shapely.ops.nearest_points(point(foot), met)[1]))


@few
@given(boxed())
def test_no_gap_between_notches_is_wider_than_the_spacing(seat):
    for panel in seat.panels:
        xs = [0.0, *sorted(notch.feet[-1].real for notch in panel.notches), panel.sew_length]
        widest = max(b - a for a, b in pairwise(xs))
        assert widest <= seat.brief.allowances.notch_spacing + 3 + WALKS  # half a double notch
        for seam in seat.pattern.seams:
            if seam.a.piece == "top":
                gaps = [length for _, _, length, _ in seam.spans]
                assert max(gaps) <= seat.brief.allowances.notch_spacing + WALKS


@few
@given(boxed())
def test_every_notch_of_the_boxing_is_one_of_the_top_and_the_joins_are_the_others(seat):
    on_boxing = {notch.name for panel in seat.panels for notch in panel.notches}
    joins = {panel.run[0][0] for panel in seat.panels}
    assert on_boxing | joins == {notch.name for notch in seat.top.notches}
    assert not on_boxing & joins


@few
@given(boxed())
def test_cut_line_is_at_the_allowance_from_the_sew_line_but_at_mitres(seat):
    allowance, sew = seat.brief.allowances.seam, line(seat.sew)
    corners = [seat.sew.segments[i].start for i, turn in enumerate(seat.sew.corners) if turn > 0]
    cut = seat.top.cut
    for i in range(200):
        place = cut.point_at(cut.length * i / 200)
        off = sew.distance(point(place)) - allowance
        assert off > -WALKS
        nearest = min((abs(place - corner) for corner in corners), default=math.inf)
        assert off < WALKS or nearest <= 2 * allowance


@few
@given(boxed())
def test_top_is_cut_exactly_by_the_take_up(seat):
    assume(seat.brief.allowances.round_cut_to is None)
    material, outline, both = (
        seat.brief.material("top"),
        seat.brief.outline,
        2 * seat.brief.allowances.seam,
    )
    kept = (1, 1) if seat.brief.taken == "old cover" else (1 - material.across, 1 - material.along)
    assert seat.sew.width + both == pytest.approx((outline.width + both) * kept[0], abs=1e-3)
    assert seat.sew.height + both == pytest.approx((outline.height + both) * kept[1], abs=1e-3)


@few
@given(boxed())
def test_rounded_top_is_cut_to_the_nearest_step(seat):
    step = seat.brief.allowances.round_cut_to
    assume(step is not None)
    material, outline, both = (
        seat.brief.material("top"),
        seat.brief.outline,
        2 * seat.brief.allowances.seam,
    )
    kept = (1, 1) if seat.brief.taken == "old cover" else (1 - material.across, 1 - material.along)
    sizes = (seat.sew.width + both, seat.sew.height + both)  # the tip of a corner lies further out
    exact = ((outline.width + both) * kept[0], (outline.height + both) * kept[1])
    for size, wanted in zip(sizes, exact, strict=True):
        assert abs(size - wanted) <= step / 2 + 1e-3
        assert abs(size / step - round(size / step)) * step < 1e-3


@few
@given(boxed())
def test_area_of_the_sewn_top_is_that_of_the_seat_times_what_is_kept_each_way(seat):
    across = seat.sew.width / seat.brief.outline.width
    along = seat.sew.height / seat.brief.outline.height
    assert seat.sew.area == pytest.approx(seat.brief.outline.area * across * along, rel=1e-5)


@few
@given(boxed())
def test_stretch_round_is_how_much_longer_the_seat_is_than_its_seam(seat):
    ratio = line(seat.brief.outline).length / line(seat.sew).length
    assert seat.pattern.fit.stretch_round == pytest.approx(ratio, rel=1e-6)


@few
@given(boxed(contours()))
def test_smooth_top_is_cut_longer_by_its_turning_and_larger_by_steiner(seat):
    """L + 2 pi a; A + L a + pi a^2."""
    sew, allowance = seat.sew, seat.brief.allowances.seam
    assume(sew.is_convex and not any(sew.corners))
    assert seat.top.cut.length == pytest.approx(sew.length + math.tau * allowance, abs=1e-3)
    area = sew.area + sew.length * allowance + math.pi * allowance**2
    assert seat.top.cut.area == pytest.approx(area, rel=1e-6)


@few
@given(covered((Boxed,), in_panels=True, plain=True) | boxed())
def test_boxing_is_as_long_as_the_ring_with_its_allowances_and_as_wide_as_it_must_be(seat):
    allowed, panels = seat.brief.allowances, seat.panels
    assert sum(panel.sew_length for panel in panels) == pytest.approx(
        line(seat.sew).length, abs=WALKS
    )
    for i, panel in enumerate(panels):
        spare = allowed.boxing_spare if i == len(panels) - 1 else 0
        length = panel.sew_length + 2 * allowed.join + spare
        height = seat.cover.drop + allowed.seam + allowed.wrap
        assert (panel.cut.width, panel.cut.height) == pytest.approx((length, height))
        assert panel.cut.area == pytest.approx(length * height)


@few
@given(in_panels())
def test_no_panel_is_longer_than_the_longest_strip(seat):
    assert max(p.cut.width for p in seat.panels) <= seat.brief.allowances.boxing_longest + 1e-6


@few
@given(in_panels())
def test_joins_are_alike_on_both_sides_and_at_or_behind_the_back_corners(seat):
    """But for those in front, where one panel would be longer than the strip."""
    sew = seat.sew
    corner = "back left" if "back left" in sew.joints else "left"
    starts = dict(seam.a.stations[0] for seam in seat.pattern.seams if seam.a.piece == "top")
    near = {name: at if at < sew.length / 2 else at - sew.length for name, at in starts.items()}
    assert sorted(near.values()) == pytest.approx(sorted(-at for at in near.values()), abs=WALKS)
    assert near["left join"] <= sew.station(corner) + WALKS
    if "front left join" not in near:
        assert max(near.values()) == near["left join"]


@few
@given(in_panels())
def test_front_panel_is_whole_or_longer_than_its_strip(seat):
    """From the left, if no join stands there, past the front to the right."""
    (front,) = (p for p in seat.panels if p.name == "boxing front")
    inner = {name for name, _ in front.run[1:-1]}
    assert "front" in inner
    names = {panel.name for panel in seat.panels}
    if "boxing back" in names and len(names) == 2:
        assert front.sew_length >= seat.sew.length / 2 - WALKS or "back left" in seat.sew.joints


@few
@given(covered())
def test_no_clip_reaches_the_seam_and_each_begins_at_the_cut_edge(seat):
    for piece in seat.pattern.pieces:
        for clip in guides(piece, LineKind.CLIP):
            stroke = line(clip.path)
            sews = [line(each.path) for each in guides(piece, LineKind.SEW)]
            assert min(sew.distance(stroke) for sew in sews) > 1.5
            assert line(piece.cut).distance(point(clip.path.segments[0].start)) < 2 * CHORDS


@few
@given(boxed())
def test_sewing_starts_and_stops_as_far_from_the_join_as_asked(seat):
    allowed = seat.brief.allowances
    assume(allowed.sewing_open > 1)
    sew = line(seat.sew)
    marks = {g.name: sew.project(point(g.path.segments[0].end))
             for g in guides(seat.top, LineKind.SEWING)}  # fmt: skip
    assert marks["start sewing"] == pytest.approx(allowed.sewing_open, abs=0.01)
    assert sew.length - marks["stop sewing"] == pytest.approx(allowed.sewing_open, abs=0.01)
    (panel,) = seat.panels
    xs = {g.name: g.path.bounds[0] for g in guides(panel, LineKind.SEWING)}
    assert xs["start sewing"] == pytest.approx(allowed.sewing_open)
    assert panel.sew_length - xs["stop sewing"] == pytest.approx(allowed.sewing_open)


@few
@given(boxed())
def test_lines_of_the_base_keep_their_distance_from_its_edge(seat):
    allowed = seat.brief.allowances
    (template,) = pieces(seat.pattern, "base template")
    (dust,) = pieces(seat.pattern, "dust cover")
    edge = line(seat.brief.base)
    for path, inset in (
        (guide(template, LineKind.REFERENCE).path, allowed.reference_at),
        (guide(dust, LineKind.FOLD).path, allowed.dust_cover_inset),
    ):
        offs = [edge.distance(point(path.point_at(path.length * i / 60))) for i in range(60)]
        assert min(offs) > inset - WALKS
        assert max(offs) < inset * 2 + WALKS


@few
@given(boxed())
def test_trammel_radius_is_said_of_exactly_the_round_tops(seat):
    middles = [abs(p) for p in seat.sew.chords(0.01)]
    off_round = max(middles) - min(middles)
    is_round = off_round < 1e-7
    assume(is_round or off_round > 1e-4)
    assert ("Trammel" in told(seat.top.notes)) is is_round


@few
@given(boxed())
def test_stretch_past_what_a_material_gives_is_warned_of_and_no_other(seat):
    boxing = seat.brief.material("boxing")
    gives = boxing.gives_along if boxing.known.boxing_runs_along else boxing.gives_across
    needed = seat.pattern.fit.stretch_round - 1
    assume(abs(needed - gives) > 1e-6)
    assert ("Boxing, round the seat, must" in told(seat.pattern.fit.warnings)) is (needed > gives)


@few
@given(seats(contours() | bays()), measurements(Boxed))
def test_what_meets_no_objection_can_be_drafted_and_twice_alike(brief, cover):
    assume(not list(cover.objections(brief)))
    assert cover.pattern(brief) == cover.pattern(brief)
