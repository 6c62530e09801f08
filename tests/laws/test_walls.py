"""Laws of walls laid flat, over every seat, against numpy on the wall as it stands in space."""

from dataclasses import dataclass
from itertools import accumulate
from typing import Any

import numpy as np
import pytest
from hypothesis import Phase, assume, given, reject, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from patternmaker.covers.boxed import TO_BASE, UPRIGHT, Boxed
from patternmaker.covers.parts import strips, tops
from patternmaker.covers.parts.forms import Form
from patternmaker.covers.parts.sloping import ACROSS, ALONG, CROWN, DISH, NOT
from patternmaker.covers.parts.walls import Wall
from patternmaker.errors import Refusal
from patternmaker.geometry.contour import Contour
from patternmaker.geometry.ruled import Span
from patternmaker.geometry.segments import Line, Segment
from patternmaker.geometry.unrolling import Flat
from patternmaker.materials import Material
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.piece import Seam
from patternmaker.pattern.stations import stations
from tests.covers.seats import brief, with_bay
from tests.laws.strategies import struck

CLOSELY = 1e-6  # of a length or an area
ARCS = 2e-4  # mm; how far tangent arcs may lie from the curve that they follow
HAIR = 0.001  # mm
SOME = [Phase.explicit, Phase.reuse, Phase.generate]
few = settings(max_examples=8, phases=SOME)

Numbers = NDArray[np.float64]
GAUSS, WEIGHTS = np.polynomial.legendre.leggauss(8)
PARTS = 8


def nodes(begin: float, end: float) -> tuple[Numbers, Numbers]:
    """Return places between two shares, and their weights in an integral."""
    edges = np.linspace(begin, end, PARTS + 1)
    half = np.diff(edges)[:, None] / 2
    return ((edges[:-1, None] + half) + half * GAUSS).ravel(), (half * WEIGHTS).ravel()


def on(run: Segment | complex, t: Numbers) -> tuple[NDArray[Any], NDArray[Any]]:
    """Return points of a run in plan, and how they move, by formulas of its own."""
    if isinstance(run, complex):
        return np.full(t.shape, run), np.zeros(t.shape, complex)
    if isinstance(run, Line):
        return run.start + t * (run.end - run.start), np.full(t.shape, run.end - run.start)
    arm = (run.start - run.centre) * np.exp(1j * run.sweep * t)
    return run.centre + arm, 1j * run.sweep * arm


@dataclass(frozen=True)
class Standing:
    """A part of a wall as it stands in space, its plan drawn to scale."""

    span: Span
    scale: tuple[float, float] = (1.0, 1.0)

    def edges(self, t: Numbers) -> tuple[Numbers, Numbers, Numbers, Numbers]:
        """Return places on the upper edge and how they move, and the same of the lower edge."""
        (above, way), (below, foot_way) = on(self.span.upper, t), on(self.span.lower, t)
        rise = self.span.rise
        up = np.array([rise.at(place) for place in above])
        slope = np.array([rise.slope(place) for place in above])
        climb = slope.real * way.real + slope.imag * way.imag
        flat = np.zeros(t.shape)
        return (self._space(above, up), self._space(way, climb),
                self._space(below, flat), self._space(foot_way, flat))  # fmt: skip

    def _space(self, plan: NDArray[Any], up: Numbers) -> Numbers:
        return np.stack([plan.real * self.scale[0], plan.imag * self.scale[1], up], axis=-1)

    def lengths(self, begin: float = 0.0, end: float = 1.0) -> tuple[float, float]:
        """Return the lengths of its upper and its lower edge."""
        t, weights = nodes(begin, end)
        _, above, _, below = self.edges(t)
        upper, lower = (weights @ np.linalg.norm(way, axis=-1) for way in (above, below))
        return float(upper), float(lower)

    def ruling(self, share: float) -> float:
        """Return the length of a ruling."""
        top, _, foot, _ = self.edges(np.array([share]))
        return float(np.linalg.norm(foot - top))

    def area(self, begin: float = 0.0, end: float = 1.0) -> float:
        t, weights = nodes(begin, end)
        top, above, foot, below = self.edges(t)
        found = 0.0
        for u, weight in zip((GAUSS + 1) / 2, WEIGHTS / 2, strict=True):
            normal = np.cross(above * (1 - u) + below * u, foot - top)
            found += weight * float(weights @ np.linalg.norm(normal, axis=-1))
        return found


def area(flat: Flat) -> float:
    """Return the area of a wall laid flat, by Green's theorem."""
    (above, below), (far_above, far_below) = flat.ends
    ring = [*flat.lower.segments, Line(far_below, far_above),
            *flat.upper.reversed().segments, Line(above, below)]  # fmt: skip
    t, weights = nodes(0.0, 1.0)
    found = 0.0
    for each in ring:
        point, way = on(each, t)
        found += float(weights @ np.imag(np.conj(point) * way)) / 2
    return found


@st.composite
def bent(draw: st.DrawFn, outline: Contour, *, level: bool = False) -> dict[str, Any]:
    """Draw how a top slopes and bends."""
    drop = draw(st.floats(60, 200))
    if level:
        return {"drop": drop}
    slope = draw(st.just(0.0) | st.floats(-0.3, 0.3))
    found: dict[str, Any] = {"drop": drop, "drop_back": max(20.0, drop + slope * outline.height)}
    way = draw(st.sampled_from([NOT, ALONG, ACROSS]))
    if way == NOT:
        return found
    extent = outline.height if way == ALONG else outline.width
    found |= {"bent": way, "bend": draw(st.sampled_from([DISH, CROWN]))}
    how = draw(st.sampled_from(["bend_depth", "bend_radius", "drops"]))
    if how == "bend_depth":
        return found | {how: draw(st.floats(0.01, 0.25)) * extent}
    if how == "bend_radius":
        return found | {how: draw(st.floats(0.6, 5)) * extent}
    heights = draw(st.lists(st.floats(60, 60 + 0.1 * extent), min_size=3, max_size=5))
    places = np.linspace(0, extent + 1e-6, len(heights))
    table = tuple(zip(places.tolist(), heights, strict=True))
    return {"bent": way, how: table}


@st.composite
def drafted(
    draw: st.DrawFn, *, walls: str, level: bool = False, rates: bool = False
) -> tuple[Brief, Form, Wall]:
    """Draw a seat whose wall meets no objection."""
    bays = st.builds(with_bay, corner=st.sampled_from([0.0, 20.0]))
    outline = draw(struck().map(lambda shape: shape.contour()) | bays)
    step = draw(st.floats(-20, 60)) if walls == TO_BASE else 0.0
    rate = st.floats(0, 0.1) if rates else st.just(0.0)
    stuff = Material(kind="woven cloth", take_up=draw(rate), take_up_along=draw(rate))
    try:
        seat = brief(outline, stuff, base=outline.grown(step), wrap=0)
    except Refusal:
        reject()
    cover = Boxed(**draw(bent(outline, level=level)), walls=walls)
    assume(not list(cover.objections(seat)))
    form = cover.form(seat)
    return seat, form, cover.wall(form)


@dataclass(frozen=True)
class Part:
    """A stretch of a wall, from a share of one of its spans to a share of another."""

    first: tuple[int, float]
    last: tuple[int, float]


def standing(wall: Wall, form: Form, *, finished: bool = True) -> list[Standing]:
    """Return the parts of a wall in space: as they are finished, or to the scale of its draft."""
    return [Standing(span, (1.0, 1.0) if finished else form.scale) for span in wall.spans]


ENDS = st.tuples(st.floats(0, 0.999), st.floats(0.1, 0.9), st.floats(0, 0.999), st.floats(0.1, 0.9))
"""Two spans, each as a share of their count, and a share of each."""


def part_of(wall: Wall, ends: tuple[float, float, float, float]) -> Part:
    """Return a stretch of a wall that is not next to nothing."""
    edges = [i for i, span in enumerate(wall.spans) if not isinstance(span.upper, complex)]
    one, begin, two, end = ends
    first, last = sorted([(edges[int(one * len(edges))], begin),
                          (edges[int(two * len(edges))], end)])  # fmt: skip
    assume(first[0] < last[0] or last[1] - first[1] > 0.05)
    return Part(first, last)


def whole_shares(part: Part) -> list[tuple[int, float, float]]:
    """Return each span of a part with the shares between which it belongs to it."""
    (one, begin), (two, end) = part.first, part.last
    return [(i, begin if i == one else 0.0, end if i == two else 1.0)
            for i in range(one, two + 1)]  # fmt: skip


def places(part: Part, spans: list[Standing]) -> tuple[float, float]:
    """Return where a part begins and ends on the seam, in mm from its beginning."""
    stops = list(accumulate((span.lengths()[0] for span in spans), initial=0.0))
    begin, end = (stops[i] + spans[i].lengths(0.0, share)[0] for i, share in
                  (part.first, part.last))  # fmt: skip
    return begin, end


def near(value: float) -> Any:
    return pytest.approx(value, rel=CLOSELY, abs=ARCS)


def held_to(wall: Wall, form: Form, part: Part) -> Flat:
    """Assert that a stretch of wall keeps its edges and its end rulings, and return it flat."""
    finished, sized = (standing(wall, form, finished=each) for each in (True, False))
    flat = wall.part(*places(part, sized))
    shares = whole_shares(part)
    upper, lower = (sum(sized[i].lengths(*run)[k] for i, *run in shares) for k in (0, 1))
    assert flat.upper.length == near(upper)
    assert flat.lower.length == near(lower)
    for (i, share), (above, below) in zip((part.first, part.last), flat.ends, strict=True):
        assert abs(above - below) == near(finished[i].ruling(share))
    return flat


@few
@given(drafted(walls=UPRIGHT), ENDS)
def test_upright_wall_keeps_edges_rulings_and_areas_under_any_bend(seat, ends):
    _, form, wall = seat
    part = part_of(wall, ends)
    flat = held_to(wall, form, part)
    spans = standing(wall, form)
    assert area(flat) == pytest.approx(
        sum(spans[i].area(*run) for i, *run in whole_shares(part)), rel=CLOSELY
    )


@few
@given(drafted(walls=TO_BASE, level=True), ENDS)
def test_flared_wall_keeps_edges_rulings_and_areas_under_a_level_top(seat, ends):
    _, form, wall = seat
    part = part_of(wall, ends)
    flat = held_to(wall, form, part)
    spans = standing(wall, form)
    assert area(flat) == pytest.approx(
        sum(spans[i].area(*run) for i, *run in whole_shares(part)), rel=CLOSELY
    )


@few
@given(drafted(walls=TO_BASE), ENDS)
def test_wall_that_twists_keeps_both_edges_and_every_ruling(seat, ends):
    _, form, wall = seat
    held_to(wall, form, part_of(wall, ends))


@few
@given(drafted(walls=UPRIGHT, rates=True), ENDS)
def test_height_of_an_upright_wall_is_as_measured_and_its_edges_as_taken_up(seat, ends):
    _, form, wall = seat
    held_to(wall, form, part_of(wall, ends))


@few
@given(drafted(walls=TO_BASE, rates=True))
def test_edges_of_a_flared_wall_are_drafted_to_the_take_up(seat):
    _, form, wall = seat
    spans = standing(wall, form, finished=False)
    upper, lower = (sum(span.lengths()[k] for span in spans) for k in (0, 1))
    assert sum(part.length for part in wall._parts) == pytest.approx(upper, abs=HAIR)
    assert wall.sew.length == pytest.approx(upper, abs=HAIR)
    assert wall.lower_length == pytest.approx(lower, abs=HAIR)


@few
@given(drafted(walls=UPRIGHT, level=True, rates=True), st.floats(0, 1), st.floats(0.05, 1))
def test_plain_strip_is_a_rectangle_to_the_last_digit(seat, begin, share):
    _, form, wall = seat
    first, whole = begin * wall.sew.length, share * wall.sew.length
    flat = wall.part(first, first + whole)
    (above,), (below,) = flat.upper.segments, flat.lower.segments
    assert [above.start, above.end.imag] == [0j, 0.0]
    assert [below.start, below.end] == [above.start - 1j * form.bend.level,
                                        above.end - 1j * form.bend.level]  # fmt: skip
    assert above.length == pytest.approx(whole, abs=HAIR)


@few
@given(st.sampled_from([UPRIGHT, TO_BASE]).flatmap(lambda walls: drafted(walls=walls, rates=True)))
def test_seam_of_the_top_and_of_the_wall_are_of_one_length_from_joint_to_joint(seat):
    """The seam laid flat with the top against the seam as it stands in space."""
    _, form, _ = seat
    outline = form.brief.outline
    edges = [Standing(Span(each, each, form.bend), form.scale) for each in outline.segments]
    stops = list(accumulate((edge.lengths()[0] for edge in edges), initial=0.0))
    for name, index in outline.joints.items():
        assert form.sew.station(name) == pytest.approx(stops[index], abs=HAIR)
    assert form.sew.length == pytest.approx(stops[-1], abs=HAIR)


@few
@given(st.sampled_from([UPRIGHT, TO_BASE]).flatmap(lambda walls: drafted(walls=walls, rates=True)))
def test_boxing_meets_the_top_over_every_span(seat):
    seat, form, wall = seat
    sew = form.sew
    joins = strips.joins(sew, seat.allowances)
    spots = stations(sew, seat.allowances.notch_spacing, joins)
    for panel in strips.boxing(seat, sew, spots, joins, wall):
        edge = panel.edges["upper edge"]
        names = [place[0] for place in (edge.stations[0], edge.stations[-1])]
        assert Seam(tops.part_of_edge(sew, spots, *names), edge).worst < HAIR
