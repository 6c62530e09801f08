"""Many segments at once: which of them lie near each other, and how far points lie from them.

With numpy, because an outline of thousands of arcs has millions of pairs; a few thousand of them
are near each other, and only those are worth a closed form.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

import numpy as np

from patternmaker.geometry.contour import SMOOTH, Contour, is_blunt
from patternmaker.geometry.segments import Arc, Segment, turned

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from numpy.typing import NDArray

Points: TypeAlias = "NDArray[np.complex128]"
Lengths: TypeAlias = "NDArray[np.float64]"
Picks: TypeAlias = "NDArray[np.intp]"
Flags: TypeAlias = "NDArray[np.bool_]"
Boxes: TypeAlias = "NDArray[np.float64]"
"""One row for each: left, bottom, right, top"""

BLOCK = 64  # boxes that are compared at a time; neighbours along an edge stand together
JOINED = 1e-6  # mm; segments whose ends lie closer follow each other
WHOLE = 1e-12  # radians by which a direction may miss an arc that ends there


@dataclass(frozen=True, eq=False)
class Bodies:
    """Segments as arrays; the arm of an arc leads from its centre to its start, a line has none."""

    starts: Points
    ends: Points
    arms: Points
    sweeps: Lengths

    @classmethod
    def of(cls, segments: Sequence[Segment]) -> Bodies:
        """Return the arrays of some segments."""
        arms = [s.start - s.centre if isinstance(s, Arc) else 0j for s in segments]
        return cls(
            np.array([s.start for s in segments], complex),
            np.array([s.end for s in segments], complex),
            np.array(arms, complex),
            np.array([s.sweep for s in segments], float),
        )

    @property
    def spans(self) -> Lengths:
        """How far any point of each may lie from its start, or less."""
        return np.where(
            self.arms == 0, np.abs(self.ends - self.starts), np.abs(self.arms * self.sweeps)
        )

    @property
    def boxes(self) -> Boxes:
        """A box round each: that of its chord, and as much more as its arc bulges."""
        turn = np.minimum(np.abs(self.sweeps), math.tau) / 2
        return boxes_of(self.starts, self.ends, np.abs(self.arms) * (1 - np.cos(turn)))

    def run_on(self, ones: Picks, twos: Picks) -> Flags:
        """Return which of some segments go on smoothly into others: those meet nowhere else."""
        turns = np.exp(1j * self.sweeps)
        leaves = np.where(self.arms == 0, self.ends - self.starts, 1j * self.arms * self.sweeps)
        leaves /= np.abs(leaves)
        smooth: Flags = np.abs((leaves * turns)[ones] - leaves[twos]) <= SMOOTH
        return smooth & (np.abs(self.ends[ones] - self.starts[twos]) <= JOINED)

    def distances(self, points: Points, picks: Picks) -> Lengths:
        """Return how far each point lies from the segment picked for it."""
        away, arms = points - self.starts[picks], self.arms[picks]
        ways = self.ends[picks] - self.starts[picks]
        with np.errstate(divide="ignore", invalid="ignore"):
            share = (away * ways.conj()).real / np.abs(ways) ** 2
            straight = np.abs(away - np.clip(share, 0.0, 1.0) * ways)
            return np.where(arms == 0, straight, self._from_arcs(away, arms, ways, picks))

    def _from_arcs(self, away: Points, arms: Points, ways: Points, picks: Picks) -> Lengths:
        """Return distances from arcs, reckoned from their starts as `Arc.distance` does."""
        sweeps, spokes = self.sweeps[picks], away + arms
        at = np.angle(spokes / arms) * np.sign(sweeps)
        at = np.where(at < -WHOLE, at + math.tau, at)
        beyond = np.abs(away) ** 2 + 2 * (away * arms.conj()).real
        round_ = np.abs(beyond) / (np.abs(spokes) + np.abs(arms))
        ends = np.minimum(np.abs(away), np.abs(away - ways))
        return np.where(at <= np.abs(sweeps) + WHOLE, round_, ends)

    def clear(self, points: Points, away: Lengths) -> Flags:
        """Return which points lie at least as far ``away`` from all the segments as asked of each.

        Most are told by the starts of the segments; only what is about that far away is measured.
        """
        clear, spans = np.ones(len(points), bool), self.spans
        for block, picks in _blocks(boxes_of(points, points, away), self.boxes, 0.0):
            apart = np.abs(points[block, None] - self.starts[picks])
            clear[block] = np.all(apart >= away[block, None], axis=1)
            close = clear[block, None] & (apart - spans[picks] < away[block, None])
            i, j = np.nonzero(close)
            i = i + block.start
            clear[i[self.distances(points[i], picks[j]) < away[i]]] = False
        return clear


@dataclass(frozen=True, eq=False)
class Tips:
    """The tips of mitred corners, which reach further than the distance moved.

    Args:
        corners: the corners themselves.
        befores: the direction in which the side before each was moved.
        afters: the direction in which the side after it was moved.
        blunt: which of them are squared off.
    """

    corners: Points
    befores: Points
    afters: Points
    blunt: Flags

    @classmethod
    def of(cls, contour: Contour, by: float) -> Tips:
        """Return the corners that are mitred when a contour is moved ``by`` mm outward."""
        turns = [(i, turn) for i, turn in enumerate(contour.corners) if turn * by > 0]
        afters = [contour.segments[i].tangent() * -1j * math.copysign(1.0, by) for i, _ in turns]
        befores = [way * turned(-turn) for way, (_, turn) in zip(afters, turns, strict=True)]
        return cls(
            np.array([contour.segments[i].start for i, _ in turns], complex),
            np.array(befores, complex),
            np.array(afters, complex),
            np.array([is_blunt(turn) for _, turn in turns], bool),
        )

    def cover(self, points: Points, distance: float) -> Flags:
        """Return which points lie inside a tip when the sides have moved by ``distance``."""
        covered = np.zeros(len(points), bool)
        nothing = np.zeros(len(self.corners))
        tips = boxes_of(self.corners, self.corners, nothing + 2 * distance)
        for i, j in near(boxes_of(points, points, np.zeros(len(points))), tips, 0.0):
            away, before, after = points[i] - self.corners[j], self.befores[j], self.afters[j]
            middle = before + after
            reach = np.maximum(_dot(away, before), _dot(away, after))
            squared = np.maximum(reach, _dot(away, middle) / np.maximum(np.abs(middle), WHOLE))
            reach = np.where(self.blunt[j], squared, reach)
            between = _cross(before, away) * _cross(away, after) > 0
            between &= _dot(away, middle) > 0
            covered[i[between & (reach < distance)]] = True
        return covered


def _dot(ones: Points, others: Points) -> Lengths:
    product: Lengths = (ones.conj() * others).real
    return product


def _cross(ones: Points, others: Points) -> Lengths:
    product: Lengths = (ones.conj() * others).imag
    return product


def boxes_of(ones: Points, others: Points, more: Lengths) -> Boxes:
    """Return the boxes round pairs of points, with some more on every side."""
    lefts, rights = np.minimum(ones.real, others.real), np.maximum(ones.real, others.real)
    lows, highs = np.minimum(ones.imag, others.imag), np.maximum(ones.imag, others.imag)
    return np.stack([lefts - more, lows - more, rights + more, highs + more], axis=-1)


def near(ones: Boxes, others: Boxes, reach: float) -> Iterator[tuple[Picks, Picks]]:
    """Yield the pairs of boxes not more than ``reach`` apart on either axis, block by block."""
    for block, picks in _blocks(ones, others, reach):
        i, j = np.nonzero(_meet(ones[block, None], others[picks], reach))
        yield i + block.start, picks[j]


def _blocks(ones: Boxes, others: Boxes, reach: float) -> Iterator[tuple[slice, Picks]]:
    """Yield blocks of the ones, each with those of the others that are near the whole block."""
    for begin in range(0, len(ones), BLOCK):
        block = ones[begin : begin + BLOCK]
        around = np.concatenate([block[:, :2].min(axis=0), block[:, 2:].max(axis=0)])
        yield slice(begin, begin + len(block)), np.flatnonzero(_meet(around, others, reach))


def _meet(ones: Boxes, others: Boxes, reach: float) -> Flags:
    meet: Flags = ones[..., 0] <= others[..., 2] + reach
    meet &= others[..., 0] <= ones[..., 2] + reach
    meet &= ones[..., 1] <= others[..., 3] + reach
    meet &= others[..., 1] <= ones[..., 3] + reach
    return meet
