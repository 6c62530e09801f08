"""Boxed seats that are finished as their jobs ask."""

from dataclasses import replace
from typing import Any

from patternmaker.covers import finishing
from patternmaker.covers.boxed import Boxed
from patternmaker.pattern.brief import Brief
from patternmaker.pattern.finishing import Finishing, WeltWish
from patternmaker.pattern.piece import Pattern
from tests.covers.seats import boxed


def with_finishing(seat: Brief, **wishes: Any) -> Brief:
    return replace(seat, finishing=Finishing(**wishes))


def with_welts(seat: Brief, *wishes: dict[str, Any], **wish: Any) -> Brief:
    """Return a seat with some welts, or with one."""
    return with_finishing(seat, welts=tuple(WeltWish(**each) for each in wishes or [wish]))


def finished(seat: Brief) -> Pattern:
    """Return the finished pattern of a boxed seat that meets no objection."""
    assert not objections(seat)
    return finishing.finished(boxed(seat), seat)


def objections(seat: Brief) -> list[str]:
    found = finishing.objections(Boxed(drop=80).pattern(seat), seat)
    return [mistake.told() for mistake in found]
