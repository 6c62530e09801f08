"""A material as a job gives it."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from patternmaker.facts import Measured, choice, length, measured, pull, rate, text
from patternmaker.facts.pulls import MOST_GIVE
from patternmaker.materials.kinds import KINDS, NO_NAP, ONE_WAY, Kind
from patternmaker.materials.quarrels import MOST_TAKE_UP, RAILROADED, USUAL_USE, quarrels

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from patternmaker.errors import Refusal
    from patternmaker.facts import Pull

UP_THE_ROLL = "up the roll"


@measured
class Material(Measured):
    """A material as a job gives it: its kind, and what is known better of this hide or roll.

    Across is from left to right of the seat and along from its front to its back, however the
    piece lies on the roll.
    """

    kind: str = choice("what it is", KINDS, default="upholstery leather")
    name: str | None = text(
        "its name or colour, as you ask for it", default=None, required=False, most=60
    )
    take_up: float | None = rate(
        "share taken off so that it is pulled tight", default=None, most=MOST_TAKE_UP
    )
    take_up_across: float | None = rate(
        "the same, from left to right only", default=None, most=MOST_TAKE_UP
    )
    take_up_along: float | None = rate(
        "the same, from front to back only", default=None, most=MOST_TAKE_UP
    )
    give: float | None = rate(
        "most that an edge of it may be stretched", default=None, most=MOST_GIVE
    )
    thickness: float | None = length(
        "thickness of one layer", default=None, most=15, required=False
    )
    stretch_test: Pull | None = pull(
        "instead of take_up and give: a mark on it and what a hand pulls that to, "
        "{ mark = ..., pulled_to = ... }",
        default=None,
    )
    stretch_test_across: Pull | None = pull("the same, from left to right only", default=None)
    stretch_test_along: Pull | None = pull("the same, from front to back only", default=None)
    use: float | None = rate(
        "share of the give in a stretch test that is taken up, half unless given", default=None
    )
    nap: str | None = choice(
        "how its nap lies; velour has it one way", (NO_NAP, ONE_WAY), default=None
    )
    lay: str = choice(
        "how it lies on the seat, its roll from back to front or from left to right",
        (UP_THE_ROLL, RAILROADED), default=UP_THE_ROLL,
    )  # fmt: skip
    repeat: float | None = length(
        "repeat of a pattern from back to front of the seat, to be matched at the front",
        default=None, least=5, most=2000, required=False,
    )  # fmt: skip
    repeat_across: float | None = length(
        "repeat of its stripes or pattern from left to right, to be matched at the front",
        default=None, least=5, most=2000, required=False,
    )  # fmt: skip

    @classmethod
    def misfits(cls, values: Mapping[str, Any]) -> Iterator[Refusal]:
        """Yield whatever is said twice, and two rules that turn it two ways."""
        return quarrels(values)

    @property
    def known(self) -> Kind:
        """What is known of its kind."""
        return KINDS[self.kind]

    @property
    def title(self) -> str:
        """What to call it in a list."""
        return self.name or self.kind

    @property
    def across(self) -> float:
        """Its take-up from left to right of the seat."""
        tested = self._tested(self.stretch_test_across)
        return _first(self.take_up_across, tested, self._take_up)

    @property
    def along(self) -> float:
        """Its take-up from front to back of the seat."""
        tested = self._tested(self.stretch_test_along)
        return _first(self.take_up_along, tested, self._take_up)

    @property
    def _take_up(self) -> float:
        return _first(self.take_up, self._tested(self.stretch_test), self.known.take_up)

    def _tested(self, test: Pull | None) -> float | None:
        return None if test is None else test.give * self.used

    @property
    def used(self) -> float:
        """The share of the give in a stretch test that is taken up."""
        return USUAL_USE if self.use is None else self.use

    @property
    def tests(self) -> tuple[tuple[str, Pull], ...]:
        """Every stretch test with the way it was pulled, in words."""
        ways = (("", self.stretch_test), (" from left to right", self.stretch_test_across),
                (" from front to back", self.stretch_test_along))  # fmt: skip
        return tuple((way, test) for way, test in ways if test)

    @property
    def must_lie_one_way(self) -> bool:
        """Whether a piece of it can't be turned, because its take-up differs by direction."""
        return not math.isclose(self.across, self.along)  # 2.5 % and 1/4 in per 10 are the same

    @property
    def gives_across(self) -> float:
        """Most that an edge may be stretched from left to right of the seat."""
        known = self.known.give_along if self.is_railroaded else self.known.give_across
        return _first(_give(self.stretch_test_across), self.give, _give(self.stretch_test), known)

    @property
    def gives_along(self) -> float:
        """Most that an edge may be stretched from front to back of it."""
        known = self.known.give_across if self.is_railroaded else self.known.give_along
        return _first(_give(self.stretch_test_along), self.give, _give(self.stretch_test), known)

    @property
    def thick(self) -> float:
        """The thickness of one layer."""
        return _first(self.thickness, self.known.thickness)

    @property
    def is_railroaded(self) -> bool:
        """Whether its roll runs from left to right of the seat."""
        return self.lay == RAILROADED

    @property
    def has_nap(self) -> bool:
        """Whether its nap lies one way, so that no piece of it may be turned."""
        return (self.nap or self.known.nap) == ONE_WAY

    @property
    def is_matched(self) -> bool:
        """Whether its stripes or pattern must meet at the front."""
        return self.repeat is not None or self.repeat_across is not None

    @property
    def matched_place(self) -> str:
        """What is laid on the match line of every piece."""
        if self.repeat is None:
            return "the middle of the same stripe"
        return "the same place of the repeat where it meets the seam"

    @property
    def longest_strip(self) -> float:
        """What it usually gives for boxing in one strip, mm."""
        return math.inf if self.is_railroaded else self.known.longest_strip

    @property
    def lay_flat(self) -> str:
        """How a flat panel lies on it."""
        return self._lain(self.known.lay, "nap back to front")

    @property
    def lay_boxing(self) -> str:
        """How a boxing strip lies on it."""
        return self._lain(self.known.lay_boxing, "nap downward")

    def _lain(self, usual: str, nap: str) -> str:
        words = {"along": "across", "across": "along"} if self.is_railroaded else {}
        lain = " ".join(words.get(word, word) for word in usual.split(" "))
        return f"{lain}, {nap}" if self.has_nap else lain


def _first(*values: float | None) -> float:
    """Return the first value that is given."""
    return next(value for value in values if value is not None)


def _give(test: Pull | None) -> float | None:
    return None if test is None else test.give
