"""A string of points as the longest lines and arcs that follow it, each on its own."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from patternmaker.tracing.curve import Curve, curve_along, line_along

if TYPE_CHECKING:
    from collections.abc import Callable

    from patternmaker.tracing.closeness import Closeness
    from patternmaker.tracing.thinning import Floats, Points

LARGEST_TURN = 1.9  # radians; an arc that turns more is taken as two
STRAIGHT = 0.75  # of the longest arc: a line that is longer is taken instead
FEWEST = 3  # steps of a line that can be bent: two sides are two sides
SCRAP = 0.1  # of the run before it: a last run that is shorter is added to that


class Run(NamedTuple):
    """Points from ``begin`` to ``end`` (both belong to it) and the curve along them."""

    begin: int
    end: int
    curve: Curve
    straight: bool


def runs(at: Points, close: Closeness) -> list[Run]:
    """Return curves that follow a string of points closely, as few as can be."""
    import numpy as np

    along = np.concatenate([[0.0], np.cumsum(np.abs(np.diff(at)))])
    found: list[Run] = []
    begin, last = 0, len(at) - 1
    while begin < last:
        run = _longest(at, along, begin, close)
        found.append(run)
        begin = run.end
    found = _merged(found, at, along, close.loosened())
    return _without_scrap(found, at, along, close.loosened().loosened())


def _merged(found: list[Run], at: Points, along: Floats, close: Closeness) -> list[Run]:
    """Return runs of one kind joined where one curve does for both."""
    merged = [found[0]]
    for run in found[1:]:
        last = merged[-1]
        part = at[last.begin : run.end + 1]
        curve = (line_along if run.straight else curve_along)(part)
        turn = abs(curve.bend) * (along[run.end] - along[last.begin])
        if (
            run.straight == last.straight
            and turn <= LARGEST_TURN
            and (close.holds(curve.strays(part)))
        ):
            merged[-1] = Run(last.begin, run.end, curve, run.straight)
        else:
            merged.append(run)
    return merged


def _without_scrap(found: list[Run], at: Points, along: Floats, close: Closeness) -> list[Run]:
    """Return runs without a short last one, if the one before it does for both."""
    if len(found) < 2:
        return found
    one, two = found[-2:]
    if along[two.end] - along[two.begin] > SCRAP * (along[one.end] - along[one.begin]):
        return found
    part = at[one.begin : two.end + 1]
    curve = (line_along if one.straight else curve_along)(part)
    if not close.holds(curve.strays(part)):
        return found
    return [*found[:-2], Run(one.begin, two.end, curve, one.straight)]


def _longest(at: Points, along: Floats, begin: int, close: Closeness) -> Run:
    last = len(at) - 1

    def line(end: int) -> bool:
        part = at[begin : end + 1]
        return close.holds(line_along(part).strays(part))

    def arc(end: int) -> bool:
        part = at[begin : end + 1]
        curve = curve_along(part)
        turn = abs(curve.bend) * (along[end] - along[begin])
        return last >= FEWEST and turn <= LARGEST_TURN and close.holds(curve.strays(part))

    straight, bent = _farthest(line, begin, last), _farthest(arc, begin, last)
    if along[straight] - along[begin] >= STRAIGHT * (along[bent] - along[begin]):
        return Run(begin, straight, line_along(at[begin : straight + 1]), straight=True)
    return Run(begin, bent, curve_along(at[begin : bent + 1]), straight=False)


def _farthest(fits: Callable[[int], bool], begin: int, last: int) -> int:
    """Return the farthest end that fits, found by doubling and halving."""
    good, step = begin + 1, 1
    while good < last and fits(min(last, good + step)):
        good, step = min(last, good + step), 2 * step
    bad = min(last + 1, good + step)
    while bad - good > 1:
        middle = (good + bad) // 2
        good, bad = (middle, bad) if fits(middle) else (good, middle)
    return good
