"""Covers as they are printed, folded back into space by formulas of their own, and measured there.

The wall's printed lines are wrapped round the outline as it was measured; nothing of the package's
geometry is used. Cloth without take-up, so that what is folded back is what was measured.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray

from tests.paper.curves import Curve
from tests.paper.forms import Rounded
from tests.paper.samples import told

WITHIN = 0.03  # mm
Points = NDArray[np.complex128]
Numbers = NDArray[np.float64]
STEPS = 241  # places along a seam

SEATS: dict[str, dict[str, Any]] = {
    "Choir stool": {
        "outline": {"shape": "rounded rectangle", "width": 380, "depth": 380, "corner": 40},
        "cover": {"style": "boxed", "drop": 60, "drop_back": 100},
    },
    "Timpani stool": {
        "outline": {"shape": "circle", "diameter": 300},
        "cover": {"style": "boxed", "drop": 120, "walls": "to the base"},
        "base": {"outset": 50},
    },
    "Drum throne": {
        "outline": {"shape": "saddle", "width": 360, "depth": 330, "lobe": 75, "nose": 130,
                    "waist": 230, "dip": 12},
        "cover": {"style": "boxed", "drop": 90, "bent": "front to back", "bend_depth": 25},
    },
}  # fmt: skip


@dataclass(frozen=True)
class Walk:
    """A curve's points at chosen lengths along it."""

    curve: Curve
    places: Numbers
    points: Points

    @classmethod
    def along(cls, curve: Curve) -> Walk:
        """Return fine points all along a curve; a cubic's own lengths by quadrature."""
        places, points = [0.0], [curve.start]
        for piece, begin in zip(curve.pieces, curve.stops, strict=False):
            for t in np.linspace(0, 1, 33)[1:]:
                places.append(begin + piece.length(float(t)))
                points.append(complex(piece.at(np.array(t))))
        return cls(curve, np.array(places), np.array(points))

    def at(self, lengths: Numbers) -> Points:
        """Return the points at some lengths; between fine points the chord is near enough."""
        wrapped = np.asarray(lengths) % (self.places[-1] + 1e-9)
        real = np.interp(wrapped, self.places, self.points.real)
        imag = np.interp(wrapped, self.places, self.points.imag)
        return np.asarray(real + 1j * imag)


@dataclass(frozen=True)
class Printed:
    """The lines of one seat, as they are printed: its boxing seam up, its base, its top."""

    sew: Curve
    fold: Curve
    joins: tuple[Curve, Curve]
    base: Curve
    top: Curve

    @classmethod
    @cache
    def of(cls, name: str) -> Printed:
        """Return the lines of a seat, drafted on its own."""
        seat = {"base": {"inset": 0}, **SEATS[name], "name": name}
        book = told(
            {
                "name": "Practice rooms, west wing",
                "units": "mm",
                "material": {"kind": "woven cloth"},
                "seat": [seat],
            },
            whole=True,
        ).book
        ((plate, sew),) = [each for each in book.drawn("sew line") if not each[1].is_closed]
        (fold,) = [curve for form, curve in book.drawn("fold line") if not curve.is_closed]
        joins = [curve for form, curve in book.drawn("join line") if form == plate]
        (top,) = [curve for _, curve in book.drawn("sew line") if curve.is_closed]
        (reference,) = book.drawn("reference line")
        base = next(curve for form, curve in book.drawn("cut line") if form == reference[0]
                    and abs(curve.middle - reference[1].middle) < 1)  # fmt: skip
        return cls(*_upright(sew, fold, joins), _centred(base), _centred(top))


def _centred(curve: Curve) -> Curve:
    """Return a ring about the middle of its box, begun at its back, anticlockwise."""
    curve = curve.moved(1, -curve.middle)
    if curve.area < 0:
        curve = _backward(curve)
    back = max(curve.box[3], 0.0)
    starts = [piece.controls[0] for piece in curve.pieces]
    first = min(range(len(starts)), key=lambda i: abs(starts[i] - 1j * back))
    assert abs(starts[first] - 1j * starts[first].imag) < 1e-3, "the back is no vertex"
    return Curve(curve.pieces[first:] + curve.pieces[:first])


def _backward(curve: Curve) -> Curve:
    return Curve(tuple(type(each)(each.controls[::-1]) for each in reversed(curve.pieces)))


def _upright(
    sew: Curve, fold: Curve, joins: list[Curve]
) -> tuple[Curve, Curve, tuple[Curve, Curve]]:
    """Return the lines of boxing, its near join down from the origin, from left to right."""
    way = sew.pieces[0].controls[1] - sew.start
    if ((fold.middle - sew.middle) / way).imag > 0 and ((fold.start - sew.start) / way).imag > 0:
        sew = _backward(sew)
    near, far = sorted(joins, key=lambda join: _off(join, sew.start))
    down = near.end - near.start if _nearer(near.start, sew.start, fold) else near.start - near.end
    turn = -1j * abs(down) / down
    moved = [each.moved(turn, -sew.start * turn) for each in (sew, fold, near, far)]
    return moved[0], moved[1], (moved[2], moved[3])


def _nearer(end: complex, seam: complex, fold: Curve) -> bool:
    """Return whether an end of a join lies on the seam's side of it."""
    points = fold.spread(8)
    return bool(np.min(np.abs(points - end)) > np.min(np.abs(points - seam)))


def _off(line: Curve, point: complex) -> float:
    """Return how far a point lies from a straight line."""
    way = (line.end - line.start) / abs(line.end - line.start)
    along = min(line.length, max(0.0, ((point - line.start) / way).real))
    return abs(point - line.start - along * way)


def between(seat: Printed) -> Points:
    """Return points of the fold line between the two joins, on the seam's side of each."""
    points = seat.fold.spread(400)
    middle = seat.sew.spread()[len(seat.sew.pieces) * 65 // 2]
    for join in seat.joins:
        sides = _side(join, points) * _side(join, np.array([middle]))
        points = points[sides > 1e-6]
    return points


def _side(join: Curve, points: Points) -> Numbers:
    way = (join.end - join.start) / abs(join.end - join.start)
    return np.asarray(np.imag((points - join.start) / way))


def wrapped(seat: Printed) -> tuple[Points, Numbers]:
    """Return the seam in space: places in plan, and heights over the fold.

    An upright wall's rulings are parallel, so a place as far from the near join as the base's edge
    is long up to some point of it stands straight above that point.
    """
    lengths = np.linspace(0, seat.sew.length, STEPS)
    flat = Walk.along(seat.sew).at(lengths)
    fold = np.interp(flat.real, *_level(seat))
    plan = Walk.along(seat.base).at(np.clip(flat.real, 0, seat.base.length))
    return plan, flat.imag - fold


def _level(seat: Printed) -> tuple[Numbers, Numbers]:
    points = seat.fold.spread(64)
    order = np.argsort(points.real)
    return points.real[order], points.imag[order]


@pytest.mark.parametrize("name", ["Choir stool", "Drum throne"])
def test_upright_wall_goes_once_round_its_base_and_closes(name):
    seat = Printed.of(name)
    assert seat.joins[1].middle.real == pytest.approx(seat.base.length, abs=WITHIN)
    assert seat.sew.end.real == pytest.approx(seat.base.length, abs=WITHIN)
    assert seat.sew.end.imag == pytest.approx(seat.sew.start.imag, abs=WITHIN)
    for join in seat.joins:
        assert abs(join.start.real - join.end.real) < WITHIN  # square to the level fold
    levels = seat.fold.spread().imag
    assert max(levels) - min(levels) < WITHIN


def test_sloping_seat_stands_as_high_as_it_was_measured_all_round():
    plan, heights = wrapped(Printed.of("Choir stool"))
    assert heights == pytest.approx(80 + plan.imag * 40 / 380, abs=WITHIN)
    corners = {"back": (190j, 100), "front": (-190j, 60), "left": (-190, 80), "right": (190, 80)}
    for place, height in corners.values():
        nearest = int(np.argmin(np.abs(plan - place)))
        assert abs(plan[nearest] - place) < 5
        assert heights[nearest] == pytest.approx(height, abs=1)


def test_base_of_the_sloping_seat_is_its_rounded_square():
    base = Printed.of("Choir stool").base
    assert base.length == pytest.approx(Rounded(380, 380, 40).length, abs=WITHIN)
    assert max(Rounded(380, 380, 40).distances(base.spread())) < WITHIN


def test_sloping_top_folded_up_lies_over_the_outline():
    """Laid flat, a top that rises 40 in 380 is longer that way by the hypotenuse."""
    top = Printed.of("Choir stool").top.spread()
    plan = top.real + 1j * top.imag * 380 / math.hypot(380, 40)
    assert max(Rounded(380, 380, 40).distances(plan)) < WITHIN


def height_over_the_dip(y: Numbers) -> Numbers:
    """A circular arc of chord 330 and depth 25 below the level of 90 (Machinery's Handbook p. 79:
    r = (c^2 + 4 h^2) / 8 h)."""
    radius = (330**2 + 4 * 25**2) / (8 * 25)
    return np.asarray(90 - (np.sqrt(radius**2 - y**2) - (radius - 25)))


def test_dipped_saddle_stands_as_high_as_it_was_measured_all_round():
    plan, heights = wrapped(Printed.of("Drum throne"))
    assert heights == pytest.approx(height_over_the_dip(plan.imag), abs=WITHIN)
    assert min(heights) == pytest.approx(65, abs=0.1)
    assert np.ptp(plan.imag) == pytest.approx(330, abs=1)


def test_dipped_top_bent_back_is_as_deep_as_the_seat():
    """Its length over the dip is an arc: r asin(y / r) from the middle."""
    seat = Printed.of("Drum throne")
    radius = (330**2 + 4 * 25**2) / (8 * 25)
    _, bottom, _, top = seat.top.box
    assert radius * (math.sin(top / radius) - math.sin(bottom / radius)) == pytest.approx(
        330, abs=WITHIN
    )
    assert np.ptp(seat.base.spread(256).imag) == pytest.approx(330, abs=WITHIN)


@pytest.mark.parametrize(
    ("name", "bend"),
    [("Choir stool", lambda y: y * 380 / math.hypot(380, 40)),
     ("Drum throne", lambda y: 557.0 * np.sin(y / 557.0))],
)  # fmt: skip
def test_top_and_wall_meet_in_space_at_every_length_of_their_seam(name, bend):
    seat = Printed.of(name)
    assert seat.top.length == pytest.approx(seat.sew.length, abs=WITHIN)
    plan, _ = wrapped(seat)
    flat = Walk.along(seat.top).at(np.linspace(0, seat.top.length, STEPS))
    above = flat.real + 1j * bend(flat.imag)
    assert np.abs(above - plan)[:-1] == pytest.approx(np.zeros(STEPS - 1), abs=WITHIN)


@dataclass(frozen=True)
class Cone:
    """A flared wall's lines, seen from where its two joins would meet."""

    seam: Points
    foot: Points
    turn: float

    @classmethod
    def of(cls, seat: Printed) -> Cone:
        near, far = seat.joins
        ways = [join.end - join.start for join in (near, far)]
        share = np.imag(np.conj(far.start - near.start) * ways[1]) / np.imag(
            np.conj(ways[0]) * ways[1]
        )
        tip = near.start + share * ways[0]
        ends = seat.sew.start - tip, seat.sew.end - tip
        turn = abs(float(np.angle(ends[1] / ends[0])))
        assert turn * abs(ends[0]) == pytest.approx(seat.sew.length, abs=1), "more than half round"
        return cls(seat.sew.spread() - tip, between(seat) - tip, turn)


def test_flared_wall_rolled_up_stands_on_its_base_and_closes():
    """A sector of t radians rolls up to a cone on which a place R from the tip goes round at
    R t / 2 pi from the axis, and down as Pythagoras has it."""
    seat = Printed.of("Timpani stool")
    cone = Cone.of(seat)
    share = cone.turn / math.tau
    top, base = np.abs(cone.seam) * share, np.abs(cone.foot) * share
    assert top == pytest.approx(np.full(top.shape, 150.0), abs=WITHIN)
    assert base == pytest.approx(np.full(base.shape, 200.0), abs=WITHIN)
    down = math.sqrt(1 - share**2)
    heights = (np.abs(cone.foot).mean() - np.abs(cone.seam)) * down
    assert heights == pytest.approx(np.full(heights.shape, 120.0), abs=WITHIN)
    assert seat.sew.length == pytest.approx(math.pi * 300, abs=WITHIN)
    assert math.sin(math.asin(50 / 130)) == pytest.approx(share, abs=WITHIN / 200)


def test_board_and_top_of_the_flared_seat_are_those_of_its_wall():
    seat = Printed.of("Timpani stool")
    assert np.abs(seat.base.spread()) == pytest.approx(200.0, abs=WITHIN)
    assert np.abs(seat.top.spread()) == pytest.approx(150.0, abs=WITHIN)
    assert seat.top.length == pytest.approx(seat.sew.length, abs=WITHIN)
